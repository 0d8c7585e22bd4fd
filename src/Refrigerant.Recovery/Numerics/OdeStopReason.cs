namespace Refrigerant.Recovery.Numerics;

/// <summary>Why an integration stopped.</summary>
internal enum OdeStopReason
{
    /// <summary>The end time was reached.</summary>
    EndTime = 0,

    /// <summary>An event stopped it.</summary>
    Event,

    /// <summary>The number of steps reached its bound.</summary>
    StepLimit,

    /// <summary>No step, however short, led to a valid state: the system reached the edge of its range.</summary>
    InvalidState,
}
