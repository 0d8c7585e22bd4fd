using System;

namespace Refrigerant.Recovery.Tests.Estimation.Truths;

/// <summary>A simulated job: the truth and what is told of it.</summary>
public sealed record SimulatedJob(string Kind, int Seed, double Charge, double Volume, double Displacement, Told Told, TruthLog Log)
{
    /// <summary>Whether it is one to be scored: it reaches its level, not at once, and not where the machine all but stalls.</summary>
    public bool IsScored => !double.IsNaN(Log.EndTime) && Log.EndTime >= 120 && Log.FlowShareAtEnd >= 0.25 && Log.Samples.Count > 20;

    public static SimulatedJob Draw(string kind, int seed, Fault? fault = null) => kind switch
    {
        "first" => TwoVesselTruth.Draw(seed, fault),
        "second" => WettedTruth.Draw(seed, fault),
        "third" => BoilingTruth.Draw(seed, fault),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "first, second or third"),
    };
}
