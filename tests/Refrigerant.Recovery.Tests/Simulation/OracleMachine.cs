using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>
/// A machine behind its suction hoses, written out again from docs/models.md: η = 1 − 0.04·(r^(1/1.15) − 1) unless told otherwise, gas that warms on its way, compression with the
/// exponent of the real gas at 0.65, a body of 4 kJ/K, 6 and 1 W/K and 100 W of friction for 0.5 L/s, a condenser of 6 MW for each m³/s at 15 K.
/// </summary>
internal sealed class OracleMachine(PropertyModel model, OracleGas gas, OracleLine? line, double displacement)
{
    private readonly double _share = displacement / 5e-4;

    public double Clearance { get; init; } = 0.04;

    public bool HasBody { get; init; } = true;

    public bool LetsPass { get; init; } = true;

    public bool Condenses { get; init; } = true;

    public double Flow { get; private set; }

    public double Suction { get; private set; }

    /// <summary>Enthalpy of what it delivers, J/kg.</summary>
    public double Outlet { get; private set; }

    /// <summary>Change of the body's temperature, K/s.</summary>
    public double BodySlope { get; private set; }

    public double Efficiency(double ratio) => Math.Max(0, 1 - (Clearance * (Math.Pow(Math.Max(1, ratio), 1 / 1.15) - 1)));

    public void Solve(in StatePoint vapor, double pressure, double discharge, double body, double air, double opening = 1)
    {
        double t = vapor.Temperature;
        double heat = gas.Heat(pressure);
        double hose = HasBody && line is not null ? line.Conductance : 0;
        double inside = HasBody ? _share : 0;
        double conductance = hose + inside;
        double around = HasBody ? ((hose * air) + (inside * body)) / conductance : t;
        Draw(vapor, pressure, discharge, around, conductance, heat);
        Flow *= opening;
        Suction *= Math.Max(opening, 1e-3);

        double gain = HasBody ? 1 - Math.Exp(-conductance / (Flow * heat)) : 0;
        double warm = t + ((around - t) * gain);
        double fromBody = HasBody ? inside * (body - t) * gain * Flow * heat / conductance : 0;
        double kappa = gas.Exponent(Suction);
        double share = (kappa - 1) / kappa;
        double rise = discharge > Suction ? (Math.Pow(discharge / Suction, share) - 1) / 0.65 : 0;
        double density = vapor.Density * Suction / pressure * t / warm;
        double work = Suction / density / share * rise;
        double leaves = discharge > Suction ? gas.AfterWork(warm, Suction, discharge, work) : warm;
        double capacity = Flow * gas.HotHeat((leaves + body) / 2, discharge);
        double toBody = HasBody ? capacity * (leaves - body) * (1 - Math.Exp(-inside / capacity)) : 0;
        double hot = vapor.Enthalpy + (heat * (warm - t)) + work - (toBody / Flow);
        BodySlope = HasBody ? (toBody - fromBody + (_share * (100 - (6 * (body - air))))) / (4000 * _share) : 0;
        Outlet = Condenses ? hot - (Condensed(hot, Flow, discharge, air) / Flow) : hot;
    }

    /// <summary>Heat of the condenser: what it can give up and what brings the flow to 3 K below its dew point, the smaller of both, smoothly (fourth powers).</summary>
    public double Condensed(double hot, double flow, double discharge, double air)
    {
        StatePoint dew = model.SaturationAtPressure(Math.Min(discharge, model.SaturationAtTemperature(model.Range.MaximumSaturationTemperature).Dew.Pressure)).Dew;
        if (dew.Temperature <= air)
        {
            return 0;
        }

        double needed = flow * (hot - model.SaturationAtTemperature(Math.Max(dew.Temperature - 3, air)).Bubble.Enthalpy);
        double possible = 6e6 * displacement / 15 * (dew.Temperature - air);
        return needed > 0 ? Math.Pow(Math.Pow(needed, -4) + Math.Pow(possible, -4), -0.25) : 0;
    }

    /// <summary>Work on each kilogram of a mixture of a density, J/kg.</summary>
    public double Work(double suction, double density, double discharge)
    {
        double share = 1 - (1 / gas.Exponent(suction));
        return discharge > suction ? suction / density / share * (Math.Pow(discharge / suction, share) - 1) / 0.65 : 0;
    }

    private void Draw(in StatePoint vapor, double pressure, double discharge, double around, double conductance, double heat)
    {
        double t = vapor.Temperature;
        double density = vapor.Density;
        double Drawn(double x)
        {
            double cold = displacement * Efficiency(discharge / (x * pressure)) * density * x;
            return conductance == 0 || cold == 0
                ? cold
                : FixedStep.Root(1e-9 * cold, 3 * cold, 1e-14, flow => flow - (cold * t / (around + ((t - around) * Math.Exp(-conductance / (flow * heat))))));
        }

        if (line is null)
        {
            Suction = pressure;
            Flow = Drawn(1);
            return;
        }

        bool Gets(double x) => line.Passes(Drawn(x), pressure, density, gas.IdealExponent, gas.Viscosity, x * pressure);
        double most = discharge / pressure;
        if (LetsPass && most < 1 && Gets(most))
        {
            Suction = discharge;
            Flow = line.Vapor(pressure, density, gas.IdealExponent, gas.Viscosity, discharge);
            return;
        }

        double root = FixedStep.Bisect(1e-6, 1, Gets);
        Suction = root * pressure;
        Flow = Drawn(root);
    }
}
