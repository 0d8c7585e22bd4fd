using System;
using System.Runtime.CompilerServices;
#if NET
using System.Runtime.Intrinsics;
#endif

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The natural logarithm of ordinary positive numbers to about 1e-16 absolute or relative, whichever is more, for one number or for four at a time: the
/// same operations in the same order, as <see cref="Exponential"/>.
/// </summary>
/// <remarks>
/// ln x = k·ln 2 + ln m with m from √½ to √2, and ln m = 2s + s·z·p(z) with s = (m − 1)/(m + 1), z = s² and p interpolated in Chebyshev nodes, to 5e-18.
/// </remarks>
internal static class NaturalLogarithm
{
    private const int FractionBits = 52;

    /// <summary>The bits of √½, less those of a power of two: what is above √2 counts as below √½ of the next.</summary>
    private const long Offset = 0x3FE6A09E667F3BCD - (1023L << FractionBits);

    /// <summary>2^52, in whose last bits an integer can be put, plus the bias of an exponent.</summary>
    private const long IntegerBits = 0x4330_0000_0000_0000;

    private const double IntegerBias = 4503599627370496 + 1023.0;

    private const double Ln2 = 0.6931471805599453;

    private const double
        P0 = 0.666666666666667,
        P1 = 0.3999999999989889,
        P2 = 0.28571428626253836,
        P3 = 0.22222211089379496,
        P4 = 0.1818289243253687,
        P5 = 0.15331611722055008,
        P6 = 0.14617807153417325;

    /// <summary>ln x.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Of(double x)
    {
        long bits = BitConverter.DoubleToInt64Bits(x);
        long exponent = (long)((ulong)(bits - Offset) >> FractionBits);
        double k = BitConverter.Int64BitsToDouble(IntegerBits | exponent) - IntegerBias;
        double m = BitConverter.Int64BitsToDouble(bits - ((exponent - 1023) << FractionBits));
        double s = (m - 1) / (m + 1);
        double z = s * s;
        double z2 = z * z;
        double p = ((P0 + (P1 * z)) + ((P2 + (P3 * z)) * z2)) + (((P4 + (P5 * z)) + (P6 * z2)) * (z2 * z2));
        return (k * Ln2) + ((s + s) + ((s * z) * p));
    }

#if NET
    /// <summary>ln x of four numbers.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Of(Vector256<double> x)
    {
        Vector256<long> bits = x.AsInt64();
        Vector256<long> exponent = Vector256.ShiftRightLogical(bits - Vector256.Create(Offset), FractionBits);
        Vector256<double> k = (Vector256.Create(IntegerBits) | exponent).AsDouble() - Vector256.Create(IntegerBias);
        Vector256<double> m = (bits - Vector256.ShiftLeft(exponent - Vector256.Create(1023L), FractionBits)).AsDouble();
        Vector256<double> one = Vector256.Create(1.0);
        Vector256<double> s = (m - one) / (m + one);
        Vector256<double> z = s * s;
        Vector256<double> z2 = z * z;
        Vector256<double> p = ((Vector256.Create(P0) + (Vector256.Create(P1) * z)) + ((Vector256.Create(P2) + (Vector256.Create(P3) * z)) * z2))
            + (((Vector256.Create(P4) + (Vector256.Create(P5) * z)) + (Vector256.Create(P6) * z2)) * (z2 * z2));
        return (k * Vector256.Create(Ln2)) + ((s + s) + ((s * z) * p));
    }
#endif
}
