using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Xunit;
using Xunit.Abstractions;

namespace Refrigerant.Recovery.CoolProp.Tests.Conformance;

/// <summary>The embedded engine against a real CoolProp, for every fluid and blend that both know.</summary>
[Collection("native")]
public sealed class ConformanceTests
{
    /// <summary>Both engines evaluate the same equations; what is left is the convergence of their solvers. CoolProp 8 has the same equations.</summary>
    private const double PureTolerance = 1e-6;

    /// <summary>CoolProp's iterations for blends stop earlier.</summary>
    private const double BlendTolerance = 1e-5;

    /// <summary>cp and the speed of sound grow without bound at the critical point and magnify what is left.</summary>
    private const double DerivativeTolerance = 1e-4;

    /// <summary>R-123: the ideal gas's heat capacity differs by 1.5e-5 at 166 K, a constant with fewer digits on one side; up to 2.9 J/kg follow.</summary>
    private const double R123Tolerance = 5e-5;

    private readonly ITestOutputHelper _output;

    public ConformanceTests(ITestOutputHelper output) => _output = output;

    [CoolPropFact]
    public void Every_fluid_that_both_engines_know_agrees()
    {
        var library = CoolPropLibrary.Open();
        var compared = new List<Comparison>();
        var unknown = new List<string>();
        foreach (Fluid fluid in Fluid.All)
        {
            try
            {
                compared.Add(Comparison.Of(fluid.Model, CoolPropFluid.LoadEquivalent(fluid, library).Model));
            }
            catch (CoolPropException error)
            {
                unknown.Add($"{fluid.Designation}: {error.NativeMessage}");
            }
        }

        _output.WriteLine(ConformanceReport.Write(library, compared, unknown));
        _output.WriteLine($"Written to {ConformanceReport.Path}");
        Assert.NotEmpty(compared);
        string[] failures =
        [
            .. from fluid in compared
               from worst in fluid.Worsts
               let tolerance = worst.Key is "cp" or "speed of sound" ? DerivativeTolerance : Tolerance(Fluid.Get(fluid.Designation))
               where !(worst.Value.Deviation <= tolerance)
               select FormattableString.Invariant(
                   $"{fluid.Designation} {worst.Key}: {worst.Value.Deviation:E2} at {worst.Value.Temperature:F3} K and {worst.Value.Pressure:G6} Pa"),
        ];
        Assert.True(failures.Length == 0, string.Join(Environment.NewLine, failures));
    }

    private static double Tolerance(Fluid fluid) =>
        fluid.Designation == "R-123" ? R123Tolerance : fluid.IsBlend ? BlendTolerance : PureTolerance;

    [Fact]
    public void The_comparison_finds_nothing_between_a_model_and_itself_and_a_fault_where_there_is_one()
    {
        PropertyModel model = Fluid.Get("R-134a").Model;
        Assert.All(Comparison.Of(model, model).Worsts, worst => Assert.Equal(0, worst.Value.Deviation));

        const double Fault = 1e-4;
        Comparison faulty = Comparison.Of(model, new FaultyModel(model, Fault));
        Assert.Equal(Fault, faulty.Worsts["density"].Deviation, Fault * 1e-3);
        Assert.Equal(Fault, faulty.Worsts["saturated liquid density"].Deviation, Fault * 1e-3);
        Assert.InRange(faulty.Worsts["saturation pressure"].Deviation, 0, 1e-12);
        Assert.True(faulty.States > 100);
    }

    [Fact]
    public void The_comparison_runs_through_the_pure_fluids_and_some_blends() => Assert.All(Fluid.All.Where((fluid, i) => !fluid.IsBlend || i % 24 == 0), fluid =>
    {
        var comparison = Comparison.Of(fluid.Model, fluid.Model);
        Assert.True(comparison.Refused.Count == 0, string.Join(Environment.NewLine, comparison.Refused));
        Assert.True(comparison.Worsts["density"].Deviation == 0);
    });

    [Theory]
    [InlineData("R-134a", "R134a")]
    [InlineData("R-152a", "R152A")]
    [InlineData("R-744", "CarbonDioxide")]
    [InlineData("R-600a", "IsoButane")]
    [InlineData("R-1234ze(E)", "R1234ze(E)")]
    [InlineData("R-C318", "RC318")]
    [InlineData("R-E170", "DimethylEther")]
    public void Names_are_translated_both_ways(string designation, string name)
    {
        Assert.Equal(name, RefrigerantNames.Name(designation));
        Assert.Equal(designation, RefrigerantNames.Designation(name));
    }

    [Fact]
    public void Every_component_of_the_catalogue_has_a_name_that_leads_back_to_it() => Assert.All(
        Fluid.All.SelectMany(fluid => fluid.Composition).Select(component => component.Designation).Distinct(),
        designation => Assert.Equal(designation, RefrigerantNames.Designation(RefrigerantNames.Name(designation))));
}
