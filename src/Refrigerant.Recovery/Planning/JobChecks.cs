using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using UnitsNet;

namespace Refrigerant.Recovery.Planning;

/// <summary>Jobs whose parts contradict each other.</summary>
internal static class JobChecks
{
    /// <summary>Bounds of <see cref="Appliance.Surroundings"/>, K.</summary>
    private const double ColdestAir = 150, WarmestAir = 400;

    public static void Check(RecoveryJob job)
    {
        Appliance appliance = job.Appliance;
        if (appliance.LiquidHeel.Kilograms > appliance.Charge.Kilograms)
        {
            throw new ImpossibleJobException(
                $"LiquidHeel is {Require.Text(appliance.LiquidHeel.Kilograms)} kg; it cannot be more than the charge, {Require.Text(appliance.Charge.Kilograms)} kg.",
                nameof(Appliance.LiquidHeel));
        }

        if (appliance.Sections.Any(section => section.Name == "cylinder"))
        {
            throw new ImpossibleJobException("Sections has one named \"cylinder\"; that name stands for the receiving cylinder.", nameof(Appliance.Sections));
        }
    }

    /// <summary>The appliance at the start.</summary>
    public static ApplianceState Start(RecoveryJob job)
    {
        ApplianceState start;
        try
        {
            start = ApplianceState.Initial(job.Appliance);
        }
        catch (ArgumentException e) when (e is not PropertyRangeException)
        {
            throw new ImpossibleJobException(WithoutParameter(e), nameof(RecoveryJob.Appliance), e);
        }

        if (job.Appliance.DesignGaugePressure is Pressure design && job.Barometer.ToGauge(start.HighestPressure) > design)
        {
            throw new ImpossibleJobException(
                $"DesignGaugePressure is {Require.Text(design.Kilopascals)} kPa gauge; the appliance itself stands at {Require.Text(job.Barometer.ToGauge(start.HighestPressure).Kilopascals)} kPa gauge ({Require.Text(start.HighestPressure.Kilopascals)} kPa absolute) in the air at the place: check refrigerant, temperature and pressure.",
                nameof(Appliance.DesignGaugePressure));
        }

        if (job.Appliance.Surroundings is null && job.Appliance.Temperature.Kelvins is < ColdestAir or > WarmestAir)
        {
            throw new ImpossibleJobException(
                $"Surroundings is not given, and Temperature, which stands in for it, is {Require.Text(job.Appliance.Temperature.Kelvins)} K; surroundings must be from {Require.Text(ColdestAir)} to {Require.Text(WarmestAir)} K.",
                nameof(Appliance.Surroundings));
        }

        return start;
    }

    /// <summary>Content that fits a cylinder cold, but not in this air, is an overfill that the plan says; more than that cannot be.</summary>
    public static void Fits(RecoveryJob job, CylinderStanding standing)
    {
        RecoveryCylinder cylinder = standing.Cylinder;
        if (!standing.MayBeFilled && IsFullOfLiquid(job, cylinder) && (CylinderFitness.IsHot(cylinder) || cylinder.Content.Kilograms > standing.Limit.MaximumFill.Kilograms))
        {
            return;
        }

        try
        {
            _ = CylinderState.Around(job.Appliance, cylinder);
        }
        catch (ArgumentException e) when (e is not PropertyRangeException)
        {
            throw new ImpossibleJobException(WithoutParameter(e), nameof(RecoveryJob.Cylinders), e);
        }
    }

    /// <summary>Whether the content fills the cylinder with liquid at the temperature of the air, or at its own where that is higher, though it would fit cold.</summary>
    public static bool IsFullOfLiquid(RecoveryJob job, RecoveryCylinder cylinder)
    {
        PropertyModel model = job.Appliance.Fluid.Model;
        double density = cylinder.Content.Kilograms / cylinder.InternalVolume.CubicMeters;
        double air = Math.Max(job.Appliance.SurroundingsKelvin, cylinder.Temperature?.Kelvins ?? 0);
        double coldest = model.Range.MinimumTemperature;
        return air > coldest
            && air <= model.Range.MaximumSaturationTemperature
            && density >= model.SaturationAtTemperature(air).Bubble.Density
            && density < model.SaturationAtTemperature(coldest).Bubble.Density;
    }

    /// <summary>The message without what .NET appends to it about the parameter.</summary>
    internal static string WithoutParameter(ArgumentException e)
    {
        string own = new ArgumentException(string.Empty, e.ParamName).Message;
        return own.Length > 0 && e.Message.EndsWith(own, StringComparison.Ordinal) ? e.Message.Substring(0, e.Message.Length - own.Length) : e.Message;
    }
}
