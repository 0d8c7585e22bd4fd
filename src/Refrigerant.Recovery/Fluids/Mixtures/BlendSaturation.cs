using System;
using System.Threading;
using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// Bubble and dew curve of a blend side by side: over the temperature, and over the pressure in quarters between powers of two. Where they bend too much for
/// that, as next to their warm ends, the curves themselves are looked up. Immutable but for the pieces over the pressure, which are made when first asked for.
/// </summary>
internal sealed class BlendSaturation
{
    private const int TemperaturePieces = 64;

    /// <summary>Last coefficients, over the first, up to which a piece is good.</summary>
    private const double Resolved = 2e-11;

    /// <summary>Bits of a number after those that tell the piece: its exponent and two more.</summary>
    private const int PieceShift = 50;

    private static readonly bool[] AllButHeats = [true, true, false, false, true, true, false, false];

    private readonly BoundaryCurve _bubble;
    private readonly BoundaryCurve _dew;
    private readonly CurveTable _byTemperature;
    private readonly double _lowest;
    private readonly bool[] _isGood = new bool[TemperaturePieces];
    private readonly double _piecesPerKelvin;
    private PressurePieces? _byPressure;

    public BlendSaturation(BoundaryCurve bubble, BoundaryCurve dew)
    {
        _bubble = bubble;
        _dew = dew;
        _lowest = bubble.MinimumTemperature;
        double width = (bubble.MaximumTemperature - _lowest) / TemperaturePieces;
        _piecesPerKelvin = 1 / width;
        _byTemperature = new CurveTable(TemperaturePieces);
        Span<double> values = stackalloc double[CurveTable.Order * CurveTable.Count];
        for (int piece = 0; piece < TemperaturePieces; piece++)
        {
            double low = _lowest + (piece * width);
            for (int i = 0; i < CurveTable.Order; i++)
            {
                double temperature = CurveTable.Node(i, low, low + width);
                StatePoint atBubble = bubble.At(temperature), atDew = dew.At(temperature);
                Store(values.Slice(i * CurveTable.Count), atBubble, atBubble.Pressure, atDew, atDew.Pressure);
            }

            _byTemperature.Add(low, low + width, values);
            _isGood[piece] = _byTemperature.IsResolved(piece, Resolved, AllButHeats);
        }
    }

    private PressurePieces ByPressure
    {
        get
        {
            if (Volatile.Read(ref _byPressure) is { } pieces)
            {
                return pieces;
            }

            var made = new PressurePieces(_bubble, _dew);
            return Interlocked.CompareExchange(ref _byPressure, made, null) ?? made;
        }
    }

    /// <summary>Both ends of boiling at a temperature within the curves.</summary>
    public SaturationPoint AtTemperature(double temperature)
    {
        int piece = Math.Max(0, Math.Min((int)((temperature - _lowest) * _piecesPerKelvin), TemperaturePieces - 1));
        if (!_isGood[piece])
        {
            return new SaturationPoint(_bubble.At(temperature), _dew.At(temperature));
        }

        _byTemperature.Evaluate(piece, temperature, out CurveValues v);
        return new SaturationPoint(
            new StatePoint(Phase.Liquid, temperature, v.First, v.Second, v.Third, v.Fourth, 0),
            new StatePoint(Phase.Vapor, temperature, v.Fifth, v.Sixth, v.Seventh, v.Eighth, 1));
    }

    /// <summary>Both ends of boiling at a pressure within the curves.</summary>
    public SaturationPoint AtPressure(double pressure)
    {
        PressurePieces pieces = ByPressure;
        int piece = Math.Max(0, PieceOf(pressure) - pieces.First);
        if (piece >= pieces.IsGood.Length || !pieces.IsGood[piece])
        {
            return new SaturationPoint(
                _bubble.At(_bubble.TemperatureOf(pressure)).WithPressure(pressure), _dew.At(_dew.TemperatureOf(pressure)).WithPressure(pressure));
        }

        pieces.Table.Evaluate(piece, pressure, out CurveValues v);
        return new SaturationPoint(
            new StatePoint(Phase.Liquid, v.First, pressure, v.Second, v.Third, v.Fourth, 0),
            new StatePoint(Phase.Vapor, v.Fifth, pressure, v.Sixth, v.Seventh, v.Eighth, 1));
    }

    private static int PieceOf(double pressure) => (int)(BitConverter.DoubleToInt64Bits(pressure) >> PieceShift);

    private static double Start(int piece) => BitConverter.Int64BitsToDouble((long)piece << PieceShift);

    private static void Store(Span<double> values, in StatePoint bubble, double first, in StatePoint dew, double second)
    {
        values[0] = first;
        values[1] = bubble.Density;
        values[2] = bubble.Enthalpy;
        values[3] = bubble.Entropy;
        values[4] = second;
        values[5] = dew.Density;
        values[6] = dew.Enthalpy;
        values[7] = dew.Entropy;
    }

    /// <summary>The pieces over the pressure.</summary>
    private sealed class PressurePieces
    {
        public PressurePieces(BoundaryCurve bubble, BoundaryCurve dew)
        {
            double low = Math.Max(bubble.MinimumPressure, dew.MinimumPressure);
            First = PieceOf(low);
            int end = PieceOf(Math.Min(bubble.MaximumPressure, dew.MaximumPressure));
            IsGood = new bool[Math.Max(0, end - First)];
            Table = new CurveTable(IsGood.Length);
            Span<double> values = stackalloc double[CurveTable.Order * CurveTable.Count];
            for (int piece = First; piece < end; piece++)
            {
                double high = Start(piece + 1);
                for (int i = 0; i < CurveTable.Order; i++)
                {
                    double pressure = CurveTable.Node(i, low, high);
                    StatePoint atBubble = bubble.At(bubble.TemperatureOf(pressure)), atDew = dew.At(dew.TemperatureOf(pressure));
                    Store(values.Slice(i * CurveTable.Count), atBubble, atBubble.Temperature, atDew, atDew.Temperature);
                }

                Table.Add(low, high, values);
                IsGood[piece - First] = Table.IsResolved(piece - First, Resolved, AllButHeats);
                low = high;
            }
        }

        public CurveTable Table { get; }

        public int First { get; }

        public bool[] IsGood { get; }
    }
}
