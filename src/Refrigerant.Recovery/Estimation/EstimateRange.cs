using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>An estimated figure with the bounds between which it lies nine times out of ten, plain SI.</summary>
public readonly record struct EstimateRange
{
    internal EstimateRange(double low, double best, double high)
    {
        Low = low;
        Best = best;
        High = high;
    }

    /// <summary>5 % lie below.</summary>
    public double Low { get; }

    /// <summary>The median.</summary>
    public double Best { get; }

    /// <summary>5 % lie above.</summary>
    public double High { get; }

    /// <summary>The three figures, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Best:G4} ({Low:G4} to {High:G4})");

    /// <summary>Whether a value lies between the bounds, or on one.</summary>
    /// <param name="value">The value, in the unit of the bounds.</param>
    public bool Contains(double value) => value >= Low && value <= High;

    internal EstimateRange Plus(double value) => new(Low + value, Best + value, High + value);

    internal EstimateRange Widened(double by) => new(Low - by, Best, High + by);

    internal EstimateRange AtLeast(double value) => new(Math.Max(Low, value), Math.Max(Best, value), Math.Max(High, value));
}
