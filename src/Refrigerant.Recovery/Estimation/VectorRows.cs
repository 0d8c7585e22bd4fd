using System.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>Sums over rows of a matrix, several numbers at a time. Lengths are multiples of <see cref="Lanes"/>.</summary>
internal static class VectorRows
{
    /// <summary>Rows are padded to a multiple of this; the widest vector that the arithmetic is laid out for.</summary>
    public const int Lanes = 8;

    /// <summary>A length rounded up to whole vectors.</summary>
    public const int LaneMask = ~(Lanes - 1);

    /// <summary>Σ a·b.</summary>
    public static double Dot(double[] a, int atA, double[] b, int atB, int length)
    {
        Vector<double> sum = Vector<double>.Zero;
        for (int i = 0; i < length; i += Vector<double>.Count)
        {
            sum += new Vector<double>(a, atA + i) * new Vector<double>(b, atB + i);
        }

        return Vector.Dot(sum, Vector<double>.One);
    }

    /// <summary>a += factor·b.</summary>
    public static void Add(double[] a, int atA, double factor, double[] b, int atB, int length)
    {
        var factors = new Vector<double>(factor);
        for (int i = 0; i < length; i += Vector<double>.Count)
        {
            (new Vector<double>(a, atA + i) + (factors * new Vector<double>(b, atB + i))).CopyTo(a, atA + i);
        }
    }
}
