using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>How likely it is that the last liquid went since the last look, by Student's distribution of what is known of the charge, 6 kg within 14 %, and what follows of it.</summary>
public class ChangePointFilterBirthTests
{
    private static readonly Workbench Bench = new();
    private double _threshold;
    private double _time;

    /// <summary>The probability between what was gone at the last look and what is gone now, of what lay above the former; at most a half.</summary>
    [Theory]
    [InlineData(4.6)]
    [InlineData(5.0)]
    [InlineData(5.4)]
    [InlineData(6.2)]
    public void A_dry_filter_has_the_probability_that_the_last_liquid_went(double gone)
    {
        ChangePointFilter filter = Begun();
        double wanted = Look(filter, gone, isDrawing: true);
        Assert.InRange(wanted, 0.02, 1);
        Assert.Equal(Math.Min(0.5, wanted), filter.VaporOnly, 1e-6);
        Assert.Equal(Math.Min(0.5, wanted), filter.DryProbability(0), 1e-6);
    }

    [Fact]
    public void Only_what_has_gone_since_the_last_look_counts()
    {
        ChangePointFilter filter = Begun();
        Look(filter, 4.6, isDrawing: false);
        double wanted = Look(filter, 4.9, isDrawing: true);
        Assert.InRange(wanted, 0.05, 0.15);
        Assert.Equal(wanted, filter.VaporOnly, 1e-6);

        // The charge is then what is gone and vapor, and the conductance to it less known, by a half of its logarithm.
        SquareRootFilter dry = filter.Dry(0)!;
        Assert.Equal(filter.Wet.Variance(StateIndex.Inner) + 0.25, dry.Variance(StateIndex.Inner), 0.01);
        double vapor = Bench.Model.LastVapor(dry.X[StateIndex.Temperature], Math.Exp(dry.X[StateIndex.Volume]), 6);
        Assert.Equal(vapor, Math.Exp(dry.X[StateIndex.Charge]) - dry.X[StateIndex.Delivered] - Math.Exp(dry.X[StateIndex.Dissolved]), 0.03);
    }

    /// <summary>Below 1 % it gathers, until 0.8 % of the charge has left: then it is taken for 1 %.</summary>
    [Fact]
    public void Little_gathers()
    {
        ChangePointFilter filter = Begun();
        Look(filter, 2, isDrawing: false);
        double before = _threshold;
        double wanted = Look(filter, 2.045, isDrawing: true);
        Assert.InRange(wanted, 1e-6, 0.009);
        Assert.Equal(0, filter.VaporOnly);
        _threshold = before;
        wanted = Look(filter, 2.052, isDrawing: true);
        Assert.InRange(wanted, 1e-6, 0.009);
        Assert.Equal(0.01, filter.VaporOnly, 1e-6);
    }

    [Theory]
    [InlineData(0.0093, false)]
    [InlineData(0.0107, true)]
    public void From_one_percent_on_a_filter_is_born(double probability, bool isBorn)
    {
        ChangePointFilter filter = Begun();
        Look(filter, 4.4, isDrawing: false);
        double low = 4.4;
        double high = 4.448;
        while (high - low > 1e-9)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Probability(filter, middle) < probability ? (middle, high) : (low, middle);
        }

        Assert.Equal(probability, Look(filter, low, isDrawing: true), 2e-4);
        Assert.Equal(isBorn ? probability : 0, filter.VaporOnly, 2e-4);
    }

    /// <summary>At rest, and while a fault explains the readings, nothing is born, and what went meanwhile is not made up for.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void At_rest_and_under_a_fault_nothing_is_born(bool isSuspended)
    {
        ChangePointFilter filter = Begun();
        filter.IsSuspended = isSuspended;
        Assert.True(Look(filter, 4.9, isDrawing: isSuspended) > 0.05);
        Assert.Equal(0, filter.VaporOnly);
        filter.IsSuspended = false;
        double wanted = Look(filter, 5, isDrawing: true);
        Assert.Equal(wanted, filter.VaporOnly, 1e-6);
        Assert.InRange(wanted, 0.01, 0.2);
    }

    /// <summary>More than ten standard deviations from what is gone to the charge: vapor alone is not plausible.</summary>
    [Theory]
    [InlineData(0.65, false)]
    [InlineData(0.85, true)]
    public void What_is_too_far_off_is_not_plausible(double gone, bool isBorn)
    {
        ChangePointFilter filter = Begun();
        Look(filter, 0, isDrawing: true);
        Look(filter, gone, isDrawing: true);
        filter.ChargeOf(out double location, out double scale, out double least);
        double sigmas = (location - least) / Math.Sqrt((scale * scale) + Math.Pow(filter.LeastSpread(), 2));
        Assert.Equal(isBorn, sigmas < 10);
        Assert.InRange(sigmas, 9.3, 10.7);
        Assert.Equal(isBorn ? 0.01 : 0, filter.VaporOnly, 1e-6);
    }

    /// <summary>Where liquid, or the machine, came to an end: vapor alone has the density of the charge at what is gone, over a tenth, liquid all of the charge above it, the end anywhere within it.</summary>
    [Theory]
    [InlineData(1.5)]
    [InlineData(3.0)]
    [InlineData(3.6)]
    [InlineData(4.2)]
    public void At_an_end_vapor_alone_is_held_against_all_that_lies_above(double gone)
    {
        ChangePointFilter filter = Begun();
        filter.Wet.X[StateIndex.Delivered] = gone;
        filter.EndLiquid();
        Pass(filter, gone, isDrawing: false, gauge: double.NaN);
        filter.ChargeOf(out double location, out double scale, out double least);
        double density = (Below((least + 0.05 - location) / scale) - Below((least - 0.05 - location) / scale)) / 0.1;
        double wanted = density / (density + 1 - Below((least - location) / scale));
        Assert.Equal(wanted > 0.01 ? Math.Min(0.5, wanted) : 0, filter.VaporOnly, 1e-6);
        Assert.Equal(gone < 2, wanted < 0.01);
    }

    /// <summary>Liquid is as likely again as it was at the mark, and what was born since ends.</summary>
    [Fact]
    public void Gone_back_to_a_mark_liquid_is_as_likely_as_it_was()
    {
        ChangePointFilter filter = Begun();
        Look(filter, 5, isDrawing: true);
        for (int i = 0; i < 4; i++)
        {
            Pass(filter, 5, isDrawing: false, gauge: double.NaN);
        }

        var mark = new FilterMark();
        Assert.Equal(0, filter.Keep(mark));
        double wet = filter.WetProbability;
        Assert.InRange(wet, 0.5, 0.95);
        Assert.Equal(wet, mark.Wet);
        Assert.Equal(_time, mark.Time);
        filter.EndLiquid();
        Pass(filter, 5.2, isDrawing: false, gauge: double.NaN);
        Assert.True(filter.WetProbability < 0.7 * wet);
        Assert.NotNull(filter.Dry(1));
        double displacement = Math.Exp(filter.Wet.X[StateIndex.Displacement]);
        filter.GoBack(mark, 20, 295);
        Assert.Equal(wet, filter.WetProbability, 1e-6);
        Assert.Null(filter.Dry(1));
        Assert.NotNull(filter.Dry(0));

        // Twenty seconds of drawing at 28 kg/m³, a little less as it cools and the hose takes some.
        Assert.InRange(filter.Wet.X[StateIndex.Delivered], 5 + (20 * 0.6 * 28 * displacement), 5 + (20 * 28.5 * displacement));
    }

    /// <summary>A machine that stops while vapor alone is not thought likely: asked for once, with a gauge and without a fault.</summary>
    [Theory]
    [InlineData(true, false, true)]
    [InlineData(false, false, false)]
    [InlineData(true, true, false)]
    public void A_rest_asks_again(bool isRead, bool isSuspended, bool isBorn)
    {
        ChangePointFilter filter = Begun();
        Look(filter, 4.2, isDrawing: false);
        Pass(filter, 4.2, isDrawing: true, gauge: double.NaN);
        filter.IsSuspended = isSuspended;
        Assert.Equal(0, filter.VaporOnly);
        Pass(filter, 4.2, isDrawing: false, gauge: isRead ? 4.9e5 : double.NaN);
        Assert.Equal(isBorn, filter.VaporOnly > 0.1);
        double before = filter.VaporOnly;
        Pass(filter, 4.2, isDrawing: false, gauge: double.NaN);
        Assert.Equal(before, filter.VaporOnly, 0.02);
    }

    private ChangePointFilter Begun()
    {
        _threshold = double.NaN;
        return new ChangePointFilter(Bench.Model, Bench.Prior);
    }

    /// <summary>So much is gone, and the gauge shows what it should; the probability that the last liquid went since the last look.</summary>
    private double Look(ChangePointFilter filter, double gone, bool isDrawing)
    {
        SigmaPoint mean = filter.Wet.Mean();
        Bench.Model.Evaluate(in mean.State, in mean.Parameters, new ReducedInputs(295, isDrawing, AssumedPhase.LiquidPresent), out ReducedOutput output);
        Pass(filter, gone, isDrawing, output.SuctionPressure - 1e5 + mean.GaugeError);
        filter.ChargeOf(out double location, out double scale, out double least);

        // The first look counts from eight standard deviations below what was told.
        _threshold = double.IsNaN(_threshold) ? Math.Min(least, location - (8 * scale)) : _threshold;
        double until = Below((_threshold - location) / scale);
        double probability = (Below((least - location) / scale) - until) / (1 - until);
        _threshold = least;
        return probability;
    }

    /// <summary>The same, were so much gone.</summary>
    private double Probability(ChangePointFilter filter, double gone)
    {
        double before = filter.Wet.X[StateIndex.Delivered];
        filter.Wet.X[StateIndex.Delivered] = gone;
        filter.ChargeOf(out double location, out double scale, out double least);
        filter.Wet.X[StateIndex.Delivered] = before;
        double until = Below((_threshold - location) / scale);
        return (Below((least - location) / scale) - until) / (1 - until);
    }

    /// <summary>Two blocks of no length, as the wet filter works on every other one; nothing moves in them.</summary>
    private void Pass(ChangePointFilter filter, double gone, bool isDrawing, double gauge)
    {
        filter.Wet.X[StateIndex.Delivered] = gone;
        for (int i = 0; i < 2; i++)
        {
            _time += 1;
            filter.Update(Workbench.Block(_time, 1e-6, gauge: gauge, isDrawing: isDrawing));
        }
    }

    private static double Below(double t) => MathNet.Numerics.Distributions.StudentT.CDF(0, 1, 4, t);
}
