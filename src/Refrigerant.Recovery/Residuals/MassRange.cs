using System;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Residuals;

/// <summary>A mass with the bounds between which it lies. Immutable.</summary>
public readonly record struct MassRange
{
    internal MassRange(double low, double best, double high, bool isLowerBound = false)
    {
        IsLowerBound = isLowerBound;
        LowKilograms = low;
        BestKilograms = best;
        HighKilograms = high;
    }

    /// <summary>Lower bound.</summary>
    public Mass Low => new(LowKilograms, MassUnit.Kilogram);

    /// <summary>Best estimate.</summary>
    public Mass Best => new(BestKilograms, MassUnit.Kilogram);

    /// <summary>Upper bound.</summary>
    public Mass High => new(HighKilograms, MassUnit.Kilogram);

    /// <summary>Whether all three are what there is at least: the real mass may lie above <see cref="High"/> by an amount that cannot be told.</summary>
    public bool IsLowerBound { get; }

    internal double LowKilograms { get; }

    internal double BestKilograms { get; }

    internal double HighKilograms { get; }

    /// <summary>The three figures and whether they are a lower bound, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{(IsLowerBound ? "at least " : string.Empty)}{BestKilograms:G4} kg ({LowKilograms:G4} to {HighKilograms:G4} kg)");

    internal MassRange Plus(in MassRange other) => new(
        LowKilograms + other.LowKilograms, BestKilograms + other.BestKilograms, HighKilograms + other.HighKilograms, IsLowerBound || other.IsLowerBound);

    internal MassRange Times(double factor) => new(LowKilograms * factor, BestKilograms * factor, HighKilograms * factor, IsLowerBound && factor > 0);
}
