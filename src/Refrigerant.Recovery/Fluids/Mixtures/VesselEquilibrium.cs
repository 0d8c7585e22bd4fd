using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// The last equilibrium of a closed vessel of a blend, and the step from it to one near it: two phases where there were two or where a trial phase grows, else
/// one. A step that is not found leaves the last equilibrium. Mutable.
/// </summary>
internal sealed class VesselEquilibrium
{
    /// <summary>Share of the whole with which a new phase starts; from there it is tried with four times as much, this many times.</summary>
    private const double NewPhase = 1e-3;

    private const int NewPhaseAttempts = 8;

    /// <summary>
    /// A first drop in a vapor lowers the pressure a little; what would lower it to less than this share is a liquid of the equation's own making
    /// (R-114's has one at low pressure).
    /// </summary>
    private const double LeastPressureShare = 0.7;

    /// <summary>Where a single vapor's trial liquid is as good as there, its margin is this.</summary>
    private const double LeastMargin = 1e-12;

    /// <summary>Excess of a trial phase from which it forms, and beyond which a single phase cannot stand for both.</summary>
    private const double LeastExcess = 1e-11, LargestExcess = 1e-4;

    /// <summary>
    /// A phase with less than this share of the whole does not count: more than what an excess below <see cref="LeastExcess"/> makes even of an azeotrope, so that a phase is
    /// there or not whatever the last solution was.
    /// </summary>
    private const double LeastShare = 1e-8;

    private readonly MixtureEngine _engine;
    private readonly PhaseSplit _split;
    private readonly SinglePhase _single;
    private readonly TrialPhase _trial;
    private readonly BranchCheck _branches;
    private readonly double[] _amounts;
    private readonly double[] _last;
    private readonly double[] _trialAmounts;
    private readonly double[] _lastLiquid;
    private readonly double[] _lastVapor;

    public VesselEquilibrium(MixtureEngine engine)
    {
        _engine = engine;
        int n = engine.Equation.Count;
        _split = new PhaseSplit(engine.Equation);
        _single = new SinglePhase(engine.Equation);
        _trial = new TrialPhase(engine.Equation);
        _branches = new BranchCheck(engine);
        _amounts = new double[n];
        _last = new double[n];
        _trialAmounts = new double[n];
        _lastLiquid = (double[])engine.Composition.Clone();
        _lastVapor = (double[])engine.Composition.Clone();
    }

    /// <summary>The amounts that the next step goes to, mol: to be set before it.</summary>
    public double[] Amounts => _amounts;

    /// <summary>The amounts of the last equilibrium, mol.</summary>
    public ReadOnlySpan<double> LastAmounts => _last;

    /// <summary>The volume of the last equilibrium, m³.</summary>
    public double LastVolume { get; private set; }

    /// <summary>
    /// Whether a liquid counts as one phase even where it would itself split into two, as some do when cold: taken up where nothing else is found, and until the
    /// liquid is stable again.
    /// </summary>
    public bool OneLiquid { get; set; }

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

    /// <summary>From the last solution to the amounts in place.</summary>
    public bool TrySolve(SplitGoal goal, double volume, double given)
    {
        bool wasTwoPhase = Liquid.Amount > 0 && Vapor.Amount > 0;
        if (wasTwoPhase)
        {
            if (goal == SplitGoal.EnergyVolume && _split.TryForecast(_amounts, given, volume) && TryTwoPhase(goal, volume, given))
            {
                return true;
            }

            Warm(volume);
            if (TryTwoPhase(goal, volume, given))
            {
                return true;
            }

            _split.Forget();
        }

        return TrySingle(goal, volume, given, wasTwoPhase);
    }

    /// <summary>Takes over an equilibrium, of another vessel as well, as the last one.</summary>
    public void Restore(TrackedContent content)
    {
        content.Amounts.CopyTo(_amounts);
        content.LiquidFractions.CopyTo(_lastLiquid);
        content.VaporFractions.CopyTo(_lastVapor);
        Temperature = content.Temperature;
        Pressure = content.Pressure;
        Liquid = content.Liquid;
        Vapor = content.Vapor;
        _amounts.CopyTo(_last, 0);
        LastVolume = Liquid.Volume + Vapor.Volume;
        Energy = (Liquid.Mass * Liquid.Enthalpy) + (Vapor.Mass * Vapor.Enthalpy) - (Pressure * LastVolume);
        _split.Forget();
        _trial.Forget();
    }

    /// <summary>The equilibrium of the amounts in place at a temperature, from the state of a blend of the model's own composition.</summary>
    /// <param name="bulk">That state.</param>
    /// <param name="mole">One mole's split, where it is of two phases.</param>
    /// <param name="total">mol.</param>
    /// <param name="volume">m³.</param>
    public bool TryStart(in StatePoint bulk, PhaseSplit mole, double total, double volume)
    {
        Temperature = bulk.Temperature;
        Pressure = bulk.Pressure;
        if (bulk.Phase == Phase.TwoPhase && TryStartTwoPhase(mole, total, volume))
        {
            return true;
        }

        StartIncipient();
        return TrySingle(SplitGoal.TemperatureVolume, volume, Temperature, wasTwoPhase: false);
    }

    private bool TryTwoPhase(SplitGoal goal, double volume, double given)
    {
        if (_split.Solve(goal, _amounts, given, volume, OneLiquid) != SplitOutcome.TwoPhase || !AreReal() || !IsNear())
        {
            return false;
        }

        KeepTwoPhase(volume);
        return true;
    }

    /// <summary>Whether both phases of a solution count, and are phases.</summary>
    private bool AreReal() =>
        Math.Min(_split.LiquidAmount, _split.VaporAmount) > LeastShare * (_split.LiquidAmount + _split.VaporAmount)
        && _branches.IsLiquid(_split.Liquid)
        && _branches.IsVapor(_split.Vapor);

    /// <summary>Whether the solution follows from the last one: a small step does not take away much of the pressure.</summary>
    private bool IsNear()
    {
        const double near = 8, share = 0.2;
        double last = Liquid.Amount + Vapor.Amount;
        return Math.Abs(_split.Temperature - Temperature) > near
            || Math.Abs(_split.LiquidAmount + _split.VaporAmount - last) > share * last
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

    private void KeepTwoPhase(double volume)
    {
        _amounts.CopyTo(_last, 0);
        LastVolume = volume;
        Temperature = _split.Temperature;
        Pressure = _split.Pressure;
        _split.Liquid.X.CopyTo(_lastLiquid, 0);
        _split.Vapor.X.CopyTo(_lastVapor, 0);
        Liquid = Content(_split.Liquid, _split.LiquidAmount, _split.LiquidVolume);
        Vapor = Content(_split.Vapor, _split.VaporAmount, _split.VaporVolume);
        Energy = (_split.LiquidAmount * _split.Liquid.Energy) + (_split.VaporAmount * _split.Vapor.Energy);
        LiquidMargin = Liquid.Mass / (Liquid.Mass + Vapor.Mass);
        OneLiquid &= !_split.Liquid.IsLocallyStable();
    }

    private PhaseContent Content(MixturePhase phase, double amount, double volume)
    {
        double molarMass = 0;
        for (int i = 0; i < phase.X.Length; i++)
        {
            molarMass += phase.X[i] * _engine.Equation.Components[i].Data.MolarMass;
        }

        return new PhaseContent(
            amount,
            amount * molarMass,
            volume,
            (phase.Energy + (Pressure / phase.Rho)) / molarMass,
            phase.Entropy / molarMass);
    }

    private bool TrySingle(SplitGoal goal, double volume, double given, bool wasTwoPhase)
    {
        if (goal == SplitGoal.TemperatureVolume)
        {
            _single.SetTemperature(_amounts, volume, given);
        }
        else if (!_single.TrySetEnergy(_amounts, volume, given, Temperature))
        {
            return false;
        }

        MixturePhase phase = _single.Phase;
        bool isLiquid = phase.Rho > _engine.Critical.Density && phase.T < _engine.Critical.Temperature;
        if (wasTwoPhase)
        {
            PhaseContent other = isLiquid ? Vapor : Liquid;
            _trial.Begin(isLiquid ? _lastVapor : _lastLiquid, other.Amount / other.Volume, !isLiquid);
        }

        if (!_trial.TryFollow(phase, !isLiquid, _trialAmounts, out double excess))
        {
            (isLiquid ? _lastVapor : _lastLiquid).CopyTo(_trialAmounts, 0);
            excess = _trial.Find(phase, _trialAmounts, !isLiquid, _branches.ReducedLiquid(phase.T));
        }

        if (excess > LeastExcess && !(isLiquid ? _branches.IsVapor(_trial.Phase) : _branches.IsLiquid(_trial.Phase)))
        {
            _trial.Forget();
            excess = -1;
        }

        bool stable = phase.Pressure > 0 && (isLiquid && OneLiquid ? phase.Stiffness > 0 : phase.IsLocallyStable()) && (isLiquid ? _branches.IsLiquid(phase) : _branches.IsVapor(phase));
        if ((excess > LeastExcess || !stable) && TrySplitFromSingle(goal, volume, given, isLiquid))
        {
            return true;
        }

        // So little of a second phase that it is not found does not count.
        if (!stable || excess > LargestExcess)
        {
            return false;
        }

        KeepSingle(volume, isLiquid, excess);
        return true;
    }

    private void KeepSingle(double volume, bool isLiquid, double excess)
    {
        MixturePhase phase = _single.Phase;
        _amounts.CopyTo(_last, 0);
        LastVolume = volume;
        Temperature = phase.T;
        Pressure = phase.Pressure;
        Energy = phase.Rho * volume * phase.Energy;
        phase.X.CopyTo(isLiquid ? _lastLiquid : _lastVapor, 0);
        PhaseContent content = Content(phase, phase.Rho * volume, volume);
        Liquid = isLiquid ? content : default;
        Vapor = isLiquid ? default : content;
        LiquidMargin = isLiquid ? 1 : Math.Min(-LeastMargin, excess);
        OneLiquid &= isLiquid && !phase.IsLocallyStable();
    }

    /// <summary>Starts from the single phase with a little of the trial phase, of which there is more and more.</summary>
    private bool TrySplitFromSingle(SplitGoal goal, double volume, double given, bool isLiquid)
    {
        double sum = 0, total = 0;
        for (int i = 0; i < _amounts.Length; i++)
        {
            sum += _trialAmounts[i];
            total += _amounts[i];
        }

        double density = _trial.Phase.Rho > 0 ? _trial.Phase.Rho : _single.Phase.Rho * (isLiquid ? 0.01 : 3);
        double amount = NewPhase * total;
        for (int attempt = 0; attempt < NewPhaseAttempts && amount <= 0.5 * total; attempt++, amount *= 4)
        {
            for (int i = 0; i < _amounts.Length; i++)
            {
                double inNew = Math.Min(amount * _trialAmounts[i] / sum, 0.9 * _amounts[i]);
                _split.VaporAmounts[i] = isLiquid ? inNew : _amounts[i] - inNew;
            }

            double newVolume = isLiquid ? Math.Min(0.5 * volume, amount / density) : amount / density;
            _split.Temperature = _single.Phase.T;
            _split.LiquidVolume = isLiquid ? volume - newVolume : newVolume;
            _split.VaporVolume = volume - _split.LiquidVolume;
            if (_split.Solve(goal, _amounts, given, volume, OneLiquid) == SplitOutcome.TwoPhase && AreReal())
            {
                KeepTwoPhase(volume);
                return true;
            }
        }

        _split.Forget();
        return false;
    }

    private bool TryStartTwoPhase(PhaseSplit mole, double total, double volume)
    {
        for (int i = 0; i < _amounts.Length; i++)
        {
            _split.VaporAmounts[i] = mole.VaporAmounts[i] * total;
        }

        _split.Temperature = Temperature;
        _split.LiquidVolume = mole.LiquidVolume * total;
        _split.VaporVolume = mole.VaporVolume * total;
        if (_split.Solve(SplitGoal.TemperatureVolume, _amounts, Temperature, volume) != SplitOutcome.TwoPhase)
        {
            return false;
        }

        KeepTwoPhase(volume);
        return true;
    }

    /// <summary>Where one phase alone is there, the composition that a second one would have comes from the curves.</summary>
    private void StartIncipient()
    {
        double t = Math.Min(Temperature, _engine.Curves.MaximumTemperature);
        _engine.Curves.Bubble.Split(t, _lastVapor);
        _engine.Curves.Dew.Split(t, _lastLiquid);
        double vapor = 0, liquid = 0;
        for (int i = 0; i < _amounts.Length; i++)
        {
            _lastVapor[i] = _engine.Composition[i] * Math.Exp(_lastVapor[i]);
            _lastLiquid[i] = _engine.Composition[i] * Math.Exp(-_lastLiquid[i]);
            vapor += _lastVapor[i];
            liquid += _lastLiquid[i];
        }

        for (int i = 0; i < _amounts.Length; i++)
        {
            _lastVapor[i] /= vapor;
            _lastLiquid[i] /= liquid;
        }
    }
}
