using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Oils;
using UnitsNet;

namespace Refrigerant.Recovery.Processes;

/// <summary>Vapor recovery: the machine draws vapor off the appliance, condenses it and delivers it to the cylinder.</summary>
/// <remarks>
/// Rigid appliance with refrigerant (m, U), metal, water and oil; suction line with friction and choking; machine with re-expansion;
/// condenser; cylinder with its own mass and energy balance. With <see cref="CompositionMode.Tracked"/> each component of the blend in the
/// appliance has a balance of its own; machine and cylinder then still count with the composition as charged. Planning figures: local codes and licensed practice govern.
/// </remarks>
public static class VaporRecovery
{
    /// <summary>At least this many steps, so that the trajectory can be plotted.</summary>
    private const int FewestSteps = 12;

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
    /// VaporRecoveryResult result = VaporRecovery.Simulate(
    ///     appliance,
    ///     RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
    ///     new HoseSet { VaporSide = [hose] },
    ///     RecoveryCylinder.FromMark(
    ///         "DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)),
    ///     new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(60) });
    /// Console.WriteLine(result.End); // TargetReached
    /// Console.WriteLine($"{result.Duration.Minutes:F0} min"); // 5 min
    /// </code>
    /// </example>
    public static VaporRecoveryResult Simulate(
        Appliance appliance, RecoveryMachine machine, HoseSet hoses, RecoveryCylinder cylinder, VaporRecoveryOptions options)
    {
        _ = Require.NotNull(appliance, nameof(appliance));
        _ = Require.NotNull(machine, nameof(machine));
        _ = Require.NotNull(hoses, nameof(hoses));
        _ = Require.NotNull(cylinder, nameof(cylinder));
        _ = Require.NotNull(options, nameof(options));
        return Run(appliance, machine, new Line(hoses.VaporSide), cylinder, options);
    }

    /// <summary>Runs it; without a line the machine sees the appliance's own pressure, without a cylinder the receiver pressure of the options.</summary>
    internal static VaporRecoveryResult Run(
        Appliance appliance, RecoveryMachine machine, Line? line, RecoveryCylinder? cylinder, VaporRecoveryOptions options)
    {
        PropertyModel model = appliance.Fluid.Model;
        ApplianceState start = options.Start ?? ApplianceState.Initial(appliance);
        double temperature = start.Vessel.Bulk.Temperature;
        double ambient = appliance.SurroundingsKelvin;
        CylinderState? receiving = options.ReceiverPressure is null && cylinder is not null
            ? options.CylinderStart ?? CylinderState.Initial(cylinder, appliance.Fluid, new Temperature(ambient, UnitsNet.Units.TemperatureUnit.Kelvin))
            : null;

        var network = new ThermalNetwork(appliance) { IsDry = !start.HasLiquid };
        OilRelease? oil = appliance.Oil is ApplianceOil given ? new OilRelease(model, given, temperature) : null;
        CylinderProcess? cylinderProcess = receiving is null
            ? null
            : new CylinderProcess(model, receiving.Cylinder, ambient, receiving.GasMoles);
        ApplianceVessel vessel = ApplianceVessel.For(appliance, start, options.Composition);
        double[] state = RecoverySystem.InitialState(start, vessel, receiving);
        var recorder = new TrajectoryRecorder();
        var system = new RecoverySystem(
            vessel,
            network,
            new SuctionLine(line, machine),
            receiving is null ? null : new MachineProcess(model, machine, temperature, ambient),
            cylinderProcess,
            oil,
            VaporViscosity(model, temperature),
            GasExponent.At(model, temperature),
            state,
            recorder)
        {
            TargetPressure = options.TargetPressure?.Pascals ?? 0,
            CylinderLimit = receiving is null ? double.PositiveInfinity : Limit(receiving.Cylinder, appliance.Fluid, options),
            LowPressureSwitch = machine.LowPressureSwitch?.Pascals ?? 0,
            HighPressureCutout = machine.HighPressureCutout.Pascals,
            ReceiverPressure = options.ReceiverPressure?.Pascals ?? 0,
            KeepAboveFreezing = options.KeepAboveFreezing,
            StopAtFreezing = options.StopAtFreezing,
            SlowestFall = options.SlowestFall,
        };

        double[] before = (double[])state.Clone();
        OdeOutcome outcome = StageRun.Integrate(
            system, state, options.MaximumDuration.Seconds, ExpectedTime(start, machine, appliance) / FewestSteps, options.RelativeTolerance, options.MaximumSteps);
        StageEnd end = StageRun.End(outcome);
        ApplianceState finalAppliance = ApplianceState.After(appliance, state, network.MetalTemperature, recorder.Last.Content);
        CylinderState? finalCylinder = receiving is null
            ? null
            : new CylinderState(
                receiving.Cylinder, model, state[RecoverySystem.CylinderMass], state[RecoverySystem.CylinderEnergy], state[RecoverySystem.CylinderWall], receiving.GasMoles);
        double lineShare = state[RecoverySystem.FreeOut] > 0 ? Math.Min(1, state[RecoverySystem.Out] / state[RecoverySystem.FreeOut]) : 1;
        Temperature? hottest = system.HighestRatio > 0 ? DischargeTemperature.At(model, machine, system.HottestPoint) : null;
        IReadOnlyList<Finding> findings = VaporRecoveryFindings.For(
            appliance, machine, options, end, system, finalAppliance, finalCylinder, lineShare, hottest);
        Trajectory course = recorder.ToTrajectory();
        return new VaporRecoveryResult(
            end,
            outcome.Time,
            state[RecoverySystem.Out],
            finalAppliance,
            finalCylinder,
            system.LiquidGoneAt,
            system.Coldest,
            lineShare,
            hottest,
            course,
            vessel is TrackedBlend blend && course.Count > 0
                ? new FractionationResult((MixtureModel)model, [.. course.Select(point => new FractionationPoint(point, 0))], blend.LargestImbalance(before, state))
                : null,
            findings,
            RecoverySystem.Balance(before, state, network, cylinderProcess, oil, outcome));
    }

    /// <summary>Viscosity of the vapor for the whole stage; it moves little with temperature, and the flow less.</summary>
    internal static double VaporViscosity(PropertyModel model, double temperature) => model.ViscosityAtSaturation(
        Math.Min(0.98 * model.Range.MaximumSaturationTemperature, Math.Max(model.Range.MinimumTemperature, temperature))).Vapor;

    private static double Limit(RecoveryCylinder cylinder, Fluid fluid, VaporRecoveryOptions options) =>
        (options.CylinderLimit ?? CylinderFill.Limit(cylinder, fluid).MaximumFill).Kilograms;

    /// <summary>A rough length of the stage: the liquid at the starting rate, then a few volumes of vapor.</summary>
    private static double ExpectedTime(ApplianceState start, RecoveryMachine machine, Appliance appliance)
    {
        StatePoint vapor = start.Vessel.Vapor.Phase != Phase.Undefined ? start.Vessel.Vapor : start.Vessel.Bulk;
        double displacement = machine.Displacement.CubicMetersPerSecond;
        return ((start.Kilograms / vapor.Density) + (2 * appliance.InternalVolume.CubicMeters)) / displacement;
    }
}
