using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Docs.Accuracy;
using Refrigerant.Recovery.Docs.Charts;
using Refrigerant.Recovery.Docs.Questions;
using Refrigerant.Recovery.Docs.Tables;
using Refrigerant.Recovery.Docs.Validation;

namespace Refrigerant.Recovery.Docs;

/// <summary>Every example and every chart of the documentation.</summary>
internal static class Catalogue
{
    public static IReadOnlyList<Example> Examples { get; } =
    [
        new("start-properties.txt", GettingStarted.Properties),
        new("start-gauge.txt", GettingStarted.Gauge),
        new("start-errors.txt", GettingStarted.Errors),
        new("start-raw.txt", GettingStarted.Raw),
        new("cancelled.txt", Cancellation.Run),
        new("how-long-plan.txt", HowLong.Plan),
        new("how-long-findings.txt", HowLong.Findings),
        new("how-long-sure.txt", HowLong.Sure),
        new("how-long-vapor.txt", OneStage.Vapor),
        new("how-long-ratings.txt", OneStage.Ratings),
        new("cautions.md", CautionsTable.Print),
        new("findings.md", FindingsTable.Print),
        new("refrigerants.md", RefrigerantsTable.Print),
        new("faster.txt", Faster.Compare),
        new("faster-own.txt", Faster.Own),
        new("faster-hoses.txt", HosesAndCores.Print),
        new("blends-drift.txt", Drift.Print),
        new("left-cold-pool.txt", ColdPool.Run),
        new("level-gauge.txt", LevelUpHere.Gauge),
        new("level-required.txt", LevelUpHere.Required),
        new("how-much-limit.txt", HowMuchMayIPut.Limit),
        new("how-much-rules.txt", HowMuchMayIPut.Rules),
        new("how-much-scale.txt", HowMuchMayIPut.OnTheScale),
        new("how-much-heat.txt", HowMuchMayIPut.Heat),
        new("left-estimate.txt", WhatIsLeft.Estimate),
        new("left-rise.txt", WhatIsLeft.Rise),
        new("during-course.txt", DuringTheJob.Course),
        new("during-fault.txt", DuringTheJob.Fault),
        new("log-fit.txt", LogAJob.Fit),
        new("log-read.txt", LogAJob.Read),
        new("change-predict.txt", ChangeOfRefrigerant.Predict),
        new("change-drain.txt", ChangeOfRefrigerant.Drain),
        new("change-push.txt", ChangeOfRefrigerant.Push),
        new("validation-vehicle.md", VehicleRecovery.Print),
        new("validation-oil.md", OilPairs.Print),
        new("validation-cylinders.md", CylindersInStillAir.Print),
        new("validation-tank.md", SelfCoolingTank.Print),
        new("validation-rates.md", MachineRates.Print),
        new("validation-cores.md", ValveCores.Print),
        new("accuracy-saturation.md", () => AccuracyTable.Print(PureDeviations.Saturation, PureDeviations.SaturationProperties)),
        new("accuracy-left-out.txt", () => Console.WriteLine(PureDeviations.LeftOut)),
        new("accuracy-blends-left-out.txt", () => Console.WriteLine(BlendDeviations.LeftOut)),
        new("accuracy-blends-saturation.md", () => AccuracyTable.Print(BlendDeviations.Saturation, BlendDeviations.SaturationProperties)),
        new("accuracy-blends-single-phase.md", () => AccuracyTable.Print(BlendDeviations.SinglePhase, BlendDeviations.SinglePhaseProperties)),
        new("accuracy-single-phase.md", () => AccuracyTable.Print(PureDeviations.SinglePhase, PureDeviations.SinglePhaseProperties)),
    ];

    public static IReadOnlyList<Chart> Charts { get; } =
    [
        new("level-up-here.png", ElevationChart.Draw),
        new("how-much.png", CylinderHeatChart.Draw),
        new("left.png", ResidualChart.Draw),
        new("how-long-mass.png", PlanChart.DrawMass),
        new("how-long-pressure.png", PlanChart.DrawPressure),
        new("how-long-heat.png", RecoveryChart.Draw),
        new("during-good.png", EstimateChart.DrawGood),
        new("during-missed.png", EstimateChart.DrawMissed),
        new("during-pool.png", EstimateChart.DrawPool),
        new("during-fault.png", EstimateChart.DrawFault),
        new("faster.png", FasterChart.Draw),
        new("faster-hoses.png", HosesChart.Draw),
        new("validation-vehicle.png", ValidationChart.DrawVehicle),
        new("validation-oil.png", ValidationChart.DrawOil),
        new("accuracy-saturation.png", plot => DeviationChart.Draw(plot, PureDeviations.Saturation, PureDeviations.SaturationProperties)),
        new("accuracy-blends-saturation.png", plot => DeviationChart.Draw(plot, BlendDeviations.Saturation, BlendDeviations.SaturationProperties)),
        new("accuracy-blends-single-phase.png", plot => DeviationChart.Draw(plot, BlendDeviations.SinglePhase, BlendDeviations.SinglePhaseProperties)),
        new("accuracy-single-phase.png", plot => DeviationChart.Draw(plot, PureDeviations.SinglePhase, PureDeviations.SinglePhaseProperties)),
    ];
}
