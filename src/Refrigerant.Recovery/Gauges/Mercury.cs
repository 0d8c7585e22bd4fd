using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Gauges;

/// <summary>Pressures by the height of a mercury column, by the conventional inch and millimeter of mercury.</summary>
/// <remarks>
/// Conventional inch of mercury at 0 °C: 3386.389 Pa (NIST SP 811). UnitsNet's <see cref="PressureUnit.InchOfMercury"/> is smaller by
/// one part in ten million, which no gauge shows; the inch at 60 °F (3376.85 Pa) is not used anywhere here.
/// </remarks>
public static class Mercury
{
    /// <summary>Conventional inch of mercury at 0 °C, Pa (NIST SP 811).</summary>
    internal const double PascalsPerInch = 3386.389;

    /// <summary>Conventional millimeter of mercury, Pa (NIST SP 811).</summary>
    internal const double PascalsPerMillimeter = 133.322387415;

    /// <summary>A pressure from conventional inches of mercury.</summary>
    /// <param name="inches">Inches of mercury; any finite number.</param>
    /// <exception cref="System.ArgumentOutOfRangeException">Not a finite number.</exception>
    public static Pressure FromInches(double inches) =>
        new(Require.Finite(inches, "inHg", nameof(inches)) * PascalsPerInch, PressureUnit.Pascal);

    /// <summary>A pressure in conventional inches of mercury.</summary>
    /// <param name="pressure">Any finite pressure.</param>
    /// <exception cref="System.ArgumentOutOfRangeException">Not a finite number.</exception>
    public static double ToInches(Pressure pressure) => Require.Finite(pressure.Pascals, "Pa", nameof(pressure)) / PascalsPerInch;
}
