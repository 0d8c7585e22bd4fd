using System.Collections.Generic;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Times of readings become seconds of the job; 5 g/s should flow, a reading a second.</summary>
public class ReadingClockTests
{
    private const double Flow = 0.005;

    [Fact]
    public void Seconds_begin_at_the_first_reading()
    {
        var clock = new Clock();
        Assert.Equal(0, clock.Take(1000));
        Assert.Equal(1.5, clock.Take(1001.5));
        Assert.Equal(2.25, clock.Take(1002.25));
        Assert.Equal(UnusedReadings.None, clock.Unused);
    }

    [Fact]
    public void No_number_and_no_later_time_are_left_out_and_named()
    {
        var clock = new Clock();
        clock.Take(0);
        clock.Take(1);
        foreach (double bad in new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity })
        {
            Assert.Equal(double.NaN, clock.Take(bad));
            Assert.Equal(UnusedReadings.TimeNotANumber, clock.Unused);
        }

        Assert.Equal(double.NaN, clock.Take(1));
        Assert.Equal(UnusedReadings.TimeNotLater, clock.Unused);
        Assert.Equal(double.NaN, clock.Take(0.5));
        Assert.Equal(UnusedReadings.TimeNotLater, clock.Unused);
        Assert.Equal(2, clock.Take(2));
        Assert.Equal(UnusedReadings.None, clock.Unused);
    }

    /// <summary>Ten in a row, each later than the one before: the clock was set back, and the job goes on where it was, by what passed meanwhile.</summary>
    [Fact]
    public void A_clock_that_was_set_back_goes_on_after_ten()
    {
        var clock = new Clock();
        clock.Run(0, 100);
        for (int i = 0; i < 9; i++)
        {
            Assert.Equal(double.NaN, clock.Take(20 + i));
        }

        // Nine seconds since the first of them, and one as always between two readings.
        Assert.Equal(100 + 10, clock.Take(29), 1e-9);
        Assert.Equal(UnusedReadings.TimeNotLater, clock.Unused);
        Assert.Equal(111, clock.Take(30), 1e-9);
        Assert.Equal(UnusedReadings.None, clock.Unused);
    }

    [Fact]
    public void Set_back_counts_anew_where_the_times_are_not_each_later()
    {
        var clock = new Clock();
        clock.Run(0, 100);
        for (int i = 0; i < 9; i++)
        {
            Assert.Equal(double.NaN, clock.Take(20 + i));
        }

        Assert.Equal(double.NaN, clock.Take(20));
        for (int i = 0; i < 8; i++)
        {
            Assert.Equal(double.NaN, clock.Take(21 + i));
        }

        Assert.Equal(110, clock.Take(29), 1e-9);
    }

    /// <summary>Whatever passed while it was set back, half a minute is the most that counts.</summary>
    [Fact]
    public void At_most_thirty_seconds_pass_while_the_clock_is_set_back()
    {
        var clock = new Clock();
        clock.Run(0, 1000);
        for (int i = 0; i < 9; i++)
        {
            clock.Take(20 + (40 * i));
        }

        Assert.Equal(1000 + 31, clock.Take(20 + 360), 1e-9);
    }

    /// <summary>A minute without readings in which what should have come has come: it has passed. With a twentieth of it, it has not; with an eighth it has.</summary>
    [Theory]
    [InlineData(1, 160)]
    [InlineData(0.12, 160)]
    [InlineData(0.08, double.NaN)]
    public void What_the_scale_gained_tells_whether_the_time_has_passed(double share, double expected)
    {
        var clock = new Clock();
        clock.Run(0, 100);
        clock.Weight = 10 + (share * 60 * Flow * 2);
        Assert.Equal(expected, clock.Take(160, 2 * Flow));
        Assert.Equal(double.IsNaN(expected) ? UnusedReadings.TimeJumped : UnusedReadings.None, clock.Unused);
    }

    /// <summary>Gaps up to half a minute, up to ten times what readings lie apart, without a flow, without a weight before, or over a change of cylinders are taken as they are.</summary>
    [Fact]
    public void Where_nothing_tells_the_time_it_is_taken()
    {
        var clock = new Clock();
        clock.Run(0, 100);
        Assert.Equal(130, clock.Take(130, 1));

        clock = new Clock();
        clock.Run(0, 100, 10);
        Assert.Equal(199, clock.Take(199, 1));
        clock = new Clock();
        clock.Run(0, 100, 10);
        Assert.Equal(double.NaN, clock.Take(201, 1));

        clock = new Clock();
        clock.Run(0, 100);
        Assert.Equal(200, clock.Take(200, 0));

        clock = new Clock { Weight = double.NaN };
        clock.Run(0, 100);
        Assert.Equal(200, clock.Take(200, 1));

        clock = new Clock();
        clock.Run(0, 100);
        clock.Weight = 10 - 1.1;
        Assert.Equal(200, clock.Take(200, 1));
        clock = new Clock();
        clock.Run(0, 100);
        clock.Weight = 10 - 0.9;
        Assert.Equal(double.NaN, clock.Take(200, 1));
    }

    /// <summary>A weight that is missing after a gap tells nothing: its reading is left out, the next one decides.</summary>
    [Fact]
    public void A_weight_that_is_missing_leaves_it_to_the_next()
    {
        var clock = new Clock();
        clock.Run(0, 100);
        clock.Weight = double.NaN;
        Assert.Equal(double.NaN, clock.Take(200));
        clock.Weight = 10.5;
        Assert.Equal(201, clock.Take(201));
    }

    /// <summary>Near the end less than 300 g can still come: half of what is left should flow meanwhile, and then the gauge must have moved by a tenth.</summary>
    [Theory]
    [InlineData(0.4, 0.88, 200)]
    [InlineData(0.4, 1.12, 200)]
    [InlineData(0.4, 0.92, double.NaN)]
    [InlineData(0.4, double.NaN, 200)]
    [InlineData(1.5, 1, 200)]
    public void Near_the_end_the_gauge_tells(double left, double moved, double expected)
    {
        var clock = new Clock { Pressure = 1e5, Left = left };
        clock.Run(0, 100);
        clock.Pressure *= moved;
        Assert.Equal(expected, clock.Take(200, 0.0025));
    }

    /// <summary>A clock that jumps and goes on from there was set: the time between is not counted.</summary>
    [Theory]
    [InlineData(1000)]
    [InlineData(1e9)]
    public void A_clock_that_was_set_ahead_goes_on(double jump)
    {
        var clock = new Clock();
        clock.Run(0, 100);
        Assert.Equal(double.NaN, clock.Take(101 + jump));
        Assert.Equal(UnusedReadings.TimeJumped, clock.Unused);

        // The reading that was left out took its second, and this one took one more.
        Assert.Equal(102, clock.Take(102 + jump), 1e-5);
        Assert.Equal(103, clock.Take(103 + jump), 1e-5);
        Assert.Equal(UnusedReadings.None, clock.Unused);
    }

    [Fact]
    public void One_reading_with_a_time_far_ahead_is_left_out_alone()
    {
        var clock = new Clock();
        clock.Run(0, 100);
        Assert.Equal(double.NaN, clock.Take(1e6));
        Assert.Equal(102, clock.Take(102));
    }

    /// <summary>Two hours and more are believed where the next reading goes on from there within ten minutes, and the scale does not speak against it.</summary>
    [Theory]
    [InlineData(7100, 0, true)]
    [InlineData(7300, 1, false)]
    public void Hours_are_asked_for_twice(double gap, double later, bool atOnce)
    {
        var clock = new Clock();
        clock.Run(0, 100);
        clock.Weight = 40;
        double first = clock.Take(100 + gap);
        Assert.Equal(atOnce ? 100 + gap : double.NaN, first);
        if (!atOnce)
        {
            clock.Weight = 41;
            Assert.Equal(100 + gap + later, clock.Take(100 + gap + later), 1e-6);
        }
    }

    [Fact]
    public void A_gap_is_twelve_hours_at_most()
    {
        var clock = new Clock();
        clock.Run(0, 100);
        clock.Take(1e5 + 100, 0);
        Assert.Equal(100 + 43_200, clock.Take(1e5 + 101, 0), 1e-6);
        Assert.Equal(101 + 43_200, clock.Take(1e5 + 102, 0), 1e-6);
    }

    /// <summary>A clock of thousandths: every reading jumps by a thousand, and the scale gains what a thousandth of it would bring.</summary>
    [Fact]
    public void A_clock_of_thousandths_is_divided()
    {
        var clock = new Clock { Left = 5 };
        double last = 0;
        int i = 0;
        for (; i < 100; i++)
        {
            clock.Weight = 10 + (i * Flow);
            double time = clock.Take(1000 * i);
            if (time > 0 && clock.Unused == UnusedReadings.None)
            {
                last = time;
                break;
            }
        }

        // 150 g take thirty seconds.
        Assert.InRange(i, 30, 33);
        Assert.Equal(i, last, 0.6);
        Assert.Equal(last + 1, clock.Take(1000 * (i + 1)), 1e-6);
    }

    /// <summary>A clock of kiloseconds: a second of what the scale gains passes in a thousandth.</summary>
    [Fact]
    public void A_clock_of_thousands_is_multiplied()
    {
        var clock = new Clock();
        int i = 0;
        double before = 0;
        for (; i < 100; i++)
        {
            clock.Weight = 10 + (i * Flow);
            double time = clock.Take(i / 1000.0);
            if (clock.Unused == UnusedReadings.TimeJumped)
            {
                before = time;
                break;
            }
        }

        // More than 150 g, and twenty readings.
        Assert.InRange(i, 30, 32);
        Assert.Equal(i, before, 1e-6);
        clock.Weight = 10 + ((i + 1) * Flow);
        Assert.Equal(i + 1, clock.Take((i + 1) / 1000.0), 1e-6);
    }

    /// <summary>A hose that pulls on the scale gains half of it at once: that is no clock.</summary>
    [Fact]
    public void A_step_of_the_scale_is_no_slow_clock()
    {
        var clock = new Clock();
        for (int i = 0; i < 100; i++)
        {
            clock.Weight = 10 + (i > 10 ? 0.3 : 0) + (i * 0.1 * Flow);
            Assert.Equal(i / 1000.0, clock.Take(i / 1000.0), 1e-9);
            Assert.Equal(UnusedReadings.None, clock.Unused);
        }
    }

    /// <summary>Readings on the minute are written down by hand: a machine that stands is none that jumps, and from the third on they are taken.</summary>
    [Fact]
    public void Readings_by_the_minute_of_a_machine_that_stands_are_believed()
    {
        var clock = new Clock();
        clock.Run(0, 20);
        var times = new List<double>();
        for (int i = 1; i <= 8; i++)
        {
            times.Add(clock.Take(20 + (60 * i)));
        }

        Assert.True(double.IsNaN(times[0]) && double.IsNaN(times[1]), string.Join(", ", times));
        int first = times.FindIndex(t => !double.IsNaN(t));
        Assert.InRange(first, 2, 3);
        Assert.Equal(20 + (60 * (first + 1)), times[first], 1e-6);
        Assert.Equal(20 + (60 * 8), times[7], 1e-6);
    }

    private sealed class Clock
    {
        private readonly ReadingClock _clock = new();

        public double Weight { get; set; } = 10;

        public double Pressure { get; set; } = 4e5;

        public double Left { get; set; } = 100;

        public UnusedReadings Unused => _clock.Unused;

        /// <summary>Seconds of the job; not a number where the reading was left out.</summary>
        public double Take(double time, double flow = Flow) => _clock.Take(time, Weight, Pressure, flow, Left, out double seconds) ? seconds : double.NaN;

        /// <summary>Readings from a time to another, in which nothing is weighed that would matter.</summary>
        public void Run(double from, double to, double step = 1)
        {
            for (double t = from; t <= to; t += step)
            {
                Assert.Equal(t - from, Take(t, 0), 1e-9);
            }
        }
    }
}
