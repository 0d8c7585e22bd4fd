using BenchmarkDotNet.Attributes;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Helmholtz;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Benchmarks;

/// <summary>
/// Pure-fluid properties. To reach on a current desktop core: saturation at T 100 ns typed and 40 ns raw, saturation at p 100 ns,
/// state at (T, p) 800 ns, first use of a fluid 10 ms; no allocation but for first use.
/// </summary>
[MemoryDiagnoser]
public class PropertyBenchmarks
{
    private const double Kelvins = 287.3;
    private const double Pascals = 3.1e5;

    private readonly Temperature _temperature = new(Kelvins, TemperatureUnit.Kelvin);
    private readonly Pressure _pressure = new(Pascals, PressureUnit.Pascal);
    private Fluid _fluid = null!;
    private PropertyModel _model = null!;
    private PureFluidData _data = null!;
    private double _density;
    private double _energy;

    [Params("R-134a", "R-22", "R-290")]
    public string Designation { get; set; } = "R-134a";

    [GlobalSetup]
    public void Setup()
    {
        _fluid = Fluid.Get(Designation);
        _model = _fluid.Model;
        _data = ((HelmholtzModel)_model).Data;
        VesselPoint vessel = _model.VesselAtTemperature(Kelvins, 200);
        _density = vessel.Bulk.Density;
        _energy = vessel.Bulk.InternalEnergy;
    }

    [Benchmark]
    public SaturationState SaturationAtTemperature() => _fluid.SaturationAt(_temperature);

    [Benchmark]
    public SaturationPoint SaturationAtTemperatureRaw() => _model.SaturationAtTemperature(Kelvins);

    [Benchmark]
    public SaturationState SaturationAtPressure() => _fluid.SaturationAt(_pressure);

    [Benchmark]
    public SaturationPoint SaturationAtPressureRaw() => _model.SaturationAtPressure(Pascals);

    [Benchmark]
    public FluidState StateAt() => _fluid.StateAt(_temperature, _pressure);

    [Benchmark]
    public StatePoint LiquidStateAtRaw() => _model.StateAt(Kelvins, 10 * Pascals);

    [Benchmark]
    public VesselPoint VesselAtEnergyRaw() => _model.VesselAtEnergy(_density, _energy);

    [Benchmark]
    public SaturationPoint FirstUse() => new HelmholtzModel(_data).SaturationAtTemperature(Kelvins);
}
