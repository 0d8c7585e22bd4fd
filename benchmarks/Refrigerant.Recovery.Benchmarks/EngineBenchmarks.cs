using System;
using System.Collections.Generic;
using BenchmarkDotNet.Attributes;
using Refrigerant.Recovery.CoolProp;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Benchmarks;

/// <summary>
/// The same calls on the embedded equations and, where the variable COOLPROP_LIBRARY gives the path of the library, on CoolProp's low-level
/// interface. To reach: saturation at T 10 times as fast, a state at (T, p) 5 times, the bubble point of a blend 3000 times.
/// </summary>
[MemoryDiagnoser]
public class EngineBenchmarks
{
    private const double Kelvins = 287.3;
    private const double Pascals = 3.1e5;

    private PropertyModel _model = null!;

    public static IEnumerable<string> Engines =>
        string.IsNullOrEmpty(Environment.GetEnvironmentVariable(CoolPropLibrary.PathVariable)) ? ["embedded"] : ["embedded", "CoolProp"];

    [ParamsSource(nameof(Engines))]
    public string Engine { get; set; } = "embedded";

    [Params("R-134a", "R-744", "R-410A", "R-448A")]
    public string Designation { get; set; } = "R-134a";

    [GlobalSetup]
    public void Setup()
    {
        Fluid embedded = Fluid.Get(Designation);
        _model = (Engine == "CoolProp" ? CoolPropFluid.LoadEquivalent(embedded) : embedded).Model;
    }

    [Benchmark]
    public SaturationPoint SaturationAtTemperature() => _model.SaturationAtTemperature(Kelvins);

    [Benchmark]
    public StatePoint StateAt() => _model.StateAt(Kelvins, Pascals);
}
