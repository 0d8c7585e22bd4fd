using Refrigerant.Recovery.Docs.Validation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Docs.Tests;

/// <summary>A tank of nitrous oxide that was drained of its liquid under measurement.</summary>
public class MeasuredTankTests
{
    public static TheoryData<double, double, double> Runs
    {
        get
        {
            var runs = new TheoryData<double, double, double>();
            foreach ((double kilograms, double start, double end) in SelfCoolingTank.Runs)
            {
                runs.Add(kilograms, start, end);
            }

            return runs;
        }
    }

    /// <summary>Measured where the liquid ends (student record of 2019): inside what filling and metal that were not reported leave open, which is no more than 15 %.</summary>
    [Theory]
    [MemberData(nameof(Runs))]
    public void Where_the_liquid_ends_is_where_it_was_measured(double kilograms, double start, double end)
    {
        (double least, double most) = SelfCoolingTank.AtEnd(kilograms, start);
        Assert.InRange(end, least, most);
        Assert.InRange(most / least, 1, 1.15);
    }

    /// <summary>The equation against a state that the CoolProp library publishes with it (dev/fluids/NitrousOxide.json): 340.472 K and 9243 mol/m³, 11 652 892.85 Pa.</summary>
    [Fact]
    public void The_equation_is_that_of_Lemmon_and_Span() =>
        Assert.Equal(11_652_892.85, NitrousOxide.Fluid.Model.VesselAtTemperature(340.472, 9243 * 0.0440128).Bulk.Pressure, 1.0);

    /// <summary>Pressure at the triple point there: 87 837.44 Pa at 182.33 K.</summary>
    [Fact]
    public void It_boils_as_published() =>
        Assert.Equal(87_837.44, NitrousOxide.Fluid.SaturationAt(Temperature.FromKelvins(182.33)).Bubble.Pressure.Pascals, 5.0);
}
