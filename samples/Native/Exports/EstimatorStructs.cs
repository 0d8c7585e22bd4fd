using System.Runtime.InteropServices;
using Refrigerant.Recovery.Estimation;

namespace Refrigerant.Recovery.Samples.Native;

/// <summary>The header's <c>rr_reading</c>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal readonly struct Reading
{
    private readonly double _time;
    private readonly double _suctionGaugePressure;
    private readonly double _grossWeight;
    private readonly double _airTemperature;
    private readonly double _pipeTemperature;
    private readonly double _dischargeGaugePressure;
    private readonly int _machineStopped;
    private readonly int _valveShut;

    public RawReading ToRaw()
    {
        var raw = new RawReading(_time)
        {
            AirTemperature = _airTemperature,
            PipeTemperature = _pipeTemperature,
            DischargeGaugePressure = _dischargeGaugePressure,
            IsMachineRunning = _machineStopped == 0,
            IsValveOpen = _valveShut == 0,
        };

        // Set to NaN they would be there and broken.
        if (!double.IsNaN(_suctionGaugePressure))
        {
            raw.SuctionGaugePressure = _suctionGaugePressure;
        }

        if (!double.IsNaN(_grossWeight))
        {
            raw.GrossWeight = _grossWeight;
        }

        return raw;
    }
}

/// <summary>The header's <c>rr_range</c>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal readonly struct EstimatedRange(EstimateRange range)
{
    public readonly double Low = range.Low;
    public readonly double Best = range.Best;
    public readonly double High = range.High;
}

/// <summary>The header's <c>rr_estimate</c>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal readonly struct Estimate(in RawEstimate estimate)
{
    public readonly double Time = estimate.Time;
    public readonly EstimatedRange Remaining = new(estimate.Remaining);
    public readonly EstimatedRange TotalCharge = new(estimate.TotalCharge);
    public readonly EstimatedRange TimeToLevel = new(estimate.TimeToLevel);
    public readonly EstimatedRange FinalGrossWeight = new(estimate.FinalGrossWeight);
    public readonly double LevelReachedProbability = estimate.LevelReachedProbability;
    public readonly double CylinderLimitFirst = estimate.CylinderLimitFirst;
    public readonly double VaporOnly = estimate.VaporOnly;
    public readonly int HasTimeToLevel = estimate.HasTimeToLevel ? 1 : 0;
    public readonly int Conditions = ConditionsOf(estimate);
    public readonly int NotUsed = (int)estimate.NotUsed;
    public readonly int Reserved = 0;

    private static int ConditionsOf(in RawEstimate estimate)
    {
        int bits = 0;
        for (int condition = 0; condition <= (int)JobCondition.StandingPressureInconsistent; condition++)
        {
            bits |= estimate.Has((JobCondition)condition) ? 1 << condition : 0;
        }

        return bits;
    }
}
