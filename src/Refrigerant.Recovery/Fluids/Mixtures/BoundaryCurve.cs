using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// The bubble or the dew curve of a bulk composition as piecewise polynomials in x = sqrt(1 − T/Tc), so that a lookup costs no phase
/// equilibrium (Bell and Alpert 2021, Int. J. Thermophys. 42, doi:10.1007/s10765-021-02824-z). Near the critical point, where densities
/// bend as x does, the pieces are narrower.
/// </summary>
internal sealed class BoundaryCurve
{
    /// <summary>Coefficients of one polynomial.</summary>
    public const int Order = 12;

    /// <summary>The interpolation that both fills and reads the pieces.</summary>
    public static readonly ChebyshevFit Fit = new(Order);

    /// <summary>ln p, density (liquid) or p/(ρT) (vapor), enthalpy, entropy.</summary>
    public const int Values = 4;

    /// <summary>Steps that an inversion may take; after some of them every other one halves its bounds.</summary>
    private const int MaximumIterations = 120, PlainIterations = 20;

    /// <summary>Change of x at which an inversion has arrived.</summary>
    private const double Arrived = 1e-14;

    private readonly bool _isLiquid;
    private readonly double _criticalTemperature;
    private readonly double[] _ends;
    private readonly double[] _coefficients;
    private readonly double[] _splitCoefficients;
    private readonly int _splitValues;
    private readonly int _pieces;
    private readonly double[] _logPressures;

    /// <param name="isLiquid">Whether the bulk is liquid: the bubble curve.</param>
    /// <param name="criticalTemperature">K.</param>
    /// <param name="minimumTemperature">Lower end, K: that of the last piece.</param>
    /// <param name="ends">Ends of the pieces in x, ascending: one more than there are pieces.</param>
    /// <param name="values">For every piece and value, in the Chebyshev nodes.</param>
    /// <param name="splits">The same for the incipient phase: ln K of every component, then its molar density.</param>
    public BoundaryCurve(bool isLiquid, double criticalTemperature, double minimumTemperature, double[] ends, double[] values, double[] splits)
    {
        _isLiquid = isLiquid;
        _criticalTemperature = criticalTemperature;
        _ends = ends;
        _pieces = ends.Length - 1;
        _splitValues = splits.Length / (_pieces * Order);
        _coefficients = Interleave(values, Values);
        _splitCoefficients = Interleave(splits, _splitValues);
        MinimumTemperature = minimumTemperature;
        MaximumTemperature = TemperatureAt(ends[0]);
        _logPressures = new double[ends.Length];
        for (int i = 0; i < ends.Length; i++)
        {
            _logPressures[i] = LogPressure(Math.Max(0, i - 1), ends[i], out _);
        }

        FindHighestPressure();
    }

    /// <summary>Lower end, K.</summary>
    public double MinimumTemperature { get; }

    /// <summary>Upper end, K.</summary>
    public double MaximumTemperature { get; }

    /// <summary>Lowest pressure, Pa.</summary>
    public double MinimumPressure => Math.Exp(_logPressures[_pieces]);

    /// <summary>Highest pressure up to which pressures have one temperature, Pa: the upper end, or a maximum before it.</summary>
    public double MaximumPressure { get; private set; }

    /// <summary>The temperature of <see cref="MaximumPressure"/>, K.</summary>
    public double TemperatureOfMaximumPressure { get; private set; }

    /// <summary>The saturated bulk at a temperature within the curve.</summary>
    public StatePoint At(double temperature)
    {
        double x = Math.Sqrt(Math.Max(0, 1 - (temperature / _criticalTemperature)));
        int piece = PieceOf(x);
        double u = Local(piece, x);
        ReadOnlySpan<double> c = _coefficients.AsSpan(piece * Order * Values, Order * Values);
        double p = c[(Order - 1) * Values];
        double density = c[((Order - 1) * Values) + 1];
        double h = c[((Order - 1) * Values) + 2];
        double s = c[((Order - 1) * Values) + 3];
        for (int i = (Order - 2) * Values; i >= 0; i -= Values)
        {
            p = (p * u) + c[i];
            density = (density * u) + c[i + 1];
            h = (h * u) + c[i + 2];
            s = (s * u) + c[i + 3];
        }

        p = Math.Exp(p);
        return _isLiquid
            ? new StatePoint(Phase.Liquid, temperature, p, density, h, s, 0)
            : new StatePoint(Phase.Vapor, temperature, p, p / (density * temperature), h, s, 1);
    }

    /// <summary>Pressure at a temperature within the curve, Pa.</summary>
    public double PressureAt(double temperature)
    {
        double x = Math.Sqrt(Math.Max(0, 1 - (temperature / _criticalTemperature)));
        return Math.Exp(LogPressure(PieceOf(x), x, out _));
    }

    /// <summary>The incipient phase at a temperature within the curve: ln K = ln(y/x) of every component, vapor over liquid, and its molar density.</summary>
    public double Split(double temperature, Span<double> logK)
    {
        double x = Math.Sqrt(Math.Max(0, 1 - (temperature / _criticalTemperature)));
        int piece = PieceOf(x);
        double u = Local(piece, x);
        ReadOnlySpan<double> c = _splitCoefficients.AsSpan(piece * Order * _splitValues, Order * _splitValues);
        double density = 0;
        for (int k = 0; k < _splitValues; k++)
        {
            double value = 0;
            for (int i = Order - 1; i >= 0; i--)
            {
                value = (value * u) + c[(i * _splitValues) + k];
            }

            if (k < _splitValues - 1)
            {
                logK[k] = value;
            }
            else
            {
                density = Math.Exp(value);
            }
        }

        return density;
    }

    /// <summary>The temperature at which the curve has a pressure between its lowest and highest, K.</summary>
    /// <exception cref="ConvergenceException">It was not found.</exception>
    public double TemperatureOf(double pressure)
    {
        double target = Math.Log(pressure);
        int piece = 0;
        double low = Math.Sqrt(Math.Max(0, 1 - (TemperatureOfMaximumPressure / _criticalTemperature)));
        while (piece < _pieces - 1 && (_logPressures[piece + 1] >= target || _ends[piece + 1] <= low))
        {
            piece++;
        }

        low = Math.Max(low, _ends[piece]);
        double high = _ends[piece + 1];
        double lowPressure = low == _ends[piece] ? _logPressures[piece] : Math.Log(MaximumPressure);
        double x = low + ((high - low) * Clamp01((lowPressure - target) / (lowPressure - _logPressures[piece + 1])));
        for (int k = 0; k < MaximumIterations; k++)
        {
            double excess = LogPressure(piece, x, out double slope) - target;
            if (excess > 0)
            {
                low = x;
            }
            else
            {
                high = x;
            }

            double next = x - (excess / slope);
            if (!(next > low && next < high) || (k > PlainIterations && (k & 1) == 0))
            {
                next = Math.Abs(next - x) < Arrived ? x : 0.5 * (low + high);
            }

            double change = Math.Abs(next - x);
            x = next;
            if (change < Arrived || high - low < Arrived)
            {
                return Math.Max(MinimumTemperature, TemperatureAt(x));
            }
        }

        throw new ConvergenceException($"No temperature found at {Require.Text(pressure)} Pa.", MaximumIterations);
    }

    private static double Clamp01(double value) => Math.Max(0, Math.Min(1, value));

    private double TemperatureAt(double x) => _criticalTemperature * (1 - (x * x));

    private int PieceOf(double x)
    {
        int piece = 0;
        while (piece < _pieces - 1 && x > _ends[piece + 1])
        {
            piece++;
        }

        return piece;
    }

    private double Local(int piece, double x) =>
        ((2 * x) - _ends[piece] - _ends[piece + 1]) / (_ends[piece + 1] - _ends[piece]);

    private double LogPressure(int piece, double x, out double slope)
    {
        double u = Local(piece, x);
        int start = piece * Order * Values;
        double value = 0;
        double derivative = 0;
        for (int i = Order - 1; i >= 0; i--)
        {
            derivative = (derivative * u) + value;
            value = (value * u) + _coefficients[start + (i * Values)];
        }

        slope = derivative * 2 / (_ends[piece + 1] - _ends[piece]);
        return value;
    }

    private void FindHighestPressure()
    {
        double x = _ends[0];
        for (int piece = 0; piece < _pieces; piece++)
        {
            _ = LogPressure(piece, _ends[piece], out double slope);
            if (slope < 0)
            {
                break;
            }

            // The pressure still rises towards the cold: its maximum lies further on.
            double a = _ends[piece], b = _ends[piece + 1];
            _ = LogPressure(piece, b, out double end);
            if (end >= 0)
            {
                x = b;
                continue;
            }

            for (int k = 0; k < 60; k++)
            {
                x = 0.5 * (a + b);
                _ = LogPressure(piece, x, out double middle);
                (a, b) = middle >= 0 ? (x, b) : (a, x);
            }

            break;
        }

        TemperatureOfMaximumPressure = TemperatureAt(x);
        MaximumPressure = Math.Exp(LogPressure(PieceOf(x), x, out _));
    }

    private double[] Interleave(double[] values, int count)
    {
        var result = new double[values.Length];
        Span<double> polynomial = stackalloc double[Order];
        for (int piece = 0; piece < _pieces; piece++)
        {
            int start = piece * Order * count;
            for (int k = 0; k < count; k++)
            {
                Fit.Polynomial(values.AsSpan(start + (k * Order), Order), polynomial);
                for (int i = 0; i < Order; i++)
                {
                    result[start + (i * count) + k] = polynomial[i];
                }
            }
        }

        return result;
    }
}
