using System;
using System.Runtime.CompilerServices;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The saturated states of a pure fluid at a temperature or a pressure, so that a lookup costs no phase equilibrium (Bell and Alpert 2021,
/// Int. J. Thermophys. 42, doi:10.1007/s10765-021-02824-z). Immutable.
/// </summary>
/// <remarks>
/// The states are those of a <see cref="SaturationLine"/>, refitted over the temperature itself, over the pressure and, next to the critical pressure, over
/// w = sqrt(1 − p/pc), in which they have no infinite slope there. Pieces are of equal width in temperature and w; in the pressure they are quarters between
/// powers of two, which are the first bits of the number. Where the critical point is too near for pieces in the temperature, the line itself is looked up.
/// </remarks>
internal sealed class SaturationCurves
{
    /// <summary>Pieces over the temperature.</summary>
    private const int TemperaturePieces = 64;

    /// <summary>Share of the critical temperature below which, where pressures change fast, the line itself is looked up.</summary>
    private const double LowestShare = 0.35;

    /// <summary>Pieces over w.</summary>
    private const int CriticalPieces = 16;

    /// <summary>Share of the critical pressure from which the variable is w.</summary>
    private const double CriticalShare = 0.5;

    /// <summary>
    /// w below which only the temperature is taken from the pieces and the states are looked up at it: so near the critical point the line's own rounding shows,
    /// and states asked by temperature and by pressure shall agree.
    /// </summary>
    private const double SmallRoot = 0.1;

    /// <summary>Bits of a number after those that tell the piece: its exponent and two more.</summary>
    private const int PieceShift = 50;

    /// <summary>
    /// Half widths of a piece over the temperature that it keeps away from the critical point, where the curves have an infinite slope: its polynomials' error
    /// falls with twice that number to the power of their order.
    /// </summary>
    private const double Distance = 12;

    private readonly SaturationLine _line;
    private readonly CurveTable _byTemperature;
    private readonly double _lowestTemperature;
    private readonly double _piecesPerKelvin;
    private readonly double _highestInTable;
    private readonly CurveTable _byPressure;
    private readonly int _firstPiece;
    private readonly double _highestPressureInTable;
    private readonly CurveTable _byRoot;
    private readonly double _inverseCriticalPressure;
    private readonly double _lowestRoot;
    private readonly double _piecesPerRoot;

    /// <param name="line">The line.</param>
    /// <param name="minimumTemperature">Where it begins, K.</param>
    public SaturationCurves(SaturationLine line, double minimumTemperature)
    {
        _line = line;
        _lowestTemperature = Math.Max(minimumTemperature, LowestShare * line.CriticalTemperature);
        double width = (line.MaximumTemperature - _lowestTemperature) / TemperaturePieces;
        _piecesPerKelvin = 1 / width;
        _byTemperature = new CurveTable(TemperaturePieces);
        Span<double> values = stackalloc double[CurveTable.Order * CurveTable.Count];
        for (double low = _lowestTemperature; line.CriticalTemperature - low - width > 0.5 * Distance * width; low += width)
        {
            for (int i = 0; i < CurveTable.Order; i++)
            {
                Store(line.AtTemperature(CurveTable.Node(i, low, low + width)), values.Slice(i * CurveTable.Count));
            }

            _byTemperature.Add(low, low + width, values);
        }

        _highestInTable = _lowestTemperature + (_byTemperature.Pieces * width);
        double temperature = minimumTemperature, next = line.AtTemperature(minimumTemperature).Pressure;
        double highest = line.AtTemperature(line.MaximumTemperature).Pressure;
        double critical = CriticalPressure(line);
        _inverseCriticalPressure = 1 / critical;
        _firstPiece = PieceOf(next);
        int end = PieceOf(CriticalShare * critical);
        _byPressure = new CurveTable(Math.Max(0, end - _firstPiece));
        for (int piece = _firstPiece; piece < end; piece++)
        {
            double low = next;
            next = Start(piece + 1);
            FillByPressure(line, low, next, root: false, critical, ref temperature, values);
            _byPressure.Add(low, next, values);
        }

        _highestPressureInTable = next;
        _lowestRoot = Root(highest);
        double rootWidth = (Root(next) - _lowestRoot) / CriticalPieces;
        _piecesPerRoot = 1 / rootWidth;
        _byRoot = new CurveTable(CriticalPieces);
        temperature = line.MaximumTemperature;
        for (int piece = 0; piece < CriticalPieces; piece++)
        {
            double low = _lowestRoot + (piece * rootWidth);
            FillByPressure(line, low, low + rootWidth, root: true, critical, ref temperature, values);
            _byRoot.Add(low, low + rootWidth, values);
        }
    }

    /// <summary>The critical temperature of the equation of state itself, K.</summary>
    public double CriticalTemperature => _line.CriticalTemperature;

    /// <summary>The upper end of the curves, K: next to the critical temperature.</summary>
    public double MaximumTemperature => _line.MaximumTemperature;

    /// <summary>The saturated states at a temperature within the curves; outside them the nearest piece is continued.</summary>
    public SaturationValues AtTemperature(double temperature)
    {
        if (!(temperature >= _lowestTemperature && temperature < _highestInTable))
        {
            return _line.AtTemperature(temperature);
        }

        _byTemperature.Evaluate(PieceAt(temperature), temperature, out CurveValues v);
        return new SaturationValues(temperature, v.First, v.Second, v.Third, v.Fourth, v.Fifth, v.Sixth, v.Seventh);
    }

    /// <summary>The saturated states at a pressure within the curves; the temperature belongs to the pressure to rounding.</summary>
    public SaturationValues AtPressure(double pressure)
    {
        CurveValues v;
        if (pressure < _highestPressureInTable)
        {
            _byPressure.Evaluate(Math.Max(0, PieceOf(pressure) - _firstPiece), pressure, out v);
        }
        else
        {
            double root = Root(pressure);
            int piece = Math.Max(0, Math.Min((int)((root - _lowestRoot) * _piecesPerRoot), CriticalPieces - 1));
            _byRoot.Evaluate(piece, root, out v);
            if (root < SmallRoot)
            {
                return NextToCritical(pressure, v.Eighth);
            }
        }

        return new SaturationValues(v.Eighth, pressure, v.Second, v.Third, v.Fourth, v.Fifth, v.Sixth, v.Seventh);
    }

    /// <summary>The changes with temperature of the saturated states, per K, in the places of their values.</summary>
    public SaturationValues SlopesAt(double temperature)
    {
        if (!(temperature >= _lowestTemperature && temperature < _highestInTable))
        {
            return _line.SlopesAt(temperature);
        }

        _byTemperature.Slopes(PieceAt(temperature), temperature, out CurveValues v);
        return new SaturationValues(temperature, v.First, v.Second, v.Third, v.Fourth, v.Fifth, v.Sixth, v.Seventh);
    }

    /// <summary>The pressure at the critical temperature: the line ends just below, and is nearly straight there.</summary>
    private static double CriticalPressure(SaturationLine line)
    {
        double rest = line.CriticalTemperature - line.MaximumTemperature;
        double step = Math.Max(10 * rest, 1e-5 * line.CriticalTemperature);
        double pressure = line.AtTemperature(line.MaximumTemperature).Pressure;
        return pressure + ((pressure - line.AtTemperature(line.MaximumTemperature - step).Pressure) * rest / step);
    }

    private SaturationValues NextToCritical(double pressure, double near)
    {
        double temperature = Math.Min(near, MaximumTemperature);
        SaturationValues s = _line.AtTemperature(temperature);
        temperature = Math.Min(temperature + ((pressure - s.Pressure) / s.PressureSlope), MaximumTemperature);
        s = AtTemperature(temperature);
        return new SaturationValues(
            temperature, pressure, s.LiquidDensity, s.VaporDensity, s.LiquidEnthalpy, s.VaporEnthalpy, s.LiquidEntropy, s.VaporEntropy);
    }

    private static int PieceOf(double pressure) => (int)(BitConverter.DoubleToInt64Bits(pressure) >> PieceShift);

    private static double Start(int piece) => BitConverter.Int64BitsToDouble((long)piece << PieceShift);

    private static void Store(in SaturationValues s, Span<double> values)
    {
        values[0] = s.Pressure;
        values[1] = s.LiquidDensity;
        values[2] = s.VaporDensity;
        values[3] = s.LiquidEnthalpy;
        values[4] = s.VaporEnthalpy;
        values[5] = s.LiquidEntropy;
        values[6] = s.VaporEntropy;
        values[7] = s.Temperature;
    }

    /// <summary>States in the nodes between two pressures, or two roots, one after the other: each temperature starts from the one before.</summary>
    private static void FillByPressure(SaturationLine line, double low, double high, bool root, double critical, ref double temperature, Span<double> values)
    {
        for (int k = 0; k < CurveTable.Order; k++)
        {
            int i = CurveTable.Order - 1 - k;
            double node = CurveTable.Node(i, low, high);
            temperature = line.TemperatureAt(root ? critical * (1 - (node * node)) : node, temperature);
            Store(line.AtTemperature(temperature), values.Slice(i * CurveTable.Count));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int PieceAt(double temperature) => Math.Min((int)((temperature - _lowestTemperature) * _piecesPerKelvin), _byTemperature.Pieces - 1);

    private double Root(double pressure) => Math.Sqrt(Math.Max(0, 1 - (pressure * _inverseCriticalPressure)));
}
