using System;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Rules;

/// <summary>Nitrogen before a flame, and what is left of a blend.</summary>
public class FlammabilityTests
{
    private static FlamePurge Purge(string fluid, double kilopascals = 101.325) =>
        FlamePurge.Estimate(Fluid.Get(fluid), Pressure.FromKilopascals(kilopascals), Temperature.FromDegreesCelsius(25));

    [Fact]
    public void Propane_IsThinnedToATenthOfItsLowerLimit()
    {
        // IEC 60079-20-1: 1.7 % by volume; at one atmosphere pure vapor is thinned from 1 to 0.0017: ln(1/0.0017) = 6.38. Real vapor is 1.6 % denser.
        FlamePurge purge = Purge("R-290");
        Assert.Equal(6.38, purge.VolumeExchanges!.Value, 0.03);
        Assert.Equal(0.0306, purge.LowerLimit!.Value.KilogramsPerCubicMeter, 0.0005);

        // From 1 to 3 atmospheres and back each filling thins to a third: 6.38/ln 3 = 5.8.
        Assert.Equal(6, purge.FillingsTo(Pressure.FromAtmospheres(3)));
        Assert.Throws<ArgumentOutOfRangeException>(() => purge.FillingsTo(Pressure.FromAtmospheres(1)));
        Finding finding = Assert.Single(purge.Findings);
        Assert.Equal(("purge-before-flame", Severity.Warning), (finding.Code, finding.Severity));
        Assert.Contains("IEC 60079", finding.Source, StringComparison.Ordinal);
        Assert.Equal(purge.VolumeExchanges, finding.Value("volume exchanges")!.InternationalValue);
    }

    // IEC 60079-20-1:2010, % by volume (read second-hand), times molar mass over 24.465 L/mol, by hand; the others as the source named states them.
    [Theory]
    [InlineData("R-717", 0.1044)] // 15 %, 17.03 g/mol
    [InlineData("R-600", 0.0333)] // 1.4 %, 58.12 g/mol
    [InlineData("R-600a", 0.0309)] // 1.3 %, 58.12 g/mol
    [InlineData("R-1270", 0.0344)] // 2.0 %, 42.08 g/mol
    [InlineData("R-170", 0.0295)] // 2.4 %, 30.07 g/mol
    [InlineData("R-E170", 0.0508)] // 2.7 %, 46.07 g/mol
    [InlineData("R-143a", 0.2336)] // 6.8 %, 84.04 g/mol
    [InlineData("R-32", 0.307)] // Spain, RD 552/2019, IF-04
    [InlineData("R-454C", 0.29)] // a table that names ASHRAE 34-2019 addendum f
    [InlineData("R-452B", 0.31)] // the same
    public void LowerLimits_AreThePublishedOnes(string fluid, double kilogramsPerCubicMeter) =>
        Assert.Equal(kilogramsPerCubicMeter, Purge(fluid).LowerLimit!.Value.KilogramsPerCubicMeter, 0.003 * kilogramsPerCubicMeter);

    [Fact]
    public void ADeepVacuum_NeedsNoNitrogen() => Assert.Equal(0, Purge("R-290", 0.1).VolumeExchanges);

    [Fact]
    public void WhatDoesNotBurn_NeedsNone_AndAnUnknownLimitSaysSo()
    {
        Assert.Equal(0, Purge("R-134a").VolumeExchanges);
        Assert.Empty(Purge("R-134a").Findings);
        FlamePurge unknown = Purge("R-444A");
        Assert.Null(unknown.VolumeExchanges);
        Assert.Null(unknown.FillingsTo(Pressure.FromAtmospheres(3)));
        Assert.Equal("flammability-unknown", Assert.Single(unknown.Findings).Code);
    }

    [Theory]
    [InlineData("R-407C", new[] { 0.23, 0.25, 0.52 }, FlammabilityVerdict.DoesNotBurn)] // as charged, A1
    [InlineData("R-407C", new[] { 0.05, 0.10, 0.85 }, FlammabilityVerdict.DoesNotBurn)] // R-32 boiled off first
    [InlineData("R-407C", new[] { 0.40, 0.30, 0.30 }, FlammabilityVerdict.CannotTell)]
    [InlineData("R-454B", new[] { 0.689, 0.311 }, FlammabilityVerdict.Burns)]
    [InlineData("R-454B", new[] { 0.2, 0.8 }, FlammabilityVerdict.Burns)] // both components burn
    [InlineData("R-508B", new[] { 0.46, 0.54 }, FlammabilityVerdict.DoesNotBurn)]
    public void Remainder_IsJudgedAsFarAsDataGo(string fluid, double[] shares, FlammabilityVerdict verdict)
    {
        RemainderFlammability judged = RemainderFlammability.Judge(Fluid.Get(fluid), shares);
        Assert.Equal(verdict, judged.Verdict);
        Assert.Equal(verdict != FlammabilityVerdict.DoesNotBurn, judged.Findings.Any(finding => finding.Code == "remainder-may-burn"));
        Assert.Equal(verdict != FlammabilityVerdict.DoesNotBurn, judged.LowerLimit is not null);
    }

    [Fact]
    public void LeChatelier_OfOneComponent_IsItsLimit()
    {
        RemainderFlammability judged = RemainderFlammability.Judge(Fluid.Get("R-454B"), [1, 0]);
        Assert.Equal(0.307, judged.LowerLimit!.Value.KilogramsPerCubicMeter, 1e-9); // Spain, RD 552/2019, IF-04
        Assert.Throws<ArgumentException>(() => RemainderFlammability.Judge(Fluid.Get("R-454B"), [1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => RemainderFlammability.Judge(Fluid.Get("R-454B"), [0, 0]));
    }
}
