using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Processes;

/// <summary>
/// The appliance stands shut while heat goes back into it, or is put in, and what hides in it shows as pressure: the hold after a pull, a wait, a warm-up. A cylinder that
/// is connected cools or warms meanwhile.
/// </summary>
/// <remarks>Topology: the appliance's vessels and the cylinder, nothing between them. The appliance is tight and has no air in it.</remarks>
public static class Hold
{
    private const int FewestSteps = 24;

    /// <summary>Simulates it. Where the composition was followed before, it is here too.</summary>
    /// <param name="appliance">The appliance.</param>
    /// <param name="options">Start, length, heat and what ends it early.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The charge does not fit the appliance.</exception>
    /// <exception cref="Fluids.PropertyRangeException">The starting state is outside the range of the refrigerant's equation.</exception>
    public static StageResult Simulate(Appliance appliance, HoldOptions options)
    {
        _ = Require.NotNull(appliance, nameof(appliance));
        _ = Require.NotNull(options, nameof(options));
        var stage = new Stage(appliance, null, options);
        ApplianceModel model = stage.BuildAppliance();
        EquilibriumVessel? cylinder = stage.Cylinder?.Vessel;
        stage.Connect(stage.WithCylinder(model.Vessels), model.Connections, state => model.Initialize(state, stage.Before.Appliance));
        if (options.EndPressure is UnitsNet.Pressure end)
        {
            double pascals = end.Pascals;
            stage.Watch(StageEnd.TargetReached, () => pascals - model.Port.Pressure);
        }

        if (options.CylinderEndPressure is UnitsNet.Pressure cool && cylinder is not null)
        {
            double pascals = cool.Pascals;
            stage.Watch(StageEnd.TargetReached, () => cylinder.Pressure - pascals);
        }

        if (stage.HighestAppliancePressure is double limit && stage.Before.Appliance.HighestPressure.Pascals < limit)
        {
            // Nothing flows into the cylinder, full or hot as it may be: it only cools or warms.
            stage.Watch(StageEnd.DesignPressure, () => limit - model.HighestPressure);
        }

        stage.WatchLiquid(() => model.LiquidMargin);
        stage.WatchFreezing(model.PortShell, () => model.ColdestSurface, stops: false);
        var full = new LiquidFullWatch(stage, model.Vessels, cylinder);
        OdeOutcome outcome = stage.Run(
            time => stage.Point(time, model),
            options.MaximumDuration.Seconds / FewestSteps);
        StageEnd reason = outcome.Reason == OdeStopReason.EndTime ? StageEnd.TimeOver : stage.End(outcome);
        stage.CloseFigures(0);
        ApplianceState after = stage.Read(model.Read);
        stage.Standing = options.Machine;
        return stage.Result(reason, outcome, after, (findings, _) =>
        {
            bool isFull = full.Add(findings);
            Add(findings, stage.Before.Appliance, after, outcome.Time, isFull);
        });
    }

    private static void Add(List<Finding> findings, ApplianceState start, ApplianceState after, double seconds, bool isFull)
    {
        FormattableString rise = $"In {FindingValue.Seconds("time", seconds)} the pressure comes from {FindingValue.AbsolutePressure("from", start.Pressure)} to {FindingValue.AbsolutePressure("to", after.Pressure)}.";
        if (after.HasLiquid)
        {
            findings.Add(new Finding(
                StageCodes.HoldLiquid,
                Severity.Warning,
                "energy balance of the closed appliance",
                rise,
                $"{FindingValue.Mass("liquid", after.LiquidMass)} of liquid are still there: pull again."));
            return;
        }

        FormattableString rest = $"No liquid is left. A gauge that rises further shows a leak, air, or refrigerant from oil.";
        findings.Add(new Finding(
            StageCodes.HoldRise,
            Severity.Note,
            "energy balance of the closed appliance",
            rise,
            isFull ? null : rest));
    }
}
