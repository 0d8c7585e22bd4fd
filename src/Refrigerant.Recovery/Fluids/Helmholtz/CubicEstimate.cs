using System;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// A density to start from above the critical temperature: Peng and Robinson 1976, Ind. Eng. Chem. Fundam. 15, 59,
/// doi:10.1021/i160057a011. Good to some ten percent, which is all that is asked of it.
/// </summary>
internal static class CubicEstimate
{
    /// <summary>Molar density in mol/m³.</summary>
    /// <param name="data">Critical point and acentric factor.</param>
    /// <param name="temperature">K, above critical.</param>
    /// <param name="pressure">Pa.</param>
    public static double MolarDensity(PureFluidData data, double temperature, double pressure)
    {
        double tr = temperature / data.CriticalTemperature;
        double pr = pressure / data.CriticalPressure;
        double w = data.AcentricFactor;
        double kappa = 0.37464 + (1.54226 * w) - (0.26992 * w * w);
        double root = 1 + (kappa * (1 - Math.Sqrt(tr)));
        double a = 0.45724 * root * root * pr / (tr * tr);
        double b = 0.07780 * pr / tr;

        // Z³ − (1 − B)·Z² + (A − 3B² − 2B)·Z − (AB − B² − B³) = 0, depressed by Z = y + (1 − B)/3 to y³ + 3q·y − 2r = 0.
        double shift = (1 - b) / 3;
        double c1 = a - (3 * b * b) - (2 * b);
        double c0 = (a * b) - (b * b) - (b * b * b);
        double q = (c1 / 3) - (shift * shift);
        double r = (shift * shift * shift) - (0.5 * ((shift * c1) - c0));
        double discriminant = (q * q * q) + (r * r);
        double z;
        if (discriminant >= 0)
        {
            double s = Math.Sqrt(discriminant);
            double u = CubeRoot(r + (r < 0 ? -s : s));
            z = shift + (u == 0 ? 0 : u - (q / u));
        }
        else
        {
            double angle = Math.Acos(Math.Max(-1, Math.Min(1, r / Math.Pow(-q, 1.5)))) / 3;
            z = shift + (2 * Math.Sqrt(-q) * Math.Cos(angle));
        }

        return pressure / (Math.Max(z, 1.01 * b) * data.GasConstant * temperature);
    }

    private static double CubeRoot(double x) => x < 0 ? -Math.Pow(-x, 1.0 / 3) : Math.Pow(x, 1.0 / 3);
}
