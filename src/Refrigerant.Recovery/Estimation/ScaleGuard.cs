using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>A scale that shows the same while refrigerant must flow. Fixed memory.</summary>
internal sealed class ScaleGuard
{
    private const int SameBlocks = 30;
    private const double SameTime = 60;

    /// <summary>kg, and steps of the scale, that should have flowed.</summary>
    private const double LeastFlowed = 0.1;

    private const double Steps = 10;

    private readonly double _threshold;
    private double _value = double.NaN;
    private double _since;
    private double _flowed;
    private double _unread;
    private int _same;

    public ScaleGuard(Instruments instruments) => _threshold = LeastFlowed + (Steps * instruments.Scale.ResolutionKilograms);

    /// <summary>Whether it is stuck.</summary>
    public bool IsStuck { get; private set; }

    /// <summary>Whether it shows another weight than before, or nothing should have come since it did.</summary>
    public bool HasMoved { get; private set; }

    /// <summary>What should have come since the scale was believed last, kg.</summary>
    public double Unseen => _unread + (IsStuck ? _flowed : 0);

    /// <summary>Looks at a block; what must not be believed is taken out of it.</summary>
    /// <param name="block">The block.</param>
    /// <param name="expectedFlow">kg/s.</param>
    public void Check(ref EstimatorBlock block, double expectedFlow)
    {
        double flowed = block.IsDrawing ? expectedFlow * block.Duration : 0;
        HasMoved = false;
        if (!Require.IsFinite(block.Delivered))
        {
            _unread += flowed;
            return;
        }

        _unread = IsStuck ? _unread : 0;
        if (block.Delivered != _value)
        {
            _value = block.Delivered;
            _since = block.Time;
            _flowed = 0;
            _same = 0;
            _unread = 0;
            IsStuck = false;
            HasMoved = true;
            return;
        }

        _same++;
        _flowed += flowed;
        HasMoved = _flowed == 0;
        IsStuck |= _same >= SameBlocks && block.Time - _since >= SameTime && _flowed > _threshold;
        if (IsStuck)
        {
            block.Delivered = double.NaN;
        }
    }
}
