using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json.Serialization;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Estimation.Calibration;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Records;

/// <summary>How a job went by its log, beside how it was planned. Immutable.</summary>
[JsonConverter(typeof(DocumentJsonConverter<LoggedEntry>))]
public sealed record LoggedEntry
{
    /// <summary>Points of the course, at most.</summary>
    private const int MostPoints = 121;

    /// <summary>Number of readings in the log.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than one.</exception>
    [JsonPropertyName("readings")]
    public required int Readings { get; init => field = (int)Require.InRange(value, 1, JobLog.MostReadings, string.Empty, nameof(Readings)); }

    /// <summary>From the first reading to the last, s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("durationSeconds")]
    public required double DurationSeconds { get; init => field = Require.NotNegative(value, "s", nameof(DurationSeconds)); }

    /// <summary>How long the machine ran by the log, s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("machineSeconds")]
    public required double MachineSeconds { get; init => field = Require.NotNegative(value, "s", nameof(MachineSeconds)); }

    /// <summary>How long it was planned to run for push-pull and vapor recovery, s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    [JsonPropertyName("plannedMachineSeconds")]
    public required double PlannedMachineSeconds { get; init => field = Require.NotNegative(value, "s", nameof(PlannedMachineSeconds)); }

    /// <summary>The course, thinned.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    [JsonPropertyName("course")]
    public required IReadOnlyList<LoggedPoint> Course { get; init => field = Require.Copy(value, nameof(Course)); }

    /// <summary>Readings and times.</summary>
    public override string ToString() => FormattableString.Invariant($"{Readings} readings in {DurationSeconds:F0} s; the machine ran {MachineSeconds:F0} s, planned {PlannedMachineSeconds:F0} s");

    internal static LoggedEntry From(RecoveryPlan plan, JobLog log)
    {
        IReadOnlyList<JobReading> readings = log.Readings;
        double first = readings[0].Time.Seconds;
        double running = 0;
        for (int i = 1; i < readings.Count; i++)
        {
            running += readings[i - 1].MachineRunning ? readings[i].Time.Seconds - readings[i - 1].Time.Seconds : 0;
        }

        PlanPoint[] planned = [.. plan.Course().Where(point => point.Stage.Kind != StageKind.HoseSweep)];
        double[] gained = ScaleCourse.Of(log, plan.Job).Delivered;
        double air = plan.Job.Barometer.Pressure.Pascals;
        double charge = plan.Job.Appliance.Charge.Kilograms;
        var course = new List<LoggedPoint>();
        double spacing = log.Duration.Seconds / (MostPoints - 1);
        double next = 0;
        for (int i = 0; i < readings.Count; i++)
        {
            double time = readings[i].Time.Seconds - first;
            if (time < next - 1e-9 && i < readings.Count - 1)
            {
                continue;
            }

            next = (Math.Floor((time + 1e-9) / Math.Max(1e-9, spacing)) + 1) * spacing;
            course.Add(new LoggedPoint
            {
                TimeSeconds = Plain.Number(time),
                MeasuredSuctionKilopascals = readings[i].SuctionGaugePressure is Pressure gauge ? Plain.Number((air + gauge.Pascals) / 1e3) : null,
                PlannedSuctionKilopascals = At(planned, time, point => point.Point.SuctionPressure.Kilopascals),
                MeasuredRecoveredKilograms = double.IsNaN(gained[i]) ? null : Plain.Number(gained[i]),
                PlannedRecoveredKilograms = At(planned, time, point => charge - point.Point.ApplianceMass.Kilograms),
            });
        }

        return new LoggedEntry
        {
            Readings = readings.Count,
            DurationSeconds = Plain.Seconds(log.Duration),
            MachineSeconds = Plain.Number(running),
            PlannedMachineSeconds = Plain.Number(plan.Stages.Where(stage => stage.Kind is StageKind.PushPull or StageKind.VaporRecovery).Sum(stage => stage.Duration.Seconds)),
            Course = course,
        };
    }

    /// <summary>A planned value at a time since refrigerant is first taken out; null after the end.</summary>
    private static double? At(PlanPoint[] planned, double time, Func<PlanPoint, double> value)
    {
        if (planned.Length == 0)
        {
            return null;
        }

        double at = time + planned[0].Time.Seconds;
        int after = Array.FindIndex(planned, point => point.Time.Seconds >= at);
        if (after < 0)
        {
            return null;
        }

        double high = value(planned[after]);
        if (after == 0)
        {
            return Plain.Number(high);
        }

        double span = planned[after].Time.Seconds - planned[after - 1].Time.Seconds;
        double share = span > 0 ? (at - planned[after - 1].Time.Seconds) / span : 1;
        double low = value(planned[after - 1]);
        return Plain.Number(low + (share * (high - low)));
    }
}
