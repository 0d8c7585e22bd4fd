using System;
using System.Linq;
using Refrigerant.Recovery.Fluids.Helmholtz;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// What the model of one composition works with once it is used: the equation, the critical point and the curves. Immutable but for the
/// scratchpad it keeps.
/// </summary>
internal sealed class MixtureEngine
{
    /// <summary>The curves go down to half the critical temperature, or as far as every component's equation does, but not below 0.4 of it.</summary>
    private const double ColdShare = 0.5;

    private const double ColdestShare = 0.4;

    /// <summary>How far a density at saturation may lie beyond that of the curves, relative.</summary>
    private const double SaturationMargin = 1e-7;

    /// <summary>A reduced density above any that the highest pressure reaches.</summary>
    private const double Packed = 5;

    /// <summary>Pieces of the temperature range for starts of density searches.</summary>
    private const int StartPieces = 16;

    private readonly ScratchPool<MixtureScratch> _pool;
    private readonly StartDensities _starts;

    /// <summary>Finds the critical point and traces the curves.</summary>
    /// <exception cref="ConvergenceException">The composition has no critical point, or no curves, that were found.</exception>
    public MixtureEngine(MixtureEquation equation, double[] composition)
    {
        Equation = equation;
        Composition = composition;
        for (int i = 0; i < composition.Length; i++)
        {
            MolarMass += composition[i] * equation.Components[i].Data.MolarMass;
        }

        Critical = new MixtureCriticalPoint(equation, composition);
        if (!Critical.Find())
        {
            throw new ConvergenceException("No critical point was found for the composition.", 0);
        }

        double tc = Critical.Temperature;
        double coldest = equation.Components.Max(c => c.Data.MinimumTemperature);
        double minimum = Math.Max(ColdestShare * tc, Math.Min(ColdShare * tc, coldest));
        Curves = BlendCurves.Trace(equation, composition, MolarMass, minimum, tc);
        _pool = new ScratchPool<MixtureScratch>(() => new MixtureScratch(equation, composition));
        _starts = new StartDensities(Curves.MinimumTemperature, Curves.MaximumTemperature, StartPieces, StiffnessAt());
    }

    public MixtureEquation Equation { get; }

    /// <summary>Mole fractions.</summary>
    public double[] Composition { get; }

    /// <summary>kg/mol.</summary>
    public double MolarMass { get; }

    public MixtureCriticalPoint Critical { get; }

    public BlendCurves Curves { get; }

    public MixtureScratch Rent() => _pool.Rent();

    public void Return(MixtureScratch scratch) => _pool.Return(scratch);

    /// <summary>The state of the bulk as one phase at the temperature and molar density set in a scratch phase.</summary>
    public StatePoint Point(MixturePhase phase, Phase name, double pressure)
    {
        phase.SetIdealGas();
        return Named(phase, name, pressure);
    }

    /// <summary>The state of the bulk as one phase that is set, caloric properties included.</summary>
    private StatePoint Named(MixturePhase phase, Phase name, double pressure) =>
        new(
            name,
            phase.T,
            pressure,
            phase.Rho * MolarMass,
            (phase.Energy + (pressure / phase.Rho)) / MolarMass,
            phase.Entropy / MolarMass,
            name == Phase.Liquid ? 0 : 1);

    /// <summary>One phase of the bulk at a temperature and a mass density.</summary>
    public StatePoint Single(MixtureScratch scratch, Phase name, double temperature, double density)
    {
        scratch.Bulk.SetTemperature(temperature);
        scratch.Bulk.SetDensity(density / MolarMass);
        return Point(scratch.Bulk, name, scratch.Bulk.Pressure);
    }

    /// <summary>The name of a single phase at a temperature above the curves.</summary>
    public Phase NameAbove(double temperature, double molarDensity) =>
        temperature > Critical.Temperature ? Phase.Supercritical
        : molarDensity > Critical.Density ? Phase.Liquid
        : Phase.Vapor;

    /// <summary>Compressed liquid on the branch that begins at the bubble point.</summary>
    public StatePoint Liquid(MixtureScratch scratch, in StatePoint bubble, double pressure)
    {
        MixturePhase phase = scratch.Bulk;
        phase.SetTemperature(bubble.Temperature);
        double saturated = bubble.Density / MolarMass, rt = MixtureEquation.GasConstant * bubble.Temperature;
        double low = saturated * (1 - SaturationMargin);
        if (_starts.Covers(bubble.Temperature))
        {
            double start = _starts.Liquid(bubble.Temperature, saturated, bubble.Pressure / rt, pressure / rt, out double curvature);
            if (DensityRoot.TrySettle(phase, pressure, start, curvature) && phase.Rho >= low)
            {
                return Named(phase, Phase.Liquid, pressure);
            }
        }

        double high = low;
        double limit = Packed * phase.ReducingDensity;
        do
        {
            high *= 1.1;
        }
        while (phase.PressureAt(high, out _) < pressure && high < limit);

        phase.SetDensity(DensityRoot.Between(phase, pressure, low, high, low * (1 + SaturationMargin)));
        return Point(phase, Phase.Liquid, pressure);
    }

    /// <summary>Superheated vapor on the branch that ends at the dew point.</summary>
    public StatePoint Vapor(MixtureScratch scratch, in StatePoint dew, double pressure)
    {
        MixturePhase phase = scratch.Bulk;
        phase.SetTemperature(dew.Temperature);
        double saturated = dew.Density / MolarMass, rt = MixtureEquation.GasConstant * dew.Temperature;
        double high = saturated * (1 + SaturationMargin);
        double ideal = pressure / rt, idealDew = dew.Pressure / rt;
        if (_starts.Covers(dew.Temperature))
        {
            double near = _starts.Vapor(dew.Temperature, saturated, idealDew, ideal, out double curvature);
            if (DensityRoot.TrySettle(phase, pressure, near, curvature) && phase.Rho <= high)
            {
                return Named(phase, Phase.Vapor, pressure);
            }
        }

        // A two-term virial equation through the dew point.
        double b = ((idealDew / high) - 1) / high;
        double start = Math.Min(high, 2 * ideal / (1 + Math.Sqrt(Math.Max(0, 1 + (4 * b * ideal)))));
        phase.SetDensity(DensityRoot.Between(phase, pressure, 0, high, start));
        return Point(phase, Phase.Vapor, pressure);
    }

    /// <summary>The amounts of a two-phase solution of one mole, as a vessel's content.</summary>
    public VesselPoint TwoPhase(PhaseSplit split)
    {
        double p = split.Pressure;
        StatePoint liquid = Part(split.Liquid, Phase.Liquid, p, out double liquidMass);
        StatePoint vapor = Part(split.Vapor, Phase.Vapor, p, out double vaporMass);
        liquidMass *= split.LiquidAmount;
        vaporMass *= split.VaporAmount;
        double quality = vaporMass / (liquidMass + vaporMass);
        var bulk = new StatePoint(
            Phase.TwoPhase,
            split.Temperature,
            p,
            (liquidMass + vaporMass) / (split.LiquidVolume + split.VaporVolume),
            liquid.Enthalpy + (quality * (vapor.Enthalpy - liquid.Enthalpy)),
            liquid.Entropy + (quality * (vapor.Entropy - liquid.Entropy)),
            quality);
        return new VesselPoint(bulk, liquid, vapor);
    }

    /// <summary>(∂p/∂ρ)/(RT) of the bulk as vapor at the dew point, as liquid at the bubble point and a little denser, over temperature.</summary>
    private Func<double, (double Vapor, double Liquid, double Denser)> StiffnessAt()
    {
        var phase = new MixturePhase(Equation);
        phase.SetComposition(Composition);
        return temperature =>
        {
            phase.SetTemperature(temperature);
            double rt = MixtureEquation.GasConstant * temperature;
            double liquid = Curves.Bubble.At(temperature).Density / MolarMass;
            _ = phase.PressureAt(Curves.Dew.At(temperature).Density / MolarMass, out double vapor);
            _ = phase.PressureAt(liquid, out double atBubble);
            _ = phase.PressureAt(liquid * (1 + StartDensities.Step), out double denser);
            return (vapor / rt, atBubble / rt, denser / rt);
        };
    }

    private StatePoint Part(MixturePhase phase, Phase name, double pressure, out double molarMass)
    {
        molarMass = 0;
        for (int i = 0; i < Composition.Length; i++)
        {
            molarMass += phase.X[i] * Equation.Components[i].Data.MolarMass;
        }

        return new StatePoint(
            name,
            phase.T,
            pressure,
            phase.Rho * molarMass,
            (phase.Energy + (pressure / phase.Rho)) / molarMass,
            phase.Entropy / molarMass,
            name == Phase.Liquid ? 0 : 1);
    }
}
