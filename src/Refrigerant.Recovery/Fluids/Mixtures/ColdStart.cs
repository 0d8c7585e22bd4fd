using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>The first point of a phase boundary, at a temperature cold enough that Wilson's K factors lead to it.</summary>
internal static class ColdStart
{
    private const int Substitutions = 8;

    /// <summary>Starts <paramref name="boundary"/> on the bubble or the dew curve of its bulk.</summary>
    public static bool Bubble(IncipientPhase boundary, double temperature)
    {
        MixturePhase liquid = boundary.Bulk;
        MixturePhase vapor = boundary.Incipient;
        int n = liquid.Equation.Count;
        Span<double> partial = stackalloc double[n];
        liquid.SetTemperature(temperature);
        double pressure = 0;
        for (int i = 0; i < n; i++)
        {
            partial[i] = liquid.X[i] * liquid.Equation.Components[i].WilsonPressure(temperature);
            pressure += partial[i];
        }

        double rt = MixtureEquation.GasConstant * temperature;
        double rhoLiquid = 0;
        for (int k = 0; k < Substitutions; k++)
        {
            if (!DensityRoot.TryLiquid(liquid, pressure, out rhoLiquid))
            {
                return false;
            }

            liquid.SetDensity(rhoLiquid);
            vapor.SetAmounts(partial);
            vapor.SetTemperature(temperature);
            if (!DensityRoot.TryVapor(vapor, pressure, out double rhoVapor))
            {
                return false;
            }

            vapor.SetDensity(rhoVapor);
            pressure = 0;
            for (int i = 0; i < n; i++)
            {
                // f_i/φ_i of the vapor.
                double phiVapor = Math.Exp(vapor.LogPhi[i]) * rhoVapor * rt / vapor.Pressure;
                partial[i] = liquid.X[i] * rhoLiquid * rt * Math.Exp(liquid.LogPhi[i]) / phiVapor;
                pressure += partial[i];
            }
        }

        for (int i = 0; i < n; i++)
        {
            partial[i] /= rt;
        }

        return boundary.Start(temperature, rhoLiquid, partial);
    }

    /// <summary>Starts <paramref name="boundary"/> on the dew curve of its bulk.</summary>
    public static bool Dew(IncipientPhase boundary, double temperature)
    {
        MixturePhase vapor = boundary.Bulk;
        MixturePhase liquid = boundary.Incipient;
        int n = vapor.Equation.Count;
        Span<double> amounts = stackalloc double[n];
        vapor.SetTemperature(temperature);
        double inverse = 0;
        for (int i = 0; i < n; i++)
        {
            amounts[i] = vapor.X[i] / vapor.Equation.Components[i].WilsonPressure(temperature);
            inverse += amounts[i];
        }

        double rt = MixtureEquation.GasConstant * temperature;
        double pressure = 1 / inverse;
        double rhoVapor = 0;
        for (int k = 0; k < Substitutions; k++)
        {
            if (!DensityRoot.TryVapor(vapor, pressure, out rhoVapor))
            {
                return false;
            }

            vapor.SetDensity(rhoVapor);
            liquid.SetAmounts(amounts);
            liquid.SetTemperature(temperature);
            if (!DensityRoot.TryLiquid(liquid, pressure, out double rhoLiquid))
            {
                return false;
            }

            liquid.SetDensity(rhoLiquid);
            double sum = 0;
            for (int i = 0; i < n; i++)
            {
                // x_i = f_i/(φ_i p) of the liquid at p.
                amounts[i] = vapor.X[i] * rhoVapor * Math.Exp(vapor.LogPhi[i] - liquid.LogPhi[i]) / rhoLiquid;
                sum += amounts[i];
            }

            pressure /= sum;
        }

        double total = liquid.Rho;
        double amount = 0;
        for (int i = 0; i < n; i++)
        {
            amount += amounts[i];
        }

        for (int i = 0; i < n; i++)
        {
            amounts[i] *= total / amount;
        }

        return boundary.Start(temperature, rhoVapor, amounts);
    }
}
