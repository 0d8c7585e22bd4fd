using System;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>A setup and what it comes to. Immutable.</summary>
public sealed class SetupOutcome
{
    internal SetupOutcome(string name, RecoveryPlan plan, Duration asItIs)
    {
        Name = name;
        Plan = plan;
        Saved = new Duration(asItIs.Seconds - plan.TotalDuration.Seconds, DurationUnit.Second);
    }

    /// <summary>What is different about the setup.</summary>
    public string Name { get; }

    /// <summary>The plan with it.</summary>
    public RecoveryPlan Plan { get; }

    /// <summary>Time saved against the job as it is; negative where it takes longer.</summary>
    public Duration Saved { get; }

    /// <summary>Name, time and time saved, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Name}: {Plan.TotalDuration.Minutes:F0} min ({Saved.Minutes:+0;-0;0} min saved), level {(Plan.IsLevelReached ? "reached" : "not reached")}");
}
