using System;
using UnitsNet;

namespace Refrigerant.Recovery.Estimation;

/// <summary>An estimated quantity with the bounds between which it lies nine times out of ten. Immutable.</summary>
/// <typeparam name="TQuantity">The quantity.</typeparam>
public readonly record struct QuantityRange<TQuantity>
    where TQuantity : struct, IQuantity
{
    internal QuantityRange(TQuantity low, TQuantity best, TQuantity high)
    {
        Low = low;
        Best = best;
        High = high;
    }

    /// <summary>5 % lie below.</summary>
    public TQuantity Low { get; }

    /// <summary>The median.</summary>
    public TQuantity Best { get; }

    /// <summary>5 % lie above.</summary>
    public TQuantity High { get; }

    /// <summary>Best value and bounds in the unit of the best, culture-invariant.</summary>
    public override string ToString()
    {
        Enum unit = Best.Unit;
        return FormattableString.Invariant($"{Best.As(unit):G4} ({Low.As(unit):G4} to {High.As(unit):G4}) {unit}");
    }
}
