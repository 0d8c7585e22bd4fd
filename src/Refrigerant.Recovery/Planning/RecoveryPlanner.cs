using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Planning;

/// <summary>Plans a recovery: sweep, push-pull where it pays, hose change, vapor recovery, hold and re-pull, clearing, closing.</summary>
public static class RecoveryPlanner
{
    /// <summary>Plans a job.</summary>
    /// <param name="job">The job.</param>
    /// <returns>The plan; where the job cannot be done it says so and how far it gets.</returns>
    /// <remarks>
    /// Deterministic; takes about a millisecond. Planning figures: local codes and licensed practice govern.
    /// </remarks>
    /// <exception cref="ArgumentNullException"><paramref name="job"/> is null.</exception>
    /// <exception cref="ArgumentException">The charge does not fit the appliance, or a cylinder's content the cylinder.</exception>
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
    public static RecoveryPlan Plan(RecoveryJob job)
    {
        _ = Require.NotNull(job, nameof(job));
        var run = new PlanRun(job);
        run.Run();
        MassLedger ledger = Ledger(run);
        FractionationResult? drift = Drift(run);
        List<CylinderUse> uses = Uses(run, ledger);
        return new RecoveryPlan(
            job,
            run.Requirement,
            run.IsLevelReached,
            [.. run.Stages],
            uses,
            ledger,
            run.State,
            drift,
            PlanFindings.For(run, ledger, drift),
            PlanCautions.For(run, uses));
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
                    .Select(point => new FractionationPoint(point, stage.Start.Seconds - start))),
        ];
        return new FractionationResult(
            (MixtureModel)run.Job.Appliance.Fluid.Model,
            points);
    }

    private static MassLedger Ledger(PlanRun run)
    {
        ApplianceState end = run.State;
        double delivered = run.Cylinders.Sum(cylinder => cylinder.Delivered);
        return new MassLedger(
            run.Job.Appliance.Charge.Kilograms,
            delivered - run.InHosesAndMachine - run.Released,
            end.VaporMass.Kilograms,
            end.LiquidMass.Kilograms,
            end.DissolvedMass.Kilograms,
            run.InHosesAndMachine,
            run.Released);
    }

    /// <summary>What hoses and machine keep and what escaped did not reach the cylinders: each bears it by its share of the delivery.</summary>
    private static List<CylinderUse> Uses(PlanRun run, MassLedger ledger)
    {
        double delivered = run.Cylinders.Sum(cylinder => cylinder.Delivered);
        double share = delivered > 0 ? ledger.InCylinders.Kilograms / delivered : 0;
        return
        [
            .. run.Cylinders.Select(cylinder => new CylinderUse(
                cylinder.Cylinder, cylinder.Limit, share * cylinder.Delivered, cylinder.State?.Pressure, cylinder.State?.Temperature)),
        ];
    }
}
