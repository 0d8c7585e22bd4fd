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

        foreach (RecoveryCylinder cylinder in job.Cylinders)
        {
            Fits(job, cylinder);
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
            throw new ImpossibleJobException(e.Message, nameof(RecoveryJob.Appliance), e);
        }

        if (job.Appliance.DesignGaugePressure is Pressure design && job.Barometer.ToGauge(start.HighestPressure) > design)
        {
            throw new ImpossibleJobException(
                $"DesignGaugePressure is {Require.Text(design.Kilopascals)} kPa gauge; the appliance itself stands at {Require.Text(job.Barometer.ToGauge(start.HighestPressure).Kilopascals)} kPa gauge in the air at the place: check refrigerant, temperature and pressure.",
                nameof(Appliance.DesignGaugePressure));
        }

        return start;
    }

    private static void Fits(RecoveryJob job, RecoveryCylinder cylinder)
    {
        try
        {
            _ = CylinderState.Initial(cylinder, job.Appliance.Fluid, new Temperature(job.Appliance.SurroundingsKelvin, UnitsNet.Units.TemperatureUnit.Kelvin));
        }
        catch (ArgumentException e) when (e is not PropertyRangeException)
        {
            throw new ImpossibleJobException(e.Message, nameof(RecoveryJob.Cylinders), e);
        }
    }
}
