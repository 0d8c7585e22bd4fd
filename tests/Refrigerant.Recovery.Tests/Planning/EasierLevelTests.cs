using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>A level that is easier takes no longer: what passes a hold at the air passes one at 5 psig too (40 CFR 82.156(a)(1)(iii)).</summary>
public class EasierLevelTests
{
    /// <summary>Small units whose oil gives off late: within the margins of our choice, seven tenths and five minutes, the pull before an oil change is no longer than that to the air.</summary>
    [Theory]
    [InlineData("R-32", 1, 4.5, 0.45)]
    [InlineData("R-410A", 4.2, 14, 1)]
    [InlineData("R-22", 8, 25, 1.5)]
    public void An_oil_change_takes_no_longer_than_the_air(string fluid, double kilograms, double liters, double oil)
    {
        RecoveryJob job = new()
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get(fluid),
                Charge = Mass.FromKilograms(kilograms),
                InternalVolume = Volume.FromLiters(liters),
                Temperature = Temperature.FromDegreesCelsius(24),
                Oil = new ApplianceOil { Mass = Mass.FromKilograms(oil), Kind = OilKind.PolyolEster },
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.6)),
            Hoses = new HoseSet { VaporSide = [Jobs.Hose(5, 4.8)], Discharge = [Jobs.Hose(5, 4.8)] },
            Cylinders = [Jobs.Cylinder(47.6, "C1")],
        };
        RecoveryPlan air = RecoveryPlanner.Plan(job), change = RecoveryPlanner.Plan(job with { Evacuation = new EvacuationOptions { Purpose = OpeningPurpose.OilChange } });
        Assert.True(air.IsLevelReached && change.IsLevelReached);
        Assert.True(change.Requirement.RequiredPressure > air.Requirement.RequiredPressure);
        double longest = Pulled(air);
        Assert.InRange(Pulled(change), 1, Math.Max(longest / 0.7, longest + 300));
    }

    private static double Pulled(RecoveryPlan plan) => plan.Stages.Where(stage => stage.Kind == StageKind.VaporRecovery).Sum(stage => stage.Duration.Seconds);
}
