namespace Refrigerant.Recovery.Numerics;

/// <summary>How an integration ended.</summary>
internal readonly struct OdeOutcome
{
    public OdeOutcome(OdeStopReason reason, double time, int eventIndex, int steps, int rejectedSteps, int evaluations)
    {
        Reason = reason;
        Time = time;
        EventIndex = eventIndex;
        Steps = steps;
        RejectedSteps = rejectedSteps;
        Evaluations = evaluations;
    }

    public OdeStopReason Reason { get; }

    public double Time { get; }

    /// <summary>The event that stopped it, or -1.</summary>
    public int EventIndex { get; }

    public int Steps { get; }

    public int RejectedSteps { get; }

    /// <summary>Evaluations of f, failed ones included.</summary>
    public int Evaluations { get; }
}
