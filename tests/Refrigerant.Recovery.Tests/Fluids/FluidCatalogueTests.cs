using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids;

public class FluidCatalogueTests
{
    [Theory]
    [InlineData("R-134a", "R-134a")]
    [InlineData("R134a", "R-134a")]
    [InlineData("134a", "R-134a")]
    [InlineData("HFC-134a", "R-134a")]
    [InlineData("HFO-1234yf", "R-1234yf")]
    [InlineData("HFO 1234ze(E)", "R-1234ze(E)")]
    [InlineData("HCFO-1233zd(E)", "R-1233zd(E)")]
    [InlineData("HCFC-22", "R-22")]
    [InlineData("CFC-12", "R-12")]
    [InlineData("HC-290", "R-290")]
    [InlineData("HC-600a", "R-600a")]
    [InlineData("PFC-C318", "R-C318")]
    [InlineData("HFC-404A", "R-404A")]
    [InlineData("CO2", "R-744")]
    [InlineData("CO₂", "R-744")]
    [InlineData("Carbon dioxide", "R-744")]
    [InlineData("propane", "R-290")]
    [InlineData("isobutane", "R-600a")]
    [InlineData("n-butane", "R-600")]
    [InlineData("Propylene", "R-1270")]
    [InlineData("ammonia", "R-717")]
    [InlineData("NH3", "R-717")]
    [InlineData("dimethyl ether", "R-E170")]
    [InlineData("r 134A", "R-134a")]
    [InlineData(" R-134a ", "R-134a")]
    [InlineData("R-1234ze(E)", "R-1234ze(E)")]
    [InlineData("1234ZEE", "R-1234ze(E)")]
    [InlineData("R1234zee", "R-1234ze(E)")]
    [InlineData("RE170", "R-E170")]
    [InlineData("rc318", "R-C318")]
    [InlineData("R13I1", "R-13I1")]
    public void DesignationsAreFoundHoweverTheyAreWritten(string asked, string designation)
    {
        Assert.Equal(designation, Fluid.Get(asked).Designation);
        Assert.True(Fluid.TryGet(asked, out Fluid? fluid));
        Assert.Same(Fluid.Get(designation), fluid);
    }

    [Fact]
    public void ABlendIsTheSameInWhateverOrderItsPartsAreNamed()
    {
        static Fluid Of(string first, double share, string second, double rest) =>
            Fluid.Blend([new KeyValuePair<string, double>(first, share), new KeyValuePair<string, double>(second, rest)], "mixed");
        Assert.Equal(Of("R-32", 0.4, "R-125", 0.6), Of("R-125", 0.6, "R-32", 0.4));
        Assert.NotEqual(Of("R-32", 0.4, "R-125", 0.6), Of("R-125", 0.4, "R-32", 0.6));
    }

    [Theory]
    [InlineData("R-134b", "R-134a")]
    [InlineData("R-1234ze", "R-1234ze(E)")]
    [InlineData("R-23a", "R-23")]
    [InlineData("R1233", "R-1233zd(E)")]
    [InlineData("R410", "R-410A")]
    [InlineData("R-134", "R-134a")]
    public void UnknownOnesSuggestNearOnes(string asked, string near)
    {
        UnknownFluidException error = Assert.Throws<UnknownFluidException>(() => Fluid.Get(asked));
        Assert.Equal(asked, error.Designation);
        Assert.Contains(near, error.Suggestions);
        Assert.Contains(near, error.Message, StringComparison.Ordinal);
        Assert.False(Fluid.TryGet(asked, out _));
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("R")]
    [InlineData("water, please")]
    public void NothingNearNoSuggestions(string asked) =>
        Assert.Empty(Assert.Throws<UnknownFluidException>(() => Fluid.Get(asked)).Suggestions);

    [Fact]
    public void NullIsAnError()
    {
        Assert.Throws<ArgumentNullException>(() => Fluid.Get(null!));
        Assert.False(Fluid.TryGet(null, out _));
    }

    [Fact]
    public void ALongTextIsNotRepeatedWhole()
    {
        string asked = new('x', 100_000);
        UnknownFluidException error = Assert.Throws<UnknownFluidException>(() => Fluid.Get(asked));
        Assert.Equal(asked, error.Designation);
        Assert.InRange(error.Message.Length, 60, 200);
    }

    [Fact]
    public void EveryFluidIsFoundByItsDesignationAndOnlyOnce()
    {
        Assert.All(Fluid.All, fluid => Assert.Same(fluid, Fluid.Get(fluid.Designation)));
        Assert.Equal(Fluid.All.Count, Fluid.All.Select(fluid => fluid.Designation).Distinct().Count());
    }
}
