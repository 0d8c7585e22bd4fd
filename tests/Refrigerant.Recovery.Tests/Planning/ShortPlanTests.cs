using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Where a plan begins to say something: short pulls over a range of machines, hoses and levels, close to either side of each limit.</summary>
public class ShortPlanTests
{
    /// <summary>A surface above 60 °C burns, discharge above 121 °C (250 °F) wears oil, above 149 °C (300 °F) breaks it down, above 175 °C (347 °F) cokes it, above 220 °C nothing stands it and the job is not begun: common practice, no source.</summary>
    [Fact]
    public void Discharge_is_called_hot_from_its_limits_on()
    {
        RecoveryPlan[] plans = [.. Enumerable.Range(0, 45).Select(i => Plan(Job(efficiency: 1 / (1 + (0.2 * i)), charge: 0.31)))];
        double[] celsius = [.. plans.Select(Discharge).Order()];
        foreach (double limit in new[] { 60.0, 121, 149, 175, 220 })
        {
            Assert.Contains(celsius, value => value > limit - 8 && value <= limit);
            Assert.Contains(celsius, value => value > limit && value < limit + 8);
        }

        Assert.All(plans, plan =>
        {
            double hot = Discharge(plan);
            Severity? expected = hot > 220 ? Severity.Stop : hot > 175 ? Severity.Warning : hot > 149 ? Severity.Caution : hot > 121 ? Severity.Note : null;
            Assert.Equal(expected, plan.Findings.SingleOrDefault(finding => finding.Code == "machine-hot")?.Severity);
            Assert.Equal(hot > 60, plan.Cautions.Any(caution => caution.Code == "hot-surface"));
        });
    }

    /// <summary>Hoses that let through less than four fifths of what the machine could draw are slow: our choice.</summary>
    [Fact]
    public void Hoses_are_called_slow_below_four_fifths()
    {
        RecoveryPlan[] plans = [.. Enumerable.Range(0, 24).Select(i => Plan(Job(bore: 4 + (0.25 * i))))];
        double[] shares = [.. plans.Select(Share)];
        Assert.Contains(shares, share => share is > 0.77 and < 0.8);
        Assert.Contains(shares, share => share is > 0.8 and < 0.83);
        Assert.All(plans, plan => Assert.Equal(Share(plan) < 0.8, plan.Findings.Any(finding => finding.Code == "hoses-slow")));
    }

    /// <summary>Air is drawn in where the appliance comes 2 % below it, and refrigerant blows out where it ends more than a gauge shows as zero, 200 Pa, above: our choices.</summary>
    [Theory]
    [InlineData(-2100, true, false)]
    [InlineData(-1950, false, false)]
    [InlineData(190, false, false)]
    [InlineData(210, false, true)]
    [InlineData(7000, false, true)]
    public void What_the_air_does_is_said_from_its_limits_on(double beyond, bool drawnIn, bool blowsOut)
    {
        RecoveryPlan plan = Plan(Job(level: 101_325 + beyond), toGoal: true);
        Assert.Equal(101_325 + beyond, plan.End.Pressure.Pascals, 1.0);
        Assert.True(plan.IsLevelReached, plan.ToString());
        Assert.Equal(drawnIn, plan.Cautions.Any(caution => caution.Code == "air-drawn-in"));
        Assert.Equal(blowsOut, plan.Findings.Any(finding => finding.Code == "still-above-air"));
    }

    /// <summary>A strategy of one's own that stops short of the level, and one that goes past it: the verdict is of the pressure, to a millionth.</summary>
    [Theory]
    [InlineData(1.00001, LevelOutcome.NotReached, LevelObstacle.StoppedByStrategy)]
    [InlineData(1, LevelOutcome.Reached, LevelObstacle.None)]
    [InlineData(0.9, LevelOutcome.Reached, LevelObstacle.None)]
    public void The_verdict_is_of_the_pressure(double share, LevelOutcome outcome, LevelObstacle obstacle)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Job(level: 90_000), new Short { Target = share * 90_000 });
        Assert.Equal((outcome, obstacle), (plan.Verdict.Outcome, plan.Verdict.Obstacle));
        Assert.Equal(share * 90_000, plan.Verdict.Pressure.Pascals, 0.01);
        Assert.Equal(1 - ((plan.End.Mass + plan.Ledger.InHosesAndMachine + plan.Ledger.Released).Kilograms / 0.5), plan.Verdict.Recovered.DecimalFractions, 1e-9);
        Assert.Equal(Duration.Zero, plan.Verdict.HeldFor);
        Assert.Equal(0, plan.Verdict.Liquid.Kilograms);
    }

    /// <summary>A hold of one second is one; half a second is none.</summary>
    [Theory]
    [InlineData(0.5, LevelOutcome.Reached)]
    [InlineData(1, LevelOutcome.ReachedNotHeld)]
    public void A_second_is_the_shortest_hold(double seconds, LevelOutcome outcome) =>
        Assert.Equal(outcome, RecoveryPlanner.Plan(Job(level: 90_000) with { Times = new JobTimes { Hold = Duration.FromSeconds(seconds) } }, new Short { Target = 90_000 }).Verdict.Outcome);

    private static double Discharge(RecoveryPlan plan) => plan.Stages.Max(stage => stage.Result?.HottestDischarge?.DegreesCelsius) ?? 0;

    private static double Share(RecoveryPlan plan) => plan.Stages.Single(stage => stage.Kind == StageKind.VaporRecovery).Result!.SuctionLineShare.DecimalFractions;

    private static RecoveryPlan Plan(RecoveryJob job, bool toGoal = false) => RecoveryPlanner.Plan(job, new Short { Target = toGoal ? job.Evacuation!.OwnLevel!.Value.Pascals : null });

    /// <summary>Half a kilogram of vapor at 22 °C, in an appliance that the air keeps warm.</summary>
    private static RecoveryJob Job(double efficiency = 0.65, double bore = 10, double level = 50_000, double charge = 0.5) => new()
    {
        Appliance = new Appliance
        {
            Fluid = Fluid.Get("R-134a"),
            Charge = Mass.FromKilograms(charge),
            InternalVolume = Volume.FromLiters(30),
            Temperature = Temperature.FromDegreesCelsius(22),
            MetalMass = Mass.FromKilograms(30),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.01),
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)) with { Body = null, IsentropicEfficiency = efficiency, ThermalCutout = null },
        Hoses = new HoseSet { VaporSide = [Jobs.Hose(20, bore)], Discharge = [Jobs.Hose(5, 10)] },
        Cylinders = [Jobs.Cylinder(47.6, "C1") with { Content = Mass.FromKilograms(3), Refrigerant = "R-134a" }],
        Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromPascals(level) },
        Times = new JobTimes { Hold = Duration.Zero },
    };

    /// <summary>Set up, sweep, pull for ten seconds or to a pressure, close.</summary>
    private sealed class Short : IRecoveryStrategy
    {
        public double? Target { get; init; }

        public PlanStep? Next(PlanSituation now) => now.Stages.Count switch
        {
            0 => new PlanStep(StageKind.SetUp) { Cylinder = now.NextCylinder!.Cylinder },
            1 => new PlanStep(StageKind.HoseSweep),
            2 when Target is double target => new PlanStep(StageKind.VaporRecovery) { AppliancePressure = Pressure.FromPascals(target) },
            2 => new PlanStep(StageKind.VaporRecovery) { Duration = Duration.FromSeconds(10) },
            3 => new PlanStep(StageKind.Close),
            _ => null,
        };
    }
}
