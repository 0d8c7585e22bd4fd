using System;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
#if NET
using System.Runtime.Intrinsics;
#endif
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// Eight curves over one variable as polynomials in pieces, evaluated side by side (Estrin's scheme: Knuth, The Art of Computer Programming 2, section 4.6.4).
/// Where vectors are used the digits are the same as without.
/// </summary>
internal sealed class CurveTable
{
    /// <summary>Coefficients of a polynomial.</summary>
    public const int Order = 10;

    /// <summary>Curves.</summary>
    public const int Count = 8;

    /// <summary>Doubles of a piece: for every power of the local variable the coefficients of all curves, then the piece's center and inverse half width.</summary>
    private const int Stride = (Order * Count) + 2;

    private static readonly ChebyshevFit Fit = new(Order);

    private readonly double[] _data;

    /// <param name="pieces">Room for this many pieces.</param>
    public CurveTable(int pieces) => _data = new double[pieces * Stride];

    /// <summary>Pieces filled.</summary>
    public int Pieces { get; private set; }

    /// <summary>The i-th place at which the next piece is asked for, in a piece from one place to another.</summary>
    public static double Node(int i, double low, double high) => (0.5 * (low + high)) + (0.5 * (high - low) * Fit.Node(i));

    /// <summary>Adds a piece.</summary>
    /// <param name="low">Where it begins.</param>
    /// <param name="high">Where it ends.</param>
    /// <param name="values">Values of all curves at the first node, at the second, …</param>
    public void Add(double low, double high, ReadOnlySpan<double> values)
    {
        Span<double> piece = _data.AsSpan(Pieces * Stride, Stride);
        Fit.Polynomials(values, piece.Slice(0, Order * Count), Count);
        piece[Stride - 2] = 0.5 * (low + high);
        piece[Stride - 1] = 2 / (high - low);
        Pieces++;
    }

    /// <summary>Whether the polynomials of a piece end: whether their last two Chebyshev coefficients are no more than a part of the first one.</summary>
    public bool IsResolved(int piece, double part, ReadOnlySpan<bool> isChecked)
    {
        ReadOnlySpan<double> c = _data.AsSpan(piece * Stride, Stride);
        for (int k = 0; k < Count; k++)
        {
            // They are those of the polynomial over 2^(n − 1).
            double tail = (Math.Abs(c[((Order - 1) * Count) + k]) / (1 << (Order - 2))) + (Math.Abs(c[((Order - 2) * Count) + k]) / (1 << (Order - 3)));
            if (isChecked[k] && !(tail <= part * Math.Abs(c[k])))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>All curves in a piece.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Evaluate(int piece, double x, out CurveValues values)
    {
        ref double c = ref MemoryMarshal.GetReference(_data.AsSpan(piece * Stride, Stride));
        double u = (x - Unsafe.Add(ref c, Stride - 2)) * Unsafe.Add(ref c, Stride - 1);
#if NET
        if (VectorTerms.IsSupported)
        {
            double u2 = u * u;
            Vector256<double> v = Vector256.Create(u), v2 = Vector256.Create(u2), v4 = Vector256.Create(u2 * u2);
            Unsafe.SkipInit(out values);
            Half(ref c, v, v2, v4).StoreUnsafe(ref values.First);
            Half(ref Unsafe.Add(ref c, Count / 2), v, v2, v4).StoreUnsafe(ref values.Fifth);
            return;
        }
#endif
        EvaluatePlain(ref c, u, out values);
    }

    /// <summary>The first four curves in a piece.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void EvaluateFirst(int piece, double x, out CurveValues values)
    {
#if NET
        if (VectorTerms.IsSupported)
        {
            ref double c = ref MemoryMarshal.GetReference(_data.AsSpan(piece * Stride, Stride));
            double u = (x - Unsafe.Add(ref c, Stride - 2)) * Unsafe.Add(ref c, Stride - 1);
            double u2 = u * u;
            values = default;
            Half(ref c, Vector256.Create(u), Vector256.Create(u2), Vector256.Create(u2 * u2)).StoreUnsafe(ref values.First);
            return;
        }
#endif
        EvaluatePlain(piece, x, out values);
    }

    /// <summary>The slopes of all curves in a piece.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Slopes(int piece, double x, out CurveValues slopes)
    {
        ref double c = ref MemoryMarshal.GetReference(_data.AsSpan(piece * Stride, Stride));
        double scale = Unsafe.Add(ref c, Stride - 1);
        double u = (x - Unsafe.Add(ref c, Stride - 2)) * scale;
#if NET
        if (VectorTerms.IsSupported)
        {
            double u2 = u * u;
            Vector256<double> v = Vector256.Create(u), v2 = Vector256.Create(u2), v4 = Vector256.Create(u2 * u2), s = Vector256.Create(scale);
            Unsafe.SkipInit(out slopes);
            (HalfSlope(ref c, v, v2, v4) * s).StoreUnsafe(ref slopes.First);
            (HalfSlope(ref Unsafe.Add(ref c, Count / 2), v, v2, v4) * s).StoreUnsafe(ref slopes.Fifth);
            return;
        }
#endif
        SlopesPlain(ref c, u, scale, out slopes);
    }

    internal void EvaluatePlain(int piece, double x, out CurveValues values)
    {
        ref double c = ref MemoryMarshal.GetReference(_data.AsSpan(piece * Stride, Stride));
        EvaluatePlain(ref c, (x - Unsafe.Add(ref c, Stride - 2)) * Unsafe.Add(ref c, Stride - 1), out values);
    }

    private static void EvaluatePlain(ref double c, double u, out CurveValues values)
    {
        values = default;
        double u2 = u * u;
        double u4 = u2 * u2;
        for (int k = 0; k < Count; k++)
        {
            double a0 = C(ref c, k, 0) + (C(ref c, k, 1) * u), a1 = C(ref c, k, 2) + (C(ref c, k, 3) * u), a2 = C(ref c, k, 4) + (C(ref c, k, 5) * u);
            double a3 = C(ref c, k, 6) + (C(ref c, k, 7) * u), a4 = C(ref c, k, 8) + (C(ref c, k, 9) * u);
            Unsafe.Add(ref values.First, k) = (a0 + (a1 * u2)) + (((a2 + (a3 * u2)) + (a4 * u4)) * u4);
        }
    }

    private static void SlopesPlain(ref double c, double u, double scale, out CurveValues slopes)
    {
        slopes = default;
        double u2 = u * u;
        double u4 = u2 * u2;
        for (int k = 0; k < Count; k++)
        {
            double a0 = C(ref c, k, 1) + (2 * C(ref c, k, 2) * u), a1 = (3 * C(ref c, k, 3)) + (4 * C(ref c, k, 4) * u);
            double a2 = (5 * C(ref c, k, 5)) + (6 * C(ref c, k, 6) * u), a3 = (7 * C(ref c, k, 7)) + (8 * C(ref c, k, 8) * u);
            Unsafe.Add(ref slopes.First, k) = ((a0 + (a1 * u2)) + (((a2 + (a3 * u2)) + (9 * C(ref c, k, 9) * u4)) * u4)) * scale;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double C(ref double c, int curve, int power) => Unsafe.Add(ref c, (power * Count) + curve);

#if NET
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Half(ref double c, Vector256<double> u, Vector256<double> u2, Vector256<double> u4)
    {
        Vector256<double> a0 = Load(ref c, 0) + (Load(ref c, 1) * u), a1 = Load(ref c, 2) + (Load(ref c, 3) * u), a2 = Load(ref c, 4) + (Load(ref c, 5) * u);
        Vector256<double> a3 = Load(ref c, 6) + (Load(ref c, 7) * u), a4 = Load(ref c, 8) + (Load(ref c, 9) * u);
        return (a0 + (a1 * u2)) + (((a2 + (a3 * u2)) + (a4 * u4)) * u4);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> HalfSlope(ref double c, Vector256<double> u, Vector256<double> u2, Vector256<double> u4)
    {
        Vector256<double> a0 = Load(ref c, 1) + ((Load(ref c, 2) * 2) * u), a1 = (Load(ref c, 3) * 3) + ((Load(ref c, 4) * 4) * u);
        Vector256<double> a2 = (Load(ref c, 5) * 5) + ((Load(ref c, 6) * 6) * u), a3 = (Load(ref c, 7) * 7) + ((Load(ref c, 8) * 8) * u);
        return (a0 + (a1 * u2)) + (((a2 + (a3 * u2)) + ((Load(ref c, 9) * 9) * u4)) * u4);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Load(ref double c, int power) => Vector256.LoadUnsafe(ref c, (nuint)(power * Count));
#endif
}

/// <summary>Values of the eight curves of a <see cref="CurveTable"/>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct CurveValues
{
    public double First, Second, Third, Fourth, Fifth, Sixth, Seventh, Eighth;
}
