using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Residuals;

/// <summary>Where a pressure lies against saturation, seen from a space that should hold vapor only.</summary>
internal enum VaporState
{
    /// <summary>Below the dew pressure: vapor only, or liquid that is colder than the temperature measured.</summary>
    Superheated = 0,

    /// <summary>At saturation within the tolerance, or for a blend between dew and bubble: liquid is likely.</summary>
    Saturated,

    /// <summary>Above the bubble pressure: full of liquid, or air, or the temperature is wrong.</summary>
    AboveSaturation,
}

/// <summary>Density of the vapor in a space at a temperature and pressure: real gas, dew side.</summary>
internal static class VaporDensity
{
    /// <summary>Within this share of the dew pressure, vapor counts as saturated: about 0.5 K or 1 kPa at 50 kPa. Our choice.</summary>
    public const double SaturationTolerance = 0.02;

    public static double At(PropertyModel model, double temperature, double pressure, out VaporState state)
    {
        if (temperature > model.Range.MaximumSaturationTemperature)
        {
            state = VaporState.Superheated;
            return model.StateAt(temperature, pressure).Density;
        }

        SaturationPoint saturation = model.SaturationAtTemperature(temperature);
        state = pressure < saturation.Dew.Pressure * (1 - SaturationTolerance) ? VaporState.Superheated
            : pressure <= saturation.Bubble.Pressure * (1 + SaturationTolerance) ? VaporState.Saturated
            : VaporState.AboveSaturation;
        return pressure < saturation.Dew.Pressure ? model.StateAt(temperature, pressure).Density : saturation.Dew.Density;
    }
}
