using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// Saturation values on an even grid of temperature, read off linearly: built once for a fluid, then some ten nanoseconds a state. Immutable.
/// </summary>
/// <remarks>
/// Pressures and the vapor's density are kept as logarithms, in which they are nearly straight: at 2 K between the nodes the error is
/// h²/8·(ln p)″, 1e-4 for common refrigerants at room temperature. Between the curves the vessel's energy is U = m·u′ + (V − m·v′)·a with
/// a = (u″ − u′)/(v″ − v′), so that heating at constant mass takes m·c + (V − m·v′)·a′ with c = u′′T − a·v′′T, and vapor drawn off takes
/// h″ − u′ + v′·a a kilogram: these are what is tabled.
/// </remarks>
internal sealed class SaturationTable
{
    /// <summary>K between nodes.</summary>
    private const double Spacing = 2;

    /// <summary>K: colder than any appliance gets while it is emptied.</summary>
    private const double Coldest = 180;

    /// <summary>K: a condenser at the cut-out of a common refrigerant.</summary>
    private const double Warmest = 345;

    /// <summary>K below the end of the curves, where liquid and vapor become one.</summary>
    private const double BelowCritical = 3;

    /// <summary>K to either side for slopes.</summary>
    private const double Difference = 0.05;

    private const double MolarGasConstant = 8.31446261815324;
    private const int Columns = 9;

    private readonly double[] _values;
    private readonly int _last;

    /// <summary>Tables a fluid.</summary>
    public SaturationTable(PropertyModel model)
    {
        Lowest = Math.Max(model.Range.MinimumTemperature + 1, Coldest);
        double end = Math.Min(model.Range.MaximumSaturationTemperature - BelowCritical, Warmest);
        int nodes = Math.Max(2, (int)Math.Floor((end - Lowest) / Spacing) + 1);
        Highest = Lowest + ((nodes - 1) * Spacing);
        _last = nodes - 2;
        IsPure = model.Composition.Count == 1;
        GasConstant = MolarGasConstant / model.MolarMass;
        _values = new double[nodes * Columns];
        for (int i = 0; i < nodes; i++)
        {
            Fill(model, Lowest + (i * Spacing), _values.AsSpan(i * Columns, Columns));
        }

        double typical = Math.Min(290, Highest);
        VaporViscosity = model.ViscosityAtSaturation(typical).Vapor;
    }

    /// <summary>Lowest temperature, K.</summary>
    public double Lowest { get; }

    /// <summary>Highest temperature, K.</summary>
    public double Highest { get; }

    /// <summary>Whether bubble and dew pressure are the same.</summary>
    public bool IsPure { get; }

    /// <summary>J/(kg·K).</summary>
    public double GasConstant { get; }

    /// <summary>Dynamic viscosity of the vapor at room temperature, Pa·s.</summary>
    public double VaporViscosity { get; }

    /// <summary>Values at a temperature, K; outside the table those of its end.</summary>
    public void At(double temperature, out SaturationValues at)
    {
        int node = Locate(temperature, out double share);
        ReadOnlySpan<double> low = _values.AsSpan(node * Columns, 2 * Columns);
        double rest = 1 - share;
        at.DewSlope = (low[Columns] - low[0]) / Spacing;
        at.DewPressure = Math.Exp((rest * low[0]) + (share * low[Columns]));
        at.BubblePressure = IsPure ? at.DewPressure : Math.Exp((rest * low[1]) + (share * low[Columns + 1]));
        at.VaporDensity = Math.Exp((rest * low[2]) + (share * low[Columns + 2]));
        at.LiquidVolume = (rest * low[3]) + (share * low[Columns + 3]);
        at.LiquidHeatCapacity = (rest * low[4]) + (share * low[Columns + 4]);
        at.VolumeHeatCapacity = (rest * low[5]) + (share * low[Columns + 5]);
        at.VaporTakes = (rest * low[6]) + (share * low[Columns + 6]);
        at.Compressibility = (rest * low[7]) + (share * low[Columns + 7]);
        at.GasHeatCapacity = (rest * low[8]) + (share * low[Columns + 8]);
    }

    /// <summary>Dew pressure at a temperature, Pa.</summary>
    public double DewPressure(double temperature)
    {
        int node = Locate(temperature, out double share);
        int at = node * Columns;
        return Math.Exp(((1 - share) * _values[at]) + (share * _values[at + Columns]));
    }

    /// <summary>Temperature of dew at a pressure, K; outside the table that of its end.</summary>
    public double DewTemperature(double pressure)
    {
        double wanted = Math.Log(Math.Max(pressure, double.Epsilon));
        int low = 0;
        int high = _last + 1;
        if (wanted <= _values[0])
        {
            return Lowest;
        }

        if (wanted >= _values[high * Columns])
        {
            return Highest;
        }

        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            if (_values[middle * Columns] < wanted)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        double at = _values[low * Columns];
        return Lowest + (Spacing * (low + ((wanted - at) / (_values[high * Columns] - at))));
    }

    private static void Fill(PropertyModel model, double temperature, Span<double> row)
    {
        Curves at = Read(model, temperature);
        Curves above = Read(model, temperature + Difference);
        Curves below = Read(model, temperature - Difference);
        const double Span = 2 * Difference;
        row[0] = Math.Log(at.DewPressure);
        row[1] = Math.Log(at.BubblePressure);
        row[2] = -Math.Log(at.VaporVolume);
        row[3] = at.LiquidVolume;
        row[4] = ((above.LiquidEnergy - below.LiquidEnergy) / Span) - (at.Chord * (above.LiquidVolume - below.LiquidVolume) / Span);
        row[5] = (above.Chord - below.Chord) / Span;
        row[6] = at.VaporEnthalpy - at.LiquidEnergy + (at.LiquidVolume * at.Chord);
        row[7] = at.DewPressure * at.VaporVolume * model.MolarMass / (MolarGasConstant * temperature);
        row[8] = model.DerivativesAt(temperature, 0.5 / at.VaporVolume).IsochoricHeatCapacity;
    }

    private static Curves Read(PropertyModel model, double temperature)
    {
        SaturationPoint both = model.SaturationAtTemperature(temperature);
        return new Curves(in both);
    }

    private int Locate(double temperature, out double share)
    {
        double place = (temperature - Lowest) / Spacing;
        int node = place >= 0 ? (int)Math.Min(place, _last) : 0;
        share = Math.Max(0, Math.Min(1, place - node));
        return node;
    }

    private readonly struct Curves
    {
        public Curves(in SaturationPoint both)
        {
            DewPressure = both.Dew.Pressure;
            BubblePressure = both.Bubble.Pressure;
            LiquidVolume = 1 / both.Bubble.Density;
            VaporVolume = 1 / both.Dew.Density;
            LiquidEnergy = both.Bubble.Enthalpy - (both.Bubble.Pressure * LiquidVolume);
            VaporEnthalpy = both.Dew.Enthalpy;
            Chord = (both.Dew.Enthalpy - (both.Dew.Pressure * VaporVolume) - LiquidEnergy) / (VaporVolume - LiquidVolume);
        }

        public double DewPressure { get; }

        public double BubblePressure { get; }

        public double LiquidVolume { get; }

        public double VaporVolume { get; }

        public double LiquidEnergy { get; }

        public double VaporEnthalpy { get; }

        public double Chord { get; }
    }
}
