using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Vessels;
using UnitsNet;

namespace Refrigerant.Recovery.Processes;

/// <summary>What a vapor recovery should make people think of.</summary>
internal static class VaporRecoveryFindings
{
    /// <summary>Discharge above this breaks down oil, °C: 300 °F is a usual ceiling (common practice, no source).</summary>
    private const double HotDischarge = 149;

    /// <summary>Above this it shortens the life of oil and valves, °C: 250 °F (common practice, no source).</summary>
    private const double WarmDischarge = 121;

    /// <summary>Below this share of the machine's own pace the hoses are worth a word.</summary>
    private const double SlowLine = 0.8;

    /// <summary>A section whose pressure is this share above that at the gauge is worth a warning.</summary>
    private const double HiddenPressure = 0.05;

    private const string Model = "dynamic model of vapor recovery, energy balance";

    public static void Add(
        List<Finding> findings, Appliance appliance, RecoveryMachine machine, VaporRecoveryOptions options, StageEnd end, StageFigures figures, SimulationState after)
    {
        ApplianceState state = after.Appliance;
        End(findings, appliance, machine, options, end, state, after.Cylinder);
        Liquid(findings, end, state);
        Freezing(findings, appliance, figures);
        Discharge(findings, figures);
        double lineShare = figures.SuctionLineShare;
        if (lineShare < SlowLine)
        {
            findings.Add(new Finding(
                Severity.Note,
                FindingSubject.HoseLimited,
                FormattableString.Invariant($"The suction hoses let through {lineShare * 100:F0} % of what the machine could draw{(figures.WasChoked ? ", choked in part" : string.Empty)}: shorter or wider hoses and removed valve cores make it faster."),
                "isothermal compressible flow with friction (Crane TP-410)"));
        }

        Estimates(findings, appliance, state);
    }

    private static void End(
        List<Finding> findings, Appliance appliance, RecoveryMachine machine, VaporRecoveryOptions options, StageEnd end, ApplianceState state, CylinderState? cylinder)
    {
        string reached = FormattableString.Invariant($"{state.Pressure.Kilopascals:F1} kPa absolute with {state.Mass.Kilograms:G3} kg left");
        switch (end)
        {
            case StageEnd.CylinderFull:
                findings.Add(new Finding(
                    Severity.Caution, FindingSubject.CylinderCapacity, $"The cylinder reaches its limit at {reached}: close it and change over.", "cylinder filling limit"));
                break;
            case StageEnd.HighPressureCutout:
                findings.Add(new Finding(
                    Severity.Warning,
                    FindingSubject.CylinderPressure,
                    FormattableString.Invariant($"The discharge pressure reaches the cut-out at {machine.HighPressureCutout.Kilopascals:F0} kPa absolute; the machine stops at {reached}. Cool the cylinder or the condenser."),
                    Model));
                break;
            case StageEnd.CylinderPressure:
                findings.Add(new Finding(
                    Severity.Warning,
                    FindingSubject.CylinderPressure,
                    FormattableString.Invariant($"The cylinder reaches {cylinder!.Pressure.Kilopascals:F0} kPa absolute, the most that it is built to see at work; stop at {reached}. Cool it before going on."),
                    "49 CFR 173.301, from memory"));
                break;
            case StageEnd.ThermalCutout:
                findings.Add(new Finding(
                    Severity.Warning, FindingSubject.Machine, $"The thermal cut-out stops the machine at {reached}: let it rest.", Model));
                break;
            case StageEnd.Stalled:
                findings.Add(new Finding(
                    Severity.Warning,
                    FindingSubject.EvacuationLevel,
                    FormattableString.Invariant($"The machine moves next to nothing any more at {reached}: against {Discharge(options, cylinder) / 1000:F0} kPa its deepest vacuum is {machine.DeepestVacuum(new Pressure(Discharge(options, cylinder), UnitsNet.Units.PressureUnit.Pascal)).Kilopascals:F1} kPa absolute. A cooler cylinder helps."),
                    "re-expansion from the clearance volume"));
                break;
            case StageEnd.LowPressureSwitch:
                findings.Add(new Finding(
                    Severity.Caution, FindingSubject.Machine, $"The low-pressure switch stops the machine at {reached}.", "low-pressure switch of the machine"));
                break;
            case StageEnd.TimeLimit:
                findings.Add(new Finding(
                    Severity.Warning,
                    FindingSubject.EvacuationLevel,
                    FormattableString.Invariant($"Not done after {options.MaximumDuration.Hours:G4} h: {reached}."),
                    "the time allowed"));
                break;
            case StageEnd.PropertyRange when DryIce.CanForm(appliance.Fluid) && state.HasLiquid:
                findings.Add(new Finding(
                    Severity.Warning,
                    FindingSubject.Freezing,
                    $"{appliance.Fluid.Designation} comes to its triple point, {DryIce.TriplePoint(appliance.Fluid)}: what is still liquid would turn to dry ice from here on, which is not computed: {reached}. Pull slower or put heat in, and stay above it.",
                    appliance.Fluid.Model.Source));
                break;
            case StageEnd.PropertyRange:
                findings.Add(new Finding(
                    Severity.Warning,
                    FindingSubject.EvacuationLevel,
                    FormattableString.Invariant($"The refrigerant leaves the range of its equation of state near {state.Temperature.Kelvins:F1} K; the simulation holds up to there: {reached}."),
                    "validity range of the equation of state"));
                break;
            case StageEnd.StepLimit:
                findings.Add(new Finding(
                    Severity.Warning, FindingSubject.Estimate, $"The integration reached its bound on steps; it holds up to {reached}.", "bound on integration steps"));
                break;
        }
    }

    private static void Liquid(List<Finding> findings, StageEnd end, ApplianceState state)
    {
        foreach (SectionContent section in state.Sections)
        {
            if (state.Sections.Count > 1 && section.Pressure.Pascals > (1 + HiddenPressure) * state.Pressure.Pascals)
            {
                findings.Add(new Finding(
                    Severity.Warning,
                    FindingSubject.LiquidLeftBehind,
                    FormattableString.Invariant($"The gauge shows {state.Pressure.Kilopascals:F0} kPa absolute, but in the section \"{section.Name}\" stand {section.Pressure.Kilopascals:F0} kPa and {section.Mass.Kilograms:G3} kg that no gauge there shows: open what separates it, or draw from it too."),
                    Model));
            }
        }

        if (end == StageEnd.TargetReached && state.HasLiquid)
        {
            findings.Add(new Finding(
                Severity.Warning,
                FindingSubject.LiquidLeftBehind,
                FormattableString.Invariant($"The pressure is reached over cold liquid: {state.LiquidMass.Kilograms:G3} kg at {state.Temperature.DegreesCelsius:F0} °C. Hold, let it warm, watch the pressure come back and pull again."),
                Model));
        }
    }

    private static void Freezing(List<Finding> findings, Appliance appliance, StageFigures figures)
    {
        if (appliance.Water is not null && figures.Coldest <= MetalShell.FreezingPoint)
        {
            double at = double.IsNaN(figures.FreezingAt) ? 0 : figures.FreezingAt;
            findings.Add(new Finding(
                Severity.Warning,
                FindingSubject.Freezing,
                FormattableString.Invariant($"Water in the tubes can freeze and burst them: the surface reaches 0 °C after {at / 60:F1} min and {figures.Coldest - MetalShell.FreezingPoint:F1} °C at the coldest. Keep the water moving or drain it, and pull slower; licensed practice governs."),
                Sources.CommonPractice));
        }
    }

    private static void Discharge(List<Finding> findings, StageFigures figures)
    {
        double discharge = figures.HottestDischarge - MetalShell.FreezingPoint;
        if (discharge > WarmDischarge)
        {
            bool hot = discharge > HotDischarge;
            findings.Add(new Finding(
                hot ? Severity.Caution : Severity.Note,
                FindingSubject.Machine,
                FormattableString.Invariant($"Discharge gas of the machine comes to {discharge:F0} °C, {(hot ? "beyond what its oil stands (149 °C, 300 °F)" : "close to what its oil stands (149 °C, 300 °F)")}: let it rest, or cool the cylinder."),
                Sources.CommonPractice));
        }
    }

    private static void Estimates(List<Finding> findings, Appliance appliance, ApplianceState state)
    {
        if (appliance.HeatResistance is null)
        {
            findings.Add(new Finding(
                Severity.Note,
                FindingSubject.Estimate,
                FormattableString.Invariant($"No heat resistance was given: {appliance.OuterConductance:G2} W/K, still air on an appliance of its volume, stands in. Times and what stays behind depend on it."),
                Sources.CommonPractice));
        }

        if (appliance.Oil is not null)
        {
            findings.Add(new Finding(
                Severity.Note,
                FindingSubject.Oil,
                FormattableString.Invariant($"When the pull ends the oil still holds some {state.DissolvedMass.Kilograms:G2} kg of refrigerant and gives it off late; an estimate, real oils hold up to three times as much at low pressure."),
                "Raoult's law; the factor from memory"));
        }

        SaturationViscosity viscosity = appliance.Fluid.Model.ViscosityAtSaturation(
            Math.Min(0.9 * appliance.Fluid.Model.CriticalTemperature, Math.Max(appliance.Fluid.Model.Range.MinimumTemperature, state.Vessel.Bulk.Temperature)));
        if (viscosity.IsEstimate)
        {
            findings.Add(new Finding(
                Severity.Note,
                FindingSubject.Estimate,
                FormattableString.Invariant($"The viscosity of {appliance.Fluid.Designation} is estimated: {viscosity.Vapor * 1e6:F1} µPa·s for the vapor. Hose flow moves by a few percent with it."),
                "estimate, no published correlation in the package"));
        }
    }

    private static double Discharge(VaporRecoveryOptions options, CylinderState? cylinder) =>
        cylinder?.Pressure.Pascals ?? options.ReceiverPressure?.Pascals ?? 0;
}
