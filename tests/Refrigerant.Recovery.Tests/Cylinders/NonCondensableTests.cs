using System;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Tests.Doubles;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Cylinders;

public sealed class NonCondensableTests
{
    private static readonly SimpleFluid Model = new();

    private static Pressure Pascals(double value) => new(value, PressureUnit.Pascal);

    private static Temperature Kelvins(double value) => new(value, TemperatureUnit.Kelvin);

    private static NonCondensableTest Judge(double p, double t, double dp = 0, double dT = 0, SimpleFluid? model = null) => NonCondensableTest.Judge(
        Fluid.FromModel(model ?? Model), Pascals(p), Kelvins(t), Pascals(dp), new TemperatureDelta(dT, TemperatureDeltaUnit.Kelvin));

    // R-134a has 665.4 kPa at 25 °C. Below it by more than the gauge may be off there is no liquid, and nothing is told of air.
    [Theory]
    [InlineData(661.4, false)]
    [InlineData(659.4, true)]
    public void BelowSaturationByMoreThanTheGauge_IsNoTest(double kilopascals, bool isNone) => Assert.Equal(
        isNone,
        NonCondensableTest.Judge(Fluid.Get("R-134a"), Pascals(1000 * kilopascals), Kelvins(298.15), Pascals(5000), new TemperatureDelta(0, TemperatureDeltaUnit.Kelvin))
            .Findings.Any(finding => finding.Code == CylinderCodes.NoTestOfAir.Id));

    // AHRI 700: 1.5 % by volume; at 25 °C that is p_sat·0.015/0.985, computed: R-134a 665.4 kPa + 10.1 kPa, R-22 1043.9 kPa + 15.9 kPa.
    [Theory]
    [InlineData("R-134a", 665.4, 10.1)]
    [InlineData("R-22", 1043.9, 15.9)]
    public void TheLimit_AllowsThePublishedExcess(string designation, double saturation, double excess)
    {
        NonCondensableTest At(double kilopascals) => NonCondensableTest.Judge(
            Fluid.Get(designation), Pascals(1000 * kilopascals), Kelvins(298.15), Pascals(0), new TemperatureDelta(0, TemperatureDeltaUnit.Kelvin));

        Assert.Equal(saturation, At(saturation).SaturationPressure.Kilopascals, 0.06);
        Assert.Equal(NonCondensableVerdict.WithinLimit, At(saturation + excess - 0.2).Verdict);
        Assert.Equal(NonCondensableVerdict.AboveLimit, At(saturation + excess + 0.2).Verdict);
        Assert.Equal(excess, At(saturation + excess).PartialPressure.Kilopascals, 0.06);
        Assert.Equal(0.015, At(saturation + excess).MoleFraction.DecimalFractions, 1e-4);
    }

    [Fact]
    public void R12_LegalTable_LiesFarAboveTheLimit()
    {
        // 40 CFR 82 Subpart B App. A table 1: R-12 at 40.0 °C, 9.42 kg/cm² gauge (1025.1 kPa absolute): 6.5 % of air by the equation of state.
        NonCondensableTest found = NonCondensableTest.Judge(
            Fluid.Get("R-12"), Pascals(1_025_100), Kelvins(313.15), Pascals(0), new TemperatureDelta(0, TemperatureDeltaUnit.Kelvin));
        Assert.Equal(0.065, found.MoleFraction.DecimalFractions, 0.001);
        Assert.Equal(NonCondensableVerdict.AboveLimit, found.Verdict);
    }

    [Fact]
    public void Accuracy_WidensTheRangeAndTakesTheVerdict()
    {
        double saturation = Model.BubblePressure(300);
        NonCondensableTest sharp = Judge(saturation * 1.01, 300);
        Assert.Equal(NonCondensableVerdict.WithinLimit, sharp.Verdict);
        Assert.Equal(sharp.MoleFraction, sharp.LowestMoleFraction);
        Assert.Equal(sharp.MoleFraction, sharp.HighestMoleFraction);
        Assert.Empty(sharp.Findings);

        NonCondensableTest blunt = Judge(saturation * 1.01, 300, 0.01 * saturation, 1);
        Assert.Equal(NonCondensableVerdict.CannotTell, blunt.Verdict);
        Assert.Equal(0, blunt.LowestMoleFraction.DecimalFractions);
        Assert.Equal(1 - (Model.BubblePressure(299) / (1.02 * saturation)), blunt.HighestMoleFraction.DecimalFractions, 1e-9);
        Assert.Contains("not accurate enough", Assert.Single(blunt.Findings).Message, StringComparison.Ordinal);

        NonCondensableTest sure = Judge(saturation * 1.1, 300, 0.01 * saturation, 1);
        Assert.Equal(NonCondensableVerdict.AboveLimit, sure.Verdict);
        Assert.Equal(1 - (Model.BubblePressure(301) / (1.09 * saturation)), sure.LowestMoleFraction.DecimalFractions, 1e-9);
        Assert.Equal(Severity.Warning, Assert.Single(sure.Findings).Severity);
    }

    [Fact]
    public void ABlend_IsJudgedBetweenDewAndBubble()
    {
        SimpleFluid blend = new() { DewRatio = 0.9 };
        double bubble = blend.BubblePressure(300);
        NonCondensableTest between = Judge(0.97 * bubble, 300, model: blend);
        Assert.Equal(NonCondensableVerdict.CannotTell, between.Verdict);
        Assert.Equal(0, between.MoleFraction.DecimalFractions);
        Assert.Equal(0, between.PartialPressure.Pascals);
        Assert.Equal(1 - (0.9 / 0.97), between.HighestMoleFraction.DecimalFractions, 1e-9);
        Assert.Equal(NonCondensableVerdict.AboveLimit, Judge(1.03 * bubble, 300, model: blend).Verdict);
        Assert.Equal(NonCondensableVerdict.WithinLimit, Judge(0.905 * bubble, 300, model: blend).Verdict);
    }

    [Fact]
    public void BelowSaturation_TellsNothing()
    {
        NonCondensableTest found = Judge(0.8 * Model.BubblePressure(300), 300);
        Assert.Equal(NonCondensableVerdict.CannotTell, found.Verdict);
        Assert.Equal(0, found.PartialPressure.Pascals);
        Assert.Contains("below saturation", Assert.Single(found.Findings).Message, StringComparison.Ordinal);
        Assert.StartsWith("CannotTell: 0.00 %", found.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Accuracies_BeyondTheCurves_StayOnThem()
    {
        NonCondensableTest found = Judge(2e6, 390, 0, 300);
        Assert.Equal(NonCondensableVerdict.CannotTell, found.Verdict);
        Assert.Equal(1 - (Model.BubblePressure(200) / 2e6), found.HighestMoleFraction.DecimalFractions, 1e-9);
    }

    [Fact]
    public void LowPressureRefrigerants_HaveNoLimitOfTheirOwn()
    {
        SimpleFluid low = new("R-123");
        Assert.Contains(Judge(low.BubblePressure(300), 300, model: low).Findings, finding => finding.Severity == Severity.Note);
    }

    [Fact]
    public void AirLeft_IsThatOfAnIdealGas()
    {
        // 1 L at 10 kPa and 300 K: n = pV/RT = 4.0091e-3 mol.
        AirLeftInHoses air = AirLeftInHoses.After(new Volume(1, VolumeUnit.Liter), Pascals(10_000), Kelvins(300));
        double moles = 10_000 * 0.001 / (8.314462618 * 300);
        Assert.Equal(moles, air.Amount.Moles, 1e-12);
        Assert.Equal(moles * 28.9644, air.Mass.Grams, 1e-9);

        // A cylinder half full of liquid: the air has the other half.
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark("4BA400", new Mass(50, MassUnit.Kilogram), new Mass(20, MassUnit.Kilogram));
        double volume = cylinder.InternalVolume.CubicMeters;
        double vapor = Model.VaporDensity(298.15, Model.BubblePressure(298.15));
        Mass half = new(0.5 * volume * (1200 + vapor), MassUnit.Kilogram);
        double partial = moles * 8.314462618 * 298.15 / (0.5 * volume);
        Fluid fluid = Fluid.FromModel(Model);
        Assert.Equal(partial, air.PartialPressureIn(cylinder, fluid, half, Kelvins(298.15)).Pascals, 1e-6);
        Assert.Equal(
            partial / (partial + Model.BubblePressure(298.15)), air.MoleFractionIn(cylinder, fluid, half, Kelvins(298.15)).DecimalFractions, 1e-12);

        Mass full = new(volume * 1210, MassUnit.Kilogram);
        ArgumentOutOfRangeException e = Assert.Throws<ArgumentOutOfRangeException>(() => air.PartialPressureIn(cylinder, fluid, full, Kelvins(298.15)));
        Assert.Contains("full of liquid", e.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>(() => air.PartialPressureIn(null!, fluid, half, Kelvins(298.15)));
        Assert.Throws<ArgumentNullException>(() => air.MoleFractionIn(cylinder, null!, half, Kelvins(298.15)));
    }

    [Fact]
    public void ASweepTo15Inches_KeepsALargeCylinderPure()
    {
        // 40 ft of half-inch hose (1.54 L) swept to 50 kPa, into a 47.6 lb cylinder of R-134a at 80 %: far below 1.5 %, while unswept hoses on
        // a nearly full cylinder are not.
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark("4BA400", new Mass(47.6, MassUnit.Pound), new Mass(27.5, MassUnit.Pound));
        Fluid fluid = Fluid.Get("R-134a");
        Mass fill = CylinderFill.Limit(cylinder, fluid).MaximumFill;
        double Left(double pascals) => AirLeftInHoses.After(new Volume(1.54, VolumeUnit.Liter), Pascals(pascals), Kelvins(298.15))
            .MoleFractionIn(cylinder, fluid, fill, Kelvins(298.15)).DecimalFractions;
        Assert.InRange(Left(3_000), 1e-4, 0.0025);
        Assert.InRange(Left(101_325), 0.02, 0.08);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void HostileNumbers_AreClearErrors(double value)
    {
        Assert.ThrowsAny<ArgumentException>(() => Judge(value, 300));
        Assert.ThrowsAny<ArgumentException>(() => Judge(1e6, value));
        Assert.ThrowsAny<ArgumentException>(() => Judge(1e6, 300, value));
        Assert.ThrowsAny<ArgumentException>(() => Judge(1e6, 300, 0, value));
        Assert.ThrowsAny<ArgumentException>(() => AirLeftInHoses.After(new Volume(value, VolumeUnit.CubicMeter), Pascals(1), Kelvins(300)));
        Assert.ThrowsAny<ArgumentException>(() => AirLeftInHoses.After(new Volume(1, VolumeUnit.CubicMeter), Pascals(value), Kelvins(300)));
        Assert.ThrowsAny<ArgumentException>(() => AirLeftInHoses.After(new Volume(1, VolumeUnit.CubicMeter), Pascals(1), Kelvins(value)));
    }

    [Fact]
    public void ZeroAndNull_AreClearErrorsOrValid()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Judge(0, 300));
        Assert.Throws<ArgumentNullException>(() => NonCondensableTest.Judge(null!, Pascals(1), Kelvins(300), Pascals(0), default));
        Assert.Equal(0, AirLeftInHoses.After(new Volume(0, VolumeUnit.CubicMeter), Pascals(0), Kelvins(300)).Amount.Moles);
        Assert.ThrowsAny<ArgumentException>(() => AirLeftInHoses.After(new Volume(1e300, VolumeUnit.CubicMeter), Pascals(1e300), Kelvins(300)));
    }
}
