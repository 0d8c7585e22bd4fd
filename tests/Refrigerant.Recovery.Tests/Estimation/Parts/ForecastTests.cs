using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Forecasts of vapor at constant temperature: t = (V/S)·ln(p1/p2), V/S = 36 s.</summary>
public class ForecastTests
{
    private static readonly Workbench Bench = new();

    [Fact]
    public void A_level_is_reached_when_vapor_has_thinned_out_to_it()
    {
        SigmaPoint point = Vapor(0.018);
        Bench.Model.Evaluate(in point.State, in point.Parameters, new ReducedInputs(295, true), out ReducedOutput first);
        ReducedState state = point.State;
        double seconds = Forecast.TimeTo(Bench.Model, ref state, in point.Parameters, 295, 0.2 * first.Pressure, 1000, out bool reached);
        Assert.True(reached);

        // To what the last percent of compressibility changes the pressure by.
        Assert.Equal(36 * Math.Log(5), seconds, 0.015 * 36 * Math.Log(5));
        Assert.InRange(state.Delivered, 0.78 * 0.018, 0.83 * 0.018);

        // The end is found between two steps: a level that lies a little lower is reached a little later.
        ReducedState other = point.State;
        double later = Forecast.TimeTo(Bench.Model, ref other, in point.Parameters, 295, 0.198 * first.Pressure, 1000, out _);
        Assert.Equal(36 * Math.Log(1 / 0.99), later - seconds, 0.1);
    }

    [Fact]
    public void What_is_at_the_level_is_there_and_what_never_comes_takes_the_limit()
    {
        SigmaPoint point = Vapor(0.018);
        ReducedState state = point.State;
        Assert.Equal(0, Forecast.TimeTo(Bench.Model, ref state, in point.Parameters, 295, 1e6, 1000, out bool reached));
        Assert.True(reached);
        Assert.Equal(0, state.Delivered);
        state = point.State;
        Assert.Equal(50, Forecast.TimeTo(Bench.Model, ref state, in point.Parameters, 295, 1, 50, out reached));
        Assert.False(reached);

        // A machine that stalls far above the level is not waited for.
        ReducedParameters weak = point.Parameters with { Clearance = 0.9, DischargePressure = 5e6 };
        var run = new ForecastRun(in point.State, in weak);
        int steps = 4000;
        Assert.True(run.Run(Bench.Model, 295, 1, 1e9, ref steps));
        Assert.False(run.IsReached);
        Assert.Equal(1e9, run.Time);
    }

    /// <summary>Work comes in slices of four evaluations of the model a step, and where it is cut makes no difference.</summary>
    [Fact]
    public void Slices_make_no_difference()
    {
        SigmaPoint point = Vapor(0.018);
        var whole = new ForecastRun(in point.State, in point.Parameters);
        int all = 100_000;
        Assert.True(whole.Run(Bench.Model, 295, 1e4, 1000, ref all));
        var sliced = new ForecastRun(in point.State, in point.Parameters);
        int used = 0;
        bool isDone = false;
        while (!isDone)
        {
            int slice = 3;
            isDone = sliced.Run(Bench.Model, 295, 1e4, 1000, ref slice);
            used += 3 - slice;
            Assert.True(isDone || slice <= 0);
        }

        Assert.Equal(whole.Time, sliced.Time);
        Assert.Equal(100_000 - all, used);
        Assert.Equal(whole.State, sliced.State);
    }

    [Fact]
    public void A_batch_weighs_its_points()
    {
        var batch = new ForecastBatch(Bench.Model, 1.3e4, 3);
        Assert.Equal(double.NaN, batch.ReadyAt);
        Assert.False(batch.IsBusy);
        batch.Begin(100, 295, 30);
        SigmaPoint point = Vapor(0.018);
        SigmaPoint stalled = Vapor(0.018);
        stalled.Parameters.Clearance = 0.9;
        stalled.Parameters.DischargePressure = 5e6;
        batch.Add(in point, 3, 0, 0, 0, 0);
        batch.Add(in point, 0, 0, 0, 0, 0);
        batch.Add(in stalled, 1, 0, 0, 0, 0);
        batch.Pass(7);
        Assert.True(batch.IsBusy);
        Assert.Equal(double.NaN, batch.ReadyAt);
        int done = 0;
        while (batch.IsBusy)
        {
            done += batch.Work(10);
        }

        Assert.True(done > 10);
        Assert.Equal(0, batch.Work(10));
        Assert.Equal(100, batch.ReadyAt);
        Assert.Equal(30, batch.Gross);
        Assert.Equal(7, batch.Drawn);
        batch.Pass(2);
        Assert.Equal(9, batch.Drawn);
        Assert.Equal(0.75, batch.Reached, 1e-6);
        Assert.Equal(2, batch.Times.Count);
        ReducedState state = point.State;
        double seconds = Forecast.TimeTo(Bench.Model, ref state, in point.Parameters, 295, 1.3e4, 1e4, out _);
        Assert.Equal(seconds, batch.Times.Quantile(0), 0.1 * seconds);
        Assert.Equal(4 * 3600, batch.Times.Quantile(1));
        Assert.Equal(state.Delivered, batch.More.Quantile(0.9), 0.1 * state.Delivered);
        batch.Shift(2.5);
        Assert.Equal(32.5, batch.Gross);
    }

    /// <summary>What a forecast leaves out: a place z in a spread of a share of the time, up to the longest, and of seconds, root of the squares; never below none.</summary>
    [Theory]
    [InlineData(1, 0.3, 1e4, 4)]
    [InlineData(-1, 0.3, 20, 40)]
    [InlineData(-3, 1, 1e4, 0)]
    public void The_spread_of_a_forecast_is_added(double z, double relative, double longest, double seconds)
    {
        SigmaPoint point = Vapor(0.018);
        double plain = Time(0, 0, 0, 0);
        double spread = Math.Sqrt(Math.Pow(relative * Math.Min(plain, longest), 2) + (seconds * seconds));
        Assert.Equal(Math.Max(0, plain + (z * spread)), Time(z, relative, longest, seconds), 1e-4);

        double Time(double place, double share, double upTo, double own)
        {
            var batch = new ForecastBatch(Bench.Model, 1.3e4, 1);
            batch.Begin(0, 295, 0);
            batch.Add(in point, 1, place, share, upTo, own);
            batch.Work(100_000);
            return batch.Times.Quantile(0.5);
        }
    }

    [Fact]
    public void More_points_than_there_is_room_for_are_left_out_and_a_new_batch_forgets()
    {
        var batch = new ForecastBatch(Bench.Model, 1.3e4, 2);
        batch.Begin(0, 295, 0);
        for (int i = 0; i < 5; i++)
        {
            SigmaPoint point = Vapor(0.018);
            batch.Add(in point, 1, 0, 0, 0, 0);
        }

        batch.Work(1_000_000);
        Assert.Equal(2, batch.Times.Count);
        batch.Begin(5, 295, 1);
        SigmaPoint one = Vapor(0.018);
        batch.Add(in one, 1, 0, 0, 0, 0);
        batch.Work(1_000_000);
        Assert.Equal(1, batch.Times.Count);
        Assert.Equal(1, batch.Reached);
        Assert.Equal(0, batch.Drawn);
        Assert.Equal(5, batch.ReadyAt);
    }

    /// <summary>Vapor in metal that keeps its temperature, with no hose and no clearance.</summary>
    private static SigmaPoint Vapor(double mass) => new()
    {
        State = ReducedParts.At(295),
        Parameters = ReducedParts.Vapor(mass, 0.018, 5e-4),
    };
}
