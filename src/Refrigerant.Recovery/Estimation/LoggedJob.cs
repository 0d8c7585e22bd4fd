using System;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Estimation;

/// <summary>A job as it was planned, and the log of how it went. Immutable.</summary>
public sealed record LoggedJob
{
    /// <summary>A job and its log.</summary>
    /// <param name="job">The job as told: what was planned with.</param>
    /// <param name="log">What was read.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public LoggedJob(RecoveryJob job, JobLog log)
    {
        Job = Require.NotNull(job, nameof(job));
        Log = Require.NotNull(log, nameof(log));
    }

    /// <summary>The job as told.</summary>
    public RecoveryJob Job { get; }

    /// <summary>What was read.</summary>
    public JobLog Log { get; }

    /// <summary>Refrigerant and log, culture-invariant.</summary>
    public override string ToString() => $"{Job.Appliance.Fluid.Designation}, {Log}";
}
