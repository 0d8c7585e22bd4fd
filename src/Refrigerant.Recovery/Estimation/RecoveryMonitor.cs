using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// Watches a job: what is left, how long still, what is wrong, from gauge, scale and clock. The job that was planned is where it begins, and each
/// reading narrows it down. For control loops see <see cref="RecoveryEstimator"/>. Not thread-safe.
/// </summary>
/// <remarks>
/// Until the last liquid is gone, gauge and scale say little of what is left: the range is as wide as what was told of the charge. The method, its
/// sources and how often its ranges hold: docs/questions/during-the-job.md.
/// </remarks>
public sealed class RecoveryMonitor
{
    /// <summary>Slices of work that an update does at most, besides those of the seconds since the last one.</summary>
    private const int Slices = 4;

    private const int MostSlices = 600;

    private readonly RecoveryEstimator _estimator;
    private readonly RecoveryJob _job;
    private double _time;
    private string? _unknown;
    private int _unknowns;

    private RecoveryMonitor(RecoveryJob job, RecoveryEstimator estimator)
    {
        _job = job;
        _estimator = estimator;
    }

    /// <summary>Absolute pressure that is to be reached.</summary>
    public Pressure Level => new(_estimator.Level, PressureUnit.Pascal);

    /// <summary>
    /// Begins to watch a job. One that no plan can be made of, since what was told contradicts itself (more charge than fits, say), is watched all the same: the readings show what is true.
    /// </summary>
    /// <param name="job">The job, as it was planned.</param>
    /// <param name="instruments">Gauge and scale; null for typical ones, with a gauge whose scale reaches what the refrigerant shows.</param>
    /// <param name="options">How well the job is known, the level, the profile; null for the defaults.</param>
    /// <exception cref="ArgumentNullException"><paramref name="job"/> is null.</exception>
    /// <exception cref="ArgumentException">No level can be found for the job.</exception>
    /// <example>
    /// <code>
    /// RecoveryMonitor monitor = RecoveryMonitor.Start(job);
    /// JobEstimate estimate = monitor.Update(new JobReading
    /// {
    ///     Time = Duration.Zero,
    ///     SuctionGaugePressure = Pressure.FromPoundsForcePerSquareInch(68),
    ///     GrossWeight = Mass.FromPounds(27.5),
    /// });
    /// Console.WriteLine(estimate.NotUsed); // None
    /// </code>
    /// </example>
    public static RecoveryMonitor Start(RecoveryJob job, Instruments? instruments = null, MonitorOptions? options = null) =>
        new(Require.NotNull(job, nameof(job)), new RecoveryEstimator(job, instruments, options));

    /// <summary>Takes in a reading; never throws for what it says.</summary>
    /// <param name="reading">The reading.</param>
    /// <exception cref="ArgumentNullException"><paramref name="reading"/> is null.</exception>
    public JobEstimate Update(JobReading reading)
    {
        var raw = RawReading.From(Require.NotNull(reading, nameof(reading)));
        raw.Cylinder = NumberOf(reading.Cylinder);
        _estimator.Add(in raw);
        _estimator.Read(out RawEstimate estimate);
        int slices = (int)Math.Min(MostSlices, Slices * (1 + Math.Max(0, estimate.Time - _time)));
        _time = estimate.Time;
        for (int i = 0; i < slices && _estimator.Work(); i++)
        {
            // Until the work that waits is done, or its share of it.
        }

        _estimator.Read(out estimate);
        return new JobEstimate(in estimate, ConditionsOf(in estimate), EstimateFindings.Of(_job, in estimate, _estimator.IsOilTold));
    }

    /// <summary>Number of a cylinder in the job's list, and from its end on of those that are not on it; negative where no label was told.</summary>
    private int NumberOf(string? label)
    {
        if (label is null)
        {
            return -1;
        }

        for (int i = 0; i < _job.Cylinders.Count; i++)
        {
            if (_job.Cylinders[i].Label == label)
            {
                return i;
            }
        }

        if (label != _unknown)
        {
            _unknown = label;
            _unknowns++;
        }

        return _job.Cylinders.Count + _unknowns;
    }

    private static JobCondition[] ConditionsOf(in RawEstimate estimate)
    {
        var conditions = new List<JobCondition>();
        for (JobCondition condition = JobConditions.First; condition <= JobConditions.Last; condition++)
        {
            if (estimate.Has(condition))
            {
                conditions.Add(condition);
            }
        }

        return [.. conditions];
    }

    /// <summary>The level, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{_job.Appliance.Fluid.Designation} to {Level.Kilopascals:G5} kPa absolute");
}
