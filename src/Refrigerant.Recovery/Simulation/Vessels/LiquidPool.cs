using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Simulation.Vessels;

/// <summary>The liquid of an appliance under a vapor space that has a pressure of its own; plain SI doubles.</summary>
/// <remarks>
/// Liquid under more than its saturation pressure has the density and energy of saturated liquid at its temperature: u′(T) = U/m. Where its saturation
/// pressure is above the vapor's it boils: ṁ = m·c·(T − T_sat(p))/(h_fg·τ). A blend counts with its bubble curve as charged.
/// </remarks>
internal sealed class LiquidPool : Vessel
{
    /// <summary>Time in which superheated liquid boils down to its saturation, s: common practice, no source.</summary>
    private const double BoilTime = 2;

    /// <summary>Difference that a slope by temperature is taken over, K.</summary>
    private const double SlopeStep = 0.05;
    private const int MaximumIterations = 30;

    /// <summary>Steps shorter than this, K, give no slope: rounding would count.</summary>
    private const double LeastSlopeStep = 1e-8;
    private const double Tolerance = 1e-12;

    private readonly PropertyModel _model;
    private readonly double[] _fractions;
    private double _temperature;
    private double _density;
    private double _mass;

    public LiquidPool(string name, PropertyModel model, int components, double temperature)
        : base(name, components)
    {
        _model = model;
        _temperature = temperature;
        _fractions = new double[components > 1 ? components : 0];
    }

    /// <summary>Pressure above it, set by the vapor space, Pa.</summary>
    public double PressureAbove { get; set; }

    public override double Pressure => PressureAbove;

    public override double Temperature => _temperature;

    public override double VaporDensity => _density;

    public override double VaporEnthalpy => LiquidEnthalpy;

    public double LiquidDensity => _density;

    /// <summary>Energy and the work that the pressure above it does, J/kg.</summary>
    public override double LiquidEnthalpy => SpecificEnergy + (PressureAbove / _density);

    public override ReadOnlySpan<double> VaporComposition => _fractions;

    public override ReadOnlySpan<double> LiquidComposition => _fractions;

    public override double Mass => _mass;

    public override double LiquidMass => _mass;

    /// <summary>m³.</summary>
    public double Volume => _mass / _density;

    /// <summary>J/kg.</summary>
    public double SpecificEnergy { get; private set; }

    /// <summary>Saturation at its temperature.</summary>
    public SaturationPoint Saturation { get; private set; }

    /// <summary>Change of its energy with temperature along saturation, J/(kg·K).</summary>
    public double HeatCapacity { get; private set; } = 1300;

    /// <summary>Change of its specific volume with temperature along saturation, m³/(kg·K).</summary>
    public double VolumeSlope
    {
        get
        {
            double t = Math.Max(_model.Range.MinimumTemperature, _temperature - SlopeStep);
            return t < _temperature ? ((1 / _density) - (1 / _model.SaturationAtTemperature(t).Bubble.Density)) / (_temperature - t) : 0;
        }
    }

    /// <summary>Boiling off where it is warmer than its saturation at the pressure above it, kg/s.</summary>
    public double BoilOff(double saturationTemperature)
    {
        double excess = _temperature - saturationTemperature;
        return excess > 0 ? _mass * HeatCapacity * excess / ((Saturation.Dew.Enthalpy - Saturation.Bubble.Enthalpy) * BoilTime) : 0;
    }

    public override bool Solve(double[] state, in SimulationInputs inputs)
    {
        _mass = SumOfMasses(state);
        if (!(_mass > 0))
        {
            return false;
        }

        for (int i = 0; i < _fractions.Length; i++)
        {
            _fractions[i] = state[First + i] / _mass;
        }

        SpecificEnergy = state[Energy] / _mass;
        PropertyRange range = _model.Range;
        double t = _temperature;
        double previous = double.NaN;
        double previousValue = 0;
        for (int i = 0; i < MaximumIterations; i++)
        {
            if (!(t >= range.MinimumTemperature && t <= range.MaximumSaturationTemperature))
            {
                return false;
            }

            SaturationPoint saturation = _model.SaturationAtTemperature(t);
            double value = saturation.Bubble.InternalEnergy - SpecificEnergy;
            if (Math.Abs(t - previous) > LeastSlopeStep)
            {
                double slope = (value - previousValue) / (t - previous);
                HeatCapacity = slope > 0 ? slope : HeatCapacity;
            }

            double step = -value / HeatCapacity;
            if (Math.Abs(step) <= Tolerance * t || i == MaximumIterations - 1)
            {
                if (Math.Abs(step) > 1e-9 * t)
                {
                    throw new ConvergenceException("Temperature of a liquid not found.", MaximumIterations);
                }

                _temperature = t;
                Saturation = saturation;
                _density = saturation.Bubble.Density;
                return true;
            }

            previous = t;
            previousValue = value;
            t += Math.Max(-20, Math.Min(20, step));
        }

        return false;
    }

    public override void Derive(double[] derivatives)
    {
    }
}
