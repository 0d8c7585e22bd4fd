using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>A few filters with vapor only, each since a time of its own, and the logarithms of their weights. Allocates nothing after its making.</summary>
internal sealed class DryFilters
{
    /// <summary>Logarithm of the weight below which one ends.</summary>
    private const double Ends = -12;

    /// <summary>How the charge wanders in a minute, as a share of what is left outside the oil: some, and more just after the birth, when puddles linger.</summary>
    private const double Walk = 0.1;

    private const double Straggle = 0.2;
    private const double Minute = 60;

    /// <summary>s before a change in which a birth may already be owed to it.</summary>
    private const double BornBefore = 2;

    private readonly SquareRootFilter[] _dry;
    private readonly double[] _weight;
    private readonly bool[] _used;
    private readonly double[] _born;

    public DryFilters(ReducedModel model, EstimatorPrior prior, DividedDifferences differences, int slots)
    {
        _dry = new SquareRootFilter[slots];
        _weight = new double[slots];
        _used = new bool[slots];
        _born = new double[slots];
        for (int i = 0; i < slots; i++)
        {
            _dry[i] = new SquareRootFilter(model, prior, differences, AssumedPhase.VaporOnly) { TemperatureNoise = 0.25 * 0.25, InnerNoise = 0.3 * 0.3 / Minute };
        }
    }

    /// <summary>All of them, those that are not used as well.</summary>
    public SquareRootFilter[] All => _dry;

    /// <summary>Sum of the weights.</summary>
    public double Sum
    {
        get
        {
            double sum = 0;
            for (int i = 0; i < _dry.Length; i++)
            {
                sum += _used[i] ? Math.Exp(_weight[i]) : 0;
            }

            return sum;
        }
    }

    /// <summary>The filter of a slot; null where that is empty.</summary>
    public SquareRootFilter? this[int slot] => _used[slot] ? _dry[slot] : null;

    /// <summary>Weight of a slot.</summary>
    public double Weight(int slot) => _used[slot] ? Math.Exp(_weight[slot]) : 0;

    /// <summary>The slot of the largest weight, and its logarithm; negative where none is used.</summary>
    public int Heaviest(out double weight)
    {
        int heaviest = -1;
        weight = double.NegativeInfinity;
        for (int i = 0; i < _dry.Length; i++)
        {
            if (_used[i] && _weight[i] > weight)
            {
                weight = _weight[i];
                heaviest = i;
            }
        }

        return heaviest;
    }

    /// <summary>One more, as another filter has it.</summary>
    public int Bear(SquareRootFilter from, double weight, double now)
    {
        int slot = FreeSlot();
        _dry[slot].CopyFrom(from);
        _dry[slot].ChargeNoise = Walk * Walk / Minute;
        _used[slot] = true;
        _born[slot] = now;
        _weight[slot] = weight;
        return slot;
    }

    /// <summary>A block for one of them.</summary>
    public void Update(int slot, in EstimatorBlock block, double now, double temper)
    {
        SquareRootFilter filter = _dry[slot];
        double gone = filter.X[StateIndex.Delivered] + Math.Exp(filter.X[StateIndex.Dissolved]);
        double left = Math.Max(0.001, 1 - (gone / Math.Exp(filter.X[StateIndex.Charge])));
        double walk = (Walk + (Straggle * Math.Exp((_born[slot] - now) / Minute))) * left;
        filter.ChargeNoise = walk * walk / Minute;
        double before = filter.LogLikelihood;
        filter.Update(in block);
        _weight[slot] += temper * (filter.LogLikelihood - before);
        _used[slot] = filter.IsFinite;
    }

    /// <summary>Takes a number off all logarithms of weights; those that are too light end.</summary>
    public void Lower(double by)
    {
        for (int i = 0; i < _dry.Length; i++)
        {
            if (_used[i])
            {
                _weight[i] -= by;
                _used[i] = _weight[i] >= Ends;
            }
        }
    }

    /// <summary>Ends those that were born since a time.</summary>
    public void EndSince(double since)
    {
        for (int i = 0; i < _dry.Length; i++)
        {
            _used[i] &= _born[i] < since - BornBefore;
        }
    }

    /// <summary>Ends all.</summary>
    public void Clear() => Array.Clear(_used, 0, _used.Length);

    /// <summary>An empty slot; where there is none, the lightest pair of neighbours in time becomes one, and no probability is lost.</summary>
    private int FreeSlot()
    {
        int free = Array.IndexOf(_used, false);
        if (free >= 0)
        {
            return free;
        }

        double least = double.PositiveInfinity;
        int keep = 0;
        int give = 0;
        for (int i = 0; i < _dry.Length; i++)
        {
            int next = NextBorn(i);
            if (next < 0)
            {
                continue;
            }

            double cost = Add(_weight[i], _weight[next]) + Math.Log(_born[next] - _born[i] + 1);
            if (cost < least)
            {
                least = cost;
                keep = _weight[i] > _weight[next] ? i : next;
                give = keep == i ? next : i;
            }
        }

        _weight[keep] = Add(_weight[keep], _weight[give]);
        _used[give] = false;
        return give;
    }

    private int NextBorn(int slot)
    {
        int next = -1;
        for (int i = 0; i < _dry.Length; i++)
        {
            if (_born[i] > _born[slot] && (next < 0 || _born[i] < _born[next]))
            {
                next = i;
            }
        }

        return next;
    }

    /// <summary>ln(e^a + e^b).</summary>
    private static double Add(double a, double b) => Math.Max(a, b) + Math.Log(1 + Math.Exp(-Math.Abs(a - b)));
}
