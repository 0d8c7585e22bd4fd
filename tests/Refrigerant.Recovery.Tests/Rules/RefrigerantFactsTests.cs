using System;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Tests.Doubles;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Rules;

public sealed class RefrigerantFactsTests
{
    private static RefrigerantFacts Of(string designation) => RefrigerantFacts.For(Fluid.Get(designation));

    private static RefrigerantFacts Blend(string designation, params (string Component, double MassFraction)[] parts) =>
        RefrigerantFacts.For(Fluid.FromModel(new SimpleFluid(designation) { Parts = parts }));

    // IPCC AR4, AR5, AR6, as collected in openclimatedata/globalwarmingpotentials; AR4 also 40 CFR 98 table A-1.
    [Theory]
    [InlineData("R-22", 1810, 1760, 1960)]
    [InlineData("R-134a", 1430, 1300, 1530)]
    [InlineData("R-32", 675, 677, 771)]
    [InlineData("R-123", 77, 79, 90.4)]
    [InlineData("R-744", 1, 1, 1)]
    public void Potentials_AreThePublishedOnes(string designation, double fourth, double fifth, double sixth)
    {
        RefrigerantFacts facts = Of(designation);
        Assert.Equal(fourth, facts.GlobalWarmingPotential(AssessmentReport.Fourth)!.Value);
        Assert.Equal(fifth, facts.GlobalWarmingPotential(AssessmentReport.Fifth)!.Value);
        Assert.Equal(sixth, facts.GlobalWarmingPotential(AssessmentReport.Sixth)!.Value);
        Assert.Equal(Evidence.ReadSecondHand, facts.GlobalWarmingPotential(AssessmentReport.Fourth)!.Evidence);
    }

    // EPA's published blend values (AR4): R-404A 3922, R-407C 1774, R-410A 2088; the others mass-weighted from the same components by an
    // independent computation (trade pages agree on R-422D 2729, R-448A 1387, R-449A 1397).
    [Theory]
    [InlineData("R-401A", 1182, 1130, 1263, 0.037, "A1")]
    [InlineData("R-402A", 2788, 2571, 2989, 0.021, "A1")]
    [InlineData("R-404A", 3922, 3943, 4728, 0, "A1")]
    [InlineData("R-407C", 1774, 1624, 1908, 0, "A1")]
    [InlineData("R-409A", 1585, 1485, 1670, 0.048, "A1")]
    [InlineData("R-410A", 2088, 1924, 2256, 0, "A1")]
    [InlineData("R-417A", 2346, 2127, 2508, 0, "A1")]
    [InlineData("R-422D", 2729, 2473, 2917, 0, "A1")]
    [InlineData("R-444A", 93, 89, 102, 0, "A2L")]
    [InlineData("R-448A", 1387, 1273, 1494, 0, "A1")]
    [InlineData("R-449A", 1397, 1282, 1504, 0, "A1")]
    [InlineData("R-454B", 466, 467, 531, 0, "A2L")]
    [InlineData("R-500", 8077, 7564, 9268, 0.738, "A1")]
    [InlineData("R-502", 4657, 4786, 5872, 0.334, "A1")]
    [InlineData("R-503", 14560, 13298, 15558, 0.599, "A1")]
    [InlineData("R-508B", 13396, 11698, 13412, 0, "A1")]
    [InlineData("R-513A", 631, 573, 673, 0, "A1")]
    [InlineData("R-514A", 8, 3, 3, 0, "B1")]
    [InlineData("R-516A", 142, 131, 153, 0, "A2L")]
    public void BlendPotentials_AreMassWeighted(string designation, double fourth, double fifth, double sixth, double ozone, string group)
    {
        RefrigerantFacts facts = Of(designation);
        Assert.Equal(group, facts.SafetyGroup!.Value);
        Assert.Equal(ozone, facts.OzoneDepletionPotential!.Value, 0.0006);
        foreach ((AssessmentReport report, double expected) in new[] { (AssessmentReport.Fourth, fourth), (AssessmentReport.Fifth, fifth), (AssessmentReport.Sixth, sixth) })
        {
            SourcedFigure figure = facts.GlobalWarmingPotential(report)!;
            Assert.Equal(expected, figure.Value, 1.0);
            Assert.Equal(Evidence.Computed, figure.Evidence);
        }
    }

    // 40 CFR 82 Subpart A Appendix A; HCFCs from memory.
    [Theory]
    [InlineData("R-11", 1.0, Evidence.Read)]
    [InlineData("R-115", 0.6, Evidence.Read)]
    [InlineData("R-22", 0.055, Evidence.FromMemory)]
    [InlineData("R-134a", 0, Evidence.Computed)]
    [InlineData("R-1233zd(E)", 0.0003, Evidence.FromMemory)]
    public void OzoneDepletion_IsTheRegulatoryOne(string designation, double expected, Evidence evidence)
    {
        SourcedFigure figure = Of(designation).OzoneDepletionPotential!;
        Assert.Equal(expected, figure.Value);
        Assert.Equal(evidence, figure.Evidence);
    }

    [Fact]
    public void WhatWasNotFound_IsAbsent()
    {
        Assert.Null(Of("R-290").GlobalWarmingPotential(AssessmentReport.Fifth));
        Assert.Null(Of("R-40").OzoneDepletionPotential);
        Assert.Null(Of("R-1132(E)").SafetyGroup);
        Assert.Null(Of("R-1132(E)").IsFlammable);
        Assert.Null(Of("R-1132(E)").IsToxic);
        Assert.Null(Of("R-1132(E)").CarbonDioxideEquivalent(new Mass(1, MassUnit.Kilogram), AssessmentReport.Sixth));
        Assert.Null(Blend("R-474A", ("R-1132(E)", 0.23), ("R-1234yf", 0.77)).GlobalWarmingPotential(AssessmentReport.Fourth));
        Assert.Null(Blend("R-x", ("R-236ea", 0.5), ("R-40", 0.5)).OzoneDepletionPotential);

        RefrigerantFacts unknown = RefrigerantFacts.For(Fluid.FromModel(new SimpleFluid("R-own")));
        Assert.Null(unknown.ChemicalName);
        Assert.Null(unknown.Family);
        Assert.Null(unknown.SafetyGroup);
        Assert.Null(unknown.OzoneDepletionPotential);
        Assert.Null(unknown.GlobalWarmingPotential(AssessmentReport.Fourth));
        Assert.Equal(OilFamilies.None, unknown.Oils);
        Assert.Equal("R-own: not known here, no safety group found", unknown.ToString());
        Assert.Contains("No safety group", Assert.Single(unknown.Findings).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ALargePotential_OfAnotherReport_NeverStandsIn() =>
        Assert.Null(Blend("R-x", ("R-134a", 0.5), ("R-1336mzz(E)", 0.5)).GlobalWarmingPotential(AssessmentReport.Fourth));

    /// <summary>A caller may call a blend anything: only what is made as R-407C is (ASHRAE 34: 23/25/52 % of R-32/125/134a) has its group.</summary>
    [Fact]
    public void A_blend_of_another_make_does_not_take_the_group_of_its_name()
    {
        static RefrigerantFacts Made(string designation, params (string Part, double Share)[] parts) =>
            RefrigerantFacts.For(Fluid.Blend(parts.ToDictionary(part => part.Part, part => part.Share), designation));
        Assert.Equal("A1", Made("R-407C", ("R-32", 0.23), ("R-125", 0.25), ("R-134a", 0.52)).SafetyGroup!.Value);
        Assert.Null(Made("R-407C", ("R-32", 0.53), ("R-125", 0.25), ("R-134a", 0.22)).SafetyGroup);
        Assert.Null(Made("R-410A", ("R-32", 0.5), ("R-290", 0.5)).IsFlammable);
    }

    [Theory]
    [InlineData("R-134a", false, false, 0)]
    [InlineData("R-32", true, false, 1)]
    [InlineData("R-152a", true, false, 1)]
    [InlineData("R-290", true, false, 1)]
    [InlineData("R-123", false, true, 1)]
    [InlineData("R-717", true, true, 3)]
    public void SafetyGroup_DecidesTheCautions(string designation, bool burns, bool toxic, int findings)
    {
        RefrigerantFacts facts = Of(designation);
        Assert.Equal("ASHRAE Standard 34", facts.SafetyGroup!.Source);
        Assert.Equal(Evidence.FromMemory, facts.SafetyGroup.Evidence);
        Assert.Equal(burns, facts.IsFlammable);
        Assert.Equal(toxic, facts.IsToxic);
        Assert.Equal(findings, facts.Findings.Count);
        Assert.Equal(burns, facts.Findings.Any(f => f.Subject == FindingSubject.Flammability));
        Assert.Equal(toxic, facts.Findings.Any(f => f.Subject == FindingSubject.Toxicity));
    }

    [Theory]
    [InlineData("R-12", OilFamilies.Mineral)]
    [InlineData("R-22", OilFamilies.Mineral)]
    [InlineData("R-32", OilFamilies.PolyolEster)]
    [InlineData("R-134a", OilFamilies.PolyolEster | OilFamilies.PolyalkyleneGlycol)]
    [InlineData("R-1234yf", OilFamilies.PolyolEster | OilFamilies.PolyalkyleneGlycol)]
    [InlineData("R-744", OilFamilies.PolyolEster | OilFamilies.PolyalkyleneGlycol)]
    [InlineData("R-290", OilFamilies.Mineral | OilFamilies.PolyolEster)]
    [InlineData("R-717", OilFamilies.Mineral | OilFamilies.Polyalphaolefin)]
    public void Oils_AreThoseOfTheFamily(string designation, OilFamilies oils) => Assert.Equal(oils, Of(designation).Oils);

    [Fact]
    public void Oils_OfBlends_AreThoseOfTheirComponents()
    {
        Assert.Equal(OilFamilies.Mineral, Blend("R-402A", ("R-125", 0.6), ("R-290", 0.02), ("R-22", 0.38)).Oils);
        Assert.Equal(OilFamilies.PolyolEster, Blend("R-410A", ("R-32", 0.5), ("R-125", 0.5)).Oils);
        Assert.Equal(OilFamilies.PolyolEster | OilFamilies.PolyalkyleneGlycol, Blend("R-513A", ("R-1234yf", 0.56), ("R-134a", 0.44)).Oils);
        Assert.Equal(OilFamilies.PolyolEster, Blend("R-x", ("R-717", 0.5), ("R-32", 0.5)).Oils);
        Assert.Equal(SubstanceFamily.Hfc, Blend("R-410A", ("R-32", 0.5), ("R-125", 0.5)).Family);
        Assert.Equal(SubstanceFamily.Mixed, Blend("R-513A", ("R-1234yf", 0.56), ("R-134a", 0.44)).Family);
        Assert.Equal("difluoromethane / pentafluoroethane", Blend("R-410A", ("R-32", 0.5), ("R-125", 0.5)).ChemicalName);
        Assert.Equal(2, Blend("R-410A", ("R-32", 0.5), ("R-125", 0.5)).Composition.Count);
    }

    [Fact]
    public void EveryPureFluidOfTheCatalogue_HasAnEntry()
    {
        Fluid[] pure = [.. Fluid.All.Where(fluid => !fluid.IsBlend)];
        Assert.Equal(53, pure.Length);
        Assert.All(pure, fluid => Assert.NotNull(RefrigerantFacts.For(fluid).ChemicalName));
        Assert.All(Fluid.All, fluid => Assert.NotNull(RefrigerantFacts.For(fluid).Family));
        Assert.Equal(53, PureFacts.All.Select(row => row.Designation).Distinct().Count());
    }

    [Fact]
    public void Bounds_AreMarked()
    {
        SourcedFigure below = Of("R-1234yf").GlobalWarmingPotential(AssessmentReport.Fifth)!;
        Assert.True(below.IsUpperBound);
        Assert.Contains("AR5", below.Source, StringComparison.Ordinal);
        Assert.Equal(1, below.Value);
        Assert.Equal("<1", below.ToString());
        Assert.Equal("1430", Of("R-134a").GlobalWarmingPotential(AssessmentReport.Fourth)!.ToString());
        Assert.Equal("R-134a: 1,1,1,2-tetrafluoroethane, A1", Of("R-134a").ToString());
    }

    [Fact]
    public void CarbonDioxideEquivalent_IsMassTimesPotential()
    {
        Assert.Equal(3 * 1430, Of("R-134a").CarbonDioxideEquivalent(new Mass(3, MassUnit.Kilogram), AssessmentReport.Fourth)!.Value.Kilograms, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => Of("R-134a").CarbonDioxideEquivalent(new Mass(-1, MassUnit.Kilogram), AssessmentReport.Fourth));
        Assert.Throws<ArgumentOutOfRangeException>(() => Of("R-134a").GlobalWarmingPotential((AssessmentReport)3));
        Assert.Throws<ArgumentOutOfRangeException>(() => Of("R-134a").GlobalWarmingPotential((AssessmentReport)7));
        Assert.Throws<ArgumentNullException>(() => RefrigerantFacts.For(null!));
    }

    [Fact]
    public void Mixing_IsForbiddenAndOilsAreNamedWhereTheyDiffer()
    {
        Assert.Null(RefrigerantMixing.Check(Fluid.Get("R-22"), Fluid.Get("R-22")));
        Finding oils = RefrigerantMixing.Check(Fluid.Get("R-12"), Fluid.Get("R-134a"))!;
        Assert.Equal(Severity.Stop, oils.Severity);
        Assert.Contains("oils differ", oils.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("oils differ", RefrigerantMixing.Check(Fluid.Get("R-32"), Fluid.Get("R-125"))!.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>(() => RefrigerantMixing.Check(null!, Fluid.Get("R-22")));
        Assert.Throws<ArgumentNullException>(() => RefrigerantMixing.Check(Fluid.Get("R-22"), null!));
    }
}
