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

    // EPA's published blend values (AR4): R-404A 3922, R-407C 1774, R-410A 2088; the others mass-weighted (trade pages agree on R-422D 2729).
    [Theory]
    [InlineData("R-404A", "R-125:44 R-143a:52 R-134a:4", 3922, 3943, 4728, 0)]
    [InlineData("R-407C", "R-32:23 R-125:25 R-134a:52", 1774, 1624, 1908, 0)]
    [InlineData("R-410A", "R-32:50 R-125:50", 2088, 1924, 2256, 0)]
    [InlineData("R-422D", "R-125:65.1 R-134a:31.5 R-600a:3.4", 2729, 2473, 2917, 0)]
    [InlineData("R-417A", "R-125:46.6 R-134a:50 R-600:3.4", 2346, 2127, 2508, 0)]
    [InlineData("R-402A", "R-125:60 R-290:2 R-22:38", 2788, 2571, 2989, 0.021)]
    [InlineData("R-502", "R-22:48.8 R-115:51.2", 4657, 4786, 5872, 0.334)]
    [InlineData("R-513A", "R-1234yf:56 R-134a:44", 631, 573, 673, 0)]
    public void BlendPotentials_AreMassWeighted(string designation, string composition, double fourth, double fifth, double sixth, double ozone)
    {
        RefrigerantFacts facts = Blend(designation, [.. composition.Split(' ').Select(part => (part.Split(':')[0], double.Parse(part.Split(':')[1], System.Globalization.CultureInfo.InvariantCulture) / 100))]);
        Assert.Equal(fourth, facts.GlobalWarmingPotential(AssessmentReport.Fourth)!.Value, 0.6);
        Assert.Equal(fifth, facts.GlobalWarmingPotential(AssessmentReport.Fifth)!.Value, 0.6);
        Assert.Equal(sixth, facts.GlobalWarmingPotential(AssessmentReport.Sixth)!.Value, 0.6);
        Assert.Equal(ozone, facts.OzoneDepletionPotential!.Value, 0.0006);
        Assert.Equal(Evidence.Computed, facts.GlobalWarmingPotential(AssessmentReport.Fifth)!.Evidence);
        Assert.Equal("A1", facts.SafetyGroup!.Value);
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

    [Theory]
    [InlineData("R-134a", false, false, 0)]
    [InlineData("R-32", true, false, 1)]
    [InlineData("R-152a", true, false, 1)]
    [InlineData("R-290", true, false, 1)]
    [InlineData("R-123", false, true, 1)]
    [InlineData("R-717", true, true, 2)]
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
    [InlineData("R-32", OilFamilies.Polyolester)]
    [InlineData("R-134a", OilFamilies.Polyolester | OilFamilies.PolyalkyleneGlycol)]
    [InlineData("R-1234yf", OilFamilies.Polyolester | OilFamilies.PolyalkyleneGlycol)]
    [InlineData("R-744", OilFamilies.Polyolester | OilFamilies.PolyalkyleneGlycol)]
    [InlineData("R-290", OilFamilies.Mineral | OilFamilies.Polyolester)]
    [InlineData("R-717", OilFamilies.Mineral | OilFamilies.Polyalphaolefin)]
    public void Oils_AreThoseOfTheFamily(string designation, OilFamilies oils) => Assert.Equal(oils, Of(designation).Oils);

    [Fact]
    public void Oils_OfBlends_AreThoseOfTheirComponents()
    {
        Assert.Equal(OilFamilies.Mineral, Blend("R-402A", ("R-125", 0.6), ("R-290", 0.02), ("R-22", 0.38)).Oils);
        Assert.Equal(OilFamilies.Polyolester, Blend("R-410A", ("R-32", 0.5), ("R-125", 0.5)).Oils);
        Assert.Equal(OilFamilies.Polyolester | OilFamilies.PolyalkyleneGlycol, Blend("R-513A", ("R-1234yf", 0.56), ("R-134a", 0.44)).Oils);
        Assert.Equal(OilFamilies.Polyolester, Blend("R-x", ("R-717", 0.5), ("R-32", 0.5)).Oils);
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
