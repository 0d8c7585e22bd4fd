using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation.Contents;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Simulation;

/// <summary>A cylinder as a vessel at equilibrium with its wall; from a snapshot and back.</summary>
internal sealed class CylinderModel
{
    /// <summary>The cylinder's mass and energy are judged as coarsely as this share of what is to come.</summary>
    private const double MassShare = 1e-2;

    private readonly CylinderState _start;
    private readonly PropertyModel _model;
    private readonly CylinderShell _shell;

    private CylinderModel(CylinderState start, PropertyModel model, CylinderShell shell, EquilibriumVessel vessel)
    {
        _start = start;
        _model = model;
        _shell = shell;
        Vessel = vessel;
    }

    public EquilibriumVessel Vessel { get; }

    /// <summary>The vessel of a cylinder for a run that starts from a snapshot.</summary>
    /// <param name="start">The snapshot.</param>
    /// <param name="model">The refrigerant.</param>
    /// <param name="tracked">Whether the composition is followed.</param>
    /// <param name="charge">What is to come, kg.</param>
    /// <param name="surroundings">Temperature of the air, K.</param>
    public static CylinderModel Build(CylinderState start, PropertyModel model, bool tracked, double charge, double surroundings)
    {
        tracked = Content.CanTrack(model) && (tracked || start.Content.Masses.Length > 1);
        var shell = new CylinderShell(start.Cylinder, surroundings);
        var vessel = new EquilibriumVessel("cylinder", Content.For(model, tracked, start.Content.Content), start.Content.Volume, shell)
        {
            GasMoles = start.GasMoles,
            MassScale = MassShare * charge,
        };
        return new CylinderModel(start, model, shell, vessel);
    }

    public void Initialize(double[] state)
    {
        double[] masses = Vessel.Components > 1 ? _start.Content.ComponentMasses(_model) : _start.Content.Masses;
        Array.Copy(masses, 0, state, Vessel.First, Vessel.Components);
        state[Vessel.Energy] = _start.Content.Joules;
        _shell.Initialize(state, _start.WallKelvins);
    }

    /// <summary>A snapshot of a state at which the vessel stands.</summary>
    public CylinderState Read(double[] state) => new(
        _start.Cylinder,
        new SectionState(Vessel.Name, Vessel.Volume, state.AsSpan(Vessel.First, Vessel.Components).ToArray(), state[Vessel.Energy], Vessel.Content.ToVesselPoint())
        {
            WetKelvins = _shell.WetTemperature,
            DryKelvins = _shell.WetTemperature,
            WaterKelvins = _shell.WetTemperature,
            OilKelvins = _shell.WetTemperature,
            WettedShare = Vessel.Content.LiquidVolumeFraction,
            Content = Vessel.Content.Snapshot(),
        },
        _start.GasMoles);
}
