using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Vessels;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>The setup: hoses, push-pull, heat, water in tubes; and what is assumed about the appliance.</summary>
internal static class SetupFindings
{
    /// <summary>A push that comes to this share of the design pressure, absolute, is near it. Our choice.</summary>
    private const double NearDesign = 0.8;

    public static IEnumerable<Finding> ToDo(PlanRun run)
    {
        PlannedStage[] pushes = [.. run.Stages.Where(stage => stage.Kind == StageKind.PushPull && stage.Result is not null)];
        if (pushes.Length > 0)
        {
            yield return new Finding(
                PlanCodes.PushPullSiphons,
                Severity.Warning,
                Sources.CommonPractice,
                $"Stay with the push-pull and watch the scale: liquid keeps siphoning after the machine stops. Shut the cylinder's liquid valve first; a float switch alone is no guarantee.");
            if (run.Job.Appliance.DesignGaugePressure is Pressure design && Highest(pushes) > NearDesign * run.Job.Barometer.FromGauge(design).Pascals)
            {
                yield return new Finding(
                    PlanCodes.PushPullThrottled,
                    Severity.Caution,
                    "design pressure as given",
                    $"Throttle the machine's inlet (never the outlet of a machine that runs) so that the appliance stays at {FindingValue.GaugePressure("throttle at", PushPull.DesignShare * design, RoundingMode.Down)} or below: nine tenths of {FindingValue.GaugePressure("design pressure", design, RoundingMode.Down)}, what it is built for or its relief device opens at.");
            }
        }

        if (AtDesignPressure(run) is Finding pressed)
        {
            yield return pressed;
        }

        if (run.Stages.FirstOrDefault(stage => stage.Step.Reason == StepReason.KeepLiquid) is { Step.LowestPressure: Pressure floor } slow)
        {
            FindingValue stays = FindingValue.GaugePressure("stay above", run.Job.Barometer.ToGauge(floor), RoundingMode.Up);
            string solid = DryIce.CanForm(run.Job.Appliance.Fluid) ? "turns to dry ice, which plugs lines and comes back as vapor for hours" : "is colder than is computed here";
            yield return new Finding(
                PlanCodes.KeepLiquid,
                Severity.Warning,
                run.Job.Appliance.Fluid.Model.Source,
                $"Throttle the inlet so that the appliance's gauge stays above {stays} while there is liquid, {FindingValue.Duration("boiling", slow.Duration)}: below it what is liquid {FindingValue.Text("else", solid)}. Then open it wide.");
        }

        if (Freezing(run) is Finding freezing)
        {
            yield return freezing;
        }

        foreach (Finding finding in PaceFindings.ToDo(run))
        {
            yield return finding;
        }

        PlannedStage? warm = run.Stages.FirstOrDefault(stage => stage.Step.Reason == StepReason.Warm);
        if (warm is not null)
        {
            yield return new Finding(
                PlanCodes.WarmAppliance,
                Severity.Caution,
                "simulated pull and hold",
                warm.Step.Inputs.HeaterPower > 0 && warm.Step.Inputs.HeaterPower < (double)run.Job.Aids.Heater.Watts
                    ? $"Warm the appliance while it is pulled with what is at hand, the heater at {FindingValue.Power("heater", Power.FromWatts(warm.Step.Inputs.HeaterPower))} or switched on and off to that on average; never with a flame."
                    : (FormattableString)$"Warm the appliance while it is pulled with what is at hand; never with a flame.",
                warm.Step.Saves.Seconds > 60 ? (FormattableString)$"It saves {FindingValue.Duration("saves", warm.Step.Saves)}." : null);
        }
    }

    public static IEnumerable<Finding> Known(PlanRun run)
    {
        Appliance appliance = run.Job.Appliance;
        bool pulls = run.Stages.Any(stage => stage.Kind == StageKind.VaporRecovery);
        bool hose = run.Job.Hoses.LiquidSide.Count > 0;
        if (pulls && hose == appliance.LiquidReachable && LiquidChoice.WhyNoPush(run.Job, run.Stages, run.Start.LiquidMass.Kilograms) is string why)
        {
            yield return new Finding(PlanCodes.PushPullNotUsed, Severity.Note, Sources.CommonPractice, $"Push-pull is not used: {FindingValue.Text("reason", why)}.");
        }

        double pushed = Highest(run.Stages.Where(stage => stage.Kind == StageKind.PushPull && stage.Result is not null));
        if (pushed > run.Job.Barometer.Pressure.Pascals && appliance.DesignGaugePressure is null)
        {
            yield return new Finding(
                PlanCodes.DesignPressureUnknown,
                Severity.Caution,
                Sources.CommonPractice,
                $"Push-pull raises the appliance to {FindingValue.GaugePressure("highest", run.Job.Barometer.ToGauge(new Pressure(pushed, PressureUnit.Pascal)), RoundingMode.Up)}; its design pressure was not given: read it, and the set pressure of its relief device.");
        }

        if (hose != appliance.LiquidReachable)
        {
            yield return new Finding(
                PlanCodes.HoseLeadsNowhere,
                Severity.Note,
                Sources.CommonPractice,
                $"{FindingValue.Text("what", appliance.LiquidReachable ? "A liquid port is given but no liquid hose" : "A liquid hose is given but no port below the liquid")}: liquid cannot be taken by push-pull with what was given.");
        }

        if (pulls && (appliance.HeatResistance is null || appliance.MetalMass is null))
        {
            FindingValue heat = FindingValue.Number("conductance in W/K", appliance.OuterConductance, 2);
            FindingValue metal = FindingValue.Mass("metal", new Mass(appliance.MetalKilograms, MassUnit.Kilogram));
            yield return new Finding(
                PlanCodes.HeatAssumed,
                Severity.Note,
                Sources.CommonPractice,
                What(appliance, heat, metal));
        }

        if (pulls && appliance.Oil is { } oil)
        {
            yield return new Finding(
                PlanCodes.OilHolds,
                Severity.Note,
                "Raoult's law; the factor from memory",
                $"At the end the oil still holds some {FindingValue.Mass("dissolved", run.State.Appliance.DissolvedMass)} of refrigerant and gives it off late: an estimate, real oils hold up to three times as much at low pressure.");
            if (OilMatch.Check(appliance.Fluid, oil.Kind) is Finding other)
            {
                yield return other;
            }
        }

        if (appliance.Fluid.Quality == ModelQuality.Estimated)
        {
            yield return new Finding(
                PlanCodes.BlendEstimated,
                Severity.Caution,
                appliance.Fluid.Model.Source,
                $"At least one pair of components of {FindingValue.Text("refrigerant", appliance.Fluid.Designation)} has no published mixing parameters: pressures may be off by 5 % to 15 %.");
        }
    }

    /// <summary>Pa; 0 for no stage.</summary>
    private static double Highest(IEnumerable<PlannedStage> stages) =>
        stages.SelectMany(stage => stage.Result!.Trajectory).Select(point => point.AppliancePascals).DefaultIfEmpty(0).Max();

    private static Finding? AtDesignPressure(PlanRun run)
    {
        PlannedStage? stage = run.Stages.FirstOrDefault(each => each.Result?.End == StageEnd.DesignPressure);
        if (stage is null || run.Job.Appliance.DesignGaugePressure is not Pressure design)
        {
            return null;
        }

        FindingValue limit = FindingValue.GaugePressure("design pressure", design, RoundingMode.Down);
        return new Finding(
            StageCodes.DesignPressure,
            Severity.Warning,
            "design pressure as given",
            stage.Kind is StageKind.PushPull or StageKind.Equalize
                ? (FormattableString)$"The push-pull ends early: the appliance comes to {limit}, what it is built for or its relief device opens at. The rest is taken as vapor."
                : (FormattableString)$"The appliance comes to {limit}, what it is built for or its relief device opens at, only by warming in this air: shade it, cool it or begin at once.");
    }

    private static Finding? Freezing(PlanRun run)
    {
        if (run.Job.Appliance.Water is null)
        {
            return null;
        }

        PlannedStage? coldest = run.Stages.Where(stage => stage.Result is { Trajectory.Count: > 0 }).OrderBy(stage => stage.Result!.ColdestSurface.Kelvins).FirstOrDefault();
        if (coldest is null || coldest.Result!.ColdestSurface.Kelvins > MetalShell.FreezingPoint)
        {
            return null;
        }

        // The pull that brings it there; what was as cold before the first one is none of its doing.
        PlannedStage first = run.Stages.FirstOrDefault(stage => StepSimulation.MovesRefrigerant(stage.Kind) && stage.Result is { Trajectory.Count: > 0 } result && result.ColdestSurface.Kelvins <= MetalShell.FreezingPoint) ?? coldest;
        double at = coldest.Result.Trajectory.FirstOrDefault(point => point.MetalKelvins <= MetalShell.FreezingPoint).Seconds;
        return new Finding(
            PlanCodes.TubesFreeze,
            run.Job.KeepAboveFreezing || first.Result!.Before.Appliance.MetalTemperature.Kelvins < MetalShell.FreezingPoint ? Severity.Warning : Severity.Stop,
            Sources.CommonPractice,
            at > 0
                ? $"Water in the tubes can freeze and burst them {FindingValue.Duration("after", new Duration(at, DurationUnit.Second))} into this pull: the surface comes to {FindingValue.Temperature("coldest", coldest.Result.ColdestSurface, RoundingMode.Down)}."
                : (FormattableString)$"Water in the tubes can freeze and burst them: the surface comes to {FindingValue.Temperature("coldest", coldest.Result.ColdestSurface, RoundingMode.Down)}.",
            $"Keep the water moving or drain it, and throttle the inlet; licensed practice governs.");
    }

    private static FormattableString What(Appliance appliance, FindingValue heat, FindingValue metal) =>
        appliance.MetalMass is not null ? $"No heat exchange with the surroundings was given: {heat} W/K stand in, still air on an appliance of this size. Times and what stays behind depend on it."
        : appliance.HeatResistance is not null ? (FormattableString)$"No metal was given: {metal} stand in for an appliance of this size. Times and what stays behind depend on it."
        : $"No heat exchange with the surroundings and no metal were given: {heat} W/K, still air, and {metal} of metal stand in for an appliance of this size. Times and what stays behind depend on it.";
}
