using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>On jobs that go as the model has it: what is left, and when the last liquid went.</summary>
public class ChangePointFilterTests
{
    private static readonly Workbench Bench = new(Workbench.Typical with { Charge = 2, Metal = 8000, Volume = 0.012 });

    [Theory]
    [InlineData(1)]
    [InlineData(0.85)]
    [InlineData(1.2)]
    public void The_last_liquids_going_is_found_and_then_what_is_left(double charge)
    {
        var filter = new ChangePointFilter(Bench.Model, Bench.Prior);
        var truth = new OwnTruth(Bench, charge);
        double dry = double.NaN;
        while (truth.Output.Pressure > 5e4 && truth.Time < 2000)
        {
            EstimatorBlock block = truth.Next();
            filter.Update(in block);
            dry = truth.Output.IsDry && double.IsNaN(dry) ? truth.Time : dry;
            Assert.InRange(filter.VaporOnly, 0, 1);
            Assert.Equal(1, filter.VaporOnly + filter.WetProbability, 1e-12);
            double sum = 0;
            for (int slot = 0; slot < ChangePointFilter.Slots; slot++)
            {
                sum += filter.DryProbability(slot);
                Assert.Equal(filter.Dry(slot) is null, filter.DryProbability(slot) == 0);
            }

            Assert.Equal(filter.VaporOnly, sum, 1e-12);
            Assert.Equal(filter.IsBestWet, ReferenceEquals(filter.Best, filter.Wet));
            if (truth.Time < 0.6 * charge * 120)
            {
                Assert.True(filter.VaporOnly < 0.5, $"{filter.VaporOnly:P0} at {truth.Time} s, dry at {dry}");
            }

            if (truth.Time > dry + 60)
            {
                Assert.True(filter.VaporOnly > 0.9, $"{filter.VaporOnly:P0} at {truth.Time} s, dry at {dry} s");
                Assert.False(filter.IsBestWet);
            }
        }

        Assert.True(dry > 60);
        SquareRootFilter best = filter.Best;
        double left = Math.Exp(best.X[StateIndex.Charge]) - best.X[StateIndex.Delivered];
        Assert.Equal(truth.Left, left, 0.02 * 2);
        Assert.Equal(charge, Math.Exp(best.X[StateIndex.Charge]) / 2, 0.02);
    }

    /// <summary>While a fault explains the readings nothing is born; when it does no more it is made up for.</summary>
    [Fact]
    public void Suspended_nothing_is_born()
    {
        var filter = new ChangePointFilter(Bench.Model, Bench.Prior) { IsSuspended = true };
        var truth = new OwnTruth(Bench);
        while (!truth.Output.IsDry)
        {
            EstimatorBlock block = truth.Next();
            filter.Update(in block);
        }

        Assert.Equal(0, filter.VaporOnly);
    }

    /// <summary>A machine that stops over vapor alone: the pressure does not come back, and a rest tells. Without a gauge nothing is born.</summary>
    [Fact]
    public void Without_a_gauge_nothing_is_born()
    {
        var filter = new ChangePointFilter(Bench.Model, Bench.Prior);
        var truth = new OwnTruth(Bench);
        for (int i = 0; i < 300; i++)
        {
            EstimatorBlock block = truth.Next() with { Gauge = double.NaN };
            filter.Update(in block);
        }

        Assert.Equal(0, filter.VaporOnly);
        Assert.Equal(truth.State.Delivered, filter.Wet.X[StateIndex.Delivered], 0.05);
    }

    [Fact]
    public void What_was_born_since_is_taken_back()
    {
        ChangePointFilter filter = Dried(out OwnTruth truth, out double dry);
        filter.Undo(double.NegativeInfinity);
        Assert.Equal(0, filter.VaporOnly);
        Assert.True(filter.IsBestWet);
        filter = Dried(out truth, out dry);
        double before = filter.VaporOnly;
        filter.Undo(truth.Time + 10);
        Assert.Equal(before, filter.VaporOnly, 0.51);
        Assert.True(filter.VaporOnly > 0);
    }

    [Fact]
    public void It_recovers_with_what_the_scale_shows_and_what_was_told()
    {
        ChangePointFilter filter = Dried(out _, out _);
        double temperature = filter.Wet.X[StateIndex.Temperature];
        double metal = filter.Wet.X[StateIndex.MetalTemperature];
        double wetted = filter.Wet.X[StateIndex.WetTemperature];
        double dissolved = filter.Wet.X[StateIndex.Dissolved];
        filter.Recover(1.5);
        Assert.Equal(0, filter.VaporOnly);
        for (int i = 0; i < StateIndex.Count; i++)
        {
            double expected = i switch
            {
                StateIndex.Delivered => 1.5,
                StateIndex.Temperature => temperature,
                StateIndex.MetalTemperature => metal,
                StateIndex.WetTemperature => wetted,
                StateIndex.Dissolved => dissolved,
                _ => Bench.Prior.Mean[i],
            };
            Assert.Equal(expected, filter.Wet.X[i]);
            double sigma = Bench.Prior.Sigma[i];

            // How cold it has become is known to 10 K.
            bool isTemperature = i is StateIndex.Temperature or StateIndex.MetalTemperature or StateIndex.WetTemperature;
            Assert.Equal((sigma * sigma) + (isTemperature ? 100 : 0), filter.Wet.Variance(i), 1e-9 * (1 + (sigma * sigma)));
        }

        double delivered = filter.Wet.X[StateIndex.Delivered];
        filter.Recover(double.NaN);
        Assert.Equal(delivered, filter.Wet.X[StateIndex.Delivered]);
    }

    [Fact]
    public void States_are_widened_released_and_restored_in_all()
    {
        ChangePointFilter filter = Dried(out _, out _);
        int slot = 0;
        while (filter.Dry(slot) is null)
        {
            slot++;
        }

        SquareRootFilter dry = filter.Dry(slot)!;
        double wet = filter.Wet.Variance(StateIndex.Hose);
        double own = dry.Variance(StateIndex.Hose);
        filter.Widen(StateIndex.Hose, 4);
        Assert.Equal(wet + 4, filter.Wet.Variance(StateIndex.Hose), 1e-9);
        Assert.Equal(own + 4, dry.Variance(StateIndex.Hose), 1e-9);
        filter.Release(StateIndex.Hose);
        Assert.Equal(StateIndex.Hose, filter.Wet.Released);
        Assert.Equal(StateIndex.Hose, dry.Released);
        filter.Restore(StateIndex.Hose);
        foreach (SquareRootFilter each in new[] { filter.Wet, dry })
        {
            Assert.Equal(-1, each.Released);
            Assert.Equal(Bench.Prior.Mean[StateIndex.Hose], each.X[StateIndex.Hose]);
            Assert.Equal(Bench.Prior.Sigma[StateIndex.Hose], Math.Sqrt(each.Variance(StateIndex.Hose)), 1e-9);
        }
    }

    /// <summary>Where the readings since a mark were wrong, all goes on from there as if nothing had been read: the machine has drawn as it does.</summary>
    [Fact]
    public void It_goes_back_to_a_mark_and_on_without_readings()
    {
        var filter = new ChangePointFilter(Bench.Model, Bench.Prior);
        var truth = new OwnTruth(Bench);
        for (int i = 0; i < 60; i++)
        {
            EstimatorBlock block = truth.Next();
            filter.Update(in block);
        }

        var mark = new FilterMark();
        double waiting = filter.Keep(mark);
        Assert.Equal(60, mark.Time);
        Assert.InRange(waiting, 0, 2);
        Assert.Equal(filter.WetProbability, mark.Wet, 1e-12);
        double volume = filter.Wet.X[StateIndex.Volume];
        double delivered = filter.Wet.X[StateIndex.Delivered];
        filter.Release(StateIndex.Displacement);
        for (int i = 0; i < 40; i++)
        {
            // A scale that stands.
            EstimatorBlock block = truth.Next() with { Delivered = 0.5 };
            filter.Update(in block);
        }

        filter.GoBack(mark, 40 + waiting, 295);
        Assert.Equal(-1, filter.Wet.Released);
        Assert.Equal(volume, filter.Wet.X[StateIndex.Volume], 1e-9);
        Assert.Equal(truth.State.Delivered, filter.Wet.X[StateIndex.Delivered], 0.05);
        Assert.True(filter.Wet.X[StateIndex.Delivered] > delivered + 0.2);
        Assert.Equal(mark.Wet, filter.WetProbability, 0.02);
    }

    /// <summary>Liquid that moved faster than vapor can, and does so no more: as likely as what was told of the charge has it, none is left; how cold it has become is known to 3 K, of the metal to 1 K.</summary>
    [Theory]
    [InlineData(1.9, 0.1, 0.5)]
    [InlineData(0.3, 0, 0.02)]
    public void Where_liquid_ends_vapor_only_is_asked_for(double moved, double least, double most)
    {
        var filter = new ChangePointFilter(Bench.Model, Bench.Prior);
        EstimatorBlock block = Workbench.Block(1, 1, isDrawing: false) with { LiquidMoved = moved };
        filter.Update(in block);
        block = Workbench.Block(2, 1, isDrawing: false);
        filter.Update(in block);
        double temperature = filter.Wet.Variance(StateIndex.Temperature);
        double metal = filter.Wet.Variance(StateIndex.MetalTemperature);
        double wetted = filter.Wet.Variance(StateIndex.WetTemperature);
        filter.EndLiquid();
        Assert.Equal(temperature + 9, filter.Wet.Variance(StateIndex.Temperature), 1e-6);
        Assert.Equal(wetted + 9, filter.Wet.Variance(StateIndex.WetTemperature), 1e-6);
        Assert.Equal(metal + 1, filter.Wet.Variance(StateIndex.MetalTemperature), 1e-6);
        for (int t = 3; t < 5; t++)
        {
            block = Workbench.Block(t, 1, isDrawing: false);
            filter.Update(in block);
        }

        Assert.InRange(filter.VaporOnly, least, most + 0.01);
    }

    /// <summary>A filter that is no number any more begins again from what was told and what the scale shows.</summary>
    [Fact]
    public void No_number_is_begun_again()
    {
        var filter = new ChangePointFilter(Bench.Model, Bench.Prior);
        filter.Wet.X[StateIndex.Charge] = double.NaN;
        EstimatorBlock block = Workbench.Block(2, 2, 4e5, 0.7);
        filter.Update(in block);
        block = Workbench.Block(4, 2, 4e5, 0.7);
        filter.Update(in block);
        Assert.True(filter.Wet.IsFinite);
        Assert.Equal(0.7, filter.Wet.X[StateIndex.Delivered], 0.1);
        Assert.Equal(Math.Log(2), filter.Wet.X[StateIndex.Charge], 0.2);
    }

    /// <summary>
    /// The least charge with liquid left: delivered, what oil holds and saturated vapor in the volume; its spread and that of the distance to the charge are those of a sum whose terms are known.
    /// </summary>
    [Fact]
    public void The_least_charge_is_what_is_gone()
    {
        var work = new FilterWorkspace();
        var last = new LastLiquid(Bench.Model, Bench.Prior, work);
        var filter = new SquareRootFilter(Bench.Model, Bench.Prior, new DividedDifferences(Bench.Model, Bench.Prior, work), AssumedPhase.LiquidPresent);
        filter.X[StateIndex.Delivered] = 1.2;
        filter.X[StateIndex.Dissolved] = Math.Log(0.1);
        filter.X[StateIndex.Temperature] = 280;
        double vapor = Bench.Model.LastVapor(280, 0.012, 2);
        double gone = 1.2 + 0.1 + vapor;
        last.ChargeOf(filter, out double location, out double scale, out double least);
        Assert.Equal(Math.Log(gone), least, 1e-12);
        Assert.Equal(Math.Log(2), location, 1e-12);
        Assert.Equal(Bench.Prior.Sigma[StateIndex.Charge], scale, 1e-12);
        double delivered = Bench.Prior.Sigma[StateIndex.Delivered] / gone;
        double dissolved = 0.1 * Bench.Prior.Sigma[StateIndex.Dissolved] / gone;
        double volume = vapor * Bench.Prior.Sigma[StateIndex.Volume] / gone;
        double spread = Math.Sqrt((delivered * delivered) + (dissolved * dissolved) + (volume * volume));
        Assert.Equal(spread, last.LeastSpread(filter), 1e-12);
        Assert.Equal(Math.Log(2 / gone), last.Distance(filter, out double variance), 1e-12);
        Assert.Equal((scale * scale) + (spread * spread), variance, 1e-12);

        // Put there, what is left is saturated vapor alone.
        last.Condition(filter, 0.01);
        Assert.Equal(0, last.Distance(filter, out variance), 0.01);
        Assert.InRange(Math.Sqrt(variance), 0, 0.01);

        // Beyond what was told by two and a half standard deviations only what the scale received counts.
        filter.Reset();
        filter.X[StateIndex.Charge] = Math.Log(2) + (4 * scale);
        last.ChargeOf(filter, out location, out _, out least);
        Assert.Equal(Math.Log(2) + (2.5 * scale), location, 1e-12);
        filter.X[StateIndex.Delivered] = 5;
        filter.X[StateIndex.Charge] = Math.Log(8);
        last.ChargeOf(filter, out location, out _, out least);
        Assert.Equal(least, location, 1e-12);
    }

    private static ChangePointFilter Dried(out OwnTruth truth, out double dry)
    {
        var filter = new ChangePointFilter(Bench.Model, Bench.Prior);
        truth = new OwnTruth(Bench);
        dry = double.NaN;
        while (double.IsNaN(dry) || truth.Time < dry + 40)
        {
            EstimatorBlock block = truth.Next();
            filter.Update(in block);
            dry = truth.Output.IsDry && double.IsNaN(dry) ? truth.Time : dry;
        }

        return filter;
    }
}
