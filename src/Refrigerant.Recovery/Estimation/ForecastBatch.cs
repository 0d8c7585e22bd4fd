using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>Forecasts from a number of points of the estimate, in slices; the last whole batch is what is read. Fixed memory.</summary>
internal sealed class ForecastBatch
{
    /// <summary>Forecasts look this far ahead, s.</summary>
    public const double Limit = 4 * 3600;

    /// <summary>Coarser than a single forecast: many of them share their errors' signs not.</summary>
    private const double StepShare = 0.12;

    private const double LongestStep = 60;

    private readonly ReducedModel _model;
    private readonly double _level;
    private readonly ForecastPoint[] _points;
    private int _count;
    private int _next;
    private double _airTemperature;
    private double _startedAt;
    private double _startGross;
    private double _drawn;

    public ForecastBatch(ReducedModel model, double level, int capacity)
    {
        _model = model;
        _level = level;
        _points = new ForecastPoint[capacity];
        Times = new WeightedValues(capacity);
        More = new WeightedValues(capacity);
    }

    /// <summary>Times to the level, s; where it is not reached, the limit.</summary>
    public WeightedValues Times { get; }

    /// <summary>Refrigerant that comes until the level is reached, kg.</summary>
    public WeightedValues More { get; }

    /// <summary>Probability that the level is reached.</summary>
    public double Reached { get; private set; }

    /// <summary>Time at which the last whole batch began, s; not a number before the first.</summary>
    public double ReadyAt { get; private set; } = double.NaN;

    /// <summary>Weight on the scale when the last whole batch began, kg.</summary>
    public double Gross { get; private set; }

    /// <summary>Another cylinder stands on the scale: weights are so many kg more from here on.</summary>
    public void Shift(double kilograms)
    {
        _startGross += kilograms;
        Gross += kilograms;
    }

    /// <summary>s that the machine has drawn since.</summary>
    public double Drawn { get; private set; }

    /// <summary>Whether a batch is under way.</summary>
    public bool IsBusy => _next < _count;

    /// <summary>Begins a batch.</summary>
    public void Begin(double time, double airTemperature, double gross)
    {
        _startGross = gross;
        _drawn = 0;
        _count = _next = 0;
        _startedAt = time;
        _airTemperature = airTemperature;
    }

    /// <summary>Time that the machine has drawn.</summary>
    public void Pass(double seconds)
    {
        _drawn += seconds;
        Drawn += seconds;
    }

    /// <summary>Adds a point to start from.</summary>
    /// <param name="point">State and parameters.</param>
    /// <param name="weight">Weight.</param>
    /// <param name="z">Place of the point in the spread of what the forecast itself leaves out, standard normal.</param>
    /// <param name="relative">Standard deviation of that, as a share of the time.</param>
    /// <param name="longest">Time up to which that share grows, s.</param>
    /// <param name="seconds">Standard deviation that does not depend on the time, s.</param>
    public void Add(in SigmaPoint point, double weight, double z, double relative, double longest, double seconds)
    {
        if (_count == _points.Length || !(weight > 0))
        {
            return;
        }

        ref ForecastPoint to = ref _points[_count];
        to.Run = new ForecastRun(in point.State, in point.Parameters, StepShare, LongestStep);
        to.Delivered = point.State.Delivered;
        to.Weight = weight;
        to.Z = z;
        to.Relative = relative;
        to.Longest = longest;
        to.Seconds = seconds;
        _count++;
    }

    /// <summary>Does some of the work; returns the steps of the model that were done.</summary>
    public int Work(int steps)
    {
        int left = steps;
        while (IsBusy && left > 0)
        {
            if (_points[_next].Run.Run(_model, _airTemperature, _level, Limit, ref left))
            {
                _next++;
                if (_next == _count)
                {
                    Publish();
                }
            }
        }

        return steps - left;
    }

    private void Publish()
    {
        Times.Clear();
        More.Clear();
        double reached = 0;
        double all = 0;
        for (int i = 0; i < _count; i++)
        {
            ref ForecastPoint point = ref _points[i];
            double time = point.Run.Time;
            double more = Math.Max(0, point.Run.State.Delivered - point.Delivered);
            if (!Require.IsFinite(more))
            {
                continue;
            }

            if (point.Run.IsReached)
            {
                double spread = point.Relative * Math.Min(time, point.Longest);
                time = Math.Max(0, time + (point.Z * Math.Sqrt((spread * spread) + (point.Seconds * point.Seconds))));
                reached += point.Weight;
            }

            all += point.Weight;
            Times.Add(Math.Min(Limit, time), point.Weight);
            More.Add(more, point.Weight);
        }

        Reached = all > 0 ? reached / all : 0;
        ReadyAt = _startedAt;
        Gross = _startGross;
        Drawn = _drawn;
    }
}
