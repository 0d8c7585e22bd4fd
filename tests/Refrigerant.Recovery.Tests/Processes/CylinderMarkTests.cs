using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>49 CFR 178.65 (from memory) forbids to refill a cylinder of specification 39: a single stage says it as a plan does.</summary>
public class CylinderMarkTests
{
    private static readonly Appliance Unit = Setups.Appliance("R-134a", 6, 20, 22, 8) with { LiquidReachable = true };

    private static RecoveryCylinder Disposable => Setups.Cylinder() with { Specification = CylinderSpecification.FromMark("DOT 39 260"), ServicePressure = Pressure.FromPoundsForcePerSquareInch(260) };

    [Fact]
    public void A_stage_into_a_cylinder_that_must_not_be_filled_says_so()
    {
        StageResult[] stages =
        [
            VaporRecovery.Simulate(Unit, Setups.Machine(0.5), Setups.Hoses(), Disposable, new VaporRecoveryOptions()),
            LiquidRecovery.Simulate(Unit, Setups.Machine(0.5), Setups.Hoses(), Disposable, new LiquidRecoveryOptions()),
            Equalization.Simulate(Unit, Setups.Hoses(), Disposable, new EqualizationOptions()),
            PushPull.Simulate(Unit, Setups.Machine(0.5), Setups.Hoses(), Disposable, new PushPullOptions()),
        ];
        Assert.All(stages, stage => Assert.Contains(stage.Findings, finding => finding.Code == "cylinder-non-refillable" && finding.Severity == Severity.Stop));
    }

    [Fact]
    public void A_stage_into_a_refillable_one_or_with_a_limit_of_the_callers_does_not()
    {
        StageResult refillable = VaporRecovery.Simulate(Unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(), new VaporRecoveryOptions());
        StageResult given = VaporRecovery.Simulate(Unit, Setups.Machine(0.5), Setups.Hoses(), Disposable, new VaporRecoveryOptions { CylinderLimit = Mass.FromKilograms(10) });
        Assert.DoesNotContain(refillable.Findings.Concat(given.Findings), finding => finding.Code == "cylinder-non-refillable");
    }
}
