using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Tests.Estimation.Truths;

/// <summary>
/// The second kind: one vessel with a wetted and a dry metal node, the wetted share shrinking with the liquid, oil with two time constants, a
/// compressor of linear efficiency, warmed suction gas, a lagging condenser, a cylinder with a balance of its own. Explicit Euler steps of 0.2 s.
/// </summary>
public sealed class WettedTruth
{
    private const double Step = 0.2;
    private const double Atmosphere = 101_325;
    private const double AirGasConstant = 287;
    private const double OilMolarMass = 0.5;

    /// <summary>kg/s of liquid that is pushed.</summary>
    private const double Pushes = 0.13;

    private readonly PropertyModel _model;
    private readonly Fault? _fault;

    private WettedTruth(PropertyModel model, Fault? fault)
    {
        _model = model;
        _fault = fault;
    }

    public required double Charge { get; init; }

    public required double Volume { get; init; }

    public required double Start { get; init; }

    public required double Air { get; init; }

    public required double Displacement { get; init; }

    public required double Outer { get; init; }

    public required double Metal { get; init; }

    public required double Oil { get; init; }

    public required double OilFactor { get; init; }

    public required double Hose { get; init; }

    public required double Efficiency { get; init; }

    public required double EfficiencySlope { get; init; }

    public required double CylinderVolume { get; init; }

    public required double Content { get; init; }

    public required double Level { get; init; }

    public static SimulatedJob Draw(int seed, Fault? fault)
    {
        var r = new Draws(seed);
        string[] fluids = ["R-134a", "R-22", "R-410A", "R-32", "R-404A", "R-290", "R-407C"];
        string fluid = fluids[r.Below(fluids.Length)];
        double charge = r.LogUniform(0.8, 12);
        double volume = charge * (0.0022 + (0.0028 * r.Unit())) * (fluid == "R-290" ? 2.2 : 1);
        double air = 283 + (27 * r.Unit());
        var truth = new WettedTruth(Fluid.Get(fluid).Model, fault)
        {
            Charge = charge,
            Volume = volume,
            Air = air,
            Start = air - 3 + (4 * r.Unit()),
            Displacement = (charge * r.LogUniform(5e-5, 1.8e-4)) + 1e-4,
            Outer = charge * r.LogUniform(2, 10),
            Metal = charge * r.LogUniform(2e3, 6e3),
            Oil = charge * r.LogUniform(0.05, 0.35),
            OilFactor = 0.8 + (1.4 * r.Unit()),
            Hose = r.LogUniform(0.8e-5, 4e-5),
            Efficiency = 0.85 + (0.1 * r.Unit()),
            EfficiencySlope = 0.01 + (0.012 * r.Unit()),
            Level = fluid == "R-134a" ? 60e3 : 95e3,
            Content = 0.5 + (3 * r.Unit()),
            CylinderVolume = 0.022 + (0.002 * charge),
        };
        var t = new Draws(7 + seed);
        double displacement = truth.Displacement * truth.Efficiency;
        var told = new Told
        {
            Fluid = fluid,
            Displacement = displacement * t.Off(0.1),
            Charge = charge * t.Off(0.25),
            Volume = volume * t.Off(0.25),
            Outer = truth.Outer / t.Off(0.4),
            Metal = truth.Metal * t.Off(0.5),
            HoseResistance = 2 / (truth.Hose * truth.Hose) * t.Off(0.5),
            Temperature = air,
            Oil = truth.Oil,
            Level = truth.Level,
            CylinderContent = truth.Content,
        };
        return new SimulatedJob("second", seed, charge, volume, displacement, told, truth.Run(new Draws(seed + 31)));
    }

    private TruthLog Run(Draws noise)
    {
        var log = new TruthLog();
        double mass = Charge;
        VesselPoint vessel = _model.VesselAtTemperature(Start, mass / Volume);
        double dissolved = Math.Min(0.3 * mass, Equilibrium(0.98 * vessel.Bulk.Pressure, Start));
        mass -= dissolved;
        vessel = _model.VesselAtTemperature(Start, mass / Volume);
        double energy = mass * vessel.Bulk.InternalEnergy;
        double liquidAtStart = Math.Max(1e-9, mass * (1 - vessel.Bulk.VaporFraction));
        double wet = Start;
        double dry = Start;
        double inCylinder = Content;
        double cylinderEnergy = inCylinder * _model.VesselAtTemperature(Air, inCylinder / CylinderVolume).Bulk.InternalEnergy;
        double shell = Air;
        double condenser = Air;
        double bias = 0.005 * 1.6e6 * noise.Normal();
        double pull = 0.03 * noise.Normal();
        double airMass = 0;
        double pushed = 0;
        double next = 0;
        for (double t = 0; t < 6 * 3600; t += Step)
        {
            bool faulty = _fault is not null && _fault.IsAt(t);
            double displacement = Displacement * (faulty && _fault!.Kind == FaultKind.Weak ? _fault.Size : 1);
            double hose = Hose / (faulty && _fault!.Kind == FaultKind.Hose ? Math.Sqrt(_fault.Size) : 1);
            bool open = !(faulty && _fault!.Kind == FaultKind.Valve);
            bool rests = faulty && _fault!.Kind == FaultKind.Rest && t < _fault.At + _fault.Size;
            bool pushes = faulty && _fault!.Kind == FaultKind.Push && pushed < _fault.Size;
            vessel = _model.VesselAtEnergy(mass / Volume, energy / mass);
            double temperature = vessel.Bulk.Temperature;
            double pressure = vessel.Bulk.Pressure;
            bool isWet = vessel.Bulk.VaporFraction is > 0 and < 1 && vessel.Liquid.Density > 0;
            StatePoint vapor = isWet ? vessel.Vapor : vessel.Bulk;
            double liquid = isWet ? mass * (1 - vessel.Bulk.VaporFraction) : 0;
            double seen = pressure + (airMass * AirGasConstant * temperature / Volume);
            if (faulty && _fault!.Kind == FaultKind.Leak && seen < Atmosphere)
            {
                airMass += _fault.Size * 0.029 * (1 - (seen * seen / (Atmosphere * Atmosphere))) * Step;
            }

            double warmest = _model.CriticalTemperature - 2;
            double inletPressure = _model.VesselAtEnergy(inCylinder / CylinderVolume, cylinderEnergy / inCylinder).Bulk.Pressure;
            double discharge = Math.Max(inletPressure, _model.SaturationAtTemperature(Math.Min(condenser, warmest)).Bubble.Pressure);
            double density = vapor.Density * temperature / (temperature + (0.6 * Math.Max(0, Air - temperature)));
            double flow = 0;
            double suction = open ? seen : 20_000;
            if (open && !rests && !pushes)
            {
                (flow, suction) = Draw(seen, vapor.Density, density, discharge, displacement, hose);
            }

            double condensed = _model.SaturationAtTemperature(Math.Min(condenser, warmest)).Bubble.Enthalpy;
            condenser += (Air + (flow * Math.Max(0, vapor.Enthalpy + 4e4 - condensed) / (4e5 * Displacement)) - condenser) * Step / 20;
            condenser = Math.Min(condenser, _model.CriticalTemperature - 3);
            double enters = _model.SaturationAtTemperature(Math.Max(Air - 5, condenser - 3)).Bubble.Enthalpy;
            inCylinder += flow * Step;
            cylinderEnergy += flow * enters * Step;
            if (pushes && liquid > Pushes * Step)
            {
                pushed += Pushes * Step;
                mass -= Pushes * Step;
                energy -= Pushes * Step * vessel.Liquid.Enthalpy;
                inCylinder += Pushes * Step;
                cylinderEnergy += Pushes * Step * vessel.Liquid.Enthalpy;
            }

            double contentTemperature = _model.VesselAtEnergy(inCylinder / CylinderVolume, cylinderEnergy / inCylinder).Bulk.Temperature;
            double toContent = 9 * (shell - contentTemperature);
            cylinderEnergy += toContent * Step;
            shell += ((6 * (Air - shell)) - toContent) * Step / 6e3;

            if (t >= next - 1e-9)
            {
                next += 1;
                double moved = faulty && _fault!.Kind == FaultKind.Pull ? _fault.Size
                    : faulty && _fault!.Kind == FaultKind.Drift ? _fault.Size * (t - _fault.At) / 60 : 0;
                double gauge = suction - Atmosphere + bias + (0.001 * 1.6e6 * noise.Normal());
                double gross = 12.5 + inCylinder + pull + moved + (0.004 * noise.Normal());
                log.Samples.Add(new TruthSample(
                    t, Math.Round(gauge / 1e3) * 1e3, Math.Round(gross / 0.01) * 0.01, Air, !rests, true, mass + dissolved, seen, liquid));
            }

            if (seen <= Level)
            {
                log.EndTime = t;
                break;
            }

            double share = 0.15 + (0.6 * Math.Sqrt(liquid / liquidAtStart));
            double conductance = 0.035 * Metal;
            double toWet = (liquid > 0 ? share * conductance : 0.03 * conductance) * (wet - temperature);
            double toDry = 0.03 * (1 - share) * conductance * (dry - temperature);
            double holds = Equilibrium(pressure, dry);
            double released = Math.Max(0, (dissolved - holds) / (dissolved > 2 * holds ? 90 : 900));
            double around = Air + (faulty && _fault!.Kind == FaultKind.Heat ? _fault.Size : 0);
            double along = 0.01 * Metal * (dry - wet);
            wet += ((0.5 * Outer * (around - wet)) + along - toWet) * Step / (0.4 * Metal);
            dry += ((0.5 * Outer * (around - dry)) - along - toDry) * Step / (0.6 * Metal);
            airMass *= 1 - (flow / mass * Step);
            mass += (released - flow) * Step;
            dissolved -= released * Step;
            energy += (toWet + toDry + ((released - flow) * vapor.Enthalpy)) * Step;
        }

        return log;
    }

    /// <summary>Refrigerant in the oil: Raoult's rule with a factor.</summary>
    private double Equilibrium(double pressure, double temperature)
    {
        double saturation = _model.SaturationAtTemperature(Math.Min(temperature, _model.CriticalTemperature - 2)).Dew.Pressure;
        double x = Math.Min(0.9, pressure / saturation);
        return OilFactor * Oil * _model.MolarMass / OilMolarMass * x / (1 - x);
    }

    /// <summary>Hose and machine in series, by bisection on the suction pressure.</summary>
    private (double Flow, double Suction) Draw(double pressure, double density, double drawn, double discharge, double displacement, double hose)
    {
        double low = 1e3;
        double high = pressure;
        double flow = 0;
        double suction = pressure;
        for (int i = 0; i < 40; i++)
        {
            suction = 0.5 * (low + high);
            double through = hose * Math.Sqrt(Math.Max(0, density * (pressure - suction)));
            double efficiency = Math.Max(0, Efficiency - (EfficiencySlope * (Math.Max(1, discharge / suction) - 1)));
            flow = displacement * efficiency * drawn * suction / pressure;
            if (through > flow)
            {
                low = suction;
            }
            else
            {
                high = suction;
            }
        }

        return (flow, suction);
    }
}
