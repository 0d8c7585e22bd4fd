using System;
using MathNet.Numerics.RootFinding;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>A rigid closed volume with a given mean density of refrigerant, as its temperature changes.</summary>
internal sealed class ClosedVessel
{
    /// <summary>Accuracy of solved temperatures, K.</summary>
    private const double TemperatureTolerance = 1e-7;

    /// <summary>Bound on the steps of a root search; bisection alone needs 34 for 1000 K.</summary>
    private const int MaximumSteps = 200;

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

    public double MaximumTemperature => _model.Range.MaximumTemperature;

    /// <exception cref="PropertyRangeException">The state is outside the range of the equation.</exception>
    public VesselPoint At(double temperature) => _model.VesselAtTemperature(temperature, _density);

    /// <summary>The state, or null where it is outside the range of the equation: too hot, or too high a pressure.</summary>
    public VesselPoint? TryAt(double temperature)
    {
        try
        {
            VesselPoint point = At(temperature);
            return point.Bulk.Pressure <= _model.Range.MaximumPressure ? point : null;
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
        double high = MaximumTemperature;
        if (pressure > _model.Range.MaximumPressure || (TryAt(high) is VesselPoint hottest && hottest.Bulk.Pressure < pressure))
        {
            return null;
        }

        for (int step = 0; step < MaximumSteps && high - low > TemperatureTolerance; step++)
        {
            double middle = 0.5 * (low + high);
            if (TryAt(middle) is VesselPoint point && point.Bulk.Pressure < pressure)
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

    private double? FindLiquidFull()
    {
        double low = _model.Range.MinimumTemperature;
        double high = _model.Range.MaximumSaturationTemperature;
        if (Excess(high) >= 0)
        {
            return null;
        }

        return Excess(low) <= 0 ? low : Brent.FindRoot(Excess, low, high, TemperatureTolerance, MaximumSteps);
    }

    private double Excess(double temperature) => _model.SaturationAtTemperature(temperature).Bubble.Density - _density;
}
