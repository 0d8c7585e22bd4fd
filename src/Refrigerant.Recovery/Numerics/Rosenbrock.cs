using System;

namespace Refrigerant.Recovery.Numerics;

/// <summary>
/// The L-stable, stiffly accurate Rosenbrock method of order 4(3) in six stages with dense output of order three: implicit in one
/// linearization a step, so that fast relaxations cost no short steps.
/// </summary>
/// <remarks>
/// Method and coefficients: RODAS of Hairer and Wanner, Solving Ordinary Differential Equations II, 2nd ed., section VI.4:
/// (I/(hγ) − J)·k_i = f(y + Σ a_ij·k_j) + Σ c_ij·k_j/h. The Jacobian J = ∂f/∂y is by differences, one or two evaluations a component, and so
/// wants f to some nine figures. An invariant c·f = 0 makes c·J = 0 and c·k_i = 0: balances are kept here too.
/// </remarks>
internal sealed class Rosenbrock : OdeStepper
{
    private const int Stages = 6;
    private const double Gamma = 0.25;

    /// <summary>Step of a difference, as a share of the size of its component: noise of f and its curvature weigh about the same.</summary>
    private const double DifferenceShare = 1e-6;

    /// <summary>
    /// Where flows follow the root of a small pressure difference f bends so much that the error of one-sided differences, not the method, bounds the step. After this many steps, which
    /// few integrations need, differences are two-sided and smaller.
    /// </summary>
    private const int StepsBeforeTwoSided = 48;
    private const double TwoSidedShare = 1e-7;

    /// <summary>a_ij of stages 2 to 5; stage 6 starts from stage 5 and its k.</summary>
    private static readonly double[][] A =
    [
        [1.544],
        [0.9466785280815826, 0.2557011698983284],
        [3.314825187068521, 2.896124015972201, 0.9986419139977817],
        [1.221224509226641, 6.019134481288629, 12.53708332932087, -0.6878860361058950],
    ];

    private static readonly double[][] C =
    [
        [-5.6688],
        [-2.430093356833875, -0.2063599157091915],
        [-0.1073529058151375, -9.594562251023355, -20.47028614809616],
        [7.496443313967647, -10.24680431464352, -33.99990352819905, 11.70890893206160],
        [8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136, -6.058818238834054],
    ];

    /// <summary>Dense output.</summary>
    private static readonly double[][] D =
    [
        [10.12623508344586, -7.487995877610167, -34.80091861555747, -7.992771707568823, 1.025137723295662],
        [-0.6762803392801253, 6.087714651680015, 16.43084320892478, 24.76722511418386, -6.594389125716872],
    ];

    private readonly double[][] _k = new double[Stages][];
    private readonly double[] _jacobian;
    private readonly double[] _factors;
    private readonly double[] _scales;
    private readonly int[] _pivots;
    private readonly double[] _linearizedAt;
    private readonly double[] _probe;
    private readonly double[] _end;
    private readonly double[] _dense1;
    private readonly double[] _dense2;
    private bool _hasJacobian;
    private int _steps;

    public Rosenbrock(OdeSystem system)
        : base(system)
    {
        for (int i = 0; i < Stages; i++)
        {
            _k[i] = new double[Dimension];
        }

        _jacobian = new double[Dimension * Controlled];
        _factors = new double[Controlled * Controlled];
        _scales = new double[Controlled];
        _pivots = new int[Controlled];
        _linearizedAt = new double[Dimension];
        _probe = new double[Dimension];
        _end = new double[Dimension];
        _dense1 = new double[Dimension];
        _dense2 = new double[Dimension];
    }

    public override double ErrorExponent => 0.25;

    public override bool Step(double[] state, double[] slope, double h, double[] next, double[] nextSlope)
    {
        _steps++;
        if (!Linearize(state, slope) || !FactorFor(h))
        {
            return false;
        }

        for (int stage = 0; stage < Stages; stage++)
        {
            double[] k = _k[stage];
            if (stage == 0)
            {
                Array.Copy(slope, k, Dimension);
            }
            else
            {
                StageState(stage, state, next);
                if (!Evaluate(next, k))
                {
                    return false;
                }

                double[] c = C[stage - 1];
                for (int j = 0; j < stage; j++)
                {
                    double weight = c[j] / h;
                    double[] earlier = _k[j];
                    for (int i = 0; i < Dimension; i++)
                    {
                        k[i] += weight * earlier[i];
                    }
                }
            }

            if (!SolveStage(k, h))
            {
                return false;
            }
        }

        for (int i = 0; i < Dimension; i++)
        {
            next[i] += _k[Stages - 1][i];
        }

        return Evaluate(next, nextSlope);
    }

    /// <summary>The last stage is the error estimate.</summary>
    public override double Error(int index) => _k[Stages - 1][index];

    public override void PrepareInterpolation(double[] state, double[] slope, double[] next, double[] nextSlope)
    {
        Array.Copy(next, _end, Dimension);
        Combine(D[0], _dense1);
        Combine(D[1], _dense2);
    }

    public override void Interpolate(double[] state, double share, double[] result)
    {
        double rest = 1 - share;
        for (int i = 0; i < Dimension; i++)
        {
            result[i] = (rest * state[i]) + (share * (_end[i] + (rest * (_dense1[i] + (share * _dense2[i])))));
        }
    }

    public override void SystemChanged()
    {
        _hasJacobian = false;
        _steps = 0;
    }

    private void Combine(double[] weights, double[] sum)
    {
        Array.Clear(sum, 0, Dimension);
        for (int j = 0; j < weights.Length; j++)
        {
            for (int i = 0; i < Dimension; i++)
            {
                sum[i] += weights[j] * _k[j][i];
            }
        }
    }

    private void StageState(int stage, double[] state, double[] result)
    {
        if (stage == Stages - 1)
        {
            for (int i = 0; i < Dimension; i++)
            {
                result[i] += _k[stage - 1][i];
            }

            return;
        }

        Combine(A[stage - 1], result);
        for (int i = 0; i < Dimension; i++)
        {
            result[i] += state[i];
        }
    }

    /// <summary>∂f/∂y at a state by differences, one-sided where only one side is a state; kept while the step is tried again.</summary>
    private bool Linearize(double[] state, double[] slope)
    {
        if (_hasJacobian && state.AsSpan().SequenceEqual(_linearizedAt))
        {
            return true;
        }

        _hasJacobian = false;
        Array.Copy(state, _linearizedAt, Dimension);
        Array.Copy(state, _probe, Dimension);
        bool twoSided = _steps > StepsBeforeTwoSided;
        double[] above = _k[0], below = _k[1];
        for (int j = 0; j < Controlled; j++)
        {
            double difference = (twoSided ? TwoSidedShare : DifferenceShare) * System.Size(j, state);
            if (double.IsInfinity(difference))
            {
                for (int i = 0; i < Dimension; i++)
                {
                    _jacobian[(i * Controlled) + j] = 0;
                }

                continue;
            }

            _probe[j] = state[j] + difference;
            double high = _probe[j];
            bool hasAbove = Evaluate(_probe, above);
            double low = state[j];
            bool hasBelow = false;
            if (twoSided || !hasAbove)
            {
                _probe[j] = state[j] - difference;
                hasBelow = Evaluate(_probe, below);
                low = hasBelow ? _probe[j] : low;
            }

            if (!hasAbove && !hasBelow)
            {
                return false;
            }

            high = hasAbove ? high : state[j];
            double[] from = hasBelow ? below : slope, to = hasAbove ? above : slope;
            for (int i = 0; i < Dimension; i++)
            {
                _jacobian[(i * Controlled) + j] = (to[i] - from[i]) / (high - low);
            }

            _probe[j] = state[j];
        }

        _hasJacobian = true;
        return true;
    }

    private bool FactorFor(double h)
    {
        for (int i = 0; i < Controlled * Controlled; i++)
        {
            _factors[i] = -_jacobian[i];
        }

        for (int i = 0; i < Controlled; i++)
        {
            _factors[(i * Controlled) + i] += 1 / (h * Gamma);
        }

        return DenseLinear.Factor(_factors, _pivots, _scales, Controlled);
    }

    /// <summary>The controlled components by the factors; what the accumulators collect follows from them.</summary>
    private bool SolveStage(double[] k, double h)
    {
        if (!DenseLinear.Substitute(_factors, _pivots, _scales, k, Controlled))
        {
            return false;
        }

        for (int i = Controlled; i < Dimension; i++)
        {
            double sum = k[i];
            for (int j = 0; j < Controlled; j++)
            {
                sum += _jacobian[(i * Controlled) + j] * k[j];
            }

            k[i] = h * Gamma * sum;
        }

        return true;
    }
}
