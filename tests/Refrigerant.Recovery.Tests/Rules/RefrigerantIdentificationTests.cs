using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Rules;

/// <summary>Readings from printed tables; the refrigerant is among those that fit, and what cannot be it is not.</summary>
public class RefrigerantIdentificationTests
{
    private static readonly Fluid[] Common =
        [.. new[] { "R-12", "R-22", "R-32", "R-134a", "R-1234yf", "R-290", "R-404A", "R-407C", "R-410A", "R-502", "R-507A", "R-600a", "R-717", "R-744" }.Select(Fluid.Get)];

    private static RefrigerantIdentification From(double kilopascals, double celsius, double dp = 5, double dt = 0.5) => RefrigerantIdentification.From(
        Pressure.FromKilopascals(kilopascals), Temperature.FromDegreesCelsius(celsius), Pressure.FromKilopascals(dp), TemperatureDelta.FromKelvins(dt), Common);

    // Saturation at 25 °C: R-134a 665.4 kPa (Tillner-Roth and Baehr 1994), R-22 1043.9 (Kamei 1995), R-410A 1657 (Lemmon 2003), R-717 1003 kPa (from memory).
    [Theory]
    [InlineData(665.4, "R-134a", "R-22")]
    [InlineData(1043.9, "R-22", "R-134a")]
    [InlineData(1657, "R-410A", "R-22")]
    public void TheRefrigerantIsAmongThoseThatFit(double kilopascals, string fits, string doesNot)
    {
        RefrigerantIdentification found = From(kilopascals, 25);
        Assert.Contains(found.Fitting, candidate => candidate.Fluid.Designation == fits);
        Assert.DoesNotContain(found.Fitting, candidate => candidate.Fluid.Designation == doesNot);
        Assert.Equal(found.Candidates.OrderBy(candidate => candidate.Deviation), found.Candidates);
        Assert.Contains(found.Findings, finding => finding.Code == "identify-no-promise");
    }

    [Fact]
    public void WhatLooksAlike_IsSaid()
    {
        // R-134a 665.4 and R-1234yf 682 kPa at 25 °C: half a kelvin apart.
        RefrigerantIdentification found = From(672, 25);
        Assert.Contains(found.Fitting, candidate => candidate.Fluid.Designation == "R-1234yf");
        Finding several = Assert.Single(found.Findings, finding => finding.Code == "identify-several-fit");
        Assert.NotNull(several.Value("second there"));
        Assert.Contains(found.Findings, finding => finding.Code == "identify-dangerous-candidate" && finding.Message.Contains("R-1234yf", System.StringComparison.Ordinal));
    }

    [Fact]
    public void NoneFits_SaysWhy()
    {
        RefrigerantIdentification found = From(850, 25, dp: 2, dt: 0.2);
        Assert.Empty(found.Fitting);
        Assert.Contains(found.Findings, finding => finding.Code == "identify-none-fits" && finding.Severity == Severity.Warning);
    }

    // R-134a has 665.4 kPa at 25 °C (Tillner-Roth and Baehr 1994); its model may be 1 % off. By hand: 14.6/6.80, and 14.6/√(5² + 6.80²).
    [Theory]
    [InlineData(0, 2.15)]
    [InlineData(5, 1.73)]
    public void ADeviation_IsCountedInUncertainties(double accuracy, double deviation) =>
        Assert.Equal(deviation, From(680, 25, accuracy, 0).Candidates.Single(candidate => candidate.Fluid.Designation == "R-134a").Deviation, 0.01);

    [Fact]
    public void ABlend_FitsBetweenDewAndBubble()
    {
        // R-407C at 20 °C: bubble 1037.6, dew 880.3 kPa (Lemmon 2003).
        Assert.Contains(From(950, 20).Fitting, candidate => candidate.Fluid.Designation == "R-407C" && candidate.Deviation == 0);
    }

    [Fact]
    public void ClassNearABorder_SaysSo()
    {
        PressureClassification blend = PressureClassification.For(Fluid.Get("R-409A"));
        Finding finding = Assert.Single(blend.Findings);
        Assert.Equal("level-class-uncertain", finding.Code);
        Assert.Equal(PressureClass.Medium, blend.AcrossTheBorder);
        Assert.InRange(blend.PressureUncertainty.Percent, 5, 15.001);

        // Named as examples in 40 CFR 82.152, however near the border.
        Assert.Null(PressureClassification.For(Fluid.Get("R-410A")).AcrossTheBorder);
        Assert.Empty(PressureClassification.For(Fluid.Get("R-134a")).Findings);
    }
}
