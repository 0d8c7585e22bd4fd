using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Processes;

/// <summary>Compression and condensation in the machine: what the refrigerant carries when it leaves; plain SI doubles.</summary>
/// <remarks>
/// Work = κ/(κ − 1)·(p/ρ)·(r^((κ−1)/κ) − 1)/η_is with the isentropic exponent κ = ρ·c²/p of the real gas, taken between its value at
/// saturation and its ideal-gas limit at the starting temperature in proportion to the pressure. The condenser gives up what its
/// conductance allows at the condensing temperature, but not more than brings the refrigerant to its subcooled outlet.
/// </remarks>
internal sealed class MachineProcess
{
    /// <summary>Sharpness of the smooth minimum of what the condenser can give up and what it needs to.</summary>
    private const double MinimumExponent = 4;

    /// <summary>Density at which the gas is taken as ideal, as a share of the critical one.</summary>
    private const double IdealShare = 1e-5;

    private readonly PropertyModel _model;
    private readonly double _conductance;
    private readonly double _coolant;
    private readonly double _subcooling;
    private readonly double _isentropicEfficiency;
    private readonly double _highestSaturation;
    private readonly double _lowestSaturation;
    private readonly double _idealExponent;
    private readonly double _exponentSlope;

    public MachineProcess(PropertyModel model, RecoveryMachine machine, double startTemperature, double surroundings)
    {
        _model = model;
        _conductance = machine.Condenser.Conductance;
        _coolant = machine.Condenser.CoolantTemperature?.Kelvins ?? surroundings;
        _subcooling = machine.Condenser.Subcooling.Kelvins;
        _isentropicEfficiency = machine.IsentropicEfficiency;
        PropertyRange range = model.Range;
        _highestSaturation = model.SaturationAtTemperature(range.MaximumSaturationTemperature).Dew.Pressure;
        _lowestSaturation = model.SaturationAtTemperature(range.MinimumTemperature).Bubble.Pressure;
        _idealExponent = Exponent(model, startTemperature, IdealShare * model.CriticalDensity, out _);
        if (startTemperature < range.MaximumSaturationTemperature && startTemperature > range.MinimumTemperature)
        {
            StatePoint dew = model.SaturationAtTemperature(Math.Min(startTemperature, 0.95 * model.CriticalTemperature)).Dew;
            double saturated = Exponent(model, dew.Temperature, dew.Density, out _);
            _exponentSlope = (saturated - _idealExponent) / dew.Pressure;
        }
    }

    /// <summary>Enthalpy at the machine's outlet, J/kg.</summary>
    public double OutletEnthalpy { get; private set; }

    /// <summary>Power taken up by the refrigerant, W.</summary>
    public double Power { get; private set; }

    /// <summary>Heat given up by the condenser, W.</summary>
    public double CondenserHeat { get; private set; }

    /// <summary>Evaluates one suction state (its pressure, density, enthalpy), flow and discharge pressure.</summary>
    /// <param name="pressure">Suction pressure, Pa.</param>
    /// <param name="density">Suction density, kg/m³.</param>
    /// <param name="enthalpy">Suction enthalpy, J/kg.</param>
    /// <param name="flow">Mass flow, kg/s.</param>
    /// <param name="discharge">Discharge pressure, Pa.</param>
    /// <param name="condensing">Whether the condenser works.</param>
    public void Solve(double pressure, double density, double enthalpy, double flow, double discharge, bool condensing)
    {
        double work = SpecificWork(pressure, density, discharge);
        double hot = enthalpy + work;
        Power = flow * work;
        CondenserHeat = condensing ? Condense(hot, flow, discharge) : 0;
        OutletEnthalpy = flow > 0 ? hot - (CondenserHeat / flow) : hot;
    }

    private static double Exponent(PropertyModel model, double temperature, double density, out double pressure)
    {
        StateDerivatives derivatives = model.DerivativesAt(temperature, density);
        pressure = model.VesselAtTemperature(temperature, density).Bulk.Pressure;
        return density * derivatives.SpeedOfSound * derivatives.SpeedOfSound / pressure;
    }

    private double SpecificWork(double pressure, double density, double discharge)
    {
        double ratio = discharge / pressure;
        if (!(ratio > 1))
        {
            return 0;
        }

        double kappa = Math.Max(1.0001, _idealExponent + (_exponentSlope * pressure));
        double share = (kappa - 1) / kappa;
        return pressure / density / share * (Math.Pow(ratio, share) - 1) / _isentropicEfficiency;
    }

    private double Condense(double hot, double flow, double discharge)
    {
        // Below the saturation curve's cold end the condensing temperature lies far under any coolant's.
        if (!(flow > 0) || _conductance == 0 || discharge <= _lowestSaturation)
        {
            return 0;
        }

        // Above the critical point there is no condensing temperature; the curve's end stands in for the gas cooler.
        StatePoint dew = _model.SaturationAtPressure(Math.Min(discharge, _highestSaturation)).Dew;
        double difference = dew.Temperature - _coolant;
        if (!(difference > 0))
        {
            return 0;
        }

        double outlet = Math.Max(Math.Max(dew.Temperature - _subcooling, _coolant), _model.Range.MinimumTemperature);
        double needed = flow * (hot - _model.SaturationAtTemperature(outlet).Bubble.Enthalpy);
        double possible = _conductance * difference;
        return needed > 0 ? SmoothMinimum(needed, possible) : 0;
    }

    /// <summary>(a^-n + b^-n)^(-1/n), written so that neither power over- nor underflows.</summary>
    private static double SmoothMinimum(double a, double b)
    {
        double small = Math.Min(a, b);
        double ratio = small / Math.Max(a, b);
        return small * Math.Pow(1 + Math.Pow(ratio, MinimumExponent), -1 / MinimumExponent);
    }
}
