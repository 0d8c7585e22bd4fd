using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Links;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Processes;

/// <summary>
/// Vapor first: before liquid enters an evacuated cylinder, vapor of the appliance flows into it until the pressures are equal, so that no
/// liquid flashes at a vacuum and freezes what it touches (common practice, no source).
/// </summary>
/// <remarks>Topology: the appliance's vapor port — discharge and vapor hoses — cylinder, the machine off.</remarks>
public static class Equalization
{
    /// <summary>No more than this share of the appliance's content flows over: it would chill what stays by some 25 K.</summary>
    private const double MostShare = 0.15;

    /// <summary>Pressures that differ by less than this share of the higher one are equal.</summary>
    private const double Equal = 0.02;

    private const int FewestSteps = 8;

    /// <summary>Simulates it.</summary>
    /// <param name="appliance">The appliance.</param>
    /// <param name="hoses">The hoses; vapor and discharge side count.</param>
    /// <param name="cylinder">The cylinder.</param>
    /// <param name="options">Start and limits.</param>
    /// <returns>
    /// Both at pressures that differ by 2 %, or as near to it as 15 % of the appliance's content brings them, or the cylinder at the pressure that was asked for; nothing moves where the cylinder's pressure is
    /// not the lower one.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The charge does not fit the appliance, or the content the cylinder.</exception>
    /// <exception cref="Fluids.PropertyRangeException">A state is outside the range of the refrigerant's equation.</exception>
    public static StageResult Simulate(Appliance appliance, HoseSet hoses, RecoveryCylinder cylinder, EqualizationOptions options)
    {
        _ = Require.NotNull(appliance, nameof(appliance));
        _ = Require.NotNull(hoses, nameof(hoses));
        _ = Require.NotNull(options, nameof(options));
        var stage = new Stage(appliance, Require.NotNull(cylinder, nameof(cylinder)), options);
        ApplianceModel model = stage.BuildAppliance();
        EquilibriumVessel receiver = stage.Cylinder!.Vessel;
        var link = new VaporLink("hoses", model.Port, receiver, new Line([.. hoses.Discharge, .. hoses.VaporSide]), stage.Gas, oneWay: true);
        stage.Connect(stage.WithCylinder(model.Vessels), [link, .. model.Connections], state => model.Initialize(state, stage.Before.Appliance));
        double kept = (1 - MostShare) * stage.Before.Appliance.Kilograms;
        stage.Watch(StageEnd.TargetReached, () => model.Port.Pressure - receiver.Pressure - (Equal * model.Port.Pressure));
        stage.Watch(StageEnd.TargetReached, () => model.VesselMass - kept);
        if (options.CylinderEndPressure is UnitsNet.Pressure enough)
        {
            double end = enough.Pascals;
            stage.Watch(StageEnd.TargetReached, () => end - receiver.Pressure);
        }

        stage.WatchLimits(null);
        stage.WatchLiquid(() => model.LiquidMargin);
        stage.WatchFreezing(model.PortShell, () => model.ColdestSurface, stops: false);
        OdeOutcome outcome = stage.Run(
            time => stage.Point(time, model) with { KilogramsPerSecond = link.Flow },
            options.MaximumDuration.Seconds / FewestSteps);
        stage.CloseFigures(0);
        return stage.Result(stage.End(outcome), outcome, stage.Read(model.Read), (_, _) => { });
    }
}
