using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>Room in which one filter at a time works; shared by those of one estimator.</summary>
internal sealed class FilterWorkspace
{
    /// <summary>Columns of a covariance's root, padded.</summary>
    public const int Stride = 24;

    /// <summary>Columns before they are made triangular: slopes, noise, second differences; padded.</summary>
    public const int WideStride = 48;

    /// <summary>First column of the noise.</summary>
    public const int Noise = StateIndex.Count;

    /// <summary>First column of the second differences.</summary>
    public const int Second = 2 * StateIndex.Count;

    public double[] Wide { get; } = new double[StateIndex.Count * WideStride];

    public double[] Reflector { get; } = new double[WideStride];

    /// <summary>Slopes of a measurement along the columns of the root.</summary>
    public double[] Slope { get; } = new double[Stride];

    /// <summary>Values of the states that are logarithms, at the mean.</summary>
    public double[] Value { get; } = new double[StateIndex.Count];

    /// <summary>The states moved along a column.</summary>
    public double[] Plus { get; } = new double[StateIndex.Count];

    public double[] Minus { get; } = new double[StateIndex.Count];

    public double[] PlusValue { get; } = new double[StateIndex.Count];

    public double[] MinusValue { get; } = new double[StateIndex.Count];

    /// <summary>Sum of the products of second differences of the states that the model moves.</summary>
    public double[] Curvature { get; } = new double[StateIndex.Moving * StateIndex.Moving];

    /// <summary>Second differences along a column, then their mean.</summary>
    public double[] Bend { get; } = new double[StateIndex.Moving];

    public double[] BendSum { get; } = new double[StateIndex.Moving];

    /// <summary>Variances of the noise of a step.</summary>
    public double[] NoiseVariance { get; } = new double[StateIndex.Count];

    /// <summary>Adds a standard deviation to a state.</summary>
    public void Widen(double[] root, int index, double sigma)
    {
        Array.Clear(Wide, 0, Wide.Length);
        for (int i = 0; i < StateIndex.Count; i++)
        {
            Array.Copy(root, i * Stride, Wide, i * WideStride, StateIndex.Count);
        }

        Wide[(index * WideStride) + StateIndex.Count] = sigma;
        Triangularize(root);
    }

    /// <summary>Where a row of the wide matrix ends: of a state that the model does not move, with the last noise that rows up to it have.</summary>
    private static int End(int row) =>
        row < StateIndex.FirstMoving ? (Noise + row + VectorRows.Lanes) & VectorRows.LaneMask : WideStride;

    /// <summary>Householder reflections from the right: the wide rows become a lower triangle of the same covariance.</summary>
    public void Triangularize(double[] root)
    {
        double[] a = Wide;
        double[] v = Reflector;
        for (int k = 0; k < StateIndex.Count; k++)
        {
            int row = k * WideStride;
            int from = k & VectorRows.LaneMask;
            int length = End(k) - from;
            Array.Copy(a, row + from, v, from, length);
            for (int j = from; j < k; j++)
            {
                v[j] = 0;
            }

            double norm = Math.Sqrt(VectorRows.Dot(v, from, v, from, length));
            if (norm == 0)
            {
                continue;
            }

            double alpha = v[k] > 0 ? -norm : norm;
            v[k] -= alpha;
            double beta = -1 / (alpha * v[k]);
            for (int i = k + 1; i < StateIndex.Count; i++)
            {
                double along = VectorRows.Dot(v, from, a, (i * WideStride) + from, length);
                VectorRows.Add(a, (i * WideStride) + from, -beta * along, v, from, length);
            }

            a[row + k] = alpha;
        }

        for (int i = 0; i < StateIndex.Count; i++)
        {
            Array.Clear(root, i * Stride, Stride);
            Array.Copy(a, i * WideStride, root, i * Stride, i + 1);
        }
    }
}
