using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>A Gaussian filter on the reduced model: mean and root of the covariance, by central divided differences. Allocates nothing after its making.</summary>
/// <remarks>
/// Nørgaard, Poulsen and Ravn, Automatica 36, 1627 (2000): with the columns s_j of the root, spread γ² = 3, f± = f(x ± γ·s_j) and f0 = f(x), the
/// mean is f0 + Σ(f+ + f− − 2·f0)/(2γ²), and the new root has the columns (f+ − f−)/(2γ) and √(γ² − 1)·(f+ + f− − 2·f0)/(2γ²), besides those of the
/// noise; Householder reflections make it square again. Readings come in one at a time (Potter; Bierman, <i>Factorization Methods for Discrete
/// Sequential Estimation</i>, 1977, chapter V). No weight is negative and nothing is subtracted, so no covariance loses its sign.
/// </remarks>
internal sealed class SquareRootFilter
{
    private const int N = StateIndex.Count;
    private const int Stride = FilterWorkspace.Stride;
    private const int Wide = FilterWorkspace.WideStride;
    private const double SpreadSquared = 3;

    /// <summary>Readings this many standard deviations off count as outliers,</summary>
    private const double Gate = 5;

    /// <summary>unless so many come in a row: a run of outliers is none.</summary>
    private const int LongestRun = 6;

    /// <summary>States are pulled back where they are more standard deviations of their prior away,</summary>
    private const double Leash = 2.5;

    /// <summary>within this time, s.</summary>
    private const double LeashTime = 20;

    /// <summary>s: the model's step, but for long gaps.</summary>
    private const double LargestStep = 2.5;

    private const double MostSteps = 60;

    /// <summary>Pa: below it the slow error of the pressure is no share of it any more.</summary>
    private const double LeastPressure = 2e4;

    /// <summary>Log-likelihood of a reading from which nothing can be told.</summary>
    private const double Useless = -50;

    /// <summary>Variance of a pipe's temperature against the lump of metal, K²: 1.5 K that last a minute.</summary>
    private const double PipeNoise = 1.5 * 1.5 * 60;

    /// <summary>The same of a condensing temperature: 1 K.</summary>
    private const double CondensingNoise = 60;

    private static readonly double Spread = Math.Sqrt(SpreadSquared);
    private static readonly double SecondWeight = Math.Sqrt(SpreadSquared - 1) / (2 * SpreadSquared);

    private readonly ReducedModel _model;
    private readonly EstimatorPrior _prior;
    private readonly FilterWorkspace _work;
    private readonly AssumedPhase _phase;
    private ReducedInputs _inputs;
    private double _pressure = 5e5;
    private int _gaugeRun;
    private int _scaleRun;
    private int _otherRun;

    public SquareRootFilter(ReducedModel model, EstimatorPrior prior, FilterWorkspace work, AssumedPhase phase)
    {
        _model = model;
        _prior = prior;
        _work = work;
        _phase = phase;
        Reset();
    }

    /// <summary>The mean.</summary>
    public double[] X { get; } = new double[N];

    /// <summary>The root of the covariance, row by row, <see cref="FilterWorkspace.Stride"/> numbers a row.</summary>
    public double[] L { get; } = new double[N * Stride];

    /// <summary>Sum over the readings of the logarithm of their likelihood.</summary>
    public double LogLikelihood { get; set; }

    /// <summary>Variances a second that stand in for those of the prior where greater than zero.</summary>
    public double ChargeNoise { get; set; }

    public double TemperatureNoise { get; set; }

    public double InnerNoise { get; set; }

    /// <summary>A state that is not pulled back to its prior any more; none where negative.</summary>
    public int Released { get; set; } = -1;

    /// <summary>Squared innovation over its variance of the last reading of the gauge; not a number where there was none.</summary>
    public double GaugeConsistency { get; private set; } = double.NaN;

    /// <summary>The same of the scale.</summary>
    public double ScaleConsistency { get; private set; } = double.NaN;

    /// <summary>Whether mean and covariance are numbers.</summary>
    public bool IsFinite
    {
        get
        {
            double sum = LogLikelihood;
            for (int i = 0; i < N; i++)
            {
                sum += X[i] + Variance(i);
            }

            return Require.IsFinite(sum);
        }
    }

    /// <summary>Variance of a state.</summary>
    public double Variance(int index) => VectorRows.Dot(L, index * Stride, L, index * Stride, Stride);

    /// <summary>Back to the prior.</summary>
    public void Reset()
    {
        Array.Copy(_prior.Mean, X, N);
        Array.Clear(L, 0, L.Length);
        for (int i = 0; i < N; i++)
        {
            L[(i * Stride) + i] = _prior.Sigma[i];
        }

        LogLikelihood = 0;
        _gaugeRun = _scaleRun = _otherRun = 0;
    }

    /// <summary>Takes over mean and covariance.</summary>
    public void CopyFrom(SquareRootFilter other)
    {
        Array.Copy(other.X, X, N);
        Array.Copy(other.L, L, L.Length);
        LogLikelihood = 0;
        _inputs = new ReducedInputs(other._inputs.AirTemperature, other._inputs.IsDrawing, _phase);
        _pressure = other._pressure;
        _gaugeRun = _scaleRun = _otherRun = 0;
    }

    /// <summary>One block: prediction to its end, then its readings.</summary>
    public void Update(in EstimatorBlock block)
    {
        _inputs = new ReducedInputs(block.AirTemperature, block.IsDrawing, _phase);
        if (block.Duration > 0)
        {
            Predict(block.Duration);
        }

        X[StateIndex.Delivered] += block.LiquidMoved;
        GaugeConsistency = ScaleConsistency = double.NaN;
        if (Require.IsFinite(block.Delivered))
        {
            Rows(StateIndex.Delivered, StateIndex.ScaleOffset);
            double shown = X[StateIndex.Delivered] + X[StateIndex.ScaleOffset];
            ScaleConsistency = Scalar(block.Delivered - shown, _prior.ScaleNoise, 0, ref _scaleRun);
        }

        if (Require.IsFinite(block.Gauge))
        {
            _pressure = Math.Max(LeastPressure, block.Gauge + _prior.Atmosphere);
            // The model's own error lasts: a block of ten seconds brings no more of it than ten of one second.
            double noise = _prior.GaugeNoise + (_prior.ModelNoise / Math.Max(1, Math.Min(10, block.Duration)));
            double shown = GaugeSlopes(out double second);
            GaugeConsistency = Scalar(block.Gauge - shown, noise, second, ref _gaugeRun);
        }

        if (Require.IsFinite(block.PipeTemperature))
        {
            Rows(StateIndex.MetalTemperature, -1);
            Scalar(block.PipeTemperature - X[StateIndex.MetalTemperature], PipeNoise, 0, ref _otherRun);
        }

        if (Require.IsFinite(block.CondensingTemperature))
        {
            Rows(StateIndex.Condensing, -1);
            Scalar(block.CondensingTemperature - X[StateIndex.Condensing], CondensingNoise, 0, ref _otherRun);
        }

        if (block.Duration > 0)
        {
            for (int k = StateIndex.Volume; k <= StateIndex.Dissolved; k++)
            {
                if (k != StateIndex.GaugeDrift && k != Released)
                {
                    PullBack(k, block.Duration);
                }
            }
        }
    }

    /// <summary>Adds to the variance of a state.</summary>
    public void AddVariance(int index, double variance)
    {
        double[] wide = _work.Wide;
        Array.Clear(wide, 0, wide.Length);
        for (int i = 0; i < N; i++)
        {
            Array.Copy(L, i * Stride, wide, i * Wide, N);
        }

        wide[(index * Wide) + N] = Math.Sqrt(variance);
        Triangularize();
    }

    /// <summary>Takes in a reading whose slopes along the columns of the root stand in the workspace.</summary>
    public void Condition(double innovation, double noise)
    {
        double sum = VectorRows.Dot(_work.Slope, 0, _work.Slope, 0, Stride);
        Apply(innovation, sum + noise, noise);
    }

    /// <summary>The mean as the model takes it.</summary>
    public SigmaPoint Mean()
    {
        Values(X);
        return SigmaPoint.From(X, _work.Value, _prior.Typical, _model.Table);
    }

    private void Predict(double duration)
    {
        double step = Math.Max(LargestStep, duration / MostSteps);
        double[] wide = _work.Wide;
        Array.Clear(wide, 0, wide.Length);
        Array.Clear(_work.Curvature, 0, _work.Curvature.Length);
        Array.Clear(_work.BendSum, 0, _work.BendSum.Length);
        Values(X);
        ReducedState center = Move(X, _work.Value, duration, step, out double centerDissolved);
        double scaleKeeps = Math.Exp(-duration / _prior.ScaleTime);
        double gaugeKeeps = Math.Exp(-duration / _prior.SlowGaugeTime);
        for (int j = 0; j < N; j++)
        {
            Along(j);
            ReducedState plus = Move(_work.Plus, _work.PlusValue, duration, step, out double plusDissolved);
            ReducedState minus = Move(_work.Minus, _work.MinusValue, duration, step, out double minusDissolved);
            for (int i = 0; i < StateIndex.FirstMoving; i++)
            {
                double keeps = i == StateIndex.ScaleOffset ? scaleKeeps : i == StateIndex.GaugeDrift ? gaugeKeeps : 1;
                wide[(i * Wide) + j] = keeps * L[(i * Stride) + j];
            }

            Difference(j, StateIndex.Dissolved, plusDissolved, minusDissolved, centerDissolved);
            Difference(j, StateIndex.Delivered, plus.Delivered, minus.Delivered, center.Delivered);
            Difference(j, StateIndex.MetalTemperature, plus.MetalTemperature, minus.MetalTemperature, center.MetalTemperature);
            Difference(j, StateIndex.Temperature, plus.Temperature, minus.Temperature, center.Temperature);
            Bend();
        }

        X[StateIndex.ScaleOffset] *= scaleKeeps;
        X[StateIndex.GaugeDrift] *= gaugeKeeps;
        X[StateIndex.Dissolved] = centerDissolved + _work.BendSum[0];
        X[StateIndex.Delivered] = center.Delivered + _work.BendSum[1];
        X[StateIndex.MetalTemperature] = center.MetalTemperature + _work.BendSum[2];
        X[StateIndex.Temperature] = center.Temperature + _work.BendSum[3];
        for (int i = 0; i < N; i++)
        {
            wide[(i * Wide) + FilterWorkspace.Noise + i] = Math.Sqrt(NoiseRate(i) * duration);
        }

        SecondColumns();
        Triangularize();
    }

    private double NoiseRate(int index)
    {
        switch (index)
        {
            case StateIndex.Charge when ChargeNoise > 0:
                return ChargeNoise;
            case StateIndex.Temperature when TemperatureNoise > 0:
                return TemperatureNoise;
            case StateIndex.Inner when InnerNoise > 0:
                return InnerNoise;
            case StateIndex.GaugeDrift:
                double relative = _prior.SlowGaugeShare * _pressure;
                return 2 * ((_prior.SlowGauge * _prior.SlowGauge) + (relative * relative)) / _prior.SlowGaugeTime;
            default:
                return _prior.NoiseRate[index];
        }
    }

    private ReducedState Move(double[] states, double[] values, double duration, double step, out double dissolved)
    {
        SigmaPoint point = SigmaPoint.From(states, values, _prior.Typical, _model.Table);
        _model.Advance(ref point.State, in point.Parameters, in _inputs, duration, step);
        dissolved = states[StateIndex.Dissolved] + Math.Log(point.State.Dissolved / values[StateIndex.Dissolved]);
        return point.State;
    }

    /// <summary>Values of the states that are logarithms.</summary>
    private void Values(double[] states)
    {
        for (int i = 0; i < N; i++)
        {
            _work.Value[i] = StateIndex.IsLogarithm(i) ? Math.Exp(states[i]) : 0;
        }
    }

    /// <summary>The two points along a column of the root.</summary>
    private void Along(int column)
    {
        double[] plus = _work.Plus;
        double[] minus = _work.Minus;
        for (int i = 0; i < N; i++)
        {
            double move = Spread * L[(i * Stride) + column];
            plus[i] = X[i] + move;
            minus[i] = X[i] - move;
            if (StateIndex.IsLogarithm(i))
            {
                double factor = move == 0 ? 1 : Math.Exp(move);
                _work.PlusValue[i] = _work.Value[i] * factor;
                _work.MinusValue[i] = _work.Value[i] / factor;
            }
        }
    }

    private void Difference(int column, int row, double plus, double minus, double center)
    {
        _work.Wide[(row * Wide) + column] = (plus - minus) / (2 * Spread);
        _work.Bend[row - StateIndex.FirstMoving] = plus + minus - (2 * center);
    }

    /// <summary>Books the second differences along a column: their mean, and the sum of their products.</summary>
    private void Bend()
    {
        double[] bend = _work.Bend;
        for (int i = 0; i < StateIndex.Moving; i++)
        {
            _work.BendSum[i] += bend[i] / (2 * SpreadSquared);
            for (int k = 0; k <= i; k++)
            {
                _work.Curvature[(i * StateIndex.Moving) + k] += SecondWeight * SecondWeight * bend[i] * bend[k];
            }
        }
    }

    /// <summary>A root of the sum of products stands in for the columns themselves: four instead of one a state.</summary>
    private void SecondColumns()
    {
        const int M = StateIndex.Moving;
        double[] c = _work.Curvature;
        for (int i = 0; i < M; i++)
        {
            int row = (StateIndex.FirstMoving + i) * Wide;
            for (int k = 0; k <= i; k++)
            {
                double sum = c[(i * M) + k];
                for (int q = 0; q < k; q++)
                {
                    sum -= c[(i * M) + q] * c[(k * M) + q];
                }

                double pivot = c[(k * M) + k];
                c[(i * M) + k] = i == k ? Math.Sqrt(Math.Max(0, sum)) : pivot > 0 ? sum / pivot : 0;
                _work.Wide[row + FilterWorkspace.Second + k] = c[(i * M) + k];
            }
        }
    }

    /// <summary>Householder reflections from the right: the wide rows become a lower triangle of the same covariance.</summary>
    private void Triangularize()
    {
        double[] a = _work.Wide;
        double[] v = _work.Reflector;
        for (int k = 0; k < N; k++)
        {
            int row = k * Wide;
            int from = k & VectorRows.LaneMask;
            int length = Wide - from;
            Array.Copy(a, row + from, v, from, length);
            for (int j = from; j < k; j++)
            {
                v[j] = 0;
            }

            double norm = Math.Sqrt(VectorRows.Dot(v, from, v, from, length));
            if (norm == 0)
            {
                continue;
            }

            double alpha = v[k] > 0 ? -norm : norm;
            v[k] -= alpha;
            double beta = -1 / (alpha * v[k]);
            for (int i = k + 1; i < N; i++)
            {
                double along = VectorRows.Dot(v, from, a, (i * Wide) + from, length);
                VectorRows.Add(a, (i * Wide) + from, -beta * along, v, from, length);
            }

            a[row + k] = alpha;
        }

        for (int i = 0; i < N; i++)
        {
            Array.Clear(L, i * Stride, Stride);
            Array.Copy(a, i * Wide, L, i * Stride, i + 1);
        }
    }

    /// <summary>Slopes of one state, or of the sum of two, along the columns.</summary>
    private void Rows(int first, int second)
    {
        double[] slope = _work.Slope;
        Array.Copy(L, first * Stride, slope, 0, Stride);
        if (second >= 0)
        {
            VectorRows.Add(slope, 0, 1, L, second * Stride, Stride);
        }
    }

    /// <summary>What the gauge should show, with slopes along the columns into the workspace.</summary>
    private double GaugeSlopes(out double second)
    {
        Values(X);
        double center = Shown(X, _work.Value);
        double mean = center;
        second = 0;
        double[] slope = _work.Slope;
        Array.Clear(slope, 0, Stride);
        for (int j = 0; j < N; j++)
        {
            Along(j);
            double plus = Shown(_work.Plus, _work.PlusValue);
            double minus = Shown(_work.Minus, _work.MinusValue);
            slope[j] = (plus - minus) / (2 * Spread);
            double bend = plus + minus - (2 * center);
            mean += bend / (2 * SpreadSquared);
            second += SecondWeight * SecondWeight * bend * bend;
        }

        return mean;
    }

    private double Shown(double[] states, double[] values)
    {
        SigmaPoint point = SigmaPoint.From(states, values, _prior.Typical, _model.Table);
        _model.Evaluate(in point.State, in point.Parameters, in _inputs, out ReducedOutput output);
        return output.SuctionPressure - _prior.Atmosphere + point.GaugeError;
    }

    /// <summary>A reading with its gate; returns the squared innovation over its variance.</summary>
    private double Scalar(double innovation, double noise, double second, ref int run)
    {
        double slopes = VectorRows.Dot(_work.Slope, 0, _work.Slope, 0, Stride);
        double variance = slopes + noise + second;
        if (!Require.IsFinite(variance) || !Require.IsFinite(innovation))
        {
            LogLikelihood += Useless;
            return double.NaN;
        }

        double squared = innovation * innovation / variance;
        if (squared <= Gate * Gate)
        {
            run = 0;
            LogLikelihood -= 0.5 * (squared + Math.Log(variance));
            Apply(innovation, variance, noise + second);
            return squared;
        }

        // A rejected reading costs likelihood all the same, and a run of them gets in with its variance stretched to what it says.
        run++;
        LogLikelihood -= 0.5 * ((Gate * Gate) + Math.Log(variance));
        if (run >= LongestRun)
        {
            double stretch = squared / (Gate * Gate);
            double wider = (noise * stretch) + (slopes * (stretch - 1)) + second;
            Apply(innovation, slopes + wider, wider);
        }

        return squared;
    }

    private void Apply(double innovation, double variance, double noise)
    {
        double shrink = 1 / (variance + Math.Sqrt(noise * variance));
        for (int i = 0; i < N; i++)
        {
            double gain = VectorRows.Dot(L, i * Stride, _work.Slope, 0, Stride);
            X[i] += gain * innovation / variance;
            VectorRows.Add(L, i * Stride, -gain * shrink, _work.Slope, 0, Stride);
        }
    }

    /// <summary>A soft bound: decoupled from what was told, a state explains anything away.</summary>
    private void PullBack(int index, double duration)
    {
        double sigma = index == StateIndex.ScaleOffset ? _prior.ScaleDrift : _prior.Sigma[index];
        double off = X[index] - _prior.Mean[index];
        double beyond = Math.Abs(off) - (Leash * sigma);
        if (!(beyond > 0))
        {
            return;
        }

        Rows(index, -1);
        double noise = sigma * sigma * LeashTime / duration;
        double variance = VectorRows.Dot(_work.Slope, 0, _work.Slope, 0, Stride) + noise;
        LogLikelihood -= 0.5 * beyond * beyond / variance;
        Apply(-Math.Sign(off) * beyond, variance, noise);
    }
}
