using System;
using System.Collections.Generic;
#if NET
using System.Numerics;
#endif
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Flow;

/// <summary>Specific volume of liquid that flashes along an isenthalp, and ∫ρ·dp along it, from a table that grows with the enthalpies asked for.</summary>
/// <remarks>
/// Two phases in equilibrium at constant enthalpy h, from the bubble pressure p_b(h) down: s = ln(p_b/p), τ = ln(1 + s/ε). ln v is a smooth
/// function of τ (v rises from that of liquid about as 1 + s/ε), a Chebyshev series at each of some enthalpies on a grid, interpolated between eight of
/// them; above p_b liquid, ln v a cubic in p. Interpolated to 1e-8
/// up to 0.85 of the critical temperature, to 1e-5 up to 0.95 (tests). Not thread-safe: one for each simulation.
/// </remarks>
internal sealed class FlashTable
{
    /// <summary>Nodes in τ.</summary>
    private const int Nodes = 28;

    /// <summary>ε: about v over dv/ds at the bubble point of a refrigerant of low pressure, where it is least.</summary>
    private const double Stretch = 0.01;

    /// <summary>The table goes down to e^−4 of the bubble pressure where the equation does.</summary>
    private const double Deepest = 4;

    /// <summary>Distance of enthalpies in the table, J/kg, and how many lie around the one asked for.</summary>
    private const double Spacing = 5000;
    private const int Around = 8;

    /// <summary>The series of ln v, of its slope and of the integral stand one behind the other, each with zeros up to an even number of terms.</summary>
    private const int Terms = Nodes + 2;
    private const int SlopeAt = Terms;
    private const int IntegralAt = SlopeAt + Terms;
    private const int SeriesLength = IntegralAt + Terms;

    /// <summary>Liquid in the table up to this many times the bubble pressure.</summary>
    private const double LiquidUpTo = 1.5;

    private readonly PropertyModel _model;
    private readonly Dictionary<long, Row> _rows = [];
    private readonly double[] _cosines = new double[Nodes * Nodes];
    private readonly double[] _series = new double[SeriesLength];
    private readonly double[] _weights = new double[Around];
    private readonly double[] _perProduct = new double[Around];
    private readonly Row[] _around = new Row[Around];
    private readonly double _lowestEnthalpy;
    private readonly double _highestEnthalpy;
    private long _first;
    private bool _hasAround;
    private double _span = Deepest;
    private double _half;
    private double _liquidLinear;
    private double _liquidSquare;
    private double _liquidCube;
    private double _atBubble;
    private double _logStretched;
    private double _softeningAtBubble;
    private double _enthalpy = double.NaN;

    public FlashTable(PropertyModel model)
    {
        _model = model;
        _lowestEnthalpy = model.SaturationAtTemperature(model.Range.MinimumTemperature).Bubble.Enthalpy;
        _highestEnthalpy = model.SaturationAtTemperature(model.Range.MaximumSaturationTemperature).Bubble.Enthalpy;
        for (int k = 0; k < Nodes; k++)
        {
            for (int i = 0; i < Nodes; i++)
            {
                _cosines[(k * Nodes) + i] = Math.Cos(Math.PI * k * (i + 0.5) / Nodes) * (k == 0 ? 1.0 : 2.0) / Nodes;
            }
        }

        for (int j = 0; j < Around; j++)
        {
            double product = 1;
            for (int k = 0; k < Around; k++)
            {
                product *= k != j ? j - k : 1;
            }

            _perProduct[j] = 1 / product;
        }

        _half = 0.5 * Math.Log(1 + (_span / Stretch));
    }

    /// <summary>Bubble pressure at the enthalpy, Pa.</summary>
    public double BubblePressure { get; private set; }

    /// <summary>Lowest pressure of the table, Pa.</summary>
    public double LowestPressure { get; private set; }

    /// <summary>Largest τ.</summary>
    public double Deep => 2 * _half;

    /// <summary>ln(−dv/dp) where it begins to flash, dv/dp in m³/(kg·Pa).</summary>
    public double LogSofteningAtBubble => double.IsNaN(_softeningAtBubble) ? _softeningAtBubble = LogSofteningAt(0) : _softeningAtBubble;

    /// <summary>Makes it that of an enthalpy, J/kg.</summary>
    /// <exception cref="PropertyRangeException">No bubble point has that enthalpy.</exception>
    public void Prepare(double enthalpy)
    {
        if (enthalpy == _enthalpy)
        {
            return;
        }

        if (!Require.IsFinite(enthalpy))
        {
            throw new ConvergenceException($"No bubble point for an enthalpy of {Require.Text(enthalpy)} J/kg.", 0);
        }

        _enthalpy = double.NaN;
        double place = enthalpy / Spacing;
        Surround(FirstRow(enthalpy, place));
        double logPressure = 0;
        double linear = 0;
        double square = 0;
        double cube = 0;
        double bubble = 0;
        Array.Clear(_series, 0, _series.Length);
        Weigh(place - _first);
        for (int j = 0; j < Around; j++)
        {
            Row row = _around[j];
            double w = _weights[j];
            logPressure += w * row.LogPressure;
            bubble += w * row.LogVolume;
            linear += w * row.Linear;
            square += w * row.Square;
            cube += w * row.Cube;
            Add(w, row.Series, _series);
        }

        BubblePressure = Math.Exp(logPressure);
        LowestPressure = Math.Exp(logPressure - _span);
        _logStretched = Math.Log(Stretch) + logPressure;
        _softeningAtBubble = double.NaN;
        _atBubble = bubble;
        _liquidLinear = linear;
        _liquidSquare = square;
        _liquidCube = cube;
        _enthalpy = enthalpy;
    }

    /// <summary>τ of a pressure at or below the bubble pressure; the end of the table for lower ones.</summary>
    public double Depth(double pressure) => pressure <= 0 ? Deep : Math.Min(Deep, Math.Log(1 + (Math.Log(BubblePressure / pressure) / Stretch)));

    /// <summary>ln(−dv/dp) at τ, dv/dp in m³/(kg·Pa).</summary>
    public double LogSofteningAt(double depth)
    {
        (double logVolume, double slope) = TwoSeries(0, SlopeAt, depth);
        return logVolume - depth + Math.Log(slope) - _logStretched + (Stretch * (Math.Exp(depth) - 1));
    }

    /// <summary>∫ρ·dp from the pressure at τ up to the bubble pressure, Pa·kg/m³, and ln v there, v in m³/kg.</summary>
    public (double Impulse, double LogVolume) At(double depth)
    {
        (double impulse, double logVolume) = TwoSeries(IntegralAt, 0, depth);
        return (depth <= 0 ? 0 : impulse, logVolume);
    }

    /// <summary>ln v of liquid at a pressure above the bubble pressure.</summary>
    public double LiquidLogVolume(double pressure)
    {
        double z = (pressure / BubblePressure) - 1;
        return _atBubble + (z * (_liquidLinear + (z * (_liquidSquare + (z * _liquidCube)))));
    }

    /// <summary>∫ρ·dp of liquid from the bubble pressure up to a pressure, by Simpson's rule over a nearly constant density.</summary>
    public double LiquidImpulse(double pressure) => (pressure - BubblePressure) / 6
        * (Math.Exp(-_atBubble) + (4 * Math.Exp(-LiquidLogVolume(0.5 * (pressure + BubblePressure)))) + Math.Exp(-LiquidLogVolume(pressure)));

    /// <summary>Density at any pressure of the table, kg/m³.</summary>
    public double Density(double pressure) =>
        Math.Exp(-(pressure >= BubblePressure ? LiquidLogVolume(pressure) : At(Depth(pressure)).LogVolume));

    /// <summary>Lagrange's weights of equidistant nodes 0, 1, 2 …</summary>
    private void Weigh(double x)
    {
        for (int j = 0; j < Around; j++)
        {
            double weight = _perProduct[j];
            for (int k = 0; k < Around; k++)
            {
                if (k != j)
                {
                    weight *= x - k;
                }
            }

            _weights[j] = weight;
        }
    }

    /// <summary>The first of the rows around an enthalpy, all of which have a bubble point with room below it.</summary>
    private long FirstRow(double enthalpy, double place)
    {
        if (!(enthalpy > _lowestEnthalpy && enthalpy < _highestEnthalpy))
        {
            throw new PropertyRangeException(_model.Designation, nameof(enthalpy), enthalpy, _lowestEnthalpy, _highestEnthalpy, "J/kg", _model.Source);
        }

        long least = (long)Math.Ceiling(_lowestEnthalpy / Spacing) + 1;
        long most = (long)Math.Floor(_highestEnthalpy / Spacing) - Around + 1;
        return Math.Max(least, Math.Min(most, (long)Math.Floor(place) - (Around / 2) + 1));
    }

    /// <summary>The rows from one on.</summary>
    private void Surround(long first)
    {
        if (_hasAround && first == _first)
        {
            return;
        }

        _hasAround = false;
        double span;
        do
        {
            // A row with less room below it makes all of them shallower.
            span = _span;
            for (int j = 0; j < Around; j++)
            {
                _around[j] = RowAt(first + j);
            }
        }
        while (span != _span);

        _first = first;
        _hasAround = true;
    }

    private Row RowAt(long number)
    {
        if (_rows.TryGetValue(number, out Row? row))
        {
            return row;
        }

        row = Make(number * Spacing);
        _rows.Add(number, row);
        return row;
    }

    private Row Make(double enthalpy)
    {
        double low = _model.Range.MinimumTemperature;
        double high = _model.Range.MaximumSaturationTemperature;
        var bubble = new BubbleEnthalpy(_model, enthalpy);
        StatePoint start = _model.SaturationAtTemperature(BracketedRoot.Find(ref bubble, low, high, 1e-12 * high)).Bubble;
        double lowest = _model.SaturationAtTemperature(low).Bubble.Pressure;
        double room = 0.98 * Math.Log(start.Pressure / lowest);
        if (room < _span)
        {
            // Rows share one span: the shallowest decides, and rows made before are made again.
            _span = room;
            _half = 0.5 * Math.Log(1 + (_span / Stretch));
            _rows.Clear();
        }

        var values = new double[Nodes];
        for (int i = 0; i < Nodes; i++)
        {
            double depth = Node(i);
            double pressure = start.Pressure * Math.Exp(-Stretch * (Math.Exp(depth) - 1));
            values[i] = -Math.Log(_model.StateAtEnthalpy(pressure, enthalpy).Density);
        }

        double atBubble = -Math.Log(start.Density);
        const double Full = LiquidUpTo - 1;
        double Liquid(double share) => -Math.Log(_model.StateAtEnthalpy((1 + (share * Full)) * start.Pressure, enthalpy).Density) - atBubble;
        double third = Liquid(1.0 / 3);
        double twoThirds = Liquid(2.0 / 3);
        double end = Liquid(1);
        double linear = (9 * third) - (4.5 * twoThirds) + end;
        double square = (-22.5 * third) + (18 * twoThirds) - (4.5 * end);
        double cube = (13.5 * third) - (13.5 * twoThirds) + (4.5 * end);
        return new Row(Math.Log(start.Pressure), atBubble, linear / Full, square / (Full * Full), cube / (Full * Full * Full), Fit(start.Pressure, values));
    }

    /// <summary>Series of ln v, of its slope, and of ∫ρ·dp = ∫ p·e^τ·ε/v·dτ, from ln v at the nodes.</summary>
    private double[] Fit(double bubblePressure, double[] logarithms)
    {
        var series = new double[SeriesLength];
        Span<double> volume = series.AsSpan(0, Nodes);
        Span<double> slope = series.AsSpan(SlopeAt, Nodes - 1);
        Span<double> integral = series.AsSpan(IntegralAt, Nodes + 1);
        Transform(logarithms, volume);
        var values = new double[Nodes];
        for (int i = 0; i < Nodes; i++)
        {
            double depth = Node(i);
            values[i] = bubblePressure * Math.Exp(-Stretch * (Math.Exp(depth) - 1)) * Stretch * Math.Exp(depth - logarithms[i]);
        }

        Span<double> density = stackalloc double[Nodes];
        Transform(values, density);

        // ∫T_k: c_k/(2k) at k + 1 less c_k/(2k) at k − 1, so that the constant alone is left to choose: nothing at τ = 0, which is −1.
        for (int k = Nodes; k >= 1; k--)
        {
            double below = (k == 1 ? 2 : 1) * density[k - 1];
            double above = k + 1 < Nodes ? density[k + 1] : 0;
            integral[k] = _half * (below - above) / (2 * k);
            integral[0] -= k % 2 == 0 ? integral[k] : -integral[k];
        }

        double next = 0;
        double afterNext = 0;
        for (int k = Nodes - 1; k >= 1; k--)
        {
            double derivative = afterNext + (2 * k * volume[k] / _half);
            afterNext = next;
            next = derivative;
            slope[k - 1] = derivative;
        }

        slope[0] *= 0.5;
        return series;
    }

    private double Node(int i) => _half * (1 + Math.Cos(Math.PI * (i + 0.5) / Nodes));

    private static void Add(double weight, double[] from, double[] to)
    {
        int i = 0;
#if NET
        var times = new Vector<double>(weight);
        for (; i <= to.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            (new Vector<double>(to, i) + (times * new Vector<double>(from, i))).CopyTo(to, i);
        }

#endif
        for (; i < to.Length; i++)
        {
            to[i] += weight * from[i];
        }
    }

    private void Transform(double[] values, Span<double> coefficients)
    {
        for (int k = 0; k < Nodes; k++)
        {
            double sum = 0;
            for (int i = 0; i < Nodes; i++)
            {
                sum += _cosines[(k * Nodes) + i] * values[i];
            }

            coefficients[k] = sum;
        }
    }

    /// <summary>
    /// Two series at one place by Clenshaw's sums, four that do not wait for each other: T_2j(x) = T_j(z) and T_2j+1(x) = x·W_j(z) with z = 2x² − 1, W_0 = 1, W_1 = 2z − 1, and T_j and
    /// W_j of one recurrence.
    /// </summary>
    private (double First, double Second) TwoSeries(int first, int second, double depth)
    {
        double x = (depth / _half) - 1;
        double z = (2 * x * x) - 1;
        double twice = 2 * z;
        double even1 = 0, even2 = 0, odd1 = 0, odd2 = 0;
        double otherEven1 = 0, otherEven2 = 0, otherOdd1 = 0, otherOdd2 = 0;
        ReadOnlySpan<double> one = _series.AsSpan(first, Terms), other = _series.AsSpan(second, Terms);
        for (int k = Terms - 2; k > 0; k -= 2)
        {
            (even2, even1) = (even1, one[k] + (twice * even1) - even2);
            (odd2, odd1) = (odd1, one[k + 1] + (twice * odd1) - odd2);
            (otherEven2, otherEven1) = (otherEven1, other[k] + (twice * otherEven1) - otherEven2);
            (otherOdd2, otherOdd1) = (otherOdd1, other[k + 1] + (twice * otherOdd1) - otherOdd2);
        }

        return (
            one[0] + (z * even1) - even2 + (x * (one[1] + ((twice - 1) * odd1) - odd2)),
            other[0] + (z * otherEven1) - otherEven2 + (x * (other[1] + ((twice - 1) * otherOdd1) - otherOdd2)));
    }

    private sealed class Row(
        double logPressure, double logVolume, double linear, double square, double cube, double[] series)
    {
        public double LogPressure { get; } = logPressure;

        public double LogVolume { get; } = logVolume;

        public double Linear { get; } = linear;

        public double Square { get; } = square;

        public double Cube { get; } = cube;

        /// <summary>Coefficients over τ of ln v, its slope and the integral.</summary>
        public double[] Series { get; } = series;
    }

    private readonly struct BubbleEnthalpy(PropertyModel model, double enthalpy) : IScalarFunction
    {
        public double Value(double x) => model.SaturationAtTemperature(x).Bubble.Enthalpy - enthalpy;
    }
}
