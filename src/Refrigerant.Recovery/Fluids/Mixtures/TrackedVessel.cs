using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// A closed vessel of a blend: given the amounts of all components, the volume and the internal energy (or the temperature), the equilibrium of liquid and
/// vapor with the composition of each. Every solution starts from where the last one and its derivatives lead, so a small step of a simulation costs one
/// evaluation of each phase, or two, and no allocation. Mutable: one simulation, one vessel.
/// </summary>
/// <remarks>
/// Where Newton's method does not get from the last solution to the state asked, the way is gone in parts. Where that fails too it is tried from the last
/// <see cref="Snapshot"/> and from the curves of the blend, and then a <see cref="ConvergenceException"/> says so; the last solution stays.
/// </remarks>
internal sealed class TrackedVessel
{
    /// <summary>Amounts below this share of the whole are raised to it, so that logarithms exist; far below the tolerance of any balance.</summary>
    private const double Trace = 1e-14;

    /// <summary>A way gone in parts: how many at most, the first and the least of them.</summary>
    private const int MostParts = 60;

    private const double FirstPart = 0.25, LeastPart = 1e-4;

    private readonly MixtureModel _model;
    private readonly MixtureEngine _engine;
    private readonly VesselEquilibrium _state;
    private readonly double[] _origin;
    private readonly double[] _target;
    private TrackedContent? _anchor;
    private bool _isStarted;

    /// <param name="model">The blend whose components, in their order, the amounts are of.</param>
    /// <param name="start">What the vessel held last, where that is known: the start of the first solution.</param>
    public TrackedVessel(MixtureModel model, TrackedContent? start = null)
    {
        _model = model;
        _engine = model.Engine;
        _state = new VesselEquilibrium(_engine);
        _origin = new double[_engine.Equation.Count];
        _target = new double[_engine.Equation.Count];
        if (start is not null)
        {
            _isStarted = TryResume(start);
        }
    }

    /// <summary>Number of components.</summary>
    public int Count => _target.Length;

    /// <inheritdoc cref="VesselEquilibrium.Temperature"/>
    public double Temperature => _state.Temperature;

    /// <inheritdoc cref="VesselEquilibrium.Pressure"/>
    public double Pressure => _state.Pressure;

    /// <inheritdoc cref="VesselEquilibrium.Energy"/>
    public double Energy => _state.Energy;

    /// <inheritdoc cref="VesselEquilibrium.Liquid"/>
    public PhaseContent Liquid => _state.Liquid;

    /// <inheritdoc cref="VesselEquilibrium.Vapor"/>
    public PhaseContent Vapor => _state.Vapor;

    /// <inheritdoc cref="VesselEquilibrium.LiquidMargin"/>
    public double LiquidMargin => _state.LiquidMargin;

    /// <inheritdoc cref="VesselEquilibrium.LiquidFractions"/>
    public ReadOnlySpan<double> LiquidFractions => _state.LiquidFractions;

    /// <inheritdoc cref="VesselEquilibrium.VaporFractions"/>
    public ReadOnlySpan<double> VaporFractions => _state.VaporFractions;

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

    /// <summary>Finds the equilibrium of the blend's own composition at an internal energy.</summary>
    /// <param name="amount">Amount of all components, mol, greater than 0.</param>
    /// <param name="volume">m³.</param>
    /// <param name="energy">J, on the reference states of the components.</param>
    /// <exception cref="ConvergenceException">No equilibrium was found.</exception>
    public void SolveAtEnergy(double amount, double volume, double energy)
    {
        for (int i = 0; i < Count; i++)
        {
            _target[i] = amount * _engine.Composition[i];
        }

        Solve(SplitGoal.EnergyVolume, _target, volume, energy);
    }

    /// <summary>What the vessel holds at the last solution; where a later one fails it is tried again from here.</summary>
    public TrackedContent Snapshot() =>
        _anchor = new(_model, _state.LastAmounts, _state.LiquidFractions, _state.VaporFractions, Temperature, Pressure, Liquid, Vapor);

    private void Solve(SplitGoal goal, ReadOnlySpan<double> amounts, double volume, double given)
    {
        double total = 0;
        foreach (double amount in amounts)
        {
            total += amount;
        }

        for (int i = 0; i < Count; i++)
        {
            _state.Amounts[i] = _target[i] = Math.Max(amounts[i], Trace * total);
        }

        bool isSolved = _isStarted && TryReach(goal, volume, given);
        if (!isSolved && _anchor is not null && TryResume(_anchor))
        {
            // The last solution may be that of a trial step gone astray.
            _target.CopyTo(_state.Amounts, 0);
            isSolved = TryReach(goal, volume, given);
        }

        if (!isSolved && !(TryStart(goal, volume, given, total) && TryReach(goal, volume, given)))
        {
            string what = goal == SplitGoal.TemperatureVolume ? "K" : "J";
            throw new ConvergenceException(
                $"{_model.Designation}: no equilibrium found for {Require.Text(total)} mol in {Require.Text(volume)} m³ at {Require.Text(given)} {what}.", MostParts);
        }
    }

    private bool TryReach(SplitGoal goal, double volume, double given)
    {
        if (_state.TrySolve(goal, volume, given) || TryApproach(goal, volume, given))
        {
            return true;
        }

        bool isTried = _state.OneLiquid;
        _state.OneLiquid = true;
        bool isSolved = !isTried && (_state.TrySolve(goal, volume, given) || TryApproach(goal, volume, given));
        _state.OneLiquid &= isSolved;
        return isSolved;
    }

    /// <summary>From the last solution to the state asked in parts.</summary>
    private bool TryApproach(SplitGoal goal, double volume, double given)
    {
        _state.LastAmounts.CopyTo(_origin);
        double fromVolume = _state.LastVolume;
        double from = goal == SplitGoal.TemperatureVolume ? Temperature : Energy;
        double done = 0, part = FirstPart;
        for (int k = 0; k < MostParts && part >= LeastPart; k++)
        {
            double next = Math.Min(1, done + part);
            for (int i = 0; i < Count; i++)
            {
                _state.Amounts[i] = _origin[i] + (next * (_target[i] - _origin[i]));
            }

            if (!_state.TrySolve(goal, fromVolume + (next * (volume - fromVolume)), from + (next * (given - from))))
            {
                part /= 4;
                continue;
            }

            if (next == 1)
            {
                return true;
            }

            done = next;
            part *= 2;
        }

        _target.CopyTo(_state.Amounts, 0);
        return false;
    }

    /// <summary>Takes over what another vessel held, so that the next solution starts from it.</summary>
    private bool TryResume(TrackedContent content)
    {
        _state.Restore(content);
        return _state.TrySolve(SplitGoal.TemperatureVolume, _state.LastVolume, Temperature);
    }

    /// <summary>A solution of the model's own composition, from its curves, with the total amount, volume and temperature or energy asked.</summary>
    private bool TryStart(SplitGoal goal, double volume, double given, double total)
    {
        double mass = total * _engine.MolarMass;
        MixtureScratch scratch = _engine.Rent();
        try
        {
            VesselPoint vessel;
            if (goal == SplitGoal.TemperatureVolume)
            {
                vessel = BlendStates.AtDensity(_engine, scratch, given, mass / volume);
            }
            else if (!BlendVessel.TryFind(_engine, scratch, _model.Range, mass / volume, given / mass, out vessel))
            {
                return false;
            }

            for (int i = 0; i < Count; i++)
            {
                _state.Amounts[i] = _engine.Composition[i] * total;
            }

            _isStarted = _state.TryStart(vessel.Bulk, scratch.Split, total, volume);
        }
        catch (ConvergenceException)
        {
            return false;
        }
        finally
        {
            _engine.Return(scratch);
        }

        _target.CopyTo(_state.Amounts, 0);
        return _isStarted;
    }
}
