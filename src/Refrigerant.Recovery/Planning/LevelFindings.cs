using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Vessels;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>The level: reached or not, why not, and what would help.</summary>
internal static class LevelFindings
{
    /// <summary>A barometer that differs from the standard atmosphere by less than this share needs no word.</summary>
    private const double OrdinaryAir = 0.02;

    /// <summary>Pressures this near to the barometer read zero on a gauge, Pa.</summary>
    private const double ReadsZero = 200;

    private const double Hour = 3600;

    /// <summary>After a hold it is looked at for so long, s, and this far above the level, Pa, is worth a warning. Our choice.</summary>
    private const double ShutFor = 3 * Hour;
    private const double ComesBack = 10_000;

    public static IEnumerable<Finding> ToDo(PlanRun run, LevelVerdict verdict, MassLedger ledger)
    {
        Barometer here = run.Job.Barometer;
        ApplianceState end = run.State.Appliance;
        if (!verdict.IsReached)
        {
            yield return NotReached(run, verdict, end);
        }

        if (PulledPast(run) is Finding past && verdict.IsReached && run.Stages.Any(stage => stage.Kind == StageKind.Hold))
        {
            yield return past;
        }

        if (verdict.Outcome is LevelOutcome.ReachedAndHeld or LevelOutcome.Reached or LevelOutcome.ShareRecovered && CouldComeBack(run) && run.Shut(new Duration(ShutFor, DurationUnit.Second)) is { Appliance: ApplianceState later }
            && later.Pressure.Pascals > Math.Max(verdict.Outcome == LevelOutcome.ShareRecovered ? here.Pressure.Pascals : 0, run.Requirement.RequiredPressure.Pascals) + ComesBack)
        {
            yield return new Finding(
                PlanCodes.ComesBackWarm,
                Severity.Warning,
                "simulated hold",
                $"{(verdict.Outcome == LevelOutcome.ShareRecovered ? "It is down" : "It holds")} while it is cold: shut for {FindingValue.Duration("shut", new Duration(ShutFor, DurationUnit.Second))} it would come back to {FindingValue.GaugePressure("later", run.Job.Barometer.ToGauge(later.Pressure), RoundingMode.Up)}.",
                run.Job.Appliance.Oil is not null ? (FormattableString)$"The oil gives it off late: warm the oil and pull again, and keep a gauge on it while it is open." : (FormattableString)$"Let it warm and pull again, and keep a gauge on it while it is open.");
        }

        if (end.Parts.Count > 1 && Hidden(run, end) is Finding hidden)
        {
            yield return hidden;
        }

        if (end.Parts.Count > 1 && FullOfLiquid(run, end) is Finding full)
        {
            yield return full;
        }

        double differs = (here.ToGauge(run.Goal) - Barometer.Standard.ToGauge(run.Requirement.RequiredPressure)).Pascals;
        if (Math.Abs((here.Pressure / Barometer.Standard.Pressure) - 1) > OrdinaryAir)
        {
            FindingValue shown = FindingValue.GaugePressure("reading here", here.ToGauge(run.Goal), RoundingMode.Down);
            FindingValue sea = FindingValue.GaugePressure("reading at sea level", Barometer.Standard.ToGauge(run.Requirement.RequiredPressure), RoundingMode.Down);
            yield return new Finding(
                PlanCodes.GaugeAtAltitude,
                Severity.Caution,
                run.Requirement.Source + "; U.S. Standard Atmosphere 1976",
                Math.Abs(differs) <= ReadsZero ? (FormattableString)$"Pull down to {shown} on this gauge: the air here is at {FindingValue.AbsolutePressure("air", here.Pressure)}, and at the sea-level figure refrigerant would still blow out." : $"Go by what the gauge must show here: {shown}. The air is at {FindingValue.AbsolutePressure("air", here.Pressure)}; at sea level the level would read {sea}.");
        }

        double above = here.ToGauge(end.Pressure).Pascals;
        if (verdict.IsReached && above > ReadsZero)
        {
            FindingValue reading = FindingValue.GaugePressure("reading", here.ToGauge(end.Pressure), RoundingMode.Up);
            yield return new Finding(
                PlanCodes.StillAboveAir,
                Severity.Caution,
                Sources.CommonPractice,
                $"{reading} are left when the plan ends: refrigerant blows out where the appliance is opened. Open only what is meant to be opened at that pressure.");
        }
    }

    public static IEnumerable<Finding> Known(PlanRun run, LevelVerdict verdict)
    {
        if (verdict is { IsReached: true, Outcome: LevelOutcome.ShareRecovered })
        {
            yield return new Finding(
                PlanCodes.ShareRecovered,
                Severity.Note,
                run.Requirement.Source,
                $"The share that the rule asks for is recovered: {FindingValue.Share("recovered", verdict.Recovered)} of the charge, {FindingValue.Mass("left", run.State.Appliance.Mass)} left in the appliance.",
                run.IsAtLevel(run.State.Appliance) ? null : (FormattableString)$"The level, {Level(run)}, is not reached and need not be: the gauge shows {FindingValue.GaugePressure("reading", run.Job.Barometer.ToGauge(run.State.Appliance.Pressure), RoundingMode.Up)}.");
        }
        else if (verdict.IsReached && verdict.Outcome != LevelOutcome.NothingToRecover)
        {
            FindingValue left = FindingValue.Mass("left", run.State.Appliance.Mass);
            yield return new Finding(
                PlanCodes.LevelReached,
                Severity.Note,
                run.Requirement.Source,
                $"The level, {Level(run)}, is reached with {left} left in the appliance.",
                verdict.HeldFor > Duration.Zero ? (FormattableString)$"It holds for {FindingValue.Duration("hold", verdict.HeldFor)}." : null,
                Rises(run, verdict));
        }

        if (IsMetAtStart(run))
        {
            yield return new Finding(
                PlanCodes.LevelMetAtStart,
                Severity.Note,
                run.Requirement.Source,
                $"When the job begins the gauge shows {FindingValue.GaugePressure("start", run.Job.Barometer.ToGauge(run.Start.Pressure), RoundingMode.Up)}: the level, {Level(run)}, was already met. Make sure that the gauge, the temperature and the charge are right.");
        }
    }

    /// <summary>Within the level the pressure rises in the hold, where the rule wants no rise by its words; null where it does not, or where a rule says no such thing.</summary>
    private static FormattableString? Rises(PlanRun run, LevelVerdict verdict)
    {
        if (run.Requirement.Hold is not { WantsNoRise: true } || verdict.HeldFor <= Duration.Zero || run.Stages.LastOrDefault(stage => stage.Kind == StageKind.Hold)?.Result is not StageResult hold
            || hold.Appliance.Pressure.Pascals - hold.Before.Appliance.Pressure.Pascals < ReadsZero)
        {
            return null;
        }

        FindingValue from = FindingValue.GaugePressure("before hold", run.Job.Barometer.ToGauge(hold.Before.Appliance.Pressure)), to = FindingValue.GaugePressure("after hold", run.Job.Barometer.ToGauge(hold.Appliance.Pressure), RoundingMode.Up);
        return $"Meanwhile the gauge comes up from {from} to {to}, within the level; the rule wants no rise by its words: where it is taken so, wait until it stands still, and pull again if it comes to the level.";
    }

    /// <summary>Whether all that is left, as an ideal gas as warm as the warmest around it, would have more than the pressure worth a warning: no real gas has more.</summary>
    private static bool CouldComeBack(PlanRun run)
    {
        ApplianceState end = run.State.Appliance;
        Appliance appliance = run.Job.Appliance;
        double warmest = new[] { run.Ambient, end.Temperature, end.MetalTemperature, appliance.Water?.Temperature ?? run.Ambient }.Max(temperature => temperature.Kelvins);
        double most = end.Mass.Kilograms * EquilibriumVessel.GasConstant * warmest / (appliance.Fluid.MolarMass.KilogramsPerMole * appliance.InternalVolume.CubicMeters);
        return end.Parts.Count > 1 || appliance.Oil is not null || most > run.Requirement.RequiredPressure.Pascals + ComesBack;
    }

    private static FindingValue Level(PlanRun run) =>
        FindingValue.GaugePressure("level", run.Job.Barometer.ToGauge(run.Goal), RoundingMode.Down);

    private static bool IsMetAtStart(PlanRun run) => run.ShowsGoal(run.Start) && !run.Start.HasLiquid;

    private static Finding NotReached(PlanRun run, LevelVerdict verdict, ApplianceState end)
    {
        FindingValue reached = FindingValue.GaugePressure("reached", run.Job.Barometer.ToGauge(end.Pressure), RoundingMode.Up);
        FindingValue left = FindingValue.Mass("left", end.Mass);
        FindingValue why = FindingValue.Text("obstacle", LevelVerdict.Why(verdict.Obstacle));
        FormattableString? help = Help(run, verdict.Obstacle, end);
        string source = run.Requirement.Source;
        return verdict.Outcome switch
        {
            LevelOutcome.ReachedOverLiquid or LevelOutcome.ShareRecovered => new Finding(
                PlanCodes.LevelOverLiquid,
                Severity.Stop,
                source,
                $"Not done: {FindingValue.Mass("liquid", end.LiquidMass)} of liquid at {FindingValue.Temperature("temperature", end.Temperature)} are left, whatever the gauge shows ({reached} against {Level(run)}).",
                help,
                $"Do not open the appliance."),
            LevelOutcome.ReachedNotHeld => new Finding(
                PlanCodes.LevelNotHeld,
                Severity.Stop,
                source,
                $"The level, {Level(run)}, does not hold: {why}. The gauge comes back to {reached} with {left} left.",
                help,
                $"Do not open the appliance."),
            _ => new Finding(
                PlanCodes.LevelNotReached,
                Severity.Stop,
                source,
                $"The level, {Level(run)}, is not reached: {why}. It comes to {reached} with {left} left.",
                help,
                $"Do not open the appliance."),
        };
    }

    private static FormattableString? Help(PlanRun run, LevelObstacle obstacle, ApplianceState end)
    {
        switch (obstacle)
        {
            case LevelObstacle.HighPressureCutout or LevelObstacle.CylinderPressure:
                return $"Cool the cylinder with ice and water, or bring a second one and change over.";
            case LevelObstacle.ApplianceAboveCutout:
                return null;
            case LevelObstacle.ThermalCutout:
                return $"Cool the cylinder with ice and water, and let the machine rest; or bring one with two stages. Throttled it gets hotter yet.";
            case LevelObstacle.DeepestVacuum when run.State.Cylinder is CylinderState cylinder:
                Pressure deepest = run.Job.Machine.DeepestVacuum(cylinder.Pressure);
                return $"Against {FindingValue.GaugePressure("cylinder", run.Job.Barometer.ToGauge(cylinder.Pressure))} in the cylinder the machine stops drawing at {FindingValue.GaugePressure("deepest vacuum", run.Job.Barometer.ToGauge(deepest), RoundingMode.Up)}: bring an empty or a cooler cylinder, or a machine that pulls deeper.";
            case LevelObstacle.LowPressureSwitch:
                return $"Bring a machine that pulls deeper, or one whose switch may be set lower.";
            case LevelObstacle.Oil:
                return $"Warm the oil (crankcase heater), let it stand and pull again.";
            case LevelObstacle.Freezing:
                return $"Keep water at more than {FindingValue.Temperature("freezing", new Temperature(273.15, TemperatureUnit.Kelvin))} moving through the tubes, or drain them and pull without regard to frost.";
            case LevelObstacle.HiddenSection:
                return $"Draw from a port of that part too, or open what lies between.";
            case LevelObstacle.Heat:
                return Heat(run, end);
            case LevelObstacle.CylinderPropertyRange when DryIce.CanForm(run.Job.Appliance.Fluid):
                return $"What flows into a cylinder that stands below {FindingValue.GaugePressure("coldest liquid", run.Job.Barometer.ToGauge(DryIce.TriplePressure(run.Job.Appliance.Fluid)), RoundingMode.Up)} may turn to dry ice in it: use a cylinder that holds gas above that, or let warm gas in first, slowly.";
            case LevelObstacle.PropertyRange when end.HasLiquid && DryIce.CanForm(run.Job.Appliance.Fluid):
                return $"What is still liquid would turn to dry ice, and boils too slowly above it: throttle so that the gauge stays above {FindingValue.GaugePressure("stay above", run.Job.Barometer.ToGauge(end.Pressure), RoundingMode.Up)} while there is liquid, and put heat in.";
            default:
                return null;
        }
    }

    /// <summary>Watts that boil what is left in an hour, or the time that the air takes.</summary>
    private static FormattableString? Heat(PlanRun run, ApplianceState end)
    {
        double kelvins = end.Temperature.Kelvins;
        if (!run.Job.Appliance.Fluid.Model.TrySaturationAtTemperature(kelvins, out SaturationPoint saturation))
        {
            return null;
        }

        double joules = end.LiquidMass.Kilograms * (saturation.Dew.Enthalpy - saturation.Bubble.Enthalpy);
        FindingValue watts = FindingValue.Power("heat for an hour", Power.FromWatts(joules / Hour));
        double air = run.Job.Appliance.OuterConductance * (run.Ambient.Kelvins - kelvins);
        double seconds = joules / Math.Max(air, 1e-9);
        return seconds < 30 * 24 * Hour
            ? (FormattableString)$"Liquid boils only as fast as heat comes in: warm the appliance with {watts} for an hour, or leave it {FindingValue.Duration("wait", new Duration(seconds, DurationUnit.Second))} in this air, and pull again."
            : (FormattableString)$"Liquid boils only as fast as heat comes in: warm the appliance with {watts} for an hour and pull again.";
    }

    private static Finding? PulledPast(PlanRun run)
    {
        PlannedStage? stage = run.Stages.LastOrDefault(s => s.Kind == StageKind.VaporRecovery);
        if (IsMetAtStart(run) || stage?.Step.Reason is not (StepReason.PullDeeper or StepReason.PullLonger or StepReason.Cool or StepReason.Throttle or StepReason.Warm) || stage.Result is null)
        {
            return null;
        }

        FindingValue? reading = stage.Step.AppliancePressure is Pressure end && end.Pascals < run.Goal.Pascals * 0.995
            ? FindingValue.GaugePressure("stop", run.Job.Barometer.ToGauge(end), RoundingMode.Down)
            : null;
        bool liquid = stage.Step.Reason == StepReason.PullLonger;
        FindingValue time = FindingValue.Duration("pull", stage.Duration);
        FormattableString because = liquid ? (FormattableString)$"liquid is left where the gauge first shows the level." : run.Job.Appliance.Oil is null
            ? (FormattableString)$"vapor that warms would bring the pressure back."
            : (FormattableString)$"what the oil gives off late would bring the pressure back.";
        return reading is not null
            ? new Finding(PlanCodes.PullPastLevel, Severity.Note, "simulated pull and hold", $"Pull on past the level to {reading}, {time} in all, and the hold passes the first time:", because)
            : stage.Step.Duration is not null
                ? new Finding(PlanCodes.PullPastLevel, Severity.Note, "simulated pull and hold", $"Pull for {time} in all, past the level, and the hold passes the first time:", because)
                : null;
    }

    /// <summary>A part that liquid fills once it is warm, and from which it has no way out.</summary>
    private static Finding? FullOfLiquid(PlanRun run, ApplianceState end)
    {
        // What is shut off is to stand as warm a day as a cylinder (49 CFR 173.304(b) for cylinders).
        double least = Math.Max(FillFigures.LiquidFullTemperature, run.Ambient.Kelvins);
        SectionState? worst = null;
        for (int i = 0; i < end.Parts.Count; i++)
        {
            SectionState part = end.Parts[i];
            if (i != run.Job.Appliance.VaporPortSection && part.LiquidKilograms > 0
                && new ClosedVessel(run.Job.Appliance.Fluid.Model, part.Kilograms / part.Volume, part.Name).LiquidFullTemperature is double kelvins && kelvins < least)
            {
                worst = part;
                least = kelvins;
            }
        }

        return worst is null ? null : new Finding(
            PlanCodes.SectionFullOfLiquid,
            Severity.Stop,
            run.Job.Appliance.Fluid.Model.Source,
            $"{FindingValue.Text("section", worst.Name)} holds so much that liquid fills it at {FindingValue.Kelvins("full at", least, RoundingMode.Down)}: shut off, it bursts as it warms. Open what lies between before anything else, keep people away until it is, and never warm it.");
    }

    private static Finding? Hidden(PlanRun run, ApplianceState end)
    {
        SectionContent? worst = end.Sections
            .Where((section, i) => i != run.Job.Appliance.VaporPortSection
                && (section.LiquidMass.Kilograms > 0 || section.Pressure.Pascals > run.Requirement.RequiredPressure.Pascals * 1.05))
            .OrderByDescending(section => section.Mass.Kilograms).FirstOrDefault();
        return worst is null ? null : new Finding(
            PlanCodes.HiddenSection,
            Severity.Warning,
            "restriction between the parts of the appliance",
            $"The gauge does not see {FindingValue.Text("section", worst.Name)}: {FindingValue.Mass("mass", worst.Mass)} at {FindingValue.GaugePressure("pressure", run.Job.Barometer.ToGauge(worst.Pressure), RoundingMode.Up)} are still there. Draw from a port on that side too, or open what lies between.");
    }
}
