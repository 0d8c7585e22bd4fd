using System;
using System.IO;
using System.Reflection;
using System.Runtime.Loader;
using System.Runtime.Versioning;
using Refrigerant.Recovery.Fluids;
using Xunit;
using Twin = Refrigerant.Recovery.CoolProp.Tests.StandIn.Twin;

namespace Refrigerant.Recovery.CoolProp.Tests;

/// <summary>The netstandard2.0 assembly, which finds libraries by the system's own functions.</summary>
[Collection("native")]
public sealed class OlderBuildTests
{
    private static readonly Assembly Older = new AssemblyLoadContext("netstandard2.0").LoadFromAssemblyPath(
        Path.Combine(AppContext.BaseDirectory, "netstandard2.0", "Refrigerant.Recovery.CoolProp.dll"));

    [Fact]
    public void It_is_the_build_for_older_runtimes() => Assert.StartsWith(
        ".NETStandard,Version=v2.0", Older.GetCustomAttribute<TargetFrameworkAttribute>()!.FrameworkName, StringComparison.Ordinal);

    [StandInFact]
    public void It_loads_a_library_and_computes_with_it()
    {
        object library = Open(StandIn.Path);
        object? fluid = Older.GetType("Refrigerant.Recovery.CoolProp.CoolPropFluid", throwOnError: true)!
            .GetMethod("Load")!.Invoke(null, ["R901", library]);
        PropertyModel model = Assert.IsType<Fluid>(fluid).Model;
        Assert.Equal(Twin.R901.Pressure(310), model.SaturationAtTemperature(310).Dew.Pressure, 1e-3);
        Assert.Equal(310, model.VesselAtEnergy(400, model.VesselAtTemperature(310, 400).Bulk.InternalEnergy).Bulk.Temperature, 1e-6);
    }

    [Fact]
    public void It_says_what_the_systems_loader_said()
    {
        string path = Path.GetTempFileName();
        try
        {
            Exception? error = Assert.Throws<TargetInvocationException>(() => Open(path)).InnerException;
            Assert.Equal("CoolPropUnavailableException", error?.GetType().Name);
            Assert.Contains("could not be loaded", error!.Message, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static object Open(string path) => Older.GetType("Refrigerant.Recovery.CoolProp.CoolPropLibrary", throwOnError: true)!
        .GetMethod("Open", [typeof(string)])!.Invoke(null, [path])!;
}
