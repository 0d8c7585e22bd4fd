using System;
using FsCheck;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation;

/// <summary>Whatever the readings say: no exception, no NaN out, and what was not used is named.</summary>
public class BadInputTests
{
    private static readonly Lazy<SimulatedJob> Job = new(() => SimulatedJob.Draw("second", 1000));

    [Theory]
    [InlineData("not a number", UnusedReadings.GaugeNotANumber | UnusedReadings.WeightNotANumber | UnusedReadings.TimeNotANumber)]
    [InlineData("infinite", UnusedReadings.GaugeNotANumber | UnusedReadings.WeightNotANumber | UnusedReadings.TimeNotANumber | UnusedReadings.TemperatureOutOfRange)]
    [InlineData("time runs back", UnusedReadings.TimeNotLater)]
    [InlineData("doubled times", UnusedReadings.TimeNotLater)]
    [InlineData("gap of an hour", UnusedReadings.None)]
    [InlineData("one time far ahead", UnusedReadings.TimeJumped)]
    [InlineData("psi for kPa", UnusedReadings.GaugeInconsistent)]
    [InlineData("kPa for psi", UnusedReadings.GaugeOutOfRange)]
    [InlineData("lb for kg", UnusedReadings.WeightInconsistent)]
    [InlineData("stuck gauge", UnusedReadings.GaugeStuck)]
    [InlineData("stuck scale", UnusedReadings.WeightStuck)]
    [InlineData("shut valve told", UnusedReadings.GaugeShutOff)]
    public void Bad_readings_are_left_out_and_named(string what, UnusedReadings expected)
    {
        UnusedReadings ever = Watch(Job.Value.Told, (reading, i) => Spoil(reading, i, what), out _, out _);
        Assert.Equal(expected, expected & ever);
    }

    /// <summary>Sooner or later the pressure passes the one that a wrong unit shows: that it agrees for a while is no reason to believe it.</summary>
    [Theory]
    [InlineData("psi for kPa")]
    [InlineData("kPa for psi")]
    public void A_wrong_unit_stays_said(string what)
    {
        const UnusedReadings Gauge = UnusedReadings.GaugeInconsistent | UnusedReadings.GaugeOutOfRange;
        var estimator = new RecoveryEstimator(Job.Value.Told.Job(), Job.Value.Told.Instruments(), Job.Value.Told.Options());
        double said = double.NaN;
        for (int i = 0; i < Job.Value.Log.Samples.Count; i++)
        {
            TruthSample sample = Job.Value.Log.Samples[i];
            estimator.Add(Spoil(JobScore.Reading(in sample), i, what));
            estimator.Read(out RawEstimate estimate);
            said = double.IsNaN(said) && (estimate.NotUsed & Gauge) != 0 ? sample.Time : said;
            Assert.True(!(sample.Time > said) || (estimate.NotUsed & Gauge) != 0, $"said at {said} s, not any more at {sample.Time} s");
        }

        Assert.InRange(said, 0, 20);
    }

    /// <summary>An evacuated cylinder: vapor flows through the machine by itself, and the gauge shows the cylinder.</summary>
    [Theory]
    [InlineData("R-134a", 5, 0.2)]
    [InlineData("R-22", 20, 0.8)]
    [InlineData("R-410A", 100, 3)]
    public void A_clean_start_has_nothing_said_of_the_gauge(string fluid, double liters, double litersPerSecond)
    {
        var hose = new Hose { Length = Length.FromMeters(1.5), InnerDiameter = Length.FromMillimeters(8) };
        var job = new RecoveryJob
        {
            Appliance = new Appliance { Fluid = Fluid.Get(fluid), Charge = Mass.FromKilograms(0.35 * liters), InternalVolume = Volume.FromLiters(liters), Temperature = Temperature.FromDegreesCelsius(25) },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(litersPerSecond)),
            Hoses = new HoseSet { VaporSide = [hose], Discharge = [hose] },
            Cylinders = [RecoveryCylinder.FromTestPressure(Pressure.FromBars(48), Mass.FromKilograms(200), Mass.FromKilograms(40))],
        };
        var simulation = RecoverySimulation.Start(new SimulationSetup { Appliance = job.Appliance, Machine = job.Machine, Hoses = job.Hoses, Cylinder = job.Cylinders[0] });
        var estimator = new RecoveryEstimator(job, options: new MonitorOptions { Profile = EstimationProfile.Controller });
        double air = job.Barometer.Pressure.Pascals;
        for (int i = 0; i < 1000; i++)
        {
            Assert.Equal(StepOutcome.Done, simulation.Step(0.1, SimulationInputs.Running));
            estimator.Add(new RawReading(simulation.Time)
            {
                SuctionGaugePressure = simulation.SuctionPressure - air,
                DischargeGaugePressure = simulation.CylinderPressure - air,
                GrossWeight = simulation.CylinderMass + 40,
            });
            estimator.Read(out RawEstimate estimate);
            Assert.False(estimate.Has(JobCondition.GaugeInconsistent), $"{simulation.Time} s");
            Assert.Equal(UnusedReadings.None, estimate.NotUsed & UnusedReadings.GaugeInconsistent);
        }
    }

    [Fact]
    public void A_clock_that_jumps_once_does_not_move_the_estimate()
    {
        Watch(Job.Value.Told, (reading, _) => reading, out RawEstimate undisturbed, out _);
        Watch(Job.Value.Told, (reading, i) => Spoil(reading, i, "one time far ahead"), out RawEstimate glitch, out _);
        Assert.Equal(undisturbed.Time, glitch.Time, 1e-6);
        Assert.Equal(undisturbed.Remaining.Best, glitch.Remaining.Best, 0.02 * Job.Value.Charge);
    }

    [Fact]
    public void Another_tare_and_another_cylinder_do_not_move_the_estimate()
    {
        Watch(Job.Value.Told, (reading, _) => reading, out RawEstimate undisturbed, out _);
        Watch(Job.Value.Told, (reading, i) => Heavier(reading, i >= 200 ? -12.5 : 0), out RawEstimate tare, out bool[] ofTare);
        Watch(Job.Value.Told, (reading, i) => Heavier(reading, i >= 200 ? -2.1 : 0), out RawEstimate cylinder, out bool[] ofCylinder);
        Assert.True(ofTare[(int)JobCondition.TareChanged]);
        Assert.True(ofCylinder[(int)JobCondition.CylinderChanged]);
        double charge = Job.Value.Charge;
        Assert.Equal(undisturbed.Remaining.Best, tare.Remaining.Best, 0.05 * charge);
        Assert.Equal(undisturbed.Remaining.Best, cylinder.Remaining.Best, 0.05 * charge);
        Assert.Equal(undisturbed.FinalGrossWeight.Best - 12.5, tare.FinalGrossWeight.Best, 0.05 * charge);
    }

    [Fact]
    public void Three_times_the_charge_told_is_found_out()
    {
        Told told = Job.Value.Told with { Charge = 3 * Job.Value.Charge };
        Watch(told, (reading, _) => reading, out RawEstimate estimate, out _);
        Assert.True(estimate.Remaining.Low < 0.3 * Job.Value.Charge, $"{estimate.Remaining}");
    }

    [Fact]
    public void Another_refrigerant_is_said_to_disagree()
    {
        Told told = Job.Value.Told with { Fluid = "R-744" };
        UnusedReadings ever = Watch(told with { Level = 6e5 }, (reading, _) => reading, out _, out _);
        Assert.Equal(UnusedReadings.GaugeInconsistent, UnusedReadings.GaugeInconsistent & ever);
    }

    [Property(MaxTest = 20)]
    public void Nothing_makes_it_throw_or_say_NaN(int seed)
    {
        var random = new Random(seed);
        double Any() => random.Next(12) switch
        {
            0 => double.NaN,
            1 => double.PositiveInfinity,
            2 => double.NegativeInfinity,
            3 => double.MaxValue,
            4 => 0,
            _ => (random.NextDouble() - 0.3) * Math.Pow(10, 9 * random.NextDouble()),
        };
        var estimator = new RecoveryEstimator(Job.Value.Told.Job());
        for (int i = 0; i < 150; i++)
        {
            estimator.Add(new RawReading(random.Next(4) == 0 ? Any() : i * 3)
            {
                SuctionGaugePressure = Any(),
                GrossWeight = Any(),
                AirTemperature = Any(),
                PipeTemperature = Any(),
                DischargeGaugePressure = Any(),
                IsMachineRunning = random.Next(3) > 0,
                IsValveOpen = random.Next(5) > 0,
            });
            estimator.Work();
            estimator.Read(out RawEstimate estimate);
            AssertNumbers(in estimate);
        }
    }

    [Fact]
    public void The_monitor_says_in_words_what_it_did_not_use()
    {
        RecoveryMonitor monitor = RecoveryMonitor.Start(Job.Value.Told.Job());
        JobEstimate estimate = monitor.Update(new JobReading { Time = Duration.Zero, SuctionGaugePressure = Pressure.FromMegapascals(100) });
        Assert.True((estimate.NotUsed & UnusedReadings.GaugeOutOfRange) != 0);
        Assert.Contains(estimate.Findings, f => f.Message.Contains("gauge", StringComparison.Ordinal));
        estimate = monitor.Update(new JobReading
        {
            Time = Duration.FromSeconds(1),
            SuctionGaugePressure = Pressure.FromKilopascals(800),
            GrossWeight = Mass.FromKilograms(13.5),
        });
        Assert.True(estimate.Remaining.Low < estimate.Remaining.High);
        Assert.NotNull(estimate.TimeToLevel);
        Assert.Throws<ArgumentNullException>(() => monitor.Update(null!));
        Assert.Throws<ArgumentNullException>(() => RecoveryMonitor.Start(null!));
    }

    private static RawReading Heavier(RawReading reading, double by)
    {
        reading.GrossWeight += by;
        return reading;
    }

    private static RawReading Spoil(RawReading reading, int i, string what)
    {
        switch (what)
        {
            case "not a number" or "infinite":
                double bad = what == "infinite" ? double.PositiveInfinity : double.NaN;
                reading.SuctionGaugePressure = i % 3 == 0 ? bad : reading.SuctionGaugePressure;
                reading.GrossWeight = i % 5 == 0 ? bad : reading.GrossWeight;
                reading.Time = i % 7 == 0 ? bad : reading.Time;
                reading.AirTemperature = i % 4 == 0 ? bad : reading.AirTemperature;
                break;
            case "time runs back":
                reading.Time -= i >= 200 ? 150 : 0;
                break;
            case "doubled times":
                reading.Time -= i % 2;
                break;
            case "one time far ahead":
                reading.Time += i == 200 ? 1e9 : 0;
                break;
            case "gap of an hour":
                reading.Time += i >= 200 ? 3600 : 0;
                break;
            case "psi for kPa":
                reading.SuctionGaugePressure /= 6.894757;
                break;
            case "kPa for psi":
                reading.SuctionGaugePressure *= 6.894757;
                break;
            case "lb for kg":
                reading.GrossWeight *= 2.20462;
                break;
            case "stuck gauge":
                reading.SuctionGaugePressure = i >= 100 ? 400e3 : reading.SuctionGaugePressure;
                break;
            case "stuck scale":
                reading.GrossWeight = i >= 100 ? 15.5 : reading.GrossWeight;
                break;
            case "shut valve told":
                reading.IsValveOpen = i is < 100 or > 120;
                break;
        }

        return reading;
    }

    private static UnusedReadings Watch(Told told, Func<RawReading, int, RawReading> spoil, out RawEstimate last, out bool[] conditions)
    {
        var estimator = new RecoveryEstimator(told.Job(), told.Instruments(), told.Options());
        UnusedReadings ever = UnusedReadings.None;
        conditions = new bool[(int)JobCondition.StandingPressureInconsistent + 1];
        last = default;
        int i = 0;
        foreach (TruthSample sample in Job.Value.Log.Samples)
        {
            RawReading reading = spoil(JobScore.Reading(in sample), i);
            estimator.Add(in reading);
            estimator.Work();
            estimator.Read(out last);
            AssertNumbers(in last);
            ever |= last.NotUsed;
            for (int c = 0; c < conditions.Length; c++)
            {
                conditions[c] |= last.Has((JobCondition)c);
            }

            i++;
        }

        return ever;
    }

    private static void AssertNumbers(in RawEstimate estimate)
    {
        EstimateRange[] ranges =
        [
            estimate.Remaining, estimate.TotalCharge, estimate.TimeToLevel, estimate.FinalGrossWeight, estimate.InternalVolume,
            estimate.HeatConductance, estimate.EffectiveDisplacement,
        ];
        Assert.All(ranges, r => Assert.True(double.IsFinite(r.Low) && r.Low <= r.Best && r.Best <= r.High && double.IsFinite(r.High), r.ToString()));
        double[] shares = [estimate.LevelReachedProbability, estimate.CylinderLimitFirst, estimate.VaporOnly];
        Assert.All(shares, s => Assert.InRange(s, 0, 1 + 1e-9));
        Assert.True(double.IsFinite(estimate.Time));
    }
}
