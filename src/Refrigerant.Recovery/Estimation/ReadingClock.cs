using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// Seconds of the job from the times of readings: a clock that is set back, that jumps, or that counts thousandths of a second or thousands of them. What the scale gained meanwhile
/// tells a clock that jumped from readings that dropped out. Fixed memory.
/// </summary>
internal sealed class ReadingClock
{
    /// <summary>s that readings lie apart where nothing is known of it yet.</summary>
    private const double Usual = 1;

    /// <summary>s that a gap has at most.</summary>
    private const double LongestGap = 12 * 3600;

    /// <summary>Readings earlier than the last one, each later than the one before, after which the clock counts as set back.</summary>
    private const int ClockSetBack = 10;

    /// <summary>s: a reading so much later than the last is believed where the next one goes on from it within the other time.</summary>
    private const double Jump = 2 * 3600;

    private const double SameJump = 600;

    /// <summary>s, and times what readings lie apart, from which the scale is asked whether the time has passed.</summary>
    public const double LongGap = 30;

    private const double ManyTimesUsual = 10;

    /// <summary>
    /// kg that should have come meanwhile at least, and the share of it that has come where the time has passed, and after more than one jump; where less than that should come, but half of what is left, the gauge has
    /// moved by this share of the pressure.
    /// </summary>
    private const double LeastExpected = 0.3;

    private const double LeastShare = 0.1;
    private const double MoreShare = 0.5;
    private const double Half = 0.5;
    private const double LeastMoved = 0.1;

    /// <summary>A clock this many times too fast or too slow shows by what the scale gains: kg, and how far from that many times what is expected.</summary>
    private const double Thousand = 1000;

    private const double LeastGained = 0.15;
    private const double WithinFactor = 3;

    /// <summary>
    /// Jumps in a row, like each other within this factor, from which a clock may be too fast; as many from which it is taken as it is, since nothing flows; readings from which it may be
    /// too slow.
    /// </summary>
    private const int JumpsInARow = 3;

    private const double Alike = 4;
    private const int MostJumps = 300;

    /// <summary>s within which readings that lie whole minutes apart, up to the longest, are those of somebody who writes them down: no clock of thousandths shows such.</summary>
    private const double ByHand = 4;

    private const double LongestByHand = 900;
    private const double Minute = 60;
    private const int SlowReadings = 20;

    /// <summary>Share of what was gained that no single reading of a slow clock may bring: a step of the scale is none.</summary>
    private const double LargestStep = 0.5;

    private double _offset = double.NaN;
    private double _factor = 1;
    private double _time = -1;
    private double _usual = double.NaN;
    private double _weight = double.NaN;
    private double _pressure = double.NaN;
    private double _earlier = double.NaN;
    private double _earlierFirst;
    private int _earlierCount;
    private double _jumped = double.NaN;
    private double _jumpedFrom;
    private bool _isByHand;
    private double _jumpGap;
    private int _jumps;
    private double _openSince = double.NaN;
    private double _openFrom = double.NaN;
    private double _openLast;
    private double _openStep;
    private int _openCount;

    /// <summary>What the last reading's time was not used for.</summary>
    public UnusedReadings Unused { get; private set; }

    /// <summary>s that readings lie apart.</summary>
    private double Between => double.IsNaN(_usual) ? Usual : _usual;

    /// <summary>Seconds since the first reading; false where the reading must be left out.</summary>
    /// <param name="clock">What the clock shows, any number.</param>
    /// <param name="weight">What the scale shows, kg, any number.</param>
    /// <param name="pressure">Absolute pressure that the gauge shows, Pa, any number.</param>
    /// <param name="flow">Vapor that should flow, kg/s; zero where the machine does not draw.</param>
    /// <param name="left">What can still flow, kg.</param>
    /// <param name="time">s.</param>
    public bool Take(double clock, double weight, double pressure, double flow, double left, out double time)
    {
        time = 0;
        Unused = UnusedReadings.None;
        if (!Require.IsFinite(clock))
        {
            Unused = UnusedReadings.TimeNotANumber;
            return false;
        }

        _offset = double.IsNaN(_offset) ? clock : _offset;
        time = (clock - _offset) * _factor;
        if (!(time > _time))
        {
            return Earlier(clock, out time);
        }

        double gap = time - _time;
        if (_time >= 0 && gap > LongGap && !HasPassed(time, gap, weight, pressure, flow, left))
        {
            Unused = UnusedReadings.TimeJumped;
            if (!Confirmed(clock, ref time, gap, weight, flow))
            {
                return false;
            }
        }
        else if (gap > LongestGap)
        {
            _offset += (gap - LongestGap) / _factor;
            time = _time + LongestGap;
        }

        Slow(clock, ref time, weight, flow);
        Accept(time, weight, pressure);
        return true;
    }

    /// <summary>Whether so much time can have passed since the last reading.</summary>
    private bool HasPassed(double time, double gap, double weight, double pressure, double flow, double left)
    {
        if (_factor != 1)
        {
            return true;
        }

        if (gap > Jump && !(time > _jumped && time - _jumped < SameJump))
        {
            return false;
        }

        double expected = Math.Min(flow * gap, Half * left);
        if (gap < ManyTimesUsual * Between || !(expected > 0))
        {
            return true;
        }

        double gained = weight - _weight;
        if (gained < -ScaleTracker.OtherCylinder)
        {
            // Another cylinder, which takes its time.
            return true;
        }

        if (expected >= LeastExpected)
        {
            // Where this weight is missing, the next one tells; without any there is nothing to tell it.
            return double.IsNaN(_weight) || gained > (_jumps < 2 ? LeastShare : MoreShare) * expected;
        }

        double moved = Math.Abs(pressure - _pressure);
        return flow * gap < Half * left || !Require.IsFinite(moved) || moved > LeastMoved * _pressure;
    }

    /// <summary>Whether a clock that jumped goes on from there, in which case the time is put right.</summary>
    private bool Confirmed(double clock, ref double time, double gap, double weight, double flow)
    {
        double further = time - (double.IsNaN(_jumped) ? time : _jumped);
        if (!(further > 0))
        {
            // The first reading after a jump, or one that jumped elsewhere.
            Hold(time, gap, 1);
            return false;
        }

        bool isAlike = further > _jumpGap / Alike && further < _jumpGap * Alike;
        if (!isAlike)
        {
            if (further > LongGap)
            {
                Hold(time, gap, 1);
                return false;
            }

            // It goes on from where it jumped to: that time has not passed.
            _offset += (gap - further - Between) / _factor;
            time = _time + further + Between;
            _jumped = double.NaN;
            return true;
        }

        // Each reading jumps by as much as the one before.
        Hold(time, further, _jumps + 1);
        double gained = weight - _weight;
        double slow = flow * gap / Thousand;
        double since = time - _jumpedFrom;
        _isByHand &= further > Minute - ByHand && further < LongestByHand + ByHand && Math.Abs(since - (Minute * Math.Round(since / Minute))) < ByHand;
        bool isEnough = Math.Max(gained, slow) > LeastGained;
        if (_jumps < JumpsInARow || (!isEnough && _jumps < (_isByHand ? JumpsInARow : MostJumps)))
        {
            return false;
        }

        if (!isEnough && _isByHand)
        {
            Unused = UnusedReadings.None;
        }
        else if (gained > slow / WithinFactor && gained < slow * WithinFactor)
        {
            _offset = clock - ((_time + (gap / Thousand)) * Thousand);
            _factor = 1 / Thousand;
            time = _time + (gap / Thousand);
        }

        _jumped = double.NaN;
        _usual = further;
        return true;
    }

    private void Hold(double time, double gap, int jumps)
    {
        _jumpedFrom = jumps == 1 ? time : _jumpedFrom;
        _isByHand |= jumps == 1;
        _jumped = time;
        _jumpGap = gap;
        _jumps = jumps;
    }

    /// <summary>A clock a thousand times too slow: as much comes in a thousandth of a second as should in one.</summary>
    private void Slow(double clock, ref double time, double weight, double flow)
    {
        if (_factor != 1 || !Require.IsFinite(weight) || !(flow > 0))
        {
            return;
        }

        if (!(time - _openSince < 1))
        {
            _openSince = time;
            _openFrom = _openLast = weight;
            _openStep = 0;
            _openCount = 0;
            return;
        }

        _openCount++;
        _openStep = Math.Max(_openStep, weight - _openLast);
        _openLast = weight;
        double gained = weight - _openFrom;
        double elapsed = (time - _openSince) * Thousand;
        bool isSlow = _openCount >= SlowReadings && gained > LeastGained && _openStep < LargestStep * gained
            && gained < WithinFactor * flow * elapsed && gained > flow * elapsed / WithinFactor;
        if (isSlow)
        {
            time = _openSince + elapsed;
            _factor = Thousand;
            _offset = clock - (time / Thousand);
            Unused = UnusedReadings.TimeJumped;
        }
    }

    private void Accept(double time, double weight, double pressure)
    {
        double gap = time - _time;
        if (_time >= 0)
        {
            _usual = double.IsNaN(_usual) ? gap : _usual + (0.2 * (Math.Min(gap, ManyTimesUsual * _usual) - _usual));
        }

        _time = time;
        _weight = Require.IsFinite(weight) ? weight : _weight;
        _pressure = Require.IsFinite(pressure) ? pressure : _pressure;
        _earlierCount = 0;
        _jumped = double.NaN;
        _jumps = 0;
    }

    private bool Earlier(double clock, out double time)
    {
        time = _time;
        Unused = UnusedReadings.TimeNotLater;
        _earlierCount = clock > _earlier ? _earlierCount + 1 : 1;
        _earlierFirst = _earlierCount == 1 ? clock : _earlierFirst;
        _earlier = clock;
        if (_earlierCount < ClockSetBack)
        {
            return false;
        }

        time = _time + Between + Math.Min(LongGap, (clock - _earlierFirst) * _factor);
        _offset = clock - (time / _factor);
        _time = time;
        _earlierCount = 0;
        _earlier = double.NaN;
        return true;
    }
}
