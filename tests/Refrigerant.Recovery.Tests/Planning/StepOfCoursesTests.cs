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

/// <summary>A step as a stage of the simulation: what moves, what waits, and for how long.</summary>
public class StepOfCoursesTests
{
    /// <summary>1 kg of gas, so that a pull takes seconds.</summary>
    private static readonly RecoveryJob Plain = Job().With(appliance => appliance with { Charge = Mass.FromKilograms(0.3) });

    [Fact]
    public void The_machine_runs_where_it_moves_something()
    {
        StageKind[] runs = [.. Enum.GetValues<StageKind>().Where(StepSimulation.RunsMachine)], moves = [.. Enum.GetValues<StageKind>().Where(StepSimulation.MovesRefrigerant)];
        Assert.Equal(new[] { StageKind.HoseSweep, StageKind.PushPull, StageKind.LiquidRecovery, StageKind.VaporRecovery, StageKind.MachineClearing }.Order(), runs.Order());
        Assert.Equal(new[] { StageKind.Equalize, StageKind.PushPull, StageKind.LiquidRecovery, StageKind.VaporRecovery }.Order(), moves.Order());
    }

    /// <summary>A wait of less than a second is none, nor is a set-up at an appliance within half a kelvin of the air (our choices); without a cylinder nothing moves.</summary>
    [Fact]
    public void A_wait_that_changes_nothing_is_none()
    {
        var simulation = new StepSimulation(Plain);
        SimulationState start = Situation(Plain, SetUp).State;
        Assert.Null(simulation.Run(new PlanStep(StageKind.Rest) { Duration = Duration.FromSeconds(0.9) }, start, null));
        Assert.Equal(1.1, simulation.Run(new PlanStep(StageKind.Rest) { Duration = Duration.FromSeconds(1.1) }, start, null)!.Duration.Seconds, 1e-9);
        Assert.Equal(600, simulation.Run(new PlanStep(StageKind.Hold), start, null)!.Duration.Seconds, 1e-9);
        Assert.Null(simulation.Run(new PlanStep(StageKind.Rest), start, null));
        Assert.Null(simulation.Run(new PlanStep(StageKind.Close), start, null));
        foreach (double kelvins in new[] { 292.63, 293.67 })
        {
            Assert.Equal(300, simulation.Run(new PlanStep(StageKind.SetUp), Holds(Plain, 0.3, kelvins)(start), null)!.Duration.Seconds, 1e-9);
        }

        foreach (double kelvins in new[] { 292.67, 293.63 })
        {
            Assert.Null(simulation.Run(new PlanStep(StageKind.SetUp), Holds(Plain, 0.3, kelvins)(start), null));
        }

        Assert.Null(simulation.Run(new PlanStep(StageKind.VaporRecovery), start with { Cylinder = null }, null));
    }

    /// <summary>A gauge that reads low by its error ends a pull that much above what it shows, one that reads high below, and never below a fifth of it.</summary>
    [Theory]
    [InlineData(90_000, 1000, 91_000)]
    [InlineData(90_000, -1000, 89_000)]
    [InlineData(20_000, -18_000, 4_000)]
    public void A_pull_ends_where_the_gauge_shows_it(double shown, double error, double real)
    {
        RecoveryJob job = Plain with { GaugeError = error, Machine = Plain.Machine with { ClearanceRatio = 1e-4 } };
        StageResult pull = new StepSimulation(job).Run(new PlanStep(StageKind.VaporRecovery) { AppliancePressure = Pressure.FromPascals(shown) }, Situation(job, SetUp).State, Mass.FromKilograms(5))!;
        Assert.Equal(StageEnd.TargetReached, pull.End);
        Assert.Equal(real, pull.Appliance.Pressure.Pascals, 1e-3 * real);
    }

    /// <summary>What a step asks for is what the stage is given: its time, its limit, the lowest pressure, what cools and warms.</summary>
    [Fact]
    public void A_stage_is_given_what_its_step_asks_for()
    {
        SimulationState start = Situation(Plain, SetUp).State;
        var simulation = new StepSimulation(Plain);
        var pull = new PlanStep(StageKind.VaporRecovery) { AppliancePressure = Pressure.FromPascals(50_000) };
        Assert.Equal((StageEnd.TimeLimit, 7.0), Ended(pull with { Duration = Duration.FromSeconds(7) }, 5));
        Assert.Equal(StageEnd.CylinderFull, Ended(pull, 0.05).End);
        StageResult low = simulation.Run(pull with { LowestPressure = Pressure.FromPascals(200_000), Duration = Duration.FromSeconds(600) }, start, Mass.FromKilograms(5))!;
        Assert.True(low.Appliance.Pressure.Pascals > 190_000);
        StageResult warm = simulation.Run(pull with { Inputs = new SimulationInputs { HeaterPower = 2000 }, Duration = Duration.FromSeconds(10) }, start, Mass.FromKilograms(5))!;
        StageResult cool = simulation.Run(pull with { Duration = Duration.FromSeconds(10) }, start, Mass.FromKilograms(5))!;
        Assert.True(warm.Appliance.MetalTemperature.Kelvins > cool.Appliance.MetalTemperature.Kelvins + 2);
        StageResult rest = simulation.Run(new PlanStep(StageKind.Rest) { CylinderPressure = Pressure.FromPascals(900_000), Duration = Duration.FromHours(2), Inputs = new SimulationInputs { CylinderFactor = 50, CylinderSurroundings = 273.15 } }, Cylinder(Plain, 5, 320)(start), null)!;
        Assert.Equal(StageEnd.TargetReached, rest.End);
        Assert.Equal(900_000, rest.Cylinder!.Pressure.Pascals, 900.0);
        StageResult hold = simulation.Run(new PlanStep(StageKind.Hold) { AppliancePressure = Pressure.FromPascals(60_000) }, Stands(Plain, 55_000, 250)(start), null)!;
        Assert.Equal((StageEnd.TargetReached, 60.0), (hold.End, Math.Round(hold.Appliance.Pressure.Kilopascals, 1)));

        (StageEnd End, double Seconds) Ended(PlanStep step, double limit)
        {
            StageResult result = simulation.Run(step, start, Mass.FromKilograms(limit))!;
            return (result.End, Math.Round(result.Duration.Seconds, 6));
        }
    }

    /// <summary>The sweep goes to the pressure of the job, and where the air is thin to nine tenths of it at least.</summary>
    [Theory]
    [InlineData(50_500, 101_325, 50_500)]
    [InlineData(95_000, 101_325, 91_192.5)]
    [InlineData(50_500, 52_000, 46_800)]
    public void A_sweep_goes_down_to_nine_tenths_of_the_air_at_least(double asked, double air, double swept)
    {
        RecoveryJob job = Plain with { SweepPressure = Pressure.FromPascals(asked), Barometer = Barometer.Reading(Pressure.FromPascals(air)) };
        Assert.Equal(swept, new StepSimulation(job).Sweep().Pressure.Pascals, 0.1);
    }

    /// <summary>A scale that is off fills a cylinder by as much more or less, to no less than a fifth of its limit.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(-0.3)]
    [InlineData(-50)]
    public void A_scale_that_is_off_fills_by_as_much_more_or_less(double error)
    {
        RecoveryJob job = Job() with { ScaleError = error, LossPerConnection = Volume.Zero };
        double limit = Run(job).Cylinders[0].Limit.MaximumFill.Kilograms, filled = Math.Max(0.2 * limit, limit + error);
        RecoveryJob full = job with { Cylinders = [job.Cylinders[0] with { Content = Mass.FromKilograms(Math.Min(limit, filled) - 0.2), Refrigerant = "R-134a" }] };
        CourseStage pull = new(new PlanStep(StageKind.VaporRecovery) { Duration = Duration.FromSeconds(900) }) { End = null };
        StageResult result = Run(full, new CourseStage(new PlanStep(StageKind.SetUp) { Cylinder = full.Cylinders[0] }) { End = null }, pull).Stages[1].Result!;
        Assert.Equal(StageEnd.CylinderFull, result.End);
        Assert.Equal(filled, result.Cylinder!.Mass.Kilograms, 1e-4);
    }

    /// <summary>A cylinder is worth connecting while it takes more than fifty grams by the scale as it is.</summary>
    [Theory]
    [InlineData(0.06, 0, true)]
    [InlineData(0.04, 0, false)]
    [InlineData(0.04, 0.02, true)]
    [InlineData(0.06, -0.02, false)]
    public void Fifty_grams_by_the_scale_are_worth_it(double room, double error, bool usable)
    {
        RecoveryJob job = Job();
        double limit = Run(job).Cylinders[0].Limit.MaximumFill.Kilograms;
        RecoveryJob full = job with { ScaleError = error, Cylinders = [job.Cylinders[0] with { Content = Mass.FromKilograms(limit - room), Refrigerant = "R-134a" }] };
        Assert.Equal(usable, Run(full).Cylinders[0].IsUsable);
    }

    /// <summary>A cylinder that liquid fills at the air's temperature, or at its own where it is warmer: from there to what liquid could be denser at the coldest.</summary>
    [Fact]
    public void A_cylinder_full_of_liquid_is_told_by_its_density()
    {
        PropertyModel model = Plain.Appliance.Fluid.Model;
        RecoveryCylinder cylinder = Plain.Cylinders[0];
        double volume = cylinder.InternalVolume.CubicMeters;
        bool Full(double density, double? own = null) => JobChecks.IsFullOfLiquid(
            Plain, cylinder with { Content = Mass.FromKilograms(density * volume), Temperature = own is double kelvins ? Temperature.FromKelvins(kelvins) : null });
        double air = model.SaturationAtTemperature(293.15).Bubble.Density, warm = model.SaturationAtTemperature(310).Bubble.Density, coldest = model.SaturationAtTemperature(model.Range.MinimumTemperature).Bubble.Density;
        Assert.True(Full(1.001 * air));
        Assert.False(Full(0.999 * air));
        Assert.True(Full(1.001 * warm, 310));
        Assert.False(Full(0.999 * warm, 310));
        Assert.False(Full(0.999 * air, 280));
        Assert.True(Full(0.999 * coldest));
        Assert.False(Full(1.001 * coldest));
        Assert.False(JobChecks.IsFullOfLiquid(Plain.With(appliance => appliance with { Surroundings = Temperature.FromKelvins(390) }), cylinder with { Content = Mass.FromKilograms(1.01 * air * volume) }));
    }

    /// <summary>Hoses and machine keep part of what is out: what clearing leaves, or what it held, the vapor of the suction hose at the air's pressure, and four connections; no more than a twentieth of the charge.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_hoses_keep_counts_against_the_share(bool clears)
    {
        RecoveryJob job = Plain.With(appliance => appliance with { Charge = Mass.FromKilograms(2.2) }) with
        {
            Evacuation = new EvacuationOptions { Appliance = ApplianceKind.Small },
            ClearMachine = clears,
            LossPerConnection = Volume.FromMilliliters(3),
            Hoses = Jobs.Hoses(1, 5),
            Machine = Plain.Machine with { InternalVolume = Volume.FromMilliliters(100) },
        };
        PlanRun run = Run(job);
        double share = run.Requirement.RequiredRecovery!.Value.DecimalFractions;
        SaturationPoint at = job.Appliance.Fluid.Model.SaturationAtTemperature(293.15);
        MachineClearing clearing = MachineClearing.Estimate(job.Appliance.Fluid, job.Machine, job.Hoses, Temperature.FromKelvins(293.15), Pressure.FromPascals(at.Bubble.Pressure), job.SweepPressure);
        double hose = job.Hoses.VaporSide.Sum(each => each.Length.Meters * Math.PI / 4 * Math.Pow(each.InnerDiameter.Meters, 2));
        double kept = (clears ? clearing.Trapped : clearing.HeldBefore).Kilograms + (hose * at.Dew.Density * 101_325 / at.Dew.Pressure) + (4 * 3e-6 * at.Dew.Density);
        Assert.True(kept < 0.05 * 2.2, $"{kept}");
        Assert.Equal(((1 - share) * 2.2) - kept, run.LeftByShare, 1e-6);
        RecoveryJob little = job.With(appliance => appliance with { Charge = Mass.FromKilograms(0.1) }) with { Hoses = Jobs.Hoses(50, 12) };
        Assert.Equal((1 - share - 0.05) * 0.1, Run(little).LeftByShare, 1e-9);
    }

    /// <summary>Of two ways to plan a job the one that reaches the level is taken, of two that do or do not the one that is over first.</summary>
    [Fact]
    public void The_way_that_reaches_the_level_or_ends_first_is_taken()
    {
        // Level met at the start: set up, sweep, a hold, close.
        RecoveryJob Quick(double setUp, double level = 600_000) => Plain.With(appliance => appliance with { Charge = Mass.FromKilograms(0.02) }) with
        {
            Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromPascals(level) },
            Times = new JobTimes { SetUp = Duration.FromSeconds(setUp) },
        };
        RecoveryJob none = Quick(10) with { Cylinders = [] };
        PlanSituation now = Situation(Plain);
        Assert.True(now.EndsSooner(Quick(100), Quick(200)));
        Assert.False(now.EndsSooner(Quick(200), Quick(100)));
        Assert.True(now.EndsSooner(Quick(100), Quick(100)));
        Assert.True(now.EndsSooner(Quick(200), none));
        Assert.False(now.EndsSooner(none, Quick(200)));
        Assert.True(now.EndsSooner(none, none));
    }

    /// <summary>A stop that is no matter of the level or of cylinders forbids to begin; what is told of missing room comes last of those.</summary>
    [Fact]
    public void What_forbids_to_begin_is_said_before_all()
    {
        RecoveryJob burns = Plain.With(appliance => appliance with { Fluid = Fluid.Get("R-290") });
        Assert.StartsWith("do not start: ", Plan(burns, SetUp, Pull()).ToString(), StringComparison.Ordinal);
        RecoveryPlan stuck = Plan(Plain, SetUp, Pull(StageEnd.Stalled) with { After = Stands(Plain, 100_000) });
        Assert.Contains(stuck.ToDo, finding => finding.Severity == Severity.Stop);
        Assert.DoesNotContain("do not start", stuck.ToString(), StringComparison.Ordinal);
        RecoveryPlan liquid = Plan(Job(), SetUp, Pull() with { After = Holds(Job(), 1, 240) });
        Assert.DoesNotContain("do not start", liquid.ToString(), StringComparison.Ordinal);
        RecoveryJob unfit = Job() with { Cylinders = [Jobs.Cylinder(47.6, "U") with { Specification = CylinderSpecification.FromMark("DOT 39 400") }] };
        string refused = Plan(unfit).ToString();
        Assert.StartsWith("do not start: ", refused, StringComparison.Ordinal);
        Assert.DoesNotContain("Bring room", refused, StringComparison.Ordinal);
        RecoveryJob warm = Plain.With(appliance => appliance with { HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.001) });
        Assert.Contains("comes back to", Plan(warm, SetUp, Pull() with { After = Stands(warm, 0.98 * Goal, 250) }, Hold()).ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("comes back to", Plan(warm, SetUp, Pull() with { After = Stands(warm, 0.9 * Goal) }, Hold()).ToString(), StringComparison.Ordinal);
    }

    /// <summary>A moment of the course is told from the start of the job; a plan without a stage takes no time.</summary>
    [Fact]
    public void Moments_are_told_from_the_start()
    {
        RecoveryPlan plan = Plan(Plain, SetUp, Pull() with { Seconds = 500 }, new CourseStage(StageKind.Rest) { Seconds = 70 });
        Assert.Equal([300, 800, 800, 870], plan.Course().Select(point => point.Time.Seconds));
        Assert.Equal(Duration.Zero, Plan(Plain).TotalDuration);
    }

    /// <summary>The same seed is the same sequence, another one another; each coordinate steps by its own power of the root of x^(d+1) = x + 1 (Roberts 2018; for one coordinate the golden ratio).</summary>
    [Fact]
    public void A_sequence_steps_by_the_powers_of_its_root()
    {
        var one = new QuasiRandom(1, 5);
        double Fraction(double value) => value - Math.Floor(value);
        double golden = (Math.Sqrt(5) - 1) / 2;
        var three = new QuasiRandom(3, 5);
        double root = 1.22074408460575947536;
        Assert.Equal(root + 1, Math.Pow(root, 4), 1e-12);
        for (int i = 0; i < 20; i++)
        {
            Assert.Equal(golden, Fraction(one.At(i + 1, 0) - one.At(i, 0)), 1e-12);
            for (int j = 0; j < 3; j++)
            {
                Assert.Equal(Math.Pow(root, -(j + 1)), Fraction(three.At(i + 1, j) - three.At(i, j)), 1e-12);
            }
        }

        // Where it starts is a random number of SplitMix64 (Steele, Lea and Flood 2014): from 0 the first is 0xE220A8397B1DCDAF.
        Assert.Equal(Fraction((0xE220A8397B1DCDAF >> 11) / (double)(1UL << 53) + golden), new QuasiRandom(1, 0).At(0, 0), 1e-12);
        Assert.NotEqual(one.At(0, 0), new QuasiRandom(1, 6).At(0, 0));
    }
}
