using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What the filters had made of the readings up to a time, to go back to where those since turn out wrong. Fixed memory.</summary>
internal sealed class FilterMark
{
    private readonly double[] _mean = new double[StateIndex.Count];
    private readonly float[] _root = new float[StateIndex.Count * FilterWorkspace.Stride];
    private int _released;

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
        for (int i = 0; i < _root.Length; i++)
        {
            _root[i] = (float)wet.L[i];
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
        Array.Copy(_root, wet.L, _root.Length);
        wet.Released = _released;
    }
}
