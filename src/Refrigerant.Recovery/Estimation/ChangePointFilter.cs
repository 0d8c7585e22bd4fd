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

    /// <summary>Logarithm of the weight below which the wet filter never falls: liquid may come late.</summary>
    private const double WetStays = -30;

    /// <summary>ln of the charge around the least one for which its density is taken.</summary>
    private const double DensityOver = 0.1;

    /// <summary>K by which refrigerant and wetted metal may have cooled, and all of the metal, while liquid made way for vapor.</summary>
    private const double LiquidCools = 3;

    private const double MetalCools = 1;

    /// <summary>K.</summary>
    private const double HardlyKnown = 10;

    private readonly FilterWorkspace _work = new();
    private readonly DryFilters _dry;
    private readonly LastLiquid _last;
    private readonly WaitingBlocks _waiting = new(Slots + 1);
    private int _turn;
    private double _wetWeight;
    private double _threshold = double.NaN;
    private double _now;
    private bool _wasDrawing;
    private bool _looksAgain;

    public ChangePointFilter(ReducedModel model, EstimatorPrior prior)
    {
        var differences = new DividedDifferences(model, prior, _work);
        _last = new LastLiquid(model, prior, _work);
        Wet = new SquareRootFilter(model, prior, differences, AssumedPhase.LiquidPresent) { InnerNoise = 0.08 * 0.08 / 600 };
        _dry = new DryFilters(model, prior, differences, Slots);
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
            double dry = _dry.Sum;
            return dry / (dry + Math.Exp(_wetWeight));
        }
    }

    /// <summary>The filter of the largest weight.</summary>
    public SquareRootFilter Best => _dry.Heaviest(out double weight) is int slot and >= 0 && weight > _wetWeight ? _dry.All[slot] : Wet;

    /// <summary>Whether the filter of the largest weight is the wet one.</summary>
    public bool IsBestWet => ReferenceEquals(Best, Wet);

    /// <summary>A dry filter; null where the slot is empty.</summary>
    public SquareRootFilter? Dry(int slot) => _dry[slot];

    /// <summary>Probability of the wet filter.</summary>
    public double WetProbability => 1 - VaporOnly;

    /// <summary>Probability of a dry filter.</summary>
    public double DryProbability(int slot) => _dry.Weight(slot) / (Math.Exp(_wetWeight) + _dry.Sum);

    /// <summary>ln of the charge as the wet filter has it, and ln of the least charge with which liquid is left.</summary>
    public void ChargeOf(out double location, out double scale, out double least) => _last.ChargeOf(Wet, out location, out scale, out least);

    /// <summary>Standard deviation of ln of the least charge with which liquid is left, as the wet filter has it.</summary>
    public double LeastSpread() => _last.LeastSpread(Wet);

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
            if (isWet || _dry[i] is not null)
            {
                if (_waiting.IsOther(i, in block))
                {
                    Take(i);
                }

                _waiting.Add(i, in block);
                if ((isWet ? 0 : i & 1) == _turn || _waiting.IsLong(i))
                {
                    Take(i);
                }
            }
        }

        Normalize();
    }

    private void Take(int filter)
    {
        EstimatorBlock block = _waiting[filter];
        _waiting.Clear(filter);
        if (filter < Slots)
        {
            _dry.Update(filter, in block, _now, Temper);
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

        if (Require.IsFinite(block.Gauge))
        {
            // Without a gauge nothing would tell such a filter from the wet one; when it reads again the birth is made up for.
            LookForBirth(block.IsDrawing);
        }
    }

    /// <summary>Liquid that moved faster than vapor can does so no more: as likely as not since none is left. How cold what is left has become is hardly known.</summary>
    public void EndLiquid()
    {
        Widen(StateIndex.Temperature, LiquidCools * LiquidCools);
        Widen(StateIndex.WetTemperature, LiquidCools * LiquidCools);
        Widen(StateIndex.MetalTemperature, MetalCools * MetalCools);
        _looksAgain = true;
    }

    /// <summary>It has stood for a while without anybody saying so: it is warmer by so and so much, and no liquid has gone meanwhile.</summary>
    /// <param name="delivered">kg, as the scale has it.</param>
    public void Rest(double delivered)
    {
        Wet.X[StateIndex.Delivered] = delivered;
        Widen(StateIndex.Temperature, HardlyKnown * HardlyKnown);
        Widen(StateIndex.WetTemperature, HardlyKnown * HardlyKnown);
        Widen(StateIndex.MetalTemperature, LiquidCools * LiquidCools);
        _looksAgain = _wasDrawing = false;
    }

    /// <summary>Adds to the variance of a state in all filters.</summary>
    public void Widen(int index, double variance)
    {
        Wet.AddVariance(index, variance);
        for (int i = 0; i < Slots; i++)
        {
            _dry[i]?.AddVariance(index, variance);
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
        _dry.Clear();
        _waiting.Clear();
        _looksAgain = _wasDrawing = false;
        _wetWeight = 0;
        _threshold = double.NaN;
    }

    /// <summary>Lets a state go from what was told: it has changed.</summary>
    public void Release(int index)
    {
        Wet.Released = index;
        foreach (SquareRootFilter dry in _dry.All)
        {
            dry.Released = index;
        }
    }

    /// <summary>A state is again what was told, and is held to it: it had changed, and has changed back.</summary>
    public void Restore(int index)
    {
        Wet.Restore(index);
        foreach (SquareRootFilter dry in _dry.All)
        {
            dry.Restore(index);
        }
    }

    /// <summary>Takes back what was born since, or all that was: something else explains the readings. Where that was all, liquid is left.</summary>
    public void Undo(double since)
    {
        _dry.EndSince(since);
        _ = _dry.Heaviest(out double most);

        // The weights as they were before are not kept; the older hypotheses have been held against the same readings as the wet one.
        _wetWeight = Math.Max(_wetWeight, double.IsNegativeInfinity(most) ? 0 : most);
        Normalize();
    }

    /// <summary>Marks what has been made of the readings so far; s of drawing that wait to be.</summary>
    public double Keep(FilterMark mark)
    {
        mark.Take(Wet, WetProbability, _threshold, _now);
        ref readonly EstimatorBlock waiting = ref _waiting[Slots];
        return waiting.IsDrawing ? waiting.Duration : 0;
    }

    /// <summary>Takes back what the readings since a mark brought forth: liquid is as likely as it was, and the wet filter goes on from there without readings, in long steps.</summary>
    /// <param name="mark">The mark.</param>
    /// <param name="drawn">s that the machine has drawn since.</param>
    /// <param name="airTemperature">K.</param>
    public void GoBack(FilterMark mark, double drawn, double airTemperature)
    {
        double likelihood = Wet.LogLikelihood;
        int released = Wet.Released;
        mark.Give(Wet);
        if (Wet.Released != released)
        {
            foreach (SquareRootFilter dry in _dry.All)
            {
                dry.Restore(released);
                dry.Released = Wet.Released;
            }
        }

        Wet.Pass(drawn, airTemperature);
        Wet.LogLikelihood = likelihood;
        _waiting.Clear(Slots);
        _dry.EndSince(mark.Time);
        _threshold = mark.Threshold;
        double all = _dry.Sum;
        _wetWeight = all > 0 ? Math.Log(all * mark.Wet / Math.Max(1e-12, 1 - mark.Wet)) : 0;
        Normalize();
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
        _ = _dry.Heaviest(out double most);
        most = Math.Max(most, _wetWeight);
        _wetWeight = Math.Max(WetStays, _wetWeight - most);
        _dry.Lower(most);
    }

    /// <summary>A dry filter from the wet one: on the condition that charge less delivered, dissolved and saturated vapor is nothing.</summary>
    private void Bear(double probability, double mass)
    {
        double distance = _last.Distance(Wet, out double variance);
        bool isPlausible = distance * distance <= Implausible * Implausible * variance;
        double weight = _wetWeight + Math.Log(probability);
        _wetWeight += Math.Log(1 - probability);
        if (!isPlausible)
        {
            return;
        }

        int slot = _dry.Bear(Wet, weight, _now);
        _waiting.Clear(slot);
        SquareRootFilter filter = _dry.All[slot];
        filter.AddVariance(StateIndex.Inner, 0.25);
        double known = filter.Variance(StateIndex.Charge);
        if (distance * distance > known)
        {
            filter.AddVariance(StateIndex.Charge, (distance * distance) - known);
        }

        _last.Condition(filter, mass);
    }
}
