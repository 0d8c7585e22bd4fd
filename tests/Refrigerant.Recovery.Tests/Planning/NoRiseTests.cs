using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>EN 378-4 as Spain's law follows it (RD 552/2019, IF-17, 1.8.2.1): finished only if the pressure does not rise with the machine stopped. No time and no figure is named.</summary>
public class NoRiseTests
{
    /// <summary>A plan that counts a level as held while the gauge comes up within it says so, with both readings; where the words of a rule want no such thing it has nothing to say.</summary>
    [Theory]
    [InlineData("European Union", true)]
    [InlineData("Spain", true)]
    [InlineData("United States", false)]
    [InlineData("Japan", false)]
    public void A_rise_within_the_level_is_told_where_the_words_want_none(string place, bool wantsNone)
    {
        RuleSet rules = place switch { "European Union" => RuleSet.EuropeanUnion, "Spain" => RuleSet.Spain, "Japan" => RuleSet.Japan, _ => RuleSet.UnitedStates };
        RecoveryJob job = Jobs.Chiller("R-449A", 20, cylinders: 1) with { Evacuation = new EvacuationOptions { Rules = rules } };
        job = job.With(appliance => appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(2), Kind = OilKind.PolyolEster } });
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.Equal(LevelOutcome.ReachedAndHeld, plan.Verdict.Outcome);
        StageResult hold = plan.Stages.Last(stage => stage.Kind == StageKind.Hold).Result!;
        double before = hold.Before.Appliance.Pressure.Pascals, after = hold.Appliance.Pressure.Pascals;
        Assert.True(after > before + 200);
        Finding level = plan.Findings.Said("level-reached")!;
        Assert.Equal(wantsNone, level.Message.Contains("wants no rise by its words", StringComparison.Ordinal));
        if (wantsNone)
        {
            Assert.Equal(before - 101_325, level.Figure("before hold"), 1);
            Assert.Equal(after - 101_325, level.Figure("after hold"), 1);
            string condition = plan.Findings.Said("level-condition")!.Message;
            Assert.Contains("must not rise", condition, StringComparison.Ordinal);
            Assert.Contains("stays at the level or below", condition, StringComparison.Ordinal);
        }
    }
}
