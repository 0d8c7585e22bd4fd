using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Calculators.Pages;

/// <summary>A plan as the page shows it; the only place that knows how the planner says it.</summary>
public sealed record PlanView(
    string Verdict,
    Duration Total,
    Mass Recovered,
    Mass Left,
    IReadOnlyList<PlanView.Stage> Stages,
    IReadOnlyList<CylinderUse> Cylinders,
    IReadOnlyList<PlanView.Point> Course,
    Pressure Level,
    IReadOnlyList<Finding> Findings,
    IReadOnlyList<Finding> Cautions)
{
    public static PlanView Of(RecoveryPlan plan) => new(
        plan.IsLevelReached ? "The required level is reached." : "The required level is not reached.",
        plan.TotalDuration,
        plan.Ledger.InCylinders,
        plan.Ledger.InAppliance,
        [.. plan.Stages.Select(stage => new Stage(Name(stage.Kind), stage.Cylinder ?? "–", stage.Start, stage.Duration, stage.Moved, stage.After.Pressure, stage.After.Temperature, stage.Kind, stage.Hookup))],
        plan.Cylinders,
        [.. plan.Course().Select(point => new Point(point.Time, point.Point.AppliancePressure, point.Point.ApplianceMass))],
        plan.Requirement.RequiredPressure,
        plan.Findings,
        plan.Cautions);

    /// <summary>The first stage of each kind: its hookup is that of the others.</summary>
    public IEnumerable<Stage> Hookups => Stages.GroupBy(stage => stage.Kind).Select(group => group.First());

    private static string Name(StageKind kind) => kind switch
    {
        StageKind.SetUp => "set up and weigh",
        StageKind.LiquidRecovery => "liquid through the machine",
        StageKind.Rest => "rest and cool",
        StageKind.Warm => "warm up",
        StageKind.OilDrain => "drain the machine's oil",
        StageKind.OilFill => "fill the machine's oil",
        StageKind.HoseSweep => "sweep the hoses",
        StageKind.Equalize => "let vapor across",
        StageKind.PushPull => "push-pull",
        StageKind.HoseChange => "change the hoses over",
        StageKind.VaporRecovery => "vapor recovery",
        StageKind.CylinderChange => "change the cylinder",
        StageKind.Hold => "hold and watch",
        StageKind.MachineClearing => "clear the machine",
        _ => "close and weigh",
    };

    public sealed record Stage(string Name, string Cylinder, Duration Start, Duration Duration, Mass Moved, Pressure Pressure, Temperature Temperature, StageKind Kind, Hookup Hookup);

    public sealed record Point(Duration Time, Pressure Pressure, Mass Mass);
}
