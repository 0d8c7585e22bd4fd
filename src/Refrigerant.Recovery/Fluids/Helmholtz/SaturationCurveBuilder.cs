using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>Solves the phase equilibrium along the saturation line of a pure fluid, from cold to critical, and fits a <see cref="SaturationLine"/> to it.</summary>
internal sealed class SaturationCurveBuilder
{
    private const int Order = SaturationLine.Order;
    private const int Count = SaturationLine.Count;
    private const int Stride = SaturationLine.Stride;

    /// <summary>Pieces in x to begin with.</summary>
    private const int FirstPieces = 32;

    /// <summary>Cells of such a piece: it may be halved five times. The cell at the critical point is left out: the curves end there.</summary>
    private const int CellsPerPiece = 32;

    /// <summary>A piece is halved where its last coefficients exceed this part of the value.</summary>
    private const double Tolerance = 1e-12;

    /// <summary>Below this x the isotherms are so flat that a failure to converge is the end of the curves, not an error.</summary>
    private const double CriticalRegion = 0.02;

    private readonly ChebyshevFit _fit = new(Order);
    private readonly PureEquation _equation;
    private readonly double _criticalTemperature;
    private readonly double _cell;
    private readonly List<double[]> _pieces = [];
    private readonly short[] _pieceOfCell = new short[FirstPieces * CellsPerPiece];
    private int _firstCell;

    private SaturationCurveBuilder(PureEquation equation, double criticalTemperature)
    {
        _equation = equation;
        _criticalTemperature = criticalTemperature;
        _cell = Math.Sqrt(1 - (equation.Data.MinimumTemperature / criticalTemperature)) / (FirstPieces * CellsPerPiece);
    }

    /// <summary>Builds the curves.</summary>
    /// <exception cref="ConvergenceException">The equation of state has no saturation line that can be followed.</exception>
    public static SaturationLine Build(PureEquation equation)
    {
        PureFluidData data = equation.Data;
        bool found = CriticalPoint.TryFind(
            equation.Residual,
            data.ReducingTemperature / data.CriticalTemperature,
            data.CriticalMolarDensity / data.ReducingMolarDensity,
            out double tau,
            out _);
        if (!found)
        {
            throw new ConvergenceException($"{data.Designation}: no critical point near the stated one.", 0);
        }

        return new SaturationCurveBuilder(equation, data.ReducingTemperature / tau).Build();
    }

    private SaturationLine Build()
    {
        var track = new SaturationTrack(_equation, _criticalTemperature);
        Span<double> values = stackalloc double[Order * Count];
        bool open = true;
        for (int k = FirstPieces - 1; k >= 0 && open; k--)
        {
            open = AddPiece(track, k * CellsPerPiece, CellsPerPiece, values);
        }

        var pieces = new double[_pieces.Count * Stride];
        for (int i = 0; i < _pieces.Count; i++)
        {
            _pieces[i].CopyTo(pieces, i * Stride);
        }

        for (int cell = 0; cell < _firstCell; cell++)
        {
            _pieceOfCell[cell] = _pieceOfCell[_firstCell];
        }

        double end = _firstCell * _cell;
        double maximum = Math.Min(_criticalTemperature * (1 - (end * end)), _equation.Data.MaximumTemperature);
        return new SaturationLine(_criticalTemperature, maximum, 1 / _cell, _pieceOfCell, pieces);
    }

    /// <summary>Fits the cells, in halves where one piece does not do. False where the curves end.</summary>
    private bool AddPiece(SaturationTrack track, int firstCell, int cells, Span<double> values)
    {
        if (firstCell > 0 || cells == 1)
        {
            if (firstCell == 0)
            {
                _firstCell = 1;
                return false;
            }

            double half = 0.5 * cells * _cell;
            double center = (firstCell * _cell) + half;
            track.Mark();
            for (int i = 0; i < Order; i++)
            {
                double x = center + (half * _fit.Node(i));
                if (!track.TryMoveTo(x))
                {
                    if (x > CriticalRegion)
                    {
                        throw new ConvergenceException(
                            $"{_equation.Data.Designation}: no phase equilibrium at {Require.Text(track.Temperature)} K.", track.Points);
                    }

                    if (cells == 1)
                    {
                        _firstCell = firstCell + 1;
                        return false;
                    }

                    break;
                }

                track.Store(values, i);
                if (i == Order - 1)
                {
                    double[] piece = Fit(values, center, 1 / half, out bool converged);
                    if (converged || cells == 1)
                    {
                        for (int cell = firstCell; cell < firstCell + cells; cell++)
                        {
                            _pieceOfCell[cell] = (short)_pieces.Count;
                        }

                        _pieces.Add(piece);
                        return true;
                    }
                }
            }

            track.Return();
        }

        return AddPiece(track, firstCell + (cells / 2), cells / 2, values) && AddPiece(track, firstCell, cells / 2, values);
    }

    private double[] Fit(ReadOnlySpan<double> values, double center, double scale, out bool converged)
    {
        var piece = new double[Stride];
        Span<double> coefficients = stackalloc double[Order];
        converged = true;
        for (int k = 0; k < Count; k++)
        {
            _fit.Polynomial(values.Slice(k * Order, Order), coefficients);
            for (int i = 0; i < Order; i++)
            {
                piece[((Order - 1 - i) * Count) + k] = coefficients[i];
            }

            // The Chebyshev coefficients of highest order are those of the polynomial over 2^(n − 1).
            double tail = (Math.Abs(coefficients[Order - 1]) / (1 << (Order - 2))) + (Math.Abs(coefficients[Order - 2]) / (1 << (Order - 3)));
            double least = Math.Min(Math.Abs(values[k * Order]), Math.Abs(values[(k * Order) + Order - 1]));
            converged &= k >= 3 || tail <= Tolerance * least;
        }

        piece[Stride - 2] = center;
        piece[Stride - 1] = scale;
        return piece;
    }
}
