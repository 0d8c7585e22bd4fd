using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

public class DryFiltersTests
{
    private static readonly Workbench Bench = new();

    [Fact]
    public void Weights_add_up_and_the_heaviest_is_found()
    {
        DryFilters dry = Filters(3);
        Assert.Equal(0, dry.Sum);
        Assert.Equal(-1, dry.Heaviest(out double weight));
        Assert.Equal(double.NegativeInfinity, weight);
        int first = dry.Bear(Wet(), Math.Log(0.2), 10);
        int second = dry.Bear(Wet(), Math.Log(0.5), 20);
        Assert.NotEqual(first, second);
        Assert.Equal(0.7, dry.Sum, 1e-12);
        Assert.Equal(second, dry.Heaviest(out weight));
        Assert.Equal(Math.Log(0.5), weight);
        Assert.Equal(0.2, dry.Weight(first), 1e-12);
        Assert.Null(dry[3 - first - second]);
        Assert.Equal(0, dry.Weight(3 - first - second));
        Assert.NotNull(dry[first]);
        dry.Clear();
        Assert.Equal(0, dry.Sum);
        Assert.Null(dry[first]);
    }

    /// <summary>Below e^−12 of the heaviest one ends.</summary>
    [Fact]
    public void What_is_too_light_ends()
    {
        DryFilters dry = Filters(3);
        int light = dry.Bear(Wet(), -11.5, 10);
        int lighter = dry.Bear(Wet(), -12.5, 20);
        dry.Lower(0);
        Assert.NotNull(dry[light]);
        Assert.Null(dry[lighter]);
        dry.Lower(1);
        Assert.Null(dry[light]);
    }

    /// <summary>Two seconds before a change a birth may already be owed to it.</summary>
    [Fact]
    public void Those_born_since_a_time_end()
    {
        DryFilters dry = Filters(3);
        int old = dry.Bear(Wet(), -1, 97.9);
        int young = dry.Bear(Wet(), -1, 98.1);
        dry.EndSince(100);
        Assert.NotNull(dry[old]);
        Assert.Null(dry[young]);
    }

    /// <summary>Where there is no room the pair of neighbours in time that is lightest, times how far they lie apart, becomes one: the heavier of them, with the weight of both.</summary>
    [Fact]
    public void Where_there_is_no_room_a_pair_becomes_one()
    {
        DryFilters dry = Filters(4);
        int a = dry.Bear(Wet(), Math.Log(0.10), 10);
        int b = dry.Bear(Wet(), Math.Log(0.02), 20);
        int c = dry.Bear(Wet(), Math.Log(0.03), 30);
        int d = dry.Bear(Wet(), Math.Log(0.40), 31);

        // 0.12·11, 0.05·11 and 0.43·2: b and c.
        int e = dry.Bear(Wet(), Math.Log(0.05), 40);
        Assert.Equal(b, e);
        Assert.Equal(0.05, dry.Weight(c), 1e-12);
        Assert.Equal(0.10, dry.Weight(a), 1e-12);
        Assert.Equal(0.40, dry.Weight(d), 1e-12);
        Assert.Equal(0.60, dry.Sum, 1e-12);

        // 0.15·21, 0.45·2 and 0.45·10: of c and d, close in time, the heavier one stays.
        int f = dry.Bear(Wet(), Math.Log(0.01), 60);
        Assert.Equal(c, f);
        Assert.Equal(0.45, dry.Weight(d), 1e-12);
    }

    /// <summary>The charge wanders by a tenth a minute of what is left outside the oil, by three tenths just after the birth, where puddles linger.</summary>
    [Theory]
    [InlineData(0, 0.3)]
    [InlineData(60, 0.1 + (0.2 / Math.E))]
    [InlineData(6000, 0.1)]
    public void The_charge_wanders_by_what_is_left(double age, double walk)
    {
        DryFilters dry = Filters(2);
        SquareRootFilter wet = Wet();
        wet.X[StateIndex.Delivered] = 4.5;
        wet.X[StateIndex.Dissolved] = Math.Log(0.3);
        int slot = dry.Bear(wet, -1, 100);
        EstimatorBlock block = Workbench.Block(100 + age, 1, isDrawing: false);
        dry.Update(slot, in block, 100 + age, 0.5);

        // 1.2 of 6 kg are left.
        Assert.Equal(walk * walk * 0.2 * 0.2 / 60, dry.All[slot].ChargeNoise, 1e-12);
    }

    [Fact]
    public void A_weight_follows_the_tempered_likelihood_and_what_is_no_number_ends()
    {
        DryFilters dry = Filters(2);
        SquareRootFilter wet = Wet();
        wet.X[StateIndex.Delivered] = 5.5;
        int slot = dry.Bear(wet, -1, 0);
        EstimatorBlock block = Workbench.Block(1, 1, 1e5, 5.6);
        dry.Update(slot, in block, 1, 0.5);
        Assert.NotEqual(0, dry.All[slot].LogLikelihood);
        Assert.Equal(Math.Exp(-1 + (0.5 * dry.All[slot].LogLikelihood)), dry.Weight(slot), 1e-12);
        dry.All[slot].X[StateIndex.Charge] = double.NaN;
        dry.Update(slot, in block, 2, 0.5);
        Assert.Null(dry[slot]);
    }

    [Fact]
    public void A_newborn_is_as_the_wet_one_was()
    {
        DryFilters dry = Filters(2);
        SquareRootFilter wet = Wet();
        wet.X[StateIndex.Delivered] = 2;
        wet.L[5] = 0.1;
        SquareRootFilter born = dry.All[dry.Bear(wet, -1, 0)];
        Assert.Equal(wet.X, born.X);
        Assert.Equal(wet.L, born.L);
        Assert.NotSame(wet.X, born.X);
        Assert.Equal(0.1 * 0.1 / 60, born.ChargeNoise, 1e-12);
    }

    private static DryFilters Filters(int slots) => new(Bench.Model, Bench.Prior, Differences(), slots);

    private static SquareRootFilter Wet() => new(Bench.Model, Bench.Prior, Differences(), AssumedPhase.LiquidPresent);

    private static DividedDifferences Differences() => new(Bench.Model, Bench.Prior, new FilterWorkspace());
}
