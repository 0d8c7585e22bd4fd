using System;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>R-134a told to be at 295 K: 503 kPa gauge in air of 100 kPa; a cylinder of 13.5 kg.</summary>
public class JobLogCheckTests
{
    private static readonly PropertyModel Engine = Fluid.Get("R-134a").Model;
    private static readonly double Saturated = Engine.SaturationAtTemperature(295).Dew.Pressure - 1e5;

    /// <summary>At rest with the machine off: 8 K warmer at most, eight tenths of what 8 K colder shows at least.</summary>
    [Theory]
    [InlineData(0.99, true)]
    [InlineData(1.01, false)]
    public void A_gauge_at_rest_lies_between_what_it_can_show(double share, bool isFit)
    {
        double high = Engine.SaturationAtTemperature(303).Bubble.Pressure - 1e5;
        double low = (0.8 * Engine.SaturationAtTemperature(287).Dew.Pressure) - 1e5;

        // What is too high by less than an atmosphere may be absolute.
        Assert.Equal(isFit ? [] : ["log-pressure-unit"], Codes(AtRest(share * high)));
        Assert.Equal(["log-pressure-unfit"], Codes(AtRest(high + 1.01e5)));
        Assert.Equal(isFit ? [] : ["log-pressure-unfit"], Codes(AtRest(low / share)));
    }

    [Theory]
    [InlineData(1 / 6.894757, "psi")]
    [InlineData(6.894757, "kPa, entered as psi")]
    [InlineData(0.01, "bar")]
    [InlineData(100, "kPa, entered as bar")]
    [InlineData(0.001, "MPa")]
    [InlineData(1 / 3.386389, "inHg")]
    public void Another_unit_is_known(double factor, string unit)
    {
        Finding finding = Assert.Single(AtRest(factor * Saturated).Check(LogParts.Job));
        Assert.Equal(ReadingCodes.LogPressureUnit.Id, finding.Code);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Contains($"where the numbers are {unit}:", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>An atmosphere too much at the start, or, where that is too little to tell, an end that is near the level as an absolute pressure and never in vacuum.</summary>
    [Fact]
    public void Absolute_pressure_is_known_by_the_start_or_by_the_end()
    {
        double high = Engine.SaturationAtTemperature(303).Bubble.Pressure;
        Finding finding = Assert.Single(AtRest(0.98 * high).Check(LogParts.Job));
        Assert.Equal(ReadingCodes.LogPressureUnit.Id, finding.Code);
        Assert.Contains("is the pressure absolute?", finding.Message, StringComparison.Ordinal);

        // The level that the rules of this job require.
        double level = Refrigerant.Recovery.Rules.EvacuationRequirement.For(LogParts.Job.Appliance.Fluid, LogParts.Job.Appliance.Charge, LogParts.Job.EffectiveEvacuation).RequiredPressure.Pascals;
        Assert.InRange(level, 5e4, 9.9e4);
        foreach ((double end, bool isSaid) in new[] { (1.25 * level, true), (1.35 * level, false), (level, true), (level - 1e5, false), (0.02 * level, false) })
        {
            JobLog log = LogParts.Every(10, 60, t => LogParts.At(t, t < 300 ? Saturated : end, 13.5 + (0.001 * t)));
            Assert.Equal(isSaid, Codes(log).Contains(ReadingCodes.LogPressureUnit.Id));
        }
    }

    /// <summary>While the machine draws, 55 % of what an appliance 8 K colder shows behind its hose.</summary>
    [Theory]
    [InlineData(0.6, true)]
    [InlineData(0.45, false)]
    public void While_it_draws_the_gauge_may_show_less(double share, bool isFit)
    {
        double cold = Engine.SaturationAtTemperature(287).Dew.Pressure;
        JobLog log = LogParts.Every(10, 30, t => LogParts.At(t, (share * cold) - 1e5, 13.5 + (0.001 * t)));
        Assert.Equal(!isFit, Codes(log).Length > 0);
    }

    /// <summary>The highest of the first thirty seconds, or of five readings, with the valve open, counts.</summary>
    [Fact]
    public void Hoses_that_fill_and_shut_valves_do_not_count()
    {
        Assert.Empty(Codes(LogParts.Every(5, 40, t => LogParts.At(t, t < 25 ? 0 : Saturated, 13.5 + (0.001 * t)))));
        Assert.NotEmpty(Codes(LogParts.Every(5, 40, t => LogParts.At(t, t < 35 ? 0 : Saturated, 13.5 + (0.001 * t)))));
        Assert.Empty(Codes(LogParts.Every(60, 40, t => LogParts.At(t, t < 200 ? 0 : Saturated, 13.5 + (0.001 * t)))));
        Assert.NotEmpty(Codes(LogParts.Every(60, 40, t => LogParts.At(t, t < 300 ? 0 : Saturated, 13.5 + (0.001 * t)))));
        Assert.Empty(Codes(LogParts.Every(5, 40, t => LogParts.At(t, t < 50 ? 5e6 : Saturated, 13.5 + (0.001 * t), isOpen: t >= 50))));
        Assert.Empty(Codes(LogParts.Every(5, 40, t => LogParts.At(t, double.NaN, 13.5 + (0.001 * t)))));
    }

    /// <summary>Half a kilogram may the first weight be off; that of the content alone is net.</summary>
    [Theory]
    [InlineData(13.95, null)]
    [InlineData(14.05, "log-weight-unfit")]
    [InlineData(13.05, null)]
    [InlineData(12.95, "log-weight-unfit")]
    [InlineData(1.45, "log-weight-unit")]
    [InlineData(1.55, "log-weight-unfit")]
    public void The_first_weight_is_that_of_the_cylinder(double first, string? code) =>
        Assert.Equal(code is null ? [] : [code], Codes(LogParts.Every(10, 30, t => LogParts.At(t, Saturated, first + (0.001 * t)))));

    [Fact]
    public void A_label_names_the_cylinder()
    {
        RecoveryJob job = LogParts.Job with { Cylinders = [LogParts.Job.Cylinders[0] with { Label = "A" }, LogParts.Job.Cylinders[0] with { Label = "B", Content = Mass.FromKilograms(4) }] };
        Assert.Empty(LogParts.Every(10, 30, t => LogParts.At(t, Saturated, 16.5 + (0.001 * t)) with { Cylinder = "B" }).Check(job));
        Assert.NotEmpty(LogParts.Every(10, 30, t => LogParts.At(t, Saturated, 16.5 + (0.001 * t)) with { Cylinder = "A" }).Check(job));
        Assert.Empty(LogParts.Every(10, 30, t => LogParts.At(t, Saturated, 99 + (0.001 * t)) with { Cylinder = "C" }).Check(job));
    }

    [Fact]
    public void Jumps_and_swaps_are_said()
    {
        string[] jumps = Codes(LogParts.Every(10, 40, t => LogParts.At(t, Saturated, 13.5 + (0.001 * t) + (t >= 200 ? 0.8 : 0))));
        Assert.Equal(["log-weight-jumps"], jumps);
        string[] swaps = Codes(LogParts.Every(10, 40, t => LogParts.At(t, Saturated, 13.5 + (0.001 * t) + (t >= 200 ? 0.8 : 0)) with { Cylinder = t == 200 ? "other" : null }));
        Assert.Equal(["log-cylinder-swapped"], swaps);
    }

    /// <summary>30 % over the charge told is another unit.</summary>
    [Theory]
    [InlineData(7.7, false)]
    [InlineData(7.9, true)]
    public void More_than_was_told_is_another_unit(double gained, bool isSaid) =>
        Assert.Equal(isSaid ? ["log-weight-unit"] : [], Codes(LogParts.Every(10, 41, t => LogParts.At(t, Saturated, 13.5 + (gained * t / 400)))));

    /// <summary>A gap is one and a half times what changes take, and twenty times what readings lie apart.</summary>
    [Theory]
    [InlineData(1, 0.98, false)]
    [InlineData(1, 1.02, true)]
    [InlineData(60, 1.02, false)]
    public void A_gap_is_longer_than_a_change(double step, double share, bool isSaid)
    {
        double change = 1.5 * Math.Max(LogParts.Job.Times.HoseChange.Seconds, LogParts.Job.Times.CylinderChange.Seconds);
        Assert.True(change > 20);
        JobLog log = LogParts.Log(Enumerable.Range(0, 100).Select(i => LogParts.At((i * step) + (i >= 50 ? (share * change) - step : 0), Saturated, 13.5)));
        Assert.Equal(isSaid ? ["log-gap"] : [], Codes(log));
    }

    [Fact]
    public void One_reading_has_no_gap() => Assert.Empty(Codes(LogParts.Every(1, 1, t => LogParts.At(t, Saturated, 13.5))));

    private static JobLog AtRest(double gauge) => LogParts.Every(10, 30, t => LogParts.At(t, gauge, 13.5, isRunning: false));

    private static string[] Codes(JobLog log) => [.. log.Check(LogParts.Job).Select(f => f.Code)];
}
