using System;
using Refrigerant.Recovery.Equipment;

namespace Refrigerant.Recovery.Simulation.Links;

/// <summary>Compression, and the machine's body that gas and friction warm and air cools; plain SI doubles.</summary>
/// <remarks>
/// Work w = κ/(κ − 1)·(p/ρ)·(r^((κ−1)/κ) − 1)/η_is (perfect-gas compression with the exponent of the real gas). The gas leaves the cylinder at
/// T_d = T(p_d, h_s + w) (<see cref="GasFacts.AfterWork"/>). It gives the body ṁ·cp·(T_d − T_b)·(1 − e^(−UA/(ṁ·cp))) on its way out, so that at vanishing flow it leaves at the
/// body's temperature. Body: C·dT_b/dt = heat from discharge gas − heat to suction gas + friction − UA·(T_b − T_air).
/// </remarks>
internal sealed class Compressor
{
    private readonly double _isentropicEfficiency;
    private readonly GasFacts _gas;
    private readonly double _capacity;
    private readonly double _airConductance;
    private readonly double _gasConductance;
    private readonly double _friction;
    private readonly bool _hasBody;
    private int _slot;

    public Compressor(RecoveryMachine machine, GasFacts gas)
    {
        _gas = gas;
        _isentropicEfficiency = machine.IsentropicEfficiency;
        if (machine.Body is MachineBody body)
        {
            _hasBody = true;
            _capacity = body.HeatCapacity.JoulesPerKelvin;
            _airConductance = body.AirConductance;
            _gasConductance = body.GasConductance;
            _friction = (double)body.FrictionPower.Watts;
        }
    }

    /// <summary>Conductance between body and gas, suction and discharge side each, W/K; zero without a body.</summary>
    public double GasConductance => _gasConductance;

    /// <summary>Temperature of the body, K; not a number without one.</summary>
    public double BodyTemperature { get; private set; } = double.NaN;

    /// <summary>Work on the refrigerant, J/kg.</summary>
    public double Work { get; private set; }

    /// <summary>Enthalpy of what leaves it, before the condenser, J/kg.</summary>
    public double HotEnthalpy { get; private set; }

    /// <summary>Temperature of what leaves it, before the condenser, K.</summary>
    public double DischargeTemperature { get; private set; }

    /// <summary>Work and friction less the heat to the air, W.</summary>
    public double FromOutside { get; private set; }

    /// <summary>What the body gains, W.</summary>
    private double BodyGain { get; set; }

    public void AddStates(SlotLayout layout, string name)
    {
        if (_hasBody)
        {
            _slot = layout.State(name, "body, temperature");
        }
    }

    public void SetScales(double[] scale)
    {
        if (_hasBody)
        {
            scale[_slot] = 1;
        }
    }

    public void Initialize(double[] state, double temperature)
    {
        if (_hasBody)
        {
            state[_slot] = temperature;
        }
    }

    public double Stored(double[] state) => _hasBody ? _capacity * state[_slot] : 0;

    /// <summary>Takes the body's temperature; false where it is none.</summary>
    public bool Take(double[] state)
    {
        BodyTemperature = _hasBody ? state[_slot] : double.NaN;
        return !_hasBody || BodyTemperature > 0;
    }

    /// <summary>Evaluates a compression.</summary>
    /// <param name="pressure">At the inlet, Pa.</param>
    /// <param name="density">In the cylinder before compression, kg/m³.</param>
    /// <param name="temperature">There, K.</param>
    /// <param name="enthalpy">There, J/kg.</param>
    /// <param name="flow">kg/s.</param>
    /// <param name="discharge">Pa.</param>
    /// <param name="bodyToSuction">Heat that the body gives to the suction gas, W.</param>
    /// <param name="air">Temperature of the air, K.</param>
    /// <param name="running">Whether it runs.</param>
    public void Solve(double pressure, double density, double temperature, double enthalpy, double flow, double discharge, double bodyToSuction, double air, bool running)
    {
        double ratio = discharge / pressure;
        double kappa = _gas.Exponent(pressure);
        double share = (kappa - 1) / kappa;
        double rise = ratio > 1 && flow > 0 ? (Math.Pow(ratio, share) - 1) / _isentropicEfficiency : 0;
        Work = pressure / density / share * rise;
        double hot = rise > 0 ? _gas.AfterWork(temperature, pressure, discharge, Work) : temperature;
        HotEnthalpy = enthalpy + Work;
        DischargeTemperature = hot;
        if (!_hasBody)
        {
            FromOutside = flow * Work;
            return;
        }

        double fromDischarge = 0;
        double capacityFlow = flow * _gas.HotHeatCapacity(0.5 * (hot + BodyTemperature), discharge);
        if (capacityFlow > 0)
        {
            double effectiveness = 1 - Math.Exp(-_gasConductance / capacityFlow);
            fromDischarge = capacityFlow * (hot - BodyTemperature) * effectiveness;
            DischargeTemperature = hot - ((hot - BodyTemperature) * effectiveness);
            HotEnthalpy -= fromDischarge / flow;
        }
        else
        {
            DischargeTemperature = BodyTemperature;
        }

        double friction = running ? _friction : 0;
        double toAir = _airConductance * (BodyTemperature - air);
        BodyGain = fromDischarge - bodyToSuction + friction - toAir;
        FromOutside = (flow * Work) + friction - toAir;
    }

    public void Derive(double[] derivatives)
    {
        if (_hasBody)
        {
            derivatives[_slot] = BodyGain / _capacity;
        }
    }
}
