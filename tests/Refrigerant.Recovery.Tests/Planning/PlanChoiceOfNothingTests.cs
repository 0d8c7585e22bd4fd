using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;
using static Refrigerant.Recovery.Tests.Planning.Course;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What a van offers, asked without a cylinder, so that no plan takes time.</summary>
public class PlanChoiceOfNothingTests
{
    private static readonly RecoveryJob Bare = Job() with { Cylinders = [], Times = new JobTimes { SetUp = Duration.FromSeconds(100) } };

    private static Hose Cored => Jobs.Hose(5, 8) with { Fittings = [Fitting.CoreDepressor(), Fitting.BallValve(Length.FromMillimeters(8))] };

    [Fact]
    public void An_empty_van_offers_the_job_as_it_is()
    {
        SetupOutcome only = Assert.Single(PlanChoice.Find(Bare, new Van()).Outcomes);
        Assert.Equal("hoses as they are, machine as it is, no other help", only.Name);
        Assert.Equal(0, only.Saved.Seconds);
    }

    /// <summary>Cores of any run of hoses are taken out, and nothing else of them; hoses without are not offered twice.</summary>
    [Theory]
    [InlineData("vapor", 2)]
    [InlineData("second", 2)]
    [InlineData("liquid", 2)]
    [InlineData("discharge", 1)]
    public void A_core_tool_is_offered_where_there_are_cores(string run, int offers)
    {
        HoseSet hoses = new()
        {
            VaporSide = [run == "vapor" ? Cored : Jobs.Hose()],
            SecondVaporSide = run == "second" ? [Cored] : [],
            LiquidSide = run == "liquid" ? [Jobs.Hose(), Cored] : [],
            Discharge = [run == "discharge" ? Cored : Jobs.Hose()],
        };
        Assert.Single(Find(Bare with { Hoses = hoses }, new Van()));
        Dictionary<string, RecoveryJob> found = Find(Bare with { Hoses = hoses }, new Van { HasCoreTool = true });
        Assert.Equal(offers, found.Count);
        if (offers == 2)
        {
            RecoveryJob open = found["hoses as they are without cores, machine as it is, no other help"];
            Hose[] all = [.. open.Hoses.VaporSide, .. open.Hoses.SecondVaporSide, .. open.Hoses.LiquidSide];
            Assert.All(all.SelectMany(hose => hose.Fittings), fitting => Assert.False(fitting.IsCore));
            Assert.Single(all.SelectMany(hose => hose.Fittings));
            Assert.Equal(340, open.Times.SetUp.Seconds);
            Assert.Equal(100, found["hoses as they are, machine as it is, no other help"].Times.SetUp.Seconds);
        }
    }

    /// <summary>Two machines of a kind are offered side by side, with a run of hoses each, three minutes more, where the job has that machine, another one is in the van and no second run is laid.</summary>
    [Fact]
    public void Two_machines_of_a_kind_are_offered_side_by_side()
    {
        RecoveryMachine other = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(3));
        Dictionary<string, RecoveryJob> pair = Find(Bare, new Van { Machines = [Bare.Machine, Bare.Machine] });
        Assert.Equal(4, pair.Count);
        RecoveryJob two = pair["hoses as they are, two machines side by side with a run of hoses each, no other help"];
        Assert.Equal(280, two.Times.SetUp.Seconds);
        Assert.Equal(Bare.Hoses.VaporSide, two.Hoses.SecondVaporSide);
        Assert.Equal(2 * Bare.Machine.Displacement.LitersPerSecond, two.Machine.Displacement.LitersPerSecond, 1e-12);
        Assert.Equal(2, Find(Bare, new Van { Machines = [other] }).Count);
        Assert.DoesNotContain(Find(Bare, new Van { Machines = [other, other] }).Keys, name => name.Contains("side by side", StringComparison.Ordinal));
        RecoveryJob laid = Bare with { Hoses = Bare.Hoses with { SecondVaporSide = [Jobs.Hose()] } };
        Assert.DoesNotContain(Find(laid, new Van { Machines = [Bare.Machine] }).Keys, name => name.Contains("side by side", StringComparison.Ordinal));
        Assert.Equal(6, Find(Bare, new Van { Machines = [Bare.Machine], Aids = new SiteAids { HasIce = true } }).Count);
    }

    /// <summary>All with all, in order, with the van's cylinders beside the job's.</summary>
    [Fact]
    public void All_that_the_van_has_is_offered_with_all()
    {
        var van = new Van { Hoses = [Jobs.Hoses(5, 10.5), Jobs.Hoses(5, 4.7)], Machines = [RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(3))], Aids = new SiteAids { HasCylinderFan = true } };
        Dictionary<string, RecoveryJob> found = Find(Bare, van);
        Assert.Equal(3 * 2 * 2, found.Count);
        RecoveryJob job = found["hoses 2 of the van, machine 1 of the van, what cools and warms in the van"];
        Assert.Equal(4.7, job.Hoses.VaporSide[0].InnerDiameter.Millimeters, 1e-9);
        Assert.Equal(3, job.Machine.Displacement.LitersPerSecond, 1e-9);
        Assert.True(job.Aids.HasCylinderFan);
        Assert.False(found["hoses 1 of the van, machine as it is, no other help"].Aids.HasCylinderFan);
        Assert.Equal(10.5, found["hoses 1 of the van, machine as it is, no other help"].Hoses.VaporSide[0].InnerDiameter.Millimeters, 1e-9);
    }

    /// <summary>People stand by what is not the machine's or the clock's alone: a tenth of the time for that.</summary>
    [Fact]
    public void People_stand_by_what_the_machine_does_not_do_alone()
    {
        foreach (StageKind kind in Enum.GetValues<StageKind>().Where(kind => kind is not (StageKind.SetUp or StageKind.CylinderChange or StageKind.MachineClearing or StageKind.OilDrain or StageKind.OilFill or StageKind.HoseSweep or StageKind.Close)))
        {
            RecoveryJob job = Job();
            bool alone = kind is StageKind.VaporRecovery or StageKind.LiquidRecovery or StageKind.Hold or StageKind.Rest or StageKind.Warm;
            RecoveryPlan plan = Plan(job, SetUp, new CourseStage(kind) { Seconds = 1000 });
            Assert.Equal(300 + (alone ? 100 : 1000), PlanChoice.PeopleTime(plan).Seconds, 1e-9);
        }
    }

    private static Dictionary<string, RecoveryJob> Find(RecoveryJob job, Van van) => PlanChoice.Find(job, van).Outcomes.ToDictionary(outcome => outcome.Name, outcome => outcome.Plan.Job);
}
