using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
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
        End(findings, appliance, machine, options, end, figures, state, after.Cylinder);
        Liquid(findings, end, state);
        Freezing(findings, appliance, figures);
        Discharge(findings, figures);
        if (figures.SuctionLineShare < SlowLine)
        {
            FindingValue share = FindingValue.Fraction("share", figures.SuctionLineShare);
            findings.Add(new Finding(
                PlanCodes.HosesSlow,
                Severity.Note,
                "isothermal compressible flow with friction (Crane TP-410)",
                $"The suction hoses let through {share} of what the machine could draw{(figures.WasChoked ? ", choked in part" : string.Empty)}: shorter or wider hoses and removed valve cores make it faster."));
        }

        Estimates(findings, appliance, state);
    }

    private static void End(
        List<Finding> findings, Appliance appliance, RecoveryMachine machine, VaporRecoveryOptions options, StageEnd end, StageFigures figures, ApplianceState state, CylinderState? cylinder)
    {
        FindingValue at = FindingValue.AbsolutePressure("reached", state.Pressure);
        FindingValue left = FindingValue.Mass("left", state.Mass);
        FormattableString where = $"It comes to {at} with {left} left.";
        void Say(FindingCode code, Severity severity, string source, FormattableString text) => findings.Add(new Finding(code, severity, source, text, where));
        switch (end)
        {
            case StageEnd.CylinderFull:
                Say(StageCodes.CylinderFull, Severity.Caution, "cylinder filling limit", $"The cylinder reaches its limit: close it and change over.");
                break;
            case StageEnd.HighPressureCutout:
                FindingValue cutout = FindingValue.AbsolutePressure("cut-out", machine.HighPressureCutout);
                Say(StageCodes.HighPressureCutout, Severity.Warning, Model, $"The discharge pressure reaches the cut-out at {cutout} and the machine stops: cool the cylinder or the condenser.");
                break;
            case StageEnd.CylinderPressure:
                FindingValue pressure = FindingValue.AbsolutePressure("cylinder", cylinder!.Pressure);
                Say(StageCodes.CylinderPressure, Severity.Warning, "49 CFR 173.301, from memory", $"The cylinder reaches {pressure}, the most that it is built to see at work: stop, and cool it before going on.");
                break;
            case StageEnd.ThermalCutout:
                Say(StageCodes.ThermalCutout, Severity.Warning, Model, $"The thermal cut-out stops the machine: let it rest.");
                break;
            case StageEnd.Stalled:
                var against = new Pressure(Discharge(options, cylinder), UnitsNet.Units.PressureUnit.Pascal);
                FindingValue deepest = FindingValue.AbsolutePressure("deepest vacuum", machine.DeepestVacuum(against));
                Say(
                    StageCodes.DeepestVacuum,
                    Severity.Warning,
                    "re-expansion from the clearance volume",
                    $"The machine moves next to nothing any more: against {FindingValue.AbsolutePressure("discharge", against)} its deepest vacuum is {deepest}. A cooler cylinder helps.");
                break;
            case StageEnd.LowPressureSwitch:
                Say(StageCodes.LowPressureSwitch, Severity.Caution, "low-pressure switch of the machine", $"The low-pressure switch stops the machine.");
                break;
            case StageEnd.TimeLimit:
                Say(StageCodes.TimeOver, Severity.Warning, "the time allowed", $"Not done after {FindingValue.Duration("time", options.MaximumDuration)}.");
                break;
            case StageEnd.PropertyRange when figures.CylinderOutOfRange:
                findings.Add(CylinderOutOfRange(appliance, cylinder!, where));
                break;
            case StageEnd.PropertyRange when DryIce.CanForm(appliance.Fluid) && state.HasLiquid:
                (FindingValue triple, FindingValue freezes) = DryIce.TriplePoint(appliance.Fluid);
                Say(
                    StageCodes.DryIce,
                    Severity.Warning,
                    appliance.Fluid.Model.Source,
                    $"{FindingValue.Text("refrigerant", appliance.Fluid.Designation)} comes to its triple point, {triple} and {freezes}: what is still liquid would turn to dry ice from here on, which is not computed. Pull slower or put heat in, and stay above it.");
                break;
            case StageEnd.PropertyRange:
                FindingValue temperature = FindingValue.Temperature("temperature", state.Temperature);
                Say(StageCodes.OutOfRange, Severity.Warning, "validity range of the equation of state", $"The refrigerant leaves the range of its equation of state near {temperature}; the simulation holds up to there.");
                break;
            case StageEnd.StepLimit:
                Say(StageCodes.StepLimit, Severity.Warning, "bound on integration steps", $"The integration reached its bound on steps; it holds up to there.");
                break;
        }
    }

    /// <summary>It is the content of the cylinder that leaves the range of its equation.</summary>
    public static Finding CylinderOutOfRange(Appliance appliance, CylinderState cylinder, FormattableString where) => new(
        StageCodes.CylinderOutOfRange,
        Severity.Warning,
        appliance.Fluid.Model.Source,
        $"The content of the cylinder, not that of the appliance, leaves the range of its equation of state, at {FindingValue.Temperature("cylinder", cylinder.Temperature)} and {FindingValue.AbsolutePressure("cylinder pressure", cylinder.Pressure)}: what comes over flashes{(DryIce.CanForm(appliance.Fluid) ? " and would turn to dry ice" : string.Empty)} there, which is not computed. Let vapor in slowly until the cylinder has more pressure.",
        where);

    private static void Liquid(List<Finding> findings, StageEnd end, ApplianceState state)
    {
        double open = 0;
        foreach (SectionContent section in state.Sections)
        {
            if (state.Sections.Count > 1 && section.Pressure.Pascals > (1 + HiddenPressure) * state.Pressure.Pascals)
            {
                FindingValue shown = FindingValue.AbsolutePressure("gauge", state.Pressure);
                FindingValue there = FindingValue.AbsolutePressure("pressure", section.Pressure);
                findings.Add(new Finding(
                    PlanCodes.HiddenSection,
                    Severity.Warning,
                    Model,
                    $"The gauge shows {shown}, but in the section \"{FindingValue.Text("section", section.Name)}\" stand {there} and {FindingValue.Mass("mass", section.Mass)} that no gauge there shows: open what separates it, or draw from it too."));
            }
            else
            {
                open += section.LiquidMass.Kilograms;
            }
        }

        if (end == StageEnd.TargetReached && open > 0)
        {
            findings.Add(new Finding(
                StageCodes.OverColdLiquid,
                Severity.Warning,
                Model,
                $"The pressure is reached over cold liquid: {FindingValue.Kilograms("liquid", open)} at {FindingValue.Temperature("temperature", state.Temperature)}. Hold, let it warm, watch the pressure come back and pull again."));
        }
    }

    private static void Freezing(List<Finding> findings, Appliance appliance, StageFigures figures)
    {
        if (appliance.Water is not null && figures.Coldest <= MetalShell.FreezingPoint)
        {
            double seconds = double.IsNaN(figures.FreezingAt) ? 0 : figures.FreezingAt;
            FindingValue after = FindingValue.Seconds("after", seconds);
            FindingValue zero = FindingValue.Kelvins("freezing", MetalShell.FreezingPoint);
            findings.Add(new Finding(
                PlanCodes.TubesFreeze,
                Severity.Warning,
                Sources.CommonPractice,
                $"Water in the tubes can freeze and burst them: the surface reaches {zero} after {after} and {FindingValue.Kelvins("coldest", figures.Coldest, RoundingMode.Down)} at the coldest. Keep the water moving or drain it, and pull slower; licensed practice governs."));
        }
    }

    private static void Discharge(List<Finding> findings, StageFigures figures)
    {
        double discharge = figures.HottestDischarge - MetalShell.FreezingPoint;
        if (discharge > WarmDischarge)
        {
            bool hot = discharge > HotDischarge;
            FindingValue stands = FindingValue.Kelvins("oil stands", HotDischarge + MetalShell.FreezingPoint);
            findings.Add(new Finding(
                PlanCodes.MachineHot,
                hot ? Severity.Caution : Severity.Note,
                Sources.CommonPractice,
                $"Discharge gas of the machine comes to {FindingValue.Kelvins("discharge", figures.HottestDischarge)}, {(hot ? "beyond" : "close to")} what its oil stands ({stands}): let it rest, or cool the cylinder."));
        }
    }

    private static void Estimates(List<Finding> findings, Appliance appliance, ApplianceState state)
    {
        if (appliance.HeatResistance is null)
        {
            findings.Add(new Finding(
                PlanCodes.HeatAssumed,
                Severity.Note,
                Sources.CommonPractice,
                $"No heat resistance was given: {FindingValue.Number("conductance in W/K", appliance.OuterConductance, 2)} W/K, still air on an appliance of its volume, stands in. Times and what stays behind depend on it."));
        }

        if (appliance.Oil is not null)
        {
            findings.Add(new Finding(
                PlanCodes.OilHolds,
                Severity.Note,
                "Raoult's law; the factor from memory",
                $"When the pull ends the oil still holds some {FindingValue.Mass("dissolved", state.DissolvedMass)} of refrigerant and gives it off late; an estimate, real oils hold up to three times as much at low pressure."));
        }

        SaturationViscosity viscosity = appliance.Fluid.Model.ViscosityAtSaturation(
            Math.Min(0.9 * appliance.Fluid.Model.CriticalTemperature, Math.Max(appliance.Fluid.Model.Range.MinimumTemperature, state.Vessel.Bulk.Temperature)));
        if (viscosity.IsEstimate)
        {
            findings.Add(new Finding(
                StageCodes.ViscosityEstimated,
                Severity.Note,
                "estimate, no published correlation in the package",
                $"The viscosity of {FindingValue.Text("refrigerant", appliance.Fluid.Designation)} is estimated: {FindingValue.Number("vapor in µPa·s", viscosity.Vapor * 1e6)} µPa·s for the vapor. Hose flow moves by a few percent with it."));
        }
    }

    private static double Discharge(VaporRecoveryOptions options, CylinderState? cylinder) =>
        cylinder?.Pressure.Pascals ?? options.ReceiverPressure?.Pascals ?? 0;
}
