using System;

namespace Refrigerant.Recovery.Numerics;

/// <summary>The explicit 5(4) Runge–Kutta pair of Dormand and Prince, with dense output of order four.</summary>
/// <remarks>
/// Dormand and Prince 1980, J. Comput. Appl. Math. 6, 19, doi:10.1016/0771-050X(80)90013-3; dense output and the sign of stiffness:
/// Hairer, Nørsett and Wanner, Solving Ordinary Differential Equations I, 2nd ed., section II.6, and Hairer and Wanner, II, section IV.2.
/// </remarks>
internal sealed class DormandPrince : OdeStepper
{
    private readonly double[] _slope2;
    private readonly double[] _slope3;
    private readonly double[] _slope4;
    private readonly double[] _slope5;
    private readonly double[] _slope6;
    private readonly double[] _sixth;
    private readonly double[] _error;
    private readonly double[] _dense1;
    private readonly double[] _dense2;
    private readonly double[] _dense3;
    private readonly double[] _dense4;
    private double _h;

    public DormandPrince(OdeSystem system)
        : base(system)
    {
        _slope2 = new double[Dimension];
        _slope3 = new double[Dimension];
        _slope4 = new double[Dimension];
        _slope5 = new double[Dimension];
        _slope6 = new double[Dimension];
        _sixth = new double[Dimension];
        _error = new double[Controlled];
        _dense1 = new double[Dimension];
        _dense2 = new double[Dimension];
        _dense3 = new double[Dimension];
        _dense4 = new double[Dimension];
    }

    public override double ErrorExponent => 0.2;

    public override bool Step(double[] state, double[] slope, double h, double[] next, double[] nextSlope)
    {
        double[] y = state;
        double[] k1 = slope, k2 = _slope2, k3 = _slope3, k4 = _slope4, k5 = _slope5, k6 = _slope6;
        double[] trial = next;
        _h = h;
        for (int i = 0; i < y.Length; i++)
        {
            trial[i] = y[i] + (h * (1.0 / 5 * k1[i]));
        }

        if (!Evaluate(trial, k2))
        {
            return false;
        }

        for (int i = 0; i < y.Length; i++)
        {
            trial[i] = y[i] + (h * ((3.0 / 40 * k1[i]) + (9.0 / 40 * k2[i])));
        }

        if (!Evaluate(trial, k3))
        {
            return false;
        }

        for (int i = 0; i < y.Length; i++)
        {
            trial[i] = y[i] + (h * ((44.0 / 45 * k1[i]) - (56.0 / 15 * k2[i]) + (32.0 / 9 * k3[i])));
        }

        if (!Evaluate(trial, k4))
        {
            return false;
        }

        for (int i = 0; i < y.Length; i++)
        {
            trial[i] = y[i] + (h * ((19372.0 / 6561 * k1[i]) - (25360.0 / 2187 * k2[i]) + (64448.0 / 6561 * k3[i]) - (212.0 / 729 * k4[i])));
        }

        if (!Evaluate(trial, k5))
        {
            return false;
        }

        for (int i = 0; i < y.Length; i++)
        {
            trial[i] = y[i] + (h * ((9017.0 / 3168 * k1[i]) - (355.0 / 33 * k2[i]) + (46732.0 / 5247 * k3[i])
                + (49.0 / 176 * k4[i]) - (5103.0 / 18656 * k5[i])));
        }

        if (!Evaluate(trial, k6))
        {
            return false;
        }

        Array.Copy(trial, _sixth, _sixth.Length);

        for (int i = 0; i < y.Length; i++)
        {
            trial[i] = y[i] + (h * ((35.0 / 384 * k1[i]) + (500.0 / 1113 * k3[i]) + (125.0 / 192 * k4[i])
                - (2187.0 / 6784 * k5[i]) + (11.0 / 84 * k6[i])));
        }

        if (!Evaluate(trial, nextSlope))
        {
            return false;
        }

        for (int i = 0; i < Controlled; i++)
        {
            _error[i] = h * ((71.0 / 57600 * k1[i]) - (71.0 / 16695 * k3[i]) + (71.0 / 1920 * k4[i])
                - (17253.0 / 339200 * k5[i]) + (22.0 / 525 * k6[i]) - (1.0 / 40 * nextSlope[i]));
        }

        return true;
    }

    public override double Error(int index) => _error[index];

    /// <summary>
    /// The step times the size of the fastest rate, from the slopes of the last two stages, which stand at the same time: about 3.3
    /// where stability bounds the step, and less where accuracy does.
    /// </summary>
    public double StepTimesRate(double[] next, double[] nextSlope)
    {
        double slopes = 0;
        double states = 0;
        for (int i = 0; i < Controlled; i++)
        {
            double scale = System.Size(i, next);
            double slope = (nextSlope[i] - _slope6[i]) / scale;
            double state = (next[i] - _sixth[i]) / scale;
            slopes += slope * slope;
            states += state * state;
        }

        return states > 0 ? _h * Math.Sqrt(slopes / states) : 0;
    }

    public override void PrepareInterpolation(double[] state, double[] slope, double[] next, double[] nextSlope)
    {
        for (int i = 0; i < Dimension; i++)
        {
            double difference = next[i] - state[i];
            double bspline = (_h * slope[i]) - difference;
            _dense1[i] = difference;
            _dense2[i] = bspline;
            _dense3[i] = difference - (_h * nextSlope[i]) - bspline;
            _dense4[i] = _h * ((-12715105075.0 / 11282082432 * slope[i]) + (87487479700.0 / 32700410799 * _slope3[i])
                - (10690763975.0 / 1880347072 * _slope4[i]) + (701980252875.0 / 199316789632 * _slope5[i])
                - (1453857185.0 / 822651844 * _slope6[i]) + (69997945.0 / 29380423 * nextSlope[i]));
        }
    }

    /// <summary>The continuous extension of order four (Hairer et al., eq. II.6.12, in the form of their DOPRI5).</summary>
    public override void Interpolate(double[] state, double share, double[] result)
    {
        double rest = 1 - share;
        for (int i = 0; i < Dimension; i++)
        {
            result[i] = state[i] + (share * (_dense1[i] + (rest * (_dense2[i] + (share * (_dense3[i] + (rest * _dense4[i])))))));
        }
    }
}
