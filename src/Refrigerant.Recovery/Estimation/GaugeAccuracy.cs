using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Estimation;

/// <summary>How far a pressure gauge may be off. Immutable.</summary>
public sealed record GaugeAccuracy
{
    private const double LowestClass = 0.01;
    private const double HighestClass = 10;
    private const double LargestSpan = 1e8;

    private GaugeAccuracy(double low, double high, double limit)
    {
        Low = new Pressure(low, PressureUnit.Pascal);
        High = new Pressure(high, PressureUnit.Pascal);
        ErrorLimitPascals = limit;
    }

    /// <summary>Lowest reading of its scale, gauge.</summary>
    public Pressure Low { get; }

    /// <summary>Highest reading of its scale, gauge.</summary>
    public Pressure High { get; }

    /// <summary>The largest error that its class allows.</summary>
    public Pressure ErrorLimit => new(ErrorLimitPascals, PressureUnit.Pascal);

    internal double ErrorLimitPascals { get; }

    /// <summary>A gauge by its accuracy class: the largest error as a percentage of the span (EN 837-1).</summary>
    /// <param name="accuracyClass">The class as marked, 0.01 to 10: 1, 1.6, 2.5.</param>
    /// <param name="low">Lowest reading, gauge; negative where it shows a vacuum, not below −200 kPa.</param>
    /// <param name="high">Highest reading, gauge; above the lowest, the span at most 100 MPa.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static GaugeAccuracy FromClass(double accuracyClass, Pressure low, Pressure high)
    {
        Require.InRange(accuracyClass, LowestClass, HighestClass, "% of the span", nameof(accuracyClass));
        double from = Require.InRange(low.Pascals, -200_000, LargestSpan, "Pa gauge", nameof(low));
        double to = Require.InRange(high.Pascals, from + 1000, from + LargestSpan, "Pa gauge", nameof(high));
        return new GaugeAccuracy(from, to, 0.01 * accuracyClass * (to - from));
    }

    /// <summary>Scale and largest error, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"gauge from {Low.Kilopascals:G6} to {High.Kilopascals:G6} kPa, ±{ErrorLimit.Kilopascals:G4} kPa");
}
