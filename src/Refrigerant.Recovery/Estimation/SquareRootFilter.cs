using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>A Gaussian filter on the reduced model: mean and root of the covariance, by central divided differences. Allocates nothing after its making.</summary>
/// <remarks>
/// Prediction: <see cref="DividedDifferences"/>. Readings come in one at a time (Potter; Bierman, <i>Factorization Methods for Discrete Sequential
/// Estimation</i>, 1977, chapter V). No weight is negative and nothing is subtracted, so no covariance loses its sign.
/// </remarks>
internal sealed class SquareRootFilter
{
    private const int N = StateIndex.Count;
    private const int Stride = FilterWorkspace.Stride;

    /// <summary>Readings this many standard deviations off count as outliers,</summary>
    private const double Gate = 5;

    /// <summary>unless so many come in a row, where each stands for so many s, but never a single one: a run of outliers is none.</summary>
    private const int LongestRun = 6;

    private const double OutlierTime = 10;

    /// <summary>States are pulled back where they are more standard deviations of their prior away,</summary>
    private const double Leash = 2.5;

    /// <summary>within this time, s.</summary>
    private const double LeashTime = 20;

    /// <summary>Pa: below it the slow error of the pressure is no share of it any more.</summary>
    private const double LeastPressure = 2e4;

    /// <summary>Log-likelihood of a reading from which nothing can be told.</summary>
    private const double Useless = -50;

    /// <summary>Variance of a pipe's temperature against the lump of metal, K²: 1.5 K that last a minute.</summary>
    private const double PipeNoise = 1.5 * 1.5 * 60;

    /// <summary>The same of a condensing temperature: 1 K.</summary>
    private const double CondensingNoise = 60;

    /// <summary>The model's step for time without readings, s.</summary>
    private const double PassingStep = 7.5;

    private readonly ReducedModel _model;
    private readonly EstimatorPrior _prior;
    private readonly FilterWorkspace _work;
    private readonly DividedDifferences _differences;
    private readonly AssumedPhase _phase;
    private ReducedInputs _inputs;
    private double _pressure = 5e5;
    private int _gaugeRun;
    private int _scaleRun;
    private int _otherRun;

    public SquareRootFilter(ReducedModel model, EstimatorPrior prior, DividedDifferences differences, AssumedPhase phase)
    {
        _model = model;
        _prior = prior;
        _work = differences.Work;
        _differences = differences;
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

    /// <summary>ln of the largest charge that was told, its error beyond doubt, or of what the scale has received, if that is more.</summary>
    public double MostCharge => Math.Max(
        _prior.Mean[StateIndex.Charge] + (Leash * _prior.Sigma[StateIndex.Charge]), Math.Log(Math.Max(1e-9, X[StateIndex.Delivered])));

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
            _inputs.Passing = block.Passed / block.Duration;
            Predict(block.Duration, DividedDifferences.StepFor(block.Duration));
        }

        X[StateIndex.Delivered] += block.LiquidMoved;
        GaugeConsistency = ScaleConsistency = double.NaN;
        if (Require.IsFinite(block.Delivered))
        {
            Rows(StateIndex.Delivered, StateIndex.ScaleOffset);
            double shown = X[StateIndex.Delivered] + X[StateIndex.ScaleOffset];
            ScaleConsistency = Scalar(block.Delivered - shown, _prior.ScaleNoise, 0, block.Duration, ref _scaleRun);
        }

        if (Require.IsFinite(block.Gauge))
        {
            _pressure = Math.Max(LeastPressure, block.Gauge + _prior.Atmosphere);
            // The model's own error lasts: a block of ten seconds brings no more of it than ten of one second.
            double noise = _prior.GaugeNoise + (_prior.ModelNoise / Math.Max(1, Math.Min(10, block.Duration)));
            double shown = _differences.Gauge(X, L, in _inputs, out double second);
            GaugeConsistency = Scalar(block.Gauge - shown, noise, second, block.Duration, ref _gaugeRun);
        }

        if (Require.IsFinite(block.PipeTemperature))
        {
            Rows(StateIndex.MetalTemperature, -1);
            Scalar(block.PipeTemperature - X[StateIndex.MetalTemperature], PipeNoise, 0, block.Duration, ref _otherRun);
        }

        if (Require.IsFinite(block.CondensingTemperature))
        {
            Rows(StateIndex.Condensing, -1);
            Scalar(block.CondensingTemperature - X[StateIndex.Condensing], CondensingNoise, 0, block.Duration, ref _otherRun);
        }

        if (block.Duration > 0)
        {
            PullBack(block.Duration);
        }
    }

    /// <summary>Time in which the machine has drawn and nothing was read, in long steps: how far off they are is small beside what is unsure without readings.</summary>
    /// <param name="seconds">s.</param>
    /// <param name="airTemperature">K.</param>
    public void Pass(double seconds, double airTemperature)
    {
        if (seconds > 0)
        {
            _inputs = new ReducedInputs(airTemperature, true, _phase);
            Predict(seconds, Math.Max(DividedDifferences.StepFor(seconds), PassingStep));
            PullBack(seconds);
        }
    }

    /// <summary>Adds to the variance of a state.</summary>
    public void AddVariance(int index, double variance)
    {
        _work.Widen(L, index, Math.Sqrt(variance));
    }

    /// <summary>A state back to its prior, whatever the others say of it.</summary>
    public void Restore(int index)
    {
        X[index] = _prior.Mean[index];
        Array.Clear(L, index * Stride, Stride);
        AddVariance(index, _prior.Sigma[index] * _prior.Sigma[index]);
        Released = Released == index ? -1 : Released;
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
        _differences.Values(X);
        return SigmaPoint.From(X, _work.Value, _prior.Typical, _model.Table);
    }

    private void Predict(double duration, double step)
    {
        for (int i = 0; i < N; i++)
        {
            _work.NoiseVariance[i] = NoiseRate(i) * duration;
        }

        _differences.Predict(X, L, in _inputs, duration, step);
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

    /// <summary>A reading with its gate; returns the squared innovation over its variance.</summary>
    private double Scalar(double innovation, double noise, double second, double duration, ref int run)
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
        run += Math.Max(1, Math.Min(LongestRun - 1, (int)(duration / OutlierTime)));
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

    /// <summary>Soft bounds of all states that have one.</summary>
    private void PullBack(double duration)
    {
        for (int k = StateIndex.Volume; k <= StateIndex.Dissolved; k++)
        {
            if (k != StateIndex.GaugeDrift && k != Released)
            {
                PullBack(k, duration);
            }
        }

        if (_phase == AssumedPhase.LiquidPresent)
        {
            PullBack(StateIndex.Charge, Math.Max(0, X[StateIndex.Charge] - MostCharge), _prior.Sigma[StateIndex.Charge], duration);
        }
    }

    /// <summary>A soft bound: decoupled from what was told, a state explains anything away.</summary>
    private void PullBack(int index, double duration)
    {
        double sigma = index == StateIndex.ScaleOffset ? _prior.ScaleDrift : _prior.Sigma[index];
        double off = X[index] - _prior.Mean[index];
        double leash = Leash * sigma;
        PullBack(index, off > leash ? off - leash : off < -leash ? off + leash : 0, sigma, duration);
    }

    private void PullBack(int index, double beyond, double sigma, double duration)
    {
        if (!(beyond * beyond > 0))
        {
            return;
        }

        Rows(index, -1);
        double noise = sigma * sigma * LeashTime / duration;
        double variance = VectorRows.Dot(_work.Slope, 0, _work.Slope, 0, Stride) + noise;
        LogLikelihood -= 0.5 * beyond * beyond / variance;
        Apply(-beyond, variance, noise);
    }
}
