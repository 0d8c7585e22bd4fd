using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>What a simulated stage came to. Immutable. Planning figures: local codes and licensed practice govern.</summary>
public abstract class StageResult
{
    private protected StageResult(
        StageEnd end, double seconds, double recovered, double remaining, Trajectory trajectory, IReadOnlyList<Finding> findings, Closure closure)
    {
        End = end;
        Duration = new Duration(seconds, DurationUnit.Second);
        RecoveredMass = new Mass(recovered, MassUnit.Kilogram);
        RemainingMass = new Mass(remaining, MassUnit.Kilogram);
        Trajectory = trajectory;
        Findings = findings;
        Closure = closure;
    }

    /// <summary>Why it ended.</summary>
    public StageEnd End { get; }

    /// <summary>How long it takes.</summary>
    public Duration Duration { get; }

    /// <summary>Refrigerant taken out of the appliance in this stage.</summary>
    public Mass RecoveredMass { get; }

    /// <summary>Refrigerant left in the appliance, what its oil holds included.</summary>
    public Mass RemainingMass { get; }

    /// <summary>Its course.</summary>
    public Trajectory Trajectory { get; }

    /// <summary>What to know, heaviest first.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>How well mass and energy balance.</summary>
    public Closure Closure { get; }
}
