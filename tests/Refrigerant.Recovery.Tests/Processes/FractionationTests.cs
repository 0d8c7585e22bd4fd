using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

public class FractionationTests
{
    [Theory]
    [InlineData("R-407C", "R-32", 0.03)]
    [InlineData("R-448A", "R-32", 0.03)]
    [InlineData("R-455A", "R-744", 0.015)]
    public void The_volatile_component_leaves_first_and_every_component_is_accounted_for(string fluid, string volatileOne, double atLeast)
    {
        Appliance appliance = Setups.Appliance(fluid, 10, 50, 24, 50);
        FractionationResult result = Fractionation.Follow(appliance, Recovery(appliance));
        Assert.True(result.IsComplete);
        Assert.InRange(result.LargestImbalance, 0, 1e-9);
        Assert.True(result.LiquidDrift(volatileOne) < -atLeast, $"{result.LiquidDrift(volatileOne)}");
        Assert.True(result.LastLiquid!.Pressure < result.LastLiquid.FixedCompositionPressure);
        Assert.Contains(result.Findings, f => f.Subject == FindingSubject.Fractionation);
        foreach (FractionationPoint point in result.Points)
        {
            Assert.Equal(1, point.Vapor.Sum(c => c.MassFraction), 12);
            Assert.Equal(1, point.Vapor.Sum(c => c.MoleFraction), 12);
        }

        FractionationPoint first = result.Points[0];
        Assert.Equal(first.FixedCompositionPressure.Pascals, first.Pressure.Pascals, 1e-6 * first.Pressure.Pascals);
    }

    /// <summary>A blend of hardly any glide hardly drifts.</summary>
    [Fact]
    public void An_azeotrope_stays_what_it_is()
    {
        Appliance appliance = Setups.Appliance("R-507A", 10, 50, 24, 50);
        FractionationResult result = Fractionation.Follow(appliance, Recovery(appliance));
        Assert.InRange(Math.Abs(result.LiquidDrift("R-125")), 0, 0.06);
        Assert.InRange(result.LastLiquid!.Pressure / result.LastLiquid.FixedCompositionPressure, 0.98, 1.02);
    }

    /// <summary>Twice as many steps change the composition by less than 1e-4: the midpoint rule has converged.</summary>
    [Fact]
    public void The_course_does_not_depend_on_the_steps()
    {
        var model = (MixtureModel)Fluid.Get("R-407C").Model;
        double[] coarse = Drawn(100), fine = Drawn(200);
        for (int i = 0; i < coarse.Length; i++)
        {
            Assert.InRange(coarse[i] - fine[i], -1e-4, 1e-4);
        }

        double[] Drawn(int steps)
        {
            var draw = new VaporDraw(model, 0.05, 10, 290);
            for (int k = 0; k < steps; k++)
            {
                draw.Draw(7.0 / steps, 290);
            }

            return draw.LiquidMassFractions();
        }
    }

    [Fact]
    public void What_burns_and_becomes_more_is_said_and_what_is_estimated_too()
    {
        // R-32 and R-1234yf burn, R-125 and R-134a do not; R-401A's pairs are estimated.
        Appliance appliance = Setups.Appliance("R-448A", 10, 50, 24, 50);
        Assert.Contains(Fractionation.Follow(appliance, Recovery(appliance)).Findings, f => f.Subject == FindingSubject.Flammability);
        Appliance estimated = Setups.Appliance("R-401A", 10, 50, 24, 50);
        Assert.Contains(Fractionation.Follow(estimated, Recovery(estimated)).Findings, f => f.Subject == FindingSubject.Estimate);
    }

    [Fact]
    public void A_pure_fluid_has_nothing_to_follow()
    {
        Appliance appliance = Setups.Appliance("R-134a", 10, 50, 24, 50);
        VaporRecoveryResult recovery = Recovery(appliance);
        Assert.Throws<ArgumentException>(() => Fractionation.Follow(appliance, recovery));
        Assert.Throws<ArgumentNullException>(() => Fractionation.Follow(null!, recovery));
        Assert.Throws<ArgumentNullException>(() => Fractionation.Follow(appliance, null!));
    }

    private static VaporRecoveryResult Recovery(Appliance appliance) => Setups.WithoutHoses(
        appliance,
        Setups.Ideal(0.5),
        new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(50), ReceiverPressure = Pressure.FromKilopascals(1000) });
}
