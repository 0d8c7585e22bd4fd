using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>Blocks that wait until it is their filter's turn, merged into one a filter. Fixed memory.</summary>
internal sealed class WaitingBlocks
{
    /// <summary>s that blocks wait at most.</summary>
    private const double Longest = 2;

    private readonly EstimatorBlock[] _waiting;

    public WaitingBlocks(int filters) => _waiting = new EstimatorBlock[filters];

    /// <summary>What waits for a filter.</summary>
    public ref readonly EstimatorBlock this[int filter] => ref _waiting[filter];

    /// <summary>Whether what waits must be taken before a block, since the machine was switched between them.</summary>
    public bool IsOther(int filter, in EstimatorBlock block) => _waiting[filter].Duration > 0 && _waiting[filter].IsDrawing != block.IsDrawing;

    /// <summary>Whether what waits has waited long enough.</summary>
    public bool IsLong(int filter) => _waiting[filter].Duration >= Longest;

    /// <summary>Nothing waits for a filter any more.</summary>
    public void Clear(int filter) => _waiting[filter] = default;

    /// <summary>Nothing waits any more.</summary>
    public void Clear() => Array.Clear(_waiting, 0, _waiting.Length);

    /// <summary>Adds a block: durations and liquid add up, the gauge is averaged, the rest is the latest.</summary>
    public void Add(int filter, in EstimatorBlock block)
    {
        ref EstimatorBlock waiting = ref _waiting[filter];
        if (waiting.Duration == 0)
        {
            waiting = block;
            return;
        }

        double duration = waiting.Duration + block.Duration;
        waiting.Gauge = !Require.IsFinite(waiting.Gauge) ? block.Gauge
            : Require.IsFinite(block.Gauge) ? ((waiting.Gauge * waiting.Duration) + (block.Gauge * block.Duration)) / duration : waiting.Gauge;
        waiting.Delivered = Latest(waiting.Delivered, block.Delivered);
        waiting.PipeTemperature = Latest(waiting.PipeTemperature, block.PipeTemperature);
        waiting.CondensingTemperature = Latest(waiting.CondensingTemperature, block.CondensingTemperature);
        waiting.LiquidMoved += block.LiquidMoved;
        waiting.Passed += block.Passed;
        waiting.IsByItself |= block.IsByItself;
        waiting.AirTemperature = block.AirTemperature;
        waiting.Time = block.Time;
        waiting.Duration = duration;
    }

    private static double Latest(double before, double now) => Require.IsFinite(now) ? now : before;
}
