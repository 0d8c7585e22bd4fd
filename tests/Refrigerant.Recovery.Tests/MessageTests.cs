using System;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Tests.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests;

/// <summary>What is refused is told by the name that the caller knows, the value and the range, with units.</summary>
public class MessageTests
{
    [Fact]
    public void A_machine_that_moves_nothing_against_a_cylinder_is_told()
    {
        RecoveryJob job = Jobs.Chiller();
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => MachineClearing.Estimate(
            job.Appliance.Fluid, job.Machine, job.Hoses, Temperature.FromDegreesCelsius(20), Pressure.FromPascals(1e12), Pressure.FromKilopascals(50)));
        Assert.Equal("cylinderPressure", error.ParamName);
        Assert.StartsWith("cylinderPressure is 1000000000000 Pa absolute; it must be above 0 and below ", error.Message, StringComparison.Ordinal);

        // The range that it tells is the range.
        double highest = double.Parse(error.Message.Split("below ")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        MachineClearing most = MachineClearing.Estimate(
            job.Appliance.Fluid, job.Machine, job.Hoses, Temperature.FromDegreesCelsius(20), Pressure.FromPascals(0.999 * highest), Pressure.FromKilopascals(50));
        Assert.InRange(most.Duration.Seconds, 0.01, 1e9);
        Assert.Throws<ArgumentOutOfRangeException>(() => MachineClearing.Estimate(
            job.Appliance.Fluid, job.Machine, job.Hoses, Temperature.FromDegreesCelsius(20), Pressure.FromPascals(1.001 * highest), Pressure.FromKilopascals(50)));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_value_of_a_finding_is_a_number(double value)
    {
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => FindingValue.Number("share", value));
        Assert.Equal("value", error.ParamName);
        Assert.Contains("it must be a finite number.", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_scale_is_told_by_its_reading()
    {
        RecoveryCylinder cylinder = Jobs.Chiller().Cylinders[0];
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => cylinder.WeighedAt(Mass.FromKilograms(1e9)));
        Assert.Equal("scaleReading", error.ParamName);
        Assert.StartsWith("scaleReading is 1000000000 kg; it must be from ", error.Message, StringComparison.Ordinal);
    }

    /// <summary>The air is too cold for the refrigerant's equation: it is the surroundings that are told, not a temperature that nobody gave.</summary>
    [Fact]
    public void Surroundings_are_told_by_their_name()
    {
        RecoveryJob job = Jobs.Chiller();
        job = job with { Appliance = job.Appliance with { Surroundings = Temperature.FromKelvins(151) } };
        PropertyRangeException error = Assert.Throws<PropertyRangeException>(() => RecoveryPlanner.Plan(job));
        Assert.Equal(nameof(Appliance.Surroundings), error.ParamName);
        Assert.StartsWith("R-134a: Surroundings is 151 K; valid from ", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData(" \t\n")]
    public void A_blank_name_is_refused(string blank)
    {
        RecoveryCylinder cylinder = Jobs.Chiller().Cylinders[0];
        Pressure level = Pressure.FromKilopascals(50);
        (string Name, Action Call)[] calls =
        [
            ("Label", () => _ = cylinder with { Label = blank }),
            ("Cylinder", () => _ = new JobReading { Time = Duration.Zero, Cylinder = blank }),
            ("Company", () => _ = new RecordFacts { Company = blank, Location = "yard", Date = DateTime.UnixEpoch }),
            ("Location", () => _ = new RecordFacts { Company = "one", Location = blank, Date = DateTime.UnixEpoch }),
            ("place", () => RuleSet.FromCaller(blank, level, FillRules.Japan, "contract")),
            ("source", () => RuleSet.FromCaller("here", level, FillRules.Japan, blank)),
            ("place", () => FillRules.FromCaller(blank, Ratio.FromPercent(80), Temperature.FromDegreesCelsius(20), "contract")),
            ("source", () => FillRules.FromCaller("here", Ratio.FromPercent(80), Temperature.FromDegreesCelsius(20), blank)),
            ("OwnLevelSource", () => _ = new EvacuationOptions { OwnLevelSource = blank }),
            ("name", () => _ = new Setup(blank, Jobs.Chiller())),
            ("name", () => Fitting.FromFlowCoefficient(blank, 1)),
        ];
        Assert.All(calls, call =>
        {
            ArgumentException error = Assert.Throws<ArgumentException>(call.Call);
            Assert.Equal(call.Name, error.ParamName);
            Assert.Contains("it must be a text that is not blank", error.Message, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Rules_of_ones_own_are_not_called_like_those_of_the_library()
    {
        Pressure level = Pressure.FromKilopascals(50);
        foreach (RuleSet set in RuleSet.All)
        {
            ArgumentException error = Assert.Throws<ArgumentException>(() => RuleSet.FromCaller(set.Place.ToLowerInvariant(), level, FillRules.Japan, "contract"));
            Assert.Contains("a set of the library", error.Message, StringComparison.Ordinal);
            Assert.Throws<ArgumentException>(() => FillRules.FromCaller(set.Fill.Place, Ratio.FromPercent(80), Temperature.FromDegreesCelsius(20), "contract"));
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1e12)]
    public void A_level_that_cannot_be_meant_is_refused(double pascals)
    {
        ArgumentOutOfRangeException own = Assert.Throws<ArgumentOutOfRangeException>(() => new EvacuationOptions { OwnLevel = Pressure.FromPascals(pascals) });
        Assert.Equal("OwnLevel", own.ParamName);
        ArgumentOutOfRangeException set = Assert.Throws<ArgumentOutOfRangeException>(() => RuleSet.FromCaller("here", Pressure.FromPascals(pascals), FillRules.Japan, "contract"));
        Assert.Equal("level", set.ParamName);
        Assert.Contains("Pa absolute", set.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_job_that_no_plan_can_be_made_of_is_watched_all_the_same()
    {
        RecoveryJob job = Jobs.Chiller();
        RecoveryJob impossible = job with { Appliance = job.Appliance with { Charge = job.Appliance.Charge * 100 } };
        Assert.Throws<ImpossibleJobException>(() => RecoveryPlanner.Plan(impossible));
        JobEstimate estimate = RecoveryMonitor.Start(impossible).Update(
            new JobReading { Time = Duration.Zero, SuctionGaugePressure = Pressure.FromKilopascals(300), GrossWeight = Mass.FromKilograms(60) });
        Assert.InRange(estimate.Remaining.Best.Kilograms, 0, 2 * impossible.Appliance.Charge.Kilograms);
    }
}
