using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation.Calibration;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Estimation;

/// <summary>Looks for what in a log does not go with the job.</summary>
internal static class JobLogCheck
{
    /// <summary>K by which the appliance may be warmer or colder than told.</summary>
    private const double Tolerance = 8;

    /// <summary>Share of its pressure that an appliance may lose in hoses before the gauge.</summary>
    private const double LostInHoses = 0.5;

    /// <summary>s at the start in which the highest pressure is looked for.</summary>
    private const double Start = 30;

    private const double ShortestGap = 300;
    private const double GapOverUsual = 20;
    private const double WeightTolerance = 0.5;
    private const double MostOverCharge = 1.3;
    private const string Source = "comparison of the log with the job as told";

    private static readonly (double Factor, string Means)[] Units =
    [
        (6.894757, "psi"), (1 / 6.894757, "kPa, entered as psi"), (100, "bar"), (0.01, "kPa, entered as bar"), (1000, "MPa"), (3.386389, "inHg"),
    ];

    /// <summary>The findings, in order of time.</summary>
    public static IReadOnlyList<Finding> Of(JobLog log, RecoveryJob job)
    {
        var found = new List<Finding>();
        found.AddRange(Pressures(log, job));
        found.AddRange(Weights(log, job));
        found.AddRange(Gaps(log));
        return found;
    }

    private static IEnumerable<Finding> Pressures(JobLog log, RecoveryJob job)
    {
        double first = log.Readings[0].Time.Seconds;
        double[] early = [.. log.Readings.Where(reading => reading.Time.Seconds <= first + Start && reading.ValveOpen && reading.SuctionGaugePressure is not null)
            .Select(reading => reading.SuctionGaugePressure!.Value.Pascals)];
        double air = job.Barometer.Pressure.Pascals;
        if (early.Length == 0)
        {
            yield break;
        }

        PropertyModel model = job.Appliance.Fluid.Model;
        double kelvins = job.Appliance.Temperature.Kelvins;
        double high = model.SaturationAtTemperature(Math.Min(kelvins + Tolerance, model.Range.MaximumSaturationTemperature)).Bubble.Pressure - air;
        double low = (LostInHoses * model.SaturationAtTemperature(Math.Max(kelvins - Tolerance, model.Range.MinimumTemperature)).Dew.Pressure) - air;
        double shown = early.Max();
        string text = FormattableString.Invariant($"The suction gauge begins at {shown / 1e3:F0} kPa; {job.Appliance.Fluid.Designation} at {kelvins - 273.15:F0} °C shows {low / 1e3:F0} to {high / 1e3:F0} kPa there");
        if (shown >= low && shown <= high)
        {
            double least = log.Readings.Min(reading => reading.SuctionGaugePressure?.Pascals ?? double.PositiveInfinity);
            double level = Rules.EvacuationRequirement.For(job.Appliance.Fluid, job.Appliance.Charge, job.Evacuation).RequiredPressure.Pascals;
            if (level < air && least > 0 && Math.Abs(least - level) < Math.Abs(least + air - level) && least < 1.3 * level)
            {
                yield return Warning(FormattableString.Invariant($"The suction gauge never shows a vacuum and ends at {least / 1e3:F0} kPa, which is near the level of {level / 1e3:F0} kPa absolute: is the pressure absolute? A log holds gauge pressure."));
            }
        }
        else if (shown - air >= low && shown - air <= high && shown > high)
        {
            yield return Warning(text + ". Less the air it fits: is the pressure absolute? A log holds gauge pressure.");
        }
        else if (Units.FirstOrDefault(unit => shown * unit.Factor >= low && shown * unit.Factor <= high) is (not 0, string means))
        {
            yield return Warning(text + $". It fits where the numbers are {means}: check the unit in the header.");
        }
        else
        {
            yield return Warning(text + ": another refrigerant, another temperature, air in it, or the wrong unit.");
        }
    }

    private static IEnumerable<Finding> Weights(JobLog log, RecoveryJob job)
    {
        JobReading? first = log.Readings.FirstOrDefault(reading => reading.GrossWeight is not null);
        if (first is null)
        {
            yield break;
        }

        double shown = first.GrossWeight!.Value.Kilograms;
        RecoveryCylinder? cylinder = first.Cylinder is string label ? job.Cylinders.FirstOrDefault(each => each.Label == label) : job.Cylinders.FirstOrDefault();
        if (cylinder is not null && Math.Abs(shown - cylinder.GrossWeight.Kilograms) > WeightTolerance)
        {
            string text = FormattableString.Invariant($"The scale begins at {shown:F2} kg; {cylinder.Label} should weigh {cylinder.GrossWeight.Kilograms:F2} kg with its content");
            yield return Math.Abs(shown - cylinder.Content.Kilograms) <= WeightTolerance
                ? Warning(text + ", and holds that net: is the weight net? A log holds gross weights.")
                : new Finding(Severity.Caution, FindingSubject.Readings, text + ": check its marks, its content and the scale's zero.", Source);
        }

        ScaleCourse scale = ScaleCourse.Of(log, job);
        foreach (ScaleCourse.Jump jump in scale.Jumps)
        {
            yield return jump.IsSwap
                ? new Finding(Severity.Note, FindingSubject.Readings, FormattableString.Invariant($"Another cylinder is on the scale from {jump.Time:F0} s; the step of {jump.Kilograms:F2} kg is left out."), Source)
                : new Finding(Severity.Caution, FindingSubject.Readings, FormattableString.Invariant($"The weight jumps by {jump.Kilograms:F2} kg at {jump.Time:F0} s, more than flows: a hose moved, the tare changed, or another cylinder that the log does not name. It is left out."), Source);
        }

        double gained = scale.Delivered.Where(each => !double.IsNaN(each)).Max();
        double charge = job.Appliance.Charge.Kilograms;
        if (gained > MostOverCharge * charge)
        {
            yield return Warning(FormattableString.Invariant($"The scale gains {gained:F2} kg where {charge:F2} kg was told: check the unit of the weight, and the charge."));
        }
    }

    private static IEnumerable<Finding> Gaps(JobLog log)
    {
        double[] waits = [.. log.Readings.Skip(1).Select((reading, i) => reading.Time.Seconds - log.Readings[i].Time.Seconds)];
        if (waits.Length == 0)
        {
            yield break;
        }

        double usual = MathNet.Numerics.Statistics.Statistics.Median(waits);
        for (int i = 0; i < waits.Length; i++)
        {
            if (waits[i] > Math.Max(ShortestGap, GapOverUsual * usual))
            {
                yield return new Finding(Severity.Caution, FindingSubject.Readings, FormattableString.Invariant($"No reading for {waits[i] / 60:F0} min from {log.Readings[i].Time.Seconds:F0} s on: what the machine did meanwhile is taken from the reading before."), Source);
            }
        }
    }

    private static Finding Warning(string message) => new(Severity.Warning, FindingSubject.Readings, message, Source);
}
