using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>
/// A recovery simulated with equations that the library does not use: pool and vapor at temperatures of their own with a finite rate of boiling,
/// wetted and dry metal, vapor by Redlich and Kwong's equation, a hose that holds gas, a scale that lags and drifts, a gauge with bias. Explicit
/// steps of a twentieth of a second. Of the library it takes the saturation properties.
/// </summary>
internal sealed class Simulation
{
    private const double Step = 0.05;

    /// <summary>Conductance from dry metal to gas over that from wetted metal to boiling liquid.</summary>
    private const double Gas = 0.04;

    private const double HoseVolume = 4e-4;

    /// <summary>s in which boiling follows the pressure.</summary>
    private const double BoilingTime = 0.25;

    private readonly SimulatedJob _job;
    private readonly PropertyModel _model;
    private readonly double _gasConstant;
    private readonly double _boilingRate;
    private readonly double _firstLiquid;
    private readonly Queue<(double Time, double Delivered)> _history = [];
    private double _earlier = double.NegativeInfinity;
    private double _liquid;
    private double _vapor;
    private double _pool;
    private double _gas;
    private double _wet;
    private double _dry;
    private double _dissolved;
    private double _condenser;
    private double _inlet;
    private double _hoseFlow;

    private Simulation(SimulatedJob job)
    {
        _job = job;
        _model = job.Fluid.Model;
        _gasConstant = 8.314462618 / _model.MolarMass;
        _pool = _gas = _wet = _dry = job.Start;
        _condenser = job.Air + 2;
        SaturationPoint both = _model.SaturationAtTemperature(_pool);
        _dissolved = job.Oil * job.Solubility;
        double rest = job.Charge - _dissolved;
        _liquid = (rest - (job.Volume * both.Dew.Density)) / (1 - (both.Dew.Density / both.Bubble.Density));
        _vapor = rest - _liquid;
        _firstLiquid = _liquid;
        _boilingRate = job.Volume * both.Dew.Density / both.Dew.Pressure / BoilingTime;
        _inlet = both.Dew.Pressure;
    }

    /// <summary>Mass that has passed the machine, kg.</summary>
    public double Delivered { get; private set; }

    private double Pressure { get; set; }

    /// <summary>Logs a job, a reading a second.</summary>
    /// <param name="job">The job.</param>
    /// <param name="seed">Seed of the instruments.</param>
    /// <param name="rests">Whether the machine rests twice for a minute.</param>
    /// <param name="discharge">Whether the discharge pressure is read.</param>
    public static JobLog Log(SimulatedJob job, int seed, bool rests, bool discharge)
    {
        double end = rests ? new Simulation(job).Run(new Instrument(job, seed), 0, false, []) : 0;
        var simulation = new Simulation(job);
        var readings = new List<JobReading>();
        simulation.Run(new Instrument(job, seed), end, discharge, readings);
        return JobLog.FromReadings(readings);
    }

    private double Run(Instrument instrument, double planned, bool discharge, List<JobReading> readings)
    {
        double after = double.PositiveInfinity;
        double next = 0;
        for (double time = 0; time < 4 * 3600; time += Step)
        {
            bool rests = planned > 0 && Within(time, 0.25 * planned, (0.6 * planned) + 60);
            bool running = !rests && double.IsPositiveInfinity(after);
            Advance(running);
            instrument.Advance(Step, Delivered, _hoseFlow);
            if (time >= next - 1e-9)
            {
                next += 1;
                readings.Add(instrument.Read(time, _inlet, _condenser, running, discharge ? DischargePressure() : double.NaN));
            }

            // Stopped at the level, or where the machine gets no further.
            if (running && (_inlet <= _job.Level || (time > 300 && Delivered - Earlier(time) < 1e-3 * _job.Charge)))
            {
                after = time;
            }

            // Two minutes are logged after the stop.
            if (time - after > 120)
            {
                return after;
            }
        }

        return 4 * 3600;
    }

    /// <summary>What had been delivered five minutes ago.</summary>
    private double Earlier(double time)
    {
        while (_history.Count > 0 && _history.Peek().Time < time - 300)
        {
            _earlier = _history.Dequeue().Delivered;
        }

        _history.Enqueue((time, Delivered));
        return _earlier;
    }

    private static bool Within(double time, double first, double second) =>
        (time >= first && time < first + 60) || (time >= second && time < second + 60);

    private double DischargePressure() => _model.SaturationAtTemperature(_condenser).Dew.Pressure + 30_000;

    private double VaporPressure(double density, double temperature)
    {
        // p = R·T·ρ/(1 − b·ρ) − a·ρ²/√T, a such that saturated vapor has its pressure.
        SaturationPoint both = _model.SaturationAtTemperature(Math.Min(temperature, _model.CriticalTemperature - 5));
        double b = 0.26 / _model.CriticalDensity;
        double rt = _gasConstant * temperature;
        double saturated = both.Dew.Density;
        double a = ((rt * saturated / (1 - (b * saturated))) - both.Dew.Pressure) / (saturated * saturated);
        return (rt * density / (1 - (b * density))) - (a * density * density);
    }

    private void Advance(bool running)
    {
        SaturationPoint both = _model.SaturationAtTemperature(_pool);
        double latent = both.Dew.Enthalpy - both.Bubble.Enthalpy;
        double space = _job.Volume - (_liquid / both.Bubble.Density);
        double density = _vapor / space;
        Pressure = VaporPressure(density, _gas);
        double capacity = 7 * _gasConstant;
        double perMass = Pressure / density;

        double boils = _boilingRate * Math.Min(1, _liquid / (0.1 * _firstLiquid)) * (both.Dew.Pressure - Pressure);
        boils = Math.Min(boils, _liquid / Step);
        double wetted = _liquid > 0 ? 1 - Math.Exp(-5 * _liquid / _firstLiquid) : 0;
        double toPool = _job.Boiling * wetted * (_wet - _pool) * Math.Pow((Math.Abs(_wet - _pool) + 0.05) / 5, 0.3);
        double toGas = Gas * _job.Boiling * ((_dry - _gas) + ((1 - wetted) * (_wet - _gas)));
        double across = 0.1 * _job.Boiling * (_dry - _wet);
        double ToMetal(double metal) => 0.5 * _job.Outer * (_job.Air - metal) * Math.Pow((Math.Abs(_job.Air - metal) + 0.5) / 10, 0.1);

        double relative = Math.Min(1, Pressure / _model.SaturationAtTemperature(Math.Min(_dry, _model.CriticalTemperature - 5)).Dew.Pressure);
        double bubbles = Math.Max(0, _dissolved - (_job.Oil * _job.Solubility * relative)) / _job.OilTime;

        _hoseFlow = Pressure > _inlet ? _job.Hose.Flow(Pressure, _inlet, density, Math.Max(1e-5, _hoseFlow)) : 0;
        double drawn = running ? _job.Machine.Flow(_inlet, _gas, density / Pressure, DischargePressure(), _job.Air) : 0;
        double hoseDensity = density * _inlet / Pressure;
        _hoseFlow = Math.Min(_hoseFlow, drawn + (HoseVolume * density * Math.Max(0, Pressure - _inlet) / Pressure / (2 * Step)));
        _inlet = Math.Max(1000, _inlet + (_inlet / hoseDensity * (_hoseFlow - drawn) * Step / HoseVolume));

        double heatCapacity = Math.Max(0.05 * _firstLiquid, _liquid) * 1350;
        _pool = _liquid > 0 ? _pool + ((toPool - (boils * latent)) * Step / heatCapacity) : _gas;
        double gasHeat = toGas + (boils * ((capacity * (_pool - _gas)) + perMass)) - (_hoseFlow * perMass) + (bubbles * perMass);
        _gas += gasHeat * Step / ((_vapor * capacity) + (Gas * _job.Boiling * (2 - wetted) * Step));
        _liquid = Math.Max(0, _liquid - (boils * Step));
        _vapor += (boils + bubbles - _hoseFlow) * Step;
        _dissolved -= bubbles * Step;
        _wet += (ToMetal(_wet) - toPool - (Gas * _job.Boiling * (1 - wetted) * (_wet - _gas)) + across) * Step / (_job.WetMetal * _job.Metal);
        _dry += (ToMetal(_dry) - (Gas * _job.Boiling * (_dry - _gas)) - across) * Step / ((1 - _job.WetMetal) * _job.Metal);
        Delivered += drawn * Step;
        double cooling = 1.2e5 * _job.Machine.Swept;
        _condenser += ((drawn * 2e4) - (cooling * (_condenser - _job.Air))) * Step / (9000 + (1400 * Delivered));
    }
}
