using System;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Samples.Controller;

/// <summary>
/// Appliance, machine and cylinder as the library simulates them, and sensors as they are: noise, steps of the display, a gauge that shows nothing for a
/// while, a hose that lies on the scale. On a real machine this class reads the hardware. A step allocates nothing.
/// </summary>
internal sealed class Plant(Scenario scenario)
{
    private const double GaugeNoise = 800;
    private const double ScaleStep = 0.01;

    private readonly RecoverySimulation _simulation = RecoverySimulation.Start(new SimulationSetup
    {
        Appliance = scenario.InTruth,
        Machine = scenario.Told.Machine,
        Hoses = scenario.Told.Hoses,
        Cylinder = scenario.Told.Cylinders[0],
    });

    private readonly Random _noise = new(1);

    /// <summary>What no sensor shows: refrigerant left in the appliance, kg.</summary>
    public double Left => _simulation.ApplianceMass;

    /// <summary>One step: what the sensors show at its end.</summary>
    public Readings Step(bool running, double seconds)
    {
        SimulationInputs inputs = SimulationInputs.Running with
        {
            MachineRunning = running,
            InletOpening = scenario.Kink.Holds(_simulation.Time) ? scenario.KinkOpening : 1,
        };
        if (_simulation.Step(seconds, inputs) != StepOutcome.Done)
        {
            throw new InvalidOperationException($"The simulation cannot go on: {_simulation}.");
        }

        double weight = _simulation.CylinderMass + (scenario.HoseOnScale.Holds(_simulation.Time) ? scenario.HosePull : 0);
        return new Readings(
            _simulation.Time,
            scenario.GaugeSilent.Holds(_simulation.Time) ? double.NaN : _simulation.SuctionPressure + Noise(GaugeNoise),
            _simulation.CylinderPressure + Noise(GaugeNoise),
            Math.Round((weight + Noise(ScaleStep / 2)) / ScaleStep) * ScaleStep);
    }

    /// <summary>Noise with a standard deviation: twelve rectangular parts are near enough to normal.</summary>
    private double Noise(double deviation)
    {
        double sum = -6;
        for (int i = 0; i < 12; i++)
        {
            sum += _noise.NextDouble();
        }

        return deviation * sum;
    }
}
