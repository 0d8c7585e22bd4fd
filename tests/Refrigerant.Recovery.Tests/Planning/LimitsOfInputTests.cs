using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What may be told of a job and what stands in where nothing is told: the ranges and defaults that the documentation names.</summary>
public class LimitsOfInputTests
{
    private static readonly Dictionary<string, (double Low, double High, Action<double> Set)> Ranges = new()
    {
        ["time of handling, h"] = (0, 24, value => _ = new JobTimes { SetUp = Duration.FromHours(value), HoseChange = Duration.FromHours(value) }),
        ["time of a hold, h"] = (0, 24, value => _ = new JobTimes { Hold = Duration.FromHours(value) }),
        ["patience, h"] = (0, 24, value => _ = new JobTimes { Patience = Duration.FromHours(value) }),
        ["duration of a step, days"] = (0, 1000, value => _ = new PlanStep(StageKind.Hold) { Duration = Duration.FromDays(value) }),
        ["sweep, Pa"] = (10, 1e5, value => _ = Jobs.Chiller() with { SweepPressure = Pressure.FromPascals(value) }),
        ["loss per connection, L"] = (0, 1, value => _ = Jobs.Chiller() with { LossPerConnection = Volume.FromLiters(value) }),
        ["pulls"] = (1, 50, value => _ = Jobs.Chiller() with { MaximumPulls = (int)Math.Round(value + (value > 50 ? 0.5 : value < 1 ? -0.5 : 0), MidpointRounding.AwayFromZero) }),
        ["heater, MW"] = (0, 1, value => _ = new SiteAids { Heater = Power.FromMegawatts(value) }),
        ["crankcase heater, kW"] = (0, 100, value => _ = new SiteAids { CrankcaseHeater = Power.FromKilowatts(value) }),
        ["bath, °C"] = (0, 60, value => _ = new SiteAids { WaterBath = Temperature.FromDegreesCelsius(value) }),
        ["fans"] = (1, 100, value => _ = new SiteAids { ApplianceFans = value }),
        ["oil in the compressor, m³"] = (0, 1, value => _ = new MachinePast { CompressorOil = Volume.FromCubicMeters(value) }),
        ["oil in the separator, m³"] = (0, 1, value => _ = new MachinePast { SeparatorOil = Volume.FromCubicMeters(value) }),
        ["running time, h"] = (0, 1e5, value => _ = new MachinePast { RunningSinceOilChange = Duration.FromHours(value) }),
        ["oil change interval, h"] = (1, 1e5, value => _ = new MachinePast { OilChangeInterval = Duration.FromHours(value) }),
        ["relative tolerance, %"] = (0, 90, value => _ = new InputTolerances { InternalVolume = Ratio.FromPercent(value), Oil = Ratio.FromPercent(value), Metal = Ratio.FromPercent(value) }),
        ["tolerance of the charge, %"] = (0, 90, value => _ = new InputTolerances { Charge = Ratio.FromPercent(value), HeatExchange = Ratio.FromPercent(value), Displacement = Ratio.FromPercent(value) }),
        ["tolerance of temperature, K"] = (0, 20, value => _ = new InputTolerances { Temperature = TemperatureDelta.FromKelvins(value) }),
        ["tolerance of the gauge, kPa"] = (0, 20, value => _ = new InputTolerances { Gauge = Pressure.FromKilopascals(value) }),
        ["tolerance of the scale, kg"] = (0, 5, value => _ = new InputTolerances { Scale = Mass.FromKilograms(value) }),
        ["samples"] = (16, 65_536, value => _ = new UncertaintyOptions { Samples = (int)Math.Round(value) }),
        ["threads"] = (1, 1024, value => _ = new UncertaintyOptions { MaximumThreads = (int)Math.Round(value) }),
    };

    public static TheoryData<string> Names => [.. Ranges.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void What_is_in_the_range_is_taken_and_what_is_outside_is_refused(string name)
    {
        (double low, double high, Action<double> set) = Ranges[name];
        set(low);
        set(high);
        double step = Math.Max(name is "pulls" or "samples" or "threads" ? 1 : 0, 1e-3 * (high - low));
        Assert.ThrowsAny<ArgumentOutOfRangeException>(() => set(high + step));
        Assert.ThrowsAny<ArgumentException>(() => set(low - step));
    }

    [Fact]
    public void A_thousand_cylinders_are_planned_with_and_no_more()
    {
        RecoveryJob job = Jobs.Chiller(cylinders: 1000);
        Assert.Equal(1000, job.Cylinders.Count);
        Assert.Throws<ArgumentException>(() => Jobs.Chiller(cylinders: 1001));
    }

    [Fact]
    public void What_nobody_tells_has_the_defaults_that_the_documentation_names()
    {
        RecoveryJob job = Jobs.Chiller();
        Assert.Equal(6, job.MaximumPulls);
        Assert.True(job.ClearMachine);
        Assert.False(job.FollowComposition);
        Assert.Equal(2, job.LossPerConnection.Milliliters, 1e-9);

        // 15 inHg below a standard atmosphere.
        Assert.Equal(101_325 - (15 * 3386.389), job.SweepPressure.Pascals, 50.0);
        Assert.Equal(0, (double)job.Aids.Heater.Watts);
        Assert.Equal(1, job.Aids.ApplianceFans);
        Assert.False(job.Aids.HasIce || job.Aids.HasCylinderFan || job.Aids.WaterBath is not null);
        var past = new MachinePast();
        Assert.True(past.IsCleared);
        Assert.Equal(150, past.CompressorOil.Milliliters, 1e-9);
        Assert.Equal(0, past.SeparatorOil.Milliliters);
        var off = new InputTolerances();
        Assert.Equal([30, 50, 5, 10, 30, 30], Array.ConvertAll([off.InternalVolume, off.HeatExchange, off.Charge, off.Displacement, off.Oil, off.Metal], ratio => ratio.Percent));
        Assert.Equal((2, 1.6, 0.1), (off.Temperature.Kelvins, off.Gauge.Kilopascals, off.Scale.Kilograms));
        Assert.Equal(256, new UncertaintyOptions().Samples);
        Assert.Null(new UncertaintyOptions().MaximumThreads);
    }
}
