using System;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids.Mixtures;

/// <summary>A blend as vapor leaves it, against a vessel that is emptied in small steps and solved by its equilibrium.</summary>
public class GlideTableTests
{
    /// <summary>K: where the table's line is drawn.</summary>
    private const double Kelvins = 270;

    /// <summary>Vapor above the liquid, share of the liquid's volume: its mass is some ten thousandths of it.</summary>
    private const double Space = 0.01;

    /// <summary>Share of the liquid that boils off in a step, and steps until a twentieth of it is left.</summary>
    private const double Part = 0.0025;

    private const int Steps = 1201;

    [Theory]
    [InlineData("R-407C")]
    [InlineData("R-448A")]
    [InlineData("R-410A")]
    [InlineData("R-454B")]
    public void Pressure_and_vapor_are_those_of_a_vessel_that_is_emptied(string fluid)
    {
        var model = (MixtureModel)Fluid.Get(fluid).Model;
        var vessel = new TrackedVessel(model);
        double[] amounts = [.. model.Composition.Select(component => component.MoleFraction)];
        double liquidVolume = model.MolarMass / model.SaturationAtTemperature(Kelvins).Bubble.Density;
        double first = model.MolarMass;
        double last = 0;
        var values = new double[GlideTable.Columns];
        for (int i = 0; i < Steps; i++)
        {
            vessel.SolveAtTemperature(amounts, (1 + Space) * liquidVolume, Kelvins);
            liquidVolume = vessel.Liquid.Volume;
            double left = (vessel.Liquid.Mass + vessel.Vapor.Mass) / first;
            if (i % 100 == 0)
            {
                model.Glide.Densities(Kelvins, Math.Sqrt(left), out double vapor, out double volume, out _);
                model.Glide.At(Kelvins, Math.Sqrt(left), values, out _, out _);

                // Read off in straight lines: a tenth of the way from one end of the table to the other.
                Assert.Equal(vessel.Pressure, Math.Exp(values[0]), 0.01 * vessel.Pressure);
                Assert.Equal(vessel.Vapor.Density, vapor, 0.01 * vapor);
                Assert.Equal(vessel.Liquid.Density, 1 / volume, 0.005 / volume);
                last = left;
            }

            double taken = Part * vessel.Liquid.Amount;
            for (int k = 0; k < amounts.Length; k++)
            {
                amounts[k] -= taken * vessel.VaporFractions[k];
            }

            liquidVolume *= 1 - Part;
        }

        Assert.InRange(last, 0, 0.07);
    }

    [Fact]
    public void A_model_that_cannot_be_followed_goes_from_bubble_to_dew()
    {
        PropertyModel model = Fluid.Get("R-407C").Model;
        var table = GlideTable.Fixed(model);
        Assert.False(table.IsFollowed);
        var values = new double[GlideTable.Columns];
        SaturationPoint both = model.SaturationAtTemperature(281);
        table.At(281, 1, values, out _, out _);
        Assert.Equal(both.Bubble.Pressure, Math.Exp(values[0]), 2e-3 * both.Bubble.Pressure);
        table.At(281, Math.Exp(-0.5), values, out _, out _);
        Assert.Equal(both.Dew.Pressure, Math.Exp(values[0]), 2e-3 * both.Dew.Pressure);
    }
}
