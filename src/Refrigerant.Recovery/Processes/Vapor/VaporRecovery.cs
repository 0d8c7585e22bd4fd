using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Links;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Processes;

/// <summary>Vapor recovery: the machine draws vapor off the appliance, condenses it and delivers it to the cylinder.</summary>
/// <remarks>
/// Topology: the appliance's vessels — suction line and machine — cylinder. Ends: target pressure, cylinder at its limit or its pressure, switches of the
/// machine, a stall. With <see cref="CompositionMode.Tracked"/> each component of a blend has a balance of its own, in the cylinder too. Planning figures: local
/// codes and licensed practice govern.
/// </remarks>
public static class VaporRecovery
{
    /// <summary>At least this many steps, so that the trajectory can be plotted.</summary>
    private const int FewestSteps = 12;

    /// <summary>Throttling to keep clear of freezing begins this far above it, K, and is complete at half of it.</summary>
    private const double FreezingBand = 1;

    /// <summary>Throttling to keep clear of the cut-out begins at this share below it.</summary>
    private const double CutoutBand = 0.04;

    /// <summary>Throttling to keep a pressure begins at this share above it.</summary>
    private const double LowestBand = 0.03;

    /// <summary>A machine whose efficiency is this small share of that at pressure ratio one has stalled.</summary>
    private const double StallShare = 1e-3;

    /// <summary>Simulates a vapor recovery.</summary>
    /// <param name="appliance">What the refrigerant is taken from.</param>
    /// <param name="machine">The recovery machine.</param>
    /// <param name="hoses">The hoses; the vapor side counts here.</param>
    /// <param name="cylinder">The receiving cylinder.</param>
    /// <param name="options">Target, start and limits.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The charge does not fit the appliance, or the content the cylinder.</exception>
    /// <exception cref="PropertyRangeException">The starting state is outside the range of the refrigerant's equation.</exception>
    /// <example>
    /// <code>
    /// Appliance appliance = new()
    /// {
    ///     Fluid = Fluid.Get("R-134a"),
    ///     Charge = Mass.FromKilograms(3),
    ///     InternalVolume = Volume.FromLiters(12),
    ///     Temperature = Temperature.FromDegreesCelsius(25),
    ///     HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.005),
    /// };
    /// Hose hose = new()
    /// {
    ///     Length = Length.FromFeet(5),
    ///     InnerDiameter = Length.FromMillimeters(8),
    /// };
    /// StageResult result = VaporRecovery.Simulate(
    ///     appliance,
    ///     RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
    ///     new HoseSet { VaporSide = [hose] },
    ///     RecoveryCylinder.FromMark(
    ///         "DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)),
    ///     new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(60) });
    /// Console.WriteLine(result.End); // TargetReached
    /// Console.WriteLine($"{result.Duration.Minutes:F0} min"); // 6 min
    /// </code>
    /// </example>
    public static StageResult Simulate(
        Appliance appliance, RecoveryMachine machine, HoseSet hoses, RecoveryCylinder cylinder, VaporRecoveryOptions options)
    {
        _ = Require.NotNull(appliance, nameof(appliance));
        _ = Require.NotNull(machine, nameof(machine));
        _ = Require.NotNull(hoses, nameof(hoses));
        _ = Require.NotNull(cylinder, nameof(cylinder));
        _ = Require.NotNull(options, nameof(options));
        return Run(appliance, machine, hoses, cylinder, options);
    }

    /// <summary>Runs it; without hoses the machine sees the appliance's own pressure.</summary>
    internal static StageResult Run(Appliance appliance, RecoveryMachine machine, HoseSet? hoses, RecoveryCylinder? cylinder, VaporRecoveryOptions options)
    {
        bool fixedReceiver = options.ReceiverPressure is not null;
        var stage = new Stage(appliance, cylinder, options);
        ApplianceModel model = stage.BuildAppliance();
        EquilibriumVessel? receiver = fixedReceiver ? null : stage.Cylinder?.Vessel;
        var suction = SuctionLine.Of(hoses, machine);
        double cutout = machine.HighPressureCutout.Pascals;
        MachineLink link = null!;
        var governors = new List<Governor>();
        if (options.KeepAboveFreezing && model.HasWater)
        {
            governors.Add(new Governor(() => model.ColdestSurface - MetalShell.FreezingPoint, FreezingBand));
        }

        if (options.KeepBelowCutout && receiver is not null)
        {
            double limit = Math.Min(cutout, stage.HighestCylinderPressure);
            governors.Add(new Governor(() => limit - receiver.Pressure, CutoutBand * limit));
        }

        if (options.LowestPressure is UnitsNet.Pressure lowestPressure)
        {
            double floor = lowestPressure.Pascals;
            governors.Add(new Governor(() => model.Port.Pressure - floor, LowestBand * floor));
        }

        link = new MachineLink(
            model.Port,
            receiver,
            suction,
            machine,
            stage.Gas,
            receiver is null ? null : new Condensation(stage.Model, machine.Condenser),
            hoses is null ? 0 : HoseSet.ConductanceOf(hoses.VaporSide) + HoseSet.ConductanceOf(hoses.SecondVaporSide),
            stage.Surroundings,
            options.ReceiverPressure?.Pascals ?? 0)
        {
            Governors = [.. governors],
        };
        stage.Connect(stage.WithCylinder(model.Vessels), [link, .. model.Connections], state => model.Initialize(state, stage.Before.Appliance));

        double target = options.TargetPressure?.Pascals ?? 0;
        stage.Watch(StageEnd.TargetReached, () => model.Port.Pressure - target);
        stage.WatchLimits(null);
        stage.WatchMachine(machine, link);
        if (machine.LowPressureSwitch is UnitsNet.Pressure low)
        {
            double lowest = low.Pascals;
            stage.Watch(StageEnd.LowPressureSwitch, () => link.SwitchPressure - lowest);
        }

        double slowest = options.SlowestFall;
        stage.Watch(
            StageEnd.Stalled,
            () => slowest > 0 && !(model.LiquidMargin > 0)
                ? (link.Flow / model.VesselMass * model.Port.Pressure / slowest) - 1
                : link.Efficiency - (StallShare * machine.VolumetricEfficiency));
        stage.WatchLiquid(() => model.LiquidMargin);
        stage.WatchFreezing(model.PortShell, () => model.ColdestSurface, options.StopAtFreezing);

        OdeOutcome outcome = stage.Run(
            time => stage.Point(time, model) with
            {
                SuctionPascals = link.SuctionPressure,
                DischargePascals = link.DischargePressure,
                KilogramsPerSecond = link.Flow,
                MachineKelvins = link.Compressor.DischargeTemperature,
            },
            ExpectedTime(stage, model, machine) / FewestSteps);
        StageEnd end = stage.End(outcome);
        stage.CloseFigures(link.FreePassed(stage.State));
        ApplianceState after = stage.Read(model.Read);
        return stage.Result(end, outcome, after, (findings, state) => VaporRecoveryFindings.Add(findings, appliance, machine, options, end, stage.Figures, state));
    }

    /// <summary>A rough length of the stage: the liquid at the starting rate, then a few volumes of vapor.</summary>
    private static double ExpectedTime(Stage stage, ApplianceModel model, RecoveryMachine machine)
    {
        double volume = model.Vessels.Sum(vessel => vessel.Volume);
        StatePoint bulk = stage.Before.Appliance.Vessel.Bulk;
        double vapor = stage.Before.Appliance.HasLiquid && stage.Before.Appliance.Vessel.Vapor.Phase != Phase.Undefined
            ? stage.Before.Appliance.Vessel.Vapor.Density
            : bulk.Density;
        double displacement = machine.Displacement.CubicMetersPerSecond * machine.VolumetricEfficiency;
        return ((stage.Charge / vapor) + (3 * volume)) / displacement;
    }
}
