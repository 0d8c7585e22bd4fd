using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>Values with weights, these in single precision, of which quantiles are asked. Fixed memory.</summary>
internal sealed class WeightedValues
{
    private readonly double[] _values;
    private readonly float[] _weights;
    private bool _sorted;

    public WeightedValues(int capacity)
    {
        _values = new double[capacity];
        _weights = new float[capacity];
    }

    /// <summary>Number of values.</summary>
    public int Count { get; private set; }

    public void Clear()
    {
        Count = 0;
        _sorted = false;
    }

    /// <summary>Adds a value; what is none, and more than there is room for, are left out.</summary>
    public void Add(double value, double weight)
    {
        if (Count < _values.Length && weight > 0 && Require.IsFinite(value))
        {
            _values[Count] = value;
            _weights[Count] = (float)weight;
            Count++;
            _sorted = false;
        }
    }

    /// <summary>The value below which a share of the weight lies; between two values in proportion. Not a number where there are none.</summary>
    public double Quantile(double share)
    {
        if (Count == 0)
        {
            return double.NaN;
        }

        if (!_sorted)
        {
            Array.Sort(_values, _weights, 0, Count);
            _sorted = true;
        }

        double wanted = share * Sum();
        double before = 0;
        for (int i = 0; i < Count; i++)
        {
            // Each value stands in the middle of its weight.
            double middle = before + (0.5 * _weights[i]);
            if (middle >= wanted)
            {
                if (i == 0)
                {
                    return _values[0];
                }

                double last = before - (0.5 * _weights[i - 1]);
                double part = middle > last ? (wanted - last) / (middle - last) : 1;
                return _values[i - 1] + (Math.Max(0, part) * (_values[i] - _values[i - 1]));
            }

            before += _weights[i];
        }

        return _values[Count - 1];
    }

    /// <summary>5 %, median and 95 %.</summary>
    public EstimateRange Range() => new(Quantile(0.05), Quantile(0.5), Quantile(0.95));

    /// <summary>Share of the weight above a value.</summary>
    public double ShareAbove(double value)
    {
        double above = 0;
        for (int i = 0; i < Count; i++)
        {
            above += _values[i] > value ? _weights[i] : 0;
        }

        double sum = Sum();
        return sum > 0 ? above / sum : 0;
    }

    private double Sum()
    {
        double sum = 0;
        for (int i = 0; i < Count; i++)
        {
            sum += _weights[i];
        }

        return sum;
    }
}
