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

    /// <summary>Share of the pressure expected at the gauge that may be there at least: hoses and machine are as told, or about so.</summary>
    private const double LeastShare = 0.55;

    /// <summary>The same while nothing moves, and kg by which the weight then changes at most.</summary>
    private const double LeastAtRest = 0.8;

    private const double Still = 0.05;

    /// <summary>K that what is left cools at most while vapor fills an empty cylinder by itself.</summary>
    private const double MostCooling = 60;

    /// <summary>s at the start in which the highest pressure is looked for,</summary>
    private const double Start = 30;

    /// <summary>or so many readings: the first of them may be of hoses that were just swept.</summary>
    private const int FirstReadings = 5;

    /// <summary>A gap is told from this many times what the job allows for hoses or a cylinder to be changed.</summary>
    private const double OverChange = 1.5;

    private const double GapOverUsual = 20;
    private const double WeightTolerance = 0.5;
    private const double MostOverCharge = 1.3;
    private const string Source = "comparison of the log with the job as told";

    private static readonly (double Factor, string Means)[] Units =
    [
        (GaugeGuard.KilopascalsPerPsi, "psi"), (1 / GaugeGuard.KilopascalsPerPsi, "kPa, entered as psi"), (100, "bar"), (0.01, "kPa, entered as bar"), (1000, "MPa"), (3.386389, "inHg"),
    ];

    /// <summary>The findings, in order of time.</summary>
    public static IReadOnlyList<Finding> Of(JobLog log, RecoveryJob job)
    {
        var found = new List<Finding>();
        found.AddRange(Pressures(log, job));
        found.AddRange(Weights(log, job));
        found.AddRange(Gaps(log, job));
        return found;
    }

    private static IEnumerable<Finding> Pressures(JobLog log, RecoveryJob job)
    {
        double first = log.Readings[0].Time.Seconds;
        JobReading[] early = [.. log.Readings.TakeWhile((reading, i) => i < FirstReadings || reading.Time.Seconds <= first + Start)
            .Where(reading => reading.ValveOpen && reading.SuctionGaugePressure is not null)];
        double air = job.Barometer.Pressure.Pascals;
        if (early.Length == 0)
        {
            yield break;
        }

        PropertyModel model = job.Appliance.Fluid.Model;
        double kelvins = job.Appliance.Temperature.Kelvins;
        double high = model.SaturationAtTemperature(Math.Min(kelvins + Tolerance, model.Range.MaximumSaturationTemperature)).Bubble.Pressure - air;
        double low = AtRest(early) ? (LeastAtRest * Expected(job, kelvins, null)) - air : (LeastShare * Expected(job, kelvins, job.Cylinders.FirstOrDefault())) - air;
        double shown = early.Max(reading => reading.SuctionGaugePressure!.Value.Pascals);
        FormattableString text = $"The suction gauge begins at {FindingValue.GaugePascals("shown", shown)}; {FindingValue.Text("refrigerant", job.Appliance.Fluid.Designation)} at {FindingValue.Kelvins("temperature", kelvins)} shows {FindingValue.GaugePascals("lowest", low)} to {FindingValue.GaugePascals("highest", high)} there.";
        if (shown >= low && shown <= high)
        {
            double least = log.Readings.Min(reading => reading.SuctionGaugePressure?.Pascals ?? double.PositiveInfinity);
            double level = Rules.EvacuationRequirement.For(job.Appliance.Fluid, job.Appliance.Charge, job.EffectiveEvacuation).RequiredPressure.Pascals;
            if (level < air && least > 0 && Math.Abs(least - level) < Math.Abs(least + air - level) && least < 1.3 * level)
            {
                yield return Warning(
                    ReadingCodes.LogPressureUnit,
                    $"The suction gauge never shows a vacuum and ends at {FindingValue.GaugePascals("least", least)}, which as an absolute pressure is near the level of {FindingValue.Pascals("level", level)}: is the pressure absolute? A log holds gauge pressure.");
            }
        }
        else if (shown - air >= low && shown - air <= high && shown > high)
        {
            yield return Warning(ReadingCodes.LogPressureUnit, text, $"Less the air it fits: is the pressure absolute? A log holds gauge pressure.");
        }
        else if (Units.FirstOrDefault(unit => shown * unit.Factor >= low && shown * unit.Factor <= high) is (not 0, string means))
        {
            yield return Warning(ReadingCodes.LogPressureUnit, text, $"It fits where the numbers are {FindingValue.Text("unit", means)}: check the unit in the header.");
        }
        else
        {
            yield return Warning(ReadingCodes.LogPressureUnfit, text, $"Another refrigerant, another temperature, air in it, or the wrong unit.");
        }
    }

    /// <summary>Whether the log begins with readings between which nothing moved: the machine off, the weight as it was.</summary>
    private static bool AtRest(JobReading[] early)
    {
        double[] weights = [.. early.TakeWhile(reading => !reading.MachineRunning).Where(reading => reading.GrossWeight is not null).Select(reading => reading.GrossWeight!.Value.Kilograms)];
        return weights.Length > 1 && weights.Max() - weights.Min() < Still;
    }

    /// <summary>
    /// Absolute pressure at the gauge when the machine begins to draw, Pa, by the reduced model, from an appliance that is colder than told and, where the cylinder is empty, has filled it with vapor within seconds:
    /// V·ρ″·L/(m·c′) of cooling. Without a cylinder: at rest.
    /// </summary>
    private static double Expected(RecoveryJob job, double told, RecoveryCylinder? cylinder)
    {
        var table = new SaturationTable(job.Appliance.Fluid.Model);
        table.At(told, out SaturationValues warm);
        double fills = ScaleCourse.Room(job, cylinder) / job.Appliance.Charge.Kilograms;
        double kelvins = Math.Max(table.Lowest, told - Tolerance - Math.Min(MostCooling, fills * warm.VaporTakes / warm.LiquidHeatCapacity));
        ReducedParameters parameters = ReducedParameters.FromJob(job, table);
        var state = new ReducedState { Temperature = kelvins, MetalTemperature = kelvins, WetTemperature = kelvins };
        var inputs = new ReducedInputs(job.Appliance.SurroundingsKelvin, cylinder is not null);
        new ReducedModel(table).Evaluate(in state, in parameters, in inputs, out ReducedOutput at);
        return at.SuctionPressure;
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
            FormattableString text = $"The scale begins at {FindingValue.Kilograms("shown", shown)}; {FindingValue.Text("cylinder", cylinder.Label)} should weigh {FindingValue.Mass("gross", cylinder.GrossWeight)} with its content.";
            yield return Math.Abs(shown - cylinder.Content.Kilograms) <= WeightTolerance
                ? Warning(ReadingCodes.LogWeightUnit, text, $"It holds that net: is the weight net? A log holds gross weights.")
                : new Finding(ReadingCodes.LogWeightUnfit, Severity.Caution, Source, text, $"Check its marks, its content and the scale's zero.");
        }

        ScaleCourse scale = ScaleCourse.Of(log, job);
        foreach (ScaleCourse.Jump jump in scale.Jumps)
        {
            FindingValue step = FindingValue.Kilograms("step", Math.Abs(jump.Kilograms));
            yield return jump.IsSwap
                ? new Finding(ReadingCodes.LogCylinderSwapped, Severity.Note, Source, $"Another cylinder is on the scale from {Seconds(jump.Time)} s; the step of {step} is left out.")
                : new Finding(ReadingCodes.LogWeightJumps, Severity.Caution, Source, $"The weight jumps by {step} at {Seconds(jump.Time)} s, more than flows: a hose moved, the tare changed, or another cylinder that the log does not name. It is left out.");
        }

        double gained = scale.Delivered.Where(each => !double.IsNaN(each)).Max();
        double charge = job.Appliance.Charge.Kilograms;
        if (gained > MostOverCharge * charge)
        {
            yield return Warning(ReadingCodes.LogWeightUnit, $"The scale gains {FindingValue.Kilograms("gained", gained)} where {FindingValue.Kilograms("charge", charge)} was told: check the unit of the weight, and the charge.");
        }
    }

    private static IEnumerable<Finding> Gaps(JobLog log, RecoveryJob job)
    {
        double[] waits = [.. log.Readings.Skip(1).Select((reading, i) => reading.Time.Seconds - log.Readings[i].Time.Seconds)];
        if (waits.Length == 0)
        {
            yield break;
        }

        double usual = MathNet.Numerics.Statistics.Statistics.Median(waits);
        double change = Math.Max(job.Times.HoseChange.Seconds, job.Times.CylinderChange.Seconds);
        for (int i = 0; i < waits.Length; i++)
        {
            if (waits[i] > Math.Max(OverChange * change, GapOverUsual * usual))
            {
                FindingValue gap = FindingValue.Seconds("gap", waits[i]);
                yield return new Finding(ReadingCodes.LogGap, Severity.Caution, Source, $"No reading for {gap} from {Seconds(log.Readings[i].Time.Seconds)} s on: what the machine did meanwhile is taken from the reading before.");
            }
        }
    }

    /// <summary>A time of the log as the log writes it.</summary>
    private static FindingValue Seconds(double seconds) => FindingValue.Number("time in s", Math.Round(seconds), 9);

    private static Finding Warning(FindingCode code, params FormattableString[] text) => new(code, Severity.Warning, Source, text);
}
