using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>Drawn as vapor a blend of what burns and what does not may come to burn: it is said where the share of what burns rises.</summary>
public class BurningShareTests
{
    /// <summary>R-407C: R-32 boils off first. R-507A is an azeotrope, whose shares stay. All of R-454B burns as charged.</summary>
    [Theory]
    [InlineData("R-407C", true)]
    [InlineData("R-507A", false)]
    [InlineData("R-454B", false)]
    public void It_is_said_where_the_share_of_what_burns_rises(string fluid, bool said)
    {
        StageResult pull = VaporRecovery.Simulate(
            Setups.Appliance(fluid, 10, 50, 24, 50),
            Setups.Machine(0.5),
            Setups.Hoses(),
            Setups.Cylinder(60),
            new VaporRecoveryOptions { Composition = CompositionMode.Tracked, MaximumDuration = Duration.FromMinutes(8) });
        Finding? burns = pull.Fractionation!.Findings.SingleOrDefault(finding => finding.Code == "blend-may-burn");
        Assert.Equal(said, burns is not null);
        if (burns is not null)
        {
            double charged = pull.Before.Appliance.Composition.Single(component => component.Designation == "R-32").MoleFraction;
            Assert.Equal(charged, burns.Values.Single(value => value.Name == "as charged").InternationalValue!.Value, 1e-9);
            Assert.True(burns.Values.Single(value => value.Name == "most").InternationalValue!.Value > charged + 0.02);
        }
    }
}
