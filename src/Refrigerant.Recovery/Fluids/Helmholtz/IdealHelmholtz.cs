using System;
using System.Linq;
using System.Runtime.CompilerServices;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The ideal-gas part of a reduced Helmholtz energy without ln(delta) and without the two constants of the reference state:
/// logTau·ln τ + tauLogTau·τ·ln τ + Σ n·τ^t + Σ n·ln(1 − exp(−t·τ)).
/// </summary>
internal sealed class IdealHelmholtz
{
    private readonly double _logTau;
    private readonly double _tauLogTau;
    private readonly double[] _powers;
    private readonly double[] _planckEinstein;

    /// <param name="logTau">Coefficient of ln τ.</param>
    /// <param name="tauLogTau">Coefficient of τ·ln τ.</param>
    /// <param name="powers">Rows n, t: n·τ^t.</param>
    /// <param name="planckEinstein">Rows n, t: n·ln(1 − exp(−t·τ)).</param>
    public IdealHelmholtz(double logTau, double tauLogTau, double[,] powers, double[,] planckEinstein)
    {
        _logTau = logTau;
        _tauLogTau = tauLogTau;
        _powers = powers.Cast<double>().ToArray();
        _planckEinstein = planckEinstein.Cast<double>().ToArray();
    }

    /// <summary>The value, τ times the first and τ² times the second derivative by τ.</summary>
    [MethodImpl(Jit.Hot)]
    public void Evaluate(double tau, out double a, out double t, out double tt)
    {
        double log = Math.Log(tau);
        a = (_logTau + (_tauLogTau * tau)) * log;
        t = _logTau + (_tauLogTau * tau * (log + 1));
        tt = (_tauLogTau * tau) - _logTau;
        double[] powers = _powers;
        for (int i = 0; i + 1 < powers.Length; i += 2)
        {
            double exponent = powers[i + 1];
            double term = powers[i] * Math.Exp(exponent * log);
            a += term;
            t += exponent * term;
            tt += exponent * (exponent - 1) * term;
        }

        double[] oscillators = _planckEinstein;
        for (int i = 0; i + 1 < oscillators.Length; i += 2)
        {
            double n = oscillators[i];
            double x = oscillators[i + 1] * tau;
            double e = Math.Exp(-x);
            double occupation = e / (1 - e);
            a += n * Math.Log(1 - e);
            t += n * x * occupation;
            tt -= n * x * x * occupation / (1 - e);
        }
    }
}
