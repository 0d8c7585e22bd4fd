using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>The cylinders: room, fitness, heat.</summary>
internal static class CylinderFindings
{
    public static IEnumerable<Finding> ToDo(PlanRun run)
    {
        if (Room(run) is Finding room)
        {
            yield return room;
        }

        foreach (CylinderStanding cylinder in run.Cylinders)
        {
            bool used = cylinder.State is not null;
            foreach (Finding finding in cylinder.Limit.Findings.Where(finding => finding.Severity == Severity.Stop || (used && finding.Severity >= Severity.Warning)))
            {
                yield return finding;
            }
        }

        if (Cooling(run) is Finding cool)
        {
            yield return cool;
        }

        foreach (CylinderStanding cylinder in run.Cylinders)
        {
            if (cylinder.State is CylinderState state && run.Job.Barometer.ToGauge(state.Pressure) > cylinder.Cylinder.ServicePressure)
            {
                yield return new Finding(
                    PlanCodes.CylinderAboveService,
                    Severity.Warning,
                    "energy balance of the receiving cylinder",
                    $"{FindingValue.Text("cylinder", cylinder.Cylinder.Label)} ends at {FindingValue.GaugePressure("pressure", run.Job.Barometer.ToGauge(state.Pressure), RoundingMode.Up)}, above the {FindingValue.GaugePressure("service pressure", cylinder.Cylinder.ServicePressure, RoundingMode.Down)} it is marked for: cool it before it is moved.");
                yield break;
            }
        }
    }

    public static IEnumerable<Finding> Known(PlanRun run)
    {
        foreach (Finding finding in run.Cylinders.Where(cylinder => cylinder.State is not null)
            .SelectMany(cylinder => cylinder.Limit.Findings).Where(finding => finding.Severity == Severity.Caution))
        {
            yield return finding;
        }

        string[] unmarked =
        [
            .. run.Cylinders.Where(cylinder => cylinder.State is not null && (cylinder.Cylinder.RequalificationDue is null || cylinder.Cylinder.Specification is null))
                .Select(cylinder => cylinder.Cylinder.Label),
        ];
        if (unmarked.Length > 0)
        {
            yield return new Finding(
                PlanCodes.CylinderMarksUnchecked,
                Severity.Note,
                "49 CFR 180.205",
                $"Specification or requalification date of {FindingValue.Text("cylinders", string.Join(", ", unmarked))} were not given: read the marks before filling.");
        }
    }

    private static Finding? Room(PlanRun run)
    {
        if (run.Job.Cylinders.Count == 0)
        {
            return new Finding(
                PlanCodes.NoCylinder,
                Severity.Stop,
                Sources.CommonPractice,
                $"No cylinder is on hand: bring room for {FindingValue.Mass("charge", run.Job.Appliance.Charge, RoundingMode.Up)}.");
        }

        double room = run.Cylinders.Where(cylinder => cylinder.MayBeFilled).Sum(cylinder => cylinder.Limit.Room.Kilograms);
        bool full = Verdicts.For(run).Obstacle is LevelObstacle.CylindersFull or LevelObstacle.NoFitCylinder;
        double missing = run.Job.Appliance.Charge.Kilograms - room;
        return full && missing > 0
            ? new Finding(
                PlanCodes.CylinderRoomMissing,
                Severity.Stop,
                "cylinder filling limit",
                $"Bring room for {FindingValue.Mass("missing", new Mass(missing, MassUnit.Kilogram), RoundingMode.Up)} more: the cylinders on hand hold {FindingValue.Mass("room", new Mass(room, MassUnit.Kilogram), RoundingMode.Down)} of the {FindingValue.Mass("charge", run.Job.Appliance.Charge)}.")
            : null;
    }

    private static Finding? Cooling(PlanRun run)
    {
        PlannedStage[] cooled = [.. run.Stages.Where(stage => stage.Step.Reason is StepReason.Cool or StepReason.CoolerCylinder)];
        PlannedStage[] throttled = [.. run.Stages.Where(stage => stage.Step.Reason == StepReason.Throttle)];
        if (cooled.Length == 0 && throttled.Length == 0)
        {
            return null;
        }

        PlannedStage first = cooled.Length > 0 ? cooled[0] : throttled[0];
        CylinderStanding cylinder = run.Cylinders.First(c => c.Cylinder.Label == (first.CylinderBefore ?? first.Cylinder));
        double limit = CylinderCooling.Limit(run.Job, cylinder.Cylinder);
        FindingValue label = FindingValue.Text("cylinder", cylinder.Cylinder.Label);
        FindingValue most = FindingValue.GaugePressure("limit", run.Job.Barometer.ToGauge(new Pressure(limit, PressureUnit.Pascal)), RoundingMode.Down);
        if (cooled.Length == 0)
        {
            return new Finding(
                PlanCodes.ThrottleInlet,
                Severity.Warning,
                "energy balance of the receiving cylinder",
                $"{label} gets hot: throttle the inlet so that the gauge at the outlet stays below {most}, where machine or cylinder must stop. Ice and water around the cylinder make it faster.");
        }

        double rests = cooled.Where(stage => stage.Kind == StageKind.Rest).Sum(stage => stage.Duration.Seconds);
        SimulationInputs inputs = cooled.Select(stage => stage.Step.Inputs).FirstOrDefault(i => CylinderCooling.Cools(i));
        string how = inputs.CylinderSurroundings is double bath ? bath <= 274 ? "in ice and water" : "in water"
            : CylinderCooling.Cools(inputs) ? "in the stream of a fan"
            : "in the shade";
        FormattableString? rest = rests > 0 ? (FormattableString)$"{FindingValue.Number("rests", cooled.Count(stage => stage.Kind == StageKind.Rest), 3)} rests of {FindingValue.Duration("rest", new Duration(rests, DurationUnit.Second))} in all are in the plan." : null;
        bool changes = cooled.Any(stage => stage.Step.Reason == StepReason.CoolerCylinder);
        bool limited = run.Stages.Any(stage => stage.Result?.End is StageEnd.HighPressureCutout or StageEnd.CylinderPressure or StageEnd.ThermalCutout)
            || cooled.Any(stage => stage.Kind == StageKind.VaporRecovery);
        return new Finding(
            PlanCodes.CoolCylinder,
            Severity.Warning,
            limited ? "energy balance of the receiving cylinder" : "re-expansion from the clearance volume",
            !limited ? (FormattableString)$"{label} is too warm for the machine to pull deep enough against it: {(rests > 0 ? $"stand it {how} until it has cooled, then pull on" : "go on into a cooler one")}. It is not full." : $"{label} gets hot: stand it {FindingValue.Text("means", how)}, or it comes to {most}, where machine or cylinder must stop. It is not full.",
            rest,
            changes && limited ? (FormattableString)$"A cooler cylinder takes over meanwhile." : null);
    }
}
