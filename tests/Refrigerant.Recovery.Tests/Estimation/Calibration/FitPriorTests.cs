using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Estimation.Calibration;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Tests.Estimation.Parts;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>A tolerance ±w is w/√3 (JCGM 100:2008, 4.3.7), and what the model leaves out comes on top, root of the squares.</summary>
public class FitPriorTests
{
    private static readonly double Root3 = Math.Sqrt(3);
    private static readonly Workbench Bench = new();

    [Fact]
    public void Tolerances_are_standard_deviations_with_what_the_model_leaves_out()
    {
        FitPrior prior = Of(Bench.Job, 0);
        Assert.Equal(6 + 13, prior.Mean.Length);
        int set = FitIndex.Set(0);

        // By default: charge and displacement 25 %, volume 60 %, heat, metal and hoses 90 %, temperature 2 K.
        Assert.Equal(0.25 / Root3, prior.Sigma[set + FitIndex.Charge], 1e-12);
        Assert.Equal(Root(0.25 / Root3, 0.1), prior.Sigma[FitIndex.Displacement], 1e-12);
        Assert.Equal(Root(0.9 / Root3, 0.3), prior.Sigma[FitIndex.Hose], 1e-12);
        Assert.Equal(Root(0.6 / Root3, 0.05), prior.Sigma[set + FitIndex.Volume], 1e-12);
        Assert.Equal(Root(0.9 / Root3, 0.3), prior.Sigma[set + FitIndex.Outer], 1e-12);
        Assert.Equal(Root(0.9 / Root3, 0.3), prior.Sigma[set + FitIndex.Metal], 1e-12);
        Assert.Equal(2 / Root3, prior.Sigma[set + FitIndex.Temperature], 1e-12);

        // Class 1.6 of 1.7 MPa; steps of 10 g.
        Assert.Equal(0.45 * 27.2e3, prior.Sigma[set + FitIndex.GaugeBias], 1e-6);
        Assert.Equal(0.05, prior.Sigma[set + FitIndex.ScaleOffset], 1e-12);
        Assert.Equal(0.08, Of(Bench.Job, 0, new CalibrationOptions { Instruments = new Instruments { Scale = ScaleAccuracy.FromResolution(Mass.FromGrams(40)) } }).Sigma[set + FitIndex.ScaleOffset], 1e-12);
        Assert.Equal(0.01, Of(Bench.Job, 0, new CalibrationOptions { Tolerances = new InputTolerances { Charge = Ratio.FromPercent(0.1), Temperature = TemperatureDelta.FromKelvins(0.1) } }).Sigma[set + FitIndex.Charge], 1e-12);
        Assert.Equal(1, Of(Bench.Job, 0, new CalibrationOptions { Tolerances = new InputTolerances { Temperature = TemperatureDelta.FromKelvins(0.1) } }).Sigma[set + FitIndex.Temperature], 1e-12);
    }

    [Fact]
    public void Means_are_what_was_told()
    {
        FitPrior prior = Of(Bench.Job, 0);
        int set = FitIndex.Set(0);
        ReducedParameters told = ReducedParameters.FromJob(Bench.Job, Bench.Table);
        Assert.Equal(told.Displacement, Math.Exp(prior.Mean[FitIndex.Displacement]), 1e-12);
        Assert.Equal(0, prior.Mean[FitIndex.Hose]);
        Assert.Equal(told.Clearance, Math.Exp(prior.Mean[FitIndex.Clearance]), 1e-12);
        Assert.Equal(6, Math.Exp(prior.Mean[set + FitIndex.Charge]), 1e-9);
        Assert.Equal(0.018, Math.Exp(prior.Mean[set + FitIndex.Volume]), 1e-9);
        Assert.Equal(40, Math.Exp(prior.Mean[set + FitIndex.Outer]), 1e-9);
        Assert.Equal(2e4, Math.Exp(prior.Mean[set + FitIndex.Metal]), 1e-6);
        Assert.Equal(295, prior.Mean[set + FitIndex.Temperature]);
        Assert.Equal(303, prior.Mean[set + FitIndex.Condensing], 1e-9);
        Assert.Equal(0, prior.Mean[set + FitIndex.GaugeBias]);
        Assert.Equal(0, prior.Mean[set + FitIndex.ScaleOffset]);

        // Not told: fourteen times that from outside. Told: what was told.
        Assert.Equal(14 * 40, Math.Exp(prior.Mean[set + FitIndex.Inner]), 1e-6);
        Appliance metal = Bench.Job.Appliance with { MetalResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / 300.0) };
        Assert.Equal(300, Math.Exp(Of(Bench.Job with { Appliance = metal }, 0).Mean[set + FitIndex.Inner]), 1e-6);
    }

    /// <summary>After liquid was pushed the temperature has moved by 4 K or so.</summary>
    [Fact]
    public void A_late_beginning_knows_less_of_the_temperature() =>
        Assert.Equal(Root(2 / Root3, 4), Of(Bench.Job, 7).Sigma[FitIndex.Set(0) + FitIndex.Temperature], 1e-12);

    [Fact]
    public void Oil_is_told_or_hardly_known()
    {
        int set = FitIndex.Set(0);
        FitPrior unknown = Of(Bench.Job, 0);
        Assert.Equal(0.06, Math.Exp(unknown.Mean[set + FitIndex.OilCapacity]), 1e-9);
        Assert.Equal(0.12, Math.Exp(unknown.Mean[set + FitIndex.Dissolved]), 1e-9);
        Assert.Equal(1, unknown.Sigma[set + FitIndex.OilCapacity]);
        Assert.Equal(1, unknown.Sigma[set + FitIndex.Dissolved]);
        foreach (double oil in new[] { 1e-6, 0.1, 20 })
        {
            RecoveryJob job = (Workbench.Typical with { Oil = oil }).Job();
            FitPrior told = Of(job, 0);
            double capacity = Math.Max(6e-5, ReducedParameters.FromJob(job, Bench.Table).OilCapacity);
            Assert.Equal(capacity, Math.Exp(told.Mean[set + FitIndex.OilCapacity]), 1e-9);
            Assert.Equal(Math.Min(1.5, 3 * capacity), Math.Exp(told.Mean[set + FitIndex.Dissolved]), 1e-9);
            Assert.Equal(0.5, told.Sigma[set + FitIndex.OilCapacity]);
            Assert.Equal(0.7, told.Sigma[set + FitIndex.Dissolved]);
        }
    }

    [Fact]
    public void Each_log_has_a_set_of_its_own()
    {
        RecoveryJob other = (Workbench.Typical with { Charge = 4 }).Job();
        ReducedParameters[] typical = [ReducedParameters.FromJob(Bench.Job, Bench.Table), ReducedParameters.FromJob(other, Bench.Table)];
        FitPrior prior = FitPrior.Of([new LoggedJob(Bench.Job, Log()), new LoggedJob(other, Log())], typical, [0, 3], new CalibrationOptions());
        Assert.Equal(6 + 26, prior.Mean.Length);
        Assert.Equal(6, Math.Exp(prior.Mean[FitIndex.Set(0) + FitIndex.Charge]), 1e-9);
        Assert.Equal(4, Math.Exp(prior.Mean[FitIndex.Set(1) + FitIndex.Charge]), 1e-9);
        Assert.True(prior.Sigma[FitIndex.Set(1) + FitIndex.Temperature] > prior.Sigma[FitIndex.Set(0) + FitIndex.Temperature]);
    }

    private static FitPrior Of(RecoveryJob job, int first, CalibrationOptions? options = null) =>
        FitPrior.Of([new LoggedJob(job, Log())], [ReducedParameters.FromJob(job, Bench.Table)], [first], options ?? new CalibrationOptions());

    private static JobLog Log() => JobLog.FromReadings([new JobReading { Time = Duration.Zero }]);

    private static double Root(double a, double b) => Math.Sqrt((a * a) + (b * b));
}
