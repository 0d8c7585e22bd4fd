using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation.Contents;
using Refrigerant.Recovery.Simulation.Links;
using Refrigerant.Recovery.Simulation.Vessels;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Simulation;

/// <summary>An appliance as vessels at equilibrium and the restrictions between them; from a snapshot and back.</summary>
internal sealed class ApplianceModel
{
    /// <summary>Masses smaller than this share of the charge need no relative accuracy.</summary>
    private const double SmallShare = 1e-4;

    private readonly Appliance _appliance;
    private readonly PropertyModel _model;
    private readonly MetalShell[] _shells;
    private readonly OilSump?[] _oils;

    private ApplianceModel(Appliance appliance, EquilibriumVessel[] vessels, MetalShell[] shells, OilSump?[] oils, Link[] connections)
    {
        _appliance = appliance;
        _model = appliance.Fluid.Model;
        _shells = shells;
        _oils = oils;
        Vessels = vessels;
        Connections = connections;
        Port = vessels[appliance.VaporPortSection];
        LiquidPort = vessels[appliance.LiquidPortSection];
    }

    public EquilibriumVessel[] Vessels { get; }

    public Link[] Connections { get; }

    /// <summary>Where vapor is drawn.</summary>
    public EquilibriumVessel Port { get; }

    /// <summary>Where liquid is drawn.</summary>
    public EquilibriumVessel LiquidPort { get; }

    /// <summary>The metal around what is drawn.</summary>
    public MetalShell PortShell => _shells[_appliance.VaporPortSection];

    /// <summary>Whether there is water that can freeze.</summary>
    public bool HasWater => _shells[0].HasWater;

    /// <summary>Temperature of the coldest surface that water touches, K.</summary>
    public double ColdestSurface
    {
        get
        {
            double coldest = double.PositiveInfinity;
            foreach (MetalShell shell in _shells)
            {
                coldest = Math.Min(coldest, shell.ColdestSurface);
            }

            return coldest;
        }
    }

    /// <summary>Above zero while there is liquid in any section.</summary>
    public double LiquidMargin
    {
        get
        {
            double margin = double.NegativeInfinity;
            foreach (EquilibriumVessel vessel in Vessels)
            {
                margin = Math.Max(margin, vessel.Content.LiquidMargin);
            }

            return margin;
        }
    }

    public double LiquidMass
    {
        get
        {
            double sum = 0;
            foreach (EquilibriumVessel vessel in Vessels)
            {
                sum += vessel.LiquidMass;
            }

            return sum;
        }
    }

    /// <summary>All refrigerant that vessels hold, kg.</summary>
    public double VesselMass
    {
        get
        {
            double sum = 0;
            foreach (EquilibriumVessel vessel in Vessels)
            {
                sum += vessel.Mass;
            }

            return sum;
        }
    }

    public double HighestPressure => Vessels.Max(vessel => vessel.Pressure);

    /// <summary>The vessels of an appliance for a run that starts from a snapshot.</summary>
    public static ApplianceModel Build(Appliance appliance, ApplianceState start, bool tracked, GasFacts gas)
    {
        PropertyModel model = appliance.Fluid.Model;
        tracked = Content.CanTrack(model) && (tracked || start.IsTracked);
        double[] asCharged = tracked ? [.. model.Composition.Select(component => component.MassFraction)] : [];
        double total = start.Mass.Kilograms;
        double volume = start.Parts.Sum(part => part.Volume);
        var vessels = new EquilibriumVessel[start.Parts.Count];
        var shells = new MetalShell[vessels.Length];
        var oils = new OilSump?[vessels.Length];
        for (int i = 0; i < vessels.Length; i++)
        {
            SectionState part = start.Parts[i];
            shells[i] = new MetalShell(appliance, part.Volume / volume);
            oils[i] = i == appliance.OilSection && appliance.Oil is ApplianceOil oil ? new OilSump(model, oil, appliance.Temperature.Kelvins) : null;
            vessels[i] = new EquilibriumVessel(part.Name, Content.For(model, tracked, part.Content), part.Volume, shells[i], oils[i], asCharged)
            {
                MassScale = SmallShare * total,
            };
        }

        Link[] connections = [.. appliance.Connections.Select(connection => Connect(appliance, vessels, connection, gas))];
        return new ApplianceModel(appliance, vessels, shells, oils, connections);
    }

    public void Initialize(double[] state, ApplianceState start)
    {
        for (int i = 0; i < Vessels.Length; i++)
        {
            SectionState part = start.Parts[i];
            double[] masses = Vessels[i].Components > 1 ? part.ComponentMasses(_model) : part.Masses;
            Array.Copy(masses, 0, state, Vessels[i].First, Vessels[i].Components);
            state[Vessels[i].Energy] = part.Joules;
            _shells[i].Initialize(state, part.WetKelvins, part.DryKelvins, part.WettedShare, part.WaterKelvins);
            _oils[i]?.Initialize(state, part.DissolvedKilograms, part.OilKelvins);
        }
    }

    /// <summary>A snapshot of a state at which the vessels stand.</summary>
    public ApplianceState Read(double[] state)
    {
        var sections = new SectionState[Vessels.Length];
        for (int i = 0; i < sections.Length; i++)
        {
            EquilibriumVessel vessel = Vessels[i];
            sections[i] = new SectionState(
                vessel.Name, vessel.Volume, state.AsSpan(vessel.First, vessel.Components).ToArray(), state[vessel.Energy], vessel.Content.ToVesselPoint())
            {
                WetKelvins = _shells[i].WetTemperature,
                DryKelvins = _shells[i].DryTemperature,
                WettedShare = _shells[i].WettedShare,
                WaterKelvins = _shells[i].WaterTemperature,
                DissolvedKilograms = Math.Max(0, _oils[i]?.Dissolved(state) ?? 0),
                OilKelvins = _oils[i]?.Temperature ?? _shells[i].DryTemperature,
                Content = vessel.Content.Snapshot(),
            };
        }

        return new ApplianceState(_appliance, sections, _appliance.VaporPortSection);
    }

    /// <summary>In oil, kg.</summary>
    public double DissolvedMass
    {
        get
        {
            double sum = 0;
            foreach (OilSump? oil in _oils)
            {
                sum += oil?.DissolvedMass ?? 0;
            }

            return sum;
        }
    }

    private static Link Connect(Appliance appliance, EquilibriumVessel[] vessels, SectionConnection connection, GasFacts gas)
    {
        EquilibriumVessel Of(string name) => vessels.First(vessel => vessel.Name == name);
        var restriction = new Hose
        {
            Length = new Length(1, LengthUnit.Millimeter),
            InnerDiameter = new Length(20, LengthUnit.Millimeter),
            Fittings = [Fitting.Throttle("restriction", connection.FlowCoefficient)],
        };
        return new VaporLink(
            FormattableString.Invariant($"restriction from {connection.From} to {connection.To}"),
            Of(connection.From),
            Of(connection.To),
            new Line([restriction]),
            gas,
            connection.IsCheckValve);
    }
}
