using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// Liquid and vapor in equilibrium at given overall amounts: equal fugacities, equal pressures, and two of temperature, pressure, volume,
/// energy, enthalpy and entropy. Newton in the amounts in the vapor, the logarithms of both densities and that of the temperature, with all
/// derivatives analytic in the Helmholtz energy (isochoric formulation: Kunz and Wagner 2012, doi:10.1021/je300655b, section 7).
/// A scratchpad: mutable, for one thread. What it holds after a solution is the start of the next.
/// </summary>
internal sealed class PhaseSplit
{
    /// <summary>Relative change at which Newton has arrived: what follows it is taken to first order, and the error left is of the size of its square.</summary>
    private const double Arrived = 1e-6;

    /// <summary>Share of a component at which rounding of the rest of it shows.</summary>
    private const double Rounding = 1e-8;

    private const int MaximumIterations = 40;

    /// <summary>Share of all amounts below which a phase has vanished.</summary>
    private const double Vanished = 1e-11;

    /// <summary>Phases whose densities and compositions differ by less than this are one.</summary>
    private const double SamePhase = 1e-6;

    private readonly int _n;
    private readonly double[] _overall;
    private readonly double[] _liquid;
    private readonly double[] _vapor;
    private readonly SplitEquations _equations;
    private readonly double[] _rhs;
    private bool _hasFactors;
    private double _volume;
    private double _energy;

    public PhaseSplit(MixtureEquation equation)
    {
        _n = equation.Count;
        Liquid = new MixturePhase(equation);
        Vapor = new MixturePhase(equation);
        _overall = new double[_n];
        _liquid = new double[_n];
        _vapor = new double[_n];
        _equations = new SplitEquations(this);
        _rhs = _equations.Residuals;
    }

    /// <summary>The liquid at the solution, caloric properties included.</summary>
    public MixturePhase Liquid { get; }

    /// <summary>The vapor at the solution, caloric properties included.</summary>
    public MixturePhase Vapor { get; }

    /// <summary>Temperature, K.</summary>
    public double Temperature { get; set; }

    /// <summary>Volume of the liquid, m³.</summary>
    public double LiquidVolume { get; set; }

    /// <summary>Volume of the vapor, m³.</summary>
    public double VaporVolume { get; set; }

    /// <summary>Amount of all components in the liquid, mol.</summary>
    public double LiquidAmount { get; private set; }

    /// <summary>Amount of all components in the vapor, mol.</summary>
    public double VaporAmount { get; private set; }

    /// <summary>Pressure, Pa: that of the vapor, the better conditioned.</summary>
    public double Pressure => Vapor.Pressure;

    /// <summary>Steps that the last solution took.</summary>
    public int Iterations { get; private set; }

    /// <summary>Amounts in the vapor, mol; a start may be written here.</summary>
    public double[] VaporAmounts => _vapor;

    /// <summary>Amounts in the liquid, mol.</summary>
    public double[] LiquidAmounts => _liquid;

    /// <summary>Makes the whole larger or smaller by a volume: a forecast at constant pressure, vaporizing or condensing what fills it.</summary>
    public void Stretch(double volume)
    {
        if (volume == 0)
        {
            return;
        }

        double factor = Math.Max(0.1, 1 + (volume / VaporVolume));
        for (int i = 0; i < _n; i++)
        {
            _vapor[i] = factor < 1 ? factor * _vapor[i] : Math.Min(factor * _vapor[i], _overall[i] - (0.1 * (_overall[i] - _vapor[i])));
        }

        VaporVolume *= factor;
    }

    /// <summary>Keeps <see cref="TryForecast"/> from starting from the last solution.</summary>
    public void Forget() => _hasFactors = false;

    /// <summary>
    /// From the last solution, if it was at a given energy and volume, to where it leads to first order at others, as a start for <see cref="Solve"/>.
    /// </summary>
    /// <returns>Whether there is such a solution, and the step from it is short.</returns>
    public bool TryForecast(ReadOnlySpan<double> overall, double energy, double volume)
    {
        const double mostAmount = 0.3, mostLogarithm = 0.15;
        if (!_hasFactors)
        {
            return false;
        }

        Span<double> change = stackalloc double[_n];
        for (int i = 0; i < _n; i++)
        {
            change[i] = overall[i] - _overall[i];
        }

        if (!_equations.Forecast(change, volume - _volume, energy - _energy) || !(MostOf(_rhs.AsSpan(_n, 3)) < mostLogarithm))
        {
            return false;
        }

        for (int i = 0; i < _n; i++)
        {
            double liquid = change[i] + _rhs[i];
            if (!(Math.Abs(_rhs[i]) < mostAmount * _vapor[i] && Math.Abs(liquid) < mostAmount * _liquid[i]))
            {
                return false;
            }
        }

        overall.CopyTo(_overall);
        Temperature *= Math.Exp(-_rhs[_n + 2]);
        Advance(1);
        return true;
    }

    /// <summary>
    /// Solves from <see cref="VaporAmounts"/>, <see cref="LiquidVolume"/>, <see cref="VaporVolume"/> and <see cref="Temperature"/>.
    /// </summary>
    /// <param name="goal">What is given.</param>
    /// <param name="overall">Overall amounts, mol, each greater than 0.</param>
    /// <param name="first">Temperature (K), energy, enthalpy (J) or entropy (J/K) of the whole.</param>
    /// <param name="second">Pressure (Pa) or volume (m³).</param>
    /// <param name="oneLiquid">Whether the liquid counts as one phase even where it would itself split into two.</param>
    public SplitOutcome Solve(SplitGoal goal, ReadOnlySpan<double> overall, double first, double second, bool oneLiquid = false)
    {
        overall.CopyTo(_overall);
        bool isothermal = goal is SplitGoal.TemperaturePressure or SplitGoal.TemperatureVolume;
        if (isothermal)
        {
            Temperature = first;
        }

        _hasFactors = false;
        double total = 0;
        for (int i = 0; i < _n; i++)
        {
            total += overall[i];
            _vapor[i] = Math.Min(_vapor[i], _overall[i] * (1 - 1e-14));
        }

        int size = _n + (isothermal ? 2 : 3);
        for (Iterations = 1; Iterations <= MaximumIterations; Iterations++)
        {
            if (!Evaluate(!isothermal))
            {
                return LiquidAmount < VaporAmount ? SplitOutcome.NoLiquid : SplitOutcome.NoVapor;
            }

            _equations.Fill(goal, size, first, second);
            if (!_equations.Solve(size))
            {
                return SplitOutcome.NotConverged;
            }

            double change = Step(isothermal);
            if (LiquidAmount < Vanished * total)
            {
                return SplitOutcome.NoLiquid;
            }

            if (VaporAmount < Vanished * total)
            {
                return SplitOutcome.NoVapor;
            }

            if (change < Arrived)
            {
                SplitOutcome outcome = Finish(isothermal, oneLiquid);
                _hasFactors = goal == SplitGoal.EnergyVolume && outcome == SplitOutcome.TwoPhase;
                _energy = first;
                _volume = second;
                return outcome;
            }
        }

        return SplitOutcome.NotConverged;
    }

    private static double MostOf(ReadOnlySpan<double> values)
    {
        double most = 0;
        foreach (double value in values)
        {
            most = Math.Max(most, Math.Abs(value));
        }

        return most;
    }

    /// <summary>Looks at the solution, which is a last small step away from where the phases were evaluated, and takes them there.</summary>
    private SplitOutcome Finish(bool isothermal, bool oneLiquid)
    {
        double difference = Math.Abs(Math.Log(Liquid.Rho / Vapor.Rho));
        for (int i = 0; i < _n; i++)
        {
            difference = Math.Max(difference, Math.Abs(Liquid.X[i] - Vapor.X[i]));
            _liquid[i] = _overall[i] - _vapor[i];
            if (!(_liquid[i] > 0) || !(_vapor[i] > 0))
            {
                return SplitOutcome.NotConverged;
            }
        }

        // A solution with an unstable phase is one of the equations, not of the physics.
        if (difference < SamePhase)
        {
            return SplitOutcome.Same;
        }

        if (!(Liquid.Rho > Vapor.Rho && (oneLiquid ? Liquid.Stiffness > 0 : Liquid.IsLocallyStable()) && Vapor.IsLocallyStable()))
        {
            return SplitOutcome.NotConverged;
        }

        if (isothermal)
        {
            Liquid.SetIdealGas();
            Vapor.SetIdealGas(Liquid);
        }

        Liquid.Move(_liquid, LiquidVolume, Temperature);
        Vapor.Move(_vapor, VaporVolume, Temperature);
        return SplitOutcome.TwoPhase;
    }

    private bool Evaluate(bool caloric)
    {
        for (int i = 0; i < _n; i++)
        {
            _liquid[i] = _overall[i] - _vapor[i];
            if (!(_liquid[i] > 0) || !(_vapor[i] > 0))
            {
                return false;
            }
        }

        LiquidAmount = Liquid.SetAmounts(_liquid);
        VaporAmount = Vapor.SetAmounts(_vapor);
        Liquid.SetTemperature(Temperature);
        Vapor.SetTemperature(Temperature);
        Liquid.SetDensity(LiquidAmount / LiquidVolume);
        Vapor.SetDensity(VaporAmount / VaporVolume);
        if (caloric)
        {
            Liquid.SetIdealGas();
            Vapor.SetIdealGas(Liquid);
        }

        return true;
    }

    /// <summary>Takes the step, shortened where a phase would lose more than most of what it has; returns the largest relative change.</summary>
    private double Step(bool isothermal)
    {
        const double keep = 0.85, largestDensity = 0.4, largestTemperature = 0.03;
        double factor = 1;
        double change = 0;
        for (int i = 0; i < _n; i++)
        {
            // A component may be a trace in one of the phases: it has arrived when it has there, or to rounding.
            change = Math.Max(change, Math.Abs(_rhs[i]) / (Math.Min(_vapor[i], _liquid[i]) + (Rounding * _overall[i])));
            double share = Math.Abs(_rhs[i]) / (_rhs[i] > 0 ? _vapor[i] : _liquid[i]);
            if (share > keep)
            {
                factor = Math.Min(factor, keep / share);
            }
        }

        double density = Math.Max(Math.Abs(_rhs[_n]), Math.Abs(_rhs[_n + 1]));
        change = Math.Max(change, density);
        factor = Math.Min(factor, largestDensity / Math.Max(largestDensity, density));
        if (!isothermal)
        {
            double temperature = Math.Abs(_rhs[_n + 2]);
            change = Math.Max(change, temperature);
            factor = Math.Min(factor, largestTemperature / Math.Max(largestTemperature, temperature));
            Temperature *= Math.Exp(-factor * _rhs[_n + 2]);
        }

        Advance(factor);
        return change;
    }

    /// <summary>Amounts and volumes after a share of the step; the temperature is the caller's.</summary>
    private void Advance(double factor)
    {
        double liquid = LiquidAmount / LiquidVolume * Math.Exp(-factor * _rhs[_n]);
        double vapor = VaporAmount / VaporVolume * Math.Exp(-factor * _rhs[_n + 1]);
        LiquidAmount = 0;
        VaporAmount = 0;
        for (int i = 0; i < _n; i++)
        {
            _vapor[i] -= factor * _rhs[i];
            LiquidAmount += _overall[i] - _vapor[i];
            VaporAmount += _vapor[i];
        }

        LiquidVolume = LiquidAmount / liquid;
        VaporVolume = VaporAmount / vapor;
    }
}
