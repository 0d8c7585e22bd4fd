using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What the change-point filter says of the charge, and points of it that forecasts start from. Fixed memory.</summary>
internal sealed class FilterDraws
{
    /// <summary>Points of the wet filter, and of each dry one.</summary>
    public const int WetPoints = 10;

    public const int DryPoints = 2;

    private const int N = StateIndex.Count;
    private const int Stride = FilterWorkspace.Stride;
    private const int WetQuantiles = 20;

    /// <summary>Step through the ten values, prime to their number.</summary>
    private const int Dealing = 3;

    /// <summary>ln of the charge above its mean that a sample has at most.</summary>
    private const double LargestStep = 2.5;

    /// <summary>Components of a smaller probability are left out.</summary>
    private const double Negligible = 1e-3;

    /// <summary>What lies beside the vapor when no liquid is thought to be left: share of the charge, and of what is left.</summary>
    private const double LeftOut = 0.007;

    private const double LeftUnsure = 0.35;

    /// <summary>How far a dry forecast's time is off: as a share up to an hour, and in seconds.</summary>
    private const double DryTimeShare = 0.3;

    private const double DryTimeLongest = 3600;
    private const double DryTimeSeconds = 4;

    /// <summary>Middles of ten equal parts of a standard normal distribution.</summary>
    private static readonly double[] Tenths = [-1.6449, -1.0364, -0.6745, -0.3853, -0.1257, 0.1257, 0.3853, 0.6745, 1.0364, 1.6449];

    private readonly ChangePointFilter _filter;
    private readonly EstimatorPrior _prior;
    private readonly ReducedModel _model;
    private readonly double[] _normal = new double[Stride];
    private readonly double[] _slope = new double[Stride];
    private readonly double[] _regression = new double[N];
    private readonly double[] _states = new double[N];
    private readonly double[] _values = new double[N];
    private RandomNumbers _random;

    public FilterDraws(ChangePointFilter filter, ReducedModel model, EstimatorPrior prior, int seed)
    {
        _filter = filter;
        _model = model;
        _prior = prior;
        _random = new RandomNumbers(seed);
    }

    /// <summary>Adds what is left and what the charge was.</summary>
    public void Charge(double share, WeightedValues left, WeightedValues charge)
    {
        double wet = _filter.WetProbability;
        if (wet > Negligible)
        {
            _filter.ChargeOf(out double location, out double scale, out double least);
            double spread = _filter.LeastSpread();
            double delivered = _filter.Wet.X[StateIndex.Delivered];
            for (int i = 0; i < WetQuantiles; i++)
            {
                // With how little liquid can still be left is not certain either: its values are dealt out over the quantiles.
                double z = Tenths[i * Dealing % Tenths.Length];
                double below = StudentT.Below((least + (z * spread) - location) / scale);
                double mass = Math.Exp(Quantile(location, scale, below, (i + 0.5) / WetQuantiles));
                left.Add(Math.Max(0, mass - delivered), share * wet / WetQuantiles);
                charge.Add(Math.Max(mass, delivered), share * wet / WetQuantiles);
            }
        }

        for (int slot = 0; slot < ChangePointFilter.Slots; slot++)
        {
            double weight = _filter.DryProbability(slot);
            if (weight > Negligible && _filter.Dry(slot) is SquareRootFilter dry)
            {
                double mass = Math.Exp(dry.X[StateIndex.Charge]);
                double delivered = dry.X[StateIndex.Delivered];
                double rest = Math.Max(0, mass - delivered);
                double sigma = DrySigma(dry, mass, rest);

                // Nothing was told of oil: in every other draw there is none, and what it would hold is not there.
                double hidden = _prior.IsOilTold ? 0 : Math.Exp(dry.X[StateIndex.Dissolved]);
                for (int i = 0; i < Tenths.Length; i++)
                {
                    double value = Math.Max(0, rest + (Tenths[i] * sigma) - ((i & 1) * hidden));
                    left.Add(value, share * weight / Tenths.Length);
                    charge.Add(value + delivered, share * weight / Tenths.Length);
                }
            }
        }
    }

    /// <summary>Adds a state that is the logarithm of a quantity.</summary>
    public void Quantity(int index, double share, WeightedValues to)
    {
        for (int slot = -1; slot < ChangePointFilter.Slots; slot++)
        {
            double weight = slot < 0 ? _filter.WetProbability : _filter.DryProbability(slot);
            SquareRootFilter? filter = slot < 0 ? _filter.Wet : _filter.Dry(slot);
            if (weight > Negligible && filter is not null)
            {
                double sigma = Math.Sqrt(filter.Variance(index));
                foreach (double z in Tenths)
                {
                    to.Add(Math.Exp(filter.X[index] + (z * sigma)), share * weight / Tenths.Length);
                }
            }
        }
    }

    /// <summary>Adds points that forecasts start from.</summary>
    public void Points(double share, ForecastBatch batch)
    {
        double wet = _filter.WetProbability;
        if (wet > Negligible)
        {
            WetPointsOf(share * wet, batch);
        }

        for (int slot = 0; slot < ChangePointFilter.Slots; slot++)
        {
            double weight = _filter.DryProbability(slot);
            if (weight > 0.02 && _filter.Dry(slot) is SquareRootFilter dry)
            {
                for (int i = 0; i < DryPoints; i++)
                {
                    Array.Copy(dry.X, _states, N);
                    Spread(dry, null, 1);
                    batch.Add(Point(), share * weight / DryPoints, _random.Normal(), DryTimeShare, DryTimeLongest, DryTimeSeconds);
                }
            }
        }
    }

    private static double Quantile(double location, double scale, double below, double part)
    {
        double t = StudentT.Quantile(below + ((1 - below) * part));
        return location + Math.Min(LargestStep, scale * t);
    }

    private double DrySigma(SquareRootFilter dry, double mass, double rest)
    {
        Array.Clear(_slope, 0, Stride);
        VectorRows.Add(_slope, 0, mass, dry.L, StateIndex.Charge * Stride, Stride);
        VectorRows.Add(_slope, 0, -1, dry.L, StateIndex.Delivered * Stride, Stride);
        double variance = VectorRows.Dot(_slope, 0, _slope, 0, Stride);
        return Math.Sqrt(variance + (LeftOut * mass * LeftOut * mass) + (LeftUnsure * rest * LeftUnsure * rest));
    }

    /// <summary>
    /// Points whose charge takes the quantiles of what the wet filter says of it, the other parameters as they go with it: by regression, within one
    /// standard deviation, and spread by what regression leaves.
    /// </summary>
    private void WetPointsOf(double weight, ForecastBatch batch)
    {
        SquareRootFilter wet = _filter.Wet;
        _filter.ChargeOf(out double location, out double scale, out double least);
        double below = StudentT.Below((least - location) / scale);
        for (int i = 0; i < N; i++)
        {
            _regression[i] = VectorRows.Dot(wet.L, i * Stride, wet.L, StateIndex.Charge * Stride, Stride) / (scale * scale);
        }

        for (int i = 0; i < WetPoints; i++)
        {
            double charge = Quantile(location, scale, below, (i + 0.5) / WetPoints);
            double off = charge - location;
            double moved = Math.Max(-scale, Math.Min(scale, off));
            for (int k = 0; k < N; k++)
            {
                bool asIs = k is StateIndex.Temperature or StateIndex.MetalTemperature or StateIndex.WetTemperature or StateIndex.Delivered or StateIndex.GaugeDrift;
                _states[k] = wet.X[k] + (asIs ? 0 : _regression[k] * moved);
            }

            _states[StateIndex.Charge] = charge;
            Spread(wet, _regression, 1);
            _states[StateIndex.Charge] = charge;
            batch.Add(Point(), weight / WetPoints, 0, 0, 0, 0);
        }
    }

    /// <summary>Adds a draw from the covariance; given the regression on the charge, what that leaves.</summary>
    private void Spread(SquareRootFilter filter, double[]? regression, double factor)
    {
        for (int j = 0; j < N; j++)
        {
            _normal[j] = factor * _random.Normal();
        }

        double charge = VectorRows.Dot(filter.L, StateIndex.Charge * Stride, _normal, 0, Stride);
        for (int i = 0; i < N; i++)
        {
            double along = VectorRows.Dot(filter.L, i * Stride, _normal, 0, Stride);
            _states[i] += along - (regression is null ? 0 : regression[i] * charge);
        }
    }

    private SigmaPoint Point()
    {
        for (int i = 0; i < N; i++)
        {
            _values[i] = StateIndex.IsLogarithm(i) ? Math.Exp(_states[i]) : 0;
        }

        return SigmaPoint.From(_states, _values, _prior.Typical, _model.Table);
    }
}
