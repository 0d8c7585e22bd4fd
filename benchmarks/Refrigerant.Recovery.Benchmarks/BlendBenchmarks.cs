using System.Linq;
using BenchmarkDotNet.Attributes;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Benchmarks;

/// <summary>Blends: lookups on the curves, states of the equation, the building of a blend, a recovery with tracked composition.</summary>
[MemoryDiagnoser]
public class BlendBenchmarks
{
    private const double VesselVolume = 0.02;
    private const int Turn = 40;

    private static readonly Temperature Warm = new(298.15, TemperatureUnit.Kelvin);
    private static readonly Pressure Low = new(500_000, PressureUnit.Pascal);

    private static readonly VaporRecoveryOptions Tracked = new() { TargetPressure = new(50_000, PressureUnit.Pascal), Composition = CompositionMode.Tracked };

    private readonly RecoveryMachine _machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5));
    private readonly HoseSet _hoses = new() { VaporSide = [new Hose { Length = Length.FromMeters(3), InnerDiameter = Length.FromMillimeters(10) }] };
    private readonly RecoveryCylinder _cylinder = new()
    {
        WaterCapacity = Mass.FromKilograms(60),
        TareWeight = Mass.FromKilograms(30),
        ServicePressure = Pressure.FromPoundsForcePerSquareInch(600),
    };

    private Appliance _appliance = null!;
    private Fluid _fluid = null!;
    private MixtureModel _model = null!;
    private double _density;
    private double _energy;
    private TrackedVessel _vessel = null!;
    private double _amount;
    private double _vesselEnergy;
    private int _step;

    [Params("R-410A", "R-448A")]
    public string Blend { get; set; } = "";

    [GlobalSetup]
    public void Setup()
    {
        _fluid = Fluid.Get(Blend);
        _model = (MixtureModel)_fluid.Model;
        _density = 300;
        _appliance = new Appliance
        {
            Fluid = _fluid,
            Charge = Mass.FromKilograms(10),
            InternalVolume = Volume.FromLiters(50),
            Temperature = Temperature.FromDegreesCelsius(24),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.02),
        };
        _energy = _model.VesselAtTemperature(290, _density).Bulk.InternalEnergy;
        _amount = 6 / _model.MolarMass;
        _vesselEnergy = 6 * _energy;
        _vessel = new TrackedVessel(_model);
    }

    [Benchmark]
    public SaturationState SaturationAtTemperature() => _fluid.SaturationAt(Warm);

    [Benchmark]
    public SaturationState SaturationAtPressure() => _fluid.SaturationAt(Low);

    [Benchmark]
    public StatePoint Liquid() => _model.StateAt(290, 3e6);

    [Benchmark]
    public StatePoint Vapor() => _model.StateAt(290, 2e5);

    [Benchmark]
    public VesselPoint VesselAtEnergy() => _model.VesselAtEnergy(_density, _energy);

    /// <summary>A vessel whose content and energy change by a thousandth from call to call, as in a simulation. To reach: 4 µs for two components, 12 µs for five.</summary>
    [Benchmark]
    public double TrackedVesselStep()
    {
        int place = _step++ % Turn;
        double share = 1 - ((place < Turn / 2 ? place : Turn - place) * 1e-3);
        _vessel.SolveAtEnergy(share * _amount, VesselVolume, share * share * _vesselEnergy);
        return _vessel.Pressure;
    }

    /// <summary>The equation, the critical point and both curves, from nothing but the pure fluids.</summary>
    [Benchmark]
    public double FirstUse() =>
        Fluid.Blend(_fluid.Composition.Select(c => new System.Collections.Generic.KeyValuePair<string, double>(c.Designation, c.MassFraction)))
            .SaturationAt(Warm).Bubble.Pressure.Pascals;

    /// <summary>A simulated recovery with the composition followed: 10 kg out of 50 L down to 50 kPa, hoses and cylinder included. To reach: 100 ms.</summary>
    [Benchmark]
    public VaporRecoveryResult TrackedVaporRecovery() => VaporRecovery.Simulate(_appliance, _machine, _hoses, _cylinder, Tracked);
}
