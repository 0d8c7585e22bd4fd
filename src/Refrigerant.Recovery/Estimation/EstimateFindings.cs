using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Estimation;

/// <summary>Conditions and unused readings in words.</summary>
internal static class EstimateFindings
{
    private const string Practice = "common practice";
    private const string Method = "docs/questions/during-the-job.md";

    /// <summary>Probability from which a full cylinder is worth a word.</summary>
    private const double Likely = 0.3;

    /// <summary>Probability that no liquid is left from which a rest is not to tell of it.</summary>
    private const double MostlyVapor = 0.8;

    public static IReadOnlyList<Finding> Of(RecoveryJob job, in RawEstimate estimate, bool isOilTold)
    {
        var findings = new List<Finding>();
        Limits(in estimate, findings);
        for (JobCondition condition = JobConditions.First; condition <= JobConditions.Last; condition++)
        {
            if (estimate.Has(condition) && Of(condition, job, in estimate) is Finding finding)
            {
                findings.Add(finding);
            }
        }

        foreach ((UnusedReadings what, FindingCode code, string why) in Unused())
        {
            if ((estimate.NotUsed & what) != 0)
            {
                findings.Add(new Finding(code, Severity.Note, Method, $"{FindingValue.Text("why", why)}"));
            }
        }

        if (!isOilTold)
        {
            findings.Add(new Finding(
                ReadingCodes.OilNotTold,
                Severity.Note,
                Method,
                $"No oil is told of. Oil holds refrigerant that no gauge shows: the ranges allow for some; tell its mass, or that there is none, and they narrow."));
        }

        return findings.AsReadOnly();
    }

    private static (UnusedReadings What, FindingCode Code, string Why)[] Unused() =>
    [
        (UnusedReadings.TimeNotANumber, ReadingCodes.TimeUnused, "A reading whose time is no number was left out."),
        (UnusedReadings.TimeJumped, ReadingCodes.TimeUnused, "The clock jumps ahead of what the scale gains: a reading was left out, and where the next ones go on from there the time between is not counted. Check whether times are in seconds."),
        (UnusedReadings.TimeNotLater, ReadingCodes.TimeUnused, "A reading that is not later than the one before was left out."),
        (UnusedReadings.GaugeNotANumber, ReadingCodes.GaugeUnused, "A gauge reading is no number and was left out."),
        (UnusedReadings.GaugeOutOfRange, ReadingCodes.GaugeUnused, "A gauge reading lies beyond what the gauge can show and was left out: check its unit, kPa or psi."),
        (UnusedReadings.GaugeInconsistent, ReadingCodes.GaugeUnused, "The gauge is not used: it does not agree with the refrigerant at its temperature. Check its unit (kPa or psi), gauge or absolute, and the refrigerant; air in the appliance shows so too."),
        (UnusedReadings.GaugeStuck, ReadingCodes.GaugeUnused, "The gauge is not used: it shows the same while the pressure must fall."),
        (UnusedReadings.GaugeShutOff, ReadingCodes.GaugeUnused, "The gauge is not used: with the valve shut it does not show the appliance's pressure."),
        (UnusedReadings.WeightNotANumber, ReadingCodes.WeightUnused, "A reading of the scale is no number and was left out."),
        (UnusedReadings.WeightOutOfRange, ReadingCodes.WeightUnused, "A reading of the scale lies beyond what a scale can show and was left out."),
        (UnusedReadings.WeightJumped, ReadingCodes.WeightUnused, "The scale jumped; until it settles it is not used."),
        (UnusedReadings.WeightInconsistent, ReadingCodes.WeightUnused, "The scale is not used: its first reading is what the cylinder should weigh in another unit. Check kg or lb. What it gains will tell; until then, should it be right, the cylinder holds more than was told."),
        (UnusedReadings.WeightStuck, ReadingCodes.WeightUnused, "The scale is not used: it shows the same while refrigerant must flow."),
        (UnusedReadings.TemperatureOutOfRange, ReadingCodes.OtherUnused, "A temperature is no number or outside what is sensible (−148 to 266 °F, −100 to 130 °C) and was left out."),
        (UnusedReadings.DischargeOutOfRange, ReadingCodes.OtherUnused, "The discharge pressure is no number or outside the refrigerant's curve and was left out."),
    ];

    private static void Limits(in RawEstimate estimate, List<Finding> findings)
    {
        if (estimate.CylinderLimitFirst > Likely)
        {
            bool full = estimate.CylinderLimitFirst >= 1;
            FindingValue probability = FindingValue.Fraction("probability", Math.Min(1, estimate.CylinderLimitFirst));
            findings.Add(new Finding(
                ReadingCodes.CylinderFillsFirst,
                full ? Severity.Stop : Severity.Warning,
                Practice,
                full ? (FormattableString)$"The cylinder is at its limit: stop and change it. An overfilled cylinder bursts when it warms."
                    : $"The cylinder fills before the level is reached with a probability of {probability}: have the next one ready and watch the scale."));
        }
    }

    private static Finding? Of(JobCondition condition, RecoveryJob job, in RawEstimate estimate) => condition switch
    {
        JobCondition.RestSuggested => Rest(in estimate),
        JobCondition.StandingPressureInconsistent => Standing(job, estimate.StandsOff),
        _ => For(condition, job),
    };

    /// <summary>Too high may overfill a cylinder: the limit is that of the refrigerant told.</summary>
    private static Finding Standing(RecoveryJob job, double kelvins)
    {
        FindingValue refrigerant = FindingValue.Text("refrigerant", job.Appliance.Fluid.Designation);
        FindingValue off = FindingValue.TemperatureDifference("off", TemperatureDelta.FromKelvins(Math.Abs(kelvins)));
        return kelvins > 0
            ? new Finding(
                ReadingCodes.StandingPressureDisagrees,
                Severity.Warning,
                Practice,
                $"Before anything was drawn the gauge stood as high as {refrigerant} does {off} warmer than told: another refrigerant, air in it, or an appliance that warm. Find out which before a cylinder is filled: the limit that is watched is that of {refrigerant}.")
            : new Finding(
                ReadingCodes.StandingPressureDisagrees,
                Severity.Caution,
                Practice,
                $"Before anything was drawn the gauge stood as low as {refrigerant} does {off} colder than told: no liquid in it, another refrigerant, or an appliance that cold. Find out which before a cylinder is filled: the limit that is watched is that of {refrigerant}.");
    }

    private static Finding Rest(in RawEstimate estimate) => new(ReadingCodes.RestTells, Severity.Note, Method, WhyRest(in estimate));

    private static FormattableString WhyRest(in RawEstimate estimate)
    {
        if (estimate.IsFallOpen)
        {
            return $"Between two readings the gauge fell to where a shut valve has it as well as an appliance that is empty. See that every valve is open, then stop the machine for a minute: where the gauge comes up, refrigerant is left. Readings a few seconds apart tell the two apart.";
        }

        return estimate.VaporOnly > MostlyVapor
            ? (FormattableString)$"Below the atmosphere the pressure stands while the machine draws: air that comes in, oil that gives off gas and a machine at its limit look alike. Stop the machine with the valves open for half an hour: air goes on rising at the same rate, gas from oil ever more slowly."
            : $"A rest would tell whether liquid is left: stop the machine with the valves open for ten seconds to a minute and read the gauge.";
    }

    private static Finding? For(JobCondition condition, RecoveryJob job) => condition switch
    {
        JobCondition.ColdPool => new Finding(
            ReadingCodes.ColdPool,
            Severity.Warning,
            Practice,
            $"Liquid is left and far colder than the air. The gauge may reach the level over it: rest, let it warm or warm it, and pull again. Cold liquid and metal freeze skin and water in tubes."),
        JobCondition.MachineUnderperforming => new Finding(
            ReadingCodes.MachineWeak,
            Severity.Caution,
            Method,
            $"The scale gains less than the machine should deliver: a machine that stands, a worn or slipping compressor, a filter, a valve behind it that is shut or not fully open. A scale that drifts looks the same: put it at rest for ten seconds and see whether it stands."),
        JobCondition.HoseBlocked => new Finding(
            ReadingCodes.HoseBlocked,
            Severity.Warning,
            Method,
            $"Gauge and scale both fell behind: the suction hose is kinked or blocked, or a core is in the way. Before opening anything shut the valves: liquid may be trapped."),
        JobCondition.ValveClosed => new Finding(
            ReadingCodes.ValveClosed,
            Severity.Warning,
            Method,
            $"The machine has emptied its hose and nothing comes: a valve between appliance and machine is shut. The gauge does not show the appliance's pressure."),
        JobCondition.ScaleDisturbed => new Finding(
            ReadingCodes.ScaleDisturbed,
            Severity.Caution,
            Method,
            $"Something other than refrigerant moved the scale, or it is stuck: a hose that pulls, something that leans on it. It is also what guards the cylinder's limit: free it."),
        JobCondition.GaugeInconsistent => new Finding(
            ReadingCodes.GaugeDisagrees,
            Severity.Caution,
            Method,
            $"The gauge does not agree with {FindingValue.Text("refrigerant", job.Appliance.Fluid.Designation)} at its temperature, or with everything else that was read. Until it does, the estimate rests on scale and plan."),
        JobCondition.ForeignGas => new Finding(
            ReadingCodes.AirComesIn,
            Severity.Warning,
            Method,
            $"Air seems to come in below the atmosphere: find the leak. What is recovered with air is contaminated, and air with oil under pressure, or with a refrigerant that burns, can explode."),
        JobCondition.LevelOutOfReach => new Finding(
            ReadingCodes.LevelOutOfReach,
            Severity.Caution,
            Method,
            $"As things are, the level is not reached within four hours: the machine stalls against its discharge pressure, or heat comes too slowly. Cool the cylinder, warm the appliance, change hose or machine."),
        JobCondition.CylinderChanged => new Finding(
            ReadingCodes.CylinderChanged,
            Severity.Note,
            Method,
            $"Another cylinder stands on the scale; what has been delivered goes on counting."),
        JobCondition.TareChanged => new Finding(
            ReadingCodes.TareChanged,
            Severity.Note,
            Method,
            $"The scale was set to another zero; what has been delivered goes on counting."),
        JobCondition.LiquidTransfer => new Finding(
            ReadingCodes.LiquidMoves,
            Severity.Note,
            Method,
            $"Liquid is being moved: the scale alone says how much. Close the liquid valve before the cylinder's limit."),
        JobCondition.ChargeInconsistent => new Finding(
            ReadingCodes.ChargeDisagrees,
            Severity.Caution,
            Method,
            $"The readings do not agree with the charge that was told. Check the nameplate, and that the cylinders hold it."),
        JobCondition.GaugeAbsolute => new Finding(
            ReadingCodes.GaugeAbsolute,
            Severity.Caution,
            Method,
            $"The gauge seems to show absolute pressure where gauge pressure was asked for: flow and pressure fit when the pressure of the air is taken off. It is not used, and the estimate rests on scale and plan."),
        JobCondition.WeightNet => new Finding(
            ReadingCodes.WeightNet,
            Severity.Note,
            Method,
            $"The scale shows the content alone: its zero was set with the cylinder on it. What is delivered goes on counting, and the cylinder's limit is taken without its tare."),
        JobCondition.CylinderInconsistent => new Finding(
            ReadingCodes.CylinderUnlikeTold,
            Severity.Caution,
            Method,
            $"The cylinder on the scale did not weigh at first what was told: another cylinder, another content, or another unit. Check its marks: the limit that is watched is that of the cylinder told."),
        JobCondition.CylinderUnknown => new Finding(
            ReadingCodes.CylinderUnknown,
            Severity.Warning,
            Method,
            $"The cylinder on the scale is not one of the job's: its limit is not known and not watched. An overfilled cylinder bursts when it warms. Check its label and marks."),
        JobCondition.CylinderLosesWeight => new Finding(
            ReadingCodes.CylinderLosesWeight,
            Severity.Warning,
            Practice,
            $"The cylinder loses weight: refrigerant runs back to the appliance, or leaks. Shut the cylinder's valve and see whether the scale stands. What runs back counts as left in the appliance."),
        _ => null,
    };
}
