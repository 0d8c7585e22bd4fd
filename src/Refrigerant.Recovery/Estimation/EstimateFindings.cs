using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Estimation;

/// <summary>Conditions and unused readings in words.</summary>
internal static class EstimateFindings
{
    private const string Practice = "common practice";
    private const string Method = "docs/questions/during-the-job.md";

    /// <summary>Probability from which a full cylinder is worth a word.</summary>
    private const double Likely = 0.3;

    public static IReadOnlyList<Finding> Of(RecoveryJob job, in RawEstimate estimate, bool isOilTold)
    {
        var findings = new List<Finding>();
        Limits(in estimate, findings);
        for (JobCondition condition = JobCondition.ColdPool; condition <= JobCondition.ChargeInconsistent; condition++)
        {
            if (estimate.Has(condition) && For(condition, job) is Finding finding)
            {
                findings.Add(finding);
            }
        }

        foreach ((UnusedReadings what, string why) in Unused)
        {
            if ((estimate.NotUsed & what) != 0)
            {
                findings.Add(new Finding(Severity.Note, FindingSubject.Estimate, why, Method));
            }
        }

        if (!isOilTold)
        {
            findings.Add(new Finding(
                Severity.Note,
                FindingSubject.Oil,
                "No oil is told of. Oil holds refrigerant that no gauge shows: the ranges allow for some; tell its mass, or that there is none, and they narrow.",
                Method));
        }

        return findings.AsReadOnly();
    }

    private static readonly (UnusedReadings What, string Why)[] Unused =
    [
        (UnusedReadings.TimeNotANumber, "A reading whose time is no number was left out."),
        (UnusedReadings.TimeNotLater, "A reading that is not later than the one before was left out."),
        (UnusedReadings.GaugeNotANumber, "There was no gauge reading, or it is no number."),
        (UnusedReadings.GaugeOutOfRange, "A gauge reading lies beyond what the gauge can show and was left out: check its unit, kPa or psi."),
        (UnusedReadings.GaugeInconsistent, "The gauge is not used: it does not agree with the refrigerant at its temperature. Check its unit (kPa or psi), gauge or absolute, and the refrigerant; air in the appliance shows so too."),
        (UnusedReadings.GaugeStuck, "The gauge is not used: it shows the same while the pressure must fall."),
        (UnusedReadings.GaugeShutOff, "The gauge is not used: with the valve shut it does not show the appliance's pressure."),
        (UnusedReadings.WeightNotANumber, "There was no reading of the scale, or it is no number."),
        (UnusedReadings.WeightOutOfRange, "A reading of the scale lies beyond what a scale can show and was left out."),
        (UnusedReadings.WeightJumped, "The scale jumped; until it settles it is not used."),
        (UnusedReadings.WeightStuck, "The scale is not used: it shows the same while refrigerant must flow."),
        (UnusedReadings.TemperatureOutOfRange, "A temperature is no number or outside −100 to 130 °C and was left out."),
        (UnusedReadings.DischargeOutOfRange, "The discharge pressure is no number or outside the refrigerant's curve and was left out."),
    ];

    private static void Limits(in RawEstimate estimate, List<Finding> findings)
    {
        if (estimate.CylinderLimitFirst > Likely)
        {
            findings.Add(new Finding(
                estimate.CylinderLimitFirst >= 1 ? Severity.Stop : Severity.Warning,
                FindingSubject.CylinderOverfill,
                estimate.CylinderLimitFirst >= 1
                    ? "The cylinder is at its limit: stop and change it. An overfilled cylinder bursts when it warms."
                    : FormattableString.Invariant($"The cylinder fills before the level is reached with a probability of {100 * estimate.CylinderLimitFirst:F0} %: have the next one ready and watch the scale."),
                Practice));
        }
    }

    private static Finding? For(JobCondition condition, RecoveryJob job) => condition switch
    {
        JobCondition.ColdPool => new Finding(
            Severity.Warning,
            FindingSubject.LiquidLeftBehind,
            "Liquid is left and far colder than the air. The gauge may reach the level over it: rest, let it warm or warm it, and pull again. Cold liquid and metal freeze skin and water in tubes.",
            Practice),
        JobCondition.MachineUnderperforming => new Finding(
            Severity.Caution,
            FindingSubject.Machine,
            "The scale gains less than the machine should deliver: a worn or slipping compressor, a filter, a valve not fully open. A scale that drifts looks the same: put it at rest for ten seconds and see whether it stands.",
            Method),
        JobCondition.HoseBlocked => new Finding(
            Severity.Warning,
            FindingSubject.HoseLimited,
            "Gauge and scale both fell behind: the suction hose is kinked or blocked, or a core is in the way. Before opening anything shut the valves: liquid may be trapped.",
            Method),
        JobCondition.ValveClosed => new Finding(
            Severity.Warning,
            FindingSubject.HoseLimited,
            "The machine has emptied its hose and nothing comes: a valve between appliance and machine is shut. The gauge does not show the appliance's pressure.",
            Method),
        JobCondition.ScaleDisturbed => new Finding(
            Severity.Caution,
            FindingSubject.Estimate,
            "Something other than refrigerant moved the scale, or it is stuck: a hose that pulls, something that leans on it. It is also what guards the cylinder's limit: free it.",
            Method),
        JobCondition.GaugeInconsistent => new Finding(
            Severity.Caution,
            FindingSubject.Estimate,
            $"The gauge does not agree with {job.Appliance.Fluid.Designation} at its temperature, or with everything else that was read. Until it does, the estimate rests on scale and plan.",
            Method),
        JobCondition.ForeignGas => new Finding(
            Severity.Warning,
            FindingSubject.NonCondensables,
            "Air seems to come in below the atmosphere: find the leak. What is recovered with air is contaminated, and air with oil under pressure, or with a refrigerant that burns, can explode.",
            Method),
        JobCondition.LevelOutOfReach => new Finding(
            Severity.Caution,
            FindingSubject.EvacuationLevel,
            "As things are, the level is not reached within four hours: the machine stalls against its discharge pressure, or heat comes too slowly. Cool the cylinder, warm the appliance, change hose or machine.",
            Method),
        JobCondition.RestSuggested => new Finding(
            Severity.Note,
            FindingSubject.Estimate,
            "A rest would tell whether liquid is left: stop the machine with the valves open for ten seconds to a minute and read the gauge.",
            Method),
        JobCondition.CylinderChanged => new Finding(
            Severity.Note, FindingSubject.CylinderCapacity, "Another cylinder stands on the scale; what has been delivered goes on counting.", Method),
        JobCondition.TareChanged => new Finding(
            Severity.Note, FindingSubject.Estimate, "The scale was set to another zero; what has been delivered goes on counting.", Method),
        JobCondition.LiquidTransfer => new Finding(
            Severity.Note, FindingSubject.PushPull, "Liquid is being moved: the scale alone says how much. Close the liquid valve before the cylinder's limit.", Method),
        JobCondition.ChargeInconsistent => new Finding(
            Severity.Caution,
            FindingSubject.Estimate,
            "The readings do not agree with the charge that was told. Check the nameplate, and that the cylinders hold it.",
            Method),
        _ => null,
    };
}
