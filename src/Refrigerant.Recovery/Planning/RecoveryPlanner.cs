using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Planning;

/// <summary>Plans a recovery: a strategy chooses stage after stage, the simulation runs them, until the level is reached and held or nothing helps any more.</summary>
public static class RecoveryPlanner
{
    /// <summary>Plans a job.</summary>
    /// <param name="job">The job.</param>
    /// <returns>The plan; where the job cannot be done it says so and how far it gets.</returns>
    /// <remarks>
    /// Deterministic; takes a few milliseconds. Planning figures: local codes and licensed practice govern.
    /// </remarks>
    /// <exception cref="ArgumentNullException"><paramref name="job"/> is null.</exception>
    /// <exception cref="ImpossibleJobException">
    /// The job's parts contradict each other: the charge does not fit the appliance, a cylinder's content the cylinder, a heel is above the charge, a design pressure below
    /// the appliance's own; sections do not add up, a port or a connection names none of them or joins one to itself; surroundings that are not given would be outside their range.
    /// </exception>
    /// <exception cref="PropertyRangeException">A starting state is outside the range of the refrigerant's equation.</exception>
    /// <example>
    /// <code>
    /// Hose hose = new()
    /// {
    ///     Length = Length.FromFeet(5),
    ///     InnerDiameter = Length.FromMillimeters(8),
    /// };
    /// RecoveryPlan plan = RecoveryPlanner.Plan(new RecoveryJob
    /// {
    ///     Appliance = new Appliance
    ///     {
    ///         Fluid = Fluid.Get("R-410A"),
    ///         Charge = Mass.FromPounds(22),
    ///         InternalVolume = Volume.FromLiters(24),
    ///         Temperature = Temperature.FromDegreesFahrenheit(75),
    ///     },
    ///     Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
    ///     Hoses = new HoseSet { VaporSide = [hose], Discharge = [hose] },
    ///     Cylinders =
    ///     [
    ///         RecoveryCylinder.FromMark(
    ///             "DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)),
    ///     ],
    /// });
    /// Console.WriteLine(plan.IsLevelReached); // True
    /// </code>
    /// </example>
    public static RecoveryPlan Plan(RecoveryJob job) => Plan(job, StandardStrategy.Instance);

    /// <summary>Plans a job by a strategy.</summary>
    /// <param name="job">The job.</param>
    /// <param name="strategy">What decides the next step.</param>
    /// <param name="cancellation">Cancels it.</param>
    /// <param name="progress">Told the share of the charge that is out after each stage, never falling, and 1 at the end, from the calling thread; what it throws comes through; null for nobody.</param>
    /// <returns>The plan; where the job cannot be done it says so and how far it gets.</returns>
    /// <exception cref="ArgumentNullException">Job or strategy is null.</exception>
    /// <exception cref="ImpossibleJobException">The job's parts contradict each other.</exception>
    /// <exception cref="PropertyRangeException">A starting state is outside the range of the refrigerant's equation.</exception>
    /// <exception cref="InvalidOperationException">The strategy connects a cylinder that is not among the job's, or that must not be filled, moves refrigerant before one is connected, or clears the machine into one that is at its limit.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static RecoveryPlan Plan(RecoveryJob job, IRecoveryStrategy strategy, CancellationToken cancellation = default, IProgress<double>? progress = null)
    {
        var run = new PlanRun(Require.NotNull(job, nameof(job)), Require.NotNull(strategy, nameof(strategy)));
        run.Run(cancellation, progress);
        LevelVerdict verdict = Verdicts.For(run);
        MassLedger ledger = Ledger(run);
        FractionationResult? drift = Drift(run);
        List<CylinderUse> uses = Uses(run, ledger);
        return new RecoveryPlan(
            run.Job,
            run.Requirement,
            verdict,
            [.. run.Stages],
            uses,
            ledger,
            run.State.Appliance,
            drift,
            PlanFindings.For(run, verdict, ledger, drift),
            PlanCautions.For(run, uses),
            run.Machine.Carried);
    }

    /// <summary>The drift over all stages that followed the composition.</summary>
    private static FractionationResult? Drift(PlanRun run)
    {
        PlannedStage[] followed = [.. run.Stages.Where(stage => stage.Result is { Fractionation: not null })];
        if (followed.Length == 0)
        {
            return null;
        }

        double start = followed[0].Start.Seconds;
        FractionationPoint[] points =
        [
            .. run.Stages.Where(stage => stage.Result is not null)
                .SelectMany(stage => stage.Result!.Trajectory.Where(point => point.Content is not null)
                    .Select(point => new FractionationPoint(point with { Seconds = stage.Start.Seconds + point.Seconds - start }, 0))),
        ];
        return new FractionationResult(
            (MixtureModel)run.Job.Appliance.Fluid.Model,
            points);
    }

    private static MassLedger Ledger(PlanRun run)
    {
        ApplianceState end = run.State.Appliance;
        return new MassLedger(
            run.Job.Appliance.Charge.Kilograms,
            run.InCylinders,
            end.VaporMass.Kilograms,
            end.LiquidMass.Kilograms,
            end.DissolvedMass.Kilograms,
            run.InHosesAndMachine,
            run.Released,
            run.Stages.Count > 0 ? run.Machine.Carried?.Trapped.BestKilograms ?? 0 : 0);
    }

    /// <summary>What hoses and machine keep and what escaped did not reach the cylinders: each bears it by its share of the delivery.</summary>
    private static List<CylinderUse> Uses(PlanRun run, MassLedger ledger)
    {
        double share = run.Delivered > 0 ? ledger.InCylinders.Kilograms / run.Delivered : 0;
        return
        [
            .. run.Cylinders.OrderBy(cylinder => run.Used.IndexOf(cylinder.Cylinder.Label) is >= 0 and int place ? place : int.MaxValue)
                .ThenByDescending(cylinder => cylinder.IsUsable)
                .ThenByDescending(cylinder => cylinder.Limit.Room.Kilograms)
                .Select(cylinder => new CylinderUse(
                    cylinder.Cylinder, cylinder.Limit, share * cylinder.Kilograms, cylinder.State?.Pressure, cylinder.State?.Temperature)),
        ];
    }
}
