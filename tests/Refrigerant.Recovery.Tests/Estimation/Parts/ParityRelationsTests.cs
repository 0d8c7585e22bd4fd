using System;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>What level, rate and step of the readings say against a prediction, each on both sides of its limit.</summary>
public class ParityRelationsTests
{
    /// <summary>A gauge of 1 % and a pressure at which its noise and the model's are little: 2.3 MPa, 0.04 kg/s.</summary>
    private static readonly Told High = Workbench.Typical with { Fluid = "R-32", Temperature = 311, GaugeSpan = 3e6, Charge = 40, Volume = 0.06 };

    [Fact]
    public void What_is_foreseen_agrees()
    {
        var script = new ParityScript();
        Assert.Equal(5e-4 * script.Bench.Job.Machine.VolumetricEfficiency * VaporDensity(script.Bench), script.Flow, 1e-3 * script.Flow);
        Assert.Equal(ParityVerdict.Agrees, script.Until(200));
        Assert.True(script.Relations.WasWet);
        Assert.Equal(200, script.Relations.ChangedAt);
    }

    /// <summary>In the first half minute nothing, then not before the twenty-first comparison; a hose is named by the sixth block in a row.</summary>
    [Fact]
    public void A_hose_is_named_by_the_sixth_block_after_twenty_comparisons()
    {
        ParityScript script = Kinked();
        Assert.Equal(ParityVerdict.HoseBlocked, script.Until(200));
        Assert.Equal(ParityScript.First + 21 + 5, script.Time);

        // What keeps on is said on.
        Assert.Equal(ParityVerdict.HoseBlocked, script.Next());
        script.Relations.Restart();
        Assert.Equal(ParityVerdict.HoseBlocked, script.Until(300));
        Assert.Equal(57 + 1 + 21 + 5, script.Time);
    }

    /// <summary>A block without a reading is not compared; one that agrees ends the row.</summary>
    [Fact]
    public void What_is_not_read_is_not_counted_and_what_agrees_ends_the_row()
    {
        ParityScript script = Kinked();
        script.Until(53);
        Assert.Equal(ParityVerdict.Agrees, script.Next(spoil: block => block with { Gauge = double.NaN }));
        Assert.Equal(ParityVerdict.Agrees, script.Next(spoil: block => block with { Delivered = double.NaN }));
        Assert.Equal(ParityVerdict.HoseBlocked, script.Until(200));
        Assert.Equal(58, script.Time);

        script = Kinked();
        script.Until(54);
        script.Shown = 0.99;
        script.Next();
        script.Shown = 0.6;
        Assert.Equal(ParityVerdict.HoseBlocked, script.Until(200));
        Assert.InRange(script.Time, 61, 75);
    }

    /// <summary>A rest, liquid, vapor that comes by itself and a block longer than half a minute begin anew.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void What_is_no_drawing_begins_anew(int which)
    {
        ParityScript script = Kinked();
        script.Until(55);
        Assert.Equal(ParityVerdict.Agrees, script.Next(which == 3 ? 31 : 1, block => which switch
        {
            0 => block with { IsDrawing = false },
            1 => block with { LiquidMoved = 0.01 },
            2 => block with { IsByItself = true },
            _ => block,
        }));
        double from = script.Time;
        Assert.Equal(ParityVerdict.HoseBlocked, script.Until(300));
        Assert.Equal(from + 1 + 21 + 5, script.Time);

        // Half a minute does not: the row begins anew, as no line goes through the last seconds, the comparisons go on.
        Assert.Equal(ParityVerdict.Agrees, script.Next(30));
        from = script.Time;
        Assert.Equal(ParityVerdict.HoseBlocked, script.Until(400));
        Assert.InRange(script.Time, from + 6, from + 18);
    }

    /// <summary>The gauge 8 % below where its noise is little, else two standard deviations; and the scale 22 % below, or 1.6 standard deviations of 0.54 g/s, whichever is more.</summary>
    [Theory]
    [InlineData(0.916, 0.6, true)]
    [InlineData(0.924, 0.6, false)]
    [InlineData(0.8, 0.77, true)]
    [InlineData(0.8, 0.79, false)]
    public void A_hose_takes_of_level_and_rate(double shown, double ratio, bool isNamed)
    {
        var script = new ParityScript(High) { Shown = shown };
        Assert.True(2 * script.LevelSigma < 0.07 && 1.6 * 0.54e-3 < 0.2 * script.Flow);
        script.Rate *= ratio;
        Assert.Equal(isNamed ? ParityVerdict.HoseBlocked : ParityVerdict.Agrees, script.Until(90));
    }

    [Theory]
    [InlineData(0.96, false)]
    [InlineData(1.04, true)]
    public void A_gauge_that_tells_little_lies_two_standard_deviations_below_for_a_hose(double times, bool isNamed)
    {
        var script = new ParityScript();
        Assert.True(2 * script.LevelSigma > 0.12);
        script.Shown = 1 - (2 * times * script.LevelSigma);
        script.Rate *= 0.5;
        Assert.Equal(isNamed ? ParityVerdict.HoseBlocked : ParityVerdict.Agrees, script.Until(90));
    }

    [Theory]
    [InlineData(0.96, false)]
    [InlineData(1.04, true)]
    public void A_scale_that_tells_little_lies_1_6_standard_deviations_below_for_a_hose(double times, bool isNamed)
    {
        // Of some 2 g/s that is four tenths.
        var script = new ParityScript(Workbench.Typical with { Displacement = 8e-5 }) { Shown = 0.6 };
        double most = 1.6 * 0.54e-3 / script.Flow;
        Assert.InRange(most, 0.3, 0.6);
        script.Rate *= 1 - (times * most);
        Assert.Equal(isNamed ? ParityVerdict.HoseBlocked : ParityVerdict.Agrees, script.Until(90));
    }

    /// <summary>Its pressure stands once it is blocked: within 0.6 % a second.</summary>
    [Theory]
    [InlineData(0.0056, true)]
    [InlineData(-0.0056, true)]
    [InlineData(0.0064, false)]
    [InlineData(-0.0064, false)]
    public void Behind_a_blocked_hose_the_pressure_stands(double slope, bool isNamed)
    {
        ParityScript script = Kinked();
        script.Until(45);
        script.Slope = slope;
        script.Until(55);
        script.Relations.Restart();
        script.Shown = 0.65 - (slope * 14);
        Assert.Equal(isNamed ? ParityVerdict.HoseBlocked : ParityVerdict.Agrees, script.Until(55 + 1 + 21 + 5));
    }

    /// <summary>Of less than 8 % of the charge no hose is named: near the end every pressure falls.</summary>
    [Theory]
    [InlineData(0.091, true)]
    [InlineData(0.0795, false)]
    public void Near_the_end_no_hose_is_named(double left, bool isNamed)
    {
        ParityScript script = Kinked(Workbench.Typical with { Charge = 600, Volume = 1.8 });
        double liquidPerKilogram = 1 / (1 - (VaporDensity(script.Bench) / LiquidDensity(script.Bench)));
        script.Delivered = 600 - (1.8 * VaporDensity(script.Bench)) - (600 * left / liquidPerKilogram);
        Assert.Equal(isNamed ? ParityVerdict.HoseBlocked : ParityVerdict.Agrees, script.Until(90));
    }

    /// <summary>
    /// After two minutes of drawing, by the tenth block in a row: a scale that gains 24 % less than foreseen, or 2.9 standard deviations of its rate and of 0.7 of its drift, at a level that is not below.
    /// </summary>
    [Theory]
    [InlineData(0.75, 0, true)]
    [InlineData(0.78, 0, false)]
    [InlineData(0.7, 0.9, true)]
    [InlineData(0.7, 1.1, false)]
    public void A_machine_is_weak_where_the_scale_alone_is_behind(double ratio, double sigmas, bool isNamed)
    {
        var script = new ParityScript(High);
        script.Rate *= ratio;
        script.Shown = 1 - (sigmas * script.LevelSigma);
        Assert.Equal(isNamed ? ParityVerdict.MachineWeak : ParityVerdict.Agrees, script.Until(160));
        Assert.Equal(isNamed ? 1 + 121 + 9 : 160, script.Time);
    }

    [Theory]
    [InlineData(0.96, false)]
    [InlineData(1.04, true)]
    public void Little_flow_tells_less_of_a_machine(double share, bool isNamed)
    {
        var script = new ParityScript(Workbench.Typical with { Displacement = 1.5e-4 });
        double drift = 0.7 * script.Bench.Prior.ScaleDrift * Math.Sqrt(2 / (600 * 12.0));
        double most = 2.9 * Math.Sqrt((0.54e-3 * 0.54e-3) + (drift * drift)) / script.Flow;
        Assert.InRange(most, 0.4, 0.75);
        script.Rate *= 1 - (share * most);
        Assert.Equal(isNamed ? ParityVerdict.MachineWeak : ParityVerdict.Agrees, script.Until(160));
    }

    /// <summary>Near a stall every machine draws less than it should: 1.2 times the level.</summary>
    [Theory]
    [InlineData(1.23, true)]
    [InlineData(1.17, false)]
    public void Near_the_level_no_machine_is_weak(double times, bool isNamed)
    {
        double pressure = new ParityScript(High).Pressure;
        var script = new ParityScript(High with { Level = pressure / times });
        script.Rate *= 0.5;
        Assert.Equal(isNamed ? ParityVerdict.MachineWeak : ParityVerdict.Agrees, script.Until(160));
    }

    /// <summary>A scale that shows more in all than was foreseen has not gained less.</summary>
    [Fact]
    public void A_machine_is_not_weak_where_more_has_come()
    {
        var script = new ParityScript(High) { Beyond = -2 };
        script.Rate *= 0.5;
        Assert.Equal(ParityVerdict.Agrees, script.Until(160));
    }

    /// <summary>A gauge that is off alone for six blocks: by 12 % or three standard deviations, either way, while the scale gains what it should within 15 %, and stands within 1.2 % a second.</summary>
    [Theory]
    [InlineData(1.125, 1, true)]
    [InlineData(1.115, 1, false)]
    [InlineData(0.875, 1, true)]
    [InlineData(0.885, 1, false)]
    [InlineData(1.3, 1.14, true)]
    [InlineData(1.3, 1.16, false)]
    [InlineData(1.3, 0.86, true)]
    [InlineData(1.3, 0.84, false)]
    public void A_gauge_is_off_where_it_alone_is_behind(double shown, double ratio, bool isNamed)
    {
        var script = new ParityScript(High) { Shown = shown };
        Assert.True(3 * script.LevelSigma < 0.1);
        script.Rate *= ratio;
        Assert.Equal(isNamed ? ParityVerdict.GaugeOff : ParityVerdict.Agrees, script.Until(145));
        Assert.Equal(isNamed ? 1 + 121 + 5 : 145, script.Time);
    }

    [Theory]
    [InlineData(2.9, false)]
    [InlineData(3.1, true)]
    public void A_gauge_is_off_by_three_standard_deviations(double sigmas, bool isNamed)
    {
        var script = new ParityScript();
        script.Shown = 1 + (sigmas * script.LevelSigma);
        Assert.Equal(isNamed ? ParityVerdict.GaugeOff : ParityVerdict.Agrees, script.Until(145));
    }

    [Theory]
    [InlineData(0.0115, true)]
    [InlineData(0.0125, false)]
    [InlineData(-0.0125, false)]
    public void A_gauge_that_moves_is_not_said_to_be_off(double slope, bool isNamed)
    {
        var script = new ParityScript(High) { Shown = 1.5 };
        script.Until(100);
        script.Slope = slope;
        Assert.Equal(isNamed ? ParityVerdict.GaugeOff : ParityVerdict.Agrees, script.Until(127));
    }

    /// <summary>Where the rate is hardly known, at 15 % of the flow, no gauge is said to be off.</summary>
    [Theory]
    [InlineData(0.145, true)]
    [InlineData(0.155, false)]
    public void Little_flow_tells_nothing_of_a_gauge(double sigma, bool isNamed)
    {
        double flow = new ParityScript().Flow / 5e-4;
        var script = new ParityScript(Workbench.Typical with { Displacement = 0.54e-3 / sigma / flow }) { Shown = 1.5 };
        Assert.Equal(0.54e-3 / sigma, script.Flow, 1e-3 * script.Flow);
        Assert.Equal(isNamed ? ParityVerdict.GaugeOff : ParityVerdict.Agrees, script.Until(145));
    }

    private static ParityScript Kinked(Told? told = null)
    {
        var script = new ParityScript(told) { Shown = 0.6 };
        script.Rate *= 0.5;
        return script;
    }

    private static double VaporDensity(Workbench bench)
    {
        bench.Table.At(bench.Told.Temperature, out SaturationValues at);
        return at.VaporDensity;
    }

    private static double LiquidDensity(Workbench bench)
    {
        bench.Table.At(bench.Told.Temperature, out SaturationValues at);
        return 1 / at.LiquidVolume;
    }
}
