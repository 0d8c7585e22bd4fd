using System;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>One moment of a plan: the stage, the time since the start of the job, and the point of the stage's course.</summary>
public readonly record struct PlanPoint
{
    internal PlanPoint(PlannedStage stage, in TrajectoryPoint point)
    {
        Stage = stage;
        Point = point;
    }

    /// <summary>The stage it belongs to.</summary>
    public PlannedStage Stage { get; }

    /// <summary>The moment within the stage.</summary>
    public TrajectoryPoint Point { get; }

    /// <summary>Time since the start of the job.</summary>
    public Duration Time => new(Stage.Start.Seconds + Point.Time.Seconds, DurationUnit.Second);

    /// <summary>Stage and time since the start of the job.</summary>
    public override string ToString() => Stage is null ? "no point of a plan" : FormattableString.Invariant($"{Stage.Kind} at {Time.Minutes:F1} min");
}
