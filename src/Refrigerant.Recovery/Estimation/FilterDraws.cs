using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What the change-point filter says of the charge, and points of it that forecasts start from. Fixed memory.</summary>
internal sealed class FilterDraws
{
    /// <summary>Points of the wet filter, and of all dry ones together.</summary>
    public const int WetPoints = 10;

    public const int DryPoints = 8;

    private const int N = StateIndex.Count;
    private const int Stride = FilterWorkspace.Stride;
    private const int WetQuantiles = 20;

    /// <summary>Step through the parts of the dry points, prime to their number.</summary>
    private const int DryDealing = 3;

    /// <summary>Step through the ten values, prime to their number.</summary>
    private const int Dealing = 3;

    /// <summary>ln of the charge above its mean that a sample has at most.</summary>
    private const double LargestStep = 2.5;

    /// <summary>Components of a smaller probability are left out.</summary>
    private const double Negligible = 1e-3;

    /// <summary>The same where forecasts are made.</summary>
    private const double LeastForecast = 0.02;

    /// <summary>What lies beside the vapor when no liquid is thought to be left: share of the charge, and of what is left.</summary>
    private const double LeftOut = 0.007;

    private const double LeftUnsure = 0.35;

    /// <summary>How far a dry forecast's time is off: as a share up to an hour, and in seconds.</summary>
    private const double DryTimeShare = 0.3;

    private const double DryTimeLongest = 3600;
    private const double DryTimeSeconds = 4;

    /// <summary>Middles of ten equal parts of a standard normal distribution.</summary>
    private static readonly double[] Tenths = [-1.6449, -1.0364, -0.6745, -0.3853, -0.1257, 0.1257, 0.3853, 0.6745, 1.0364, 1.6449];

    /// <summary>Middles of eight.</summary>
    private static readonly double[] Eighths = [-1.5341, -0.8871, -0.4888, -0.1573, 0.1573, 0.4888, 0.8871, 1.5341];

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
        if (wet > LeastForecast)
        {
            WetPointsOf(share * wet, batch);
        }

        if (wet < 1 - LeastForecast)
        {
            DryPointsOf(share * (1 - wet), batch);
        }
    }

    /// <summary>
    /// Points of the dry filters, as many of each as its probability has it. When the level comes is above all a matter of how far the pressure is from it now: that direction of the distribution is dealt
    /// out in equal parts over all of them, the others are drawn.
    /// </summary>
    private void DryPointsOf(double weight, ForecastBatch batch)
    {
        double all = 1 - _filter.WetProbability;
        double cumulated = 0;
        int point = 0;
        for (int slot = 0; slot < ChangePointFilter.Slots; slot++)
        {
            cumulated += _filter.DryProbability(slot) / all;
            double along = double.NaN;
            for (; point < DryPoints && (point + 0.5) / DryPoints <= cumulated && _filter.Dry(slot) is SquareRootFilter dry; point++)
            {
                along = double.IsNaN(along) ? AlongPressure(dry) : along;
                int part = point * DryDealing % DryPoints;
                Array.Copy(dry.X, _states, N);
                Spread(dry, along, Eighths[part]);
                ByLogarithm(dry);
                batch.Add(Point(), weight / DryPoints, Eighths[((part * DryDealing) + 3) % DryPoints], DryTimeShare, DryTimeLongest, DryTimeSeconds);
            }
        }
    }

    /// <summary>The direction, among the columns of a dry filter's root, in which ln of the pressure grows, into the slopes; its squared length.</summary>
    private double AlongPressure(SquareRootFilter dry)
    {
        double charge = Math.Exp(dry.X[StateIndex.Charge]);
        double dissolved = Math.Exp(dry.X[StateIndex.Dissolved]);
        double mass = VaporLeft.Of(charge, dry.X[StateIndex.Delivered], dissolved);
        Array.Clear(_slope, 0, Stride);
        VectorRows.Add(_slope, 0, charge / mass, dry.L, StateIndex.Charge * Stride, Stride);
        VectorRows.Add(_slope, 0, -1 / mass, dry.L, StateIndex.Delivered * Stride, Stride);
        VectorRows.Add(_slope, 0, -dissolved / mass, dry.L, StateIndex.Dissolved * Stride, Stride);
        VectorRows.Add(_slope, 0, -1, dry.L, StateIndex.Volume * Stride, Stride);
        VectorRows.Add(_slope, 0, 1 / dry.X[StateIndex.Temperature], dry.L, StateIndex.Temperature * Stride, Stride);
        return VectorRows.Dot(_slope, 0, _slope, 0, Stride);
    }

    /// <summary>ln of the charge above which a share of its distribution beyond a bound lies.</summary>
    public static double Quantile(double location, double scale, double below, double part)
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
            Spread(wet, _regression);
            _states[StateIndex.Charge] = charge;
            batch.Add(Point(), weight / WetPoints, 0, 0, 0, 0);
        }
    }

    /// <summary>Adds a draw from the covariance; given the regression on the charge, what that leaves.</summary>
    private void Spread(SquareRootFilter filter, double[] regression)
    {
        Draw();
        double charge = VectorRows.Dot(filter.L, StateIndex.Charge * Stride, _normal, 0, Stride);
        for (int i = 0; i < N; i++)
        {
            _states[i] += VectorRows.Dot(filter.L, i * Stride, _normal, 0, Stride) - (regression[i] * charge);
        }
    }

    /// <summary>Adds a draw from the covariance whose part along the slopes is given, in standard deviations.</summary>
    private void Spread(SquareRootFilter filter, double along, double z)
    {
        Draw();
        if (along > 0)
        {
            double drawn = VectorRows.Dot(_slope, 0, _normal, 0, Stride);
            VectorRows.Add(_normal, 0, ((z * Math.Sqrt(along)) - drawn) / along, _slope, 0, Stride);
        }

        for (int i = 0; i < N; i++)
        {
            _states[i] += VectorRows.Dot(filter.L, i * Stride, _normal, 0, Stride);
        }
    }

    /// <summary>What is left of a draw from a dry filter by its logarithm, as the filter has it.</summary>
    private void ByLogarithm(SquareRootFilter dry)
    {
        double charge = Math.Exp(dry.X[StateIndex.Charge]);
        double dissolved = Math.Exp(dry.X[StateIndex.Dissolved]);
        double mass = VaporLeft.Of(charge, dry.X[StateIndex.Delivered], dissolved);
        double more = (charge * (_states[StateIndex.Charge] - dry.X[StateIndex.Charge])) - (_states[StateIndex.Delivered] - dry.X[StateIndex.Delivered])
            - (dissolved * (_states[StateIndex.Dissolved] - dry.X[StateIndex.Dissolved]));
        _states[StateIndex.Charge] = Math.Log(Math.Max(1e-9, _states[StateIndex.Delivered] + Math.Exp(_states[StateIndex.Dissolved]) + (mass * VaporLeft.Factor(more / mass))));
    }

    private void Draw()
    {
        for (int j = 0; j < N; j++)
        {
            _normal[j] = _random.Normal();
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
