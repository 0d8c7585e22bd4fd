using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What the machine held before: what burns or is toxic is said, whether the machine was cleared or not.</summary>
public class MachinePastTests
{
    [Theory]
    [InlineData("R-290", true, false)]
    [InlineData("R-32", true, false)]
    [InlineData("R-123", false, true)]
    [InlineData("R-717", true, true)]
    [InlineData("R-22", false, false)]
    [InlineData("R-134a", false, false)]
    public void What_burns_or_is_toxic_in_the_machine_is_said(string last, bool burns, bool toxic)
    {
        foreach (bool cleared in new[] { true, false })
        {
            RecoveryPlan plan = After(last, "R-134a", cleared);
            Assert.Equal(burns, plan.ToDo.Any(finding => finding is { Code: "machine-held-flammable", Severity: Severity.Warning }));
            Assert.Equal(toxic, plan.ToDo.Any(finding => finding is { Code: "machine-held-toxic", Severity: Severity.Warning }));
        }
    }

    [Fact]
    public void What_goes_on_with_the_same_refrigerant_is_not() =>
        Assert.DoesNotContain(After("R-290", "R-290", false).ToDo, finding => finding.Code == "machine-held-flammable");

    [Fact]
    public void A_machine_that_is_not_listed_should_not_have_held_it()
    {
        RecoveryJob job = Job("R-290", "R-134a", true);
        string listed = Said(job with { Machine = job.Machine with { ListedForFlammable = true } });
        string not = Said(job);
        Assert.StartsWith(listed, not, System.StringComparison.Ordinal);
        Assert.True(not.Length > listed.Length);

        static string Said(RecoveryJob told) => RecoveryPlanner.Plan(told).ToDo.Single(finding => finding.Code == "machine-held-flammable").Message;
    }

    /// <summary>The nitrogen stands where the hoses are set up, before anything is swept, and after a machine that was not cleared was.</summary>
    [Fact]
    public void The_nitrogen_comes_before_the_sweep_and_after_the_clearing()
    {
        RecoveryPlan plan = After("R-290", "R-134a", cleared: false);
        Assert.StartsWith("first dry nitrogen through the machine, which held R-290; R-134a: ", plan.ToString(), System.StringComparison.Ordinal);
        Assert.StartsWith("R-134a: ", After("R-22", "R-134a", cleared: false).ToString(), System.StringComparison.Ordinal);
        string[] codes = [.. plan.ToDo.Select(finding => finding.Code)];
        Assert.True(System.Array.IndexOf(codes, "clear-machine-first") < System.Array.IndexOf(codes, "machine-held-flammable"));
        PlannedStage setUp = plan.Stages.Single(stage => stage.Kind == StageKind.SetUp);
        Assert.Contains(setUp.Hookup!.Settings, setting => setting.Item == HookupItem.NitrogenRegulator);
        Assert.True(plan.Stages.ToList().IndexOf(setUp) < plan.Stages.ToList().FindIndex(stage => stage.Kind == StageKind.HoseSweep));
        Assert.DoesNotContain(After("R-22", "R-134a", cleared: true).Stages.Where(stage => stage.Kind == StageKind.SetUp).SelectMany(stage => stage.Hookup!.Settings), setting => setting.Item == HookupItem.NitrogenRegulator);
    }

    /// <summary>2 NH3 + CO2 makes ammonium carbamate, a solid.</summary>
    [Fact]
    public void Ammonia_and_carbon_dioxide_do_not_meet()
    {
        Assert.Contains("salt", Toxic("R-744"), System.StringComparison.Ordinal);
        Assert.Contains("copper", Toxic("R-134a"), System.StringComparison.Ordinal);

        static string Toxic(string now) => RecoveryPlanner.Plan(Job("R-717", now, true)).ToDo.Single(finding => finding.Code == "machine-held-toxic").Message;
    }

    private static RecoveryPlan After(string last, string now, bool cleared) => RecoveryPlanner.Plan(Job(last, now, cleared));

    private static RecoveryJob Job(string last, string now, bool cleared)
    {
        RecoveryJob job = Jobs.Chiller(now, 2, 3, 1);
        return job with
        {
            Machine = job.Machine with { HighPressureCutout = Pressure.FromBars(100) },
            MachinePast = new MachinePast { Refrigerant = Fluid.Get(last), IsCleared = cleared },
        };
    }
}
