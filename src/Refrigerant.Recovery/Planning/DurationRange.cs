using System;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>A time as a range: nine out of ten samples lie between low and high. Immutable.</summary>
public sealed record DurationRange
{
    internal DurationRange(double low, double median, double high)
    {
        Low = new Duration(low, DurationUnit.Second);
        Median = new Duration(median, DurationUnit.Second);
        High = new Duration(high, DurationUnit.Second);
    }

    /// <summary>5 % of the samples are shorter.</summary>
    public Duration Low { get; }

    /// <summary>Half of the samples are shorter.</summary>
    public Duration Median { get; }

    /// <summary>5 % of the samples are longer.</summary>
    public Duration High { get; }

    /// <summary>The range in minutes, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Median.Minutes:F0} min ({Low.Minutes:F0} to {High.Minutes:F0} min)");
}
