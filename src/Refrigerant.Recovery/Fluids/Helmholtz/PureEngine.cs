using System;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>What a pure fluid's model works with once the fluid is used: its equation on its reference state, and its curves. Immutable.</summary>
internal sealed class PureEngine
{
    /// <summary>The reference temperature of the IIR state, K: saturated liquid at 0 °C.</summary>
    private const double ReferenceTemperature = 273.15;

    /// <summary>Enthalpy of the IIR reference state, J/kg.</summary>
    private const double ReferenceEnthalpy = 200_000;

    /// <summary>Entropy of the IIR reference state, J/(kg·K).</summary>
    private const double ReferenceEntropy = 1000;

    /// <summary>Where 0 °C is above critical, saturated liquid at one atmosphere has h = 0 and s = 0: Pa.</summary>
    private const double ReferencePressure = 101_325;

    /// <summary>How far a density at saturation may lie beyond that of the curves, relative.</summary>
    private const double SaturationMargin = 1e-6;

    /// <summary>Relative distance above the critical temperature within which (∂p/∂ρ) next to the critical density is lost in rounding.</summary>
    private const double CriticalRounding = 1e-6;

    /// <summary>Pieces of the temperature range for starts of density searches.</summary>
    private const int StartPieces = 32;

    private readonly StartDensities _starts;

    private PureEngine(PureEquation equation, SaturationCurves curves)
    {
        Equation = equation;
        Curves = curves;
        _starts = new StartDensities(equation.Data.MinimumTemperature, curves.MaximumTemperature, StartPieces, StiffnessAt());
        SaturationValues lowest = curves.AtTemperature(equation.Data.MinimumTemperature);
        SaturationValues highest = curves.AtTemperature(curves.MaximumTemperature);
        MinimumSaturationPressure = lowest.Pressure;
        MaximumSaturationPressure = highest.Pressure;
        EndDensity = 0.5 * (highest.LiquidDensity + highest.VaporDensity);
        EndPressureSlope = highest.PressureSlope;
    }

    /// <summary>The equation of state on its reference.</summary>
    public PureEquation Equation { get; }

    /// <summary>The saturation curves.</summary>
    public SaturationCurves Curves { get; }

    /// <summary>Pa, at the lowest temperature.</summary>
    public double MinimumSaturationPressure { get; }

    /// <summary>Pa, at the upper end of the curves.</summary>
    public double MaximumSaturationPressure { get; }

    /// <summary>Between the saturation densities at the upper end of the curves, kg/m³.</summary>
    public double EndDensity { get; }

    /// <summary>dp/dT at the upper end of the curves, Pa/K.</summary>
    public double EndPressureSlope { get; }

    /// <summary>Builds the curves and fixes the reference state.</summary>
    public static PureEngine Create(PureFluidData data)
    {
        var raw = new PureEquation(data);
        SaturationLine line = SaturationCurveBuilder.Build(raw);
        bool isIir = line.MaximumTemperature > ReferenceTemperature;
        SaturationValues reference = line.AtTemperature(
            isIir ? ReferenceTemperature : line.TemperatureAt(ReferencePressure, 0.5 * (data.MinimumTemperature + line.MaximumTemperature)));
        double enthalpy = (isIir ? ReferenceEnthalpy : 0) - reference.LiquidEnthalpy;
        double entropy = (isIir ? ReferenceEntropy : 0) - reference.LiquidEntropy;
        return new PureEngine(
            raw.WithReference(enthalpy, entropy), new SaturationCurves(line.WithReference(enthalpy, entropy), data.MinimumTemperature));
    }

    /// <summary>The stable state at a temperature and a pressure.</summary>
    public StatePoint StateAt(double temperature, double pressure)
    {
        SaturationValues s = Bounds(temperature);
        return Complete(PhaseAt(temperature, pressure, s), temperature, pressure, s);
    }

    /// <summary>The state of a phase that is stable, or saturated, at a temperature and a pressure.</summary>
    public StatePoint StateAt(Phase phase, double temperature, double pressure) =>
        Complete(phase, temperature, pressure, Bounds(temperature));

    /// <summary>The stable phase at a temperature and a pressure.</summary>
    public Phase PhaseAt(double temperature, double pressure) => PhaseAt(temperature, pressure, Bounds(temperature));

    /// <summary>One phase at a temperature and a density. Its pressure is NaN where the density is beyond what the equation is meant for.</summary>
    public StatePoint Single(Phase phase, double temperature, double density)
    {
        Span<double> isotherm = stackalloc double[Equation.Residual.IsothermLength];
        Equation.Residual.Isotherm(Equation.ReducingTemperature / temperature, isotherm);
        double slope = Equation.Caloric(temperature, density, isotherm, out double pressure, out double enthalpy, out double entropy);
        bool isNextToCritical = temperature > Curves.MaximumTemperature && temperature <= Curves.CriticalTemperature * (1 + CriticalRounding);
        pressure = slope > 0 || isNextToCritical ? pressure : double.NaN;
        return new StatePoint(phase, temperature, pressure, density, enthalpy, entropy, phase == Phase.Liquid ? 0 : 1);
    }

    /// <summary>(∂p/∂ρ)/(RT) of saturated vapor, of saturated liquid and of a little denser liquid, over temperature.</summary>
    private Func<double, (double Vapor, double Liquid, double Denser)> StiffnessAt()
    {
        var isotherm = new double[Equation.Residual.IsothermLength];
        return temperature =>
        {
            SaturationValues s = Curves.AtTemperature(temperature);
            double tau = Equation.ReducingTemperature / temperature;
            Equation.Residual.Isotherm(tau, isotherm);
            double Stiffness(double density)
            {
                Equation.Residual.ByDensity(tau, density / Equation.ReducingDensity, isotherm, out double d, out double dd);
                return 1 + (2 * d) + dd;
            }

            return (Stiffness(s.VaporDensity), Stiffness(s.LiquidDensity), Stiffness(s.LiquidDensity * (1 + StartDensities.Step)));
        };
    }

    /// <summary>The saturated states, or those at the end of the curves above it; nothing above critical.</summary>
    private SaturationValues Bounds(double temperature) => temperature > Curves.CriticalTemperature
        ? default
        : Curves.AtTemperature(Math.Min(temperature, Curves.MaximumTemperature));

    private Phase PhaseAt(double temperature, double pressure, in SaturationValues s) =>
        temperature > Curves.CriticalTemperature ? Phase.Supercritical
        : pressure >= s.Pressure + ((temperature - s.Temperature) * EndPressureSlope) ? Phase.Liquid
        : Phase.Vapor;

    private StatePoint Complete(Phase phase, double temperature, double pressure, in SaturationValues s)
    {
        double tau = Equation.ReducingTemperature / temperature;
        Span<double> isotherm = stackalloc double[Equation.Residual.IsothermLength];
        Equation.Residual.Isotherm(tau, isotherm);
        if (!TryFromStart(phase, temperature, pressure, s, isotherm, out double density, out double enthalpy, out double entropy))
        {
            density = Equation.ReducingDensity * ReducedDensity(phase, temperature, tau, pressure, s, isotherm);
            Equation.CaloricAtPressure(temperature, pressure, ref density, isotherm, out enthalpy, out entropy);
        }

        return new StatePoint(phase, temperature, pressure, density, enthalpy, entropy, phase == Phase.Liquid ? 0 : 1);
    }

    /// <summary>The state from a density that is so near that one full evaluation, or a few, do.</summary>
    private bool TryFromStart(
        Phase phase,
        double temperature,
        double pressure,
        in SaturationValues s,
        ReadOnlySpan<double> isotherm,
        out double density,
        out double enthalpy,
        out double entropy)
    {
        density = enthalpy = entropy = double.NaN;
        if (phase == Phase.Supercritical || !_starts.Covers(temperature))
        {
            return false;
        }

        double rt = Equation.GasConstant * temperature;
        bool isLiquid = phase == Phase.Liquid;
        density = isLiquid
            ? _starts.Liquid(temperature, s.LiquidDensity, s.Pressure / rt, pressure / rt, out double curvature)
            : _starts.Vapor(temperature, s.VaporDensity, s.Pressure / rt, pressure / rt, out curvature);
        return Equation.TryCaloricNear(temperature, pressure, curvature, ref density, isotherm, out enthalpy, out entropy)
            && (isLiquid ? density >= s.LiquidDensity * (1 - SaturationMargin) : density <= s.VaporDensity * (1 + SaturationMargin));
    }

    private double ReducedDensity(
        Phase phase,
        double temperature,
        double tau,
        double pressure,
        in SaturationValues s,
        ReadOnlySpan<double> isotherm)
    {
        ResidualHelmholtz residual = Equation.Residual;
        double rt = Equation.GasConstant * temperature;
        double target = pressure / (rt * Equation.ReducingDensity);
        if (phase == Phase.Supercritical)
        {
            double estimate = CubicEstimate.MolarDensity(Equation.Data, temperature, pressure) / Equation.Data.ReducingMolarDensity;
            return DensitySolver.Supercritical(residual, tau, target, estimate, isotherm);
        }

        // In the last fraction of a millikelvin below critical the curves are closed, and the density between them bounds both phases.
        bool isClosed = temperature > Curves.MaximumTemperature;
        if (phase == Phase.Liquid)
        {
            double lowest = isClosed ? EndDensity : s.LiquidDensity * (1 - SaturationMargin);
            return DensitySolver.Liquid(
                residual, tau, target, lowest / Equation.ReducingDensity, s.LiquidDensity / Equation.ReducingDensity, isotherm);
        }

        double highest = isClosed ? EndDensity : s.VaporDensity * (1 + SaturationMargin);
        return DensitySolver.Vapor(
            residual, tau, target, highest / Equation.ReducingDensity, Virial(s, pressure, rt) / Equation.ReducingDensity, isotherm);
    }

    /// <summary>Vapor density of a two-term virial equation that passes through the saturated vapor.</summary>
    private static double Virial(in SaturationValues s, double pressure, double rt)
    {
        double b = ((s.Pressure / (s.VaporDensity * rt)) - 1) / s.VaporDensity;
        double root = 1 + (4 * b * pressure / rt);
        return Math.Min(s.VaporDensity, 2 * pressure / (rt * (1 + Math.Sqrt(Math.Max(0, root)))));
    }
}
