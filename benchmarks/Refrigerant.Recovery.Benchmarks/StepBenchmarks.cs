using BenchmarkDotNet.Attributes;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation;
using UnitsNet;

namespace Refrigerant.Recovery.Benchmarks;

/// <summary>A step of 0.1 s with changed inputs, as a controller's loop takes them: ten minutes of a vapor pull a simulation, then a fresh one.</summary>
[MemoryDiagnoser]
public class StepBenchmarks
{
    private const int StepsOfOne = 6000;
    private RecoverySimulation _simulation = null!;
    private int _steps;

    [Params("R-134a", "R-407C", "R-448A")]
    public string Designation { get; set; } = "R-134a";

    [GlobalSetup]
    public void Begin()
    {
        Hose hose = new() { Length = Length.FromMeters(3), InnerDiameter = Length.FromMillimeters(10.5) };
        _simulation = RecoverySimulation.Start(new SimulationSetup
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get(Designation),
                Charge = Mass.FromKilograms(10),
                InternalVolume = Volume.FromLiters(50),
                Temperature = Temperature.FromDegreesCelsius(24),
                Oil = new ApplianceOil { Mass = Mass.FromKilograms(2), Kind = OilKind.PolyolEster },
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
            Hoses = new HoseSet { VaporSide = [hose], Discharge = [hose] },
            Cylinder = RecoveryCylinder.FromMark("DOT-4BA400", Mass.FromKilograms(21.6), Mass.FromKilograms(13)),
            Composition = CompositionMode.Tracked,
        });
        _steps = 0;
    }

    [Benchmark]
    public StepOutcome Step()
    {
        if (++_steps == StepsOfOne)
        {
            Begin();
        }

        // The hand on the inlet never stands still: every step begins anew.
        return _simulation.Step(0.1, new SimulationInputs(inletOpening: 1 - (1e-3 * (_steps & 7))));
    }
}
