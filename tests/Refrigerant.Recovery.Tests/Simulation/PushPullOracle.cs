using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>
/// Push-pull written out again from docs/models.md: a pool of liquid, the vapor above it with a pressure of its own, the machine that draws from the cylinder, a liquid hose.
/// States: m_pool, U_pool, m_vapor, U_vapor, time, T_body, E_wet, E_dry, f, m_cylinder, U_cylinder, T_wall, and where there is oil its two.
/// </summary>
internal sealed class PushPullOracle
{
    private readonly PropertyModel _model;
    private readonly double _liquidViscosity;
    private double _poolTemperature;

    public PushPullOracle(PropertyModel model, double start)
    {
        _model = model;
        _poolTemperature = start;
        _liquidViscosity = model.ViscosityAtSaturation(start).Liquid;
    }

    public required double Volume { get; init; }

    /// <summary>Free surface of the liquid, m².</summary>
    public required double Surface { get; init; }

    public required double Air { get; init; }

    public required OracleMetal Metal { get; init; }

    public OracleOil? Oil { get; init; }

    public required OracleMachine Machine { get; init; }

    public required OracleLine LiquidHose { get; init; }

    public required OracleCylinder Cylinder { get; init; }

    /// <summary>Highest absolute pressure that a hand on the inlet valve keeps the appliance below: it begins to close a tenth below it and has closed a twentieth below it.</summary>
    public double Design { get; init; } = double.PositiveInfinity;

    public double Pressure { get; private set; }

    public double PoolTemperature => _poolTemperature;

    /// <summary>Deepest share by which the cylinder lies below the liquid's saturation pressure, and whether the hose choked.</summary>
    public double Flashing { get; private set; }

    public bool Choked { get; private set; }

    /// <summary>Liquid on the bubble curve, vapor on the dew curve at the same pressure, with the mass, energy and volume of the vessel at equilibrium.</summary>
    public double[] Initial(double mass, double dissolved, double start, double content, double cylinderTemperature)
    {
        double energy = mass * _model.VesselAtTemperature(start, mass / Volume).Bulk.InternalEnergy;
        double liquid = 0;
        double liquidEnergy = 0;
        double level = 0;
        FixedStep.Root(start - 10, start + 10, 1e-15, t =>
        {
            StatePoint bubble = _model.SaturationAtTemperature(t).Bubble;
            StatePoint dew = _model.SaturationAtPressure(bubble.Pressure).Dew;
            liquid = (Volume - (mass / dew.Density)) / ((1 / bubble.Density) - (1 / dew.Density));
            liquidEnergy = liquid * bubble.InternalEnergy;
            level = liquid / bubble.Density / Volume;
            _poolTemperature = t;
            return liquidEnergy + ((mass - liquid) * dew.InternalEnergy) - energy;
        });
        return
        [
            liquid, liquidEnergy, mass - liquid, energy - liquidEnergy, 0, Air,
            .. Metal.Initial(level, start),
            .. Cylinder.Initial(content, cylinderTemperature),
            .. Oil?.Initial(dissolved) ?? [],
        ];
    }

    public void Slope(double[] y, double[] d)
    {
        double mass = y[0];
        double t = Pool(y[1] / mass, out double heat, out double expansion, out SaturationPoint saturation);
        StatePoint liquid = saturation.Bubble;
        double pool = mass / liquid.Density;
        double space = Volume - pool;
        VesselPoint above = _model.VesselAtEnergy(y[2] / space, y[3] / y[2]);
        double pressure = above.Bulk.Pressure;
        Pressure = pressure;
        double condensing = _model.SaturationAtPressure(pressure).Bubble.Temperature;
        double boil = Math.Max(0, mass * heat * (t - condensing) / ((saturation.Dew.Enthalpy - liquid.Enthalpy) * 2));
        double diffusivity = 0.08 / (liquid.Density * heat);
        double surface = 0.08 * Surface * Math.Max(0, condensing - t) / Math.Sqrt(Math.PI * diffusivity * (y[4] + 1));
        double mist = above.Liquid.Phase == Phase.Undefined ? 0 : (1 - above.Bulk.VaporFraction) * y[2];
        double rain = mist / 2;
        double rainEnthalpy = mist > 0 ? above.Liquid.Enthalpy : 0;

        VesselPoint received = Cylinder.At(y, 9);
        double back = received.Bulk.Pressure;
        double gauge = Design - 101_325;
        double margin = Math.Min(1, Math.Max(0, (101_325 + (0.9 * gauge) - pressure) / (0.05 * gauge)));
        double opening = double.IsInfinity(Design) ? 1 : margin * margin * (3 - (2 * margin));
        Machine.Solve(received.Vapor, back, pressure, y[5], Air, opening);
        double enthalpy = liquid.InternalEnergy + (pressure / liquid.Density);
        double flow = pressure > back ? LiquidHose.Liquid(_model, pressure, enthalpy, _liquidViscosity, back) : 0;
        Choked |= LiquidHose.Choked;
        Flashing = Math.Max(Flashing, 1 - (back / liquid.Pressure));

        Metal.Slope(y, d, 6, t, above.Bulk.Temperature, pool / Volume, Air, 0, condensing);
        double released = 0;
        double releasedEnergy = 0;
        if (Oil is OracleOil oil)
        {
            oil.Slope(y, d, 12, pressure, Metal.Dry(y, 6));
            d[7] -= oil.Heat;
            released = oil.Release;
            releasedEnergy = oil.Release * oil.Enthalpy;
        }

        double boiled = boil * saturation.Dew.Enthalpy;
        double dm = rain - boil - flow;
        double du = (rain * rainEnthalpy) - boiled - (flow * enthalpy) + Metal.ToLiquid + surface;

        // p·dV of the pool: dV = dm/ρ + m·(dv/dT)·dT with m·c·dT = dU − p·dV − u·dm.
        double share = expansion / heat;
        double change = ((dm / liquid.Density) + (share * (du - (liquid.InternalEnergy * dm)))) / (1 + (pressure * share));
        d[0] = dm;
        d[1] = du - (pressure * change);
        d[2] = boil - rain + Machine.Flow + released;
        d[3] = boiled - (rain * rainEnthalpy) + (Machine.Flow * Machine.Outlet) + Metal.ToVapor - surface + releasedEnergy + (pressure * change);
        d[4] = 1;
        d[5] = Machine.BodySlope;
        Cylinder.Slope(y, d, 9, Air);
        d[9] += flow - Machine.Flow;
        d[10] += (flow * enthalpy) - (Machine.Flow * received.Vapor.Enthalpy);
    }

    /// <summary>The liquid's temperature from its energy by Newton's method, with slopes by central differences over 0.02 K.</summary>
    private double Pool(double energy, out double heat, out double expansion, out SaturationPoint saturation)
    {
        double t = _poolTemperature;
        for (int i = 0; i < 20; i++)
        {
            StatePoint up = _model.SaturationAtTemperature(t + 0.01).Bubble;
            StatePoint down = _model.SaturationAtTemperature(t - 0.01).Bubble;
            saturation = _model.SaturationAtTemperature(t);
            heat = (up.InternalEnergy - down.InternalEnergy) / 0.02;
            expansion = ((1 / up.Density) - (1 / down.Density)) / 0.02;
            double step = (energy - saturation.Bubble.InternalEnergy) / heat;
            if (Math.Abs(step) < 1e-11 * t)
            {
                _poolTemperature = t;
                return t;
            }

            t += step;
        }

        throw new InvalidOperationException("No temperature of the pool.");
    }
}
