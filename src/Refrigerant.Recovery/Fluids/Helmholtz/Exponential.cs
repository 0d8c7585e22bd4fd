using System;
using System.Runtime.CompilerServices;
#if NET
using System.Runtime.Intrinsics;
#endif

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The exponential function to about one unit in the last place, for one number or for four at a time: the same operations in the same order, so
/// that both give the same digits on every platform. No fused operations, which not every platform has.
/// </summary>
/// <remarks>
/// exp(x) = 2^k·exp(r) with k the integer nearest to x/ln 2 and |r| ≤ ln 2/2. There exp(r) = 1 + r + r²·q(r) with q interpolated in Chebyshev nodes,
/// to 2e-17. A product t·ln τ may be given in two parts, so that its rounding does not show: equations of state add up large terms to small sums. The argument is taken as within ±700, where neither the result nor a product with it overflows.
/// </remarks>
internal static class Exponential
{
    private const double Largest = 700;

    /// <summary>1.5·2^52: what is added to it is rounded to an integer, which stands in the last bits.</summary>
    private const double Shift = 6755399441055744;

    private const double InverseLn2 = 1.4426950408889634;

    /// <summary>ln 2 in two parts; the first is short, so that its products with k are exact.</summary>
    private const double Ln2High = 0.6931471803691238, Ln2Low = 1.9082149292705877e-10;

    private const double
        Q0 = 0.5000000000000001,
        Q1 = 0.16666666666666669,
        Q2 = 0.04166666666662399,
        Q3 = 0.008333333333330051,
        Q4 = 0.0013888888917281794,
        Q5 = 0.00019841269863105968,
        Q6 = 2.480152119021773e-05,
        Q7 = 2.7557268378684192e-06,
        Q8 = 2.7620138719733994e-07,
        Q9 = 2.5100424157005067e-08;

    private const int Bias = 1023, FractionBits = 52, LastDigits = 27;

    /// <summary>The first digits of a number, so few that its products with numbers as short are exact.</summary>
    public static double FirstDigits(double x) => BitConverter.Int64BitsToDouble(BitConverter.DoubleToInt64Bits(x) & ~((1L << LastDigits) - 1));

    /// <summary>exp(x).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Of(double x) => Of(x, 0);

    /// <summary>exp(x + small), where small is the last digits of x.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Of(double x, double small)
    {
        x = x > Largest ? Largest : x;
        x = x < -Largest ? -Largest : x;
        double shifted = (x * InverseLn2) + Shift;
        double k = shifted - Shift;
        double r = (x - (k * Ln2High)) - ((k * Ln2Low) - small);
        double r2 = r * r;
        double r4 = r2 * r2;
        double q = ((Q0 + (Q1 * r)) + ((Q2 + (Q3 * r)) * r2)) + (r4 * (((Q4 + (Q5 * r)) + ((Q6 + (Q7 * r)) * r2)) + (r4 * (Q8 + (Q9 * r)))));
        double e = 1 + (r + (r2 * q));
        return e * BitConverter.Int64BitsToDouble((BitConverter.DoubleToInt64Bits(shifted) + Bias) << FractionBits);
    }

#if NET
    /// <summary>exp(x) of four numbers.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Of(Vector256<double> x) => Of(x, Vector256<double>.Zero);

    /// <summary>exp(x + small) of four numbers.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Of(Vector256<double> x, Vector256<double> small)
    {
        x = Vector256.ConditionalSelect(Vector256.GreaterThan(x, Vector256.Create(Largest)), Vector256.Create(Largest), x);
        x = Vector256.ConditionalSelect(Vector256.LessThan(x, Vector256.Create(-Largest)), Vector256.Create(-Largest), x);
        Vector256<double> shifted = (x * Vector256.Create(InverseLn2)) + Vector256.Create(Shift);
        Vector256<double> k = shifted - Vector256.Create(Shift);
        Vector256<double> r = (x - (k * Vector256.Create(Ln2High))) - ((k * Vector256.Create(Ln2Low)) - small);
        Vector256<double> r2 = r * r;
        Vector256<double> r4 = r2 * r2;
        Vector256<double> q = ((Vector256.Create(Q0) + (Vector256.Create(Q1) * r)) + ((Vector256.Create(Q2) + (Vector256.Create(Q3) * r)) * r2))
            + (r4 * (((Vector256.Create(Q4) + (Vector256.Create(Q5) * r)) + ((Vector256.Create(Q6) + (Vector256.Create(Q7) * r)) * r2))
                + (r4 * (Vector256.Create(Q8) + (Vector256.Create(Q9) * r)))));
        Vector256<double> e = Vector256.Create(1.0) + (r + (r2 * q));
        return e * Vector256.ShiftLeft(shifted.AsInt64() + Vector256.Create((long)Bias), FractionBits).AsDouble();
    }
#endif
}
