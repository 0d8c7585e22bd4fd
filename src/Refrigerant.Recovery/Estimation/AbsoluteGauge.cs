using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// Whether a gauge shows absolute pressure. The pressure at the start is held against saturation at the temperature told, and what the scale gains against what the machine draws at the
/// pressure that the gauge would then show: an atmosphere too much is little at the start and half of it near the level. Fixed memory.
/// </summary>
/// <remarks>
/// Both explanations have a machine whose displacement is known so and so well; the evidence is how much better one fits, as a difference of log-likelihoods, each
/// ln(gained/drawn) of a window with a standard deviation for the scale's noise and drift and for the model of the machine.
/// </remarks>
internal sealed class AbsoluteGauge
{
    /// <summary>kg that a window gains at least, and s that it lasts at least and at most.</summary>
    private const double LeastGained = 0.12;

    private const double Shortest = 20;
    private const double Longest = 300;

    /// <summary>Standard deviation of a scale's reading, kg, and of the machine's model, as a share of the flow.</summary>
    private const double ScaleNoise = 0.012;

    private const double ModelNoise = 0.05;

    /// <summary>Standard deviation of ln of the displacement: a weak machine is one of its tails.</summary>
    private const double Displacement = 0.25;

    /// <summary>Blocks at the start that are held against saturation, K that the refrigerant may be off what is told besides its tolerance, and share of the hose's drop that is known.</summary>
    private const int FirstBlocks = 10;

    private const double Kelvins = 1.5;
    private const double HoseKnown = 0.5;

    /// <summary>Degrees of freedom of the error of the temperature told: what is told can be wrong.</summary>
    private const double Freedom = 4;

    /// <summary>Sums kept of windows, in single precision, two by two where there are more; what a machine that became weak costs as an explanation.</summary>
    private const int Kept = 20;

    private const double ChangeCosts = 3;

    /// <summary>Windows, evidence and squares a window from which it is said.</summary>
    private const int LeastWindows = 4;

    private const double Evident = 1.3;
    private const double MostSquares = 1.6;

    private readonly ReducedModel _model;
    private readonly EstimatorPrior _prior;
    private readonly ToldMachine _machine;
    private readonly double _least;
    private readonly double[] _flow = new double[2];
    private readonly double[] _drawn = new double[2];
    private readonly double[] _sum = new double[2];
    private readonly double[] _squares = new double[2];
    private readonly float[] _precisions = new float[Kept];
    private readonly float[] _sums = new float[Kept];
    private readonly float[] _squaresOf = new float[Kept];
    private double _precision;
    private int _kept;
    private double _startGauge;
    private int _first;
    private double _since = double.NaN;
    private double _from;
    private bool _isRefuted;

    public AbsoluteGauge(ReducedModel model, EstimatorPrior prior, ToldMachine machine, Instruments instruments)
    {
        _machine = machine;
        _model = model;
        _prior = prior;
        _least = -instruments.SuctionGauge.ErrorLimitPascals;
    }

    /// <summary>Whether the gauge shows absolute pressure.</summary>
    public bool IsAbsolute { get; private set; }

    /// <summary>Difference of the log-likelihoods of the start, and number of windows.</summary>
    public double Start { get; private set; }

    public int Windows { get; private set; }

    /// <summary>Difference of the log-likelihoods, and mean square of what absolute pressure leaves unexplained.</summary>
    public double Evidence => Start + (0.5 * (Math.Min(Squares(0), Changed() + (2 * ChangeCosts)) - Squares(1)));

    public double Unexplained => Squares(1) / Math.Max(1, Windows);

    /// <summary>Takes in a block, before anything is taken out of it.</summary>
    public void Update(in EstimatorBlock block)
    {
        if (_isRefuted)
        {
            return;
        }

        if (block.Gauge < _least)
        {
            // No absolute pressure is below zero.
            _isRefuted = true;
            IsAbsolute = false;
            return;
        }

        bool isRead = Require.IsFinite(block.Gauge);
        if (isRead && _first < FirstBlocks)
        {
            AtStart(in block);
        }

        if (!block.IsDrawing || block.LiquidMoved != 0 || block.IsByItself || block.Duration > Shortest)
        {
            _since = double.NaN;
            return;
        }

        if (isRead)
        {
            _flow[0] = _machine.Flow(block.Gauge + _prior.Atmosphere, block.AirTemperature);
            _flow[1] = _machine.Flow(block.Gauge, block.AirTemperature);
        }

        Draw(in block);
    }

    private double Squares(int k) => Left(_precision, _sum[k], _squares[k]);

    /// <summary>Sum of squares, weighted by their precision, that no displacement explains.</summary>
    private static double Left(double precision, double sum, double squares) => squares - (sum * sum / (precision + (1 / (Displacement * Displacement))));

    /// <summary>The same of gauge pressure and a machine that changed at the time that suits it best.</summary>
    private double Changed()
    {
        double least = Squares(0);
        double precision = 0;
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < _kept - 1; i++)
        {
            precision += _precisions[i];
            sum += _sums[i];
            squares += _squaresOf[i];
            least = Math.Min(least, Left(precision, sum, squares) + Left(_precision - precision, _sum[0] - sum, _squares[0] - squares));
        }

        return least;
    }

    private void Keep(double precision, double off)
    {
        if (_kept == Kept)
        {
            _kept = Kept / 2;
            for (int i = 0; i < _kept; i++)
            {
                _precisions[i] = _precisions[2 * i] + _precisions[(2 * i) + 1];
                _sums[i] = _sums[2 * i] + _sums[(2 * i) + 1];
                _squaresOf[i] = _squaresOf[2 * i] + _squaresOf[(2 * i) + 1];
            }
        }

        _precisions[_kept] = (float)precision;
        _sums[_kept] = (float)(precision * off);
        _squaresOf[_kept] = (float)(precision * off * off);
        _kept++;
    }

    private void AtStart(in EstimatorBlock block)
    {
        _startGauge += block.Gauge / FirstBlocks;
        _first++;
        if (_first < FirstBlocks)
        {
            return;
        }

        double temperature = _prior.Mean[StateIndex.Temperature];
        _model.Table.At(temperature, out SaturationValues at);
        var state = new ReducedState { Temperature = temperature, MetalTemperature = temperature, WetTemperature = temperature };
        var inputs = new ReducedInputs(block.AirTemperature, block.IsDrawing, AssumedPhase.LiquidPresent);
        ReducedParameters told = _prior.Typical;
        _model.Evaluate(in state, in told, in inputs, out ReducedOutput output);
        double kelvins = Math.Sqrt((Kelvins * Kelvins) + (_prior.Sigma[StateIndex.Temperature] * _prior.Sigma[StateIndex.Temperature]));
        double byTemperature = at.Pressure * at.PressureSlope * kelvins;
        double byHose = HoseKnown * (output.Pressure - output.SuctionPressure);
        double variance = (byTemperature * byTemperature) + (byHose * byHose) + _prior.ModelNoise + (_prior.Sigma[StateIndex.GaugeBias] * _prior.Sigma[StateIndex.GaugeBias]);
        double absolute = _startGauge - output.SuctionPressure;
        double gauge = absolute + _prior.Atmosphere;
        Start = 0.5 * (Freedom + 1) * (Math.Log(1 + (gauge * gauge / (Freedom * variance))) - Math.Log(1 + (absolute * absolute / (Freedom * variance))));
    }

    private void Draw(in EstimatorBlock block)
    {
        _drawn[0] += block.Duration * _flow[0];
        _drawn[1] += block.Duration * _flow[1];
        if (!Require.IsFinite(block.Delivered))
        {
            return;
        }

        if (double.IsNaN(_since))
        {
            Begin(in block);
            return;
        }

        double elapsed = block.Time - _since;
        double gained = block.Delivered - _from;
        if (elapsed < Shortest || !(gained > LeastGained || elapsed > Longest))
        {
            return;
        }

        double drift = 2 * _prior.ScaleDrift * _prior.ScaleDrift * elapsed / _prior.ScaleTime;
        double noise = Math.Sqrt((2 * ScaleNoise * ScaleNoise) + drift) / Math.Max(gained, LeastGained);
        double precision = 1 / ((noise * noise) + (ModelNoise * ModelNoise));
        _precision += precision;
        for (int k = 0; k < 2; k++)
        {
            double off = Math.Log(Math.Max(0.02, gained) / Math.Max(1e-3, _drawn[k]));
            _sum[k] += precision * off;
            _squares[k] += precision * off * off;
            if (k == 0)
            {
                Keep(precision, off);
            }
        }

        Windows++;
        IsAbsolute |= Windows >= LeastWindows && Evidence > Evident && Unexplained < MostSquares;
        Begin(in block);
    }

    private void Begin(in EstimatorBlock block)
    {
        _since = block.Time;
        _from = block.Delivered;
        _drawn[0] = _drawn[1] = 0;
    }
}
