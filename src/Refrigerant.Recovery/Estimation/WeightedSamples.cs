using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// Full information by weighted samples: each is one set of parameters, simulated from the start of the job and weighted by how well it explains
/// the whole log. Work comes in slices; fixed memory, nothing allocated after its making.
/// </summary>
/// <remarks>
/// Iterated batch importance sampling (Chopin, Biometrika 89, 539, 2002) with the likelihood to a power below one, because the model's errors
/// last (Grünwald and van Ommen, Bayesian Anal. 12, 1069, 2017). Where the weights amount to fewer than half the samples, they are resampled and moved
/// by differential evolution (ter Braak, Stat. Comput. 16, 239, 2006) over the whole log, beside those in use, which go on meanwhile.
/// A proposal's log-likelihood only falls along the log, so it ends where it can no longer be accepted.
/// </remarks>
internal sealed class WeightedSamples
{
    /// <summary>Number of samples.</summary>
    public const int Size = 300;

    private const int Moves = 6;
    private const double Temper = 0.2;
    private const double LeastEffective = 0.5 * Size;

    /// <summary>Share of moves that jump the full difference, from one mode to another.</summary>
    private const double FullJumps = 0.1;

    /// <summary>Share of moves that change some of the parameters only.</summary>
    private const double PartialMoves = 0.5;

    /// <summary>Noise of a move, of the prior's standard deviation.</summary>
    private const double Jitter = 0.02;

    private readonly EstimatorPrior _prior;
    private readonly double[] _proposal = new double[SamplePopulation.Varied.Length];
    private SamplePopulation _inUse;
    private SamplePopulation _moving;
    private RandomNumbers _random;
    private Stage _stage;
    private int _stepped;
    private int _sampleInUse;
    private int _sample;
    private int _move;
    private int _movedUpTo;
    private int _block;
    private double _threshold;
    private SampleParticle _trial;

    public WeightedSamples(ReducedModel model, EstimatorPrior prior, int seed)
    {
        _prior = prior;
        _random = new RandomNumbers(seed);
        Log = new SampleLog(prior);
        _inUse = new SamplePopulation(model, prior, Size);
        _moving = new SamplePopulation(model, prior, Size);
        for (int i = 0; i < Size; i++)
        {
            _inUse.Draw(i, ref _random);
        }
    }

    private enum Stage
    {
        Idle = 0,
        Proposing,
        Following,
        CatchingUp,
    }

    /// <summary>The log.</summary>
    public SampleLog Log { get; }

    /// <summary>The samples in use.</summary>
    public SamplePopulation InUse => _inUse;

    /// <summary>Whether slices of work wait.</summary>
    public bool HasWork => _stage != Stage.Idle || _stepped < Log.Count;

    /// <summary>Does some of the work that waits; returns the steps of the model that were done, at most about as many as allowed.</summary>
    public int Work(int steps)
    {
        int done = 0;
        while (done < steps && HasWork)
        {
            // Those in use come first: a new block moves all of them before anything else.
            done += _stepped < Log.Count ? StepInUse() : MoveOn(steps - done);
        }

        return done;
    }

    /// <summary>All of the samples in use through one block, some at a time.</summary>
    private int StepInUse()
    {
        const int Chunk = 25;
        int end = Math.Min(Size, _sampleInUse + Chunk);
        for (int i = _sampleInUse; i < end; i++)
        {
            ref SampleParticle particle = ref _inUse.Particles[i];
            particle.LogWeight += Temper * _inUse.Step(ref particle, in Log[_stepped]);
        }

        _sampleInUse = end;
        if (end == Size)
        {
            _sampleInUse = 0;
            _stepped++;
            Shift(_inUse);
            if (_stage == Stage.Idle && _inUse.Effective < LeastEffective)
            {
                Resample();
            }
        }

        return Chunk * SamplePopulation.StepsPerBlock;
    }

    /// <summary>Keeps the logarithms of the weights near zero.</summary>
    private static void Shift(SamplePopulation population)
    {
        double most = population.MostWeight();
        for (int i = 0; i < Size; i++)
        {
            population.Particles[i].LogWeight -= most;
        }
    }

    /// <summary>Systematic resampling into the population that will be moved.</summary>
    private void Resample()
    {
        int columns = SamplePopulation.Varied.Length;
        double sum = 0;
        for (int i = 0; i < Size; i++)
        {
            sum += Math.Exp(_inUse.Particles[i].LogWeight);
        }

        double step = sum / Size;
        double place = _random.Next() * step;
        double cumulated = Math.Exp(_inUse.Particles[0].LogWeight);
        int from = 0;
        for (int i = 0; i < Size; i++)
        {
            while (cumulated < place && from < Size - 1)
            {
                from++;
                cumulated += Math.Exp(_inUse.Particles[from].LogWeight);
            }

            _moving.Particles[i] = _inUse.Particles[from];
            _moving.Particles[i].LogWeight = 0;
            Array.Copy(_inUse.Parameters, from * columns, _moving.Parameters, i * columns, columns);
            place += step;
        }

        _movedUpTo = _stepped;
        _move = _sample = 0;
        _stage = Stage.Proposing;
    }

    private int MoveOn(int steps)
    {
        switch (_stage)
        {
            case Stage.Proposing:
                Propose();
                _stage = Stage.Following;
                return 1;
            case Stage.Following:
                return Follow(steps);
            default:
                return CatchUp();
        }
    }

    /// <summary>A differential-evolution proposal for the sample at hand, and the log-likelihood that it must not fall below.</summary>
    private void Propose()
    {
        int columns = SamplePopulation.Varied.Length;
        double[] parameters = _moving.Parameters;
        int at = _sample * columns;
        int a = _random.Below(Size) * columns;
        int b = _random.Below(Size) * columns;
        double length = _random.Next() < FullJumps ? 1 : (0.3 + (0.9 * _random.Next())) * 2.38 / Math.Sqrt(2 * columns);
        bool some = _random.Next() < PartialMoves;
        double factor = some ? 1.4 * length : length;
        for (int k = 0; k < columns; k++)
        {
            double difference = some && _random.Next() < 0.5 ? 0 : factor * (parameters[a + k] - parameters[b + k]);
            _proposal[k] = parameters[at + k] + difference + (Jitter * _prior.Sigma[SamplePopulation.Varied[k]] * _random.Normal());
        }

        double prior = _moving.LogPrior(parameters, at) - _moving.LogPrior(_proposal, 0);
        _threshold = _moving.Particles[_sample].LogLikelihood + ((prior + Math.Log(_random.Next())) / Temper);
        _moving.Start(_proposal, 0, out _trial);
        _block = 0;
    }

    /// <summary>The proposal through the log.</summary>
    private int Follow(int steps)
    {
        int done = 0;
        while (_block < _movedUpTo && _trial.LogLikelihood >= _threshold && done < steps)
        {
            _moving.Step(ref _trial, in Log[_block]);
            _block++;
            done += SamplePopulation.StepsPerBlock;
        }

        bool rejected = !(_trial.LogLikelihood >= _threshold);
        if (!rejected && _block < _movedUpTo)
        {
            return done;
        }

        if (!rejected)
        {
            _moving.Particles[_sample] = _trial;
            Array.Copy(_proposal, 0, _moving.Parameters, _sample * _proposal.Length, _proposal.Length);
        }

        NextSample();
        return done + 1;
    }

    private void NextSample()
    {
        _stage = Stage.Proposing;
        _sample++;
        if (_sample == Size)
        {
            _sample = 0;
            _move++;
            if (_move == Moves)
            {
                _stage = Stage.CatchingUp;
            }
        }
    }

    /// <summary>The moved samples through the blocks that came meanwhile; then they are those in use.</summary>
    private int CatchUp()
    {
        if (_movedUpTo < _stepped)
        {
            ref SampleParticle particle = ref _moving.Particles[_sample];
            particle.LogWeight += Temper * _moving.Step(ref particle, in Log[_movedUpTo]);
            _sample++;
            if (_sample == Size)
            {
                _sample = 0;
                _movedUpTo++;
            }

            return SamplePopulation.StepsPerBlock;
        }

        (_inUse, _moving) = (_moving, _inUse);
        Shift(_inUse);
        _stage = Stage.Idle;
        if (_inUse.Effective < LeastEffective)
        {
            Resample();
        }

        return 1;
    }
}
