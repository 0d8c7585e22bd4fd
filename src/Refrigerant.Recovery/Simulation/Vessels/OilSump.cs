using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Oils;

namespace Refrigerant.Recovery.Simulation.Vessels;

/// <summary>Oil that gives off refrigerant: how much it holds, how warm it is; plain SI doubles. An estimate.</summary>
/// <remarks>
/// Its temperature follows from its energy E = m_oil·c·T + m_r·u_0 with u_0 the energy of saturated liquid at the start, so that gas that leaves with the
/// enthalpy of saturated vapor at the oil's temperature chills the oil. Heat comes from the dry metal around it (from the refrigerant where there is no
/// metal) and from a crankcase heater.
/// What it gives off has the composition of the blend as charged.
/// </remarks>
internal sealed class OilSump
{
    /// <summary>Specific heat of refrigeration oils, J/(kg·K), from memory.</summary>
    private const double HeatCapacity = 2000;

    /// <summary>Heat exchange of one kilogram of oil with the metal around it, W/K, growing as the surface (mass to the power 2/3): common practice, no source.</summary>
    private const double Conductance = 15;

    private readonly PropertyModel _model;
    private readonly OilRelease _release;
    private readonly double _capacity;
    private readonly double _conductance;
    private readonly double _lowest;
    private readonly double _highest;
    private int _dissolved;
    private int _energy;
    private double _heat;
    private double _heater;

    public OilSump(PropertyModel model, ApplianceOil oil, double temperature)
    {
        _model = model;
        _release = new OilRelease(model, oil, temperature);
        double mass = oil.Mass.Kilograms;
        _capacity = mass * HeatCapacity;
        _conductance = Conductance * Math.Pow(mass, 2.0 / 3);
        _lowest = model.Range.MinimumTemperature;
        _highest = model.Range.MaximumSaturationTemperature;
    }

    /// <summary>Refrigerant in the oil at the last solution, kg.</summary>
    public double DissolvedMass { get; private set; }

    /// <summary>Flow out of the oil, kg/s.</summary>
    public double Release { get; private set; }

    /// <summary>Enthalpy that it carries, J/kg.</summary>
    public double ReleaseEnthalpy { get; private set; }

    /// <summary>Temperature of the oil, K.</summary>
    public double Temperature { get; private set; }

    /// <summary>Heat from the crankcase heater, W.</summary>
    public double HeatFromOutside => _heater;

    /// <summary>Heat that it draws from what surrounds it, W.</summary>
    public double HeatFromAround => _heat;

    public void AddStates(SlotLayout layout, string vessel)
    {
        _dissolved = layout.State(vessel, "dissolved in oil");
        _energy = layout.State(vessel, "oil, energy");
    }

    public void SetScales(double[] scale, double massScale)
    {
        scale[_dissolved] = massScale;
        scale[_energy] = _capacity;
    }

    public void Initialize(double[] state, double dissolved, double temperature)
    {
        state[_dissolved] = dissolved;
        state[_energy] = (_capacity * temperature) + (dissolved * _release.SpecificEnergy);
    }

    /// <summary>Refrigerant in the oil, kg.</summary>
    public double Dissolved(double[] state) => state[_dissolved];

    public double Stored(double[] state) => state[_energy];

    /// <summary>Evaluates a state.</summary>
    /// <param name="state">All states.</param>
    /// <param name="pressure">Pressure of the refrigerant, Pa.</param>
    /// <param name="around">Temperature of what surrounds the oil, K.</param>
    /// <param name="inputs">What people do.</param>
    public bool Solve(double[] state, double pressure, double around, in SimulationInputs inputs)
    {
        double dissolved = state[_dissolved];
        DissolvedMass = dissolved;
        Temperature = (state[_energy] - (dissolved * _release.SpecificEnergy)) / _capacity;
        if (!(Temperature > 0))
        {
            return false;
        }

        _release.Solve(pressure, Temperature, dissolved);
        Release = _release.Release;
        ReleaseEnthalpy = _model.SaturationAtTemperature(Within(Temperature)).Dew.Enthalpy;
        _heater = inputs.CrankcaseHeaterPower;
        _heat = _conductance * (around - Temperature);
        return true;
    }

    public void Derive(double[] derivatives)
    {
        derivatives[_dissolved] = -Release;
        derivatives[_energy] = _heat + _heater - (Release * ReleaseEnthalpy);
    }

    private double Within(double temperature) => Math.Min(_highest, Math.Max(_lowest, temperature));
}
