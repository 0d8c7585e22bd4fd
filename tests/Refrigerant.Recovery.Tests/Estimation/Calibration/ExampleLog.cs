using System;
using System.IO;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>The invented job of the samples, samples/Desk/logged-job.json, as it really was: another charge, volume, machine and hose than told.</summary>
internal static class ExampleLog
{
    public static RecoveryJob Told { get; } = RecoveryJobJson.Read(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "logged-job.json")));

    public static SimulatedJob Truth { get; } = new()
    {
        Fluid = Told.Appliance.Fluid,
        Charge = 5.6,
        Volume = 0.0185,
        Start = 293.6,
        Air = 294.3,
        Outer = 24,
        Metal = 14_000,
        WetMetal = 0.6,
        Boiling = 220,
        Oil = 0.3,
        Solubility = 0.3,
        OilTime = 250,
        Machine = new SimulatedMachine(4.5e-4, 0.02, 0.045, 0.25, 0.25, 5e-4),
        Hose = new SimulatedHose(1.5, 6.5e-3, 6, 1.2e-5),
        Level = 67_000,
        Atmosphere = Told.Barometer.Pressure.Pascals,
        HoseTold = 0.5,
        Told = Told,
    };

    /// <summary>Its log, with every second reading of two.</summary>
    public static JobLog Create() =>
        JobLog.FromReadings([.. Simulation.Log(Truth, 8, rests: true, discharge: false).Readings.Where((_, i) => i % 2 == 0)]);
}
