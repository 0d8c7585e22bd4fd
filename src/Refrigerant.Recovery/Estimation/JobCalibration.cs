using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using Refrigerant.Recovery.Estimation.Calibration;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// Machine, hoses and appliance as the log of a finished job tells them, for the next plan: each with a range, how much the log told, and what would
/// tell more. Immutable. Estimates: local codes and licensed practice govern.
/// </summary>
/// <remarks>
/// The reduced model of the appliance is fitted to gauge and scale by robust least squares with the job as told as prior; ranges come from the curvature,
/// a jackknife over stretches of the log, and what the model leaves out. Method, figures and how to log: docs/questions/log-a-job.md.
/// </remarks>
public sealed class JobCalibration
{
    private const int MostLogs = 20;

    internal JobCalibration(
        FittedValue<VolumeFlow> displacement,
        FittedValue<double> clearance,
        FittedValue<double> hose,
        IReadOnlyList<FittedAppliance> appliances,
        IReadOnlyList<RecoveryJob> jobs,
        double misfit,
        IReadOnlyList<Finding> findings)
    {
        Displacement = displacement;
        ClearanceRatio = clearance;
        HoseResistance = hose;
        Appliances = appliances;
        Jobs = jobs;
        Misfit = misfit;
        Findings = findings;
    }

    /// <summary>Displacement rate of the machine at the volumetric efficiency told: what it draws at pressure ratio one, as volume at its inlet.</summary>
    public FittedValue<VolumeFlow> Displacement { get; }

    /// <summary>Clearance ratio of the machine.</summary>
    public FittedValue<double> ClearanceRatio { get; }

    /// <summary>Resistance of the vapor hoses over the one that the hoses told should have; told is 1.</summary>
    public FittedValue<double> HoseResistance { get; }

    /// <summary>The appliances, one a log.</summary>
    public IReadOnlyList<FittedAppliance> Appliances { get; }

    /// <summary>
    /// The jobs with the best values in place of those told, to plan with: displacement, clearance, bores of the vapor hoses, charge, volume, heat and metal.
    /// What was not identified stays as told, and so does all of it where <see cref="Misfit"/> is above 1.
    /// </summary>
    public IReadOnlyList<RecoveryJob> Jobs { get; }

    /// <summary>How far the fitted model is from the readings, over what each is trusted to, root mean square; above 1 the log shows something else than the job told.</summary>
    public double Misfit { get; }

    /// <summary>What the log could not tell and what would, and what in it does not go with the job; heaviest first.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Fits one log.</summary>
    /// <param name="told">The job as it was planned.</param>
    /// <param name="log">Its log.</param>
    /// <param name="options">Tolerances and instruments; null for the defaults.</param>
    /// <param name="cancellation">Cancels the fit.</param>
    /// <exception cref="ArgumentNullException"><paramref name="told"/> or <paramref name="log"/> is null.</exception>
    /// <exception cref="ArgumentException">The log has fewer than 20 readings of pressure or of weight, or spans less than a minute.</exception>
    /// <exception cref="Fluids.PropertyRangeException">The appliance's temperature is outside the range of the refrigerant's equation.</exception>
    /// <exception cref="OperationCanceledException">The fit was cancelled.</exception>
    public static JobCalibration Fit(RecoveryJob told, JobLog log, CalibrationOptions? options = null, CancellationToken cancellation = default)
    {
        var logged = new LoggedJob(Require.NotNull(told, nameof(told)), Require.NotNull(log, nameof(log)));
        RequireEnough(log, nameof(log), nameof(log));
        return CalibrationReport.Of([logged], options ?? new CalibrationOptions(), cancellation);
    }

    /// <summary>Fits several logs of the same machine with the same hoses at once: what they share is told by all of them.</summary>
    /// <param name="jobs">1 to 20 jobs with their logs.</param>
    /// <param name="options">Tolerances and instruments; null for the defaults.</param>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    /// <exception cref="ArgumentException">
    /// No job or more than 20, machines that differ, or a log that has fewer than 20 readings of pressure or of weight, or spans less than a minute.
    /// </exception>
    /// <exception cref="Fluids.PropertyRangeException">An appliance's temperature is outside the range of the refrigerant's equation.</exception>
    public static JobCalibration Fit(IReadOnlyList<LoggedJob> jobs, CalibrationOptions? options) => Fit(jobs, options, CancellationToken.None);

    /// <summary>The same, which can be cancelled.</summary>
    /// <param name="jobs">1 to 20 jobs with their logs.</param>
    /// <param name="options">Tolerances and instruments; null for the defaults.</param>
    /// <param name="cancellation">Cancels the fit.</param>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    /// <exception cref="ArgumentException">
    /// No job or more than 20, machines that differ, or a log that has fewer than 20 readings of pressure or of weight, or spans less than a minute.
    /// </exception>
    /// <exception cref="Fluids.PropertyRangeException">An appliance's temperature is outside the range of the refrigerant's equation.</exception>
    /// <exception cref="OperationCanceledException">The fit was cancelled.</exception>
    public static JobCalibration Fit(IReadOnlyList<LoggedJob> jobs, CalibrationOptions? options, CancellationToken cancellation)
    {
        LoggedJob[] all = [.. Require.Copy(jobs, nameof(jobs))];
        if (all.Length is 0 or > MostLogs)
        {
            throw new ArgumentException($"jobs has {all.Length} members; 1 to {MostLogs} are fitted at once.", nameof(jobs));
        }

        for (int i = 0; i < all.Length; i++)
        {
            if (all[i].Job.Machine != all[0].Job.Machine)
            {
                throw new ArgumentException(FormattableString.Invariant($"jobs[{i}].Job.Machine is not that of jobs[0]; all logs must be of one machine."), nameof(jobs));
            }

            RequireEnough(all[i].Log, FormattableString.Invariant($"jobs[{i}].Log"), nameof(jobs));
        }

        return CalibrationReport.Of(all, options ?? new CalibrationOptions(), cancellation);
    }

    /// <summary>The machine in a line, culture-invariant.</summary>
    public override string ToString() => $"displacement {Displacement}, clearance {ClearanceRatio}, hoses × {HoseResistance}";

    private static void RequireEnough(JobLog log, string name, string parameter)
    {
        const int Fewest = 20;
        const double Shortest = 60;
        int pressures = log.Readings.Count(reading => reading.SuctionGaugePressure is not null);
        int weights = log.Readings.Count(reading => reading.GrossWeight is not null);
        if (pressures < Fewest || weights < Fewest || log.Duration.Seconds < Shortest)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"{name} has {pressures} readings of the suction gauge and {weights} of the scale in {log.Duration.Seconds:F0} s; a fit takes {Fewest} of each and {Shortest:F0} s."),
                parameter);
        }
    }
}
