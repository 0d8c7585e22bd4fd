using System;
using System.Globalization;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Estimation;

/// <summary>A quantity as it was told, and as a log tells it. Immutable.</summary>
/// <typeparam name="T">A quantity, or a plain number.</typeparam>
public sealed record FittedValue<T>
    where T : struct, IFormattable
{
    /// <summary>Above this share of the spread that was there before, the log has said next to nothing.</summary>
    private const double MostSpread = 0.7;

    internal FittedValue(T told, T low, T best, T high, double spread)
    {
        Told = told;
        Low = low;
        Best = best;
        High = high;
        SpreadKept = new Ratio(spread, RatioUnit.DecimalFraction);
    }

    /// <summary>The value told.</summary>
    public T Told { get; }

    /// <summary>Lower end of the range that holds in nine cases of ten.</summary>
    public T Low { get; }

    /// <summary>The value that fits best.</summary>
    public T Best { get; }

    /// <summary>Upper end of the range that holds in nine cases of ten.</summary>
    public T High { get; }

    /// <summary>Standard deviation after the log over that before it, of the logarithm: 0 where the log told all, 1 where it told nothing.</summary>
    public Ratio SpreadKept { get; }

    /// <summary>Whether the log told it: less than 70 % of the spread is left.</summary>
    public bool IsIdentified => SpreadKept.DecimalFractions < MostSpread;

    /// <summary>Best value and range, culture-invariant.</summary>
    public override string ToString() => $"{Text(Best)} ({Text(Low)} to {Text(High)}; told {Text(Told)})";

    /// <summary>In the unit in which it was told.</summary>
    private string Text(T value) => value is double number ? Require.Text(Math.Round(number, 4))
        : value is IQuantity quantity && Told is IQuantity told ? quantity.ToUnit(told.Unit).ToString("G4", CultureInfo.InvariantCulture)
        : value.ToString("G4", CultureInfo.InvariantCulture);
}
