using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Nobody waits for what cannot come.</summary>
public class PatienceTests
{
    /// <summary>With nothing between them a receiver's liquid never comes to the hose: two hours of patience are as ten minutes.</summary>
    [Fact]
    public void A_part_that_nothing_leads_to_is_not_waited_for()
    {
        RecoveryPlan patient = RecoveryPlanner.Plan(Parts(120));
        Assert.Equal(LevelObstacle.HiddenSection, patient.Verdict.Obstacle);
        Assert.Equal(RecoveryPlanner.Plan(Parts(10)).TotalDuration.Seconds, patient.TotalDuration.Seconds, 1e-6);
    }

    /// <summary>Where a thin line leads to it, the patient one draws more.</summary>
    [Fact]
    public void A_part_that_a_thin_line_leads_to_is()
    {
        var line = new SectionConnection { From = "receiver", To = "coil", FlowCoefficient = 2e-4 };
        RecoveryPlan patient = RecoveryPlanner.Plan(Parts(120, line));
        RecoveryPlan hasty = RecoveryPlanner.Plan(Parts(10, line));
        Assert.True(patient.Ledger.InCylinders > hasty.Ledger.InCylinders);
    }

    [Fact]
    public void Check_valves_lead_one_way()
    {
        Appliance appliance = Parts(10).Appliance with
        {
            Connections =
            [
                new SectionConnection { From = "coil", To = "receiver", FlowCoefficient = 1, IsCheckValve = true },
            ],
        };
        Assert.Equal([false, true], SectionReach.To(appliance, 1));
        Assert.Equal([true, true], SectionReach.To(appliance, 0));
        Appliance open = appliance with { Connections = [appliance.Connections[0] with { IsCheckValve = false }] };
        Assert.Equal([true, true], SectionReach.To(open, 1));
    }

    /// <summary>Of carbon dioxide against a cylinder in warm air: η(r) = 0 where r^(1/n) = 1 + 1/c lies above the air, and the discharge comes beyond what any machine stands.</summary>
    [Fact]
    public void A_machine_that_gets_no_deeper_is_not_waited_for_nor_run_red_hot()
    {
        RecoveryPlan patient = RecoveryPlanner.Plan(CarbonDioxide());
        Assert.False(patient.IsLevelReached);
        PlannedStage pull = patient.Stages.Last(stage => stage.Kind == StageKind.VaporRecovery);

        // 2 % of the charge in the two hours: what counts as crawling. It is given up after ten minutes of it.
        double crawl = 0.02 * 6 / 7200;
        double since = pull.Result!.Trajectory.Reverse().TakeWhile(point => point.Flow.KilogramsPerSecond < crawl).Last().Time.Seconds;
        Assert.Equal(600, pull.Duration.Seconds - since, 20.0);
        double hottest = patient.Stages.Max(stage => stage.Result?.HottestDischarge?.DegreesCelsius ?? 0);
        Assert.True(hottest > 220, hottest.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.Contains(patient.ToDo, finding => finding is { Code: "machine-hot", Severity: Severity.Stop });
        Assert.StartsWith("do not start: The machine's discharge", patient.ToString(), System.StringComparison.Ordinal);
    }

    /// <summary>Oil that has not given off what it holds is waited for.</summary>
    [Fact]
    public void Oil_is_waited_for()
    {
        RecoveryJob job = Jobs.Chiller("R-22", 5, 3, 1) with { PushPull = PushPullUse.Never };
        job = job with
        {
            Appliance = job.Appliance with
            {
                Temperature = Temperature.FromDegreesCelsius(10),
                LiquidReachable = false,
                HeatResistance = null,
                MetalMass = null,
                Oil = new ApplianceOil { Mass = Mass.FromKilograms(1), Kind = OilKind.Mineral },
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5), clearanceRatio: 0.1),
            Evacuation = new EvacuationOptions { Rules = RuleSet.Spain, InternalVolume = Volume.FromLiters(15) },
        };
        RecoveryPlan patient = RecoveryPlanner.Plan(job);
        RecoveryPlan hasty = RecoveryPlanner.Plan(job with { Times = new JobTimes { Patience = Duration.FromMinutes(10) } });
        Assert.True(patient.IsLevelReached || patient.Ledger.InAppliance < 0.8 * hasty.Ledger.InAppliance, $"{patient.Ledger} / {hasty.Ledger}");
    }

    /// <summary>What comes from a part behind a thin line is pulled on for, until that part is at the level too.</summary>
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.02)]
    public void A_part_behind_a_thin_line_comes_to_the_level_too(double coefficient)
    {
        RecoveryJob job = Parts(120, new SectionConnection { From = "receiver", To = "coil", FlowCoefficient = coefficient });
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.True(plan.IsLevelReached, plan.ToString());
        Assert.All(plan.End.Sections, section => Assert.InRange(section.Pressure.Pascals, 0, 1.05 * plan.Requirement.RequiredPressure.Pascals));
    }

    private static RecoveryJob CarbonDioxide() => new()
    {
        Appliance = new Appliance
        {
            Fluid = Fluid.Get("R-744"),
            Charge = Mass.FromKilograms(6),
            InternalVolume = Volume.FromLiters(12),
            Temperature = Temperature.FromDegreesCelsius(5),
            Surroundings = Temperature.FromDegreesCelsius(25),
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.2)) with { HighPressureCutout = Pressure.FromKilopascals(9000) },
        Hoses = Jobs.Hoses(5, 8),
        Cylinders = [RecoveryCylinder.FromTestPressure(Pressure.FromBars(250), Mass.FromKilograms(20), Mass.FromKilograms(28))],
    };

    private static RecoveryJob Parts(double patience, params SectionConnection[] connections) => new()
    {
        Appliance = new Appliance
        {
            Fluid = Fluid.Get("R-404A"),
            Charge = Mass.FromKilograms(12),
            InternalVolume = Volume.FromLiters(30),
            Temperature = Temperature.FromDegreesCelsius(18),
            Sections =
            [
                new ApplianceSection { Name = "receiver", InternalVolume = Volume.FromLiters(12), Charge = Mass.FromKilograms(8) },
                new ApplianceSection { Name = "coil", InternalVolume = Volume.FromLiters(18), Charge = Mass.FromKilograms(4) },
            ],
            Connections = connections,
            VaporPort = "coil",
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(1.5)),
        Hoses = Jobs.Hoses(),
        Cylinders = [Jobs.Cylinder(50)],
        Times = new JobTimes { Patience = Duration.FromMinutes(patience) },
    };
}
