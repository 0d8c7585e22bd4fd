using BenchmarkDotNet.Attributes;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using UnitsNet;

namespace Refrigerant.Recovery.Benchmarks;

/// <summary>One simulated stage, properties of the fluid already expanded.</summary>
[MemoryDiagnoser]
public class StageBenchmarks
{
    private static readonly VaporRecoveryOptions Options = new() { TargetPressure = Pressure.FromKilopascals(50.5) };

    private readonly Appliance _appliance = new()
    {
        Fluid = Fluid.Get("R-134a"),
        Charge = Mass.FromKilograms(10),
        InternalVolume = Volume.FromLiters(50),
        Temperature = Temperature.FromDegreesCelsius(24),
        HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.02),
        MetalMass = Mass.FromKilograms(60),
        LiquidReachable = true,
    };

    private readonly RecoveryMachine _machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5));

    private readonly HoseSet _hoses = new() { VaporSide = [Half], LiquidSide = [Half], Discharge = [Half] };

    private readonly RecoveryCylinder _cylinder = new()
    {
        WaterCapacity = Mass.FromKilograms(21.6),
        TareWeight = Mass.FromKilograms(13),
        ServicePressure = Pressure.FromPoundsForcePerSquareInch(400),
        Content = Mass.FromKilograms(2),
    };

    private static Hose Half => new() { Length = Length.FromMeters(3), InnerDiameter = Length.FromMillimeters(10.5) };

    [Benchmark]
    public StageResult VaporRecoveryCoupled() => VaporRecovery.Simulate(_appliance, _machine, _hoses, _cylinder, Options);

    [Benchmark]
    public StageResult VaporRecoveryWithOilThenHold()
    {
        Appliance appliance = _appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(2), Kind = OilKind.PolyolEster } };
        StageResult pull = VaporRecovery.Simulate(appliance, _machine, _hoses, _cylinder, Options);
        return Hold.Simulate(appliance, new HoldOptions { Start = pull.After });
    }

    [Benchmark]
    public StageResult PushPullStage() => PushPull.Simulate(_appliance, _machine, _hoses, _cylinder, new PushPullOptions());

    [Benchmark]
    public StageResult LiquidThroughTheMachine() => LiquidRecovery.Simulate(_appliance, _machine, _hoses, _cylinder, new LiquidRecoveryOptions());

    [Benchmark]
    public StageResult PressuresEven() => Equalization.Simulate(_appliance, _hoses, _cylinder, new EqualizationOptions());

    [Benchmark]
    public HoseSweepResult Sweep() =>
        HoseSweep.Simulate(_hoses, _machine, new HoseSweepOptions { TargetPressure = Pressure.FromKilopascals(50.5) });
}
