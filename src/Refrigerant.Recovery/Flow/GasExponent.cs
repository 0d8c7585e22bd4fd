using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Flow;

/// <summary>The ratio of heat capacities of a refrigerant as ideal gas, which the choking of throttles hangs on.</summary>
internal static class GasExponent
{
    /// <summary>Gas constant, J/(mol·K) (SI, exact: Boltzmann's times Avogadro's constant).</summary>
    private const double GasConstant = 8.31446261815324;

    /// <summary>At this share of the saturated vapor's density gas counts as ideal.</summary>
    private const double ThinShare = 1e-4;

    /// <summary>κ = 1 + R/(M·cv) of thin gas at a temperature.</summary>
    /// <exception cref="PropertyRangeException">The temperature is outside the range of the equation.</exception>
    public static double At(PropertyModel model, double temperature)
    {
        double within = System.Math.Min(model.Range.MaximumSaturationTemperature, temperature);
        double density = ThinShare * model.SaturationAtTemperature(within).Dew.Density;
        return 1 + (GasConstant / (model.MolarMass * model.DerivativesAt(temperature, density).IsochoricHeatCapacity));
    }
}
