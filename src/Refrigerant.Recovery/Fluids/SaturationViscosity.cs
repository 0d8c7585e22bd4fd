using System;

namespace Refrigerant.Recovery.Fluids;

/// <summary>Dynamic viscosity of saturated liquid and vapor, Pa·s.</summary>
public readonly record struct SaturationViscosity
{
    /// <summary>Creates the pair; no check is made: the property model vouches for it.</summary>
    /// <param name="liquid">Of saturated liquid, Pa·s.</param>
    /// <param name="vapor">Of saturated vapor, Pa·s.</param>
    /// <param name="isEstimate">Whether no published correlation of this fluid stands behind it.</param>
    public SaturationViscosity(double liquid, double vapor, bool isEstimate)
    {
        Liquid = liquid;
        Vapor = vapor;
        IsEstimate = isEstimate;
    }

    /// <summary>Dynamic viscosity of saturated liquid, Pa·s.</summary>
    public double Liquid { get; }

    /// <summary>Dynamic viscosity of saturated vapor, Pa·s.</summary>
    public double Vapor { get; }

    /// <summary>True where no published correlation of this fluid stands behind the values.</summary>
    public bool IsEstimate { get; }

    /// <summary>Both viscosities.</summary>
    public override string ToString() => FormattableString.Invariant($"liquid {Liquid:G7} Pa·s, vapor {Vapor:G7} Pa·s{(IsEstimate ? ", an estimate" : string.Empty)}");
}
