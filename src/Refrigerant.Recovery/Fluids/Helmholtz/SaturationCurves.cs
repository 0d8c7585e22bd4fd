using System;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The saturation curves of a pure fluid as piecewise polynomials, so that a lookup costs no phase equilibrium (Bell and Alpert 2021,
/// Int. J. Thermophys. 42, doi:10.1007/s10765-021-02824-z). Immutable; built by <see cref="SaturationCurveBuilder"/>.
/// </summary>
/// <remarks>
/// The variable is x = sqrt(1 − T/Tc) with the equation's own critical temperature: in it, an analytic equation of state has densities
/// and enthalpies without the infinite slope that they have in T. Pieces are blocks of equal cells in x and found by a table.
/// Temperature over ln p is smooth by itself and has pieces of equal width.
/// </remarks>
internal sealed class SaturationCurves
{
    /// <summary>Coefficients of each polynomial.</summary>
    public const int Order = 10;

    /// <summary>Polynomials in a piece: pressure, liquid and vapor density, liquid and vapor enthalpy, liquid entropy.</summary>
    public const int Count = 6;

    /// <summary>Doubles in a piece: the polynomials, highest coefficients first and interleaved, then center and inverse half width.</summary>
    public const int Stride = (Order * Count) + 2;

    /// <summary>Newton's steps at most on the temperature of a pressure; none is needed but next to the critical point.</summary>
    private const int MaximumPolish = 4;

    /// <summary>Relative change of temperature that is applied without evaluating the curves again.</summary>
    private const double PolishTolerance = 1e-12;

    private readonly double _inverseCriticalTemperature;
    private readonly double _cellsPerX;
    private readonly short[] _pieceOfCell;
    private readonly double[] _pieces;
    private readonly double _lowestLogPressure;
    private readonly double _piecesPerLogPressure;
    private readonly double[] _temperaturePieces;

    public SaturationCurves(
        double criticalTemperature,
        double maximumTemperature,
        double cellsPerX,
        short[] pieceOfCell,
        double[] pieces,
        double lowestLogPressure,
        double piecesPerLogPressure,
        double[] temperaturePieces)
    {
        CriticalTemperature = criticalTemperature;
        _inverseCriticalTemperature = 1 / criticalTemperature;
        MaximumTemperature = maximumTemperature;
        _cellsPerX = cellsPerX;
        _pieceOfCell = pieceOfCell;
        _pieces = pieces;
        _lowestLogPressure = lowestLogPressure;
        _piecesPerLogPressure = piecesPerLogPressure;
        _temperaturePieces = temperaturePieces;
    }

    /// <summary>The critical temperature of the equation of state itself, K.</summary>
    public double CriticalTemperature { get; }

    /// <summary>The upper end of the curves, K: next to the critical temperature.</summary>
    public double MaximumTemperature { get; }

    /// <summary>The saturated states at a temperature within the curves; outside them the nearest piece is continued.</summary>
    public SaturationValues AtTemperature(double temperature)
    {
        double x = X(temperature);
        ref double c = ref MemoryMarshal.GetReference(_pieces.AsSpan(PieceOf(x), Stride));
        double u = (x - Unsafe.Add(ref c, Stride - 2)) * Unsafe.Add(ref c, Stride - 1);
        double p = c;
        double liquidDensity = Unsafe.Add(ref c, 1);
        double vaporDensity = Unsafe.Add(ref c, 2);
        double liquidEnthalpy = Unsafe.Add(ref c, 3);
        double vaporEnthalpy = Unsafe.Add(ref c, 4);
        double liquidEntropy = Unsafe.Add(ref c, 5);
        for (int i = 1; i < Order; i++)
        {
            c = ref Unsafe.Add(ref c, Count);
            p = (p * u) + c;
            liquidDensity = (liquidDensity * u) + Unsafe.Add(ref c, 1);
            vaporDensity = (vaporDensity * u) + Unsafe.Add(ref c, 2);
            liquidEnthalpy = (liquidEnthalpy * u) + Unsafe.Add(ref c, 3);
            vaporEnthalpy = (vaporEnthalpy * u) + Unsafe.Add(ref c, 4);
            liquidEntropy = (liquidEntropy * u) + Unsafe.Add(ref c, 5);
        }

        return new SaturationValues(temperature, p, liquidDensity, vaporDensity, liquidEnthalpy, vaporEnthalpy, liquidEntropy);
    }

    /// <summary>The saturated states at a pressure within the curves; the temperature belongs to the pressure to rounding.</summary>
    public SaturationValues AtPressure(double pressure)
    {
        double temperature = TemperatureAt(Math.Log(pressure));
        SaturationValues s = AtTemperature(temperature);
        double change = (pressure - s.Pressure) / s.PressureSlope;
        for (int step = 0; step < MaximumPolish && Math.Abs(change) > PolishTolerance * temperature; step++)
        {
            temperature = Math.Min(temperature + change, MaximumTemperature);
            s = AtTemperature(temperature);
            change = (pressure - s.Pressure) / s.PressureSlope;
        }

        return new SaturationValues(
            Math.Min(temperature + change, MaximumTemperature),
            pressure,
            s.LiquidDensity,
            s.VaporDensity,
            s.LiquidEnthalpy,
            s.VaporEnthalpy,
            s.LiquidEntropy);
    }

    /// <summary>The changes with temperature of the saturated states, per K, in the places of their values.</summary>
    public SaturationValues SlopesAt(double temperature)
    {
        double x = X(temperature);
        ReadOnlySpan<double> c = _pieces.AsSpan(PieceOf(x), Stride);
        double u = (x - c[Stride - 2]) * c[Stride - 1];
        Span<double> slopes = stackalloc double[Count];
        for (int k = 0; k < Count; k++)
        {
            double sum = 0;
            for (int i = 0; i < Order - 1; i++)
            {
                sum = (sum * u) + ((Order - 1 - i) * c[(i * Count) + k]);
            }

            slopes[k] = sum * c[Stride - 1] / (-2 * x * CriticalTemperature);
        }

        return new SaturationValues(temperature, slopes[0], slopes[1], slopes[2], slopes[3], slopes[4], slopes[5]);
    }

    /// <summary>The same curves with enthalpies and entropy moved by constants, J/kg and J/(kg·K).</summary>
    public SaturationCurves WithReference(double enthalpyOffset, double entropyOffset)
    {
        var pieces = (double[])_pieces.Clone();
        for (int constant = (Order - 1) * Count; constant < pieces.Length; constant += Stride)
        {
            pieces[constant + 3] += enthalpyOffset;
            pieces[constant + 4] += enthalpyOffset;
            pieces[constant + 5] += entropyOffset;
        }

        return new SaturationCurves(
            CriticalTemperature,
            MaximumTemperature,
            _cellsPerX,
            _pieceOfCell,
            pieces,
            _lowestLogPressure,
            _piecesPerLogPressure,
            _temperaturePieces);
    }

    private double X(double temperature) => Math.Sqrt(Math.Max(0, (CriticalTemperature - temperature) * _inverseCriticalTemperature));

    private int PieceOf(double x)
    {
        int cell = Math.Min((int)(x * _cellsPerX), _pieceOfCell.Length - 1);
        return _pieceOfCell[cell] * Stride;
    }

    private double TemperatureAt(double logPressure)
    {
        double position = (logPressure - _lowestLogPressure) * _piecesPerLogPressure;
        int piece = Math.Max(0, Math.Min((int)position, (_temperaturePieces.Length / Order) - 1));
        ReadOnlySpan<double> c = _temperaturePieces.AsSpan(piece * Order, Order);
        double u = (2 * (position - piece)) - 1;
        double sum = c[0];
        for (int i = 1; i < c.Length; i++)
        {
            sum = (sum * u) + c[i];
        }

        return sum;
    }
}
