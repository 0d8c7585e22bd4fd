using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Tests.Estimation.Truths;

/// <summary>
/// The third kind: liquid and vapor are not in equilibrium. The pool boils at a rate that its superheat drives, the vapor warms along the metal,
/// the metal is a chain of five pieces of which the pool covers the lower ones, air warms each by natural convection, oil lies under the pool
/// and gives off gas by diffusion, the hose is a nozzle, the compressor leaks and slips, the gauge lags, the scale creeps. Semi-implicit steps of
/// 0.1 s.
/// </summary>
public sealed class BoilingTruth
{
    private const double Step = 0.1;
    private const double Atmosphere = 101_325;
    private const int Pieces = 5;

    private readonly PropertyModel _model;
    private readonly Fault? _fault;
    private readonly double _gasConstant;

    private BoilingTruth(PropertyModel model, Fault? fault)
    {
        _model = model;
        _fault = fault;
        _gasConstant = 8.314 / model.MolarMass;
    }

    public required double Charge { get; init; }

    public required double Volume { get; init; }

    public required double Start { get; init; }

    public required double Air { get; init; }

    public required double Displacement { get; init; }

    public required double Efficiency { get; init; }

    public required double Clearance { get; init; }

    public required double Leakage { get; init; }

    public required double Outer { get; init; }

    public required double Metal { get; init; }

    public required double Film { get; init; }

    public required double BoilingRate { get; init; }

    public required double Oil { get; init; }

    public required double OilTime { get; init; }

    public required double NozzleArea { get; init; }

    public required double Level { get; init; }

    public required double GaugeLag { get; init; }

    public required double Creep { get; init; }

    public static SimulatedJob Draw(int seed, Fault? fault)
    {
        var r = new Draws(seed + 300_000);
        string[] fluids = ["R-134a", "R-22", "R-410A", "R-507A", "R-1234yf", "R-32"];
        string fluid = fluids[r.Below(fluids.Length)];
        PropertyModel model = Fluid.Get(fluid).Model;
        double charge = r.LogUniform(1, 15);
        double air = 281 + (26 * r.Unit());
        SaturationPoint both = model.SaturationAtTemperature(air);
        double fill = r.Uniform(0.2, 0.5);
        double volume = charge / ((fill * both.Bubble.Density) + ((1 - fill) * both.Dew.Density));
        double minutes = r.LogUniform(5, 25);
        double displacement = charge / (both.Dew.Density * 60 * minutes) * 1.6;
        double area = displacement * r.LogUniform(0.015, 0.05);
        var truth = new BoilingTruth(model, fault)
        {
            Charge = charge,
            Volume = volume,
            Air = air,
            Start = air + r.Uniform(-2, 1),
            Displacement = displacement,
            Efficiency = r.Uniform(0.82, 0.95),
            Clearance = r.Uniform(0.02, 0.045),
            Leakage = r.Uniform(0.003, 0.008),
            Outer = charge * r.LogUniform(2, 9),
            Metal = charge * r.LogUniform(1.5e3, 5e3),
            Film = charge * r.LogUniform(30, 120),
            BoilingRate = charge * r.LogUniform(1.5e-3, 6e-3),
            Oil = charge * r.LogUniform(0.03, 0.2),
            OilTime = r.LogUniform(150, 900),
            NozzleArea = area,
            Level = fluid is "R-134a" or "R-1234yf" ? 65e3 : 95e3,
            GaugeLag = r.Uniform(0.5, 4),
            Creep = 0.02 * r.Normal(),
        };
        double displaced = displacement * truth.Efficiency;
        var told = new Told
        {
            Fluid = fluid,
            Charge = charge * r.Off(0.25),
            Volume = volume * r.Off(0.25),
            Outer = truth.Outer * r.Off(0.4),
            Metal = truth.Metal * r.Off(0.5),
            Displacement = displaced * r.Off(0.1),
            HoseResistance = 1 / (0.8 * 0.8 * area * area) * r.Off(0.5),
            Temperature = air,
            Oil = truth.Oil,
            Level = truth.Level,
        };
        return new SimulatedJob("third", seed, charge, volume, displaced, told, truth.Run(new Draws(seed + 77)));
    }

    private TruthLog Run(Draws noise)
    {
        var log = new TruthLog();
        double bias = 0.006 * 1.6e6 * noise.Normal();
        SaturationPoint both = _model.SaturationAtTemperature(Start);
        double dissolved = Math.Min(0.25 * Charge, 0.35 * Oil);
        double liquid = (Charge - dissolved - (both.Dew.Density * Volume)) / (1 - (both.Dew.Density / both.Bubble.Density));
        double vapor = Charge - dissolved - liquid;
        double liquidAtStart = liquid;
        double pool = Start;
        double gas = Start;
        var metal = new double[Pieces];
        Array.Fill(metal, Start);
        double condenser = Air + 3;
        double delivered = 0;
        double airMoles = 0;
        double shown = double.NaN;
        double next = 0;
        for (double t = 0; t < 4 * 3600; t += Step)
        {
            bool faulty = _fault is not null && _fault.IsAt(t);
            SaturationPoint at = _model.SaturationAtTemperature(Clamp(pool));
            double space = Math.Max(0.2 * Volume, Volume - (Math.Max(0, liquid) / at.Bubble.Density));
            double density = vapor / space;
            SaturationPoint dew = _model.SaturationAtTemperature(Clamp(gas));
            double compressibility = dew.Dew.Pressure / (dew.Dew.Density * _gasConstant * gas);
            double z = 1 + ((compressibility - 1) * Math.Min(1.2, density / dew.Dew.Density));
            double pressure = density * _gasConstant * gas * z;
            double seen = pressure + (airMoles * 8.314 * gas / space);
            double latent = at.Dew.Enthalpy - at.Bubble.Enthalpy;

            double discharge = _model.SaturationAtTemperature(Clamp(condenser)).Bubble.Pressure;
            (double flow, double suction) = Draw(seen, density, gas, discharge, faulty);
            flow *= pressure / seen;
            shown = double.IsNaN(shown) ? suction : shown + ((suction - shown) * Step / (GaugeLag + Step));
            if (t >= next - 1e-9)
            {
                next += 1;
                double moved = faulty && _fault!.Kind == FaultKind.Pull ? _fault.Size
                    : faulty && _fault!.Kind == FaultKind.Drift ? _fault.Size * (t - _fault.At) / 60 : 0;
                double gauge = shown - Atmosphere + bias + (1200 * noise.Normal());
                double gross = 13.5 + delivered + (Creep * Math.Log(1 + (t / 60))) + moved + (0.005 * noise.Normal());
                log.Samples.Add(new TruthSample(
                    t, Math.Round(gauge / 500) * 500, Math.Round(gross / 0.01) * 0.01, Air, true, true, Math.Max(0, liquid) + vapor + dissolved, seen, Math.Max(0, liquid)));
            }

            if (seen <= Level)
            {
                log.EndTime = t;
                log.FlowShareAtEnd = flow / (Displacement * density);
                break;
            }

            // Boiling: proportional to how far the pool's own pressure is above the vapor's, bounded by what the pool holds.
            double share = Math.Max(0, liquid) / liquidAtStart;
            double boils = liquid > 0 ? BoilingRate * Math.Sqrt(share) * (at.Dew.Pressure - pressure) / 1e4 : 0;
            boils = Math.Min(boils, Math.Max(0, liquid) / (5 * Step));
            double equilibrium = at.Dew.Pressure > 0 ? 0.35 * Oil * Math.Min(1, pressure / _model.SaturationAtTemperature(Clamp(metal[0])).Dew.Pressure) : 0;
            double released = Math.Max(0, dissolved - equilibrium) / OilTime;

            double around = Air + (faulty && _fault!.Kind == FaultKind.Heat ? _fault.Size : 0);

            // The pool covers the lower pieces, in proportion to what is left of it.
            double toPool = 0;
            double toGas = 0;
            for (int i = 0; i < Pieces; i++)
            {
                double covered = liquid > 0 ? Math.Max(0.04, Math.Min(1, (share * Pieces * 0.8) + 0.15 - i)) : 0;
                covered = Math.Max(0, Math.Min(1, covered));
                double poolHeat = Film * 0.4 * covered / Pieces * (metal[i] - pool) * Math.Pow(Math.Max(0.3, Math.Abs(metal[i] - pool)) / 5, 0.4);
                double gasHeat = 0.02 * Film * (1 - covered) / Pieces * (metal[i] - gas);
                double outside = Outer / Pieces * (around - metal[i]) * Math.Pow(Math.Max(0.5, Math.Abs(around - metal[i])) / 10, 0.25);
                double along = (i > 0 ? 0.02 * Metal / Pieces * (metal[i - 1] - metal[i]) : 0) + (i < Pieces - 1 ? 0.02 * Metal / Pieces * (metal[i + 1] - metal[i]) : 0);
                metal[i] += (outside + along - poolHeat - gasHeat) * Step / (Metal / Pieces);
                toPool += poolHeat;
                toGas += gasHeat;
            }

            if (liquid > 0)
            {
                double capacity = Math.Max(0.02 * liquidAtStart, liquid) * 1300;
                pool += (toPool - (boils * latent)) * Step / capacity;
                liquid -= boils * Step;
            }
            else
            {
                pool = gas;
            }

            // What boils comes at the pool's temperature; what leaves cools the rest as it expands.
            double mixed = Math.Max(0, boils) * (pool - gas) / Math.Max(1e-4, vapor);
            double released1 = released * (metal[0] - gas) / Math.Max(1e-4, vapor);
            double expansion = 0.12 * gas * (boils + released - flow) / Math.Max(1e-4, vapor);
            double heating = toGas / (Math.Max(1e-4, vapor) * 750);
            gas += Math.Max(-2, Math.Min(2, (mixed + released1 + expansion + heating) * Step));
            vapor = Math.Max(1e-4, vapor + ((boils + released - flow) * Step));
            dissolved -= released * Step;
            delivered += flow * Step;
            condenser += (Air + 4 + (flow / (Displacement * 40) * 12) - condenser) * Step / 60;
        }

        return log;
    }

    private double Clamp(double temperature) =>
        Math.Max(_model.Range.MinimumTemperature + 2, Math.Min(_model.Range.MaximumSaturationTemperature - 2, temperature));

    /// <summary>A nozzle (Saint-Venant and Wantzel, exponent 1.1) before a machine with clearance, leakage and slip; bisection on the suction pressure.</summary>
    private (double Flow, double Suction) Draw(double pressure, double density, double gas, double discharge, bool faulty)
    {
        if (faulty && _fault!.Kind == FaultKind.Valve)
        {
            return (0, 25_000);
        }

        const double K = 1.1;
        double area = NozzleArea / (faulty && _fault!.Kind == FaultKind.Hose ? Math.Sqrt(_fault.Size) : 1);
        double displacement = Displacement * (faulty && _fault!.Kind == FaultKind.Weak ? _fault.Size : 1);
        double critical = Math.Pow(2 / (K + 1), K / (K - 1));
        double warmed = gas + (0.35 * Math.Max(0, Air - gas));
        double low = 500;
        double high = pressure;
        double flow = 0;
        double suction = pressure;
        for (int i = 0; i < 40; i++)
        {
            suction = 0.5 * (low + high);
            double x = Math.Max(critical, suction / pressure);
            double through = 0.8 * area * Math.Sqrt(2 * K / (K - 1) * pressure * density * (Math.Pow(x, 2 / K) - Math.Pow(x, (K + 1) / K)));
            double ratio = Math.Max(1, discharge / suction);
            double efficiency = Math.Max(0, Efficiency - (Leakage * ratio) - (Clearance * (Math.Pow(ratio, 1 / 1.12) - 1)));
            flow = displacement * efficiency * density * suction / pressure * gas / warmed;
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
