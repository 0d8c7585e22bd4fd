using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// An estimate of a blend's viscosity along saturation. Liquid: ln μ = Σ x_i ln μ_i (Grunberg and Nissan 1949, Nature 164, 799,
/// doi:10.1038/164799b0, without their interaction term). Vapor: Wilke 1950, J. Chem. Phys. 18, 517, doi:10.1063/1.1747673.
/// </summary>
/// <remarks>A component above the end of its own saturation curve counts with its value there.</remarks>
internal sealed class BlendViscosity
{
    /// <summary>Components are asked no nearer to their critical point than this.</summary>
    private const double NearestToCritical = 0.98;

    private readonly IReadOnlyList<HelmholtzModel> _components;

    public BlendViscosity(IReadOnlyList<HelmholtzModel> components) => _components = components;

    public SaturationViscosity At(double temperature, double[] x)
    {
        int n = x.Length;
        Span<double> vapors = stackalloc double[n];
        double logLiquid = 0;
        for (int i = 0; i < n; i++)
        {
            PropertyRange range = _components[i].Range;
            double highest = Math.Min(range.MaximumSaturationTemperature, NearestToCritical * _components[i].CriticalTemperature);
            SaturationViscosity pure = _components[i].ViscosityAtSaturation(Math.Max(range.MinimumTemperature, Math.Min(highest, temperature)));
            logLiquid += x[i] * Math.Log(pure.Liquid);
            vapors[i] = pure.Vapor;
        }

        double vapor = 0;
        for (int i = 0; i < n; i++)
        {
            double sum = 0;
            for (int j = 0; j < n; j++)
            {
                double masses = _components[j].MolarMass / _components[i].MolarMass;
                double root = 1 + (Math.Sqrt(vapors[i] / vapors[j]) * Math.Pow(masses, 0.25));
                sum += x[j] * root * root / Math.Sqrt(8 * (1 + (1 / masses)));
            }

            vapor += x[i] * vapors[i] / sum;
        }

        return new SaturationViscosity(Math.Exp(logLiquid), vapor, isEstimate: true);
    }
}
