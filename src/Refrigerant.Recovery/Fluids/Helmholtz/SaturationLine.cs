using System;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The saturated states of a pure fluid up to its critical point as piecewise polynomials. Immutable; built by <see cref="SaturationCurveBuilder"/>, and what
/// <see cref="SaturationCurves"/> are made of.
/// </summary>
/// <remarks>
/// The variable is x = sqrt(1 − T/Tc) with the equation's own critical temperature: in it, an analytic equation of state has densities
/// and enthalpies without the infinite slope that they have in T. Pieces are blocks of equal cells in x and found by a table.
/// </remarks>
internal sealed class SaturationLine
{
    /// <summary>Coefficients of each polynomial.</summary>
    public const int Order = 10;

    /// <summary>Polynomials in a piece: pressure, liquid and vapor density, liquid and vapor enthalpy, liquid entropy.</summary>
    public const int Count = 6;

    /// <summary>Doubles in a piece: the polynomials, highest coefficients first and interleaved, then center and inverse half width.</summary>
    public const int Stride = (Order * Count) + 2;

    /// <summary>Newton's steps at most on the temperature of a pressure.</summary>
    private const int MaximumSteps = 30;

    /// <summary>Relative change of temperature at which it is found.</summary>
    private const double Arrived = 1e-15;

    private readonly double _inverseCriticalTemperature;
    private readonly double _cellsPerX;
    private readonly short[] _pieceOfCell;
    private readonly double[] _pieces;

    public SaturationLine(
        double criticalTemperature,
        double maximumTemperature,
        double cellsPerX,
        short[] pieceOfCell,
        double[] pieces)
    {
        CriticalTemperature = criticalTemperature;
        _inverseCriticalTemperature = 1 / criticalTemperature;
        MaximumTemperature = maximumTemperature;
        _cellsPerX = cellsPerX;
        _pieceOfCell = pieceOfCell;
        _pieces = pieces;
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

        // Both phases have the same Gibbs energy.
        double vaporEntropy = liquidEntropy + ((vaporEnthalpy - liquidEnthalpy) / temperature);
        return new SaturationValues(temperature, p, liquidDensity, vaporDensity, liquidEnthalpy, vaporEnthalpy, liquidEntropy, vaporEntropy);
    }

    /// <summary>The temperature of a pressure within the line, K.</summary>
    /// <param name="pressure">Pa.</param>
    /// <param name="near">A temperature to start from, K.</param>
    /// <exception cref="ConvergenceException">It was not found.</exception>
    public double TemperatureAt(double pressure, double near)
    {
        double temperature = near, last = double.PositiveInfinity;
        for (int step = 0; step < MaximumSteps; step++)
        {
            SaturationValues s = AtTemperature(temperature);

            // Newton's method in the logarithm of the pressure, which is nearly straight in 1/T.
            double change = Math.Log(pressure / s.Pressure) * s.Pressure / s.PressureSlope;
            change /= 1 - Math.Max(-0.5, Math.Min(0.5, change / temperature));
            temperature = Math.Min(temperature + change, MaximumTemperature);
            double size = Math.Abs(change);
            if (size <= Arrived * temperature || (size >= last && size < 1e-12 * temperature) || (temperature == MaximumTemperature && change > 0))
            {
                return temperature;
            }

            last = size;
        }

        throw new ConvergenceException($"No saturation temperature found at {Require.Text(pressure)} Pa.", MaximumSteps);
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

        return new SaturationValues(temperature, slopes[0], slopes[1], slopes[2], slopes[3], slopes[4], slopes[5], double.NaN);
    }

    /// <summary>The same line with enthalpies and entropy moved by constants, J/kg and J/(kg·K).</summary>
    public SaturationLine WithReference(double enthalpyOffset, double entropyOffset)
    {
        var pieces = (double[])_pieces.Clone();
        for (int constant = (Order - 1) * Count; constant < pieces.Length; constant += Stride)
        {
            pieces[constant + 3] += enthalpyOffset;
            pieces[constant + 4] += enthalpyOffset;
            pieces[constant + 5] += entropyOffset;
        }

        return new SaturationLine(CriticalTemperature, MaximumTemperature, _cellsPerX, _pieceOfCell, pieces);
    }

    private double X(double temperature) => Math.Sqrt(Math.Max(0, (CriticalTemperature - temperature) * _inverseCriticalTemperature));

    private int PieceOf(double x)
    {
        int cell = Math.Min((int)(x * _cellsPerX), _pieceOfCell.Length - 1);
        return _pieceOfCell[cell] * Stride;
    }
}
