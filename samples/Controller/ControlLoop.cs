using System;

namespace Refrigerant.Recovery.Samples.Controller;

/// <summary>The loop: read, decide, act, ten times a second. Its log is reserved before it starts, so that a tick allocates nothing.</summary>
internal sealed class ControlLoop(Setup setup)
{
    public const double Tick = 0.1;

    /// <summary>Ticks between two entries of the log: one minute.</summary>
    private const int LogEvery = 600;

    private readonly Plant _plant = new(setup);
    private readonly RecoveryController _controller = setup.CreateController();
    private readonly Readings[] _log = new Readings[256];
    private int _logged;

    public EndReason End => _controller.End;

    public int Ticks { get; private set; }

    /// <summary>Bytes allocated by the ticks after the first, which creates the tables of the refrigerant.</summary>
    public long Allocated { get; private set; }

    public ReadOnlySpan<Readings> Log => _log.AsSpan(0, _logged);

    public void Run()
    {
        bool running = Step(running: true);
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
        bool next = _controller.Decide(now);
        if ((Ticks++ % LogEvery == 0 || End != EndReason.None) && _logged < _log.Length)
        {
            _log[_logged++] = now;
        }

        return next;
    }
}
