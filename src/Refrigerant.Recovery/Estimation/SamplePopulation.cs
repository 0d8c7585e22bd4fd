using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>A number of sets of parameters with what they lead to.</summary>
internal sealed class SamplePopulation
{
    /// <summary>Parameters that the samples differ in.</summary>
    public static readonly int[] Varied =
    [
        StateIndex.Charge, StateIndex.Volume, StateIndex.Outer, StateIndex.Metal, StateIndex.Inner, StateIndex.Displacement, StateIndex.Hose,
        StateIndex.Clearance, StateIndex.WetShare, StateIndex.Warming, StateIndex.OilCapacity, StateIndex.OilTime,
        StateIndex.Condensing, StateIndex.Dissolved, StateIndex.Temperature,
    ];

    /// <summary>Steps of the model in a block.</summary>
    public const int StepsPerBlock = 4;

    /// <summary>Squared innovations count up to this many variances.</summary>
    private const double LargestSquare = 50;

    private readonly ReducedModel _model;
    private readonly EstimatorPrior _prior;
    private readonly double[] _values = new double[StateIndex.Count];
    private readonly double[] _states = new double[StateIndex.Count];

    public SamplePopulation(ReducedModel model, EstimatorPrior prior, int size)
    {
        _model = model;
        _prior = prior;
        Size = size;
        Parameters = new double[size * Varied.Length];
        Particles = new SampleParticle[size];
    }

    /// <summary>Number of samples.</summary>
    public int Size { get; }

    /// <summary>Parameters, a row a sample, as in the state vector.</summary>
    public double[] Parameters { get; }

    public SampleParticle[] Particles { get; }

    /// <summary>Number of samples that the weights amount to (Kish).</summary>
    public double Effective
    {
        get
        {
            double most = MostWeight();
            double sum = 0;
            double squares = 0;
            for (int i = 0; i < Size; i++)
            {
                double weight = Math.Exp(Particles[i].LogWeight - most);
                sum += weight;
                squares += weight * weight;
            }

            return sum * sum / squares;
        }
    }

    /// <summary>Largest logarithm of a weight.</summary>
    public double MostWeight()
    {
        double most = double.NegativeInfinity;
        for (int i = 0; i < Size; i++)
        {
            most = Math.Max(most, Particles[i].LogWeight);
        }

        return most;
    }

    /// <summary>A draw from the prior.</summary>
    public void Draw(int index, ref RandomNumbers random)
    {
        for (int k = 0; k < Varied.Length; k++)
        {
            double z = Varied[k] == StateIndex.Charge
                ? Math.Max(-5, Math.Min(5, StudentT.Quantile(random.Next())))
                : random.Normal();
            Parameters[(index * Varied.Length) + k] = _prior.Mean[Varied[k]] + (_prior.Sigma[Varied[k]] * z);
        }

        Start(Parameters, index * Varied.Length, out Particles[index]);
    }

    /// <summary>Logarithm of the prior density, up to a constant.</summary>
    public double LogPrior(double[] parameters, int at)
    {
        double sum = 0;
        for (int k = 0; k < Varied.Length; k++)
        {
            double e = (parameters[at + k] - _prior.Mean[Varied[k]]) / _prior.Sigma[Varied[k]];
            sum -= Varied[k] == StateIndex.Charge ? 2.5 * Math.Log(1 + (0.25 * e * e)) : 0.5 * e * e;
        }

        return sum;
    }

    /// <summary>A sample at the start of the job.</summary>
    public void Start(double[] parameters, int at, out SampleParticle particle)
    {
        Array.Copy(_prior.Mean, _states, StateIndex.Count);
        for (int k = 0; k < Varied.Length; k++)
        {
            _states[Varied[k]] = parameters[at + k];
        }

        _states[StateIndex.WetTemperature] = _states[StateIndex.MetalTemperature] = _states[StateIndex.Temperature];
        for (int i = 0; i < StateIndex.Count; i++)
        {
            _values[i] = StateIndex.IsLogarithm(i) ? Math.Exp(_states[i]) : 0;
        }

        SigmaPoint point = SigmaPoint.From(_states, _values, _prior.Typical, _model.Table);
        particle = default;
        particle.State = point.State;
        particle.Parameters = point.Parameters;
        particle.Parameters.LiquidTaken = 0;
    }

    /// <summary>Moves a sample through a block; its log-likelihood, never above zero.</summary>
    public double Step(ref SampleParticle particle, in SampleBlock block)
    {
        var inputs = new ReducedInputs(block.AirTemperature, block.IsDrawing);
        inputs.Passing = block.Passed / block.Duration;
        _model.Advance(ref particle.State, in particle.Parameters, in inputs, block.Duration, block.Duration / StepsPerBlock);
        particle.State.Delivered += block.LiquidMoved;
        particle.Parameters.LiquidTaken += block.LiquidMoved;
        particle.Slow *= block.SlowKeeps;
        particle.Offset *= block.OffsetKeeps;
        double log = 0;
        if (block.GaugePrecision > 0)
        {
            _model.Evaluate(in particle.State, in particle.Parameters, in inputs, out ReducedOutput output);
            double innovation = block.Gauge - (output.SuctionPressure - _prior.Atmosphere) - particle.Bias - particle.Slow;
            log -= 0.5 * Math.Min(LargestSquare, innovation * innovation * block.GaugePrecision);
            particle.Bias += block.BiasGain * innovation;
            particle.Slow += block.SlowGain * innovation;
        }

        if (block.ScalePrecision > 0)
        {
            double innovation = block.Delivered - particle.State.Delivered - particle.Offset;
            log -= 0.5 * Math.Min(LargestSquare, innovation * innovation * block.ScalePrecision);
            particle.Offset += block.OffsetGain * innovation;
        }

        particle.LogLikelihood += log;
        return log;
    }
}
