using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What is offered to make a job faster, what each offer changes, and which is best.</summary>
public class SetupVariationTests
{
    private static readonly RecoveryJob Job = Jobs.Chiller(kilograms: 30) with { Hoses = Jobs.Hoses(20, 8) };

    private static readonly Hose Cored = Jobs.Hose(10, 4.7) with { Fittings = [Fitting.CoreDepressor()] };

    private static string[] Offered(RecoveryJob job) => [.. Setup.Variations(job).Select(setup => setup.Name)];

    private static RecoveryJob With(RecoveryJob job, string name) => Setup.Variations(job).Single(setup => setup.Name == name).Job;

    /// <summary>Quarter-inch hoses have a bore of 4.7 mm, half-inch ones of 10.5 mm: what is there already is not offered.</summary>
    [Theory]
    [InlineData(4.7, false, true)]
    [InlineData(5.5, false, true)]
    [InlineData(6, true, true)]
    [InlineData(8, true, true)]
    [InlineData(9, true, false)]
    [InlineData(10.5, true, false)]
    public void Hoses_of_another_size_are_offered(double bore, bool quarter, bool half)
    {
        string[] offered = Offered(Job with { Hoses = Jobs.Hoses(20, bore) });
        Assert.Equal(quarter, offered.Contains("quarter-inch hoses"));
        Assert.Equal(half, offered.Contains("half-inch hoses"));
    }

    [Fact]
    public void An_offer_changes_what_it_says_on_every_hose()
    {
        foreach ((string name, double bore) in new[] { ("quarter-inch hoses", 4.7), ("half-inch hoses", 10.5), ("half-inch hoses, no cores, water, heat", 10.5) })
        {
            HoseSet hoses = With(Job, name).Hoses;
            Assert.All(hoses.VaporSide.Concat(hoses.LiquidSide).Concat(hoses.Discharge), hose => Assert.Equal(bore, hose.InnerDiameter.Millimeters, 1e-9));
            Assert.All(hoses.VaporSide.Concat(hoses.LiquidSide).Concat(hoses.Discharge), hose => Assert.Equal(20, hose.Length.Feet, 1e-9));
        }

        HoseSet half = With(Job, "hoses half as long").Hoses;
        Assert.All(half.VaporSide.Concat(half.LiquidSide).Concat(half.Discharge), hose => Assert.Equal(10, hose.Length.Feet, 1e-9));
        RecoveryMachine twice = With(Job, "machine twice the size").Machine;
        Assert.Equal(2 * Job.Machine.Displacement.LitersPerSecond, twice.Displacement.LitersPerSecond, 1e-9);
        Assert.Equal(2 * (double)Job.Machine.Condenser.RatedDuty.Watts, (double)twice.Condenser.RatedDuty.Watts, 1e-6);
        Assert.Equal(4 * Job.Appliance.OuterConductance, With(Job, "heat on the appliance").Appliance.OuterConductance, 1e-6);
        Condenser water = With(Job, "water-cooled condenser").Machine.Condenser;
        Assert.Equal(CondenserCooling.Water, water.Cooling);
        Assert.Equal(3 * (double)Job.Machine.Condenser.RatedDuty.Watts, (double)water.RatedDuty.Watts, 1e-6);
        Assert.Equal(8, water.CoolantTemperature!.Value.DegreesCelsius, 1e-9);
        RecoveryJob frost = Job with { Appliance = Job.Appliance with { Surroundings = Temperature.FromDegreesCelsius(2) } };
        Assert.Equal(5, With(frost, "water-cooled condenser").Machine.Condenser.CoolantTemperature!.Value.DegreesCelsius, 1e-9);
    }

    [Fact]
    public void What_is_there_is_not_offered_again()
    {
        RecoveryJob water = Job with { Machine = With(Job, "water-cooled condenser").Machine };
        Assert.DoesNotContain("water-cooled condenser", Offered(water));
        Assert.Equal((double)water.Machine.Condenser.RatedDuty.Watts, (double)With(water, "half-inch hoses, no cores, water, heat").Machine.Condenser.RatedDuty.Watts, 1e-6);
        Assert.Contains("without push-pull", Offered(Job));
        Assert.DoesNotContain("with push-pull", Offered(Job));
        RecoveryJob never = Job with { PushPull = PushPullUse.Never };
        Assert.Contains("with push-pull", Offered(never));
        Assert.DoesNotContain("without push-pull", Offered(never));
        Assert.Equal(PushPullUse.WhereItPays, With(never, "with push-pull").PushPull);
        Assert.Equal(PushPullUse.Never, With(Job, "without push-pull").PushPull);
        foreach (RecoveryJob cannot in new[] { Job with { Appliance = Job.Appliance with { LiquidReachable = false } }, Job with { Hoses = Job.Hoses with { LiquidSide = [] } } })
        {
            Assert.DoesNotContain(Offered(cannot), name => name.EndsWith("push-pull", StringComparison.Ordinal));
        }

        Assert.DoesNotContain("valve cores removed", Offered(Job));
        RecoveryJob cored = Job with { Hoses = Job.Hoses with { LiquidSide = [Cored] } };
        Assert.Empty(With(cored, "valve cores removed").Hoses.LiquidSide[0].Fittings);
    }

    /// <summary>What holds the flow back is worth changing and nothing else is: a valve core, a long thin hose, a small machine. Thinner hoses cost time.</summary>
    [Theory]
    [InlineData("core", "valve cores removed")]
    [InlineData("hose", "half-inch hoses")]
    [InlineData("hose", "hoses half as long")]
    [InlineData("machine", "machine twice the size")]
    public void What_holds_the_flow_back_is_worth_changing(string held, string name)
    {
        Hose suction = held switch
        {
            "core" => Jobs.Hose(5, 6) with { Fittings = [Fitting.CoreDepressor()] },
            "hose" => Jobs.Hose(40, 6),
            _ => Jobs.Hose(5, 12),
        };
        RecoveryJob slow = Job with { PushPull = PushPullUse.Never, Hoses = new HoseSet { VaporSide = [suction], Discharge = [Jobs.Hose()] }, Machine = Job.Machine with { TakesLiquid = false } };
        RecoveryJob deep = slow with { Machine = slow.Machine with { LowPressureSwitch = Pressure.FromKilopascals(200) } };
        SetupComparison comparison = SetupComparison.Run(slow, [.. Setup.Variations(slow), new Setup("cannot", deep), new Setup("as it is", slow)]);
        Assert.True(Of(name).Saved > 0.08 * comparison.AsItIs.TotalDuration, Of(name).ToString());
        Assert.Equal(0, Of("as it is").Saved.Seconds, 1e-9);
        Assert.All(comparison.Outcomes, outcome => Assert.Equal((comparison.AsItIs.TotalDuration - outcome.Plan.TotalDuration).Seconds, outcome.Saved.Seconds, 1e-9));
        if (held == "hose")
        {
            Assert.True(Of("quarter-inch hoses").Saved < Of("as it is").Saved);
            Assert.True(Of("machine twice the size").Saved < 0.1 * comparison.AsItIs.TotalDuration);
        }

        // The fastest that reaches the level stands first, what does not reach it last.
        Assert.False(Of("cannot").Plan.IsLevelReached);
        Assert.Equal("cannot", comparison.Outcomes[^1].Name);

        SetupOutcome Of(string offer) => comparison.Outcomes.Single(outcome => outcome.Name == offer);
    }

    /// <summary>All that the van has, with all: hoses, core tool, machines, aids; the core tool is used on hoses with cores only and takes four minutes, a second machine three.</summary>
    [Fact]
    public void A_van_offers_every_combination_once()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 6) with { PushPull = PushPullUse.Never, Hoses = new HoseSet { VaporSide = [Cored], Discharge = [Jobs.Hose()] } };
        var van = new Van
        {
            Hoses = [Jobs.Hoses(5, 10.5)],
            Machines = [job.Machine, RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(2))],
            Cylinders = [Jobs.Cylinder(240, "van")],
            Aids = new SiteAids { HasIce = true },
            HasCoreTool = true,
        };
        PlanChoice choice = PlanChoice.Find(job, van);

        // Three sets of hoses (as they are, the van's, as they are without cores), three machines and a pair of the same, with and without ice.
        Assert.Equal(3 * (3 + 1) * 2, choice.Outcomes.Count);
        Assert.Equal(choice.Outcomes.Count, choice.Outcomes.Select(outcome => outcome.Name).Distinct().Count());
        Assert.All(choice.Outcomes, outcome => Assert.Equal(["C1", "C2", "van"], outcome.Plan.Job.Cylinders.Select(cylinder => cylinder.Label)));
        foreach (SetupOutcome outcome in choice.Outcomes)
        {
            bool open = outcome.Name.Contains("without cores", StringComparison.Ordinal), pair = outcome.Name.Contains("side by side", StringComparison.Ordinal);
            Assert.Equal(5 + (open ? 4 : 0) + (pair ? 3 : 0), outcome.Plan.Stages[0].Duration.Minutes, 1e-9);
            Assert.Equal(!open && outcome.Name.Contains("hoses as they are", StringComparison.Ordinal), outcome.Plan.Job.Hoses.VaporSide.Any(hose => hose.Fittings.Any()));
            Assert.Equal(pair, outcome.Plan.Job.Hoses.SecondVaporSide.Count > 0);
            Assert.Equal(pair ? 1.6 : outcome.Name.Contains("machine 2", StringComparison.Ordinal) ? 2 : 0.8, outcome.Plan.Job.Machine.Displacement.LitersPerSecond, 1e-9);
            Assert.Equal(outcome.Name.Contains("van", StringComparison.Ordinal) && outcome.Name.EndsWith("in the van", StringComparison.Ordinal), outcome.Plan.Job.Aids.HasIce);
        }

        Assert.Equal(choice.Outcomes.Min(outcome => outcome.Plan.TotalDuration.Seconds), choice.Best.Plan.TotalDuration.Seconds);
        SetupOutcome asItIs = choice.Outcomes.Single(outcome => outcome.Name == "hoses as they are, machine as it is, no other help");
        Assert.Equal(0, asItIs.Saved.Seconds);
    }

    /// <summary>Where no setup reaches the level, the one that leaves least stands first.</summary>
    [Fact]
    public void What_reaches_no_level_is_chosen_by_what_it_leaves()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 60, cylinders: 0) with { PushPull = PushPullUse.Never, Cylinders = [Jobs.Cylinder(30)] };
        PlanChoice choice = PlanChoice.Find(job, new Van { Machines = [job.Machine with { Displacement = VolumeFlow.FromLitersPerSecond(0.1), TakesLiquid = false }] }, PlanObjective.KilogramsLeft);
        Assert.All(choice.Outcomes, outcome => Assert.False(outcome.Plan.IsLevelReached));
        double[] left = [.. choice.Outcomes.Select(outcome => outcome.Plan.Ledger.InAppliance.Kilograms)];
        Assert.Equal(left.Order(), left);
    }
}
