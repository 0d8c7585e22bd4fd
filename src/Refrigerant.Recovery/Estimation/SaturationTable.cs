using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// Saturation values on an even grid of temperature, read off linearly: built once for a fluid, then some ten nanoseconds a state. Immutable.
/// </summary>
/// <remarks>
/// Pressures and the vapor's density are kept as logarithms, in which they are nearly straight: at 2 K between the nodes the error is
/// h²/8·(ln p)″, 1e-4 for common refrigerants at room temperature. Between the curves the vessel's energy is U = L·u′ + G·u″ of liquid L and vapor G. With
/// a = (u″ − u′)/(v″ − v′) heating at constant mass and volume takes L·(du′/dT − a·dv′/dT) + G·(du″/dT − a·dv″/dT), and vapor drawn off takes
/// h″ − u′ + v′·a a kilogram: these are what is tabled. Of a blend they are those of its composition as charged, vapor at the dew point; what is in equilibrium with its liquid while
/// vapor leaves it is in a <see cref="GlideTable"/>.
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

    private readonly float[] _values;
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
        _values = new float[nodes * Columns];
        for (int i = 0; i < nodes; i++)
        {
            Fill(model, Lowest + (i * Spacing), _values.AsSpan(i * Columns, Columns));
        }

        Glide = IsPure ? null : model is MixtureModel blend ? blend.Glide : GlideTable.Fixed(model);
        double typical = Math.Min(290, Highest);
        VaporViscosity = model.ViscosityAtSaturation(typical).Vapor;
    }

    /// <summary>Lowest temperature, K.</summary>
    public double Lowest { get; }

    /// <summary>Highest temperature, K.</summary>
    public double Highest { get; }

    /// <summary>Whether bubble and dew pressure are the same.</summary>
    public bool IsPure { get; }

    /// <summary>A blend as vapor leaves it; null of a pure fluid.</summary>
    public GlideTable? Glide { get; }

    /// <summary>J/(kg·K).</summary>
    public double GasConstant { get; }

    /// <summary>Dynamic viscosity of the vapor at room temperature, Pa·s.</summary>
    public double VaporViscosity { get; }

    /// <summary>Values at a temperature, K; outside the table those of its end.</summary>
    public void At(double temperature, out SaturationValues at)
    {
        int node = Locate(temperature, out double share);
        ReadOnlySpan<float> low = _values.AsSpan(node * Columns, 2 * Columns);
        double rest = 1 - share;
        at.PressureSlope = (low[Columns] - low[0]) / Spacing;
        at.Pressure = Math.Exp((rest * low[0]) + (share * low[Columns]));
        at.VaporDensity = Math.Exp((rest * low[2]) + (share * low[Columns + 2]));
        at.LiquidVolume = (rest * low[3]) + (share * low[Columns + 3]);
        at.LiquidHeatCapacity = (rest * low[4]) + (share * low[Columns + 4]);
        at.VaporHeatCapacity = (rest * low[5]) + (share * low[Columns + 5]);
        at.VaporTakes = (rest * low[6]) + (share * low[Columns + 6]);
        at.Compressibility = (rest * low[7]) + (share * low[Columns + 7]);
        at.ThinCompressibility = 1;
        at.GasHeatCapacity = (rest * low[8]) + (share * low[Columns + 8]);
    }

    /// <summary>Values of a blend whose liquid has become another one.</summary>
    /// <param name="temperature">K; outside the table that of its end.</param>
    /// <param name="root">√q of <see cref="Glide"/>.</param>
    /// <param name="at">The values.</param>
    public void At(double temperature, double root, out SaturationValues at)
    {
        Span<double> values = stackalloc double[GlideTable.Columns];
        Glide!.At(temperature, root, values, out at.PressureSlope, out at.ThinCompressibility);
        at.Pressure = Math.Exp(values[0]);
        at.VaporDensity = Math.Exp(values[1]);
        at.LiquidVolume = values[2];
        at.LiquidHeatCapacity = values[3];
        at.VaporHeatCapacity = values[4];
        at.VaporTakes = values[5];
        at.Compressibility = values[6];
        int node = Locate(temperature, out double share) * Columns;
        at.GasHeatCapacity = ((1 - share) * _values[node + 8]) + (share * _values[node + Columns + 8]);
    }

    /// <summary>Pressure of the liquid as charged at a temperature, Pa: where vapor of that composition condenses.</summary>
    public double BubblePressure(double temperature)
    {
        int at = (Locate(temperature, out double share) * Columns) + 1;
        return Math.Exp(((1 - share) * _values[at]) + (share * _values[at + Columns]));
    }

    /// <summary>Dew pressure at a temperature, Pa.</summary>
    public double DewPressure(double temperature)
    {
        int node = Locate(temperature, out double share);
        int at = node * Columns;
        return Math.Exp(((1 - share) * _values[at]) + (share * _values[at + Columns]));
    }

    /// <summary>Temperature of dew at a pressure, K; outside the table that of its end.</summary>
    public double DewTemperature(double pressure) => TemperatureAt(pressure, 0);

    /// <summary>Temperature at which the liquid as charged boils at a pressure, K; outside the table that of its end.</summary>
    public double BubbleTemperature(double pressure) => TemperatureAt(pressure, 1);

    private double TemperatureAt(double pressure, int column)
    {
        double wanted = Math.Log(Math.Max(pressure, double.Epsilon));
        int low = 0;
        int high = _last + 1;
        if (wanted <= _values[column])
        {
            return Lowest;
        }

        if (wanted >= _values[(high * Columns) + column])
        {
            return Highest;
        }

        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            if (_values[(middle * Columns) + column] < wanted)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        double at = _values[(low * Columns) + column];
        return Lowest + (Spacing * (low + ((wanted - at) / (_values[(high * Columns) + column] - at))));
    }

    private static void Fill(PropertyModel model, double temperature, Span<float> row)
    {
        Curves at = Read(model, temperature);
        Curves above = Read(model, temperature + Difference);
        Curves below = Read(model, temperature - Difference);
        const double Span = 2 * Difference;
        row[0] = (float)Math.Log(at.DewPressure);
        row[1] = (float)Math.Log(at.BubblePressure);
        row[2] = (float)-Math.Log(at.VaporVolume);
        row[3] = (float)at.LiquidVolume;
        row[4] = (float)(((above.LiquidEnergy - below.LiquidEnergy) / Span) - (at.Chord * (above.LiquidVolume - below.LiquidVolume) / Span));
        row[5] = (float)(((above.VaporEnergy - below.VaporEnergy) / Span) - (at.Chord * (above.VaporVolume - below.VaporVolume) / Span));
        row[6] = (float)(at.VaporEnthalpy - at.LiquidEnergy + (at.LiquidVolume * at.Chord));
        row[7] = (float)(at.DewPressure * at.VaporVolume * model.MolarMass / (MolarGasConstant * temperature));
        row[8] = (float)model.DerivativesAt(temperature, 0.5 / at.VaporVolume).IsochoricHeatCapacity;
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
            VaporEnergy = both.Dew.Enthalpy - (both.Dew.Pressure * VaporVolume);
            Chord = (VaporEnergy - LiquidEnergy) / (VaporVolume - LiquidVolume);
        }

        public double DewPressure { get; }

        public double BubblePressure { get; }

        public double LiquidVolume { get; }

        public double VaporVolume { get; }

        public double LiquidEnergy { get; }

        public double VaporEnergy { get; }

        public double VaporEnthalpy { get; }

        public double Chord { get; }
    }
}
