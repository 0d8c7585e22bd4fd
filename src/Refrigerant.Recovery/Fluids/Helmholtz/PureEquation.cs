using System;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The equation of state of one pure fluid in mass-based SI: from the Helmholtz energy and its derivatives to pressure, enthalpy, entropy,
/// heat capacities and the speed of sound (Span 2000, Multiparameter Equations of State, table 3.10). Immutable.
/// </summary>
internal sealed class PureEquation
{
    /// <summary>Largest relative step that a first-order correction of a state takes; the error left is of the size of its square.</summary>
    private const double LargestLastStep = 1e-6;

    /// <summary>The same of a step that is corrected to second order where density is concerned.</summary>
    private const double LargestCorrectedStep = 1e-5;

    private readonly double _enthalpyOffset;
    private readonly double _entropyOffset;

    public PureEquation(PureFluidData data)
        : this(data, new ResidualHelmholtz(data.Residual), 0, 0)
    {
    }

    private PureEquation(PureFluidData data, ResidualHelmholtz residual, double enthalpyOffset, double entropyOffset)
    {
        Data = data;
        Residual = residual;
        GasConstant = data.GasConstant / data.MolarMass;
        ReducingTemperature = data.ReducingTemperature;
        ReducingDensity = data.ReducingMolarDensity * data.MolarMass;
        _enthalpyOffset = enthalpyOffset;
        _entropyOffset = entropyOffset;
    }

    /// <summary>The published constants.</summary>
    public PureFluidData Data { get; }

    /// <summary>The residual Helmholtz energy.</summary>
    public ResidualHelmholtz Residual { get; }

    /// <summary>Specific gas constant, J/(kg·K).</summary>
    public double GasConstant { get; }

    /// <summary>K; τ = ReducingTemperature/T.</summary>
    public double ReducingTemperature { get; }

    /// <summary>kg/m³; δ = ρ/ReducingDensity.</summary>
    public double ReducingDensity { get; }

    /// <summary>What the reference state adds to the enthalpy, J/kg.</summary>
    public double EnthalpyOffset => _enthalpyOffset;

    /// <summary>What the reference state adds to the entropy, J/(kg·K).</summary>
    public double EntropyOffset => _entropyOffset;

    /// <summary>The same equation with enthalpy and entropy moved by constants, J/kg and J/(kg·K).</summary>
    public PureEquation WithReference(double enthalpyOffset, double entropyOffset) => new(Data, Residual, enthalpyOffset, entropyOffset);

    /// <summary>Pressure, enthalpy and entropy.</summary>
    /// <param name="temperature">K.</param>
    /// <param name="density">kg/m³.</param>
    /// <param name="isotherm">The residual isotherm of the temperature.</param>
    /// <param name="pressure">Pa.</param>
    /// <param name="enthalpy">J/kg.</param>
    /// <param name="entropy">J/(kg·K).</param>
    /// <returns>(∂p/∂ρ)/(RT), positive where the state is mechanically stable.</returns>
    public double Caloric(
        double temperature,
        double density,
        ReadOnlySpan<double> isotherm,
        out double pressure,
        out double enthalpy,
        out double entropy)
    {
        HelmholtzDerivatives r = Evaluate(temperature, density, isotherm, out enthalpy, out entropy);
        pressure = density * GasConstant * temperature * (1 + r.D);
        return 1 + (2 * r.D) + r.DD;
    }

    /// <summary>Enthalpy and entropy at a pressure: one pass, which moves a density that is nearly right by a last Newton step, and them with it.</summary>
    /// <remarks>To first order in the step, with (∂h/∂ρ) = (RT/ρ)·(∂p/∂ρ/(RT) − ∂p/∂T/(ρR)) and (∂s/∂ρ) = −(∂p/∂T)/ρ².</remarks>
    /// <param name="temperature">K.</param>
    /// <param name="pressure">Pa.</param>
    /// <param name="density">kg/m³: near the root before, the root after.</param>
    /// <param name="isotherm">The residual isotherm of the temperature.</param>
    /// <param name="enthalpy">J/kg.</param>
    /// <param name="entropy">J/(kg·K).</param>
    public void CaloricAtPressure(
        double temperature,
        double pressure,
        ref double density,
        ReadOnlySpan<double> isotherm,
        out double enthalpy,
        out double entropy)
    {
        HelmholtzDerivatives r = Evaluate(temperature, density, isotherm, out enthalpy, out entropy);
        double rt = GasConstant * temperature;
        double byDensity = 1 + (2 * r.D) + r.DD;
        double step = ((pressure / (density * rt)) - (1 + r.D)) / byDensity;
        if (Math.Abs(step) <= LargestLastStep)
        {
            double byTemperature = 1 + r.D - r.DT;
            enthalpy += rt * (byDensity - byTemperature) * step;
            entropy -= GasConstant * byTemperature * step;
            density *= 1 + step;
        }
    }

    /// <summary>
    /// Density, enthalpy and entropy at a pressure from a density near the root: Newton's steps with a correction of second order, as long as each is much
    /// smaller than the one before.
    /// </summary>
    /// <param name="temperature">K.</param>
    /// <param name="pressure">Pa.</param>
    /// <param name="curvature">About half of the relative change of the isotherm's slope with the logarithm of density.</param>
    /// <param name="density">kg/m³: near the root before, the root after.</param>
    /// <param name="isotherm">The residual isotherm of the temperature.</param>
    /// <param name="enthalpy">J/kg.</param>
    /// <param name="entropy">J/(kg·K).</param>
    /// <returns>Whether the density was near the root.</returns>
    public bool TryCaloricNear(
        double temperature,
        double pressure,
        double curvature,
        ref double density,
        ReadOnlySpan<double> isotherm,
        out double enthalpy,
        out double entropy)
    {
        const double firstStep = 0.5, slowest = 0.3, largeStep = 1e-3;
        const int mostPasses = 8;
        double rt = GasConstant * temperature;
        double tau = ReducingTemperature / temperature;
        double limit = firstStep;
        double exponent = 1 + (2 * curvature);
        for (int pass = 0; pass < mostPasses; pass++)
        {
            HelmholtzDerivatives r = Residual.At(tau, density / ReducingDensity, isotherm);
            double byDensity = 1 + (2 * r.D) + r.DD;
            double step = ((pressure / (density * rt)) - (1 + r.D)) / byDensity;
            double size = Math.Abs(step) * (1 + Math.Abs(curvature));
            if (!(byDensity > 0) || !(size <= limit))
            {
                break;
            }

            if (size <= LargestCorrectedStep)
            {
                step *= 1 - (curvature * step);
                Complete(temperature, density, r, out enthalpy, out entropy);
                double byTemperature = 1 + r.D - r.DT;
                enthalpy += rt * (byDensity - byTemperature) * step;
                entropy -= GasConstant * byTemperature * step;
                density *= 1 + step;
                return true;
            }

            // An isotherm p ~ ρ^n where the step is large.
            double growth = 1 + (exponent * step);
            density *= size < largeStep || exponent <= 1 || !(growth > 0) ? 1 + (step * (1 - (curvature * step))) : Math.Pow(growth, 1 / exponent);
            limit = slowest * size;
        }

        enthalpy = entropy = double.NaN;
        return false;
    }

    /// <summary>Pressure and internal energy at a temperature in K and a density in kg/m³, with their slopes by temperature.</summary>
    public IsochoricSlopes Slopes(double temperature, double density)
    {
        double tau = ReducingTemperature / temperature;
        Span<double> isotherm = stackalloc double[Residual.IsothermLength];
        Residual.Isotherm(tau, isotherm);
        Data.IdealGas.Evaluate(tau, out _, out double idealT, out double idealTT);
        HelmholtzDerivatives r = Residual.At(tau, density / ReducingDensity, isotherm);
        double rRho = GasConstant * density;
        return new IsochoricSlopes(
            rRho * temperature * (1 + r.D),
            (GasConstant * temperature * (idealT + r.T)) + _enthalpyOffset,
            -GasConstant * (idealTT + r.TT),
            rRho * (1 + r.D - r.DT));
    }

    /// <summary>Heat capacities, speed of sound and pressure derivatives. Where (∂p/∂ρ) is not positive the set is not physical.</summary>
    /// <param name="temperature">K.</param>
    /// <param name="density">kg/m³.</param>
    public StateDerivatives Derivatives(double temperature, double density)
    {
        double tau = ReducingTemperature / temperature;
        Span<double> isotherm = stackalloc double[Residual.IsothermLength];
        Residual.Isotherm(tau, isotherm);
        Data.IdealGas.Evaluate(tau, out _, out _, out double idealTT);
        HelmholtzDerivatives r = Residual.At(tau, density / ReducingDensity, isotherm);
        double byDensity = 1 + (2 * r.D) + r.DD;
        double byTemperature = 1 + r.D - r.DT;
        double cv = -GasConstant * (idealTT + r.TT);
        double cp = cv + (GasConstant * byTemperature * byTemperature / byDensity);
        double dpdrho = GasConstant * temperature * byDensity;
        return new StateDerivatives(cv, cp, Math.Sqrt(cp / cv * dpdrho), dpdrho, density * GasConstant * byTemperature);
    }

    private HelmholtzDerivatives Evaluate(
        double temperature, double density, ReadOnlySpan<double> isotherm, out double enthalpy, out double entropy)
    {
        HelmholtzDerivatives r = Residual.At(ReducingTemperature / temperature, density / ReducingDensity, isotherm);
        Complete(temperature, density, r, out enthalpy, out entropy);
        return r;
    }

    /// <summary>Enthalpy and entropy of a residual part with the ideal-gas part.</summary>
    private void Complete(double temperature, double density, in HelmholtzDerivatives r, out double enthalpy, out double entropy)
    {
        Data.IdealGas.Evaluate(ReducingTemperature / temperature, out double ideal, out double idealT, out _);
        enthalpy = (GasConstant * temperature * (1 + r.D + idealT + r.T)) + _enthalpyOffset;
        entropy = (GasConstant * (idealT + r.T - Math.Log(density / ReducingDensity) - ideal - r.A)) + _entropyOffset;
    }
}
