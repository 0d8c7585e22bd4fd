using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// A closed vessel of a blend whose composition changes: given the amounts of all components, the volume and the internal energy (or the
/// temperature), the equilibrium of liquid and vapor with the composition of each. Every solution starts from the last, so steps of a
/// simulation cost a few Newton iterations and no allocation. Mutable: one simulation, one vessel.
/// </summary>
internal sealed class TrackedVessel
{
    /// <summary>Amounts below this share of the whole are raised to it, so that logarithms exist; far below the tolerance of any balance.</summary>
    private const double Trace = 1e-14;

    /// <summary>Relative temperature step at which a single phase's temperature has arrived.</summary>
    private const double Arrived = 1e-12;

    private const int MaximumIterations = 50;

    /// <summary>Share of the whole with which a new phase starts.</summary>
    private const double NewPhase = 1e-3;

    /// <summary>
    /// A first drop in a vapor lowers the pressure a little; what would lower it to less than this share is a liquid of the equation's own making
    /// (R-114's has one at low pressure).
    /// </summary>
    private const double LeastPressureShare = 0.7;

    /// <summary>Newton without a near start may need several: amounts are approached in this many parts.</summary>
    private const int ColdParts = 8;

    /// <summary>Where a single vapor's trial liquid is as good as there, its margin is this.</summary>
    private const double LeastMargin = 1e-12;

    /// <summary>Excess of a trial phase beyond which a single phase cannot stand for both.</summary>
    private const double LargestExcess = 1e-4;

    private readonly MixtureModel _model;
    private readonly MixtureEngine _engine;
    private readonly PhaseSplit _split;
    private readonly MixturePhase _single;
    private readonly MixturePhase _trial;
    private readonly double[] _amounts;
    private readonly double[] _last;
    private readonly double[] _trialAmounts;
    private readonly double[] _lastLiquid;
    private readonly double[] _lastVapor;
    private readonly double _bulkReducingDensity;
    private TrackedContent? _anchor;
    private bool _isStarted;

    /// <param name="model">The blend whose components, in their order, the amounts are of.</param>
    /// <param name="start">What the vessel held last, where that is known: the start of the first solution.</param>
    public TrackedVessel(MixtureModel model, TrackedContent? start = null)
    {
        _model = model;
        _engine = model.Engine;
        int n = _engine.Equation.Count;
        _split = new PhaseSplit(_engine.Equation);
        _single = new MixturePhase(_engine.Equation);
        _trial = new MixturePhase(_engine.Equation);
        _single.SetComposition(_engine.Composition);
        _bulkReducingDensity = _single.ReducingDensity;
        _amounts = new double[n];
        _last = new double[n];
        _trialAmounts = new double[n];
        _lastLiquid = (double[])_engine.Composition.Clone();
        _lastVapor = (double[])_engine.Composition.Clone();
        if (start is not null)
        {
            Resume(start);
        }
    }

    /// <summary>Number of components.</summary>
    public int Count => _amounts.Length;

    /// <summary>Temperature, K.</summary>
    public double Temperature { get; private set; }

    /// <summary>Pressure, Pa.</summary>
    public double Pressure { get; private set; }

    /// <summary>Internal energy, J.</summary>
    public double Energy { get; private set; }

    /// <summary>The liquid; empty where there is none.</summary>
    public PhaseContent Liquid { get; private set; }

    /// <summary>The vapor, or supercritical fluid; empty where there is none.</summary>
    public PhaseContent Vapor { get; private set; }

    /// <summary>
    /// Mass share of the liquid where there is some; without it what a first drop lacks, below zero: the sum of the amounts of Michelsen's
    /// trial liquid less 1. It falls through zero with the last drop.
    /// </summary>
    public double LiquidMargin { get; private set; }

    /// <summary>Mole fractions of the liquid; those of the last liquid where there is none.</summary>
    public ReadOnlySpan<double> LiquidFractions => _lastLiquid;

    /// <summary>Mole fractions of the vapor; those of the last vapor where there is none.</summary>
    public ReadOnlySpan<double> VaporFractions => _lastVapor;

    /// <summary>Molar mass of a component, kg/mol.</summary>
    public double MolarMass(int component) => _engine.Equation.Components[component].Data.MolarMass;

    /// <summary>Finds the equilibrium at a temperature.</summary>
    /// <param name="amounts">Amount of each component, mol, 0 or more.</param>
    /// <param name="volume">m³.</param>
    /// <param name="temperature">K.</param>
    /// <exception cref="ConvergenceException">No equilibrium was found.</exception>
    public void SolveAtTemperature(ReadOnlySpan<double> amounts, double volume, double temperature) =>
        Solve(SplitGoal.TemperatureVolume, amounts, volume, temperature);

    /// <summary>Finds the equilibrium at an internal energy.</summary>
    /// <param name="amounts">Amount of each component, mol, 0 or more.</param>
    /// <param name="volume">m³.</param>
    /// <param name="energy">J, on the reference states of the components.</param>
    /// <exception cref="ConvergenceException">No equilibrium was found.</exception>
    public void SolveAtEnergy(ReadOnlySpan<double> amounts, double volume, double energy) =>
        Solve(SplitGoal.EnergyVolume, amounts, volume, energy);

    /// <summary>What the vessel holds at the last solution; where a later one fails it is tried again from here.</summary>
    public TrackedContent Snapshot() => _anchor = new(_model, _amounts, _lastLiquid, _lastVapor, Temperature, Pressure, Liquid, Vapor);

    /// <summary>Takes over what another vessel held, so that the next solution starts from it.</summary>
    private void Resume(TrackedContent content)
    {
        content.Amounts.CopyTo(_amounts);
        content.Amounts.CopyTo(_last);
        content.LiquidFractions.CopyTo(_lastLiquid);
        content.VaporFractions.CopyTo(_lastVapor);
        Temperature = content.Temperature;
        Pressure = content.Pressure;
        Liquid = content.Liquid;
        Vapor = content.Vapor;
        _isStarted = true;
        if (Liquid.Amount > 0 && Vapor.Amount > 0)
        {
            for (int i = 0; i < Count; i++)
            {
                _split.VaporAmounts[i] = Vapor.Amount * _lastVapor[i];
            }

            _split.LiquidVolume = Liquid.Volume;
            _split.VaporVolume = Vapor.Volume;
            if (_split.Solve(SplitGoal.TemperatureVolume, _amounts, Temperature, Liquid.Volume + Vapor.Volume) != SplitOutcome.TwoPhase)
            {
                _isStarted = false;
            }
        }
    }

    private void Solve(SplitGoal goal, ReadOnlySpan<double> amounts, double volume, double given)
    {
        double total = Take(amounts);
        if (!_isStarted)
        {
            Start(goal, volume, given, total);
        }

        try
        {
            SolveFromLast(goal, volume, given, total);
        }
        catch (ConvergenceException) when (_anchor is not null)
        {
            // The last solution may be that of a trial step gone astray.
            Resume(_anchor);
            _ = Take(amounts);
            SolveFromLast(goal, volume, given, total);
        }
    }

    private double Take(ReadOnlySpan<double> amounts)
    {
        double total = 0;
        for (int i = 0; i < amounts.Length; i++)
        {
            total += amounts[i];
        }

        for (int i = 0; i < amounts.Length; i++)
        {
            _amounts[i] = Math.Max(amounts[i], Trace * total);
        }

        return total;
    }

    private void SolveFromLast(SplitGoal goal, double volume, double given, double total)
    {
        if (Liquid.Amount > 0 && Vapor.Amount > 0)
        {
            Warm(volume);
            if (_split.Solve(goal, _amounts, given, volume) == SplitOutcome.TwoPhase && _split.IsOnOuterBranches(ReducedLiquid(_split.Temperature)) && IsNear(total))
            {
                KeepTwoPhase();
                return;
            }
        }

        SolveSingle(goal, volume, given, total);
    }

    /// <summary>Whether the solution follows from the last one: a small step does not take away much of the pressure.</summary>
    private bool IsNear(double total)
    {
        const double near = 8, share = 0.2;
        double last = Liquid.Amount + Vapor.Amount;
        return Math.Abs(_split.Temperature - Temperature) > near
            || Math.Abs(total - last) > share * last
            || _split.Pressure > LeastPressureShare * Pressure;
    }

    /// <summary>
    /// Moves the last solution to the present amounts and volume: each component keeps its split, each phase its density. An attempt that failed since
    /// leaves no trace.
    /// </summary>
    private void Warm(double volume)
    {
        double liquid = 0, vapor = 0;
        for (int i = 0; i < _amounts.Length; i++)
        {
            double share = Vapor.Amount * _lastVapor[i] / _last[i];
            _split.VaporAmounts[i] = share * _amounts[i];
            vapor += share * _amounts[i];
            liquid += (1 - share) * _amounts[i];
        }

        _split.Temperature = Temperature;
        _split.LiquidVolume = liquid * Liquid.Volume / Liquid.Amount;
        _split.VaporVolume = vapor * Vapor.Volume / Vapor.Amount;

        // What the vapor space lost or gained in volume, it lost or gained in vapor.
        double missing = volume - _split.LiquidVolume - _split.VaporVolume;
        if (Math.Abs(missing) < 0.5 * _split.VaporVolume)
        {
            _split.Stretch(missing);
        }
    }

    private void KeepTwoPhase()
    {
        _amounts.CopyTo(_last, 0);
        Temperature = _split.Temperature;
        Pressure = _split.Pressure;
        _split.Liquid.X.CopyTo(_lastLiquid, 0);
        _split.Vapor.X.CopyTo(_lastVapor, 0);
        Liquid = Content(_split.Liquid, _split.LiquidAmount, _split.LiquidVolume);
        Vapor = Content(_split.Vapor, _split.VaporAmount, _split.VaporVolume);
        Energy = (_split.LiquidAmount * _split.Liquid.Energy) + (_split.VaporAmount * _split.Vapor.Energy);
        LiquidMargin = Liquid.Mass / (Liquid.Mass + Vapor.Mass);
    }

    private PhaseContent Content(MixturePhase phase, double amount, double volume)
    {
        double molarMass = 0;
        for (int i = 0; i < phase.X.Length; i++)
        {
            molarMass += phase.X[i] * MolarMass(i);
        }

        return new PhaseContent(
            amount,
            amount * molarMass,
            volume,
            (phase.Energy + (Pressure / phase.Rho)) / molarMass,
            phase.Entropy / molarMass);
    }

    private void SolveSingle(SplitGoal goal, double volume, double given, double total)
    {
        double temperature = goal == SplitGoal.TemperatureVolume ? given : SingleTemperature(volume, given, total);
        EvaluateSingle(temperature, volume, total);
        _single.SetIdealGas();
        bool isLiquid = _single.Rho > _engine.Critical.Density && temperature < _engine.Critical.Temperature;
        (isLiquid ? _lastVapor : _lastLiquid).CopyTo(_trialAmounts, 0);
        bool stable = _single.Pressure > 0 && _single.IsLocallyStable();
        bool splits = PhaseStability.Forms(_single, _trial, _trialAmounts, !isLiquid, ReducedLiquid(temperature), out double excess) || !stable;
        if (splits && TrySplitFromSingle(goal, volume, given, total, temperature, isLiquid))
        {
            return;
        }

        // So little of a second phase that it is not found does not count.
        if (!stable || (splits && excess > LargestExcess))
        {
            throw new ConvergenceException(
                $"{_model.Designation}: no equilibrium found for {Require.Text(total)} mol in {Require.Text(volume)} m³ near {Require.Text(temperature)} K.",
                MaximumIterations);
        }

        _amounts.CopyTo(_last, 0);
        Temperature = temperature;
        Pressure = _single.Pressure;
        Energy = total * _single.Energy;
        _single.X.CopyTo(isLiquid ? _lastLiquid : _lastVapor, 0);
        PhaseContent content = Content(_single, total, volume);
        Liquid = isLiquid ? content : default;
        Vapor = isLiquid ? default : content;
        LiquidMargin = isLiquid ? 1 : Math.Min(-LeastMargin, excess);
    }

    /// <summary>A little more than the reduced density of the bulk's saturated liquid.</summary>
    private double ReducedLiquid(double temperature)
    {
        const double margin = 1.08;
        double t = Math.Max(_engine.Curves.MinimumTemperature, Math.Min(_engine.Curves.MaximumTemperature, temperature));
        return margin * _engine.Curves.Bubble.At(t).Density / (_engine.MolarMass * _bulkReducingDensity);
    }

    private bool TrySplitFromSingle(SplitGoal goal, double volume, double given, double total, double temperature, bool isLiquid)
    {
        double sum = 0;
        foreach (double a in _trialAmounts)
        {
            sum += a;
        }

        double small = NewPhase * total;
        double trialRho = _trial.Rho > 0 ? _trial.Rho : _single.Rho * (isLiquid ? 0.01 : 3);
        double smallVolume = small / trialRho;
        for (int attempt = 0; attempt < ColdParts; attempt++)
        {
            double scale = Math.Pow(4, attempt) * small;
            if (scale > 0.5 * total)
            {
                break;
            }

            for (int i = 0; i < _amounts.Length; i++)
            {
                double inNew = Math.Min(scale * _trialAmounts[i] / sum, 0.9 * _amounts[i]);
                _split.VaporAmounts[i] = isLiquid ? inNew : _amounts[i] - inNew;
            }

            _split.Temperature = temperature;
            _split.LiquidVolume = isLiquid ? volume - Math.Min(0.5 * volume, scale / small * smallVolume) : scale / small * smallVolume;
            _split.VaporVolume = volume - _split.LiquidVolume;
            if (_split.Solve(goal, _amounts, given, volume) == SplitOutcome.TwoPhase && _split.IsOnOuterBranches(ReducedLiquid(_split.Temperature)))
            {
                KeepTwoPhase();
                return true;
            }
        }

        return false;
    }

    private double SingleTemperature(double volume, double energy, double total)
    {
        double t = Temperature;
        for (int k = 0; k < MaximumIterations; k++)
        {
            EvaluateSingle(t, volume, total);
            _single.SetIdealGas();
            double step = ((energy / total) - _single.Energy) / _single.HeatCapacity;
            t += Math.Max(-0.1 * t, Math.Min(0.1 * t, step));
            if (Math.Abs(step) < Arrived * t)
            {
                return t;
            }
        }

        throw new ConvergenceException(
            $"{_model.Designation}: no temperature found for {Require.Text(energy)} J in {Require.Text(volume)} m³.", MaximumIterations);
    }

    private void EvaluateSingle(double temperature, double volume, double total)
    {
        _single.SetAmounts(_amounts);
        _single.SetTemperature(temperature);
        _single.SetDensity(total / volume);
    }

    /// <summary>The first solution is that of the model's own composition, from its curves.</summary>
    private void Start(SplitGoal goal, double volume, double given, double total)
    {
        double mass = total * _engine.MolarMass;
        MixtureScratch scratch = _engine.Rent();
        VesselPoint vessel;
        if (goal == SplitGoal.TemperatureVolume)
        {
            vessel = BlendStates.AtDensity(_engine, scratch, given, mass / volume);
        }
        else if (!BlendVessel.TryFind(_engine, scratch, _model.Range, mass / volume, given / mass, out vessel))
        {
            throw new ConvergenceException(
                $"{_model.Designation}: no temperature found for {Require.Text(given)} J in {Require.Text(volume)} m³.", MaximumIterations);
        }

        Temperature = vessel.Bulk.Temperature;
        Pressure = vessel.Bulk.Pressure;
        if (vessel.Bulk.Phase == Phase.TwoPhase)
        {
            PhaseSplit split = scratch.Split;
            _split.Temperature = Temperature;
            for (int i = 0; i < _amounts.Length; i++)
            {
                _split.VaporAmounts[i] = split.VaporAmounts[i] * total;
                _last[i] = _engine.Composition[i] * total;
            }

            _split.LiquidVolume = split.LiquidVolume * total;
            _split.VaporVolume = split.VaporVolume * total;
            SplitOutcome outcome = _split.Solve(SplitGoal.TemperatureVolume, _last, Temperature, volume);
            if (outcome == SplitOutcome.TwoPhase)
            {
                _engine.Return(scratch);
                double[] wanted = (double[])_amounts.Clone();
                _last.CopyTo(_amounts, 0);
                KeepTwoPhase();
                wanted.CopyTo(_amounts, 0);
                _isStarted = true;
                return;
            }
        }
        else
        {
            StartIncipient();
        }

        _engine.Return(scratch);
        _isStarted = true;
    }

    /// <summary>Where one phase alone is there, the composition that a second one would have comes from the curves.</summary>
    private void StartIncipient()
    {
        double t = Math.Min(Temperature, _engine.Curves.MaximumTemperature);
        _engine.Curves.Bubble.Split(t, _lastVapor);
        _engine.Curves.Dew.Split(t, _lastLiquid);
        double vapor = 0, liquid = 0;
        for (int i = 0; i < Count; i++)
        {
            _lastVapor[i] = _engine.Composition[i] * Math.Exp(_lastVapor[i]);
            _lastLiquid[i] = _engine.Composition[i] * Math.Exp(-_lastLiquid[i]);
            vapor += _lastVapor[i];
            liquid += _lastLiquid[i];
        }

        for (int i = 0; i < Count; i++)
        {
            _lastVapor[i] /= vapor;
            _lastLiquid[i] /= liquid;
        }
    }
}
