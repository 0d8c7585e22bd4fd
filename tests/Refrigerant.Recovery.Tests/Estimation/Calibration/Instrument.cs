using System;
using Refrigerant.Recovery.Estimation;
using UnitsNet;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>A class 1 gauge in steps of 1 kPa, and a scale in steps of 10 g on which hoses pull and to which refrigerant is on its way.</summary>
internal sealed class Instrument
{
    private readonly SimulatedJob _job;
    private readonly Noise _noise;
    private readonly double _span;
    private readonly double _bias;
    private readonly double _slope;
    private readonly double _onTheWay;
    private double _drift;
    private double _held;
    private double _weight;

    public Instrument(SimulatedJob job, int seed)
    {
        _job = job;
        _noise = new Noise(seed);
        _span = job.Fluid.Model.SaturationAtTemperature(job.Start).Dew.Pressure > 1e6 ? 2.6e6 : 1.7e6;
        _bias = Math.Max(-1, Math.Min(1, _noise.Gauss(0.5))) * 0.008 * _span;
        _slope = _noise.Uniform(-0.004, 0.004);
        _onTheWay = _noise.Uniform(0.02, 0.1);
    }

    public void Advance(double seconds, double delivered, double flow)
    {
        _held += ((_onTheWay * Math.Min(1, flow / 0.006)) - _held) * seconds / 15;
        _drift += (-_drift * seconds / 600) + _noise.Gauss(0.025 * Math.Sqrt(2 * seconds / 600));
        _weight = Math.Max(_weight, delivered - Math.Min(_held, delivered));
    }

    public JobReading Read(double time, double suction, double condenser, bool running, double discharge)
    {
        double gross = _job.Told.Cylinders[0].GrossWeight.Kilograms + _weight + _drift + _noise.Gauss(0.003);
        double gauge = ((suction - _job.Atmosphere) * (1 + _slope)) + _bias + _noise.Gauss(0.0008 * _span);
        return new JobReading
        {
            Time = Duration.FromSeconds(Math.Round(time)),
            SuctionGaugePressure = Pressure.FromPascals(1000 * Math.Round(gauge / 1000)),
            GrossWeight = Mass.FromKilograms(Math.Round(gross, 2)),
            Ambient = Temperature.FromKelvins(Math.Round((_job.Air + _noise.Gauss(0.2)) * 10) / 10),
            DischargeGaugePressure = double.IsNaN(discharge) ? null : Pressure.FromPascals(10_000 * Math.Round((discharge - _job.Atmosphere + _noise.Gauss(5000)) / 10_000)),
            MachineRunning = running,
        };
    }
}
