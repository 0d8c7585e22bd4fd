using System;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids.Mixtures;

/// <summary>Blends of the caller's composition.</summary>
public class BlendFactoryTests
{
    [Fact]
    public void ByMassIsTheCatalogueBlend()
    {
        PropertyModel mine = Fluid.Blend([BlendCases.Part("R32", 0.5), BlendCases.Part("125", 0.5)], "my 410").Model;
        PropertyModel theirs = Fluid.Get("R-410A").Model;
        Assert.Equal("my 410", mine.Designation);
        Assert.Equal(theirs.SaturationAtTemperature(300).Bubble.Pressure, mine.SaturationAtTemperature(300).Bubble.Pressure);
        Assert.Equal(theirs.MolarMass, mine.MolarMass);
    }

    [Fact]
    public void ByMoleIsTheSameBlend()
    {
        Fluid byMass = Fluid.Get("R-407C");
        Fluid byMole = Fluid.BlendByMole(byMass.Composition.Select(c => BlendCases.Part(c.Designation, c.MoleFraction)));
        Assert.Equal(1, byMass.Composition.Sum(c => c.MoleFraction), 14);
        Assert.Equal(1, byMass.Composition.Sum(c => c.MassFraction), 14);
        foreach ((FluidComponent a, FluidComponent b) in byMass.Composition.Zip(byMole.Composition))
        {
            Assert.Equal(a.MassFraction, b.MassFraction, 14);
        }

        double p = byMass.Model.SaturationAtTemperature(280).Dew.Pressure;
        Assert.Equal(p, byMole.Model.SaturationAtTemperature(280).Dew.Pressure, 1e-8 * p);
    }

    [Fact]
    public void OneComponentIsThePureFluid()
    {
        Assert.Same(Fluid.Get("R-134a"), Fluid.Blend([BlendCases.Part("R-134a", 1)]));
        Assert.Same(Fluid.Get("R-134a"), Fluid.BlendByMole([BlendCases.Part("R-32", 0), BlendCases.Part("R-134a", 1)]));
    }

    /// <summary>Towards a pure fluid, a blend's numbers go to the pure fluid's but for the gas constants of the two equations (1e-6).</summary>
    [Theory]
    [InlineData("R-134a", "R-32")]
    [InlineData("R-290", "R-600a")]
    [InlineData("R-744", "R-32")]
    public void NearlyPureIsNearlyThePureFluid(string fluid, string trace)
    {
        PropertyModel pure = Fluid.Get(fluid).Model;
        PropertyModel blend = Fluid.BlendByMole([BlendCases.Part(fluid, 1 - 1e-8), BlendCases.Part(trace, 1e-8)]).Model;
        double t = 0.85 * pure.CriticalTemperature;
        SaturationPoint a = pure.SaturationAtTemperature(t), b = blend.SaturationAtTemperature(t);
        Assert.Equal(1, b.Bubble.Pressure / a.Bubble.Pressure, 1e-5);
        Assert.Equal(1, b.Bubble.Density / a.Bubble.Density, 1e-5);
        Assert.Equal(1, b.Dew.Density / a.Dew.Density, 2e-5);
        Assert.InRange(b.Bubble.Enthalpy - a.Bubble.Enthalpy, -2, 2);
        Assert.InRange(b.Dew.Entropy - a.Dew.Entropy, -0.01, 0.01);
    }

    [Fact]
    public void BadCompositionsSayWhatIsWrong()
    {
        Assert.Throws<ArgumentNullException>(() => Fluid.Blend(null!));
        Rejects("add up to 0", []);
        Rejects("add up to 0.9", [("R-32", 0.5), ("R-125", 0.4)]);
        Rejects("more than once", [("R-32", 0.5), ("R32", 0.5)]);
        Rejects("itself a blend", [("R-410A", 0.5), ("R-32", 0.5)]);
        Rejects("fraction of R-32 is -0.5", [("R-125", 1.0), ("R-32", -0.5)]);
        Rejects("fraction of R-32 is NaN", [("R-32", double.NaN), ("R-125", 0.5)]);
        Rejects("fraction of R-32 is 50", [("R-32", 50), ("R-125", 50)]);
        Rejects("without a designation", [(null!, 1)]);
        UnknownFluidException unknown = Assert.Throws<UnknownFluidException>(
            () => Fluid.Blend([BlendCases.Part("R-33", 0.5), BlendCases.Part("R-125", 0.5)]));
        Assert.Contains("R-32", unknown.Suggestions);

        static void Rejects(string message, (string Designation, double Fraction)[] parts)
        {
            var error = Assert.ThrowsAny<ArgumentException>(() => Fluid.Blend(parts.Select(p => BlendCases.Part(p.Designation, p.Fraction))));
            Assert.Contains(message, error.Message, StringComparison.Ordinal);
            Assert.Equal("massFractions", error.ParamName);
        }
    }

    [Fact]
    public void EstimatedPairsAreMarked()
    {
        Assert.Equal(ModelQuality.Published, Fluid.Get("R-410A").Quality);
        string[] estimated = [.. BlendCases.Models.Where(m => m.Quality == ModelQuality.Estimated).Select(m => m.Designation)];
        Assert.Equal(31, estimated.Length);
        Assert.Contains("R-401A", estimated);
        Assert.Contains("estimated by Lorentz", Fluid.Get("R-438A").Model.Source, StringComparison.Ordinal);
    }
}
