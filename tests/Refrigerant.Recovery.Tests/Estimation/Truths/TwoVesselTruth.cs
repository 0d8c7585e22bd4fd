using System;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Tests.Estimation.Truths;

/// <summary>
/// The first kind: one vessel or two behind a restriction, a lump of metal each, heat exchange that is not linear, oil with one time constant, a
/// machine with clearance, heated suction gas and a ratio that costs, a condenser that warms, refrigerant held up before the scale. Heun's method,
/// 0.1 s.
/// </summary>
public sealed class TwoVesselTruth
{
    private const double Step = 0.1;
    private const double GasConstant = 8.314;
    private const double AirMolarMass = 0.029;

    /// <summary>kg/m³: thinner refrigerant beside air is no longer drawn.</summary>
    private const double Thinnest = 0.5;

    private readonly PropertyModel _model;
    private readonly Fault? _fault;
    private readonly double[] _rate = new double[Slots];
    private double _airRate;
    private double _airFlow;
    private double _volumeFlow;
    private double _flow;
    private double _suction;
    private double _seen;
    private double _liquid;
    private double _vaporDensity;

    private TwoVesselTruth(PropertyModel model, Fault? fault)
    {
        _model = model;
        _fault = fault;
    }

    private const int Slots = 9;
    private const int MassA = 0, EnergyA = 1, MetalA = 2, MassB = 3, EnergyB = 4, MetalB = 5, Dissolved = 6, Condenser = 7, Delivered = 8;

    public required double Charge { get; init; }

    public required double Volume { get; init; }

    public required double Start { get; init; }

    public required double Air { get; init; }

    public required double Displacement { get; init; }

    public required double Outer { get; init; }

    public required double Metal { get; init; }

    public required double Hose { get; init; }

    public required double Atmosphere { get; init; }

    public required double Level { get; init; }

    public double Clearance { get; init; }

    public double Exponent { get; init; }

    public double SuctionHeat { get; init; }

    public double InnerFactor { get; init; }

    public double SplitVolume { get; init; } = 1;

    public double SplitLiquid { get; init; } = 1;

    public double Between { get; init; }

    public double Oil { get; init; }

    public double OilTime { get; init; } = 100;

    public double HeldUp { get; init; }

    public double HeldUpTime { get; init; }

    public double CondenserHeat { get; init; }

    public double CylinderConductance { get; init; }

    public double GaugeSpan { get; init; }

    private double VolumeA => Volume * SplitVolume;

    private double VolumeB => Math.Max(1e-9, Volume - VolumeA);

    private bool IsTwo => SplitVolume < 0.999;

    private double ShareA => IsTwo ? Math.Max(0.1, Math.Min(0.9, SplitLiquid)) : 1;

    public static SimulatedJob Draw(int seed, Fault? fault)
    {
        var r = new Draws(seed);
        string[] fluids = ["R-134a", "R-22", "R-410A", "R-404A", "R-32"];
        string fluid = fluids[r.Below(fluids.Length)];
        PropertyModel model = Fluid.Get(fluid).Model;
        double air = 273.15 + r.Uniform(5, 36);
        double start = air + r.Normal();
        double charge = r.LogUniform(1.5, 20);
        SaturationPoint both = model.SaturationAtTemperature(start);
        double fill = r.Uniform(0.2, 0.6);
        double volume = charge / ((fill * both.Bubble.Density) + ((1 - fill) * both.Dew.Density));
        double displacement = Math.Max(r.LogUniform(2.5e-4, 1e-3), charge / (both.Dew.Density * 2000));
        displacement = Math.Min(displacement, charge / (both.Dew.Density * 150));
        double metal = charge * 1300 * r.LogUniform(0.5, 3);
        double outer = r.LogUniform(0.15, 1.2) * displacement * both.Dew.Density * 1.8e5 / 30;
        double hose = r.LogUniform(0.02, 0.3) * both.Dew.Pressure / (displacement * displacement * both.Dew.Density);
        double atmosphere = 101_325 * r.Uniform(0.85, 1.01);
        bool two = r.Unit() < 0.5;
        bool oily = r.Unit() < 0.5;
        double split = r.Uniform(0.4, 0.8);
        double span = fluid is "R-134a" or "R-22" ? 1.6e6 : 2.5e6;
        double oil = oily ? 0.05 * charge * r.Unit() : 0;
        var truth = new TwoVesselTruth(model, fault)
        {
            Charge = charge,
            Volume = volume,
            Start = start,
            Air = air,
            Displacement = displacement,
            Metal = metal,
            Outer = outer,
            Hose = hose,
            Atmosphere = atmosphere,
            Level = 67_700,
            Clearance = r.Uniform(0.025, 0.055),
            Exponent = r.Uniform(1.1, 1.25),
            SuctionHeat = r.Uniform(0, 0.08),
            InnerFactor = r.LogUniform(4, 20),
            SplitVolume = two ? split : 1,
            SplitLiquid = two ? r.Uniform(0.3, 0.8) : 1,
            Between = two ? 2 * (1 - split) * volume / 2.5e4 : 0,
            Oil = oil,
            OilTime = r.LogUniform(30, 300),
            HeldUp = r.Uniform(0, 0.12),
            HeldUpTime = r.Uniform(5, 40),
            CondenserHeat = r.Uniform(0, 4e4),
            CylinderConductance = r.Uniform(8, 25),
            GaugeSpan = span,
        };
        double Off(double sigma) => Math.Exp(sigma * r.Normal());
        double root3 = Math.Sqrt(3);
        var told = new Told
        {
            Fluid = fluid,
            Charge = charge * Off(0.2),
            Volume = volume * Off(0.35),
            Outer = outer * Off(0.6),
            Metal = metal * Off(0.5),
            Displacement = displacement * Off(0.12),
            HoseResistance = hose * Off(0.4),
            Temperature = air + (0.7 * r.Normal()),
            Oil = oil,
            Level = truth.Level,
            Atmosphere = atmosphere,
            GaugeSpan = span,
            ChargeTolerance = 0.2 * root3,
            VolumeTolerance = 0.35 * root3,
            HeatTolerance = 0.9,
            MetalTolerance = 0.5 * root3,
            DisplacementTolerance = 0.12 * root3,
            HoseTolerance = 0.4 * root3,
        };
        return new SimulatedJob("first", seed, charge, volume, displacement, told, truth.Run(new Draws(seed + 5000), told.Temperature));
    }

    private TruthLog Run(Draws noise, double shownAir)
    {
        var log = new TruthLog();
        double bias = 0.006 * GaugeSpan * ((2 * noise.Unit()) - 1);
        double span = 0.004 * ((2 * noise.Unit()) - 1);
        double[] x = Initial();
        double[] trial = new double[Slots];
        double[] first = new double[Slots];
        double airMoles = 0;
        double airDelivered = 0;
        double heldUp = 0;
        double drift = 0;
        double next = 0;
        for (double t = 0; t < 3 * 3600; t += Step)
        {
            if (!Rates(t, x, airMoles))
            {
                break;
            }

            double airRate = _airRate;
            double airFlow = _airFlow;
            double flow = _flow;
            Array.Copy(_rate, first, Slots);
            if (t >= next - 1e-9)
            {
                next += 1;
                log.Samples.Add(Read(t, x, bias, span, heldUp - airDelivered, drift, shownAir, noise));
            }

            bool isHeld = _fault is not null && !double.IsPositiveInfinity(_fault.RestAt);
            if (isHeld && t >= _fault!.RestAt + _fault.RestTime)
            {
                break;
            }

            if (_seen <= Level && !isHeld)
            {
                log.EndTime = t;
                log.FlowShareAtEnd = _flow / (Displacement * _vaporDensity);
                break;
            }

            for (int i = 0; i < Slots; i++)
            {
                trial[i] = x[i] + (Step * first[i]);
            }

            bool both = Rates(t + Step, trial, airMoles);
            for (int i = 0; i < Slots; i++)
            {
                x[i] += Step * (both ? 0.5 * (first[i] + _rate[i]) : first[i]);
            }

            airMoles = Math.Max(0, airMoles + (airRate * Step));
            airDelivered += AirMolarMass * airFlow * Step;
            heldUp += Step * ((flow > 0 ? HeldUp * Math.Min(1, flow / 0.005) : 0) - heldUp) / HeldUpTime;
            heldUp = Math.Min(heldUp, x[Delivered]);
            drift += (-drift * Step / 600) + (0.04 * Math.Sqrt(2 * Step / 600) * noise.Normal());
        }

        return log;
    }

    private TruthSample Read(double t, double[] x, double bias, double span, double heldUp, double drift, double shownAir, Draws noise)
    {
        double moved = 0;
        if (_fault is not null && _fault.IsAt(t))
        {
            moved = _fault.Kind == FaultKind.Pull ? _fault.Size : _fault.Kind == FaultKind.Drift ? _fault.Size * (t - _fault.At) / 60 : 0;
        }

        double gauge = ((_suction - Atmosphere) * (1 + span)) + bias + (0.001 * GaugeSpan * noise.Normal());
        double gross = 13.5 + x[Delivered] - heldUp + drift + moved + (0.003 * noise.Normal());
        return new TruthSample(
            t,
            noise.Unit() > 0.05 ? Math.Round(gauge / 1000) * 1000 : double.NaN,
            noise.Unit() > 0.05 ? Math.Round(gross / 0.01) * 0.01 : double.NaN,
            shownAir,
            !IsResting(t),
            true,
            x[MassA] + (IsTwo ? x[MassB] : 0) + x[Dissolved],
            _seen,
            _liquid);
    }

    private double[] Initial()
    {
        SaturationPoint both = _model.SaturationAtTemperature(Start);
        double vapor = both.Dew.Density;
        double liquidDensity = both.Bubble.Density;
        double dissolved = 0.3 * Oil;
        double mass = Charge - dissolved;
        double liquid = Math.Max(0, mass - (vapor * Volume));
        double inA = Math.Min(IsTwo ? liquid * SplitLiquid : liquid, 0.85 * VolumeA * liquidDensity);
        double inB = IsTwo ? Math.Min(liquid - inA, 0.85 * VolumeB * liquidDensity) : 0;
        inA = liquid - inB;
        double massB = IsTwo ? inB + (vapor * (VolumeB - (inB / liquidDensity))) : 1;
        double massA = mass - (IsTwo ? massB : 0);
        var x = new double[Slots];
        x[MassA] = massA;
        x[EnergyA] = massA * _model.VesselAtTemperature(Start, massA / VolumeA).Bulk.InternalEnergy;
        x[MassB] = massB;
        x[EnergyB] = IsTwo ? massB * _model.VesselAtTemperature(Start, massB / VolumeB).Bulk.InternalEnergy : 0;
        x[MetalA] = x[MetalB] = Start;
        x[Dissolved] = dissolved;
        x[Condenser] = Air;
        return x;
    }

    private bool Rates(double t, double[] x, double airMoles)
    {
        VesselPoint a;
        VesselPoint b = default;
        try
        {
            a = _model.VesselAtEnergy(x[MassA] / VolumeA, x[EnergyA] / x[MassA]);
            if (IsTwo)
            {
                b = _model.VesselAtEnergy(x[MassB] / VolumeB, x[EnergyB] / x[MassB]);
            }
        }
        catch (PropertyRangeException)
        {
            return false;
        }

        bool faulty = _fault is not null && _fault.IsAt(t);
        (StatePoint vaporA, double liquidA, double fillA) = Parts(in a, x[MassA], VolumeA);
        (StatePoint vaporB, double liquidB, double fillB) = IsTwo ? Parts(in b, x[MassB], VolumeB) : (vaporA, 0, 0);
        double pressure = a.Bulk.Pressure;
        double temperature = a.Bulk.Temperature;
        _seen = pressure + (airMoles * GasConstant * temperature / Volume);
        _vaporDensity = vaporA.Density;
        double warmest = _model.Range.MaximumSaturationTemperature - 1;
        double discharge = _model.SaturationAtTemperature(Math.Min(x[Condenser], warmest)).Dew.Pressure;
        Draw(discharge, faulty);
        if (IsResting(t))
        {
            _flow = _volumeFlow = 0;
            _suction = _seen;
        }

        double between = IsTwo ? Between * (b.Bulk.Pressure - pressure) : 0;
        double carried = between > 0 ? vaporB.Enthalpy : vaporA.Enthalpy;
        double coldest = _model.Range.MinimumTemperature + 1;
        double atMetal = _model.SaturationAtTemperature(Math.Max(coldest, Math.Min(warmest, x[MetalA]))).Dew.Pressure;
        double holds = 0.3 * Oil * Math.Min(1.2, Math.Pow(pressure / atMetal, 1.3));
        double released = Oil > 0 && x[MassA] > 1e-3 ? (x[Dissolved] - holds) / OilTime : 0;
        double insideA = Outer * InnerFactor * ShareA * (liquidA > 0 ? Math.Sqrt(Math.Min(1, 0.15 + (3 * fillA))) : 0.08);
        double insideB = Outer * InnerFactor * (1 - ShareA) * (liquidB > 0 ? Math.Sqrt(Math.Min(1, 0.15 + (3 * fillB))) : 0.08);
        if (_fault is { Kind: FaultKind.Leak })
        {
            // Refrigerant that air has thinned out follows the metal within the step.
            insideA = Math.Min(insideA, 0.5 * x[MassA] * 700 / Step);
            insideB = Math.Min(insideB, 0.5 * x[MassB] * 700 / Step);
        }

        double heatA = insideA * (x[MetalA] - temperature);
        double heatB = IsTwo ? insideB * (x[MetalB] - b.Bulk.Temperature) : 0;
        double around = Air + (faulty && _fault!.Kind == FaultKind.Heat ? _fault.Size : 0);
        double outerA = Outer * ShareA * Math.Pow(Math.Max(0.5, Math.Abs(around - x[MetalA])) / 15, 0.2);
        double outerB = Outer * (1 - ShareA) * Math.Pow(Math.Max(0.5, Math.Abs(around - x[MetalB])) / 15, 0.2);
        double leak = faulty && _fault!.Kind == FaultKind.Leak && _seen < Atmosphere
            ? _fault.Size * (1 - (_seen * _seen / (Atmosphere * Atmosphere))) : 0;
        _airFlow = airMoles * _volumeFlow / Volume;
        _airRate = leak - _airFlow;
        _rate[MassA] = -_flow + between + released;
        _rate[EnergyA] = (-_flow * vaporA.Enthalpy) + (between * carried) + (0.98 * released * vaporA.Enthalpy) + heatA;
        _rate[MetalA] = ((outerA * (around - x[MetalA])) - heatA) / (Metal * ShareA);
        _rate[MassB] = IsTwo ? -between : 0;
        _rate[EnergyB] = IsTwo ? (-between * carried) + heatB : 0;
        _rate[MetalB] = IsTwo ? ((outerB * (around - x[MetalB])) - heatB) / (Metal * (1 - ShareA)) : 0;
        _rate[Dissolved] = -released;
        _rate[Condenser] = ((_flow * CondenserHeat) - (CylinderConductance * (x[Condenser] - Air))) / (8e3 + (1400 * (x[Delivered] + 1)));
        _rate[Delivered] = _flow;
        _liquid = liquidA + liquidB;
        return true;
    }

    private bool IsResting(double t) => _fault is not null && t >= _fault.RestAt;

    private static (StatePoint Vapor, double Liquid, double Fill) Parts(in VesselPoint vessel, double mass, double volume)
    {
        bool wet = vessel.Bulk.VaporFraction is > 0 and < 1 && vessel.Liquid.Density > 0;
        double liquid = wet ? mass * (1 - vessel.Bulk.VaporFraction) : 0;
        return (wet ? vessel.Vapor : vessel.Bulk, liquid, wet ? liquid / vessel.Liquid.Density / volume : 0);
    }

    private void Draw(double discharge, bool faulty)
    {
        double hose = Hose * (faulty && _fault!.Kind == FaultKind.Hose ? _fault.Size : 1);
        double displacement = Displacement * (faulty && _fault!.Kind == FaultKind.Weak ? _fault.Size : 1);
        if (faulty && _fault!.Kind == FaultKind.Valve)
        {
            // The machine empties the hose.
            _flow = _volumeFlow = 0;
            _suction = 0.2 * Atmosphere;
            return;
        }

        double y = 1;
        double efficiency = 0;
        for (int i = 0; i < 6; i++)
        {
            double ratio = Math.Max(1, discharge / (y * _seen));
            efficiency = Math.Max(0, 1 + Clearance - (Clearance * Math.Pow(ratio, 1 / Exponent)));
            efficiency *= (1 - SuctionHeat) * (1 - (0.01 * Math.Min(10, ratio - 1)));
            double next = 1 / Math.Sqrt(1 + (displacement * displacement * efficiency * efficiency * _vaporDensity * hose / _seen));
            y = 0.5 * (y + next);
        }

        _volumeFlow = displacement * efficiency * y;
        _flow = _vaporDensity > Thinnest ? _volumeFlow * _vaporDensity : 0;
        _suction = y * _seen;
    }
}
