using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>A tolerance ±w is w/√3 (JCGM 100:2008, 4.3.7), and what the model leaves out comes on top, root of the squares.</summary>
public class EstimatorPriorTests
{
    private static readonly double Root3 = Math.Sqrt(3);

    private static readonly Told Known = Workbench.Typical with
    {
        ChargeTolerance = 0.2,
        VolumeTolerance = 0.3,
        HeatTolerance = 0.4,
        MetalTolerance = 0.6,
        DisplacementTolerance = 0.15,
        HoseTolerance = 0.5,
    };

    [Fact]
    public void Tolerances_are_standard_deviations_with_what_the_model_leaves_out()
    {
        EstimatorPrior prior = new Workbench(Known).Prior;
        Assert.Equal(0.2 / Root3, prior.Sigma[StateIndex.Charge], 1e-12);
        Assert.Equal(Root(0.3 / Root3, 0.05), prior.Sigma[StateIndex.Volume], 1e-12);
        Assert.Equal(Root(0.4 / Root3, 0.3), prior.Sigma[StateIndex.Outer], 1e-12);
        Assert.Equal(Root(0.6 / Root3, 0.3), prior.Sigma[StateIndex.Metal], 1e-12);
        Assert.Equal(Root(0.15 / Root3, 0.08), prior.Sigma[StateIndex.Displacement], 1e-12);
        Assert.Equal(Root(0.5 / Root3, 0.2), prior.Sigma[StateIndex.Hose], 1e-12);
        Assert.Equal(0.01, new Workbench(Known with { ChargeTolerance = 0.001 }).Prior.Sigma[StateIndex.Charge], 1e-12);
    }

    [Fact]
    public void Means_are_what_was_told()
    {
        var bench = new Workbench(Known);
        double[] mean = bench.Prior.Mean;
        ReducedParameters told = ReducedParameters.FromJob(bench.Job, bench.Table);
        Assert.Equal(6, Math.Exp(mean[StateIndex.Charge]), 1e-9);
        Assert.Equal(0.018, Math.Exp(mean[StateIndex.Volume]), 1e-12);
        Assert.Equal(40, Math.Exp(mean[StateIndex.Outer]), 1e-9);
        Assert.Equal(20_000, Math.Exp(mean[StateIndex.Metal]), 1e-6);
        Assert.Equal(told.InnerConductance, Math.Exp(mean[StateIndex.Inner]), 1e-9 * told.InnerConductance);
        Assert.Equal(5e-4, Math.Exp(mean[StateIndex.Displacement]) / bench.Job.Machine.VolumetricEfficiency, 1e-12);
        Assert.Equal(told.HoseResistance, Math.Exp(mean[StateIndex.Hose]), 1e-9 * told.HoseResistance);
        Assert.Equal(bench.Job.Machine.ClearanceRatio, Math.Exp(mean[StateIndex.Clearance]), 1e-9);
        Assert.Equal(295, mean[StateIndex.Temperature]);
        Assert.Equal(295, mean[StateIndex.MetalTemperature]);
        Assert.Equal(295, mean[StateIndex.WetTemperature]);
        Assert.Equal(0, mean[StateIndex.Delivered]);

        // A condenser 8 K above the air: common practice, no source.
        Assert.Equal(303, mean[StateIndex.Condensing], 1e-9);
        Assert.Equal(bench.Table.BubblePressure(303), told.DischargePressure, 1e-6);
        Assert.Equal(7e4, bench.Prior.Level);
        Assert.Equal(1e5, bench.Prior.Atmosphere, 1e-6);
    }

    [Theory]
    [InlineData(1, 1.5)]
    [InlineData(6, 3.4641016151377544)]
    public void The_temperature_is_known_to_one_and_a_half_kelvin_at_best(double tolerance, double sigma)
    {
        MonitorOptions options = Known.Options();
        options = options with { Tolerances = options.Tolerances with { Temperature = TemperatureDelta.FromKelvins(tolerance) } };
        EstimatorPrior prior = Prior(Known, options, Known.Instruments());
        Assert.Equal(sigma, prior.Sigma[StateIndex.Temperature], 1e-12);
        Assert.Equal(sigma, prior.Sigma[StateIndex.MetalTemperature], 1e-12);
        Assert.Equal(sigma, prior.Sigma[StateIndex.WetTemperature], 1e-12);
    }

    /// <summary>Class 1.6 over 1 MPa: 16 kPa. Its bias has all values between equally likely; a scale's step counts as its noise, and twice the step as its drift, 50 g at least.</summary>
    [Theory]
    [InlineData(10, 0.05)]
    [InlineData(40, 0.08)]
    public void Instruments_err_by_their_class_and_step(double grams, double drift)
    {
        var instruments = new Instruments
        {
            SuctionGauge = GaugeAccuracy.FromClass(1.6, Pressure.FromKilopascals(-100), Pressure.FromKilopascals(900)),
            Scale = ScaleAccuracy.FromResolution(Mass.FromGrams(grams)),
        };
        EstimatorPrior prior = Prior(Known, Known.Options(), instruments);
        Assert.Equal(16e3 / Root3, prior.Sigma[StateIndex.GaugeBias], 1e-6);
        Assert.Equal(0.15 * 16e3 * 0.15 * 16e3, prior.GaugeNoise, 1e-3);
        Assert.Equal(Math.Pow(0.001 * grams, 2) + 4e-5, prior.ScaleNoise, 1e-12);
        Assert.Equal(drift, prior.ScaleDrift, 1e-12);
        Assert.Equal(0.6 * drift, prior.Sigma[StateIndex.ScaleOffset], 1e-12);

        // A slow error of standard deviation s and time constant τ gains 2·s²/τ a second.
        Assert.Equal(2 * drift * drift / prior.ScaleTime, prior.NoiseRate[StateIndex.ScaleOffset], 1e-12);
        Assert.Equal(Math.Pow(0.1 * 16e3, 2) / 1800, prior.NoiseRate[StateIndex.GaugeBias], 1e-6);
    }

    /// <summary>Told none: next to nothing. Told: what it holds at half its saturation pressure, and up to five times that at the start. Not told: some percent of the charge, hardly known.</summary>
    [Fact]
    public void Oil_is_told_or_hardly_known()
    {
        EstimatorPrior none = new Workbench(Known).Prior;
        Assert.True(none.IsOilTold);
        Assert.Equal(3e-6 * 6, Math.Exp(none.Mean[StateIndex.OilCapacity]), 1e-12);
        Assert.Equal(5 * 3e-6 * 6, Math.Exp(none.Mean[StateIndex.Dissolved]), 1e-12);
        Assert.Equal(0.5, none.Sigma[StateIndex.OilCapacity]);
        Assert.Equal(0.7, none.Sigma[StateIndex.Dissolved]);

        var bench = new Workbench(Known with { Oil = 0.5 });
        EstimatorPrior some = bench.Prior;
        double capacity = ReducedParameters.FromJob(bench.Job, bench.Table).OilCapacity;
        Assert.InRange(capacity, 0.05, 0.5);
        Assert.True(some.IsOilTold);
        Assert.Equal(capacity, Math.Exp(some.Mean[StateIndex.OilCapacity]), 1e-9);
        Assert.Equal(Math.Min(1.8, 5 * capacity), Math.Exp(some.Mean[StateIndex.Dissolved]), 1e-9);
        Assert.Equal(0.3 * 6, Math.Exp(new Workbench(Known with { Oil = 30 }).Prior.Mean[StateIndex.Dissolved]), 1e-9);

        EstimatorPrior unknown = new Workbench(Known with { Oil = -1 }).Prior;
        Assert.False(unknown.IsOilTold);
        Assert.Equal(0.24, Math.Exp(unknown.Mean[StateIndex.OilCapacity]), 1e-9);
        Assert.Equal(0.3, Math.Exp(unknown.Mean[StateIndex.Dissolved]), 1e-9);
        Assert.Equal(1.2, unknown.Sigma[StateIndex.OilCapacity]);
        Assert.Equal(1.1, unknown.Sigma[StateIndex.Dissolved]);
    }

    [Fact]
    public void Liquid_that_is_taken_adds_up_and_runs_back()
    {
        EstimatorPrior prior = new Workbench(Known).Prior;
        prior.TakeLiquid(1.5);
        prior.TakeLiquid(0);
        prior.TakeLiquid(-0.5);
        Assert.Equal(1, prior.Typical.LiquidTaken, 1e-12);
        prior.TakeLiquid(-3);
        Assert.Equal(0, prior.Typical.LiquidTaken);
    }

    [Fact]
    public void Every_state_has_a_spread_and_what_can_change_wanders()
    {
        EstimatorPrior prior = new Workbench(Known).Prior;
        for (int i = 0; i < StateIndex.Count; i++)
        {
            Assert.True(prior.Sigma[i] > 0, $"{i}");

            // Charge and volume stay; the slow error of the gauge has a rate of its own, by the pressure.
            Assert.Equal(i is StateIndex.Charge or StateIndex.Volume or StateIndex.GaugeDrift, prior.NoiseRate[i] == 0);
        }

        // In ten minutes: 4 % of the displacement, 5 % of the hose, 15 % of conductances, 10 % of the metal, 4 K of the condenser.
        Assert.Equal(0.04, Math.Sqrt(600 * prior.NoiseRate[StateIndex.Displacement]), 1e-12);
        Assert.Equal(0.05, Math.Sqrt(600 * prior.NoiseRate[StateIndex.Hose]), 1e-12);
        Assert.Equal(0.15, Math.Sqrt(600 * prior.NoiseRate[StateIndex.Outer]), 1e-12);
        Assert.Equal(0.15, Math.Sqrt(600 * prior.NoiseRate[StateIndex.Inner]), 1e-12);
        Assert.Equal(0.10, Math.Sqrt(600 * prior.NoiseRate[StateIndex.Metal]), 1e-12);
        Assert.Equal(4, Math.Sqrt(600 * prior.NoiseRate[StateIndex.Condensing]), 1e-12);
    }

    /// <summary>Of the hose told: at half of what the machine sweeps, or three tenths of what fills the bore at the speed of sound, about; its fitting alone resists, ΔR = K/A².</summary>
    [Fact]
    public void The_hose_resists_as_its_fitting()
    {
        var bench = new Workbench(Known);
        ReducedParameters told = ReducedParameters.FromJob(bench.Job, bench.Table);
        bench.Table.At(295, out SaturationValues at);
        double area = Math.PI * 0.25 * 0.05 * 0.05;
        Assert.Equal(1 / (area * area), told.InverseArea, 1e-6 / (area * area));
        Assert.Equal(0.5 * told.Displacement * at.VaporDensity, told.HoseFlow, 1e-12);
        Assert.Equal(told.HoseFlow, told.WarmingFlow, 1e-12);
        Assert.InRange(told.HoseResistance, 3e9, 3.2e9);
        Assert.InRange(told.FixedLoss, 0.9, 1);
    }

    /// <summary>Two points of what oil holds, at half and at two thirds of the saturation pressure, are those of its own model.</summary>
    [Fact]
    public void Oil_holds_what_its_model_says()
    {
        var bench = new Workbench(Known with { Oil = 0.5 });
        ReducedParameters told = ReducedParameters.FromJob(bench.Job, bench.Table);
        ApplianceOil oil = bench.Job.Appliance.Oil!;
        var solution = new Refrigerant.Recovery.Oils.OilSolution(bench.Job.Appliance.Fluid.Model, oil);
        foreach (double s in new[] { 0.5, 2.0 / 3 })
        {
            double held = told.OilCapacity * (1 + (told.OilBend * (s - 0.5))) * s / (1 - s);
            Assert.Equal(0.5 * solution.MassRatio(s), held, 1e-9);
        }
    }

    private static double Root(double a, double b) => Math.Sqrt((a * a) + (b * b));

    private static EstimatorPrior Prior(Told told, MonitorOptions options, Instruments instruments)
    {
        RecoveryJob job = told.Job();
        return EstimatorPrior.From(job, new SaturationTable(job.Appliance.Fluid.Model), instruments, options, told.Level);
    }
}
