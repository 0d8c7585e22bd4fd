using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>The bubble and dew curves of a bulk composition, traced from a cold start to just below the critical point.</summary>
internal sealed class BlendCurves
{
    /// <summary>Distances 1 − T/Tc at which the curves may end: the first that both curves reach.</summary>
    private static readonly double[] EndDistances = [0.001, 0.002, 0.003, 0.005, 0.0075, 0.01, 0.015, 0.02, 0.03];

    private BlendCurves(BoundaryCurve bubble, BoundaryCurve dew, double twoPhaseLimit)
    {
        Bubble = bubble;
        Dew = dew;
        TwoPhaseLimit = twoPhaseLimit;
        Saturation = new BlendSaturation(bubble, dew);
    }

    public BoundaryCurve Bubble { get; }

    public BoundaryCurve Dew { get; }

    /// <summary>Both curves for looking up.</summary>
    public BlendSaturation Saturation { get; }

    public double MinimumTemperature => Bubble.MinimumTemperature;

    public double MaximumTemperature => Bubble.MaximumTemperature;

    /// <summary>Lowest pressure of both curves, Pa.</summary>
    public double MinimumPressure => Math.Max(Bubble.MinimumPressure, Dew.MinimumPressure);

    /// <summary>Highest pressure at which both curves have one temperature each, Pa.</summary>
    public double MaximumPressure => Math.Min(Bubble.MaximumPressure, Dew.MaximumPressure);

    /// <summary>A temperature above which there are no two phases: just above the highest of the dew curve, K.</summary>
    public double TwoPhaseLimit { get; }

    /// <summary>Traces both curves.</summary>
    /// <exception cref="ConvergenceException">No curve was found up to 0.97 of the critical temperature.</exception>
    public static BlendCurves Trace(MixtureEquation equation, double[] composition, double molarMass, double minimumTemperature, double criticalTemperature)
    {
        var bubble = new BoundaryTrace(equation, composition, true, criticalTemperature, molarMass);
        var dew = new BoundaryTrace(equation, composition, false, criticalTemperature, molarMass);
        double cold = dew.FirstLiquidFrom(Math.Max(bubble.ColdEnd(minimumTemperature), dew.ColdEnd(minimumTemperature)));
        foreach (double distance in EndDistances)
        {
            double warm = criticalTemperature * (1 - distance);
            if (bubble.Reaches(warm) && dew.Reaches(warm))
            {
                double limit = dew.WarmLimit();
                if (dew.Reaches(warm) && bubble.Follow(warm, cold) && dew.Follow(warm, cold))
                {
                    return new BlendCurves(bubble.Curve(cold), dew.Curve(cold), limit);
                }
            }
        }

        throw new ConvergenceException("The phase boundary could not be followed to 0.97 of the critical temperature.", EndDistances.Length);
    }
}

/// <summary>Follows one boundary and fits it piece by piece, from the warm end to the cold one.</summary>
internal sealed class BoundaryTrace
{
    /// <summary>Where pieces end in x = sqrt(1 − T/Tc) before any is split.</summary>
    private static readonly double[] Grid = [0.05, 0.08, 0.12, 0.17, 0.23, 0.3, 0.38, 0.47, 0.56, 0.65, 0.74];

    /// <summary>The relative size of the last coefficients at which a piece is good.</summary>
    private const double Resolved = 1e-9;

    /// <summary>How often a piece may be halved.</summary>
    private const int MostSplits = 4;

    private const double ColdStep = 1.01;

    private const double StabilityMargin = 1.015;

    /// <summary>The share of one component in the liquids that are tried beside the dew curve's.</summary>
    private const double NearlyPure = 0.98;

    /// <summary>How far the amounts of a trial liquid must exceed 1 to count: those of the dew curve's own liquid do by the error of its iteration.</summary>
    private const double OtherLiquid = 1e-5;

    private const int Order = BoundaryCurve.Order;

    private readonly IncipientPhase _boundary;
    private readonly bool _isBubble;
    private readonly double _criticalTemperature;
    private readonly double _molarMass;
    private readonly int _n;
    private readonly List<double> _ends = [];
    private readonly List<double> _values = [];
    private readonly List<double> _splits = [];

    public BoundaryTrace(MixtureEquation equation, double[] composition, bool isBubble, double criticalTemperature, double molarMass)
    {
        _boundary = new IncipientPhase(equation, composition);
        _isBubble = isBubble;
        _criticalTemperature = criticalTemperature;
        _molarMass = molarMass;
        _n = equation.Count;
        Start();
    }

    /// <summary>The lowest temperature, not below the one wanted, down to which neither phase would split into two liquids.</summary>
    public double ColdEnd(double wanted)
    {
        double reached = _boundary.Temperature;
        while (reached > wanted)
        {
            double next = Math.Max(wanted, reached / ColdStep);
            if (!_boundary.MoveTo(next) || !_boundary.Bulk.IsLocallyStable() || !_boundary.Incipient.IsLocallyStable())
            {
                // The limit of local stability lies beyond that of true stability: keep away from it.
                return reached * StabilityMargin;
            }

            reached = next;
        }

        return reached;
    }

    /// <summary>
    /// Of a dew curve: the lowest temperature, not below the one wanted, from which its liquid is the first that forms. Where a liquid rich in
    /// one component would form at a lower pressure, the vapor of the curve could not be there.
    /// </summary>
    public double FirstLiquidFrom(double wanted)
    {
        for (double temperature = wanted; temperature < _criticalTemperature && Reaches(temperature); temperature *= ColdStep)
        {
            if (!HasOtherLiquid())
            {
                return temperature;
            }
        }

        return wanted;
    }

    /// <summary>Moves to a temperature, from a fresh start if need be.</summary>
    public bool Reaches(double temperature)
    {
        if (_boundary.MoveTo(temperature))
        {
            return true;
        }

        Start();
        return _boundary.MoveTo(temperature);
    }

    /// <summary>Just above the highest temperature to which the boundary can be followed from here.</summary>
    public double WarmLimit()
    {
        const double step = 0.003, shortest = 3e-4;
        const int mostSteps = 100;
        double limit = Math.Max(_boundary.Temperature, _criticalTemperature);
        for (int k = 0; k < mostSteps && _boundary.MoveTo(limit + (step * _criticalTemperature), shortest); k++)
        {
            limit = _boundary.Temperature;
        }

        return limit + (step * _criticalTemperature);
    }

    /// <summary>Fits the boundary between two temperatures, the warm one first.</summary>
    /// <returns>Whether it could be followed.</returns>
    public bool Follow(double warm, double cold)
    {
        _ends.Clear();
        _values.Clear();
        _splits.Clear();
        double x = Math.Sqrt(1 - (warm / _criticalTemperature));
        double last = Math.Sqrt(1 - (cold / _criticalTemperature));
        _ends.Add(x);
        foreach (double end in Grid)
        {
            if (end > 1.3 * x && end < last - 0.03)
            {
                if (!Fit(x, end, 0))
                {
                    return false;
                }

                x = end;
            }
        }

        return Fit(x, last, 0);
    }

    /// <summary>The curve, down to the temperature that was followed.</summary>
    public BoundaryCurve Curve(double cold) => new(_isBubble, _criticalTemperature, cold, [.. _ends], [.. _values], [.. _splits]);

    private bool HasOtherLiquid()
    {
        var trial = new MixturePhase(_boundary.Bulk.Equation);
        Span<double> amounts = stackalloc double[_n];
        for (int i = 0; i < _n; i++)
        {
            amounts.Fill((1 - NearlyPure) / (_n - 1));
            amounts[i] = NearlyPure;
            if (PhaseStability.Forms(_boundary.Bulk, trial, amounts, true, DensityRoot.ColdLiquid, out double excess) && excess > OtherLiquid)
            {
                return true;
            }
        }

        return false;
    }

    private void Start()
    {
        for (double t = 0.62; t > 0.4; t -= 0.04)
        {
            double temperature = t * _criticalTemperature;
            if (_isBubble ? ColdStart.Bubble(_boundary, temperature) : ColdStart.Dew(_boundary, temperature))
            {
                return;
            }
        }

        throw new ConvergenceException("No phase boundary was found from cold starts.", 0);
    }

    private bool Fit(double from, double to, int splits)
    {
        Span<double> values = stackalloc double[Order * BoundaryCurve.Values];
        Span<double> split = stackalloc double[Order * (_n + 1)];
        for (int k = Order - 1; k >= 0; k--)
        {
            double x = (0.5 * (from + to)) + (0.5 * (to - from) * BoundaryCurve.Fit.Node(k));
            if (!_boundary.MoveTo(_criticalTemperature * (1 - (x * x))))
            {
                return false;
            }

            Store(values, split, k);
        }

        bool good = true;
        Span<double> polynomial = stackalloc double[Order];
        for (int k = 0; k < BoundaryCurve.Values; k++)
        {
            BoundaryCurve.Fit.Polynomial(values.Slice(k * Order, Order), polynomial);
            good &= Tail(polynomial) < Resolved * Scale(k, polynomial[0]);
        }

        if (!good && splits < MostSplits)
        {
            double middle = 0.5 * (from + to);
            return Fit(from, middle, splits + 1) && Fit(middle, to, splits + 1);
        }

        _ends.Add(to);
        foreach (double v in values)
        {
            _values.Add(v);
        }

        foreach (double v in split)
        {
            _splits.Add(v);
        }

        return true;
    }

    private static double Tail(ReadOnlySpan<double> polynomial) =>
        Math.Max(Math.Abs(polynomial[Order - 1]), 2 * Math.Abs(polynomial[Order - 2])) / (1 << (Order - 2));

    private static double Scale(int value, double size)
    {
        const double unit = 1, enthalpy = 1e5, entropy = 1e3;
        return value switch
        {
            0 => unit,
            1 => Math.Abs(size),
            2 => enthalpy,
            _ => entropy,
        };
    }

    private void Store(Span<double> values, Span<double> split, int k)
    {
        MixturePhase bulk = _boundary.Bulk;
        MixturePhase incipient = _boundary.Incipient;
        bulk.SetIdealGas();
        double p = _boundary.Pressure;
        double density = bulk.Rho * _molarMass;
        values[k] = Math.Log(p);
        values[Order + k] = _isBubble ? density : p / (density * _boundary.Temperature);
        values[(2 * Order) + k] = (bulk.Energy + (p / bulk.Rho)) / _molarMass;
        values[(3 * Order) + k] = bulk.Entropy / _molarMass;
        for (int i = 0; i < _n; i++)
        {
            double ratio = Math.Log(incipient.X[i] / bulk.X[i]);
            split[(i * Order) + k] = _isBubble ? ratio : -ratio;
        }

        split[(_n * Order) + k] = Math.Log(incipient.Rho);
    }
}
