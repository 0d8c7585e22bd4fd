using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Simulation;

/// <summary>What flows and compression need of a refrigerant's vapor besides its state: exponents, heat capacity, viscosity. Plain SI doubles, immutable.</summary>
/// <remarks>
/// Exponent of isentropic compression κ = ρ·c²/p and isobaric heat capacity of the real gas, each taken between its value at saturation at the starting temperature and its ideal-gas limit in
/// proportion to the pressure. A start above the critical temperature takes the values of saturation a little below it, less in proportion to the third power of the temperature. Viscosity is that
/// of saturated vapor at the start, which hardly changes. Hot gas has c_p = c_p0(T) + ψ(T)·p, c_p0 linear and ψ a power of T through two temperatures above the start, and
/// φ = −(∂h/∂p)_T = T·(∂v/∂T)_p − v at the hotter of them.
/// </remarks>
internal sealed class GasFacts
{
    /// <summary>Density at which the gas is taken as ideal, as a share of the critical one.</summary>
    private const double IdealShare = 1e-5;

    /// <summary>Nearer to the critical temperature than this share the values there stand in.</summary>
    private const double NearCritical = 0.95;

    /// <summary>Viscosity near the critical point is taken a little below it, as a share of the end of the saturation curves.</summary>
    private const double NearEnd = 0.98;

    private const double LeastExponent = 1.0001;

    /// <summary>Superheat, K, at which hot gas is looked at, less where the equation ends before, and at a share of it; the density there at most, as a share of the critical one.</summary>
    private const double Superheat = 100;
    private const double LeastSuperheat = 10;
    private const double WarmShare = 0.3;
    private const double MostDense = 0.3;

    /// <summary>Steps of Newton's method: tens of kelvins, tenths and 1e-5 are left.</summary>
    private const int Rounds = 2;

    /// <summary>Heat capacity is no less than this share of that of the ideal gas, and the power is taken of no less than this ratio of temperatures.</summary>
    private const double LeastShare = 0.5;
    private const double LeastRatio = 0.1;
    private const double ThirdPower = 3;

    private readonly double _exponentSlope;
    private readonly double _heatCapacitySlope;
    private readonly double _idealHeatCapacity;
    private readonly double _hotTemperature;
    private readonly double _hotIdeal;
    private readonly double _hotReal;
    private readonly double _hotThrottling;
    private readonly double _idealByTemperature;
    private readonly double _realPower;

    public GasFacts(PropertyModel model, double temperature)
    {
        PropertyRange range = model.Range;
        StateDerivatives ideal = model.DerivativesAt(temperature, IdealShare * model.CriticalDensity);
        double idealPressure = model.VesselAtTemperature(temperature, IdealShare * model.CriticalDensity).Bulk.Pressure;
        IdealExponent = IdealShare * model.CriticalDensity * ideal.SpeedOfSound * ideal.SpeedOfSound / idealPressure;
        _idealHeatCapacity = ideal.IsobaricHeatCapacity;
        double reference = 0.5 * model.CriticalPressure;
        if (temperature > range.MinimumTemperature)
        {
            StatePoint dew = model.SaturationAtTemperature(Math.Max(range.MinimumTemperature, Math.Min(temperature, NearCritical * model.CriticalTemperature))).Dew;
            StateDerivatives saturated = model.DerivativesAt(dew.Temperature, dew.Density);
            double fading = temperature > model.CriticalTemperature ? Math.Pow(model.CriticalTemperature / temperature, ThirdPower) : 1;
            reference = dew.Pressure;
            _exponentSlope = fading * ((dew.Density * saturated.SpeedOfSound * saturated.SpeedOfSound / dew.Pressure) - IdealExponent) / dew.Pressure;
            _heatCapacitySlope = fading * (saturated.IsobaricHeatCapacity - _idealHeatCapacity) / dew.Pressure;
        }

        double superheat = Math.Min(Superheat, range.MaximumTemperature - temperature - 1);
        if (superheat > LeastSuperheat && temperature > range.MinimumTemperature)
        {
            _hotTemperature = temperature + superheat;
            (_hotIdeal, _hotReal, _hotThrottling) = HotGas(model, _hotTemperature, reference);
            (double warmIdeal, double warmReal, _) = HotGas(model, temperature + (WarmShare * superheat), reference);
            _idealByTemperature = (_hotIdeal - warmIdeal) / ((1 - WarmShare) * superheat);
            _realPower = warmReal > 0 && _hotReal > 0 ? Math.Log(warmReal / _hotReal) / Math.Log((temperature + (WarmShare * superheat)) / _hotTemperature) : 0;
        }

        Viscosity = model.ViscosityAtSaturation(
            Math.Max(range.MinimumTemperature, Math.Min(NearEnd * range.MaximumSaturationTemperature, temperature))).Vapor;
    }

    /// <summary>κ of the ideal gas.</summary>
    public double IdealExponent { get; }

    /// <summary>Pa·s.</summary>
    public double Viscosity { get; }

    /// <summary>κ at a pressure.</summary>
    public double Exponent(double pressure) => Math.Max(LeastExponent, IdealExponent + (_exponentSlope * pressure));

    /// <summary>Temperature of gas after work on it, K: T(p2, h1 + w), along the isobar to hot gas, there from one pressure to the other, and along that isobar.</summary>
    /// <param name="temperature">Before, K.</param>
    /// <param name="from">Pressure before, Pa.</param>
    /// <param name="to">Pressure after, Pa.</param>
    /// <param name="work">J/kg.</param>
    public double AfterWork(double temperature, double from, double to, double work)
    {
        if (!(_hotIdeal > 0))
        {
            return temperature + (work / HeatCapacity(from));
        }

        double left = work - (HotHeatCapacity(0.5 * (temperature + _hotTemperature), from) * (_hotTemperature - temperature)) + (_hotThrottling * (to - from));
        double after = _hotTemperature + (left / HotHeatCapacity(_hotTemperature, to));
        for (int i = 0; i < Rounds; i++)
        {
            // Newton's method on c_p((T + T_hot)/2)·(T − T_hot) = left.
            double beyond = after - _hotTemperature;
            double between = _hotTemperature + (0.5 * beyond);
            double real = HotReal(between, to);
            double heatCapacity = Math.Max(LeastShare * _hotIdeal, _hotIdeal + (_idealByTemperature * (between - _hotTemperature)) + real);
            double slope = heatCapacity + (0.5 * beyond * (_idealByTemperature + (_realPower * real / between)));
            after -= ((heatCapacity * beyond) - left) / Math.Max(LeastShare * heatCapacity, slope);
        }

        return after;
    }

    /// <summary>J/(kg·K) at a pressure.</summary>
    public double HeatCapacity(double pressure) => Math.Max(LeastShare * _idealHeatCapacity, _idealHeatCapacity + (_heatCapacitySlope * pressure));

    /// <summary>J/(kg·K) of hot gas; that at the start where the equation of state ends soon above it.</summary>
    public double HotHeatCapacity(double temperature, double pressure) => !(_hotIdeal > 0) ? HeatCapacity(pressure) : Math.Max(
        LeastShare * _hotIdeal,
        _hotIdeal + (_idealByTemperature * (temperature - _hotTemperature)) + HotReal(temperature, pressure));

    /// <summary>ψ(T)·p, J/(kg·K).</summary>
    private double HotReal(double temperature, double pressure) => _hotReal * Math.Pow(Math.Max(LeastRatio, temperature / _hotTemperature), _realPower) * pressure;

    /// <summary>c_p of the ideal gas, J/(kg·K), what it rises by a pressure, J/(kg·K·Pa), and φ, J/(kg·Pa). To second order in the density p = ρ·(RT + (∂p/∂ρ)_T)/2.</summary>
    private static (double Ideal, double Real, double Throttling) HotGas(PropertyModel model, double temperature, double pressure)
    {
        StateDerivatives ideal = model.DerivativesAt(temperature, IdealShare * model.CriticalDensity);
        double density = Math.Min(MostDense * model.CriticalDensity, pressure / ideal.PressureByDensity);
        StateDerivatives real = model.DerivativesAt(temperature, density);
        double volumeByTemperature = real.PressureByTemperature / (density * density * real.PressureByDensity);
        return (
            ideal.IsobaricHeatCapacity,
            (real.IsobaricHeatCapacity - ideal.IsobaricHeatCapacity) / (0.5 * density * (ideal.PressureByDensity + real.PressureByDensity)),
            (temperature * volumeByTemperature) - (1 / density));
    }
}
