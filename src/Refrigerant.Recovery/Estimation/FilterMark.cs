using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What the filters had made of the readings up to a time, to go back to where those since turn out wrong. Fixed memory.</summary>
internal sealed class FilterMark
{
    private const int N = StateIndex.Count;
    private const int Stride = FilterWorkspace.Stride;

    private readonly double[] _mean = new double[N];
    private readonly float[] _root;
    private readonly bool _isWhole;
    private int _released;

    /// <param name="isWhole">Whether the states' correlations are kept; without them it takes a twentieth of the memory.</param>
    public FilterMark(bool isWhole = true)
    {
        _isWhole = isWhole;
        _root = new float[isWhole ? N * N : N];
    }

    /// <summary>Probability that liquid was left.</summary>
    public double Wet { get; private set; }

    /// <summary>ln of the charge up to which the last liquid's going had been counted with.</summary>
    public double Threshold { get; private set; }

    /// <summary>s from the start.</summary>
    public double Time { get; private set; }

    /// <summary>Takes over mean, root and what is released of the wet filter.</summary>
    public void Take(SquareRootFilter wet, double probability, double threshold, double time)
    {
        Array.Copy(wet.X, _mean, _mean.Length);
        for (int i = 0; i < N; i++)
        {
            if (!_isWhole)
            {
                _root[i] = (float)Math.Sqrt(wet.Variance(i));
                continue;
            }

            for (int j = 0; j < N; j++)
            {
                _root[(i * N) + j] = (float)wet.L[(i * Stride) + j];
            }
        }

        _released = wet.Released;
        Wet = probability;
        Threshold = threshold;
        Time = time;
    }

    /// <summary>Gives them back.</summary>
    public void Give(SquareRootFilter wet)
    {
        Array.Copy(_mean, wet.X, _mean.Length);
        Array.Clear(wet.L, 0, wet.L.Length);
        for (int i = 0; i < N; i++)
        {
            if (!_isWhole)
            {
                wet.L[(i * Stride) + i] = _root[i];
                continue;
            }

            for (int j = 0; j < N; j++)
            {
                wet.L[(i * Stride) + j] = _root[(i * N) + j];
            }
        }

        wet.Released = _released;
    }
}
