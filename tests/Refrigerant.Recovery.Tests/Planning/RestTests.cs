using System;
using System.Linq;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>A pull that ran a cylinder or the machine to its limit: what the usual way does next, rest or change, and until when.</summary>
public class RestTests
{
    /// <summary>Least of cut-out and 5/4 of the service pressure, gauge (49 CFR 173.301, from memory).</summary>
    private static readonly double Limit = Math.Min(3.9e6, (1.25 * 400 * 6894.757) + 101_325);

    /// <summary>In a bath or before a fan it cools to three quarters of the limit; in air that is too warm for that to a twentieth above what it comes to there (our choice).</summary>
    [Theory]
    [InlineData("bath", 25)]
    [InlineData("ice", 0)]
    [InlineData("warm bath", 41)]
    [InlineData("fan", 46)]
    [InlineData("nothing", 46)]
    public void It_rests_until_three_quarters_of_the_limit_or_what_the_air_allows(string aid, double celsius)
    {
        RecoveryJob job = HotRoof.Job(1) with
        {
            Aids = aid switch
            {
                "bath" => new SiteAids { WaterBath = Temperature.FromDegreesCelsius(25) },
                "warm bath" => new SiteAids { WaterBath = Temperature.FromDegreesCelsius(41) },
                "ice" => new SiteAids { HasIce = true },
                "fan" => new SiteAids { HasCylinderFan = true },
                _ => new SiteAids(),
            },
        };
        PlannedStage[] stages = Stages(job);
        Assert.Equal(StageEnd.CylinderPressure, stages[2].Result!.End);
        PlannedStage rest = stages[3];
        Assert.Equal((StageKind.Rest, StepReason.Cool), (rest.Kind, rest.Step.Reason));
        double floor = (1.05 * job.Appliance.Fluid.SaturationAt(Temperature.FromDegreesCelsius(celsius)).Bubble.Pressure.Pascals) + stages[2].State.Cylinder!.NonCondensablePressure.Pascals;
        double target = Math.Max(0.75 * Limit, floor);
        Assert.Equal(target, rest.Step.CylinderPressure!.Value.Pascals, 1e-6 * target);
        double longest = aid == "nothing" ? 60 : 30;
        Assert.InRange(rest.Duration.Minutes, 0.1, longest);
        Assert.InRange(rest.State.Cylinder!.Pressure.Pascals, 0.9999 * target, rest.Duration.Minutes < longest - 0.01 ? 1.0001 * target : Limit);
    }

    /// <summary>A second, cooler cylinder is sooner there than the first has cooled; where it cools faster than hands change, or the second is as hot, it rests.</summary>
    [Theory]
    [InlineData(4, false, StageKind.CylinderChange)]
    [InlineData(55, true, StageKind.Rest)]
    public void A_second_cylinder_is_taken_where_that_is_sooner(double minutes, bool hasIce, StageKind kind)
    {
        RecoveryJob job = HotRoof.Job(2) with { Times = new JobTimes { CylinderChange = Duration.FromMinutes(minutes) }, Aids = new SiteAids { HasIce = hasIce } };
        PlannedStage next = Stages(job)[3];
        Assert.Equal(kind, next.Kind);
        Assert.Equal(kind == StageKind.Rest ? StepReason.Cool : StepReason.CoolerCylinder, next.Step.Reason);
        RecoveryJob asHot = job with { Cylinders = [job.Cylinders[0], job.Cylinders[1] with { Content = Mass.FromKilograms(5), Refrigerant = "R-410A", Temperature = Temperature.FromDegreesCelsius(51.9) }] };
        Assert.Equal(StageKind.Rest, Stages(asHot with { Times = new JobTimes() })[3].Kind);
    }

    /// <summary>A machine that is too hot is let rest half an hour, whatever the cylinder.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void A_hot_machine_rests_half_an_hour(int cylinders)
    {
        RecoveryJob job = HotRoof.Job(cylinders);
        PlannedStage[] stages = Stages(job with { Machine = job.Machine with { ThermalCutout = Temperature.FromDegreesCelsius(90) } });
        Assert.Equal(StageEnd.ThermalCutout, stages[2].Result!.End);
        Assert.Equal((StageKind.Rest, 30.0), (stages[3].Kind, Math.Round(stages[3].Duration.Minutes, 6)));
        Assert.Null(stages[3].Step.CylinderPressure);
    }

    /// <summary>A full cylinder is changed for the next one; where there is none the job is closed.</summary>
    [Theory]
    [InlineData(1, StageKind.Close)]
    [InlineData(2, StageKind.CylinderChange)]
    public void A_full_cylinder_is_changed(int cylinders, StageKind kind)
    {
        RecoveryJob job = HotRoof.Job(cylinders);
        job = job with { Cylinders = [.. job.Cylinders.Select((cylinder, i) => i == 0 ? Jobs.Cylinder(50, "C1") : Jobs.Cylinder(10, "C2"))], Appliance = job.Appliance with { Charge = Mass.FromKilograms(25), InternalVolume = Volume.FromLiters(60), Temperature = Temperature.FromDegreesCelsius(20) } };
        PlannedStage[] stages = Stages(job);
        Assert.Equal(StageEnd.CylinderFull, stages[2].Result!.End);
        Assert.Equal((kind, StepReason.Usual), (stages[3].Kind, stages[3].Step.Reason));
    }

    /// <summary>Set up and swept, then one pull to the goal whatever is in the way, then the usual way.</summary>
    private static PlannedStage[] Stages(RecoveryJob job) => [.. RecoveryPlanner.Plan(job, new Heedless()).Stages];

    private sealed class Heedless : IRecoveryStrategy
    {
        public PlanStep? Next(PlanSituation now) => now.Stages.Count switch
        {
            0 => new PlanStep(StageKind.SetUp) { Cylinder = now.NextCylinder!.Cylinder },
            1 => new PlanStep(StageKind.HoseSweep),
            2 => new PlanStep(StageKind.VaporRecovery) { AppliancePressure = now.Goal },
            3 => StandardStrategy.Instance.Next(now),
            _ => null,
        };
    }
}
