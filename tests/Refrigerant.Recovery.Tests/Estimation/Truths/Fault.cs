namespace Refrigerant.Recovery.Tests.Estimation.Truths;

/// <summary>Something that happens in a job, most of it wrong.</summary>
public sealed record Fault(FaultKind Kind, double At, double Size, double Until = double.PositiveInfinity)
{
    /// <summary>The first kind: time from which the machine rests with the valves open, for <see cref="RestTime"/>, whatever the level; s.</summary>
    public double RestAt { get; init; } = double.PositiveInfinity;

    /// <summary>s.</summary>
    public double RestTime { get; init; } = 2400;


    /// <summary>Whether it lasts at a time, s.</summary>
    public bool IsAt(double time) => time >= At && time < Until;
}

/// <summary>What happens.</summary>
public enum FaultKind
{
    /// <summary>The machine draws <see cref="Fault.Size"/> of what it should.</summary>
    Weak,

    /// <summary>The hose resists <see cref="Fault.Size"/> times more.</summary>
    Hose,

    /// <summary>The scale reads <see cref="Fault.Size"/> kg more.</summary>
    Pull,

    /// <summary>The scale gains <see cref="Fault.Size"/> kg a minute.</summary>
    Drift,

    /// <summary>The valve is shut, and nobody says so.</summary>
    Valve,

    /// <summary>Air leaks in below the atmosphere, <see cref="Fault.Size"/> mol/s into a vacuum.</summary>
    Leak,

    /// <summary>Nothing wrong: what surrounds the appliance is <see cref="Fault.Size"/> K warmer from now on.</summary>
    Heat,

    /// <summary>Nothing wrong: the machine rests for <see cref="Fault.Size"/> s, and the readings say so.</summary>
    Rest,

    /// <summary>Nothing wrong: <see cref="Fault.Size"/> kg of liquid are pushed out before vapor is drawn.</summary>
    Push,
}
