using System;
using System.Diagnostics;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Estimation;

namespace Refrigerant.Recovery.Samples.Controller;

/// <summary>The loop: read, decide, estimate, act, ten times a second. Its log is reserved before it starts, so that a tick allocates nothing.</summary>
internal sealed class ControlLoop
{
    public const double Tick = 0.1;

    /// <summary>Ticks between two entries of the log: one minute.</summary>
    private const int LogEvery = 600;

    private readonly Plant _plant;
    private readonly RecoveryController _controller;
    private readonly RecoveryEstimator _estimator;
    private readonly double _tare;
    private readonly double _air;
    private readonly LogEntry[] _log = new LogEntry[256];
    private int _logged;
    private long _busy;
    private long _longest;

    public ControlLoop(Scenario scenario)
    {
        _plant = new Plant(scenario);
        _estimator = new RecoveryEstimator(scenario.Told, options: new MonitorOptions { Profile = EstimationProfile.Controller });
        _controller = new RecoveryController(
            _estimator.Level,
            CylinderFill.Limit(scenario.Told.Cylinders[0], scenario.Told.Appliance.Fluid).MaximumFill.Kilograms,
            scenario.Told.Machine.HighPressureCutout.Pascals);
        _tare = scenario.Told.Cylinders[0].TareWeight.Kilograms;
        _air = scenario.Told.Barometer.Pressure.Pascals;
    }

    public EndReason End => _controller.End;

    public int Ticks { get; private set; }

    /// <summary>Bytes allocated by the ticks after the first, which creates the tables of the refrigerant.</summary>
    public long Allocated { get; private set; }

    /// <summary>Mean time that deciding and estimating take in a tick.</summary>
    public TimeSpan Mean => Stopwatch.GetElapsedTime(0, _busy / Ticks);

    /// <summary>The longest of them.</summary>
    public TimeSpan Longest => Stopwatch.GetElapsedTime(0, _longest);

    public ReadOnlySpan<LogEntry> Log => _log.AsSpan(0, _logged);

    public void Run()
    {
        bool running = Step(running: true);
        _longest = 0;
        long before = GC.GetAllocatedBytesForCurrentThread();
        while (End == EndReason.None)
        {
            // On a real machine this waits for the next tick of a timer; simulated time need not.
            running = Step(running);
        }

        Allocated = GC.GetAllocatedBytesForCurrentThread() - before;
    }

    private bool Step(bool running)
    {
        Readings now = _plant.Step(running, Tick);
        long start = Stopwatch.GetTimestamp();
        bool next = _controller.Decide(now);
        _estimator.Add(new RawReading(now.Seconds)
        {
            SuctionGaugePressure = now.SuctionPascals - _air,
            DischargeGaugePressure = now.DischargePascals - _air,
            GrossWeight = now.CylinderKilograms + _tare,
            IsMachineRunning = running,
        });
        _ = _estimator.Work();
        _estimator.Read(out RawEstimate estimate);
        long took = Stopwatch.GetTimestamp() - start;
        _busy += took;
        _longest = Math.Max(_longest, took);
        if ((Ticks++ % LogEvery == 0 || End != EndReason.None) && _logged < _log.Length)
        {
            _log[_logged++] = new LogEntry(now, estimate, _plant.Left);
        }

        return next;
    }
}
