using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Links;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Processes;

/// <summary>
/// Push-pull: the machine draws vapor off the cylinder and pushes it, not condensed, onto the appliance's liquid, which flows through the
/// liquid hose into the cylinder.
/// </summary>
/// <remarks>
/// Topology: cylinder — machine — vapor space; pool of liquid — liquid hose — cylinder. The vapor space has a pressure of its own: what is pushed over builds it up, and
/// condenses on metal and on the liquid's surface. Planning figures: local codes and licensed practice govern. The liquid keeps siphoning when the machine stops: close the valve by
/// the scale.
/// </remarks>
public static class PushPull
{
    private const int FewestSteps = 12;

    /// <summary>Film condensation on metal where nothing better is known, W/(m²·K): common practice, no source.</summary>
    private const double FilmCoefficient = 300;

    /// <summary>Throttling keeps the appliance at this share of its design pressure, gauge: relief devices open a little early. Common practice, no source.</summary>
    internal const double DesignShare = 0.9;

    /// <summary>It begins at this share of it below that.</summary>
    private const double DesignBand = 0.05;

    /// <summary>A flow that would take this many times longer than the machine's own pace is none.</summary>
    private const double StallShare = 1e-4;

    /// <summary>Simulates a push-pull until the liquid is down to its heel or the cylinder at its limit.</summary>
    /// <param name="appliance">What the refrigerant is taken from; its liquid must be within reach.</param>
    /// <param name="machine">The recovery machine.</param>
    /// <param name="hoses">The hoses: a liquid side, and the others for the vapor.</param>
    /// <param name="cylinder">The receiving cylinder.</param>
    /// <param name="options">Start, limit and what condensation rests on.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The liquid cannot be reached, there is no liquid hose, or a charge does not fit.</exception>
    /// <exception cref="PropertyRangeException">The starting state is outside the range of the refrigerant's equation.</exception>
    public static StageResult Simulate(
        Appliance appliance, RecoveryMachine machine, HoseSet hoses, RecoveryCylinder cylinder, PushPullOptions options)
    {
        _ = Require.NotNull(appliance, nameof(appliance));
        _ = Require.NotNull(machine, nameof(machine));
        _ = Require.NotNull(cylinder, nameof(cylinder));
        _ = Require.NotNull(options, nameof(options));
        if (Require.NotNull(hoses, nameof(hoses)).LiquidSide.Count == 0)
        {
            throw new ArgumentException("The hoses have no liquid side; push-pull needs a liquid hose.", nameof(hoses));
        }

        if (!appliance.LiquidReachable)
        {
            throw new ArgumentException("The appliance's liquid cannot be reached (LiquidReachable is false); push-pull is not possible.", nameof(appliance));
        }

        var stage = new Stage(appliance, cylinder, options);
        var model = new PushedAppliance(appliance, stage, options.CondensingConductance ?? ((machine.CondensingCoefficient ?? FilmCoefficient) * Walls(appliance)), options.LiquidSurface?.SquareMeters);
        EquilibriumVessel receiver = stage.Cylinder!.Vessel;
        if (!model.HasLiquid)
        {
            return stage.Nothing();
        }

        LiquidPool pool = model.Pool;
        VaporSpace space = model.Space;
        var governors = new List<Governor>();
        if (options.KeepBelowDesignPressure && stage.DesignGauge is double design)
        {
            // A governor is shut at half of its band.
            double shut = stage.Air + (DesignShare * design);
            governors.Add(new Governor(() => shut + (DesignBand * design) - space.Pressure, 2 * DesignBand * design));
        }

        var push = new MachineLink(
            receiver,
            space,
            new SuctionLine(new Line([.. hoses.Discharge, .. hoses.VaporSide]), machine),
            machine,
            stage.Gas,
            condensation: null,
            HoseSet.ConductanceOf(hoses.Discharge) + HoseSet.ConductanceOf(hoses.VaporSide),
            stage.Surroundings)
        {
            Governors = [.. governors],
        };
        var liquid = new LiquidLink(pool, receiver, new Line(hoses.LiquidSide), stage.Model, stage.Flash);
        stage.Connect([pool, space, receiver], [push, liquid], model.Initialize);

        double heel = Math.Max(Math.Min(appliance.LiquidHeel.Kilograms, stage.Before.Appliance.Kilograms), model.LeastLiquid);
        stage.Watch(StageEnd.LiquidGone, () => (pool.Mass - heel) / stage.Charge);
        stage.WatchLimits(() => space.Pressure);
        stage.WatchMachine(machine, push);
        double pace = machine.Displacement.CubicMetersPerSecond * model.StartDensity;
        stage.Watch(StageEnd.Stalled, () => Math.Max(liquid.Flow / pace, push.Opening * push.Efficiency) - StallShare);
        stage.WatchFreezing(space.Shell, () => space.Shell.ColdestSurface, stops: false);
        OdeOutcome outcome = stage.Run(
            time =>
            {
                stage.Figures.LargestDrive = Math.Max(stage.Figures.LargestDrive, space.Pressure - receiver.Pressure);
                stage.Figures.DeepestFlashing = Math.Max(stage.Figures.DeepestFlashing, 1 - (receiver.Pressure / pool.Saturation.Bubble.Pressure));
                return new TrajectoryPoint
                {
                    Seconds = time,
                    AppliancePascals = space.Pressure,
                    SuctionPascals = push.SuctionPressure,
                    DischargePascals = push.DischargePressure,
                    ApplianceKelvins = pool.Temperature,
                    MetalKelvins = space.Shell.ColdestSurface,
                    CylinderKelvins = receiver.Temperature,
                    ApplianceKilograms = pool.Mass + space.Mass + (space.Oil?.DissolvedMass ?? 0),
                    LiquidKilograms = pool.Mass,
                    CylinderKilograms = receiver.Mass,
                    KilogramsPerSecond = liquid.Flow - push.Flow,
                    MachineKelvins = push.Compressor.DischargeTemperature,
                };
            },
            stage.Before.Appliance.LiquidMass.Kilograms / pace / FewestSteps);
        stage.CloseFigures(push.FreePassed(stage.State));
        stage.Figures.LiquidMoved = liquid.Passed(stage.State);
        StageEnd end = stage.End(outcome);
        return stage.Result(end, outcome, stage.Read(model.Read), (findings, after) => PushPullFindings.Add(findings, appliance, stage, end, after.Appliance));
    }

    /// <summary>Surface of a cube of the appliance's volume, m².</summary>
    private static double Walls(Appliance appliance) => 6 * Math.Pow(appliance.InternalVolume.CubicMeters, 2.0 / 3);
}
