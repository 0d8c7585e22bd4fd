using System;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// Follows the saturation line of a pure fluid from cold to critical in x = sqrt(1 − T/Tc). Every point starts from those before it, so
/// the iteration never lands in the wrong basin.
/// </summary>
internal sealed class SaturationTrack
{
    private readonly PureEquation _equation;
    private readonly double _criticalTemperature;
    private readonly double[] _isotherm;
    private readonly History _history = new();
    private readonly History _mark = new();
    private double _liquid;
    private double _vapor;

    public SaturationTrack(PureEquation equation, double criticalTemperature)
    {
        _equation = equation;
        _criticalTemperature = criticalTemperature;
        _isotherm = new double[equation.Residual.IsothermLength];
    }

    /// <summary>K, of the last point tried.</summary>
    public double Temperature { get; private set; }

    /// <summary>The number of points solved.</summary>
    public int Points { get; private set; }

    /// <summary>Solves the next point.</summary>
    public bool TryMoveTo(double x)
    {
        Temperature = _criticalTemperature * (1 - (x * x));
        double tau = _equation.ReducingTemperature / Temperature;
        _equation.Residual.Isotherm(tau, _isotherm);
        bool solved = _history.Length == 0
            ? PhaseEquilibrium.TryStart(_equation.Residual, tau, _isotherm, Rackett(x * x), out _liquid, out _vapor)
            : TryContinue(tau, x);
        if (solved)
        {
            _history.Add(x, Math.Log(_liquid), Math.Log(_vapor));
            Points++;
        }

        return solved;
    }

    /// <summary>Goes back to the last marked place, where a piece is done again in halves.</summary>
    public void Return() => _history.CopyFrom(_mark);

    /// <summary>Marks the place to return to.</summary>
    public void Mark() => _mark.CopyFrom(_history);

    /// <summary>Stores pressure, densities, enthalpies and liquid entropy of the point at a node.</summary>
    public void Store(Span<double> values, int node)
    {
        int n = SaturationLine.Order;
        double liquid = _liquid * _equation.ReducingDensity;
        double vapor = _vapor * _equation.ReducingDensity;
        _equation.Caloric(Temperature, liquid, _isotherm, out _, out double liquidEnthalpy, out double liquidEntropy);
        _equation.Caloric(Temperature, vapor, _isotherm, out double pressure, out double vaporEnthalpy, out _);
        values[node] = pressure;
        values[n + node] = liquid;
        values[(2 * n) + node] = vapor;
        values[(3 * n) + node] = liquidEnthalpy;
        values[(4 * n) + node] = vaporEnthalpy;
        values[(5 * n) + node] = liquidEntropy;
    }

    private bool TryContinue(double tau, double x)
    {
        _history.Extrapolate(x, out double logLiquid, out double logVapor);
        _liquid = Math.Exp(logLiquid);
        _vapor = Math.Exp(logVapor);
        return PhaseEquilibrium.TrySolve(_equation.Residual, tau, _isotherm, ref _liquid, ref _vapor);
    }

    /// <summary>
    /// Reduced liquid density after Rackett with the factor of Yamada and Gunn (1973, AIChE J. 19, 1234, doi:10.1002/aic.690190613):
    /// ρ/ρc = Z^−(1 − T/Tc)^(2/7), Z = 0.29056 − 0.08775·ω. Only an estimate to start from.
    /// </summary>
    private double Rackett(double distance)
    {
        PureFluidData data = _equation.Data;
        double z = 0.29056 - (0.08775 * data.AcentricFactor);
        return data.CriticalMolarDensity / data.ReducingMolarDensity * Math.Pow(z, -Math.Pow(distance, 2.0 / 7));
    }

    /// <summary>The last three points, for quadratic extrapolation.</summary>
    private sealed class History
    {
        private double _x1, _x2, _x3, _l1, _l2, _l3, _v1, _v2, _v3;

        public int Length { get; private set; }

        public void Add(double x, double logLiquid, double logVapor)
        {
            (_x3, _l3, _v3) = (_x2, _l2, _v2);
            (_x2, _l2, _v2) = (_x1, _l1, _v1);
            (_x1, _l1, _v1) = (x, logLiquid, logVapor);
            Length++;
        }

        public void Extrapolate(double x, out double logLiquid, out double logVapor)
        {
            if (Length < 3)
            {
                (logLiquid, logVapor) = (_l1, _v1);
                return;
            }

            double a1 = (x - _x2) * (x - _x3) / ((_x1 - _x2) * (_x1 - _x3));
            double a2 = (x - _x1) * (x - _x3) / ((_x2 - _x1) * (_x2 - _x3));
            double a3 = (x - _x1) * (x - _x2) / ((_x3 - _x1) * (_x3 - _x2));
            logLiquid = (a1 * _l1) + (a2 * _l2) + (a3 * _l3);
            logVapor = (a1 * _v1) + (a2 * _v2) + (a3 * _v3);
        }

        public void CopyFrom(History other)
        {
            Length = other.Length;
            (_x1, _l1, _v1) = (other._x1, other._l1, other._v1);
            (_x2, _l2, _v2) = (other._x2, other._l2, other._v2);
            (_x3, _l3, _v3) = (other._x3, other._l3, other._v3);
        }
    }
}
