using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// A blend in a vessel as vapor leaves it: what is in equilibrium with the liquid, tabled over the temperature and over how far the liquid has changed. Immutable.
/// </summary>
/// <remarks>
/// Liquid L and vapor G over it exchange and lose vapor: (L + κ·G)·ds = −dL, κ how far the vapor's composition follows the liquid's, s as in <see cref="GlideLine"/>. The grid is even in the
/// temperature and in √q, q = e^(−s), over which properties are nearly straight; read off linearly. Energy at constant volume: with û = u′ − v·∂u′/∂s and v̂ = v′ − v·∂v′/∂s of what boils off, v the pace, and
/// a = (u″ − û)/(v″ − v̂), heating takes L·(∂u′/∂T − a·∂v′/∂T) + G·(∂u″/∂T − a·∂v″/∂T), and vapor drawn off takes h″ − û + v̂·a a kilogram.
/// </remarks>
internal sealed class GlideTable
{
    /// <summary>Number of values at a place.</summary>
    public const int Columns = 7;

    /// <summary>Nodes of √q.</summary>
    private const int Roots = 16;

    /// <summary>Node at which the pace is taken.</summary>
    private const int Middle = 10;

    /// <summary>s of the node at √q = 0: less than a thousandth of the liquid is left.</summary>
    private const double LastPlace = 7;

    /// <summary>K between nodes.</summary>
    private const double Spacing = 4;

    /// <summary>K: colder than any appliance gets while it is emptied.</summary>
    private const double Coldest = 180;

    /// <summary>K: a condenser at the cut-out of a common refrigerant.</summary>
    private const double Warmest = 345;

    /// <summary>K below the end of the curves, where liquid and vapor become one.</summary>
    private const double BelowCritical = 3;

    private readonly float[] _values;
    private readonly float[] _thin = new float[Roots];
    private readonly float[] _following = new float[Roots];
    private readonly float[] _pace;
    private readonly double _lowest;
    private readonly double _lowestRoot;
    private readonly double _perRoot;
    private readonly int _last;

    private GlideTable(double lowest, int nodes, double lowestRoot)
    {
        _lowest = lowest;
        _last = nodes - 2;
        _lowestRoot = lowestRoot;
        _perRoot = (Roots - 1) / (1 - lowestRoot);
        _values = new float[nodes * Roots * Columns];
        _pace = new float[nodes];
        _pace.AsSpan().Fill(1);
        _following.AsSpan().Fill(1);
    }

    /// <summary>Whether vapor takes its own composition with it; else that of the whole, and q = e^(−β) with the share β of vapor.</summary>
    public bool IsFollowed { get; private set; }

    /// <summary>Tables a blend whose composition can be followed.</summary>
    public static GlideTable Of(MixtureModel model)
    {
        double lowest = Lowest(model.Range);
        int nodes = Nodes(lowest, model.Range);
        var table = new GlideTable(lowest, nodes, 0) { IsFollowed = true };
        int n = model.Composition.Count;
        double[] liquid = new double[n], vapor = new double[n], liquidBefore = new double[n], vaporBefore = new double[n];
        var points = new GlidePoint[Roots * nodes];
        var places = new double[Roots];
        var line = new GlideLine(model);
        if (!line.IsAtHome)
        {
            return Fixed(model);
        }

        int reached = Roots;
        for (int k = Roots - 1; k >= 0; k--)
        {
            places[k] = k == 0 ? LastPlace : -2 * Math.Log(table.RootAt(k));
            if (k == Roots - 1 || line.MoveBy(places[k] - places[k + 1]))
            {
                table.Fill(line, points.AsSpan(k * nodes, nodes), k == Middle);
                table._thin[k] = (float)(model.MolarMass / line.VaporMolarMass);
                reached = k;
                line.Compositions(liquid, vapor);
                table._following[k] = k < Roots - 1 ? (float)Follows(liquidBefore, liquid, vaporBefore, vapor) : 1;
                liquid.CopyTo(liquidBefore, 0);
                vapor.CopyTo(vaporBefore, 0);
            }
            else
            {
                points.AsSpan(reached * nodes, nodes).CopyTo(points.AsSpan(k * nodes, nodes));
                table._thin[k] = table._thin[reached];
                table._following[k] = table._following[reached];
            }
        }

        table._following[Roots - 1] = table._following[Roots - 2];

        table.Derive(points, places, nodes, model.MolarMass);
        return table;
    }

    /// <summary>Tables a blend whose composition cannot be followed.</summary>
    public static GlideTable Fixed(PropertyModel model)
    {
        double lowest = Lowest(model.Range);
        int nodes = Nodes(lowest, model.Range);
        var table = new GlideTable(lowest, nodes, Math.Exp(-0.5));
        var points = new GlidePoint[Roots * nodes];
        var places = new double[Roots];
        for (int k = 0; k < Roots; k++)
        {
            places[k] = -2 * Math.Log(table.RootAt(k));
            table._thin[k] = 1;
        }

        for (int i = 0; i < nodes; i++)
        {
            double temperature = lowest + (i * Spacing);
            SaturationPoint both = model.SaturationAtTemperature(temperature);
            for (int k = 0; k < Roots; k++)
            {
                double vapor = Math.Min(1, places[k]);
                VesselPoint at = model.VesselAtTemperature(temperature, 1 / (((1 - vapor) / both.Bubble.Density) + (vapor / both.Dew.Density)));
                StatePoint liquid = at.Liquid.Phase == Phase.Undefined ? both.Bubble : at.Liquid;
                StatePoint gas = at.Vapor.Phase == Phase.Undefined ? both.Dew : at.Vapor;
                points[(k * nodes) + i] = new GlidePoint
                {
                    Pressure = at.Bulk.Pressure,
                    LiquidVolume = 1 / liquid.Density,
                    VaporVolume = 1 / gas.Density,
                    LiquidEnergy = liquid.InternalEnergy,
                    VaporEnergy = gas.InternalEnergy,
                };
            }
        }

        table.Derive(points, places, nodes, model.MolarMass);
        return table;
    }

    /// <summary>How fast a liquid changes at a temperature, K, over how fast it does where s was taken: components differ in volatility more the colder it is.</summary>
    public double Pace(double temperature)
    {
        double place = (temperature - _lowest) / Spacing;
        int node = place >= 0 ? (int)Math.Min(place, _last) : 0;
        return _pace[node] + (Math.Max(0, Math.Min(1, place - node)) * (_pace[node + 1] - _pace[node]));
    }

    /// <summary>Vapor's density, kg/m³, liquid's volume, m³/kg, and κ.</summary>
    public void Densities(double temperature, double root, out double vaporDensity, out double liquidVolume, out double following)
    {
        Locate(temperature, root, out int at, out double byTemperature, out double byRoot);
        int column = at / Columns % Roots;
        following = _following[column] + (byRoot * (_following[column + 1] - _following[column]));
        vaporDensity = Math.Exp(Read(at + 1, byTemperature, byRoot));
        liquidVolume = Read(at + 2, byTemperature, byRoot);
    }

    /// <summary>All values at a temperature and a root of q.</summary>
    /// <param name="temperature">K; outside the table its end.</param>
    /// <param name="root">√q.</param>
    /// <param name="values">
    /// ln p; ln ρ″; v′, m³/kg; heat capacities of liquid and of vapor as above, J/(kg·K); what vapor drawn off takes, J/kg; p/(ρ″·R·T) with R of the blend as charged.
    /// </param>
    /// <param name="slope">d ln p/dT, 1/K.</param>
    /// <param name="thin">The last value for thin vapor of that composition.</param>
    public void At(double temperature, double root, Span<double> values, out double slope, out double thin)
    {
        Locate(temperature, root, out int at, out double byTemperature, out double byRoot);
        for (int k = 0; k < Columns; k++)
        {
            values[k] = Read(at + k, byTemperature, byRoot);
        }

        int column = at / Columns % Roots;
        thin = _thin[column] + (byRoot * (_thin[column + 1] - _thin[column]));
        int next = at + (Roots * Columns);
        double low = _values[at] + (byRoot * (_values[at + Columns] - _values[at]));
        double high = _values[next] + (byRoot * (_values[next + Columns] - _values[next]));
        slope = (high - low) / Spacing;
    }

    private static double Lowest(PropertyRange range) => Math.Max(range.MinimumTemperature + 1, Coldest);

    private static int Nodes(double lowest, PropertyRange range) =>
        Math.Max(3, (int)Math.Floor((Math.Min(range.MaximumSaturationTemperature - BelowCritical, Warmest) - lowest) / Spacing) + 1);

    /// <summary>How far the vapor's composition follows the liquid's, along the way the liquid went.</summary>
    private static double Follows(double[] liquidBefore, double[] liquid, double[] vaporBefore, double[] vapor)
    {
        double both = 0, own = 0;
        for (int i = 0; i < liquid.Length; i++)
        {
            double way = liquid[i] - liquidBefore[i];
            both += way * (vapor[i] - vaporBefore[i]);
            own += way * way;
        }

        // An azeotrope goes nowhere.
        return own > 1e-10 ? Math.Max(0.3, Math.Min(4, both / own)) : 1;
    }

    /// <summary>Slope through three places at the middle one, or at an end.</summary>
    private static double Slope(double before, double at, double after, double toBefore, double toAfter) =>
        ((at - before) / toBefore * (toAfter / (toBefore + toAfter))) + ((after - at) / toAfter * (toBefore / (toBefore + toAfter)));

    private double RootAt(int node) => _lowestRoot + (node / _perRoot);

    /// <summary>One liquid at all temperatures, from <see cref="GlideLine.Home"/> to both sides; where there is no equilibrium, on in a straight line.</summary>
    private void Fill(GlideLine line, Span<GlidePoint> points, bool paces)
    {
        double own = line.Away;
        int home = Math.Max(1, Math.Min(points.Length - 2, (int)Math.Round((line.Home - _lowest) / Spacing)));
        for (int i = home; i < points.Length; i++)
        {
            if (!line.At(_lowest + (i * Spacing), out points[i]))
            {
                points[i] = Beyond(points[i - 1], points[Math.Max(0, i - 2)]);
            }

            _pace[i] = paces && own > 0 ? (float)(line.Away / own) : _pace[i];
        }

        line.Return();
        for (int i = home - 1; i >= 0; i--)
        {
            if (!line.At(_lowest + (i * Spacing), out points[i]))
            {
                points[i] = Beyond(points[i + 1], points[i + 2]);
            }

            _pace[i] = paces && own > 0 ? (float)(line.Away / own) : _pace[i];
        }

        line.Return();
    }

    private static GlidePoint Beyond(in GlidePoint last, in GlidePoint before) => new()
    {
        Pressure = last.Pressure * last.Pressure / before.Pressure,
        LiquidVolume = (2 * last.LiquidVolume) - before.LiquidVolume,
        VaporVolume = last.VaporVolume * last.VaporVolume / before.VaporVolume,
        LiquidEnergy = (2 * last.LiquidEnergy) - before.LiquidEnergy,
        VaporEnergy = (2 * last.VaporEnergy) - before.VaporEnergy,
    };

    private void Derive(GlidePoint[] points, double[] places, int nodes, double molarMass)
    {
        for (int i = 0; i < nodes; i++)
        {
            double temperature = _lowest + (i * Spacing);
            int below = Math.Max(0, i - 1);
            int above = Math.Min(nodes - 1, i + 1);
            double span = (above - below) * Spacing;
            for (int k = 0; k < Roots; k++)
            {
                GlidePoint at = points[(k * nodes) + i];
                GlidePoint warm = points[(k * nodes) + above];
                GlidePoint cold = points[(k * nodes) + below];

                // Three neighbours in s; at an end the slope is that between it and the next.
                int fresh = Math.Min(Roots - 1, k + 1);
                int spent = Math.Max(0, k - 1);
                GlidePoint after = points[(spent * nodes) + i];
                GlidePoint before = points[(fresh * nodes) + i];
                double toBefore = places[k] - places[fresh];
                double toAfter = places[spent] - places[k];
                double energy, volume;
                if (toBefore == 0 || toAfter == 0)
                {
                    double way = toBefore + toAfter;
                    energy = (after.LiquidEnergy - before.LiquidEnergy) / way;
                    volume = (after.LiquidVolume - before.LiquidVolume) / way;
                }
                else
                {
                    energy = Slope(before.LiquidEnergy, at.LiquidEnergy, after.LiquidEnergy, toBefore, toAfter);
                    volume = Slope(before.LiquidVolume, at.LiquidVolume, after.LiquidVolume, toBefore, toAfter);
                }

                double boilsEnergy = at.LiquidEnergy - (_pace[i] * energy);
                double boilsVolume = at.LiquidVolume - (_pace[i] * volume);
                double chord = (at.VaporEnergy - boilsEnergy) / (at.VaporVolume - boilsVolume);
                Span<float> row = _values.AsSpan(((i * Roots) + k) * Columns, Columns);
                row[0] = (float)Math.Log(at.Pressure);
                row[1] = (float)-Math.Log(at.VaporVolume);
                row[2] = (float)at.LiquidVolume;
                row[3] = (float)((warm.LiquidEnergy - cold.LiquidEnergy - (chord * (warm.LiquidVolume - cold.LiquidVolume))) / span);
                row[4] = (float)((warm.VaporEnergy - cold.VaporEnergy - (chord * (warm.VaporVolume - cold.VaporVolume))) / span);
                row[5] = (float)(at.VaporEnthalpy - boilsEnergy + (boilsVolume * chord));
                row[6] = (float)(at.Pressure * at.VaporVolume * molarMass / (MixtureEquation.GasConstant * temperature));
            }
        }
    }

    private void Locate(double temperature, double root, out int at, out double byTemperature, out double byRoot)
    {
        double place = (temperature - _lowest) / Spacing;
        int node = place >= 0 ? (int)Math.Min(place, _last) : 0;
        byTemperature = Math.Max(0, Math.Min(1, place - node));
        double way = (root - _lowestRoot) * _perRoot;
        int column = way >= 0 ? (int)Math.Min(way, Roots - 2) : 0;
        byRoot = Math.Max(0, Math.Min(1, way - column));
        at = ((node * Roots) + column) * Columns;
    }

    private double Read(int at, double byTemperature, double byRoot)
    {
        int next = at + (Roots * Columns);
        double low = _values[at] + (byRoot * (_values[at + Columns] - _values[at]));
        double high = _values[next] + (byRoot * (_values[next + Columns] - _values[next]));
        return low + (byTemperature * (high - low));
    }
}
