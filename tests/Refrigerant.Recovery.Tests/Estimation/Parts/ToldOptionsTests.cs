using System;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>MonitorOptions, CalibrationOptions, Instruments, GaugeAccuracy, ScaleAccuracy and JobLog: defaults and limits as documented.</summary>
public class ToldOptionsTests
{
    [Fact]
    public void MonitorOptions_are_as_documented()
    {
        var options = new MonitorOptions();
        Assert.Equal(25, options.Tolerances.Charge.Percent, 1e-9);
        Assert.Equal(50, options.MetalTolerance.Percent, 1e-9);
        Assert.Equal(50, options.HoseTolerance.Percent, 1e-9);
        Assert.False(options.IsOilFree);
        Assert.Null(options.Level);
        Assert.Equal(EstimationProfile.Full, options.Profile);
        Assert.Equal(1, options.Seed);
        Assert.Equal(90, new MonitorOptions { MetalTolerance = Ratio.FromPercent(90), HoseTolerance = Ratio.FromPercent(90) }.HoseTolerance.Percent, 1e-9);
        Assert.Equal(0, new MonitorOptions { MetalTolerance = Ratio.Zero, HoseTolerance = Ratio.Zero }.MetalTolerance.Percent);
        Assert.Throws<ArgumentOutOfRangeException>(() => new MonitorOptions { MetalTolerance = Ratio.FromPercent(91) });
        Assert.Throws<ArgumentOutOfRangeException>(() => new MonitorOptions { HoseTolerance = Ratio.FromPercent(91) });
        Assert.Throws<ArgumentOutOfRangeException>(() => new MonitorOptions { HoseTolerance = Ratio.FromPercent(-1) });
        Assert.Throws<ArgumentOutOfRangeException>(() => new MonitorOptions { MetalTolerance = Ratio.FromPercent(-1) });
        Assert.Throws<ArgumentOutOfRangeException>(() => new MonitorOptions { Level = Pressure.FromPascals(99) });
        Assert.Throws<ArgumentOutOfRangeException>(() => new MonitorOptions { Level = Pressure.FromPascals(1.01e7) });
        Assert.Equal(100, new MonitorOptions { Level = Pressure.FromPascals(100) }.Level!.Value.Pascals);
        Assert.Equal(1e7, new MonitorOptions { Level = Pressure.FromPascals(1e7) }.Level!.Value.Pascals, 1e-3);
        Assert.Throws<ArgumentNullException>(() => new MonitorOptions { Tolerances = null! });
    }

    [Fact]
    public void CalibrationOptions_are_as_documented()
    {
        var options = new CalibrationOptions();
        Assert.Equal(25, options.Tolerances.Charge.Percent, 1e-9);
        Assert.Equal(25, options.Tolerances.Displacement.Percent, 1e-9);
        Assert.Equal(60, options.Tolerances.InternalVolume.Percent, 1e-9);
        Assert.Equal(90, options.Tolerances.HeatExchange.Percent, 1e-9);
        Assert.Equal(2, options.Tolerances.Temperature.Kelvins, 1e-9);
        Assert.Equal(90, options.MetalTolerance.Percent, 1e-9);
        Assert.Equal(90, options.HoseTolerance.Percent, 1e-9);
        Assert.Equal(new Instruments(), options.Instruments);
        Assert.Throws<ArgumentOutOfRangeException>(() => new CalibrationOptions { MetalTolerance = Ratio.FromPercent(91) });
        Assert.Throws<ArgumentOutOfRangeException>(() => new CalibrationOptions { HoseTolerance = Ratio.FromPercent(91) });
        Assert.Throws<ArgumentOutOfRangeException>(() => new CalibrationOptions { MetalTolerance = Ratio.FromPercent(-1) });
        Assert.Throws<ArgumentOutOfRangeException>(() => new CalibrationOptions { HoseTolerance = Ratio.FromPercent(-1) });
        Assert.Equal(0, new CalibrationOptions { HoseTolerance = Ratio.Zero, MetalTolerance = Ratio.Zero }.HoseTolerance.Percent);
    }

    /// <summary>Class 1.6 of −100 kPa to 1.6 MPa: 27.2 kPa (EN 837-1: a share of the span).</summary>
    [Fact]
    public void Instruments_are_as_documented()
    {
        var instruments = new Instruments();
        Assert.Equal(27.2, instruments.SuctionGauge.ErrorLimit.Kilopascals, 1e-9);
        Assert.Equal(-100, instruments.SuctionGauge.Low.Kilopascals, 1e-9);
        Assert.Equal(1600, instruments.SuctionGauge.High.Kilopascals, 1e-9);
        Assert.Equal(10, instruments.Scale.Resolution.Grams, 1e-9);

        // A refrigerant of higher pressure has a gauge whose scale reaches there, and is off by as much.
        Instruments high = Instruments.Typical(6e6);
        Assert.Equal(27.2, high.SuctionGauge.ErrorLimit.Kilopascals, 1e-6);
        Assert.Equal(6, high.SuctionGauge.High.Megapascals, 1e-9);
        Assert.Equal(-100, high.SuctionGauge.Low.Kilopascals, 1e-9);
        Assert.Equal(1600, Instruments.Typical(1e5).SuctionGauge.High.Kilopascals, 1e-9);
    }

    [Fact]
    public void Accuracies_have_their_limits()
    {
        Pressure zero = Pressure.Zero;
        Pressure one = Pressure.FromMegapascals(1);
        Assert.Equal(25, GaugeAccuracy.FromClass(2.5, zero, one).ErrorLimit.Kilopascals, 1e-9);
        Assert.Equal(0.1, GaugeAccuracy.FromClass(0.01, zero, one).ErrorLimit.Kilopascals, 1e-9);
        Assert.Equal(100, GaugeAccuracy.FromClass(10, zero, one).ErrorLimit.Kilopascals, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => GaugeAccuracy.FromClass(0.0099, zero, one));
        Assert.Throws<ArgumentOutOfRangeException>(() => GaugeAccuracy.FromClass(10.1, zero, one));
        Assert.Throws<ArgumentOutOfRangeException>(() => GaugeAccuracy.FromClass(1, Pressure.FromPascals(-200_001), one));
        Assert.Equal(-200, GaugeAccuracy.FromClass(1, Pressure.FromKilopascals(-200), one).Low.Kilopascals, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => GaugeAccuracy.FromClass(1, zero, Pressure.FromPascals(999)));
        Assert.Throws<ArgumentOutOfRangeException>(() => GaugeAccuracy.FromClass(1, zero, Pressure.FromMegapascals(101)));
        Assert.Equal(100, GaugeAccuracy.FromClass(1, zero, Pressure.FromMegapascals(100)).High.Megapascals, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => ScaleAccuracy.FromResolution(Mass.FromGrams(0.0099)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ScaleAccuracy.FromResolution(Mass.FromKilograms(10.1)));
        Assert.Equal(10, ScaleAccuracy.FromResolution(Mass.FromKilograms(10)).Resolution.Kilograms, 1e-9);
        Assert.Equal(0.01, ScaleAccuracy.FromResolution(Mass.FromGrams(0.01)).Resolution.Grams, 1e-9);
    }

    /// <summary>Times 0 to 7 days, gauges −200 kPa to 100 MPa, weights 0 to 1000 t, temperatures 150 to 400 K: the end of each is in, beyond it is out, and the member is named.</summary>
    [Theory]
    [InlineData("Time", 0, true)]
    [InlineData("Time", -0.001, false)]
    [InlineData("Time", 604_800, true)]
    [InlineData("Time", 604_801, false)]
    [InlineData("SuctionGaugePressure", -200_000, true)]
    [InlineData("SuctionGaugePressure", -200_100, false)]
    [InlineData("SuctionGaugePressure", 1e8, true)]
    [InlineData("SuctionGaugePressure", 1.01e8, false)]
    [InlineData("DischargeGaugePressure", -200_100, false)]
    [InlineData("DischargeGaugePressure", -199_900, true)]
    [InlineData("DischargeGaugePressure", 1e8, true)]
    [InlineData("DischargeGaugePressure", 1.01e8, false)]
    [InlineData("GrossWeight", 0, true)]
    [InlineData("GrossWeight", -0.01, false)]
    [InlineData("GrossWeight", 1e6, true)]
    [InlineData("GrossWeight", 1.01e6, false)]
    [InlineData("Ambient", 150.1, true)]
    [InlineData("Ambient", 149.9, false)]
    [InlineData("Ambient", 399.9, true)]
    [InlineData("Ambient", 400.1, false)]
    [InlineData("PipeTemperature", 149.9, false)]
    [InlineData("PipeTemperature", 150.1, true)]
    [InlineData("PipeTemperature", 400.1, false)]
    [InlineData("PipeTemperature", 399.9, true)]
    public void JobLog_holds_what_can_be_a_reading(string member, double value, bool isIn)
    {
        var reading = new JobReading { Time = Duration.FromSeconds(member == "Time" ? value : 5) };
        reading = member switch
        {
            "SuctionGaugePressure" => reading with { SuctionGaugePressure = Pressure.FromPascals(value) },
            "DischargeGaugePressure" => reading with { DischargeGaugePressure = Pressure.FromPascals(value) },
            "GrossWeight" => reading with { GrossWeight = Mass.FromKilograms(value) },
            "Ambient" => reading with { Ambient = Temperature.FromKelvins(value) },
            "PipeTemperature" => reading with { PipeTemperature = Temperature.FromKelvins(value) },
            _ => reading,
        };
        if (isIn)
        {
            Assert.Single(JobLog.FromReadings([reading]).Readings);
        }
        else
        {
            ArgumentException wrong = Assert.Throws<ArgumentException>(() => JobLog.FromReadings([reading]));
            Assert.StartsWith($"readings[0].{member}:", wrong.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void JobLog_is_in_order_of_time()
    {
        JobReading At(double seconds) => new() { Time = Duration.FromSeconds(seconds) };
        Assert.Equal(30, JobLog.FromReadings([At(10), At(20), At(40)]).Duration.Seconds, 1e-9);
        Assert.StartsWith("readings[2].Time: 15 s runs back; the reading before was taken at 20 s", Assert.Throws<ArgumentException>(() => JobLog.FromReadings([At(10), At(20), At(15)])).Message, StringComparison.Ordinal);
        Assert.Contains("is the time of the reading before", Assert.Throws<ArgumentException>(() => JobLog.FromReadings([At(10), At(10)])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => JobLog.FromReadings([]));
        JobLog one = JobLog.FromReadings([At(1), At(2)]);
        JobLog same = JobLog.FromReadings([At(1), At(2)]);
        JobLog other = JobLog.FromReadings([At(1), At(3)]);
        JobLog? none = null;
        Assert.True(one == same && one.Equals((object)same) && one.GetHashCode() == same.GetHashCode());
        Assert.True(one != other && !one.Equals(other) && !one.Equals(none) && one != none && none == null);
    }

    /// <summary>A fit takes twenty readings of each, and a minute.</summary>
    [Theory]
    [InlineData(20, 20, 60, true)]
    [InlineData(19, 20, 60, false)]
    [InlineData(20, 19, 60, false)]
    [InlineData(20, 20, 59, false)]
    public void JobCalibration_needs_enough(int pressures, int weights, double seconds, bool isEnough)
    {
        Workbench bench = new();
        int count = 21;
        JobLog log = JobLog.FromReadings([.. Enumerable.Range(0, count).Select(i => new JobReading
        {
            Time = Duration.FromSeconds(i * seconds / (count - 1)),
            SuctionGaugePressure = i < pressures ? Pressure.FromPascals(503e3) : null,
            GrossWeight = i < weights ? Mass.FromKilograms(13.5) : null,
            MachineRunning = false,
        })]);
        if (isEnough)
        {
            Assert.Single(JobCalibration.Fit(bench.Job, log).Appliances);
        }
        else
        {
            Assert.Contains("a fit takes 20 of each and 60 s", Assert.Throws<ArgumentException>(() => JobCalibration.Fit(bench.Job, log)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void FittedValue_is_identified_where_less_than_seventy_percent_of_the_spread_is_left()
    {
        Assert.True(new FittedValue<double>(1, 0.9, 1, 1.1, 0.69).IsIdentified);
        Assert.False(new FittedValue<double>(1, 0.9, 1, 1.1, 0.71).IsIdentified);
        Assert.Equal("1.1 (0.9 to 1.2; told 1)", new FittedValue<double>(1, 0.9, 1.1, 1.2, 0.5).ToString());
    }

    [Fact]
    public void EstimateRange_moves_as_a_whole()
    {
        var range = new EstimateRange(1, 2, 4);
        Assert.Equal(new EstimateRange(0, 1, 3), range.Plus(-1));
        Assert.Equal(new EstimateRange(0.5, 2, 4.5), range.Widened(0.5));
        Assert.Equal(new EstimateRange(3, 3, 4), range.AtLeast(3));
        Assert.True(range.Contains(1) && range.Contains(4) && range.Contains(2));
        Assert.False(range.Contains(0.99) || range.Contains(4.01));
    }

    [Fact]
    public void RawReading_begins_with_nothing_read()
    {
        var reading = new RawReading(3);
        Assert.Equal(3, reading.Time);
        Assert.True(double.IsNaN(reading.SuctionGaugePressure) && double.IsNaN(reading.GrossWeight) && double.IsNaN(reading.AirTemperature) && double.IsNaN(reading.PipeTemperature) && double.IsNaN(reading.DischargeGaugePressure));
        Assert.True(reading.IsMachineRunning && reading.IsValveOpen && !reading.IsGaugeGiven && !reading.IsWeightGiven && reading.Cylinder < 0);
        Assert.Equal(0, new RawReading().Time);
        reading.SuctionGaugePressure = double.NaN;
        Assert.True(reading.IsGaugeGiven && !reading.IsWeightGiven);
        reading.GrossWeight = double.NaN;
        Assert.True(reading.IsWeightGiven);
        RawReading raw = RawReading.From(new JobReading
        {
            Time = Duration.FromSeconds(7),
            SuctionGaugePressure = Pressure.FromKilopascals(5),
            Ambient = Temperature.FromKelvins(290),
            PipeTemperature = Temperature.FromKelvins(280),
            DischargeGaugePressure = Pressure.FromKilopascals(800),
            MachineRunning = false,
            ValveOpen = false,
        });
        Assert.Equal((7.0, 5000.0), (raw.Time, raw.SuctionGaugePressure));
        Assert.Equal(290, raw.AirTemperature, 1e-9);
        Assert.Equal(280, raw.PipeTemperature, 1e-9);
        Assert.Equal(8e5, raw.DischargeGaugePressure, 1e-6);
        Assert.True(raw.IsGaugeGiven && !raw.IsWeightGiven && !raw.IsMachineRunning && !raw.IsValveOpen);
    }
}
