using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;

namespace Refrigerant.Recovery.Planning;

/// <summary>What a whole plan should make people think of, beyond the findings of its stages.</summary>
internal static class PlanFindings
{
    /// <summary>A barometer that differs from the standard atmosphere by less than this share needs no word.</summary>
    private const double OrdinaryAir = 0.02;

    /// <summary>Pressures this near to the barometer read zero on a gauge, Pa.</summary>
    private const double ReadsZero = 200;

    public static IReadOnlyList<Finding> For(PlanRun run, MassLedger ledger, FractionationResult? drift)
    {
        List<Finding> findings = [];
        findings.AddRange(Level(run));
        findings.AddRange(CylinderFindings(run, ledger));
        findings.AddRange(Altitude(run));
        findings.AddRange(StillAboveTheAir(run));
        findings.AddRange(PushPullFindings(run));
        findings.AddRange(run.Requirement.Findings);
        findings.AddRange(Flammable(run));
        findings.AddRange(StageFindings(run));
        findings.AddRange(drift?.Findings ?? []);
        findings.AddRange(Estimates(run));
        if (run.Job.Appliance.Oil is { } oil && OilMatch.Check(run.Job.Appliance.Fluid, oil.Kind) is Finding other)
        {
            findings.Add(other);
        }

        return
        [
            .. findings.GroupBy(finding => (finding.Subject, finding.Message)).Select(group => group.First())
                .OrderByDescending(finding => finding.Severity),
        ];
    }

    /// <summary>What stages found; of findings that differ in their numbers only, as one pull follows another, the last.</summary>
    private static IEnumerable<Finding> StageFindings(PlanRun run) => run.Stages
        .Where(stage => stage.Result is not null)
        .SelectMany(stage => stage.Result!.Findings.Select(finding => (stage.Kind, Finding: finding)))
        .GroupBy(found => (found.Kind, found.Finding.Severity, found.Finding.Subject, Words: new string([.. found.Finding.Message.Where(char.IsLetter)])))
        .Select(group => group.Last().Finding);

    private static IEnumerable<Finding> Level(PlanRun run)
    {
        ApplianceState end = run.State;
        string level = FormattableString.Invariant(
            $"{run.Requirement.RequiredPressure.Kilopascals:F2} kPa absolute ({Reading(run.Requirement.RequiredPressure, run.Job.Barometer)} on this barometer)");
        string reached = FormattableString.Invariant(
            $"{end.Pressure.Kilopascals:F2} kPa absolute with {end.Mass.Kilograms:G3} kg left");
        if (run.IsLevelReached)
        {
            yield return new Finding(
                Severity.Note, FindingSubject.EvacuationLevel, $"The required level of {level} is reached and holds: {reached}.", run.Requirement.Source);
        }
        else
        {
            string why = run.DidNotHold
                ? $"after {run.Job.MaximumPulls} pulls it still does not hold"
                : run.IsOutOfCylinders ? "the cylinders on hand are full" : "the machine gets no further";
            yield return new Finding(
                Severity.Stop,
                FindingSubject.EvacuationLevel,
                $"The required level of {level} is not reached, {why}: {reached}. Do not open the appliance on the strength of this plan.",
                run.Requirement.Source);
        }
    }

    private static IEnumerable<Finding> CylinderFindings(PlanRun run, MassLedger ledger)
    {
        if (run.IsOutOfCylinders)
        {
            double room = run.Cylinders.Where(cylinder => cylinder.IsUsable).Sum(cylinder => cylinder.Limit.Room.Kilograms);
            yield return new Finding(
                Severity.Stop,
                FindingSubject.CylinderCapacity,
                FormattableString.Invariant(
                    $"The cylinders on hand have room for {room:F1} kg ({room / 0.45359237:F1} lb) in all; the charge is {ledger.Charge.Kilograms:F1} kg ({ledger.Charge.Pounds:F1} lb). Bring room for at least {Math.Max(0, ledger.Charge.Kilograms - room):F1} kg more."),
                "cylinder filling limit");
        }

        foreach (CylinderTracker cylinder in run.Cylinders)
        {
            foreach (Finding finding in cylinder.Limit.Findings.Where(finding => cylinder.State is not null || finding.Severity == Severity.Stop))
            {
                yield return finding;
            }

            if (cylinder.State is { } state && run.Job.Barometer.ToGauge(state.Pressure) > cylinder.Cylinder.ServicePressure)
            {
                yield return new Finding(
                    Severity.Warning,
                    FindingSubject.CylinderPressure,
                    FormattableString.Invariant(
                        $"{cylinder.Cylinder.Label} ends at {run.Job.Barometer.ToGauge(state.Pressure).Kilopascals:F0} kPa gauge, above its service pressure of {cylinder.Cylinder.ServicePressure.Kilopascals:F0} kPa gauge: cool it."),
                    "energy balance of the receiving cylinder");
            }
        }
    }

    private static IEnumerable<Finding> Altitude(PlanRun run)
    {
        Barometer here = run.Job.Barometer;
        if (Math.Abs((here.Pressure / Barometer.Standard.Pressure) - 1) > OrdinaryAir)
        {
            yield return new Finding(
                Severity.Caution,
                FindingSubject.VacuumAndAltitude,
                FormattableString.Invariant(
                    $"The air here is at {here.Pressure.Kilopascals:F1} kPa: gauges must show {Reading(run.Requirement.RequiredPressure, here)} for the required level; at sea level it would be {Reading(run.Requirement.RequiredPressure, Barometer.Standard)}."),
                "40 CFR 82.156 Table 1 (vacuum relative to 29.9 inHg); U.S. Standard Atmosphere 1976");
        }
    }

    private static IEnumerable<Finding> StillAboveTheAir(PlanRun run)
    {
        double above = run.Job.Barometer.ToGauge(run.State.Pressure).Pascals;
        if (run.IsLevelReached && above > ReadsZero)
        {
            yield return new Finding(
                Severity.Caution,
                FindingSubject.EvacuationLevel,
                FormattableString.Invariant(
                    $"At the end the gauge still shows {above / 1000:F1} kPa ({above / 6894.757:F1} psi) above the air here: refrigerant blows out when the appliance is opened. Cool the cylinder, warm the appliance, pull again."),
                Sources.CommonPractice);
        }
    }

    private static IEnumerable<Finding> PushPullFindings(PlanRun run)
    {
        bool pushed = run.Stages.Any(stage => stage.Kind == StageKind.PushPull);
        if (pushed)
        {
            yield return new Finding(
                Severity.Warning,
                FindingSubject.PushPull,
                "Liquid keeps siphoning after the machine stops: watch the scale, close the cylinder's liquid valve at its limit; a float switch alone is no guarantee.",
                Sources.CommonPractice);
        }
        else if (run.Job.PushPull != PushPullUse.Never && run.Stages.Count > 1)
        {
            string why = !run.Job.Appliance.LiquidReachable
                ? "liquid cannot be reached"
                : run.Job.Hoses.LiquidSide.Count == 0 ? "there is no liquid hose" : "there is too little liquid for it to pay (10 to 15 lb)";
            yield return new Finding(Severity.Note, FindingSubject.PushPull, $"Push-pull is not used: {why}.", Sources.CommonPractice);
        }
    }

    private static IEnumerable<Finding> Flammable(PlanRun run)
    {
        if (RefrigerantFacts.For(run.Job.Appliance.Fluid).IsFlammable == true && !run.Job.Machine.ListedForFlammable)
        {
            yield return new Finding(
                Severity.Stop,
                FindingSubject.Flammability,
                $"{run.Job.Appliance.Fluid.Designation} burns and the machine is not listed for flammable refrigerants: do not use it for this job.",
                "40 CFR 82 Subpart F Appendix B4");
        }
    }

    private static IEnumerable<Finding> Estimates(PlanRun run)
    {
        Fluid fluid = run.Job.Appliance.Fluid;
        if (fluid.Quality == ModelQuality.Estimated)
        {
            yield return new Finding(
                Severity.Caution,
                FindingSubject.Estimate,
                $"At least one pair of components of {fluid.Designation} has no published mixing parameters: all figures rest on an estimate.",
                fluid.Model.Source);
        }
    }

    /// <summary>What a gauge shows: kPa and psi above the barometer, inches of mercury of vacuum below it.</summary>
    private static string Reading(Pressure absolute, Barometer barometer)
    {
        double gauge = barometer.ToGauge(absolute).Pascals;
        return Math.Abs(gauge) < ReadsZero ? "0 on the gauge" : gauge < 0
            ? FormattableString.Invariant($"{Mercury.ToInches(barometer.ToVacuum(absolute)):F1} inHg vacuum")
            : FormattableString.Invariant($"{gauge / 1000:F1} kPa ({gauge / 6894.757:F1} psi) gauge");
    }
}
