using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>
/// Wetted and dry metal: dE_w/dt = f·(G_o·(T_air − T_w) + G_water·(T_water − T_w) + P − G·(T_w − T)) + C·df/dt·T*, dE_d/dt alike with 1 − f, G/10 and −C·df/dt·T*, df/dt = (λ − f)/10 s; T* the
/// temperature of the part that gives metal away. In the state: E_w, E_d, f. On dry metal a film may condense, UA·(T_sat − T_d).
/// </summary>
internal sealed class OracleMetal(double capacity, double outer, double inner)
{
    public double Film { get; init; }

    /// <summary>Conductance to water that moves and its temperature.</summary>
    public double Water { get; init; }

    public double WaterTemperature { get; init; }

    public double ToLiquid { get; private set; }

    public double ToVapor { get; private set; }

    public static double Within(double level) => Math.Min(0.999, Math.Max(0.001, level));

    public double[] Initial(double level, double temperature)
    {
        double f = Within(level);
        return capacity == 0 ? [0, 0, 0] : [capacity * f * temperature, capacity * (1 - f) * temperature, f];
    }

    public double Wet(double[] y, int at) => y[at] / (capacity * y[at + 2]);

    public double Dry(double[] y, int at) => y[at + 1] / (capacity * (1 - y[at + 2]));

    /// <summary>The surface that water sees: the wetted one, and as the liquid goes the dry one.</summary>
    public double Coldest(double[] y, int at)
    {
        double f = y[at + 2];
        return Dry(y, at) + ((Wet(y, at) - Dry(y, at)) * f / (f + 0.005));
    }

    public void Slope(double[] y, double[] d, int at, double liquid, double vapor, double level, double air, double heater = 0, double condensing = 0)
    {
        if (capacity == 0)
        {
            // No metal: each part balances what it takes from the air and gives to the refrigerant.
            double share = Within(level);
            ToLiquid = share * outer * inner / (outer + inner) * (air - liquid);
            ToVapor = (1 - share) * outer * inner / ((10 * outer) + inner) * (air - vapor);
            return;
        }

        double f = y[at + 2];
        double wet = Wet(y, at);
        double dry = Dry(y, at);
        double change = (Within(level) - f) / 10;
        double moved = capacity * change * (change < 0 ? wet : dry);
        ToLiquid = f * inner * (wet - liquid);
        ToVapor = (1 - f) * ((inner / 10 * (dry - vapor)) - (Film * Math.Max(0, condensing - dry)));
        d[at] = (f * ((outer * (air - wet)) + (Water * (WaterTemperature - wet)) + heater)) - ToLiquid + moved;
        d[at + 1] = ((1 - f) * ((outer * (air - dry)) + (Water * (WaterTemperature - dry)) + heater)) - ToVapor - moved;
        d[at + 2] = change;
    }
}

/// <summary>
/// Oil by Raoult's rule with a factor: 90 s where it foams, 3.2e5 s where it diffuses; 2000 J/(kg·K), 15 W/K for a kilogram to what surrounds it. In the state: dissolved mass, energy.
/// </summary>
internal sealed class OracleOil(PropertyModel model, double mass, double molarMass, double factor, double start)
{
    private readonly double _reference = model.SaturationAtTemperature(start).Bubble.InternalEnergy;

    public double Release { get; private set; }

    public double Enthalpy { get; private set; }

    public double Heat { get; private set; }

    public double[] Initial(double dissolved) => [dissolved, (mass * 2000 * start) + (dissolved * _reference)];

    public double Temperature(double[] y, int at) => (y[at + 1] - (y[at] * _reference)) / (mass * 2000);

    public void Slope(double[] y, double[] d, int at, double pressure, double around, double heater = 0)
    {
        double t = Temperature(y, at);
        SaturationPoint saturation = model.SaturationAtTemperature(Math.Min(model.Range.MaximumSaturationTemperature, t));
        double level = pressure / saturation.Bubble.Pressure;
        double ratio = model.MolarMass / molarMass;
        double equilibrium = level < 1 ? mass * ratio * factor * level / (1 - level) : double.PositiveInfinity;
        double own = y[at] / mass / ratio;
        double z = Math.Min(1, Math.Max(0, ((own / (factor + own) / level) - 1.5) / 0.5));
        double foam = (6 * Math.Pow(z, 5)) - (15 * Math.Pow(z, 4)) + (10 * Math.Pow(z, 3));
        Release = y[at] > equilibrium ? (y[at] - equilibrium) * (((1 - foam) / 3.2e5) + (foam / 90)) : 0;
        Enthalpy = saturation.Dew.Enthalpy;
        Heat = 15 * Math.Pow(mass, 2.0 / 3) * (around - t);
        d[at] = -Release;
        d[at + 1] = Heat + heater - (Release * Enthalpy);
    }
}

/// <summary>
/// A cylinder: 200 W/(m²·K) inside and natural convection (Churchill and Chu, an upright wall 15 K above the air) and radiation outside, over 5.8·V^(2/3); steel of 480 J/(kg·K). In the state:
/// mass, energy, temperature of the wall.
/// </summary>
internal sealed class OracleCylinder(PropertyModel model, double volume, double tare)
{
    private readonly double _surface = 5.8 * Math.Pow(volume, 2.0 / 3);

    public VesselPoint Vessel { get; private set; }

    /// <summary>Between the wall and the air, W/(m²·K).</summary>
    public static double Outside(double volume, double air)
    {
        double height = 1.37 * Math.Pow(volume, 1.0 / 3);
        double film = air + 7.5;
        double viscosity = 15.9e-6 * Math.Pow(film / 300, 1.75);
        double rayleigh = 9.80665 / film * 15 * Math.Pow(height, 3) * 0.707 / (viscosity * viscosity);
        double nusselt = Math.Pow(0.825 + (0.387 * Math.Pow(rayleigh, 1.0 / 6) / Math.Pow(1 + Math.Pow(0.492 / 0.707, 9.0 / 16), 8.0 / 27)), 2);
        return (nusselt * 0.0263 * Math.Pow(film / 300, 0.82) / height) + (4 * 0.9 * 5.670374e-8 * Math.Pow(air, 3));
    }

    public double[] Initial(double content, double temperature) =>
        [content, content * model.VesselAtTemperature(temperature, content / volume).Bulk.InternalEnergy, temperature];

    public VesselPoint At(double[] y, int at) => Vessel = model.VesselAtEnergy(y[at] / volume, y[at + 1] / y[at]);

    /// <summary>After <see cref="At"/>, what flows in added by the caller.</summary>
    public void Slope(double[] y, double[] d, int at, double air, double factor = 1)
    {
        double heat = 200 * _surface * (y[at + 2] - Vessel.Bulk.Temperature);
        d[at] = 0;
        d[at + 1] = heat;
        d[at + 2] = ((Outside(volume, air) * factor * _surface * (air - y[at + 2])) - heat) / (tare * 480);
    }
}
