using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Simulation.Contents;

/// <summary>A pure fluid in a vessel.</summary>
/// <remarks>
/// The state moves little from one evaluation to the next, so the temperature is found from the last one: by secant steps on the
/// saturation curves while there is liquid, by Newton's method on the equation of state when there is none. Where that does not settle,
/// the property model solves from scratch.
/// </remarks>
internal sealed class PureContent(PropertyModel model) : Content(model, 1)
{
    /// <summary>
    /// A secant step of at most this share of the temperature is the last one; temperature and pressure are moved by it to first order. So
    /// small because the integrator takes differences of what follows from it.
    /// </summary>
    private const double Tolerance = 1e-12;

    /// <summary>
    /// A Newton step of at most this share of the temperature is the last one: it is exact to second order, which leaves some 1e-15.
    /// </summary>
    private const double GasTolerance = 1e-7;

    /// <summary>Where secant steps have not settled after this many the property model takes over.</summary>
    private const int MaximumIterations = 12;

    /// <summary>A step of at least this share of the temperature gives a new slope.</summary>
    private const double SlopeStep = 1e-6;

    /// <summary>Largest first step of a secant, K; further means that the last state is no help.</summary>
    private const double FarAway = 20;

    private double _liquidDensity;
    private double _slope;
    private IsochoricSlopes _gas;
    private double _gasDensity;
    private double _gasEnergy;
    private double _gasEnergyByDensity;
    private bool _hasLast;
    private bool _lastHadLiquid;

    public override VesselPoint ToVesselPoint() => Model.VesselAtTemperature(
        Math.Min(Model.Range.MaximumTemperature, Math.Max(Model.Range.MinimumTemperature, Temperature)), VaporFraction is > 0 and < 1 ? 1 / (((1 - VaporFraction) / _liquidDensity) + (VaporFraction / VaporDensity)) : _liquidDensity);

    protected override bool Find(ReadOnlySpan<double> masses, double mass, double volume, double energy)
    {
        double density = mass / volume;
        double specific = energy / mass;
        if (_hasLast && (_lastHadLiquid ? FollowSaturation(density, specific) : FollowGas(density, specific)))
        {
            return true;
        }

        FromScratch(density, specific);
        return true;
    }

    private void FromScratch(double density, double energy)
    {
        VesselPoint vessel = Model.VesselAtEnergy(density, energy);
        StatePoint bulk = vessel.Bulk;
        bool hasLiquid = vessel.Liquid.Phase != Phase.Undefined;
        if (hasLiquid && vessel.Vapor.Phase != Phase.Undefined)
        {
            TakeTwoPhases(vessel.Liquid, vessel.Vapor, bulk.VaporFraction, density);
        }
        else if (hasLiquid)
        {
            TakeOnePhase(bulk);
            VaporFraction = 0;
            LiquidVolumeFraction = 1;
            LiquidMargin = 1;
            _hasLast = false;
            return;
        }
        else
        {
            TakeOnePhase(bulk);
        }

        _slope = 0;
        _hasLast = true;
        _lastHadLiquid = hasLiquid;
    }

    /// <summary>u'(T) + x·(u''(T) − u'(T)) = u with x from the specific volume: two phases on the saturation curves.</summary>
    private bool FollowSaturation(double density, double energy)
    {
        double volume = 1 / density;
        double temperature = Temperature;
        double previous = 0;
        double previousValue = 0;
        PropertyRange range = Model.Range;
        for (int i = 0; i < MaximumIterations; i++)
        {
            if (temperature < range.MinimumTemperature || temperature > range.MaximumSaturationTemperature)
            {
                return false;
            }

            SaturationPoint saturation = Model.SaturationAtTemperature(temperature);
            StatePoint liquid = saturation.Bubble;
            StatePoint vapor = saturation.Dew;
            double liquidVolume = 1 / liquid.Density;
            double vaporVolume = 1 / vapor.Density;
            double quality = (volume - liquidVolume) / (vaporVolume - liquidVolume);
            double liquidEnergy = liquid.Enthalpy - (liquid.Pressure * liquidVolume);
            double vaporEnergy = vapor.Enthalpy - (vapor.Pressure * vaporVolume);
            double value = liquidEnergy + (quality * (vaporEnergy - liquidEnergy)) - energy;
            if (!Step(i, ref temperature, ref previous, ref previousValue, value, out bool settled))
            {
                return false;
            }

            if (settled)
            {
                if (!(quality >= 0 && quality <= 1))
                {
                    return false;
                }

                TakeTwoPhases(liquid, vapor, quality, density);
                Correct(temperature, (vapor.Enthalpy - liquid.Enthalpy) / (temperature * (vaporVolume - liquidVolume)));
                return true;
            }
        }

        return false;
    }

    /// <summary>u(T, ρ) = u by Newton's method, from where the last state and its slopes lead.</summary>
    private bool FollowGas(double density, double energy)
    {
        double temperature = Temperature;
        if (_gas.HeatCapacity > 0)
        {
            temperature += (energy - _gasEnergy - (_gasEnergyByDensity * (density - _gasDensity))) / _gas.HeatCapacity;
            temperature = Math.Abs(temperature - Temperature) < FarAway ? temperature : Temperature;
        }

        for (int i = 0; i < MaximumIterations; i++)
        {
            if (!IsGas(temperature, density, out double dewDensity))
            {
                return false;
            }

            IsochoricSlopes gas = Model.VaporAt(temperature, density);
            double change = (energy - gas.InternalEnergy) / gas.HeatCapacity;
            if (!(Math.Abs(change) < FarAway))
            {
                return false;
            }

            if (Math.Abs(change) <= GasTolerance * temperature)
            {
                Temperature = temperature + change;
                Pressure = gas.Pressure + (gas.PressureByTemperature * change);
                TakeGas(density, energy + (Pressure / density), dewDensity);
                _gas = gas;
                _gasDensity = density;
                _gasEnergy = energy;
                _gasEnergyByDensity = (Pressure - (Temperature * gas.PressureByTemperature)) / (density * density);
                return true;
            }

            temperature += change;
        }

        return false;
    }

    /// <summary>Whether the density is that of vapor without liquid; where the saturation curves end it is not known.</summary>
    private bool IsGas(double temperature, double density, out double dewDensity)
    {
        dewDensity = double.PositiveInfinity;
        PropertyRange range = Model.Range;
        if (!(temperature >= range.MinimumTemperature && temperature <= range.MaximumTemperature))
        {
            return false;
        }

        if (temperature > range.MaximumSaturationTemperature)
        {
            return temperature > Model.CriticalTemperature;
        }

        dewDensity = Model.SaturationAtTemperature(temperature).Dew.Density;
        return density <= dewDensity;
    }

    /// <summary>Moves temperature and pressure by the last secant step, with Clapeyron's dp/dT.</summary>
    private void Correct(double temperature, double pressureSlope)
    {
        Pressure += pressureSlope * (temperature - Temperature);
        Temperature = temperature;
    }

    /// <summary>One secant step; the slope of the last solution starts it. False where it goes astray.</summary>
    private bool Step(int iteration, ref double temperature, ref double previous, ref double previousValue, double value, out bool settled)
    {
        if (iteration > 0 && temperature != previous)
        {
            double slope = (value - previousValue) / (temperature - previous);
            if (slope > 0 && Math.Abs(temperature - previous) > SlopeStep * temperature)
            {
                _slope = slope;
            }
        }

        previous = temperature;
        previousValue = value;
        if (!(_slope > 0))
        {
            // No slope yet: a small step finds one.
            temperature += 1e-3;
            settled = false;
            return true;
        }

        double change = -value / _slope;
        settled = Math.Abs(change) <= Tolerance * temperature;
        temperature += change;
        return Math.Abs(change) < FarAway;
    }

    private void TakeTwoPhases(in StatePoint liquid, in StatePoint vapor, double quality, double density)
    {
        Temperature = vapor.Temperature;
        Pressure = liquid.Pressure + (quality * (vapor.Pressure - liquid.Pressure));
        VaporFraction = quality;
        VaporDensity = vapor.Density;
        VaporEnthalpy = vapor.Enthalpy;
        LiquidVolumeFraction = (1 - quality) * density / liquid.Density;
        _liquidDensity = liquid.Density;
        LiquidEnthalpy = liquid.Enthalpy;
        LiquidMargin = 1 - quality;
    }

    private void TakeOnePhase(in StatePoint bulk)
    {
        Temperature = bulk.Temperature;
        Pressure = bulk.Pressure;
        double dewDensity = bulk.Temperature >= Model.Range.MaximumSaturationTemperature
            ? double.PositiveInfinity
            : Model.SaturationAtTemperature(bulk.Temperature).Dew.Density;
        TakeGas(bulk.Density, bulk.Enthalpy, dewDensity);
        _gas = default;
    }

    private void TakeGas(double density, double enthalpy, double dewDensity)
    {
        VaporFraction = 1;
        VaporDensity = density;
        VaporEnthalpy = enthalpy;
        LiquidVolumeFraction = 0;
        _liquidDensity = density;
        LiquidEnthalpy = enthalpy;
        LiquidMargin = Math.Min(0, (density / dewDensity) - 1);
    }
}
