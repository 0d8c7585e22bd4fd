using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What was read while a job was done, in order of time. Immutable.</summary>
/// <remarks>
/// A log holds what instruments showed, right or wrong: only what cannot be a reading at all is refused. Whether it fits the job is what
/// <see cref="Check"/> says. CSV and JSON texts are read by <c>JobLogCsv</c> and <c>JobLogJson</c> in <c>Refrigerant.Recovery.Records</c>.
/// </remarks>
public sealed class JobLog : IEquatable<JobLog>
{
    /// <summary>Ten hours at 10 Hz, and some.</summary>
    internal const int MostReadings = 500_000;

    /// <summary>Longest time since the start, s: a week.</summary>
    internal const double LongestTime = 7 * 24 * 3600;

    /// <summary>Bounds of gauge pressures, Pa: the lowest leaves room for a gauge that reads low in a vacuum.</summary>
    internal const double LowestGauge = -200_000, HighestGauge = 1e8;

    /// <summary>Heaviest weight, kg: ten tank cars.</summary>
    internal const double HeaviestWeight = 1e6;

    /// <summary>Bounds of temperatures, K.</summary>
    internal const double Coldest = 150, Warmest = 400;

    private const double LastDigits = 1e-14;

    private JobLog(IReadOnlyList<JobReading> readings) => Readings = readings;

    /// <summary>The readings, at least one, each later than the one before.</summary>
    public IReadOnlyList<JobReading> Readings { get; }

    /// <summary>From the first reading to the last.</summary>
    public Duration Duration => Readings[Readings.Count - 1].Time - Readings[0].Time;

    /// <summary>A log of readings.</summary>
    /// <param name="readings">
    /// 1 to 500 000 readings, each later than the one before; times 0 to 7 days, gauge pressures −200 kPa to 100 MPa, weights 0 to 1e6 kg, temperatures 150 K to 400 K.
    /// </param>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    /// <exception cref="ArgumentException">No reading, or too many; the message names a reading that is not later than the one before, not finite, or out of range.</exception>
    public static JobLog FromReadings(IReadOnlyList<JobReading> readings)
    {
        JobLog log = FromPossible(Require.NotNull(readings, nameof(readings)));
        IReadOnlyList<JobReading> copy = log.Readings;
        for (int i = 0; i < copy.Count; i++)
        {
            foreach ((string member, string reason) in Faults(copy[i], i == 0 ? null : copy[i - 1]))
            {
                throw new ArgumentException(FormattableString.Invariant($"readings[{i}].{member}: {reason}"), nameof(readings));
            }
        }

        return log;
    }

    /// <summary>A log of readings in which <see cref="Faults"/> found nothing.</summary>
    internal static JobLog FromPossible(IReadOnlyList<JobReading> readings)
    {
        IReadOnlyList<JobReading> copy = Require.Copy(readings, nameof(readings));
        return copy.Count is > 0 and <= MostReadings
            ? new JobLog(copy)
            : throw new ArgumentException($"readings has {copy.Count} members; a log has 1 to {MostReadings}.", nameof(readings));
    }

    /// <summary>
    /// What in the log does not go with the job: readings that look like another unit, absolute for gauge pressures, net for gross weights; times
    /// without a reading; weights that jump. Empty where nothing was found, which proves nothing.
    /// </summary>
    /// <param name="job">The job that was logged, as planned.</param>
    /// <exception cref="ArgumentNullException"><paramref name="job"/> is null.</exception>
    /// <exception cref="Fluids.PropertyRangeException">The appliance's temperature is outside the range of the refrigerant's equation.</exception>
    public IReadOnlyList<Findings.Finding> Check(Planning.RecoveryJob job) => JobLogCheck.Of(this, Require.NotNull(job, nameof(job)));

    /// <summary>Whether both have the same readings.</summary>
    /// <param name="other">Another.</param>
    public bool Equals(JobLog? other) => other is not null && Readings.Equals(other.Readings);

    /// <summary>Whether two logs are the same.</summary>
    /// <param name="left">One, or null.</param>
    /// <param name="right">The other, or null.</param>
    public static bool operator ==(JobLog? left, JobLog? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether two logs differ.</summary>
    /// <param name="left">One, or null.</param>
    /// <param name="right">The other, or null.</param>
    public static bool operator !=(JobLog? left, JobLog? right) => !(left == right);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as JobLog);

    /// <inheritdoc/>
    public override int GetHashCode() => Readings.GetHashCode();

    /// <summary>Number of readings and the time they span, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Readings.Count} readings in {Duration.Minutes:F1} min");

    /// <summary>What makes a reading impossible, and in which member; none where nothing does.</summary>
    internal static IEnumerable<(string Member, string Reason)> Faults(JobReading reading, JobReading? previous)
    {
        double time = reading.Time.Seconds;
        if (Outside(time, 0, LongestTime, "s") is string wrong)
        {
            yield return (nameof(JobReading.Time), wrong);
        }
        else if (previous is not null && !(time > previous.Time.Seconds))
        {
            yield return (
                nameof(JobReading.Time),
                time < previous.Time.Seconds
                    ? $"{Require.Text(time)} s runs back; the reading before was taken at {Require.Text(previous.Time.Seconds)} s."
                    : $"{Require.Text(time)} s is the time of the reading before; each must be later.");
        }

        if (Outside(reading.SuctionGaugePressure?.Pascals, LowestGauge, HighestGauge, "Pa gauge") is string suction)
        {
            yield return (nameof(JobReading.SuctionGaugePressure), suction);
        }

        if (Outside(reading.GrossWeight?.Kilograms, 0, HeaviestWeight, "kg") is string gross)
        {
            yield return (nameof(JobReading.GrossWeight), gross);
        }

        if (Outside(reading.Ambient?.Kelvins, Coldest, Warmest, "K") is string ambient)
        {
            yield return (nameof(JobReading.Ambient), ambient);
        }

        if (Outside(reading.PipeTemperature?.Kelvins, Coldest, Warmest, "K") is string pipe)
        {
            yield return (nameof(JobReading.PipeTemperature), pipe);
        }

        if (Outside(reading.DischargeGaugePressure?.Pascals, LowestGauge, HighestGauge, "Pa gauge") is string discharge)
        {
            yield return (nameof(JobReading.DischargeGaugePressure), discharge);
        }
    }

    /// <summary>Sums of a conversion are off in their last digits.</summary>
    private static string? Outside(double? value, double low, double high, string unit) =>
        value is not double given || (given >= low - (LastDigits * Math.Abs(low)) && given <= high + (LastDigits * high))
        ? null
        : $"{Require.Text(given)} {unit}; it must be from {Require.Text(low)} to {Require.Text(high)} {unit}.";
}
