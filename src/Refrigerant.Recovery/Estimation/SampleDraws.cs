using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What the weighted samples say of the charge, and points of them that forecasts start from.</summary>
internal sealed class SampleDraws
{
    /// <summary>Number of forecasts.</summary>
    public const int Points = 32;

    /// <summary>What a sample leaves out: share of the charge, and of the vapor.</summary>
    private const double LeftOut = 0.007;

    private const double VaporUnsure = 0.35;

    /// <summary>How far a forecast's time is off: as a share, and in seconds.</summary>
    private const double TimeShare = 0.1;

    private const double TimeSeconds = 5;

    /// <summary>Middles of five equal parts of a standard normal distribution, but wider at the ends.</summary>
    private static readonly double[] Fifths = [-1.4, 0.53, 0, -0.53, 1.4];

    private readonly WeightedSamples _samples;
    private readonly ReducedModel _model;
    private readonly bool _isOilTold;
    private RandomNumbers _random;

    public SampleDraws(WeightedSamples samples, ReducedModel model, bool isOilTold, int seed)
    {
        _isOilTold = isOilTold;
        _samples = samples;
        _model = model;
        _random = new RandomNumbers(seed);
    }

    /// <summary>Adds what is left and what the charge was.</summary>
    public void Charge(double share, in ReducedInputs inputs, WeightedValues left, WeightedValues charge)
    {
        SampleParticle[] particles = _samples.InUse.Particles;
        double sum = Sum(particles);
        for (int i = 0; i < particles.Length; i++)
        {
            double weight = share * Math.Exp(particles[i].LogWeight) / sum;
            ReducedState state = Now(in particles[i], in inputs);
            ref ReducedParameters parameters = ref particles[i].Parameters;
            _model.Evaluate(in state, in parameters, in inputs, out ReducedOutput output);
            double delivered = state.Delivered;
            double whole = LeftOut * parameters.Charge;
            double vapor = VaporUnsure * (output.Mass - output.LiquidMass);
            double sigma = Math.Sqrt((whole * whole) + (vapor * vapor));
            if (!output.IsDry)
            {
                // The offset found on the scale is partly the scale's and partly what the model moved too little or too much.
                double flow = SampleLog.FlowVariance(delivered);
                delivered += particles[i].Offset * flow / (flow + _samples.Log.ScaleVariance);
            }

            // Nothing was told of oil: in every other draw there is none, and what it would hold is not there.
            double hidden = _isOilTold || !output.IsDry ? 0 : (i & 1) * state.Dissolved;
            double rest = Math.Max(0, parameters.Charge - delivered - hidden + (Fifths[i % Fifths.Length] * sigma));
            left.Add(rest, weight);
            charge.Add(rest + delivered, weight);
        }
    }

    /// <summary>Adds a parameter that is a logarithm among the states.</summary>
    public void Quantity(int index, double share, WeightedValues to)
    {
        SampleParticle[] particles = _samples.InUse.Particles;
        double sum = Sum(particles);
        int column = Array.IndexOf(SamplePopulation.Varied, index);
        for (int i = 0; i < particles.Length; i++)
        {
            double value = Math.Exp(_samples.InUse.Parameters[(i * SamplePopulation.Varied.Length) + column]);
            to.Add(value, share * Math.Exp(particles[i].LogWeight) / sum);
        }
    }

    /// <summary>Probability that no liquid is left.</summary>
    public double VaporOnly(in ReducedInputs inputs)
    {
        SampleParticle[] particles = _samples.InUse.Particles;
        double dry = 0;
        double sum = 0;
        for (int i = 0; i < particles.Length; i++)
        {
            double weight = Math.Exp(particles[i].LogWeight);
            _model.Evaluate(in particles[i].State, in particles[i].Parameters, in inputs, out ReducedOutput output);
            dry += output.IsDry ? weight : 0;
            sum += weight;
        }

        return dry / sum;
    }

    /// <summary>Adds points that forecasts start from, drawn systematically.</summary>
    public void StartFrom(double share, in ReducedInputs inputs, ForecastBatch batch)
    {
        SampleParticle[] particles = _samples.InUse.Particles;
        double step = Sum(particles) / Points;
        double place = _random.Next() * step;
        double cumulated = 0;
        int drawn = 0;
        for (int i = 0; i < particles.Length && drawn < Points; i++)
        {
            cumulated += Math.Exp(particles[i].LogWeight);
            while (drawn < Points && cumulated >= place)
            {
                SigmaPoint point = default;
                point.State = Now(in particles[i], in inputs);
                point.Parameters = particles[i].Parameters;
                batch.Add(in point, share / Points, Fifths[drawn % Fifths.Length], TimeShare, ForecastBatch.Limit, TimeSeconds);
                place += step;
                drawn++;
            }
        }
    }

    private static double Sum(SampleParticle[] particles)
    {
        double sum = 0;
        for (int i = 0; i < particles.Length; i++)
        {
            sum += Math.Exp(particles[i].LogWeight);
        }

        return sum;
    }

    /// <summary>A sample's state moved from the end of the last block to now.</summary>
    private ReducedState Now(in SampleParticle particle, in ReducedInputs inputs)
    {
        ReducedState state = particle.State;
        double open = _samples.Log.Open;
        if (open > 0)
        {
            _model.Advance(ref state, in particle.Parameters, in inputs, open, 0.5 * open);
        }

        return state;
    }
}
