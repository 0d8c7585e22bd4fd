using Refrigerant.Recovery.CoolProp.Native;

namespace Refrigerant.Recovery.CoolProp.Models;

/// <summary>Finds how far towards its two ends CoolProp can follow a fluid's saturation curves. The caller holds the gate.</summary>
internal static class SaturationEnds
{
    /// <summary>Saturated densities closer than this, relative, are the trivial solution unless the temperature is the critical one.</summary>
    private const double TrivialDifference = 1e-6;

    /// <summary>Steps down from the critical temperature, relative.</summary>
    private static readonly double[] StepsDown = [0, 1e-9, 1e-7, 1e-6, 1e-5, 1e-4, 1e-3, 3e-3, 0.01, 0.02, 0.03, 0.05, 0.1];

    /// <summary>Steps up from the equation's lowest temperature, K.</summary>
    private static readonly double[] StepsUp = [0, 1e-6, 1e-3, 0.1, 1, 2, 5, 10, 20, 40, 60, 80];

    /// <summary>The highest temperature of the steps at which both saturated states are found, K.</summary>
    /// <exception cref="CoolPropException">None is found at any step.</exception>
    public static double Warm(NativeState state, double criticalTemperature)
    {
        foreach (double step in StepsDown)
        {
            double temperature = criticalTemperature * (1 - step);
            if (Exists(state, temperature, mayMeet: step == 0))
            {
                return temperature;
            }
        }

        throw new CoolPropException(state.Name, "finding the warm end of the saturation curves", "no state near the critical point was found.");
    }

    /// <summary>The lowest temperature of the steps at which both saturated states are found, K.</summary>
    /// <exception cref="CoolPropException">None is found at any step.</exception>
    public static double Cold(NativeState state, double minimumTemperature, double warmEnd)
    {
        foreach (double step in StepsUp)
        {
            double temperature = minimumTemperature + step;
            if (temperature < warmEnd && Exists(state, temperature, mayMeet: false))
            {
                return temperature;
            }
        }

        throw new CoolPropException(state.Name, "finding the cold end of the saturation curves", "no state near the lowest temperature was found.");
    }

    private static bool Exists(NativeState state, double temperature, bool mayMeet)
    {
        try
        {
            state.Update(InputPair.QualityTemperature, 0, temperature);
            double liquid = state.Output(Property.Density);
            bool positive = state.Output(Property.Pressure) > 0;
            state.Update(InputPair.QualityTemperature, 1, temperature);
            double vapor = state.Output(Property.Density);
            positive &= state.Output(Property.Pressure) > 0;
            return positive && vapor > 0 && (mayMeet ? liquid >= vapor : liquid > vapor * (1 + TrivialDifference));
        }
        catch (CoolPropException)
        {
            return false;
        }
    }
}
