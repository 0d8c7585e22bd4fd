using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;
using static Refrigerant.Recovery.Tests.Planning.Course;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What a plan books, says and warns of over courses that are set down by hand.</summary>
public class PlanOfCoursesTests
{
    private static readonly RecoveryJob Plain = Job();

    /// <summary>Stages follow each other; the plan takes as long as all; each moves what the appliance loses.</summary>
    [Fact]
    public void Stages_are_booked_one_after_the_other()
    {
        RecoveryPlan plan = Plan(Plain, SetUp, Pull() with { Seconds = 500, After = Holds(Plain, 1.25) }, new CourseStage(StageKind.Rest) { Seconds = 70 }, Pull() with { Seconds = 30, After = Holds(Plain, 1.1) });
        Assert.Equal([0, 300, 800, 870], plan.Stages.Select(stage => stage.Start.Seconds));
        Assert.Equal([300, 500, 70, 30], plan.Stages.Select(stage => stage.Duration.Seconds));
        Assert.Equal(900, plan.TotalDuration.Seconds);
        double[] moved = [.. plan.Stages.Select(stage => stage.Moved.Kilograms)];
        Assert.Equal(0.75, moved[1], 1e-12);
        Assert.Equal(0.15, moved[3], 1e-12);
        Assert.Equal((0.0, 0.0), (moved[0], moved[2]));
        Assert.Equal(["C1", "C1", "C1", "C1"], plan.Stages.Select(stage => stage.Cylinder));
    }

    /// <summary>What handling takes is what the job allows for it; a stage that is simulated takes what it took.</summary>
    [Fact]
    public void Handling_takes_what_the_job_allows()
    {
        RecoveryJob job = Plain with
        {
            Cylinders = [Jobs.Cylinder(47.6, "C1"), Jobs.Cylinder(47.6, "C2")],
            Times = new JobTimes { SetUp = Duration.FromSeconds(11), HoseChange = Duration.FromSeconds(22), CylinderChange = Duration.FromSeconds(33), Close = Duration.FromSeconds(44), Hold = Duration.FromSeconds(55) },
        };
        RecoveryPlan plan = Plan(job, SetUp, new CourseStage(StageKind.HoseChange) { End = null }, Change("C2"), new CourseStage(StageKind.Hold) { End = null }, Close);
        Assert.Equal([11, 22, 33, 55, 44], plan.Stages.Select(stage => stage.Duration.Seconds), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(["C1", "C1", "C2", "C2", "C2"], plan.Stages.Select(stage => stage.Cylinder));
        Assert.Equal([null, null, "C1", null, null], plan.Stages.Select(stage => stage.CylinderBefore));
        Assert.Equal(["C1", "C2"], plan.Cylinders.Select(use => use.Cylinder.Label));
    }

    /// <summary>What a cylinder received is what came in by its transfers less what went out.</summary>
    [Fact]
    public void Cylinders_receive_what_came_in()
    {
        RecoveryJob job = Plain with { Cylinders = [Jobs.Cylinder(47.6, "C1"), Jobs.Cylinder(47.6, "C2")], LossPerConnection = Volume.Zero };
        PlanRun run = Run(job, SetUp, Pull() with { Received = 0.5 }, Pull() with { Received = 0.25 }, Change("C2"), Pull() with { Received = 0.125 }, Change("C1"), Pull() with { Received = -0.0625 });
        Assert.Equal([0.6875, 0.125], run.Cylinders.Select(cylinder => cylinder.Received.Kilograms));
        Assert.Equal(0.8125, run.Delivered);
        Assert.Equal(["C1", "C2"], run.Used);
        Assert.All(run.Cylinders, cylinder => Assert.Equal(cylinder.Limit.MaximumFill.Kilograms - cylinder.Kilograms, cylinder.Room.Kilograms, 1e-9));
    }

    /// <summary>Each opened connection lets out its volume, and no more than half of what came.</summary>
    [Fact]
    public void Connections_let_out_their_volume()
    {
        RecoveryJob job = Plain with { LossPerConnection = Volume.FromMilliliters(5), ClearMachine = false };
        SaturationPoint at = Plain.Appliance.Fluid.Model.SaturationAtTemperature(295);
        CourseStage fill = Pull() with { Received = 5, After = Cylinder(job, 5, 295) };
        Assert.Equal(3 * 5e-6 * at.Dew.Density, Run(job, SetUp, fill, Close).Released, 1e-9);
        Assert.Equal((2 * 5e-6 * at.Bubble.Density) + (3 * 5e-6 * at.Dew.Density), Run(job, SetUp, fill, new CourseStage(StageKind.HoseChange) { Seconds = 10 }, Close).Released, 1e-6);
        CourseStage little = Pull() with { Received = 0.001, After = Cylinder(job, 5, 295) };
        Assert.Equal(0.0005, Run(job, SetUp, little, new CourseStage(StageKind.HoseChange) { Seconds = 10 }).Released, 1e-12);
        Assert.Equal(0, Run(job, SetUp, Pull()).Released);
    }

    /// <summary>Air is drawn in where the appliance comes 2 % below it, in any stage; the lowest is told.</summary>
    [Theory]
    [InlineData(0.979, true)]
    [InlineData(0.981, false)]
    public void The_lowest_pressure_of_all_stages_counts(double share, bool isTold)
    {
        Finding? air = Plan(Plain, SetUp, Pull() with { After = Stands(Plain, share * Air) }, Pull() with { After = Stands(Plain, 1.5 * Air) }).Cautions.Said("air-drawn-in");
        Assert.Equal(isTold, air is not null);
        Assert.Equal(isTold ? (share - 1) * Air : 0, air?.Figure("lowest") ?? 0, 1.0);
    }

    /// <summary>A charge that makes a cubic metre of vapor in the air at the place takes the place of the air (common practice, no source); it lies low where it is heavier.</summary>
    [Theory]
    [InlineData("R-134a", true)]
    [InlineData("R-717", false)]
    [InlineData("R-744", true)]
    public void A_cubic_metre_of_vapor_displaces_air(string fluid, bool isHeavy)
    {
        RecoveryJob job = Plain.With(appliance => appliance with { Fluid = Fluid.Get(fluid) });
        double density = job.Appliance.Fluid.Model.StateAt(293.15, Air).Density;
        Finding? Told(double cubicMeters) => Plan(job.With(appliance => appliance with { Charge = Mass.FromKilograms(cubicMeters * density), InternalVolume = Volume.FromCubicMeters(cubicMeters / 10) }) with { Cylinders = [] }).Cautions.Said("displaces-air");
        Assert.Null(Told(0.99));
        Finding air = Told(1.01)!;
        Assert.Equal(1.01, air.Figure("vapor"), 1e-3);
        Assert.Equal(isHeavy, air.Message.Contains("heavier than air", StringComparison.Ordinal));
    }

    /// <summary>Liquid that boils below 0 °C in the air at the place freezes skin.</summary>
    [Theory]
    [InlineData("R-134a", 101_325, true)]
    [InlineData("R-245fa", 101_325, false)]
    [InlineData("R-245fa", 50_000, true)]
    [InlineData("R-123", 101_325, false)]
    [InlineData("R-744", 101_325, true)]
    public void What_boils_below_freezing_freezes_skin(string fluid, double air, bool isTold)
    {
        RecoveryJob job = Plain.With(appliance => appliance with { Fluid = Fluid.Get(fluid) }) with { Cylinders = [], Barometer = Barometer.Reading(Pressure.FromPascals(air)) };
        Assert.Equal(isTold, job.Appliance.Fluid.Model.SaturationAtTemperature(273.15).Bubble.Pressure > air);
        Assert.Equal(isTold, Plan(job).Cautions.Said("freezes-skin") is not null);
    }

    /// <summary>A cylinder filled to four fifths of its limit or more is near it (our choice), if anything came into it.</summary>
    [Theory]
    [InlineData(0.799, false)]
    [InlineData(0.801, true)]
    public void Near_the_limit_begins_at_four_fifths(double share, bool isTold)
    {
        RecoveryJob job = Plain.With(appliance => appliance with { Charge = Mass.FromKilograms(20), InternalVolume = Volume.FromLiters(200) }) with { LossPerConnection = Volume.Zero };
        double limit = Run(job).Cylinders[0].Limit.MaximumFill.Kilograms;
        RecoveryPlan Filled(double kilograms) => Plan(job, SetUp, Pull() with { Received = kilograms, After = Cylinder(job, share * limit, 293) });

        // What machine and hoses keep comes on top.
        RecoveryPlan plan = Filled((share * limit) + Filled(share * limit).Ledger.InHosesAndMachine.Kilograms);
        Assert.Equal(share, plan.Cylinders[0].ShareOfLimit.DecimalFractions, 1e-9);
        Assert.Equal(isTold, plan.Cautions.Said("near-limit") is not null);
        RecoveryCylinder full = job.Cylinders[0] with { Content = Mass.FromKilograms(0.9 * limit), Refrigerant = "R-134a" };
        Assert.Null(Plan(job with { Cylinders = [full] }, SetUp, Close).Cautions.Said("near-limit"));
    }

    /// <summary>Near its critical point, from 15 K below it on (our choice), or with a critical point below 104 °F (40 °C), a refrigerant is of high pressure; so is one of very high pressure by the letter of 40 CFR 82.152.</summary>
    [Theory]
    [InlineData("R-134a", 358.9, false)]
    [InlineData("R-134a", 359.3, true)]
    [InlineData("R-744", 270, true)]
    [InlineData("R-23", 270, true)]
    [InlineData("R-123", 293.15, false)]
    public void High_pressure_begins_near_the_critical_point(string fluid, double kelvins, bool isTold)
    {
        RecoveryJob job = Plain.With(appliance => appliance with { Fluid = Fluid.Get(fluid), Surroundings = Temperature.FromKelvins(kelvins) }) with { Cylinders = [] };
        Assert.Equal(isTold, Plan(job).Cautions.Said("high-pressure") is not null);
    }

    /// <summary>Cautions come by their weight, and planning figures are the last word.</summary>
    [Fact]
    public void Cautions_come_by_weight()
    {
        RecoveryPlan plan = Plan(Plain, SetUp, Pull() with { After = Stands(Plain, 50_000) });
        Assert.Equal("planning-figures", plan.Cautions[^1].Code);
        Severity[] severities = [.. plan.Cautions.SkipLast(1).Select(caution => caution.Severity)];
        Assert.Equal(severities.OrderDescending(), severities);
        Assert.True(severities.Distinct().Count() > 1);
        Assert.Equal(plan.ToDo.Select(finding => finding.Severity).OrderDescending(), plan.ToDo.Select(finding => finding.Severity));
        Assert.True(plan.ToDo.Count <= 7);
        Assert.Equal(plan.Findings.Select(finding => finding.Code).Distinct().Count(), plan.Findings.Count);
    }

    /// <summary>An appliance that stays at the level of an oil change for an hour, open or in its hold, needs nothing (40 CFR 82.156: 5 psig); one that warms above it within the hour does.</summary>
    [Theory]
    [InlineData(3400, false)]
    [InlineData(3800, true)]
    public void An_appliance_for_an_oil_change_stands_open_for_an_hour(double seconds, bool needsNothing)
    {
        // Cold gas that the air warms: T approaches 293.15 K by its own time constant; the level is crossed after so many seconds.
        RecoveryJob Of(double resistance) => Plain.With(appliance => appliance with
        {
            Charge = Mass.FromKilograms(0.12),
            Temperature = Temperature.FromKelvins(270),
            Surroundings = Temperature.FromKelvins(293.15),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(resistance),
        }) with
        { Evacuation = new EvacuationOptions { Purpose = OpeningPurpose.OilChange } };

        double level = new PlanRun(Of(0.1), StandardStrategy.Instance).Requirement.RequiredPressure.Pascals;
        Assert.Equal(Air + (5 * 6894.757), level, 2.0);
        double low = 0.01, high = 20;
        for (int i = 0; i < 40; i++)
        {
            double middle = Math.Sqrt(low * high);
            RecoveryJob job = Of(middle);
            StageResult shut = Recovery.Processes.Hold.Simulate(job.Appliance, new HoldOptions { Duration = Duration.FromSeconds(seconds) });
            (low, high) = shut.Appliance.Pressure.Pascals > level ? (middle, high) : (low, middle);
        }

        Assert.InRange(low, 0.011, 19);
        Assert.Equal(needsNothing, new PlanRun(Of(low), StandardStrategy.Instance).NeedsNothing);
    }

    /// <summary>The appliance's pressure in the air of the place: of its fullest part, as warm as the air where the air is warmer.</summary>
    [Theory]
    [InlineData(313.15)]
    [InlineData(283.15)]
    public void The_cut_out_is_held_against_the_pressure_in_this_air(double air)
    {
        RecoveryJob job = Plain.With(appliance => appliance with { Surroundings = Temperature.FromKelvins(air) });
        double expected = Plain.Appliance.Fluid.Model.SaturationAtTemperature(Math.Max(air, 293.15)).Bubble.Pressure;
        PlanRun run = new(job, StandardStrategy.Instance);
        Assert.Equal(expected, run.PressureInThisAir.Pascals, 1.0);
        Assert.False(run.StartsAboveCutout);
        RecoveryJob With(double cutout) => job with { Machine = job.Machine with { HighPressureCutout = Pressure.FromPascals(cutout) } };
        Assert.True(new PlanRun(With(expected - 10), StandardStrategy.Instance).StartsAboveCutout);
        Assert.False(new PlanRun(With(expected + 10), StandardStrategy.Instance).StartsAboveCutout);
    }

    /// <summary>The level by the gauge: with its error, at a reference temperature for what is colder, and by the share that a rule asks for.</summary>
    [Fact]
    public void The_gauge_shows_the_level_with_its_error()
    {
        PlanRun run = Run(Plain with { GaugeError = 1000 });
        ApplianceState At(double pascals) => Stands(Plain, pascals)(run.State).Appliance;
        Assert.True(run.ShowsGoal(At(Goal + 999)));
        Assert.False(run.ShowsGoal(At(Goal + 1001)));
        Assert.True(run.IsAtLevel(At(Goal)));
        Assert.False(run.IsAtLevel(At(Goal + 1)));
        Assert.Equal(1, run.ToReference(250));
        Assert.Equal(-1, run.LeftByShare);
        RecoveryJob small = Plain.With(appliance => appliance with { Charge = Mass.FromKilograms(1) }) with { Evacuation = new EvacuationOptions { Appliance = ApplianceKind.Small }, LossPerConnection = Volume.Zero };
        PlanRun share = Run(small);
        double left = (1 - share.Requirement.RequiredRecovery!.Value.DecimalFractions) * 1;
        Assert.InRange(share.LeftByShare, left - 0.05, left - 1e-4);
        Assert.True(share.IsShareRecovered(Holds(small, share.LeftByShare - 1e-6)(share.State).Appliance));
        Assert.False(share.IsShareRecovered(Holds(small, share.LeftByShare + 1e-6)(share.State).Appliance));
    }

    /// <summary>Liquid is shut in between valves where there is a hose that holds some: behind the machine, or in a push; not where the air is above the end of the curve.</summary>
    [Fact]
    public void Liquid_between_valves_is_warned_of_where_a_hose_holds_some()
    {
        RecoveryJob bare = Plain with { Hoses = new HoseSet { VaporSide = [Jobs.Hose()] } };
        bool Warns(RecoveryJob job, params CourseStage[] stages) => Plan(job, stages).Cautions.Any(caution => caution.Code == CylinderCodes.TrappedLiquid.Id);
        Assert.True(Warns(Plain, SetUp, Pull()));
        Assert.False(Warns(bare, SetUp, Pull()));
        Assert.True(Warns(bare, SetUp, new CourseStage(StageKind.PushPull)));
        RecoveryJob hot = Plain.With(appliance => appliance with { Fluid = Fluid.Get("R-744"), Surroundings = Temperature.FromKelvins(310) }) with { Cylinders = [] };
        Assert.False(Warns(hot));
        Assert.True(Warns(hot.With(appliance => appliance with { Surroundings = Temperature.FromKelvins(290) })));
    }

    /// <summary>Carbon dioxide, which would turn to dry ice in an empty cylinder, goes into one that holds some; else what is known goes before what is not, then the one with most room.</summary>
    [Theory]
    [InlineData("R-744", "gas")]
    [InlineData("R-134a", "large")]
    public void Which_cylinder_is_next(string fluid, string label)
    {
        RecoveryCylinder Of(double pounds, string name) => RecoveryCylinder.FromMark("3AA1800", Mass.FromPounds(pounds), Mass.FromPounds(pounds)) with { Label = name };
        RecoveryJob job = Plain.With(appliance => appliance with { Fluid = Fluid.Get(fluid) }) with
        {
            Machine = Plain.Machine with { HighPressureCutout = Pressure.FromBars(90) },
            Cylinders = [Of(50, "small"), Of(100, "large"), Of(40, "gas") with { Content = Mass.FromKilograms(1), Refrigerant = fluid }, Of(120, "unnamed") with { Content = Mass.FromKilograms(1) }],
        };
        Assert.Equal(label, Situation(job).NextCylinder!.Cylinder.Label);
    }

    /// <summary>The drift of a blend over stages is told on one time axis, from the first stage that was followed; what is heavier than a note is to be done, the rest is what the plan rests on.</summary>
    [Fact]
    public void Drift_is_told_on_one_axis()
    {
        RecoveryJob job = Plain.With(appliance => appliance with { Fluid = Fluid.Get("R-407C") }) with { FollowComposition = true };
        RecoveryPlan plan = Plan(
            job,
            SetUp,
            new CourseStage(new PlanStep(StageKind.VaporRecovery) { Duration = Duration.FromSeconds(20) }) { End = null },
            new CourseStage(StageKind.Rest) { Seconds = 100 },
            new CourseStage(new PlanStep(StageKind.VaporRecovery) { Duration = Duration.FromSeconds(30) }) { End = null });
        FractionationResult drift = plan.Fractionation!;
        Assert.Equal(0, drift.Points[0].Time.Seconds);
        Assert.Equal(150, drift.Points[^1].Time.Seconds, 1e-6);
        double[] times = [.. drift.Points.Select(point => point.Time.Seconds)];
        Assert.Equal(times.Order(), times);
        Assert.Contains(20.0, times, new Near());
        Assert.Contains(120.0, times, new Near());
        Assert.Contains(plan.RestsOn, finding => finding.Code == "blend-drifts");
        Assert.Null(Plan(job, SetUp, Pull()).Fractionation);
    }

    private sealed class Near : System.Collections.Generic.IEqualityComparer<double>
    {
        public bool Equals(double x, double y) => Math.Abs(x - y) < 1e-6;

        public int GetHashCode(double obj) => 0;
    }
}
