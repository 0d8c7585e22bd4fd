using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>The cylinders: room, fitness, heat.</summary>
internal static class CylinderFindings
{
    /// <summary>No cylinder is to get warmer than this, K: 52 °C, 125 °F (common practice, no source).</summary>
    public const double Hottest = 325.15;

    /// <summary>What a cylinder filled to its limit does is worth a word where the plan comes to this share of it. Our choice.</summary>
    private const double NearLimit = 0.8;

    public static IEnumerable<Finding> ToDo(PlanRun run)
    {
        if (Room(run) is Finding room)
        {
            yield return room;
        }

        // One matter, one finding: the first cylinder speaks for the others.
        var stops = run.Cylinders.Where(cylinder => !IsSpare(run, cylinder)).SelectMany(cylinder => cylinder.Findings.Select(finding => (Finding: finding, cylinder.Cylinder.Label)));
        foreach (var same in stops.Where(stop => stop.Finding.Severity == Severity.Stop).GroupBy(stop => stop.Finding.Code))
        {
            string[] labels = [.. same.Select(stop => stop.Label).Distinct()];
            Finding first = same.First().Finding;
            yield return labels.Length == 1 ? first : first.As(Severity.Stop, $"For {FindingValue.Text("cylinders", string.Join(", ", labels))} alike:");
        }

        foreach (CylinderStanding cylinder in run.Cylinders)
        {
            foreach (Finding finding in cylinder.Findings.Where(finding => finding.Severity != Severity.Stop && Matters(cylinder, finding, Severity.Warning)))
            {
                yield return finding;
            }

            if (JobChecks.IsFullOfLiquid(run.Job, cylinder.Cylinder))
            {
                yield return new Finding(
                    PlanCodes.CylinderFullOfLiquid,
                    Severity.Stop,
                    run.Job.Appliance.Fluid.Model.Source,
                    $"At {FindingValue.Temperature("air", run.Ambient)} the {FindingValue.Mass("content", cylinder.Cylinder.Content)} in {FindingValue.Text("cylinder", cylinder.Cylinder.Label)} fill it with liquid: it can burst. Check the weight; if it is right keep people away, and let it be cooled and emptied by those trained for it.");
            }
        }

        if (Hot(run) is Finding hot)
        {
            yield return hot;
        }

        if (Cooling(run) is Finding cool)
        {
            yield return cool;
        }

        CylinderStanding[] above =
        [
            .. run.Cylinders.Where(cylinder => cylinder.State is CylinderState state && run.Job.Barometer.ToGauge(state.Pressure) > cylinder.Cylinder.ServicePressure)
                .OrderByDescending(cylinder => cylinder.State!.Pressure / cylinder.Cylinder.ServicePressure),
        ];
        if (above.Length > 0)
        {
            RecoveryCylinder worst = above[0].Cylinder;
            yield return new Finding(
                PlanCodes.CylinderAboveService,
                Severity.Warning,
                "energy balance of the receiving cylinder",
                $"{FindingValue.Text("cylinder", worst.Label)} ends at {FindingValue.GaugePressure("pressure", run.Job.Barometer.ToGauge(above[0].State!.Pressure), RoundingMode.Up)}, above the {FindingValue.GaugePressure("service pressure", worst.ServicePressure, RoundingMode.Down)} it is marked for: cool it before it is moved.",
                above.Length > 1 ? (FormattableString)$"{FindingValue.Text("others", string.Join(", ", above.Skip(1).Select(other => other.Cylinder.Label)))} {FindingValue.Text("verb", above.Length > 2 ? "end" : "ends")} above it too." : null);
        }
    }

    public static IEnumerable<Finding> Known(PlanRun run)
    {
        var spare = run.Cylinders.Where(cylinder => IsSpare(run, cylinder)).SelectMany(cylinder => cylinder.Findings.Select(finding => (Finding: finding, cylinder.Cylinder.Label)));
        foreach (var same in spare.Where(stop => stop.Finding.Severity == Severity.Stop).GroupBy(stop => stop.Finding.Code))
        {
            string[] labels = [.. same.Select(stop => stop.Label).Distinct()];
            yield return same.First().Finding.As(
                Severity.Note,
                labels.Length == 1 ? (FormattableString)$"{FindingValue.Text("cylinder", labels[0])} is not used." : (FormattableString)$"{FindingValue.Text("cylinders", string.Join(", ", labels))} are not used, for one reason:");
        }

        foreach (CylinderStanding cylinder in run.Cylinders)
        {
            foreach (Finding finding in cylinder.Findings)
            {
                if (finding.Code == CylinderCodes.MarksOdd.Id || (finding.Severity == Severity.Caution && Matters(cylinder, finding, Severity.Caution)))
                {
                    yield return finding;
                }
            }
        }

        string[] undated = run.Job.Day is not null ? [] :
            [.. run.Cylinders.Where(cylinder => cylinder.State is not null && cylinder.Cylinder.RequalificationDue is not null)
                .Select(cylinder => FormattableString.Invariant($"{cylinder.Cylinder.Label} ({cylinder.Cylinder.RequalificationDue:yyyy-MM-dd})"))];
        if (undated.Length > 0)
        {
            yield return new Finding(
                PlanCodes.CylinderDueUnchecked,
                Severity.Caution,
                "49 CFR 173.301(a)(6)",
                $"The day of the job was not given: see that these are not overdue for requalification: {FindingValue.Text("cylinders", string.Join(", ", undated))}.");
        }

        string[] empty = [.. run.Cylinders.Where(cylinder => cylinder.State is not null && cylinder.Cylinder.Content.Kilograms == 0).Select(cylinder => cylinder.Cylinder.Label)];
        if (empty.Length > 0)
        {
            yield return new Finding(
                PlanCodes.CylinderTakenEvacuated,
                Severity.Note,
                Sources.CommonPractice,
                $"{FindingValue.Text("cylinders", string.Join(", ", empty))}: taken as empty and evacuated. Air left in one adds several times the pressure of the air to it as liquid takes the room.");
        }

        string[] unmarked =
        [
            .. run.Cylinders.Where(cylinder => cylinder.State is not null && (cylinder.Cylinder.RequalificationDue is null || cylinder.Cylinder.Specification is null))
                .Select(cylinder => cylinder.Cylinder.Label + (cylinder.Cylinder.Specification is not null ? " (requalification date)" : cylinder.Cylinder.RequalificationDue is not null ? " (specification)" : " (specification, requalification date)")),
        ];
        if (unmarked.Length > 0)
        {
            yield return new Finding(
                PlanCodes.CylinderMarksUnchecked,
                Severity.Note,
                "49 CFR 180.205",
                $"Not given of cylinders: {FindingValue.Text("cylinders", string.Join(", ", unmarked))}. Read the marks before filling.");
        }
    }

    /// <summary>Whether the plan gets by without a cylinder that must not be filled.</summary>
    private static bool IsSpare(PlanRun run, CylinderStanding cylinder) =>
        cylinder.State is null
        && run.Cylinders.Any(other => other.State is not null)
        && Verdicts.For(run).Obstacle is not (LevelObstacle.CylindersFull or LevelObstacle.NoFitCylinder)
        && !(cylinder.Cylinder.Content > cylinder.Limit.MaximumFill);

    /// <summary>Whether a finding on the limit of a cylinder touches this plan: what holds at the limit does near it.</summary>
    private static bool Matters(CylinderStanding cylinder, Finding finding, Severity least)
    {
        bool atLimit = finding.Code == CylinderCodes.WaterCapacityRule.Id || finding.Code == CylinderCodes.LiquidFullWhenWarm.Id;
        return cylinder.State is CylinderState state
            && finding.Severity >= least
            && (!atLimit || state.Mass.Kilograms >= NearLimit * cylinder.Limit.MaximumFill.Kilograms);
    }

    /// <summary>The hottest that the content of a cylinder, or its wall at the end, comes to.</summary>
    private static Finding? Hot(PlanRun run)
    {
        CylinderStanding? hottest = null;
        double most = Hottest;
        foreach (CylinderStanding cylinder in run.Cylinders.Where(cylinder => cylinder.State is not null))
        {
            double kelvins = run.Stages.Where(stage => stage.Cylinder == cylinder.Cylinder.Label && stage.Result is { Before.Cylinder: not null })
                .SelectMany(stage => stage.Result!.Trajectory).Select(point => point.CylinderKelvins)
                .Concat([cylinder.State!.Temperature.Kelvins, cylinder.State.WallKelvins]).Max();
            if (kelvins > most)
            {
                most = kelvins;
                hottest = cylinder;
            }
        }

        return hottest is null ? null : new Finding(
            PlanCodes.CylinderHot,
            Severity.Warning,
            Sources.CommonPractice,
            $"{FindingValue.Text("cylinder", hottest.Cylinder.Label)} comes to {FindingValue.Kelvins("hottest", most, RoundingMode.Up)}: no cylinder is to be warmer than {FindingValue.Kelvins("limit", Hottest, RoundingMode.Down)}. Keep it out of the sun, stand it in water or ice, pull slower or change over to a cooler one.");
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
                $"Bring room for {FindingValue.Mass("missing", new Mass(missing, MassUnit.Kilogram), room > 0 ? RoundingMode.Up : RoundingMode.Nearest)} more: the cylinders on hand hold {FindingValue.Mass("room", new Mass(room, MassUnit.Kilogram))} of the {FindingValue.Mass("charge", run.Job.Appliance.Charge)}.")
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
        int times = cooled.Count(stage => stage.Kind == StageKind.Rest);
        FindingValue resting = FindingValue.Duration("rest", new Duration(rests, DurationUnit.Second));
        FormattableString? rest = rests <= 0 ? null
            : times == 1 ? (FormattableString)$"A rest of {resting} is in the plan."
            : (FormattableString)$"{FindingValue.Number("rests", times, 3)} rests, {resting} in all, are in the plan.";
        bool changes = cooled.Any(stage => stage.Step.Reason == StepReason.CoolerCylinder);
        bool limited = run.Stages.Any(stage => stage.Result?.End is StageEnd.HighPressureCutout or StageEnd.CylinderPressure)
            || first.Kind == StageKind.VaporRecovery;
        if (!limited && run.Stages.Any(stage => stage.Result?.End == StageEnd.ThermalCutout))
        {
            return new Finding(
                PlanCodes.CoolCylinder,
                Severity.Warning,
                "energy balance of the machine",
                $"The machine gets too hot and its thermal cut-out stops it: let it cool, then pull on. A cooler cylinder, or one more stage, keeps it cooler.",
                rest);
        }

        return new Finding(
            PlanCodes.CoolCylinder,
            Severity.Warning,
            limited ? "energy balance of the receiving cylinder" : "re-expansion from the clearance volume",
            !limited ? (FormattableString)$"{label} is too warm for the machine to pull deep enough against it: {(rests > 0 ? $"stand it {how} until it has cooled, then pull on" : "go on into a cooler one")}. It is not full." : $"{label} gets hot: stand it {FindingValue.Text("means", how)}, or it comes to {most}, where machine or cylinder must stop. It is not full.",
            rest,
            changes && limited ? (FormattableString)$"A cooler cylinder takes over meanwhile." : null);
    }
}
