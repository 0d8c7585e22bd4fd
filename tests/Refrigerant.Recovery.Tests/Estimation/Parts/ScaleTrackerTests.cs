using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Two cylinders, of 12.5 kg with 1 kg in it and of 20 kg empty; steps of 10 g; 5 g/s flow, of at most 10 g/s that the machine can draw.</summary>
public class ScaleTrackerTests
{
    private const double Flow = 0.005;
    private const double Most = 0.010;
    private static readonly Workbench Bench = new();

    private static readonly RecoveryJob Job = Bench.Job with
    {
        Cylinders =
        [
            Bench.Job.Cylinders[0] with { Label = "A" },
            RecoveryCylinder.FromTestPressure(Pressure.FromBars(48), Mass.FromKilograms(50), Mass.FromKilograms(20)) with { Label = "B" },
        ],
    };

    [Fact]
    public void What_is_gained_since_the_first_weight_has_left()
    {
        var run = new Run(13.5);
        run.Go(20);
        Assert.Equal(0.1, run.Delivered, 1e-9);
        Assert.Equal(13.6, run.Scale.Gross, 1e-9);
        Assert.Equal(1.1, run.Scale.Content, 1e-9);
        Assert.Equal(0, run.Scale.Cylinder);
        Assert.False(run.Scale.IsNet || run.Scale.IsUnlikeTold || run.Scale.IsOtherUnit || run.Scale.IsUnknown || run.Scale.IsLiquid || run.Scale.IsFalling || run.Scale.IsDoubtful);
        Assert.Equal(Limit(0), run.Scale.LimitOnScale, 1e-9);
    }

    /// <summary>A hand on the scale is not believed; what stays after two seconds and three readings is the scale's, and what has left goes on by what should flow.</summary>
    [Theory]
    [InlineData(0.4)]
    [InlineData(-0.4)]
    public void A_jump_that_stays_is_the_scales(double jump)
    {
        var run = new Run(13.5);
        run.Go(20);
        run.Weight += jump;
        Assert.False(run.Step());
        Assert.False(run.Step());
        Assert.True(run.Step());
        Assert.Equal(23 * Flow, run.Delivered, 1e-6);
        Assert.Equal(ScaleEvent.Disturbed, run.Scale.Event);
        Assert.Equal(23, run.Scale.EventTime);
        Assert.Equal(Limit(0), run.Scale.LimitOnScale, 1e-9);
        run.Go(10);
        Assert.Equal(33 * Flow, run.Delivered, 1e-6);

        // What the cylinder holds has not jumped.
        Assert.Equal(1 + (33 * Flow), run.Scale.Content, 1e-6);
    }

    [Fact]
    public void A_hand_that_is_gone_leaves_nothing()
    {
        var run = new Run(13.5);
        run.Go(20);
        run.Weight += 3;
        Assert.False(run.Step());
        run.Weight -= 3;
        Assert.True(run.Step());
        Assert.Equal(22 * Flow, run.Delivered, 1e-6);
        Assert.Equal(double.NegativeInfinity, run.Scale.EventTime);
    }

    /// <summary>70 g, two steps, and 10 g a second besides what flows, are no jump.</summary>
    [Theory]
    [InlineData(0.098, true)]
    [InlineData(0.102, false)]
    [InlineData(-0.102, false)]
    public void A_touch_is_seventy_grams(double jump, bool isUsed)
    {
        // Beyond what should flow: 5 g of the flow, doubled, and 10 g in the second.
        var run = new Run(13.5);
        run.Go(20);
        run.Weight += jump + (jump > 0 ? Flow : -Flow);
        Assert.Equal(isUsed, run.Step());
    }

    [Fact]
    public void A_new_zero_is_one_of_a_tare_or_to_nothing()
    {
        foreach (double jump in new[] { -12.5, -13.62 })
        {
            var run = new Run(13.5);
            run.Go(20);
            run.Weight += jump;
            run.Go(5);
            Assert.Equal(ScaleEvent.TareChanged, run.Scale.Event);
            Assert.Equal(25 * Flow, run.Delivered, 1e-6);
            Assert.Equal(Limit(0) + jump, run.Scale.LimitOnScale, 0.02);
            Assert.Equal(1 + (25 * Flow), run.Scale.Content, 0.02);
        }
    }

    [Theory]
    [InlineData(20, 1)]
    [InlineData(20.9, 1)]
    [InlineData(12.3, 1)]
    [InlineData(12.8, 0)]
    public void The_next_cylinder_is_known_by_its_weight_or_by_a_drop(double weight, int cylinder)
    {
        var run = new Run(13.5);
        run.Go(20);
        run.Weight = weight;
        run.Go(5);
        Assert.Equal(cylinder, run.Scale.Cylinder);
        Assert.Equal(cylinder == 1 ? ScaleEvent.CylinderChanged : ScaleEvent.Disturbed, run.Scale.Event);
        Assert.Equal(25 * Flow, run.Delivered, 1e-6);
        if (weight == 20)
        {
            Assert.Equal(Limit(1), run.Scale.LimitOnScale, 1e-9);
            Assert.InRange(run.Scale.Content, 0, 5 * Flow);
            Assert.False(run.Scale.IsUnknown);
        }
    }

    [Fact]
    public void A_label_changes_the_cylinder_at_once_and_an_unknown_one_has_no_limit()
    {
        var run = new Run(13.5);
        run.Go(20);
        run.Weight = 20.05;
        run.Label = 1;
        Assert.True(run.Step());
        Assert.Equal(1, run.Scale.Cylinder);
        Assert.Equal(ScaleEvent.CylinderChanged, run.Scale.Event);
        Assert.Equal(21 * Flow, run.Delivered, 1e-6);
        Assert.Equal(Limit(1), run.Scale.LimitOnScale, 1e-9);
        Assert.Equal(0.05, run.Scale.Content - 0.005 + 0.005, 0.06);
        run.Label = 7;
        run.Weight = 31;
        run.Go(3);
        Assert.True(run.Scale.IsUnknown);
        Assert.Equal(double.PositiveInfinity, run.Scale.LimitOnScale);
        Assert.Equal(double.NaN, run.Scale.Content);
        Assert.Equal(24 * Flow, run.Delivered, 1e-6);
    }

    /// <summary>A first weight of the content alone is net: the limit goes without the tare.</summary>
    [Fact]
    public void Net_weights_are_known_by_the_first()
    {
        var run = new Run(1.2);
        run.Go(10);
        Assert.True(run.Scale.IsNet);
        Assert.False(run.Scale.IsUnlikeTold);
        Assert.Equal(Limit(0) - 12.5, run.Scale.LimitOnScale, 1e-9);
        Assert.Equal(1.05, run.Scale.Content, 0.01);
        run = new Run(1 + (0.26 * 12.5));
        Assert.False(run.Scale.IsNet);
    }

    /// <summary>2.20462 lb are a kilogram, within 2 %: such a first weight is in another unit, and none is used.</summary>
    [Theory]
    [InlineData(2.20462, true)]
    [InlineData(2.20462 * 1.018, true)]
    [InlineData(2.20462 * 1.022, false)]
    [InlineData(1 / 2.20462, true)]
    [InlineData(1, false)]
    public void Another_unit_is_known_by_the_first(double factor, bool isOther)
    {
        var run = new Run(13.5 * factor);
        Assert.Equal(isOther, run.Scale.IsOtherUnit);
        Assert.Equal(!isOther, run.Step());
        Assert.Equal(isOther, double.IsNaN(run.Delivered));
        Assert.Equal(isOther, double.IsNaN(run.Scale.Content));
    }

    /// <summary>1 kg and 5 % of 13.5 kg may the first be off; what an empty cylinder lacks by more than 1 kg is taken off its limit.</summary>
    [Theory]
    [InlineData(15.15, false, 0)]
    [InlineData(15.2, true, 0)]
    [InlineData(11.85, false, 0)]
    [InlineData(11.6, true, 0)]
    [InlineData(11.4, true, -2.1)]
    public void A_cylinder_unlike_the_told_one_is_said(double first, bool isUnlike, double shift)
    {
        var run = new Run(first);
        Assert.Equal(isUnlike, run.Scale.IsUnlikeTold);
        Assert.Equal(Limit(0) + shift, run.Scale.LimitOnScale, 1e-9);
        Assert.Equal(isUnlike ? first - (12.5 + shift) : 1, run.Scale.Content, 1e-9);
    }

    /// <summary>More than two and a half times what the machine can draw, smoothed over five seconds, for three seconds and 200 g.</summary>
    [Fact]
    public void Liquid_is_what_no_vapor_can_be()
    {
        var run = new Run(13.5);
        run.Go(20);
        run.Rate = 0.1;
        int seconds = 0;
        bool wasDoubtful = false;
        while (!run.Scale.IsLiquid && seconds < 30)
        {
            run.Step();
            seconds++;
            wasDoubtful |= run.Scale.IsDoubtful;
            Assert.False(run.Scale.IsLiquid && run.Scale.IsDoubtful);
        }

        Assert.Equal(5, seconds);
        Assert.True(wasDoubtful);
        run.Go(20);
        Assert.Equal(run.Weight - 13.5, run.Delivered, 1e-9);
        run.Rate = Flow;
        seconds = 0;
        while (run.Scale.IsLiquid && seconds < 60)
        {
            run.Step();
            seconds++;
        }

        // Five seconds of vapor, and those in which what is smoothed comes down from 75 g/s to 9 g/s.
        Assert.InRange(seconds, 10, 20);
        Assert.Equal(run.Weight - 13.5, run.Delivered, 1e-9);
    }

    /// <summary>So fast that its steps are no touch, it is taken for a jump until two seconds have shown that it goes on.</summary>
    [Fact]
    public void Faster_liquid_is_known_by_its_steps()
    {
        var run = new Run(13.5);
        run.Go(20);
        run.Rate = 0.5;
        Assert.False(run.Step());
        Assert.False(run.Step());
        Assert.True(run.Step());
        Assert.True(run.Scale.IsLiquid);
        Assert.Equal(run.Weight - 13.5, run.Delivered, 1e-9);
        Assert.Equal(double.NegativeInfinity, run.Scale.EventTime);
    }

    /// <summary>Above 25 g/s, and 9 g/s on top, which are 6 g/s and three tenths of a step a second.</summary>
    [Theory]
    [InlineData(0.032, false)]
    [InlineData(0.037, true)]
    public void Liquid_begins_where_vapor_ends(double rate, bool isLiquid)
    {
        var run = new Run(13.5) { Rate = rate };
        run.Go(240);
        Assert.Equal(isLiquid, run.Scale.IsLiquid);
    }

    /// <summary>A cylinder loses weight by 0.3 kg in half a minute and more, at 2 to 200 g/s, and no single reading brings most of it.</summary>
    [Theory]
    [InlineData(-0.011, 0, 30)]
    [InlineData(-0.009, 0, 35)]
    [InlineData(-0.0022, 0, 140)]
    [InlineData(-0.0018, 0, 0)]
    [InlineData(-0.0025, -0.25, 0)]
    public void Weight_that_goes_little_by_little_is_lost(double rate, double jump, int expected)
    {
        var run = new Run(13.5) { Rate = rate, Expected = 0, Most = 0 };
        run.Go(1);
        run.Weight += jump;
        int said = 0;
        for (int i = 2; i <= (jump == 0 ? 200 : 40) && said == 0; i++)
        {
            run.Step();
            said = run.Scale.IsFalling ? i : 0;
        }

        Assert.InRange(said, expected - 3, expected + 3);
    }

    [Fact]
    public void It_loses_no_more_where_the_weight_stands_or_rises()
    {
        foreach (double rate in new[] { 0, 0.01 })
        {
            var run = new Run(13.5) { Rate = -0.011, Expected = 0, Most = 0 };
            run.Go(50);
            Assert.True(run.Scale.IsFalling);
            Assert.Equal(-0.55, run.Delivered, 1e-9);
            run.Rate = rate;
            run.Go(rate > 0 ? 3 : 30);
            Assert.True(run.Scale.IsFalling);
            run.Go(1);
            Assert.False(run.Scale.IsFalling);
        }
    }

    [Fact]
    public void Weights_beyond_any_scale_are_none()
    {
        Assert.True(ScaleTracker.IsPossible(99_999));
        Assert.True(ScaleTracker.IsPossible(-99_999));
        Assert.False(ScaleTracker.IsPossible(100_001));
        Assert.False(ScaleTracker.IsPossible(-100_001));
        Assert.False(ScaleTracker.IsPossible(double.NaN));
    }

    private static double Limit(int cylinder) => CylinderFill.Limit(Job.Cylinders[cylinder], Job.Appliance.Fluid).MaximumGrossWeight.Kilograms;

    private sealed class Run
    {
        private double _time;

        public Run(double first)
        {
            Scale = new ScaleTracker(Job, Workbench.Typical.Instruments());
            Weight = first;
            Scale.Add(first, 0, Flow, ScaleTrackerTests.Most, Label, out double delivered);
            Delivered = delivered;
        }

        public ScaleTracker Scale { get; }

        public double Weight { get; set; }

        public double Rate { get; set; } = Flow;

        public double Expected { get; set; } = Flow;

        public double Most { get; set; } = ScaleTrackerTests.Most;

        public int Label { get; set; } = -1;

        public double Delivered { get; private set; }

        public bool Step()
        {
            _time++;
            Weight += Rate;
            bool isUsed = Scale.Add(Weight, _time, Expected, Most, Label, out double delivered);
            Delivered = delivered;
            return isUsed;
        }

        public void Go(int seconds)
        {
            for (int i = 0; i < seconds; i++)
            {
                Step();
            }
        }
    }
}
