using System;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Estimation.Calibration;
using Refrigerant.Recovery.Tests.Estimation.Parts;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>A log of the reduced model itself, so that what the residuals are of is known.</summary>
public class FitProblemTests
{
    private static readonly Workbench Bench = new();

    /// <summary>At the first moment: (gauge − saturation − bias) over the root of what the gauge scatters, 6 kPa and 2 %; (weight − offset + flow·lag) over that of 60 g, the step and 0.8 % of the charge.</summary>
    [Fact]
    public void The_first_residuals_are_those_by_hand()
    {
        FitProblem problem = Problem(LogParts.Every(10, 60, t => LogParts.At(t, 4e5, 13.5 + (0.005 * t))), out FitPrior prior);
        Assert.Equal(prior.Mean.Length, problem.Unknowns);
        Assert.Equal(120, problem.Readings);
        var z = new double[problem.Unknowns];
        double[] plain = Residuals(problem, z);

        // A bias of one standard deviation of its own takes that off every pressure, and no weight.
        double trust = Math.Sqrt(Math.Pow(0.15 * 27.2e3, 2) + (6000.0 * 6000) + Math.Pow(0.02 * 5e5, 2));
        z[FitIndex.Set(0) + FitIndex.GaugeBias] = 1;
        double[] biased = Residuals(problem, z);
        double weight = Math.Sqrt((0.06 * 0.06) + (0.01 * 0.01) + Math.Pow(0.008 * 6, 2));
        for (int i = 0; i < 120; i += 2)
        {
            Assert.Equal(-prior.Sigma[FitIndex.Set(0) + FitIndex.GaugeBias] / trust, biased[i] - plain[i], 1e-9);
            Assert.Equal(0, biased[i + 1] - plain[i + 1], 1e-12);
        }

        // An offset likewise of the weights.
        z = new double[problem.Unknowns];
        z[FitIndex.Set(0) + FitIndex.ScaleOffset] = -2;
        double[] offset = Residuals(problem, z);
        Assert.Equal(0, offset[0] - plain[0], 1e-12);
        Assert.All(Enumerable.Range(0, 60), i => Assert.Equal(2 * 0.05 / weight, offset[(2 * i) + 1] - plain[(2 * i) + 1], 1e-9));

        // Refrigerant on its way: a second of lag is a second of flow.
        z = new double[problem.Unknowns];
        z[FitIndex.Lag] = 0.2;
        double[] lag = Residuals(problem, z);
        Assert.All(Enumerable.Range(0, 60), i => Assert.InRange((lag[(2 * i) + 1] - plain[(2 * i) + 1]) * weight, 0.001, 0.02));

        // The priors' residuals are the unknowns.
        Assert.Equal(0.2, lag[120 + FitIndex.Lag]);
        Assert.Equal(0, lag[120]);
    }

    /// <summary>More displacement takes more and leaves the gauge lower; more volume, metal and heat hold it up; more hose takes it down; each by the sign of what it does.</summary>
    [Theory]
    [InlineData(FitIndex.Displacement, false, -1, -1)]
    [InlineData(FitIndex.Hose, false, -1, 1)]
    [InlineData(FitIndex.Clearance, false, 1, 1)]
    [InlineData(FitIndex.Charge, true, 1, -1)]
    [InlineData(FitIndex.Outer, true, 1, -1)]
    [InlineData(FitIndex.Metal, true, 1, -1)]
    [InlineData(FitIndex.Temperature, true, 1, -1)]
    [InlineData(FitIndex.Condensing, true, 1, 1)]
    [InlineData(FitIndex.Inner, true, 1, -1)]
    public void Each_unknown_moves_pressure_and_weight_its_way(int index, bool isOfLog, int pressure, int weight)
    {
        // A cylinder that is not the job's: what it holds does not tell the discharge pressure.
        FitProblem problem = Problem(LogParts.Every(10, 40, t => LogParts.At(t, 4e5, 13.5) with { Cylinder = "unknown" }), out _);
        var z = new double[problem.Unknowns];
        double[] plain = Residuals(problem, z);
        z[isOfLog ? FitIndex.Set(0) + index : index] = 0.5;
        double[] moved = Residuals(problem, z);
        double shown = 0;
        double delivered = 0;
        for (int i = 40; i < 80; i += 2)
        {
            shown += plain[i] - moved[i];
            delivered += moved[i + 1] - plain[i + 1];
        }

        Assert.Equal(pressure, Math.Sign(shown));
        Assert.Equal(weight, Math.Sign(delivered));
    }

    /// <summary>
    /// The metal that counts is wetted whole at the start, whatever share of the volume liquid fills there by the property model; the course is that of the reduced model in two steps of five seconds between moments.
    /// </summary>
    [Fact]
    public void The_course_is_that_of_the_reduced_model()
    {
        FitProblem problem = Problem(LogParts.Every(10, 60, t => LogParts.At(t, 4e5, 13.5) with { Cylinder = "unknown" }), out FitPrior prior);
        double[] residuals = Residuals(problem, new double[problem.Unknowns]);
        ReducedParameters parameters = ReducedParameters.FromJob(LogParts.Job, Bench.Table);
        int set = FitIndex.Set(0);
        parameters.Warming = prior.Mean[FitIndex.Warming];
        parameters.InnerConductance = Math.Exp(prior.Mean[set + FitIndex.Inner]);
        parameters.WetShare = prior.Mean[set + FitIndex.WetShare];
        parameters.WetExponent = 0.5;
        parameters.Mixing = 1.0 / 30;
        parameters.DryFactor = 30;
        parameters.Drift = prior.Mean[FitIndex.Drift];
        parameters.OilCapacity = Math.Exp(prior.Mean[set + FitIndex.OilCapacity]);
        parameters.FullLevel = LogParts.Job.Appliance.Fluid.Model.VesselAtTemperature(295, 6 / 0.018).LiquidVolumeFraction;
        Assert.InRange(parameters.FullLevel, 0.2, 0.3);
        double dissolved = Math.Exp(prior.Mean[set + FitIndex.Dissolved]);
        var state = new ReducedState { Temperature = 295, MetalTemperature = 295, WetTemperature = 295, Dissolved = dissolved };
        var inputs = new ReducedInputs(295, true);
        double trust = Math.Sqrt(Math.Pow(0.15 * 27.2e3, 2) + (6000.0 * 6000) + Math.Pow(0.02 * 5e5, 2));
        double weight = Math.Sqrt((0.06 * 0.06) + (0.01 * 0.01) + Math.Pow(0.008 * 6, 2));
        for (int i = 0; i < 60; i++)
        {
            Bench.Model.Evaluate(in state, in parameters, in inputs, out ReducedOutput shown);

            // To what straight lines between the nodes of the table change the level by.
            Assert.Equal((5e5 - shown.SuctionPressure) / trust, residuals[2 * i], 2e-3);
            Assert.Equal((-state.Delivered + (5 * shown.Flow)) / weight, residuals[(2 * i) + 1], 2e-3);
            Bench.Model.AdvanceSecondOrder(ref state, in parameters, in inputs, 5);
            Bench.Model.AdvanceSecondOrder(ref state, in parameters, in inputs, 5);
        }
    }

    /// <summary>Nothing is moved beyond five standard deviations, no residual is beyond ten thousand, and none is no number.</summary>
    [Fact]
    public void Bounds_hold()
    {
        Assert.Equal(5, FitProblem.Bounded(7));
        Assert.Equal(-5, FitProblem.Bounded(-7));
        Assert.Equal(4.9, FitProblem.Bounded(4.9));
        FitProblem problem = Problem(LogParts.Every(10, 40, t => LogParts.At(t, t == 0 ? 9e7 : 4e5, 13.5 + (t == 50 ? 1e5 : 0))), out _);
        var z = new double[problem.Unknowns];
        Array.Fill(z, 50);
        double[] residuals = Residuals(problem, z);
        Assert.All(residuals, r => Assert.True(double.IsFinite(r) && Math.Abs(r) <= 1e4));
        Assert.Equal(1e4, residuals.Max());
        Assert.Equal(50, residuals[^1]);
        Array.Fill(z, 5);
        Assert.Equal(residuals[..80], Residuals(problem, z)[..80]);
    }

    /// <summary>Places are log plus share of its time, pressures and weights of a moment at one.</summary>
    [Fact]
    public void Places_lie_within_their_log()
    {
        FitProblem problem = Problem(LogParts.Every(10, 41, t => LogParts.At(t, t == 20 ? double.NaN : 4e5, t == 30 ? double.NaN : 13.5)), out _);
        double[] places = problem.Places();
        Assert.Equal(80, places.Length);
        Assert.Equal(problem.Readings, places.Length);
        Assert.Equal(0, places[0]);
        Assert.Equal(0, places[1]);
        Assert.Equal(10.0 / 400, places[2], 1e-4);
        Assert.Equal(20.0 / 400, places[4], 1e-4);
        Assert.Equal(30.0 / 400, places[5], 1e-4);
        Assert.Equal(40.0 / 400, places[6], 1e-4);
        Assert.InRange(places[^1], 0.9999, 0.99999999);
    }

    private static double[] Residuals(FitProblem problem, double[] z)
    {
        var residuals = new double[problem.Readings + problem.Unknowns];
        problem.Residuals(z, residuals);
        return residuals;
    }

    private static FitProblem Problem(JobLog log, out FitPrior prior)
    {
        LoggedJob logged = new(LogParts.Job, log);
        var options = new CalibrationOptions();
        ReducedParameters[] typical = [ReducedParameters.FromJob(LogParts.Job, Bench.Table)];
        prior = FitPrior.Of([logged], typical, [0], options);
        LogCourse course = LogCourse.Of(logged, ScaleCourse.Of(log, LogParts.Job), 0, Bench.Table, options.Instruments);
        return new FitProblem([course], [Bench.Model], typical, prior, options.Instruments);
    }
}
