using System;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Steps of the scale and of the gauge, and a hose that the machine empties, by ParityRelations.</summary>
public class ParityRelationsStepTests
{
    /// <summary>By the fourth block: 70 g beyond what was foreseen, either way, that the rate does not explain.</summary>
    [Theory]
    [InlineData(0.073, true)]
    [InlineData(0.067, false)]
    [InlineData(-0.073, true)]
    [InlineData(-0.067, false)]
    public void A_scale_is_pulled_by_seventy_grams(double pull, bool isNamed)
    {
        var script = new ParityScript { Beyond = -pull };
        Assert.Equal(isNamed ? ParityVerdict.ScalePulled : ParityVerdict.Agrees, script.Until(110));
        Assert.Equal(isNamed ? ParityScript.First + 21 + 3 : 110, script.Time);
    }

    /// <summary>A machine that draws a third less, or more than foreseen, has moved the scale by as much less or more: a rate explains it.</summary>
    [Theory]
    [InlineData(0.65)]
    [InlineData(1.37)]
    public void What_the_rate_explains_is_no_pull(double ratio)
    {
        var script = new ParityScript();
        script.Rate *= ratio;
        Assert.Equal(ParityVerdict.Agrees, script.Until(110));
        Assert.True(Math.Abs(ratio - 1) * script.Flow * 25 > 0.075);

        // Sixty grams more than it explains are one, less are none.
        foreach (double more in new[] { 0.057, 0.063 })
        {
            script = new ParityScript { Beyond = ratio < 1 ? more : -more };
            script.Rate *= ratio;
            Assert.Equal(more > 0.06 ? ParityVerdict.ScalePulled : ParityVerdict.Agrees, script.Until(110));
        }
    }

    /// <summary>Beyond 40 % either way the rate is not one that a pull would leave; nor is there one where the gauge is off by two standard deviations.</summary>
    [Theory]
    [InlineData(1.37, 0, true)]
    [InlineData(1.43, 0, false)]
    [InlineData(1, 1.9, true)]
    [InlineData(1, -1.9, true)]
    [InlineData(1, 2.1, false)]
    public void A_pull_leaves_rate_and_gauge(double ratio, double sigmas, bool isNamed)
    {
        var script = new ParityScript { Beyond = -1 };
        script.Rate *= ratio;
        script.Shown = 1 + (sigmas * script.LevelSigma);
        Assert.Equal(isNamed ? ParityVerdict.ScalePulled : ParityVerdict.Agrees, script.Until(100));
        Assert.Equal(isNamed ? ParityScript.First + 21 + 3 : 100, script.Time);
    }

    /// <summary>A gauge that falls by a quarter at once and stands for eight seconds: the hose where the scale gains less by three tenths of that share, else the gauge.</summary>
    [Theory]
    [InlineData(0.94, nameof(ParityVerdict.GaugeOff))]
    [InlineData(0.91, nameof(ParityVerdict.HoseBlocked))]
    public void A_step_of_the_gauge_is_the_hose_or_its_own(double ratio, string expected)
    {
        ParityScript script = Stepped(0.75, ratio);
        Assert.Equal(expected, script.Until(72).ToString());

        // It falls between 59 and 60 s: the mean of two readings shows it at 61, it began at 58 and has stood at 58 + 3 + 8 s.
        Assert.Equal(69, script.Time);
        Assert.Equal(58, script.Relations.ChangedAt);
        Assert.True(script.Relations.WasWet);
        script.Relations.Restart();
        script.Next();
        Assert.Equal(58, script.Relations.ChangedAt);
    }

    /// <summary>Over eight seconds a rate is known to 0.54 g/s times (12/8)^1.5: where that is more than 0.35 of the share, the scale does not speak for the gauge.</summary>
    [Theory]
    [InlineData(0.97, nameof(ParityVerdict.GaugeOff))]
    [InlineData(1.03, nameof(ParityVerdict.HoseBlocked))]
    public void A_scale_that_tells_too_little_does_not_speak_for_the_gauge(double times, string expected)
    {
        double flow = new ParityScript().Flow / 5e-4;
        double wanted = 0.54e-3 * Math.Pow(1.5, 1.5) / (0.35 * 0.4 * times);
        ParityScript script = Stepped(0.6, 1, Workbench.Typical with { Displacement = wanted / flow });
        Assert.Equal(expected, script.Until(72).ToString());
    }

    /// <summary>What vapor thins out by in three seconds, ṁ over the vapor, with a fifth more, is no step: 8 % of 18 L of which liquid fills a quarter.</summary>
    [Theory]
    [InlineData(5e-4, false)]
    [InlineData(1.5e-4, true)]
    public void What_vapor_thins_by_is_no_step(double displacement, bool isSaid)
    {
        ParityScript script = Stepped(0.91, 1, Workbench.Typical with { Displacement = displacement });
        Assert.Equal(isSaid, script.Until(72) != ParityVerdict.Agrees);
    }

    /// <summary>A valve: the gauge shows less than 0.22 of the pressure for four blocks, and less than 0.14 of the flow would come at what it shows less the gauge's own error.</summary>
    [Theory]
    [InlineData(-0.004, true)]
    [InlineData(0.004, false)]
    public void A_hose_that_is_emptied_at_once_is_shut_off(double off, bool isNamed)
    {
        var script = new ParityScript();
        script = Stepped(0.14 + off + (script.Bench.Prior.Sigma[StateIndex.GaugeBias] / script.Pressure), 0);
        Assert.Equal(isNamed ? ParityVerdict.ValveClosed : ParityVerdict.Agrees, script.Until(65));
        Assert.Equal(isNamed ? 63 : 65, script.Time);
    }

    /// <summary>Where it stands below 0.22 of the pressure, within 2 % a second over five seconds, something comes through: a hose. It falls too slowly before to be a step.</summary>
    [Theory]
    [InlineData(0.20, -0.016, true)]
    [InlineData(0.17, 0.021, true)]
    [InlineData(0.17, 0.0235, false)]
    [InlineData(0.24, 0, false)]
    public void Where_it_stands_as_much_comes_through(double shown, double moves, bool isNamed)
    {
        var script = new ParityScript();
        script.Until(41);
        script.Slope = -0.03;
        script.Until(59);
        Assert.Equal(0.46, script.Shown, 1e-9);
        script.Slope = moves * shown;
        script.Shown = shown - script.Slope;
        script.Rate = 0;

        // Five seconds of it at 65 s, and six blocks in a row; twelve seconds after it was above 0.45 it is none of a sudden any more.
        Assert.Equal(isNamed ? ParityVerdict.HoseBlocked : ParityVerdict.Agrees, script.Until(70));
        Assert.Equal(70, script.Time);
    }

    /// <summary>Vapor that thins out takes longer than twelve seconds from 0.45 of the pressure to 0.22 of it.</summary>
    [Theory]
    [InlineData(0.46, true)]
    [InlineData(0.44, false)]
    public void What_takes_longer_is_no_valve(double full, bool isNamed)
    {
        var script = new ParityScript { Shown = 0.47 };
        script.Until(52);
        script.Shown = full;
        script.Until(60);
        script.Shown = 0.1;

        // At 64 s it has been low for four blocks; above 0.45 it was last at 60 or at 52 s.
        Assert.Equal(isNamed ? ParityVerdict.ValveClosed : ParityVerdict.Agrees, script.Until(64));
    }

    /// <summary>A pressure that has been low for long: where next to nothing comes and the scale gains less than 0.35 of the flow a valve is shut; else it is a hose, as long as the scale has slowed down.</summary>
    [Theory]
    [InlineData(0.10, 0.34, 0, nameof(ParityVerdict.ValveClosed))]
    [InlineData(0.10, 0.36, 0, nameof(ParityVerdict.HoseBlocked))]
    [InlineData(0.25, 0.3, 0, nameof(ParityVerdict.HoseBlocked))]
    [InlineData(0.30, 1.4, -0.043, nameof(ParityVerdict.HoseBlocked))]
    [InlineData(0.30, 1.4, -0.053, nameof(ParityVerdict.Agrees))]
    [InlineData(0.36, 1.4, -0.053, nameof(ParityVerdict.HoseBlocked))]
    public void A_pressure_that_has_been_low_is_a_valve_or_a_hose(double shown, double ratio, double slows, string expected)
    {
        var script = new ParityScript { Shown = shown };
        script.RateSlope = slows * script.Flow;
        script.Rate = (ratio * script.Flow) - (script.RateSlope * 40);
        Assert.Equal(expected, script.Until(72).ToString());
    }

    /// <summary>The gauge falls to a share of the pressure between 59 and 60 s, while the scale gains a share of the flow.</summary>
    private static ParityScript Stepped(double to, double ratio, Told? told = null)
    {
        var script = new ParityScript(told);
        script.Until(59);
        script.Shown = to;
        script.Rate *= ratio;
        return script;
    }
}
