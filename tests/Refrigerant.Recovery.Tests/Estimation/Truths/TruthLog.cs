using System.Collections.Generic;

namespace Refrigerant.Recovery.Tests.Estimation.Truths;

/// <summary>A simulated log.</summary>
public sealed class TruthLog
{
    public List<TruthSample> Samples { get; } = [];

    /// <summary>Time at which the level is first reached, s; NaN where it is not.</summary>
    public double EndTime { get; set; } = double.NaN;

    /// <summary>Flow at the end over what the machine would draw without losses: small near a stall.</summary>
    public double FlowShareAtEnd { get; set; } = 1;
}
