using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>How long the steps of a forecast are, counted: of vapor at constant temperature the flow would empty the appliance in V/S at any time, and to a ratio r of pressures it takes V/S·ln r.</summary>
public class ForecastStepTests
{
    private static readonly Workbench Bench = new();

    /// <summary>In a batch 0.12 of V/S, a second at least and a minute at most; alone 0.04 of it and half a minute. Four evaluations of the model a step.</summary>
    [Theory]
    [InlineData(36, 5, true, 0.12 * 36)]
    [InlineData(4, 5, true, 1)]
    [InlineData(3600, 1.2, true, 60)]
    [InlineData(36, 5, false, 0.04 * 36)]
    [InlineData(3600, 1.1, false, 30)]
    public void Steps_are_a_share_of_the_time_in_which_it_would_be_empty(double empties, double ratio, bool isBatch, double step)
    {
        SigmaPoint point = Vapor(5e-4 * empties);
        double level = Pressure(in point) / ratio;
        int used;
        if (isBatch)
        {
            var batch = new ForecastBatch(Bench.Model, level, 1);
            batch.Begin(0, 295, 0);
            batch.Add(in point, 1, 0, 0, 0, 0);
            used = batch.Work(100_000);
            Assert.Equal(1, batch.Reached);
        }
        else
        {
            var run = new ForecastRun(in point.State, in point.Parameters);
            int left = 100_000;
            Assert.True(run.Run(Bench.Model, 295, level, 1e5, ref left));
            used = 100_000 - left;
        }

        // Compressibility changes the pressure by a percent or two on the way.
        double steps = empties * Math.Log(ratio) / step;
        Assert.InRange(used / 4.0, 0.975 * steps, (1.02 * steps) + 1);
        Assert.Equal(0, used % 4);
    }

    /// <summary>Where a machine would take a million seconds for what is there, and refrigerant and metal are within a tenth of a kelvin, nothing more comes.</summary>
    [Theory]
    [InlineData(1.05e6, 0.09, true)]
    [InlineData(0.95e6, 0.09, false)]
    [InlineData(1.05e6, 0.105, false)]
    [InlineData(1.05e6, -0.105, false)]
    public void A_stalled_job_is_not_waited_for(double empties, double kelvins, bool isStalled)
    {
        SigmaPoint point = Vapor(0.018);
        point.Parameters.Displacement = point.Parameters.Volume / empties;
        point.State.MetalTemperature = point.State.Temperature + kelvins;
        var run = new ForecastRun(in point.State, in point.Parameters);
        int left = 4;
        Assert.Equal(isStalled, run.Run(Bench.Model, 295, 1, 1e9, ref left));
        Assert.Equal(isStalled ? 1e9 : 30, run.Time);
        Assert.False(run.IsReached);
    }

    private static double Pressure(in SigmaPoint point)
    {
        Bench.Model.Evaluate(in point.State, in point.Parameters, new ReducedInputs(295, true), out ReducedOutput output);
        return output.Pressure;
    }

    /// <summary>Of a kilogram in a cubic metre.</summary>
    private static SigmaPoint Vapor(double volume) => new() { State = ReducedParts.At(295), Parameters = ReducedParts.Vapor(volume, volume, 5e-4) };
}
