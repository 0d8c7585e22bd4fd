using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>A composition that was followed once is followed on, and each component stays what it is.</summary>
public class FollowedCylinderTests
{
    /// <summary>Of two components and of three; from an appliance as charged into a cylinder whose content was followed.</summary>
    [Theory]
    [InlineData("R-410A")]
    [InlineData("R-407C")]
    public void A_cylinder_that_was_followed_is_followed_with_the_next_appliance(string fluid)
    {
        Appliance first = Setups.Appliance(fluid, 4, 20, 20, 50), second = Setups.Appliance(fluid, 3, 20, 25, 50);
        StageResult before = VaporRecovery.Simulate(first, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(30, 1), Pull(null) with { Composition = CompositionMode.Tracked });
        StageResult after = VaporRecovery.Simulate(
            second, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(30, 1), Pull(new SimulationState(ApplianceState.Initial(second)) { Cylinder = before.Cylinder }));
        Assert.NotNull(after.Fractionation);
        Transfer drawn = after.Transfers.Single(transfer => transfer.To == "cylinder");
        Assert.Equal(second.Fluid.Composition.Count, drawn.Components.Count);
        Assert.Equal(drawn.Mass.Kilograms, drawn.Components.Sum(component => component.Kilograms), 1e-9);

        // The component that boils first goes over first.
        Assert.True(drawn.Components[0].Kilograms / drawn.Mass.Kilograms > second.Fluid.Composition[0].MassFraction);
        for (int i = 0; i < drawn.Components.Count; i++)
        {
            double left = after.Appliance.Composition[i].MassFraction * after.RemainingMass.Kilograms;
            Assert.Equal(second.Fluid.Composition[i].MassFraction * 3, left + drawn.Components[i].Kilograms, 1e-6);
        }
    }

    /// <summary>What is fixed is told without components.</summary>
    [Fact]
    public void What_was_never_followed_is_not()
    {
        StageResult pull = VaporRecovery.Simulate(Setups.Appliance("R-410A", 4, 20, 20, 50), Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(30, 1), Pull(null));
        Assert.Null(pull.Fractionation);
        Assert.All(pull.Transfers, transfer => Assert.Empty(transfer.Components));
    }

    private static VaporRecoveryOptions Pull(SimulationState? start) => new() { Start = start, MaximumDuration = Duration.FromMinutes(1) };
}
