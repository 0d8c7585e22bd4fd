using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Links;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Processes;

/// <summary>Liquid through the machine: the everyday first step where push-pull does not pay.</summary>
/// <remarks>
/// Topology: the appliance's liquid port — liquid hose — throttled machine — condenser — cylinder. Ends: the liquid down to its heel, cylinder at its limit or its pressure,
/// switches of the machine. Planning figures: local codes and licensed practice govern; only a machine whose maker says so may draw liquid.
/// </remarks>
public static class LiquidRecovery
{
    private const int FewestSteps = 12;

    /// <summary>Liquid that counts as none, as a share of the charge.</summary>
    private const double LeastShare = 1e-3;

    /// <summary>Throttling to keep tubes from freezing begins this far above it, K.</summary>
    private const double FreezingBand = 1;

    /// <summary>Throttling to keep clear of the cut-out begins at this share below it.</summary>
    private const double CutoutBand = 0.04;

    /// <summary>Simulates it.</summary>
    /// <param name="appliance">What the refrigerant is taken from; its liquid must be within reach.</param>
    /// <param name="machine">The recovery machine, which must be one that takes liquid.</param>
    /// <param name="hoses">The hoses: the liquid side leads to the machine; where there is none, the vapor side does.</param>
    /// <param name="cylinder">The receiving cylinder.</param>
    /// <param name="options">Start and limits.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The liquid cannot be reached, the machine takes none, or a charge does not fit.</exception>
    /// <exception cref="PropertyRangeException">The starting state is outside the range of the refrigerant's equation.</exception>
    public static StageResult Simulate(
        Appliance appliance, RecoveryMachine machine, HoseSet hoses, RecoveryCylinder cylinder, LiquidRecoveryOptions options)
    {
        _ = Require.NotNull(appliance, nameof(appliance));
        _ = Require.NotNull(machine, nameof(machine));
        _ = Require.NotNull(hoses, nameof(hoses));
        _ = Require.NotNull(cylinder, nameof(cylinder));
        _ = Require.NotNull(options, nameof(options));
        if (!appliance.LiquidReachable)
        {
            throw new ArgumentException("The appliance's liquid cannot be reached (LiquidReachable is false); no liquid can be drawn.", nameof(appliance));
        }

        if (!machine.TakesLiquid)
        {
            throw new ArgumentException("The machine takes no liquid (TakesLiquid is false).", nameof(machine));
        }

        var stage = new Stage(appliance, cylinder, options);
        ApplianceModel model = stage.BuildAppliance();
        EquilibriumVessel receiver = stage.Cylinder!.Vessel;
        EquilibriumVessel port = model.LiquidPort;
        if (!stage.Before.Appliance.HasLiquid)
        {
            return stage.Nothing();
        }

        var governors = new List<Governor>();
        if (options.KeepAboveFreezing && model.HasWater)
        {
            governors.Add(new Governor(() => model.ColdestSurface - MetalShell.FreezingPoint, FreezingBand));
        }

        double cutout = machine.HighPressureCutout.Pascals;
        if (options.KeepBelowCutout)
        {
            double limit = Math.Min(cutout, stage.HighestCylinderPressure);
            governors.Add(new Governor(() => limit - receiver.Pressure, CutoutBand * limit));
        }

        IReadOnlyList<Hose> line = hoses.LiquidSide.Count > 0 ? hoses.LiquidSide : hoses.VaporSide;
        var link = new LiquidMachineLink(
            port, receiver, new Line(line), stage.Flash, machine, stage.Model, stage.Gas, options.SuctionShare.DecimalFractions, stage.StartTemperature, stage.Surroundings)
        {
            Governors = [.. governors],
        };
        stage.Connect(stage.WithCylinder(model.Vessels), [link, .. model.Connections], state => model.Initialize(state, stage.Before.Appliance));
        double heel = Math.Max(Math.Min(appliance.LiquidHeel.Kilograms, stage.Before.Appliance.Kilograms), LeastShare * stage.Charge);
        stage.Watch(StageEnd.LiquidGone, () => (port.LiquidMass - heel) / stage.Charge);
        stage.WatchLimits(null);
        stage.Watch(StageEnd.HighPressureCutout, () => cutout - link.DischargePressure);
        if (machine.LowPressureSwitch is UnitsNet.Pressure low)
        {
            double lowest = low.Pascals;
            stage.Watch(StageEnd.LowPressureSwitch, () => link.SuctionPressure - lowest);
        }

        double least = 1e-6 * machine.Displacement.CubicMetersPerSecond * stage.Model.CriticalDensity;
        stage.Watch(StageEnd.Stalled, () => link.Flow - least);
        stage.WatchFreezing(model.PortShell, () => model.ColdestSurface, stops: false);
        OdeOutcome outcome = stage.Run(
            time => stage.Point(time, model, port) with
            {
                SuctionPascals = link.SuctionPressure,
                DischargePascals = link.DischargePressure,
                KilogramsPerSecond = link.Flow,
            },
            stage.Charge / (machine.Displacement.CubicMetersPerSecond * stage.Model.CriticalDensity) / FewestSteps);
        stage.CloseFigures(0);
        stage.Figures.LiquidMoved = link.Passed(stage.State);
        StageEnd end = stage.End(outcome);
        return stage.Result(end, outcome, stage.Read(model.Read), (findings, after) => Add(findings, appliance, stage, end, after));
    }

    private static void Add(List<Finding> findings, Appliance appliance, Stage stage, StageEnd end, SimulationState after)
    {
        SectionFindings.Add(findings, appliance, after.Appliance);
        if (end == StageEnd.PropertyRange && stage.Figures.CylinderOutOfRange)
        {
            findings.Add(VaporRecoveryFindings.CylinderOutOfRange(
                appliance, after.Cylinder!, $"{FindingValue.Mass("liquid", after.Appliance.LiquidMass)} of liquid are still in the appliance."));
            return;
        }

        if (end is not (StageEnd.LiquidGone or StageEnd.CylinderFull))
        {
            findings.Add(new Finding(
                StageCodes.LiquidEndsEarly,
                Severity.Warning,
                "mixture that flashes at the throttled inlet",
                $"Liquid through the machine ends early, because {FindingValue.Text("reason", StageEnds.Why(end))}: {FindingValue.Mass("liquid", after.Appliance.LiquidMass)} of liquid are still in the appliance."));
        }
    }
}
