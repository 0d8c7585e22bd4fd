using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>A rigid closed volume with a given mean density of refrigerant, as its temperature changes.</summary>
internal sealed class ClosedVessel
{
    /// <summary>Halvings of the temperature range: 1000 K come down to 1e-9 K.</summary>
    private const int BisectionSteps = 40;

    private readonly PropertyModel _model;
    private readonly double _density;

    /// <exception cref="ArgumentOutOfRangeException">More than fits as saturated liquid at the lowest temperature of the equation.</exception>
    public ClosedVessel(PropertyModel model, double density, string parameter)
    {
        _model = model;
        _density = density;
        double most = model.SaturationAtTemperature(model.Range.MinimumTemperature).Bubble.Density;
        if (density > most)
        {
            throw new ArgumentOutOfRangeException(
                parameter,
                $"{parameter} makes {Require.Text(density)} kg/m³ of the volume; {model.Designation} does not fit as a liquid above {Require.Text(most)} kg/m³ "
                + $"(at {Require.Text(model.Range.MinimumTemperature)} K).");
        }

        LiquidFullTemperature = FindLiquidFull();
    }

    /// <summary>Temperature at which liquid fills the volume, K; null where the liquid boils away first.</summary>
    public double? LiquidFullTemperature { get; }

    /// <exception cref="PropertyRangeException">The state is outside the range of the equation.</exception>
    public VesselPoint At(double temperature) => _model.VesselAtTemperature(temperature, _density);

    /// <summary>The state, or null where it is outside the range of the equation: too hot, or too high a pressure.</summary>
    public VesselPoint? TryAt(double temperature)
    {
        try
        {
            return At(temperature);
        }
        catch (PropertyRangeException)
        {
            return null;
        }
    }

    /// <summary>
    /// The temperature at which the pressure is reached, K; null where the range of the equation ends first. The pressure of a closed
    /// volume rises with temperature, so bisection finds it; states beyond the equation's highest pressure count as above.
    /// </summary>
    public double? TemperatureAt(double pressure)
    {
        double low = _model.Range.MinimumTemperature;
        double high = _model.Range.MaximumTemperature;
        bool IsBelow(double temperature) => TryAt(temperature) is VesselPoint point && point.Bulk.Pressure < pressure;
        return pressure > _model.Range.MaximumPressure || IsBelow(high) ? null : Bisect(IsBelow, low, high);
    }

    /// <summary>Where liquid of the mean density saturates. Bubble density falls with temperature, so bisection finds it.</summary>
    private double? FindLiquidFull()
    {
        double low = _model.Range.MinimumTemperature;
        double high = _model.Range.MaximumSaturationTemperature;
        bool IsDenser(double temperature) => _model.SaturationAtTemperature(temperature).Bubble.Density > _density;
        return IsDenser(high) ? null : Bisect(IsDenser, low, high);
    }

    private static double Bisect(Func<double, bool> isBelow, double low, double high)
    {
        for (int step = 0; step < BisectionSteps; step++)
        {
            double middle = 0.5 * (low + high);
            if (isBelow(middle))
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return 0.5 * (low + high);
    }
}
