using System;

namespace Refrigerant.Recovery.Simulation;

/// <summary>Something that is watched while balances are integrated: it happens where its value falls from above zero to zero or below.</summary>
internal sealed class Watch(StageEnd end, Func<double> value, bool stops = true)
{
    /// <summary>Why a run ends there.</summary>
    public StageEnd End => end;

    /// <summary>Whether it ends the run.</summary>
    public bool Stops => stops;

    /// <summary>When it happened, s; not a number until then.</summary>
    public double FiredAt { get; set; } = double.NaN;

    /// <summary>Its value, of vessels and links as they stand.</summary>
    public double Value() => value();
}
