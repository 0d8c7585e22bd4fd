using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Contents;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Processes;

/// <summary>An appliance while vapor is pushed onto its liquid: a pool and a vapor space in place of an equilibrium; from a snapshot and back.</summary>
/// <remarks>
/// At the start the liquid is on the bubble curve and the vapor on the dew curve at one pressure, with the mass, the volume and the energy of the snapshot; at the end
/// both come to equilibrium again. Of an appliance of several sections the one with the liquid port takes part; the others stand as they are.
/// </remarks>
internal sealed class PushedAppliance
{
    /// <summary>Liquid that counts as none, as a share of the charge: the last of a pool drains no further.</summary>
    private const double LeastShare = 1e-4;

    private const double MassShare = 1e-4;
    private const int MaximumIterations = 60;
    private const double Tolerance = 1e-11;

    private readonly Appliance _appliance;
    private readonly Stage _stage;
    private readonly SectionState _start;
    private readonly int _section;
    private readonly int _components;
    private double _liquid;
    private double _liquidEnergy;

    public PushedAppliance(Appliance appliance, Stage stage, double condensingConductance, double? surface)
    {
        _appliance = appliance;
        _stage = stage;
        _section = Math.Min(appliance.LiquidPortSection, stage.Before.Appliance.Parts.Count - 1);
        _start = stage.Before.Appliance.Parts[_section];
        PropertyModel model = stage.Model;
        _components = stage.Tracked ? model.Composition.Count : 1;
        double[] asCharged = stage.Tracked ? [.. model.Composition.Select(component => component.MassFraction)] : [];
        double whole = stage.Before.Appliance.Parts.Sum(part => part.Volume);
        double face = surface ?? Math.Pow(_start.Volume, 2.0 / 3);
        LeastLiquid = LeastShare * stage.Charge;
        HasLiquid = Split();
        Pool = new LiquidPool("appliance, liquid", model, _components, StartTemperature) { Place = "appliance", MassScale = MassShare * stage.Charge };
        Space = new VaporSpace(
            "appliance",
            model,
            _components,
            _start.Volume,
            face,
            Pool,
            new MetalShell(appliance, _start.Volume / whole) { CondensingConductance = condensingConductance * _start.Volume / whole })
        {
            Oil = _section == appliance.OilSection && appliance.Oil is ApplianceOil oil ? new OilSump(model, oil, appliance.Temperature.Kelvins) : null,
            AsCharged = asCharged,
            MassScale = MassShare * stage.Charge,
        };
    }

    /// <summary>Whether there is liquid that can be pushed.</summary>
    public bool HasLiquid { get; }

    public LiquidPool Pool { get; }

    public VaporSpace Space { get; }

    /// <summary>kg.</summary>
    public double LeastLiquid { get; }

    /// <summary>Density of the liquid at the start, kg/m³.</summary>
    public double StartDensity { get; private set; }

    private double StartTemperature { get; set; }

    public void Initialize(double[] state)
    {
        double[] masses = _components > 1 ? _start.ComponentMasses(_stage.Model) : _start.Masses;
        double share = _liquid / _start.Kilograms;
        for (int i = 0; i < _components; i++)
        {
            state[Pool.First + i] = share * masses[i];
            state[Space.First + i] = masses[i] - (share * masses[i]);
        }

        state[Pool.Energy] = _liquidEnergy;
        state[Space.Energy] = _start.Joules - _liquidEnergy;
        Space.Shell.Initialize(state, _start.WetKelvins, _start.DryKelvins, _liquid / StartDensity / _start.Volume, _start.WaterKelvins);
        Space.Oil?.Initialize(state, _start.DissolvedKilograms, _start.OilKelvins);
    }

    /// <summary>The appliance at equilibrium again.</summary>
    public ApplianceState Read(double[] state)
    {
        var masses = new double[_components];
        for (int i = 0; i < _components; i++)
        {
            masses[i] = state[Pool.First + i] + state[Space.First + i];
        }

        double energy = state[Pool.Energy] + state[Space.Energy];
        Content content = Content.For(_stage.Model, _stage.Tracked, _start.Content);
        double mass = masses.Sum();
        VesselPoint vessel = content.Solve(masses, 0, _start.Volume, energy)
            ? content.ToVesselPoint()
            : _stage.Model.VesselAtTemperature(Pool.Temperature, mass / _start.Volume);
        SectionState[] sections = [.. _stage.Before.Appliance.Parts.Select(part => _stage.Tracked ? part.ByComponent(_stage.Model) : part)];
        sections[_section] = new SectionState(_start.Name, _start.Volume, masses, energy, vessel)
        {
            WetKelvins = Space.Shell.WetTemperature,
            DryKelvins = Space.Shell.DryTemperature,
            WettedShare = Space.Shell.WettedShare,
            WaterKelvins = Space.Shell.WaterTemperature,
            DissolvedKilograms = Math.Max(0, Space.Oil?.DissolvedMass ?? _start.DissolvedKilograms),
            OilKelvins = Space.Oil?.Temperature ?? Space.Shell.DryTemperature,
            Content = content.Snapshot(),
        };
        return new ApplianceState(_appliance, sections, _appliance.VaporPortSection);
    }

    /// <summary>
    /// m_l·u′(T) + (m − m_l)·u″ = U, m_l/ρ′(T) + (m − m_l)/ρ″ = V with the vapor on the dew curve at the bubble pressure: secant steps in T. False where there is no liquid.
    /// </summary>
    private bool Split()
    {
        PropertyRange range = _stage.Model.Range;
        double t = _start.Vessel.Bulk.Temperature;
        if (!(_start.LiquidKilograms > LeastLiquid) || t >= range.MaximumSaturationTemperature || t < range.MinimumTemperature)
        {
            return false;
        }

        double previous = double.NaN;
        double previousValue = 0;
        double slope = _start.Kilograms * 1000;
        for (int i = 0; i < MaximumIterations; i++)
        {
            double value = Energy(t) - _start.Joules;
            if (Math.Abs(t - previous) > 1e-7)
            {
                double found = (value - previousValue) / (t - previous);
                slope = found > 0 ? found : slope;
            }

            // At the end of the equation's range it stands where the search is held back, and the vapor takes the rest.
            double step = -value / slope;
            if (Math.Abs(step) <= Tolerance * t || t == previous)
            {
                StartTemperature = t;
                return _liquid > LeastLiquid;
            }

            previous = t;
            previousValue = value;
            t = Math.Min(range.MaximumSaturationTemperature, Math.Max(range.MinimumTemperature, t + Math.Max(-5, Math.Min(5, step))));
        }

        throw new ConvergenceException("Liquid and vapor of a push-pull's start not found.", MaximumIterations);
    }

    private double Energy(double temperature)
    {
        SaturationPoint saturation = _stage.Model.SaturationAtTemperature(temperature);
        StatePoint liquid = saturation.Bubble;
        StatePoint vapor = _stage.Model.Composition.Count == 1 ? saturation.Dew : _stage.Model.SaturationAtPressure(liquid.Pressure).Dew;
        double mass = _start.Kilograms;
        _liquid = (_start.Volume - (mass / vapor.Density)) / ((1 / liquid.Density) - (1 / vapor.Density));
        _liquidEnergy = _liquid * liquid.InternalEnergy;
        StartDensity = liquid.Density;
        return _liquidEnergy + ((mass - _liquid) * vapor.InternalEnergy);
    }
}
