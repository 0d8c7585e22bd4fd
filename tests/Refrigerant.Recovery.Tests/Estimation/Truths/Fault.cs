namespace Refrigerant.Recovery.Tests.Estimation.Truths;

/// <summary>Something that goes wrong.</summary>
public sealed record Fault(FaultKind Kind, double At, double Size);

/// <summary>What goes wrong.</summary>
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
}
