using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// From weights on the scale to what has left the appliance: through pulling hoses, a new zero, another cylinder, and liquid that moves faster
/// than the machine draws vapor. Fixed memory.
/// </summary>
internal sealed class ScaleTracker
{
    /// <summary>kg that a reading may be off the last one besides what flows: a person's touch is more.</summary>
    private const double Touch = 0.07;

    /// <summary>kg/s that the flow may be off the expected one, besides as much again.</summary>
    private const double LeastFlow = 0.01;

    /// <summary>Readings and seconds at the new weight that settle a jump.</summary>
    private const int Settling = 3;

    private const double SettlingTime = 2;

    /// <summary>
    /// A rate is one of liquid where it is this many times what the machine can draw of vapor, and beyond that by kg/s and by steps of the scale a second, smoothed over some seconds; a machine draws liquid
    /// at half the pressure of vapor, four times and more what vapor of that pressure weighs.
    /// </summary>
    private const double LiquidFactor = 2.5;

    private const double LiquidAbove = 0.006;
    private const double LiquidSteps = 0.3;
    private const double LiquidTime = 5;

    /// <summary>s that such a rate must last, and kg that must have come by it: more than a hose that pulls.</summary>
    private const double LiquidLasts = 3;

    private const double LiquidMass = 0.2;

    /// <summary>kg between a weight and the one it is compared with.</summary>
    private const double SameWeight = 0.3;

    /// <summary>A drop of this many kg that is no new zero is another cylinder.</summary>
    public const double OtherCylinder = 1;

    /// <summary>kg, and share of it, that the first weight may be off the one that was told.</summary>
    private const double FirstOff = 1;

    private const double FirstShare = 0.05;

    /// <summary>A first weight that is the told one times this, or divided by it, within this share, is in another unit: lb in a kg.</summary>
    private const double OtherUnit = 2.20462;

    private const double UnitWithin = 0.02;

    /// <summary>kg that should have come from which it is held against what the scale has gained, and the gain over that which halves the way between one unit and the other: √2.2.</summary>
    private const double UnitTellsFrom = 0.5;

    private const double HalfUnit = 1.48;

    /// <summary>Most kg that a scale under a cylinder of this trade shows.</summary>
    private const double Heaviest = 1e5;

    private readonly double _resolution;
    private readonly double[] _gross;
    private readonly double[] _tare;
    private readonly double[] _limit;
    private readonly FallingWeight _falling = new();
    private double _zero = double.NaN;
    private double _last;
    private double _lastTime;
    private double _pending;
    private double _pendingSince;
    private int _pendingCount;
    private double _beyond;
    private double _beyondMass;
    private double _fastSince = double.NaN;
    private double _slowSince = double.NaN;
    private double _shift;
    private double _evacuated = double.NaN;
    private double _first;
    private double _toCome;
    private bool _isUnitSure;

    public ScaleTracker(RecoveryJob job, Instruments instruments)
    {
        _resolution = instruments.Scale.ResolutionKilograms;
        IReadOnlyList<RecoveryCylinder> cylinders = job.Cylinders;
        _gross = new double[cylinders.Count];
        _tare = new double[cylinders.Count];
        _limit = new double[cylinders.Count];
        for (int i = 0; i < cylinders.Count; i++)
        {
            _gross[i] = cylinders[i].GrossWeight.Kilograms;
            _tare[i] = cylinders[i].TareWeight.Kilograms;
            _limit[i] = Limit(cylinders[i], job.Appliance.Fluid);
        }

        Gross = _gross.Length > 0 ? _gross[0] : 0;
    }

    /// <summary>The last weight that was used, kg; before there is one, what the first cylinder should weigh.</summary>
    public double Gross { get; private set; }

    /// <summary>Number of the cylinder on the scale.</summary>
    public int Cylinder { get; private set; }

    /// <summary>Whether liquid is being moved.</summary>
    public bool IsLiquid { get; private set; }

    /// <summary>Whether more comes than vapor can, for too short a time yet to call it liquid.</summary>
    public bool IsDoubtful => !IsLiquid && !double.IsNaN(_fastSince);

    /// <summary>Whether the cylinder loses weight.</summary>
    public bool IsFalling => _falling.IsFalling;

    /// <summary>What the last jump was taken for, and when.</summary>
    public ScaleEvent Event { get; private set; }

    public double EventTime { get; private set; } = double.NegativeInfinity;

    /// <summary>Whether the first weight was that of the content alone.</summary>
    public bool IsNet { get; private set; }

    /// <summary>Whether the first weight was the told one in another unit, so that none is used, as long as what the scale gains does not say otherwise.</summary>
    public bool IsOtherUnit { get; private set; }

    /// <summary>What the scale shows where that may be a cylinder with more in it than was told as well as another unit, kg; else nothing.</summary>
    public double Doubtful { get; private set; }

    /// <summary>Whether the cylinder on the scale did not weigh at first what was told.</summary>
    public bool IsUnlikeTold { get; private set; }

    /// <summary>Whether the cylinder on the scale is not one of the job's, so that its limit is not known.</summary>
    public bool IsUnknown => _limit.Length > 0 && Cylinder >= _limit.Length;

    /// <summary>Weight on the scale at which the cylinder is at its limit, kg; infinite where none is known.</summary>
    public double LimitOnScale => Cylinder < _limit.Length ? _limit[Cylinder] + _shift : double.PositiveInfinity;

    /// <summary>kg/s beyond what vapor can be that are liquid.</summary>
    private double LeastBeyond => LiquidAbove + (LiquidSteps * _resolution);

    /// <summary>What the cylinder on the scale holds, kg: what was told, and what the scale has gained since it stands there; not a number where that is not known.</summary>
    public double Content => Gross - _evacuated;

    /// <summary>Whether a weight can be one.</summary>
    public static bool IsPossible(double gross) => gross > -Heaviest && gross < Heaviest;

    /// <summary>Takes in a weight.</summary>
    /// <param name="gross">kg, possible.</param>
    /// <param name="time">s.</param>
    /// <param name="expectedFlow">Vapor that is expected to flow, kg/s.</param>
    /// <param name="mostVapor">Vapor that the machine can draw at the pressure at its inlet, kg/s.</param>
    /// <param name="cylinder">Number of the cylinder on the scale where it was told, else negative.</param>
    /// <param name="delivered">What has left the appliance, kg.</param>
    /// <returns>Whether the weight is used; false where it jumped and has not settled.</returns>
    public bool Add(double gross, double time, double expectedFlow, double mostVapor, int cylinder, out double delivered)
    {
        // All that are none of the job's are one.
        cylinder = Math.Min(cylinder, _gross.Length);
        if (double.IsNaN(_zero))
        {
            Cylinder = Math.Max(0, cylinder);
            First(gross, time);
        }

        if (IsOtherUnit)
        {
            Unit(gross, time, expectedFlow);
        }

        if (IsOtherUnit)
        {
            delivered = double.NaN;
            return false;
        }

        if (cylinder >= 0 && cylinder != Cylinder)
        {
            Settle(gross, time, expectedFlow);
            Event = ScaleEvent.CylinderChanged;
            Cylinder = cylinder;
            Shift(gross);
            _falling.Restart();
        }

        delivered = gross - _zero;
        _falling.Update(gross, time);
        if (IsFalling)
        {
            Accept(delivered, time, mostVapor);
            return true;
        }

        double elapsed = Math.Max(0, time - _lastTime);
        double allowed = Touch + (2 * _resolution) + (elapsed * (expectedFlow + LeastFlow));
        if (IsLiquid)
        {
            allowed += 2 * elapsed;
        }

        // Between readings further apart what the machine can draw at the pressure at its inlet is no jump either, whatever is thought of it: it may run again.
        bool isDrawn = elapsed > SettlingTime && delivered >= _last && delivered - _last <= allowed + (elapsed * mostVapor);
        if (isDrawn || Math.Abs(delivered - _last - (elapsed * expectedFlow)) <= allowed)
        {
            Accept(delivered, time, mostVapor);
            return true;
        }

        if (_pendingCount > 0 && Math.Abs(gross - _pending) <= allowed + (2 * Math.Max(0, time - _pendingSince)))
        {
            _pendingCount++;
        }
        else
        {
            _pendingCount = 1;
            _pending = gross;
            _pendingSince = time;
        }

        if (_pendingCount < Settling || time - _pendingSince < SettlingTime)
        {
            return false;
        }

        double rising = (gross - _pending) / (time - _pendingSince);
        if (delivered > _last && rising > (LiquidFactor * mostVapor) + LeastBeyond)
        {
            IsLiquid = true;
            _slowSince = double.NaN;
        }
        else
        {
            Settle(gross, time, expectedFlow);
            delivered = gross - _zero;
        }

        Accept(delivered, time, mostVapor);
        return true;
    }

    private static double Limit(RecoveryCylinder cylinder, Fluid fluid)
    {
        try
        {
            return CylinderFill.Limit(cylinder, fluid).MaximumGrossWeight.Kilograms;
        }
        catch (ArgumentException)
        {
            return double.PositiveInfinity;
        }
    }

    /// <summary>
    /// A first weight that is the told one in another unit may be a cylinder with another content as well. What the scale gains tells: in the other unit it is 2.2 times what comes, or 2.2 times less.
    /// </summary>
    private void Unit(double gross, double time, double expectedFlow)
    {
        _toCome += expectedFlow * Math.Max(0, time - _lastTime);
        _lastTime = time;
        if (_isUnitSure)
        {
            return;
        }

        Doubtful = gross;
        if (_toCome < UnitTellsFrom)
        {
            return;
        }

        bool isHeavier = Cylinder < _gross.Length && _first > _gross[Cylinder];
        double ratio = (gross - _first) / _toCome;
        _isUnitSure = true;
        Doubtful = 0;
        IsOtherUnit = isHeavier ? ratio > HalfUnit : ratio < 1 / HalfUnit;
        if (!IsOtherUnit)
        {
            Shift(_first);
            _last = gross - _zero;
            Gross = gross;
        }
    }

    private void First(double gross, double time)
    {
        _zero = _first = gross;
        _lastTime = time;
        if (Cylinder < _gross.Length)
        {
            double content = _gross[Cylinder] - _tare[Cylinder];
            double off = Math.Abs(gross - content);
            double factor = gross / _gross[Cylinder];
            IsNet = off < Math.Abs(gross - _gross[Cylinder]) && off < 0.25 * _tare[Cylinder];
            bool isUnit = Math.Abs((factor / OtherUnit) - 1) < UnitWithin || Math.Abs((factor * OtherUnit) - 1) < UnitWithin;
            IsOtherUnit = isUnit && !IsNet && Math.Abs(gross - _gross[Cylinder]) > FirstOff;
        }

        Shift(gross);
    }

    /// <summary>
    /// What the scale shows beyond the cylinder's weight: the tare where weights are net, and where less is shown than the cylinder weighs empty, all that is missing: its limit must not be
    /// overlooked. A cylinder with more or less in it than was told has the limit that it has.
    /// </summary>
    private void Shift(double gross)
    {
        _shift = 0;
        _evacuated = double.NaN;
        IsUnlikeTold = false;
        if (Cylinder >= _gross.Length)
        {
            return;
        }

        _evacuated = IsOtherUnit ? double.NaN : gross - (_gross[Cylinder] - _tare[Cylinder]);

        if (IsNet)
        {
            _shift = -_tare[Cylinder];
            return;
        }

        double off = gross - _gross[Cylinder];
        IsUnlikeTold = Math.Abs(off) > FirstOff + (FirstShare * _gross[Cylinder]);
        _shift = gross < _tare[Cylinder] - FirstOff ? off : 0;
        _evacuated = IsUnlikeTold && !IsOtherUnit ? _tare[Cylinder] + _shift : _evacuated;
    }

    private void Accept(double delivered, double time, double mostVapor)
    {
        double elapsed = time - _lastTime;
        if (elapsed > 0)
        {
            // Both smoothed alike, or the scale's rate would lag behind a pressure that drops.
            double forget = Math.Min(1, elapsed / LiquidTime);
            double beyond = delivered - _last - (elapsed * LiquidFactor * mostVapor);
            _beyond += forget * ((beyond / elapsed) - _beyond);
            bool fast = _beyond > LeastBeyond;
            _beyondMass = fast ? _beyondMass + beyond : 0;
            _fastSince = fast ? (double.IsNaN(_fastSince) ? time : _fastSince) : double.NaN;
            _slowSince = fast ? double.NaN : (double.IsNaN(_slowSince) ? time : _slowSince);
            if (time - _fastSince >= LiquidLasts && _beyondMass > LiquidMass)
            {
                IsLiquid = true;
            }
            else if (time - _slowSince >= LiquidTime)
            {
                IsLiquid = false;
            }
        }

        Gross = _zero + delivered;
        _last = delivered;
        _lastTime = time;
        _pendingCount = 0;
    }

    /// <summary>A jump that stays: delivered goes on as expected, the rest is the scale's.</summary>
    private void Settle(double gross, double time, double expectedFlow)
    {
        double before = _zero + _last;
        double expected = _last + (expectedFlow * (time - _lastTime));
        double jump = gross - _zero - expected;
        _zero += jump;
        Event = Classify(gross, before, jump);
        EventTime = time;
        if (Event == ScaleEvent.CylinderChanged)
        {
            // The next cylinder on the list, or one that is not on it.
            Cylinder++;
            Shift(gross);
        }
        else if (Event == ScaleEvent.TareChanged)
        {
            _shift += jump;
        }

        if (Event != ScaleEvent.CylinderChanged)
        {
            _evacuated += jump;
        }
    }

    private ScaleEvent Classify(double gross, double before, double jump)
    {
        double tare = Cylinder < _tare.Length ? _tare[Cylinder] : double.NaN;
        if (Math.Abs(gross) < SameWeight || Math.Abs(Math.Abs(jump) - tare) < SameWeight)
        {
            return ScaleEvent.TareChanged;
        }

        bool isNext = Cylinder + 1 < _gross.Length && Math.Abs(gross - _gross[Cylinder + 1]) < OtherCylinder;
        return isNext || jump < -Math.Max(OtherCylinder, 0.02 * before) ? ScaleEvent.CylinderChanged : ScaleEvent.Disturbed;
    }
}
