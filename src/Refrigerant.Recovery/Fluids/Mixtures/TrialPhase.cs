using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// The second phase that would form first out of a single one, followed as that changes: at its temperature and pressure, with fugacities that differ from its
/// own by one factor (the stationary point of Michelsen's tangent-plane distance; 1982, Fluid Phase Equilib. 9, 1, doi:10.1016/0378-3812(82)85001-2).
/// <see cref="PhaseStability"/> finds it; Newton in the logarithms of the component densities and of the factor keeps it.
/// </summary>
internal sealed class TrialPhase
{
    private const int MaximumIterations = 8;

    /// <summary>Change of a logarithm at which Newton has arrived: its next error is the square of it.</summary>
    private const double Arrived = 1e-6;

    /// <summary>Largest change of a logarithm from one single phase to the next.</summary>
    private const double LargestChange = 0.5;

    /// <summary>Phases whose densities differ by less than this, in logarithms, are one.</summary>
    private const double SamePhase = 0.01;

    /// <summary>So little relative change of temperature and density does not bring about a phase where there was none.</summary>
    private const double Unchanged = 2e-3;

    /// <summary>As far as this from forming, the forecast will do as long as it leads no farther than <see cref="ForecastReach"/>.</summary>
    private const double FarFromForming = -0.3;

    private const double ForecastReach = 0.1;

    private readonly MixturePhase _phase;
    private readonly int _n;
    private readonly double[] _log;
    private readonly double[] _jacobian;
    private readonly double[] _rhs;
    private readonly int[] _pivots;
    private readonly double[] _scales;
    private readonly double[] _densities;
    private double _factor;
    private bool _isLiquid;
    private bool _hasFactors;
    private double _nothingAtTemperature;
    private double _nothingAtDensity;

    public TrialPhase(MixtureEquation equation)
    {
        _n = equation.Count;
        _phase = new MixturePhase(equation);
        _log = new double[_n];
        _rhs = new double[_n + 1];
        _jacobian = new double[_rhs.Length * _rhs.Length];
        _pivots = new int[_rhs.Length];
        _scales = new double[_rhs.Length];
        _densities = new double[_n];
    }

    /// <summary>The phase itself.</summary>
    public MixturePhase Phase => _phase;

    /// <summary>Whether there is one to follow.</summary>
    public bool IsFollowed { get; private set; }

    /// <summary>Gives up the phase.</summary>
    public void Forget()
    {
        IsFollowed = false;
        _hasFactors = false;
    }

    /// <summary>Begins with a phase that was in equilibrium a moment ago.</summary>
    public void Begin(ReadOnlySpan<double> fractions, double density, bool isLiquid)
    {
        for (int i = 0; i < _n; i++)
        {
            _log[i] = Math.Log(fractions[i] * density);
        }

        _factor = 0;
        _isLiquid = isLiquid;
        IsFollowed = true;
        _hasFactors = false;
    }

    /// <summary>Finds the phase, from a composition.</summary>
    /// <param name="bulk">The phase tested, evaluated.</param>
    /// <param name="amounts">The start; the trial's amounts at the end.</param>
    /// <param name="isLiquid">Whether the trial is a liquid.</param>
    /// <param name="reducedStart">Where a liquid's density is sought from, in reducing densities.</param>
    /// <returns>The sum of the trial's amounts less 1: above 0 where it would form; −1 where there is no phase but the bulk.</returns>
    public double Find(MixturePhase bulk, Span<double> amounts, bool isLiquid, double reducedStart)
    {
        Forget();
        if (Math.Abs(bulk.T - _nothingAtTemperature) < Unchanged * bulk.T && Math.Abs(bulk.Rho - _nothingAtDensity) < Unchanged * bulk.Rho)
        {
            return -1;
        }

        _nothingAtTemperature = 0;
        _ = PhaseStability.Forms(bulk, _phase, amounts, isLiquid, reducedStart, out double excess);
        if (excess > -1 && _phase.Rho > 0)
        {
            for (int i = 0; i < _n; i++)
            {
                _log[i] = Math.Log(_phase.X[i] * _phase.Rho);
            }

            _factor = -Math.Log(1 + excess);
            _isLiquid = isLiquid;
            IsFollowed = true;
        }
        else
        {
            _nothingAtTemperature = bulk.T;
            _nothingAtDensity = bulk.Rho;
        }

        return excess;
    }

    /// <summary>Follows the phase to where the single phase is now.</summary>
    /// <param name="bulk">The phase tested, evaluated.</param>
    /// <param name="isLiquid">Whether the trial is a liquid.</param>
    /// <param name="amounts">The trial's composition at the end.</param>
    /// <param name="excess">As <see cref="Find"/> returns it.</param>
    /// <returns>Whether the phase is still there, and near.</returns>
    public bool TryFollow(MixturePhase bulk, bool isLiquid, Span<double> amounts, out double excess)
    {
        excess = -1;
        if (!IsFollowed || isLiquid != _isLiquid || !(bulk.Pressure > 0))
        {
            return false;
        }

        bool isFollowed = TrySolve(bulk, out excess);
        if (isFollowed)
        {
            _densities.CopyTo(amounts);
        }
        else
        {
            Forget();
        }

        return isFollowed;
    }

    private bool TrySolve(MixturePhase bulk, out double excess)
    {
        excess = -1;
        if (_hasFactors && TryForecast(bulk, out double reach))
        {
            double factor = _factor - _rhs[_n];
            excess = Math.Exp(-factor) - 1;
            if (excess < FarFromForming && reach < ForecastReach)
            {
                return true;
            }

            Advance();
        }

        _hasFactors = false;
        for (int k = 0; k < MaximumIterations; k++)
        {
            Evaluate(bulk.T);
            Fill(bulk);
            if (!DenseLinear.Factor(_jacobian, _pivots, _scales, _n + 1) || !DenseLinear.Substitute(_jacobian, _pivots, _scales, _rhs, _n + 1))
            {
                return false;
            }

            double change = MostChange();
            if (!(change < LargestChange) || !(_phase.Stiffness > 0))
            {
                return false;
            }

            Advance();
            if (change < Arrived)
            {
                _hasFactors = true;
                excess = Math.Exp(-_factor) - 1;
                double distance = Math.Log(_phase.Rho / bulk.Rho);
                return (_isLiquid ? distance : -distance) > SamePhase;
            }
        }

        return false;
    }

    /// <summary>Newton's first step with the derivatives of the last phase.</summary>
    private bool TryForecast(MixturePhase bulk, out double reach)
    {
        double warmer = (bulk.T - _phase.T) / _phase.T;
        double sum = 0;
        for (int i = 0; i < _n; i++)
        {
            sum += _densities[i];
            _rhs[i] = _log[i] + _phase.LogPhi[i] + (_phase.LogPhiByT[i] * warmer) - Math.Log(bulk.X[i] * bulk.Rho) - bulk.LogPhi[i] - _factor;
        }

        double rt = MixtureEquation.GasConstant * _phase.T * sum;
        _rhs[_n] = _phase.Z + (_phase.ZByT * warmer) - (bulk.Pressure / rt);
        bool isFound = DenseLinear.Substitute(_jacobian, _pivots, _scales, _rhs, _n + 1);
        reach = MostChange();
        return isFound && reach < LargestChange;
    }

    private double MostChange()
    {
        double most = 0;
        foreach (double change in _rhs)
        {
            most = Math.Max(most, Math.Abs(change));
        }

        return most;
    }

    private void Advance()
    {
        for (int i = 0; i < _n; i++)
        {
            _log[i] -= _rhs[i];
            _densities[i] = Math.Exp(_log[i]);
        }

        _factor -= _rhs[_n];
    }

    private void Evaluate(double temperature)
    {
        double sum = 0;
        for (int i = 0; i < _n; i++)
        {
            _densities[i] = Math.Exp(_log[i]);
            sum += _densities[i];
        }

        _phase.SetAmounts(_densities);
        _phase.SetTemperature(temperature);
        _phase.SetDensity(sum);
    }

    private void Fill(MixturePhase bulk)
    {
        int width = _n + 1;
        for (int i = 0; i < _n; i++)
        {
            _rhs[i] = _log[i] + _phase.LogPhi[i] - Math.Log(bulk.X[i] * bulk.Rho) - bulk.LogPhi[i] - _factor;
            for (int j = 0; j < _n; j++)
            {
                _jacobian[(i * width) + j] = _phase.X[j] * _phase.Matrix[(i * _n) + j];
            }

            _jacobian[(i * width) + i] += 1;
            _jacobian[(i * width) + _n] = -1;
            _jacobian[(_n * width) + i] = _phase.X[i] * _phase.PressureBy[i];
        }

        _jacobian[(_n * width) + _n] = 0;
        _rhs[_n] = _phase.Z - (bulk.Pressure / (MixtureEquation.GasConstant * _phase.T * _phase.Rho));
    }
}
