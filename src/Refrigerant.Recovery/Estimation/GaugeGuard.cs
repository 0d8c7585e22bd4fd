using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// Whether the gauge can be believed at all: at the start against the saturation pressure at the temperature told, later against what should have
/// changed while it shows the same. Fixed memory.
/// </summary>
internal sealed class GaugeGuard
{
    /// <summary>Blocks at the start that are compared, and how many of them decide: while the machine fills its hoses a few are off.</summary>
    private const int FirstBlocks = 15;

    private const int Deciding = 8;

    /// <summary>Blocks out of the gauge's range in a row after which what comes within it is not believed either.</summary>
    private const int OutBlocks = 3;

    /// <summary>K that the refrigerant may be colder or warmer than told, at the start.</summary>
    private const double Colder = 8;

    private const double Warmer = 15;

    /// <summary>What the hose may leave of the pressure beyond what it is told to.</summary>
    private const double LeastOfPressure = 0.6;

    private const double MostOfPressure = 1.15;

    /// <summary>kPa in a psi (NIST SP 811, B.8), share of what is expected below which another unit is thought of, and how near its reading in that must come.</summary>
    public const double KilopascalsPerPsi = 6.894757;

    private const double FarTooLittle = 0.5;
    private const double UnitFits = 0.75;

    /// <summary>Share of the charge that has left from which no pressure is too low: what boils off cools.</summary>
    private const double CoolsOver = 0.25;

    /// <summary>
    /// Agreement with the estimate, as a share of the pressure, for this many blocks, restores belief; where the reading came to it little by little only while the
    /// pressure changes by this factor: sooner or later every pressure passes the one that a wrong unit shows.
    /// </summary>
    private const double Agreement = 0.15;

    private const int Restoring = 30;
    private const double Moved = 1.3;

    /// <summary>A reading that changes by this factor from one block to the next was set right by somebody.</summary>
    private const double SetRight = 1.5;

    /// <summary>Blocks with the same reading, s, and share of the charge that leaves meanwhile, from which a gauge counts as stuck.</summary>
    private const int SameBlocks = 30;

    private const double SameTime = 120;
    private const double SameShare = 0.1;

    private readonly ReducedModel _model;
    private readonly EstimatorPrior _prior;
    private int _seen;
    private int _off;
    private int _agrees;
    private int _out;
    private double _before = double.NaN;
    private double _agreedFrom;
    private bool _isSetRight;
    private double _value = double.NaN;
    private double _since;
    private double _deliveredThen;
    private int _same;

    public GaugeGuard(ReducedModel model, EstimatorPrior prior)
    {
        _model = model;
        _prior = prior;
    }

    /// <summary>Whether the gauge shows what the refrigerant cannot.</summary>
    public bool IsInconsistent { get; private set; }

    /// <summary>Whether it showed at the start what the refrigerant cannot, in too few blocks yet to say so.</summary>
    public bool IsDoubted => _off > 0 && _seen < FirstBlocks;

    /// <summary>Whether the gauge shows the same while the pressure must fall.</summary>
    public bool IsStuck { get; private set; }

    /// <summary>Looks at a block; what must not be believed is taken out of it.</summary>
    /// <param name="block">The block.</param>
    /// <param name="isOutOfRange">Whether a reading in it was beyond what the gauge can show.</param>
    /// <param name="mean">The best estimate.</param>
    /// <param name="phase">What that takes for granted.</param>
    public void Check(ref EstimatorBlock block, bool isOutOfRange, in SigmaPoint mean, AssumedPhase phase)
    {
        _out = isOutOfRange ? _out + 1 : 0;
        if (_out >= OutBlocks)
        {
            IsInconsistent = true;
            _seen = FirstBlocks;
            _agrees = 0;
        }

        if (!Require.IsFinite(block.Gauge))
        {
            return;
        }

        Stuck(in block, in mean);
        bool isDoubted = Consistency(in block, in mean, phase);
        if (isDoubted || IsInconsistent || IsStuck)
        {
            block.Gauge = double.NaN;
        }
    }

    /// <summary>Compares; true where the reading is off, be it one of too few to say so.</summary>
    private bool Consistency(in EstimatorBlock block, in SigmaPoint mean, AssumedPhase phase)
    {
        double absolute = block.Gauge + _prior.Atmosphere;
        var inputs = new ReducedInputs(block.AirTemperature, block.IsDrawing, phase);
        _model.Evaluate(in mean.State, in mean.Parameters, in inputs, out ReducedOutput output);
        bool isOff = false;
        if (_seen < FirstBlocks)
        {
            double told = _prior.Mean[StateIndex.Temperature];
            double share = output.SuctionPressure / output.Pressure;
            double spread = 3 * _prior.Sigma[StateIndex.GaugeBias];
            double warm = Math.Max(0, 1 - (mean.State.Delivered / (CoolsOver * mean.Parameters.Charge)));
            double least = (LeastOfPressure * warm * share * _model.Table.DewPressure(told - Colder)) - spread;
            double most = (MostOfPressure * _model.Table.BubblePressure(told + Warmer)) + spread;
            isOff = absolute < least || absolute > most || IsOtherUnit(block.Gauge, in output);
            _off += isOff ? 1 : 0;
            _seen++;
            IsInconsistent = _off >= Deciding;
        }
        else if (IsInconsistent)
        {
            IsInconsistent = !IsRestored(absolute, output.SuctionPressure);
        }

        _before = absolute;
        return isOff;
    }

    /// <summary>Whether a gauge that shows too little by far shows in psi what is expected in kPa: between what it should show behind the hose and what it would before it.</summary>
    private bool IsOtherUnit(double shown, in ReducedOutput expected)
    {
        double behind = expected.SuctionPressure - _prior.Atmosphere;
        double before = expected.Pressure - _prior.Atmosphere;
        return shown + (2 * _prior.Sigma[StateIndex.GaugeBias]) < FarTooLittle * behind && shown * KilopascalsPerPsi > UnitFits * behind && shown * KilopascalsPerPsi < before / UnitFits;
    }

    private bool IsRestored(double shown, double expected)
    {
        if (Math.Abs(shown - expected) > Agreement * expected)
        {
            _agrees = 0;
            return false;
        }

        if (_agrees == 0)
        {
            _agreedFrom = expected;
            _isSetRight = Factor(shown, _before) > SetRight;
        }

        _agrees++;
        return _agrees >= Restoring && (_isSetRight || Factor(expected, _agreedFrom) > Moved);
    }

    private static double Factor(double one, double other) => Math.Max(one, other) / Math.Max(1, Math.Min(one, other));

    private void Stuck(in EstimatorBlock block, in SigmaPoint mean)
    {
        if (block.Gauge != _value || !block.IsDrawing)
        {
            _value = block.Gauge;
            _since = block.Time;
            _deliveredThen = mean.State.Delivered;
            _same = 0;
            IsStuck = false;
            return;
        }

        _same++;
        double gone = (mean.State.Delivered - _deliveredThen) / mean.Parameters.Charge;
        IsStuck |= _same >= SameBlocks && block.Time - _since >= SameTime && gone > SameShare;
    }
}
