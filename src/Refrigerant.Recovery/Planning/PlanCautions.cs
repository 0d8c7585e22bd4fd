using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Residuals;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation.Vessels;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>What can hurt people or property in a job, each caution with what in the job calls for it; the last one always holds.</summary>
internal static class PlanCautions
{
    /// <summary>A cylinder filled to this share of its limit and above is close to it. Our choice.</summary>
    private const double NearLimit = 0.8;

    /// <summary>Within this of its critical temperature a refrigerant's pressure is near its highest, K. Our choice.</summary>
    private const double NearCritical = 15;

    /// <summary>A charge that makes this much vapor takes the air out of a small closed room, m³. Our choice.</summary>
    private const double MuchVapor = 1;

    /// <summary>Bare metal above this burns skin at a touch, K: 60 °C; common practice, no source.</summary>
    private const double HotMetal = 333.15;

    /// <summary>Pressures above this share of the air here do not draw it in.</summary>
    private const double Vacuum = 0.98;

    /// <summary>The cautions, heaviest first, the closing one last.</summary>
    public static IReadOnlyList<Finding> For(PlanRun run, IReadOnlyList<CylinderUse> cylinders)
    {
        Fluid fluid = run.Job.Appliance.Fluid;
        double ambient = run.Job.Appliance.SurroundingsKelvin;
        IEnumerable<Finding> cautions =
        [
            .. RefrigerantFacts.For(fluid).Findings,
            .. HighPressure(fluid, ambient),
            .. TrappedBetweenValves(run, fluid, ambient),
            .. CylinderLimits(cylinders),
            .. Freezing(run),
            .. Asphyxiation(run, fluid, ambient),
            .. CarbonDioxide(fluid),
            .. Frostbite(run, fluid),
            .. DryIce.CanForm(fluid) ? [DryIce.Caution(fluid, run.Job.Barometer)] : Array.Empty<Finding>(),
            .. HotDischarge(run),
            .. Air(run),
            .. Oil(run),
        ];
        return
        [
            .. cautions.OrderByDescending(caution => caution.Severity),
            new Finding(
                PlanCodes.PlanningFigures,
                Severity.Caution,
                Sources.CommonPractice,
                $"Planning figures: check the marks on the cylinder, weigh it on a scale that was checked, wear eye protection and gloves. Local codes and licensed practice govern."),
        ];
    }

    private static IEnumerable<Finding> HighPressure(Fluid fluid, double ambient)
    {
        double critical = fluid.Model.CriticalTemperature;
        if (critical < EvacuationFigures.ClassTemperature || ambient > critical - NearCritical)
        {
            yield return new Finding(
                PlanCodes.HighPressure,
                Severity.Warning,
                fluid.Model.Source,
                $"{FindingValue.Text("refrigerant", fluid.Designation)} has its critical point at {FindingValue.Temperature("critical", new Temperature(critical, TemperatureUnit.Kelvin))}: near it and above it no liquid bounds the pressure, which rises with every degree. Hoses, gauges and cylinders made for it, kept out of the sun.");
        }
        else if (PressureClassification.For(fluid) is { ByLetter: PressureClass.VeryHigh, PressureAt104F: Pressure pressure })
        {
            yield return new Finding(
                PlanCodes.HighPressure,
                Severity.Warning,
                EvacuationFigures.Classes.Source,
                $"{FindingValue.Text("refrigerant", fluid.Designation)} stands at {FindingValue.AbsolutePressure("pressure", pressure)} at {FindingValue.Temperature("temperature", new Temperature(EvacuationFigures.ClassTemperature, TemperatureUnit.Kelvin))}: hoses, gauges and cylinders made for it.");
        }
    }

    /// <summary>Liquid is in the hoses in push-pull, and behind the machine's condenser wherever there is a discharge hose.</summary>
    private static IEnumerable<Finding> TrappedBetweenValves(PlanRun run, Fluid fluid, double ambient)
    {
        bool holdsLiquid = run.Job.Hoses.Discharge.Count > 0 || run.Stages.Any(stage => stage.Kind == StageKind.PushPull);
        return holdsLiquid && ambient <= fluid.Model.Range.MaximumSaturationTemperature
            ? TrappedLiquid.ShutIn(fluid, new Temperature(ambient, TemperatureUnit.Kelvin)).Findings
            : [];
    }

    private static IEnumerable<Finding> CylinderLimits(IReadOnlyList<CylinderUse> cylinders)
    {
        CylinderUse[] near = [.. cylinders.Where(use => use.Received.Kilograms > 0 && use.ShareOfLimit.DecimalFractions >= NearLimit)];
        if (near.Length > 0)
        {
            string which = string.Join(", ", near.Select(use => FormattableString.Invariant($"{use.Cylinder.Label} to {use.ShareOfLimit.Percent:F0} %")));
            yield return new Finding(
                PlanCodes.NearLimit,
                Severity.Warning,
                near[0].Limit.GoverningRule.Source,
                $"Filled near the limit: {FindingValue.Text("cylinders", which)}. Fill by the scale, never past the limit: a cylinder full of liquid bursts as it warms.");
        }
    }

    private static IEnumerable<Finding> Freezing(PlanRun run)
    {
        if (run.Job.Appliance.Water is not null)
        {
            yield return new Finding(
                PlanCodes.WaterInTubes,
                Severity.Warning,
                Sources.CommonPractice,
                $"The appliance has water in its tubes: keep it moving or drain it before vapor is pulled; ice bursts them.");
        }
    }

    private static IEnumerable<Finding> Asphyxiation(PlanRun run, Fluid fluid, double ambient)
    {
        double air = run.Job.Barometer.Pressure.Pascals;
        double density = VaporDensity.At(fluid.Model, ambient, air, out _);
        double volume = run.Job.Appliance.Charge.Kilograms / density;
        if (volume >= MuchVapor)
        {
            bool heavy = density > air * NonCondensableFigures.MolarMassOfAir / (NonCondensableFigures.GasConstant * ambient);
            yield return new Finding(
                PlanCodes.DisplacesAir,
                Severity.Warning,
                Sources.CommonPractice,
                $"The charge makes {FindingValue.Volume("vapor", new Volume(volume, VolumeUnit.CubicMeter))} of vapor{(heavy ? ", heavier than air" : string.Empty)}: in a closed room {(heavy ? "or a pit " : string.Empty)}it takes the place of the air. Ventilate; do not go in alone.");
        }
    }

    private static IEnumerable<Finding> CarbonDioxide(Fluid fluid)
    {
        if (DryIce.CanForm(fluid))
        {
            yield return new Finding(
                PlanCodes.CarbonDioxideHarms,
                Severity.Warning,
                "29 CFR 1910.1000 Table Z-1, from memory",
                $"R-744 harms before the air is used up: {FindingValue.Number("ppm", 5000, 4)} ppm is the most for a working day, and no one smells it. An alarm for carbon dioxide, not for oxygen alone.");
        }
    }

    private static IEnumerable<Finding> Frostbite(PlanRun run, Fluid fluid)
    {
        PropertyModel model = fluid.Model;
        double freezing = Math.Max(MetalShell.FreezingPoint, model.Range.MinimumTemperature);
        if (model.Range.MaximumSaturationTemperature < freezing
            || model.SaturationAtTemperature(freezing).Bubble.Pressure > run.Job.Barometer.Pressure.Pascals)
        {
            yield return new Finding(
                PlanCodes.FreezesSkin,
                Severity.Caution,
                model.Source,
                $"{FindingValue.Text("refrigerant", fluid.Designation)} boils below {FindingValue.Temperature("freezing", new Temperature(MetalShell.FreezingPoint, TemperatureUnit.Kelvin))} in the air here: liquid that escapes freezes skin and eyes. Open connections slowly.");
        }
    }

    private static IEnumerable<Finding> HotDischarge(PlanRun run)
    {
        // Where the equation of state does not reach that far it is hotter still: the compressor's own figure stands then.
        double hottest = run.Stages.Select(stage => stage.Result).OfType<StageResult>()
            .Max(result => result.HottestDischarge?.Kelvins) ?? 0;
        if (hottest > HotMetal)
        {
            yield return new Finding(
                PlanCodes.HotSurface,
                Severity.Caution,
                Sources.CommonPractice,
                $"The machine's discharge comes to {FindingValue.Temperature("discharge", new Temperature(hottest, TemperatureUnit.Kelvin))}: do not touch it, keep hoses and what burns away from it.");
        }
    }

    private static IEnumerable<Finding> Air(PlanRun run)
    {
        double air = run.Job.Barometer.Pressure.Pascals;
        double lowest = run.Stages.Select(stage => stage.After.Pressure.Pascals).DefaultIfEmpty(air).Min();
        if (lowest < Vacuum * air)
        {
            yield return new Finding(
                PlanCodes.AirDrawnIn,
                Severity.Caution,
                Sources.CommonPractice,
                $"The appliance comes to {FindingValue.GaugePressure("lowest", new Pressure(lowest - air, PressureUnit.Pascal))}: a leak or a loose connection draws air in, which ends up in the cylinder.",
                RefrigerantFacts.For(run.Job.Appliance.Fluid).IsFlammable == true ? (FormattableString)$"With what burns air makes a mixture that the machine compresses and heats: test for leaks first, and stop where the gauge does not fall as it should." : null);
        }
    }

    private static IEnumerable<Finding> Oil(PlanRun run)
    {
        if (run.Job.Appliance.Oil is not null)
        {
            bool presses = run.State.Appliance.Pressure > run.Job.Barometer.Pressure;
            bool us = presses && run.Requirement.Rules == RuleSet.UnitedStates;
            yield return new Finding(
                PlanCodes.OilUnderPressure,
                Severity.Caution,
                us ? EvacuationFigures.OilChange.Source : Sources.CommonPractice,
                presses
                    ? (FormattableString)$"The appliance holds oil under pressure: it foams and sprays when it is opened."
                    : (FormattableString)$"The appliance holds oil: it foams where the pressure falls fast and may leave with the vapor; what it still holds it gives off when it is opened.",
                us ? (FormattableString)$"Drain it at {FindingValue.GaugePressure("highest", new Pressure(EvacuationFigures.OilChangeGauge, PressureUnit.Pascal), RoundingMode.Down)} at most." : null,
                $"Dry nitrogen only, never compressed air over hot oil.");
        }
    }
}
