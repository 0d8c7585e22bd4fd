using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>One filter with liquid present, and a few with vapor only since a time: the last liquid's going is a change point. Allocates nothing after its making.</summary>
/// <remarks>
/// A falling pressure has two explanations, a pool that cools and vapor that thins out; one filter locks on to the wrong one. What the wet
/// filter knows of the charge says how likely it was that the last liquid went since the last look: with that probability a dry filter is born,
/// conditioned on m = ρ″·V. Weights follow the tempered likelihood (Gaussian sums: Alspach and Sorenson, IEEE Trans. Autom. Control 17, 439, 1972).
/// </remarks>
internal sealed class ChangePointFilter
{
    /// <summary>Number of dry filters.</summary>
    public const int Slots = 6;

    private const int Stride = FilterWorkspace.Stride;

    /// <summary>Power of the likelihood: the model's errors last, so readings tell less than independent ones would.</summary>
    private const double Temper = 0.5;

    /// <summary>A dry filter is born where this probability has gathered,</summary>
    private const double BirthProbability = 0.01;

    /// <summary>or this share of the charge has left.</summary>
    private const double BirthMass = 0.008;

    /// <summary>Probabilities below this bring no dry filter.</summary>
    private const double LeastProbability = 1e-6;

    /// <summary>No birth has more.</summary>
    private const double LargestProbability = 0.5;

    /// <summary>Further away than this many standard deviations, vapor only is not plausible.</summary>
    private const double Implausible = 10;

    /// <summary>Logarithms of weights below which a dry filter ends, and below which the wet one never falls: liquid may come late.</summary>
    private const double DryEnds = -12;

    private const double WetStays = -30;

    /// <summary>How the charge of a dry filter wanders in a minute, as a share of what is left outside the oil: some, and more just after its birth, when puddles linger.</summary>
    private const double Walk = 0.1;

    private const double Straggle = 0.2;
    private const double Minute = 60;

    /// <summary>ln of the charge around the least one for which its density is taken.</summary>
    private const double DensityOver = 0.1;

    /// <summary>K by which refrigerant and wetted metal may have cooled, and all of the metal, while liquid made way for vapor.</summary>
    private const double LiquidCools = 3;

    private const double MetalCools = 1;

    /// <summary>s before a change in which a birth may already be owed to it.</summary>
    private const double BornBefore = 2;

    /// <summary>K.</summary>
    private const double HardlyKnown = 10;

    /// <summary>s that blocks wait for their filter's turn.</summary>
    private const double LongestWait = 2;

    private readonly ReducedModel _model;
    private readonly FilterWorkspace _work = new();
    private readonly SquareRootFilter[] _dry = new SquareRootFilter[Slots];
    private readonly double[] _weight = new double[Slots];
    private readonly bool[] _used = new bool[Slots];
    private readonly double[] _born = new double[Slots];
    private readonly EstimatorBlock[] _waiting = new EstimatorBlock[Slots + 1];
    private int _turn;
    private double _wetWeight;
    private double _threshold = double.NaN;
    private double _now;
    private bool _wasDrawing;
    private bool _looksAgain;

    public ChangePointFilter(ReducedModel model, EstimatorPrior prior)
    {
        _model = model;
        var differences = new DividedDifferences(model, prior, _work);
        Wet = new SquareRootFilter(model, prior, differences, AssumedPhase.LiquidPresent) { InnerNoise = 0.08 * 0.08 / 600 };
        for (int i = 0; i < Slots; i++)
        {
            _dry[i] = new SquareRootFilter(model, prior, differences, AssumedPhase.VaporOnly) { TemperatureNoise = 0.25 * 0.25, InnerNoise = 0.3 * 0.3 / Minute };
        }
    }

    /// <summary>The filter with liquid present.</summary>
    public SquareRootFilter Wet { get; }

    /// <summary>Whether births are held back: while a fault explains the readings, they say nothing of the liquid.</summary>
    public bool IsSuspended { get; set; }

    /// <summary>Probability that no liquid is left.</summary>
    public double VaporOnly
    {
        get
        {
            double dry = 0;
            for (int i = 0; i < Slots; i++)
            {
                dry += _used[i] ? Math.Exp(_weight[i]) : 0;
            }

            return dry / (dry + Math.Exp(_wetWeight));
        }
    }

    /// <summary>The filter of the largest weight.</summary>
    public SquareRootFilter Best
    {
        get
        {
            SquareRootFilter best = Wet;
            double most = _wetWeight;
            for (int i = 0; i < Slots; i++)
            {
                if (_used[i] && _weight[i] > most)
                {
                    most = _weight[i];
                    best = _dry[i];
                }
            }

            return best;
        }
    }

    /// <summary>Whether the filter of the largest weight is the wet one.</summary>
    public bool IsBestWet => ReferenceEquals(Best, Wet);

    /// <summary>A dry filter; null where the slot is empty.</summary>
    public SquareRootFilter? Dry(int slot) => _used[slot] ? _dry[slot] : null;

    /// <summary>Probability of the wet filter.</summary>
    public double WetProbability => 1 - VaporOnly;

    /// <summary>Probability of a dry filter.</summary>
    public double DryProbability(int slot) => _used[slot] ? Math.Exp(_weight[slot]) / Total : 0;

    private double Total
    {
        get
        {
            double total = Math.Exp(_wetWeight);
            for (int i = 0; i < Slots; i++)
            {
                total += _used[i] ? Math.Exp(_weight[i]) : 0;
            }

            return total;
        }
    }

    /// <summary>ln of the charge as the wet filter has it, and ln of the least charge with which liquid is left.</summary>
    public void ChargeOf(out double location, out double scale, out double least)
    {
        scale = Math.Sqrt(Wet.Variance(StateIndex.Charge));
        _model.Table.At(Wet.X[StateIndex.Temperature], out SaturationValues at);
        double gone = Wet.X[StateIndex.Delivered] + Math.Exp(Wet.X[StateIndex.Dissolved]) + (at.VaporDensity * Math.Exp(Wet.X[StateIndex.Volume]));
        least = Math.Log(Math.Max(1e-9, gone));

        // Mass balance: beyond what was told and its error only what the scale has received counts.
        location = Math.Min(Wet.X[StateIndex.Charge], Math.Max(Wet.MostCharge, least));
    }

    /// <summary>Standard deviation of ln of the least charge with which liquid is left, as the wet filter has it.</summary>
    public double LeastSpread()
    {
        _model.Table.At(Wet.X[StateIndex.Temperature], out SaturationValues at);
        double vapor = at.VaporDensity * Math.Exp(Wet.X[StateIndex.Volume]);
        double oil = Math.Exp(Wet.X[StateIndex.Dissolved]);
        double gone = Math.Max(1e-9, Wet.X[StateIndex.Delivered] + oil + vapor);
        Combine(Wet, 0, 1 / gone, oil / gone, vapor / gone);
        return Math.Sqrt(VectorRows.Dot(_work.Slope, 0, _work.Slope, 0, Stride));
    }

    /// <summary>Takes in a block: the wet filter and half of the dry ones work on the even ones, the other half on the odd ones.</summary>
    public void Update(in EstimatorBlock block)
    {
        _now = block.Time;
        _turn = 1 - _turn;

        // What a cold pool explained while the machine drew, a rest rules out or confirms: vapor only is asked for again.
        _looksAgain |= _wasDrawing && !block.IsDrawing && !IsSuspended && Require.IsFinite(block.Gauge) && VaporOnly < LargestProbability;
        _wasDrawing = block.IsDrawing;
        for (int i = 0; i <= Slots; i++)
        {
            bool isWet = i == Slots;
            if (isWet || _used[i])
            {
                ref EstimatorBlock waiting = ref _waiting[i];
                if (waiting.Duration > 0 && waiting.IsDrawing != block.IsDrawing)
                {
                    Take(i, in waiting);
                    waiting = default;
                }

                Merge(ref waiting, in block);
                if ((isWet ? 0 : i & 1) == _turn || waiting.Duration >= LongestWait)
                {
                    Take(i, in waiting);
                    waiting = default;
                }
            }
        }

        Normalize();
    }

    /// <summary>Blocks that a filter takes at once: durations and liquid add up, the gauge is averaged, the rest is the latest.</summary>
    private static void Merge(ref EstimatorBlock waiting, in EstimatorBlock block)
    {
        if (waiting.Duration == 0)
        {
            waiting = block;
            return;
        }

        double duration = waiting.Duration + block.Duration;
        waiting.Gauge = !Require.IsFinite(waiting.Gauge) ? block.Gauge
            : Require.IsFinite(block.Gauge) ? ((waiting.Gauge * waiting.Duration) + (block.Gauge * block.Duration)) / duration : waiting.Gauge;
        waiting.Delivered = Latest(waiting.Delivered, block.Delivered);
        waiting.PipeTemperature = Latest(waiting.PipeTemperature, block.PipeTemperature);
        waiting.CondensingTemperature = Latest(waiting.CondensingTemperature, block.CondensingTemperature);
        waiting.LiquidMoved += block.LiquidMoved;
        waiting.Passed += block.Passed;
        waiting.IsByItself |= block.IsByItself;
        waiting.AirTemperature = block.AirTemperature;
        waiting.Time = block.Time;
        waiting.Duration = duration;
    }

    private static double Latest(double before, double now) => Require.IsFinite(now) ? now : before;

    private void Take(int slot, in EstimatorBlock block)
    {
        if (slot < Slots)
        {
            UpdateDry(slot, in block);
            return;
        }

        double before = Wet.LogLikelihood;
        Wet.Update(in block);
        if (!Wet.IsFinite)
        {
            // Nothing is left of it: begin again from what was told and what the scale shows.
            Wet.Reset();
            Wet.X[StateIndex.Delivered] = Require.IsFinite(block.Delivered) ? block.Delivered : 0;
            before = Wet.LogLikelihood;
        }

        _wetWeight += Temper * (Wet.LogLikelihood - before);
        if (_looksAgain)
        {
            _looksAgain = false;
            BearAtEnd();
        }

        LookForBirth(block.IsDrawing);
    }

    /// <summary>Liquid that moved faster than vapor can does so no more: as likely as not since none is left. How cold what is left has become is hardly known.</summary>
    public void EndLiquid()
    {
        Widen(StateIndex.Temperature, LiquidCools * LiquidCools);
        Widen(StateIndex.WetTemperature, LiquidCools * LiquidCools);
        Widen(StateIndex.MetalTemperature, MetalCools * MetalCools);
        _looksAgain = true;
    }

    /// <summary>Adds to the variance of a state in all filters.</summary>
    public void Widen(int index, double variance)
    {
        Wet.AddVariance(index, variance);
        for (int i = 0; i < Slots; i++)
        {
            if (_used[i])
            {
                _dry[i].AddVariance(index, variance);
            }
        }
    }

    /// <summary>Back to what was told, but for what the scale shows: what the gauge said was wrong. How cold the refrigerant is by now is then hardly known.</summary>
    public void Recover(double delivered)
    {
        double temperature = Wet.X[StateIndex.Temperature];
        double metal = Wet.X[StateIndex.MetalTemperature];
        double wet = Wet.X[StateIndex.WetTemperature];
        double dissolved = Wet.X[StateIndex.Dissolved];
        double before = Wet.X[StateIndex.Delivered];
        Wet.Reset();
        Wet.X[StateIndex.Delivered] = Require.IsFinite(delivered) ? delivered : before;
        Wet.X[StateIndex.Temperature] = temperature;
        Wet.X[StateIndex.MetalTemperature] = metal;
        Wet.X[StateIndex.WetTemperature] = wet;
        Wet.X[StateIndex.Dissolved] = dissolved;
        Wet.AddVariance(StateIndex.Temperature, HardlyKnown * HardlyKnown);
        Wet.AddVariance(StateIndex.MetalTemperature, HardlyKnown * HardlyKnown);
        Wet.AddVariance(StateIndex.WetTemperature, HardlyKnown * HardlyKnown);
        Array.Clear(_used, 0, Slots);
        Array.Clear(_waiting, 0, _waiting.Length);
        _looksAgain = _wasDrawing = false;
        _wetWeight = 0;
        _threshold = double.NaN;
    }

    /// <summary>Lets a state go from what was told: it has changed.</summary>
    public void Release(int index)
    {
        Wet.Released = index;
        foreach (SquareRootFilter dry in _dry)
        {
            dry.Released = index;
        }
    }

    /// <summary>A state is again what was told, and is held to it: it had changed, and has changed back.</summary>
    public void Restore(int index)
    {
        Wet.Restore(index);
        foreach (SquareRootFilter dry in _dry)
        {
            dry.Restore(index);
        }
    }

    /// <summary>Takes back what was born since, or all that was: something else explains the readings. Where that was all, liquid is left.</summary>
    public void Undo(double since)
    {
        double most = double.NegativeInfinity;
        for (int i = 0; i < Slots; i++)
        {
            _used[i] &= _born[i] < since - BornBefore;
            most = _used[i] ? Math.Max(most, _weight[i]) : most;
        }

        // The weights as they were before are not kept; the older hypotheses have been held against the same readings as the wet one.
        _wetWeight = Math.Max(_wetWeight, double.IsNegativeInfinity(most) ? 0 : most);
        Normalize();
    }

    private void UpdateDry(int slot, in EstimatorBlock block)
    {
        SquareRootFilter filter = _dry[slot];
        double gone = filter.X[StateIndex.Delivered] + Math.Exp(filter.X[StateIndex.Dissolved]);
        double left = Math.Max(0.001, 1 - (gone / Math.Exp(filter.X[StateIndex.Charge])));
        double walk = (Walk + (Straggle * Math.Exp((_born[slot] - _now) / Minute))) * left;
        filter.ChargeNoise = walk * walk / Minute;
        double before = filter.LogLikelihood;
        filter.Update(in block);
        _weight[slot] += Temper * (filter.LogLikelihood - before);
        _used[slot] = filter.IsFinite;
    }

    private void LookForBirth(bool isDrawing)
    {
        ChargeOf(out double location, out double scale, out double least);
        if (double.IsNaN(_threshold))
        {
            _threshold = Math.Min(least, location - (8 * scale));
        }

        if (!(least > _threshold))
        {
            return;
        }

        double until = StudentT.Below((_threshold - location) / scale);
        double now = StudentT.Below((least - location) / scale);
        double probability = (now - until) / Math.Max(1e-12, 1 - until);
        double mass = Math.Exp(least) - Math.Exp(_threshold);
        if (probability > BirthProbability || (mass > BirthMass * Math.Exp(location) && probability > LeastProbability))
        {
            if (isDrawing && !IsSuspended)
            {
                Bear(Math.Max(BirthProbability, Math.Min(LargestProbability, probability)), mass);
            }

            _threshold = least;
        }
        else if (probability <= LeastProbability)
        {
            _threshold = least;
        }
    }

    /// <summary>
    /// Liquid, or the machine, came to an end. If since no liquid is left, the charge is what is gone, with the density that is known of it; if for any other reason, it is anything above that, and the end fell
    /// anywhere within it.
    /// </summary>
    private void BearAtEnd()
    {
        ChargeOf(out double location, out double scale, out double least);
        double z = (least - location) / scale;
        double half = 0.5 * DensityOver / scale;
        double gone = (StudentT.Below(z + half) - StudentT.Below(z - half)) / DensityOver;
        double probability = gone / (gone + 1 - StudentT.Below(z));
        if (probability > BirthProbability)
        {
            Bear(Math.Min(LargestProbability, probability), BirthMass * Math.Exp(location));
            _threshold = least;
        }
    }

    private void Normalize()
    {
        double most = _wetWeight;
        for (int i = 0; i < Slots; i++)
        {
            most = _used[i] ? Math.Max(most, _weight[i]) : most;
        }

        _wetWeight = Math.Max(WetStays, _wetWeight - most);
        for (int i = 0; i < Slots; i++)
        {
            if (_used[i])
            {
                _weight[i] -= most;
                _used[i] = _weight[i] >= DryEnds;
            }
        }
    }

    /// <summary>A dry filter from the wet one: on the condition that charge less delivered, dissolved and saturated vapor is nothing.</summary>
    private void Bear(double probability, double mass)
    {
        double distance = Distance(Wet, out double variance);
        if (distance * distance > Implausible * Implausible * variance)
        {
            _wetWeight += Math.Log(1 - probability);
            return;
        }

        int slot = FreeSlot();
        SquareRootFilter filter = _dry[slot];
        filter.CopyFrom(Wet);
        _used[slot] = true;
        _waiting[slot] = default;
        _born[slot] = _now;
        _weight[slot] = _wetWeight + Math.Log(probability);
        _wetWeight += Math.Log(1 - probability);
        filter.ChargeNoise = Walk * Walk / Minute;
        filter.AddVariance(StateIndex.Inner, 0.25);
        double known = filter.Variance(StateIndex.Charge);
        if (distance * distance > known)
        {
            filter.AddVariance(StateIndex.Charge, (distance * distance) - known);
        }

        Condition(filter, mass);
        Condition(filter, mass);
    }

    /// <summary>ln(charge) less ln of what is gone or vapor, and its variance.</summary>
    private double Distance(SquareRootFilter filter, out double variance)
    {
        _model.Table.At(filter.X[StateIndex.Temperature], out SaturationValues at);
        double vapor = at.VaporDensity * Math.Exp(filter.X[StateIndex.Volume]);
        double oil = Math.Exp(filter.X[StateIndex.Dissolved]);
        double gone = filter.X[StateIndex.Delivered] + oil + vapor;
        Combine(filter, 1, -1 / gone, -oil / gone, -vapor / gone);
        variance = VectorRows.Dot(_work.Slope, 0, _work.Slope, 0, Stride);
        return filter.X[StateIndex.Charge] - Math.Log(Math.Max(1e-9, gone));
    }

    /// <summary>One of two Gauss–Newton steps on the condition, each with twice the variance. By logarithms: a charge that was told far too low is then reached in one.</summary>
    private void Condition(SquareRootFilter filter, double mass)
    {
        double distance = Distance(filter, out _);
        double sigma = (0.3 * mass / Math.Exp(filter.X[StateIndex.Charge])) + 0.002;
        filter.Condition(-distance, 2 * sigma * sigma);
    }

    private void Combine(SquareRootFilter filter, double byCharge, double byDelivered, double byDissolved, double byVolume)
    {
        double[] slope = _work.Slope;
        Array.Clear(slope, 0, Stride);
        VectorRows.Add(slope, 0, byCharge, filter.L, StateIndex.Charge * Stride, Stride);
        VectorRows.Add(slope, 0, byDelivered, filter.L, StateIndex.Delivered * Stride, Stride);
        VectorRows.Add(slope, 0, byDissolved, filter.L, StateIndex.Dissolved * Stride, Stride);
        VectorRows.Add(slope, 0, byVolume, filter.L, StateIndex.Volume * Stride, Stride);
    }

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
        for (int i = 0; i < Slots; i++)
        {
            int next = NextBorn(i);
            if (next < 0)
            {
                continue;
            }

            double cost = Sum(_weight[i], _weight[next]) + Math.Log(_born[next] - _born[i] + 1);
            if (cost < least)
            {
                least = cost;
                keep = _weight[i] > _weight[next] ? i : next;
                give = keep == i ? next : i;
            }
        }

        _weight[keep] = Sum(_weight[keep], _weight[give]);
        _used[give] = false;
        return give;
    }

    private int NextBorn(int slot)
    {
        int next = -1;
        for (int i = 0; i < Slots; i++)
        {
            if (_born[i] > _born[slot] && (next < 0 || _born[i] < _born[next]))
            {
                next = i;
            }
        }

        return next;
    }

    /// <summary>ln(e^a + e^b).</summary>
    private static double Sum(double a, double b) => Math.Max(a, b) + Math.Log(1 + Math.Exp(-Math.Abs(a - b)));
}
