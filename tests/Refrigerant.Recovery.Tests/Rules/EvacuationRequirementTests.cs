using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Tests.Doubles;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Rules;

/// <summary>Levels and thresholds: 40 CFR 82.152 and 82.156, each figure as its table prints it.</summary>
public sealed class EvacuationRequirementTests
{
    private const double Psi = 6894.757293168361;
    private const double Inch = 3386.389;
    private static readonly DateTime Before = new(1993, 11, 14);
    private static readonly DateTime On = new(1993, 11, 15);

    private static Mass Pounds(double value) => new(value, MassUnit.Pound);

    private static Pressure Pascals(double value) => new(value, PressureUnit.Pascal);

    private static Fluid WithPressure(double pascals, string designation = "R-test") =>
        Fluid.FromModel(new SimpleFluid(designation) { PressureAt313 = pascals });

    private static Fluid OfClass(PressureClass pressureClass) => pressureClass switch
    {
        PressureClass.Low => WithPressure(20 * Psi),
        PressureClass.Medium => WithPressure(100 * Psi),
        PressureClass.High => WithPressure(250 * Psi),
        _ => WithPressure(500 * Psi),
    };

    // The boundaries are open in the definitions; the choice is documented at PressureClassification.
    [Theory]
    [InlineData(44.999, PressureClass.Low)]
    [InlineData(45, PressureClass.Medium)]
    [InlineData(170, PressureClass.Medium)]
    [InlineData(170.001, PressureClass.High)]
    [InlineData(355, PressureClass.High)]
    [InlineData(355.001, PressureClass.VeryHigh)]
    public void Class_FollowsThePressureAt104F(double psia, PressureClass expected)
    {
        PressureClassification found = PressureClassification.For(WithPressure(psia * Psi));
        Assert.Equal(expected, found.ByLetter);
        Assert.Equal(expected, found.Customary);
        Assert.Equal(psia, found.PressureAt104F!.Value.Pascals / Psi, 1e-9);
        Assert.Equal("level-class-uncertain", Assert.Single(found.Findings).Code);
    }

    [Fact]
    public void Class_BelowTheCriticalTemperatureOf104F_IsVeryHigh()
    {
        PressureClassification cold = PressureClassification.For(Fluid.FromModel(new SimpleFluid { Critical = 313.1, PressureAt313 = 20 * Psi }));
        Assert.Equal(PressureClass.VeryHigh, cold.ByLetter);
        Assert.Equal(PressureClass.VeryHigh, cold.Customary);
        Assert.Null(cold.PressureAt104F);
        PressureClassification warm = PressureClassification.For(Fluid.FromModel(new SimpleFluid { Critical = 313.15, PressureAt313 = 20 * Psi }));
        Assert.Equal(PressureClass.Low, warm.ByLetter);
    }

    // 40 CFR 82.152 names these refrigerants as examples of their classes; pressures computed from the equations of state by an independent
    // solver, printed to 0.1 psia.
    [Theory]
    [InlineData("R-11", PressureClass.Low, 25.3)]
    [InlineData("R-123", PressureClass.Low, 22.4)]
    [InlineData("R-113", PressureClass.Low, 11.3)]
    [InlineData("R-245fa", PressureClass.Low, 36.4)]
    [InlineData("R-114", PressureClass.Medium, 49.1)]
    [InlineData("R-124", PressureClass.Medium, 86.1)]
    [InlineData("R-12", PressureClass.Medium, 139.1)]
    [InlineData("R-134a", PressureClass.Medium, 147.4)]
    [InlineData("R-22", PressureClass.High, 222.4)]
    [InlineData("R-32", PressureClass.VeryHigh, 359.4)]
    [InlineData("R-500", PressureClass.Medium, null)]
    [InlineData("R-502", PressureClass.High, null)]
    [InlineData("R-407A", PressureClass.High, null)]
    [InlineData("R-407C", PressureClass.High, 253.7)]
    [InlineData("R-404A", PressureClass.High, 265.4)]
    [InlineData("R-410A", PressureClass.High, 351.8)]
    public void Class_OfTheRefrigerantsThatTheRegulationNames(string designation, PressureClass expected, double? psia)
    {
        PressureClassification found = PressureClassification.For(Fluid.Get(designation));
        Assert.Equal(expected, found.ByLetter);
        if (psia is double pressure)
        {
            // The blends were computed from pseudo-pure equations: 0.6 % apart at most.
            double tolerance = Fluid.Get(designation).IsBlend ? 0.006 * pressure : 0.06;
            Assert.Equal(pressure, found.PressureAt104F!.Value.PoundsForcePerSquareInch, tolerance);
        }
    }

    [Theory]
    [InlineData("R-13")]
    [InlineData("R-23")]
    [InlineData("R-744")]
    [InlineData("R-503")]
    [InlineData("R-508A")]
    [InlineData("R-508B")]
    public void Class_OfRefrigerantsWithACriticalTemperatureBelow104F(string designation) =>
        Assert.Equal(PressureClass.VeryHigh, PressureClassification.For(Fluid.Get(designation)).ByLetter);

    // 82.156(a) Table 1, all twelve cells; inHg of vacuum relative to 29.9 inHg.
    [Theory]
    [InlineData(PressureClass.VeryHigh, 199.99, false, 0)]
    [InlineData(PressureClass.VeryHigh, 200, true, 0)]
    [InlineData(PressureClass.High, 199.99, true, 0)]
    [InlineData(PressureClass.High, 199.99, false, 0)]
    [InlineData(PressureClass.High, 200, true, 4)]
    [InlineData(PressureClass.High, 200, false, 10)]
    [InlineData(PressureClass.Medium, 199.99, true, 4)]
    [InlineData(PressureClass.Medium, 199.99, false, 10)]
    [InlineData(PressureClass.Medium, 200, true, 4)]
    [InlineData(PressureClass.Medium, 200, false, 15)]
    public void Level_IsTheOneOfTheTable(PressureClass pressureClass, double pounds, bool oldMachine, double inches)
    {
        EvacuationOptions options = new() { MachineManufactured = oldMachine ? Before : On };
        EvacuationRequirement level = EvacuationRequirement.For(OfClass(pressureClass), Pounds(pounds), options);
        Assert.Equal(pressureClass, level.Class);
        Assert.Equal(29.9 - inches, level.RequiredPressure.Pascals / Inch, 1e-9);
        Assert.Equal(inches, Mercury.ToInches(level.VacuumOnRegulationBasis!.Value), 1e-9);
        Assert.Equal("40 CFR 82.156(a) Table 1", level.Source);
        Assert.Null(level.RequiredRecovery);
    }

    [Theory]
    [InlineData(10, true)]
    [InlineData(10_000, false)]
    public void Level_OfLowPressure_Is25MillimetersAbsolute(double pounds, bool oldMachine)
    {
        EvacuationOptions options = new() { MachineManufactured = oldMachine ? Before : On };
        EvacuationRequirement level = EvacuationRequirement.For(OfClass(PressureClass.Low), Pounds(pounds), options);

        // 25 mmHg absolute = 3.333 kPa.
        Assert.Equal(3333.06, level.RequiredPressure.Pascals, 0.01);
    }

    [Fact]
    public void UnknownDateOfManufacture_IsTheStricterCase() => Assert.Equal(
        14.9, EvacuationRequirement.For(OfClass(PressureClass.Medium), Pounds(500)).RequiredPressure.Pascals / Inch, 1e-9);

    [Theory]
    [InlineData(false, true, 0.9)]
    [InlineData(false, false, 0.8)]
    [InlineData(true, true, 0.8)]
    [InlineData(true, false, 0.8)]
    public void SmallAppliance_ByPercentOr4Inches(bool oldMachine, bool runs, double fraction)
    {
        EvacuationOptions options = new()
        {
            Appliance = ApplianceKind.Small,
            CompressorRuns = runs,
            MachineManufactured = oldMachine ? Before : On,
        };
        EvacuationRequirement level = EvacuationRequirement.For(OfClass(PressureClass.Medium), Pounds(5), options);
        Assert.Equal(fraction, level.RequiredRecovery!.Value.DecimalFractions, 1e-12);
        Assert.Equal(25.9, level.RequiredPressure.Pascals / Inch, 1e-9);
        Assert.Equal("40 CFR 82.156(b)", level.Source);
    }

    [Fact]
    public void SmallAppliance_Above5Pounds_IsAnError()
    {
        EvacuationOptions options = new() { Appliance = ApplianceKind.Small };
        ArgumentOutOfRangeException e = Assert.Throws<ArgumentOutOfRangeException>(
            () => EvacuationRequirement.For(OfClass(PressureClass.Medium), Pounds(5.01), options));
        Assert.Equal("charge", e.ParamName);
        Assert.Contains("82.152", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void MotorVehicle_Is102MillimetersOfVacuumNotAbsolute()
    {
        EvacuationRequirement level = EvacuationRequirement.For(
            OfClass(PressureClass.Medium), Pounds(2), new EvacuationOptions { Appliance = ApplianceKind.MotorVehicle });
        Assert.Equal((29.9 * Inch) - (102 * 133.322387415), level.RequiredPressure.Pascals, 1e-6);
        Assert.InRange(level.RequiredPressure.Pascals, 87_600, 87_700);
    }

    [Fact]
    public void NonMajorRepair_IsZeroOnTheLocalGauge()
    {
        Barometer place = Barometer.AtElevation(new Length(1600, LengthUnit.Meter));
        EvacuationRequirement level = EvacuationRequirement.For(
            OfClass(PressureClass.Medium), Pounds(500), new EvacuationOptions { Purpose = OpeningPurpose.NonMajorRepair, Barometer = place });
        Assert.Equal(place.Pressure.Pascals, level.RequiredPressure.Pascals, 1e-9);
        Assert.Equal(0, level.GaugeReading.Pascals, 1e-9);
        Assert.DoesNotContain(level.Findings, finding => finding.Subject == FindingSubject.Compliance);
        EvacuationRequirement low = EvacuationRequirement.For(
            OfClass(PressureClass.Low), Pounds(500), new EvacuationOptions { Purpose = OpeningPurpose.NonMajorRepair });
        Assert.Contains(low.Findings, finding => finding.Subject == FindingSubject.Compliance && finding.Message.Contains("85 °F", StringComparison.Ordinal));
    }

    [Fact]
    public void OilChange_Is5PsiGauge()
    {
        EvacuationRequirement level = EvacuationRequirement.For(
            OfClass(PressureClass.High), Pounds(500), new EvacuationOptions { Purpose = OpeningPurpose.OilChange });
        Assert.Equal(5, level.GaugeReading.PoundsForcePerSquareInch, 1e-9);
        Assert.Empty(level.Findings);
    }

    [Fact]
    public void Leak_LowestAttainableStandsBetweenTheTableAndZeroGauge()
    {
        Fluid fluid = OfClass(PressureClass.Medium);
        EvacuationRequirement At(double pascals) => EvacuationRequirement.For(fluid, Pounds(500), new EvacuationOptions { LowestAttainable = Pascals(pascals) });

        EvacuationRequirement between = At(80_000);
        Assert.Equal(80_000, between.RequiredPressure.Pascals, 1e-9);
        Assert.Equal("40 CFR 82.156(a)(2)", between.Source);
        Assert.Single(between.Findings, finding => finding.Subject == FindingSubject.Leak);

        EvacuationRequirement above = At(150_000);
        Assert.Equal(101_325, above.RequiredPressure.Pascals, 1e-9);
        Assert.Contains(above.Findings, finding => finding.Subject == FindingSubject.Leak && finding.Severity == Severity.Warning);

        EvacuationRequirement below = At(20_000);
        Assert.Equal(14.9 * Inch, below.RequiredPressure.Pascals, 1e-6);
        Assert.Contains(below.Findings, finding => finding.Subject == FindingSubject.Leak && finding.Message.Contains("regular one", StringComparison.Ordinal));
    }

    [Fact]
    public void R32_IsVeryHighByTheLetterAndHighByCustom()
    {
        Fluid fluid = WithPressure(359.4 * Psi, "R-32");
        EvacuationRequirement level = EvacuationRequirement.For(fluid, Pounds(300));
        Assert.Equal(PressureClass.VeryHigh, level.Class);
        Assert.Equal(PressureClass.High, level.Classification!.Customary);
        Assert.Equal(29.9 * Inch, level.RequiredPressure.Pascals, 1e-6);
        Assert.Contains(level.Findings, finding => finding.Message.Contains("359 psia", StringComparison.Ordinal));

        EvacuationRequirement custom = EvacuationRequirement.For(fluid, Pounds(300), new EvacuationOptions { Class = PressureClass.High });
        Assert.Equal(19.9 * Inch, custom.RequiredPressure.Pascals, 1e-6);
        Finding single = Assert.Single(custom.Findings);
        Assert.Contains("set to High", single.Message, StringComparison.Ordinal);

        Assert.Empty(PressureClassification.For(WithPressure(300 * Psi, "R-32")).Findings);
    }

    [Fact]
    public void OwnLevel_Stands()
    {
        EvacuationRequirement level = EvacuationRequirement.For(
            OfClass(PressureClass.Medium), Pounds(500), new EvacuationOptions { OwnLevel = Pascals(30_000), OwnLevelSource = "contract 7" });
        Assert.Equal(30_000, level.RequiredPressure.Pascals);
        Assert.Equal("contract 7", level.Source);
        Assert.Equal(Evidence.GivenByCaller, level.Rule.Evidence);
        Assert.Equal("level given by the caller", EvacuationRequirement.For(
            OfClass(PressureClass.Medium), Pounds(500), new EvacuationOptions { OwnLevel = Pascals(30_000) }).Source);
    }

    [Fact]
    public void AtAltitude_TheGaugeShowsLessThanTheLegalVacuum()
    {
        // At 5000 ft the barometer is 24.9 inHg: 10 inHg of legal vacuum is 5 inHg on the gauge.
        Barometer place = Barometer.AtElevation(new Length(5000, LengthUnit.Foot));
        EvacuationRequirement level = EvacuationRequirement.For(OfClass(PressureClass.Medium), Pounds(100), new EvacuationOptions { Barometer = place });
        Assert.Equal(19.9 * Inch, level.RequiredPressure.Pascals, 1e-6);
        Assert.Equal(5.0, Mercury.ToInches(level.VacuumReadingOn(place)!.Value), 0.01);
        Assert.Equal(-5.0, Mercury.ToInches(level.GaugeReading), 0.01);
        Assert.Contains(level.Findings, finding => finding.Subject == FindingSubject.VacuumAndAltitude && finding.Message.Contains("shows 5 inHg", StringComparison.Ordinal));
        Assert.Equal(10.02, Mercury.ToInches(level.VacuumReadingOn(Barometer.Standard)!.Value), 0.005);
    }

    [Fact]
    public void AtAltitude_AtmosphericLevelIsAboveTheAirOfThePlace()
    {
        Barometer place = Barometer.AtElevation(new Length(1600, LengthUnit.Meter));
        EvacuationRequirement level = EvacuationRequirement.For(OfClass(PressureClass.High), Pounds(100), new EvacuationOptions { Barometer = place });
        Assert.Null(level.VacuumReadingOn(place));
        Assert.True(level.GaugeReading.Pascals > 17_000);
        Assert.Contains(level.Findings, finding => finding.Subject == FindingSubject.VacuumAndAltitude && finding.Message.Contains("blow out", StringComparison.Ordinal));
        Assert.DoesNotContain(EvacuationRequirement.For(OfClass(PressureClass.High), Pounds(100)).Findings, finding => finding.Subject == FindingSubject.VacuumAndAltitude);
    }

    [Fact]
    public void IsMetBy_AtOrBelowTheLevel()
    {
        EvacuationRequirement level = EvacuationRequirement.For(OfClass(PressureClass.Medium), Pounds(100));
        Assert.True(level.IsMetBy(level.RequiredPressure));
        Assert.True(level.IsMetBy(Pascals(0)));
        Assert.False(level.IsMetBy(Pascals(level.RequiredPressure.Pascals + 1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => level.IsMetBy(Pascals(-1)));
    }

    [Theory]
    [InlineData(15, 0)]
    [InlineData(15.01, 1)]
    public void SystemDependentEquipment_StopsAbove15Pounds(double pounds, int expected)
    {
        EvacuationRequirement level = EvacuationRequirement.For(
            OfClass(PressureClass.Medium), Pounds(pounds), new EvacuationOptions { IsMachineSystemDependent = true });
        Assert.Equal(expected, level.Findings.Count(finding => finding.Severity == Severity.Stop));
    }

    [Theory]
    [InlineData(5, 0)]
    [InlineData(5.01, 1)]
    [InlineData(49.99, 1)]
    [InlineData(50, 0)]
    public void Disposal_BetweenFiveAndFiftyPounds_AsksForRecords(double pounds, int expected)
    {
        EvacuationRequirement level = EvacuationRequirement.For(
            OfClass(PressureClass.Medium), Pounds(pounds), new EvacuationOptions { Purpose = OpeningPurpose.Disposal });
        Assert.Equal(expected, level.Findings.Count(finding => finding.Message.Contains("records for three years", StringComparison.Ordinal)));
        Assert.Equal(19.9 * Inch, level.RequiredPressure.Pascals, 1e-6);
    }

    [Fact]
    public void SmallChargeInAGeneralAppliance_IsPointedOut()
    {
        Assert.Contains(EvacuationRequirement.For(OfClass(PressureClass.High), Pounds(5)).Findings, f => f.Message.Contains("small appliance", StringComparison.Ordinal));
        Assert.DoesNotContain(EvacuationRequirement.For(OfClass(PressureClass.High), Pounds(5.01)).Findings, f => f.Message.Contains("small appliance", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("R-744", 1)]
    [InlineData("R-717", 1)]
    [InlineData("R-290", 1)]
    [InlineData("R-600a", 1)]
    [InlineData("R-441A", 1)]
    [InlineData("R-22", 0)]
    public void ExemptRefrigerants_ArePointedOut(string designation, int expected) => Assert.Equal(
        expected,
        EvacuationRequirement.For(WithPressure(250 * Psi, designation), Pounds(100)).Findings.Count(f => f.Message.Contains("venting", StringComparison.Ordinal)));

    [Property]
    public Property ALargerCharge_IsNeverAllowedMore() => Prop.ForAll(
        Gen.Choose(1, 100_000).Two().ToArbitrary(),
        pair =>
        {
            Fluid fluid = OfClass((PressureClass)(pair.Item1 % 4));
            double small = 0.01 * Math.Min(pair.Item1, pair.Item2);
            double large = 0.01 * Math.Max(pair.Item1, pair.Item2);
            return EvacuationRequirement.For(fluid, Pounds(large)).RequiredPressure.Pascals
                <= EvacuationRequirement.For(fluid, Pounds(small)).RequiredPressure.Pascals;
        });

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void HostileNumbers_AreClearErrors(double value)
    {
        Fluid fluid = OfClass(PressureClass.High);
        Assert.ThrowsAny<ArgumentException>(() => EvacuationRequirement.For(fluid, Pounds(value)));
        Assert.ThrowsAny<ArgumentException>(() => new EvacuationOptions { OwnLevel = Pascals(value) });
        Assert.ThrowsAny<ArgumentException>(() => new EvacuationOptions { LowestAttainable = Pascals(value) });
    }

    [Fact]
    public void Nulls_AreClearErrors()
    {
        Assert.Throws<ArgumentNullException>(() => EvacuationRequirement.For(null!, Pounds(1)));
        Assert.Throws<ArgumentNullException>(() => PressureClassification.For(null!));
        Assert.Throws<ArgumentNullException>(() => new EvacuationOptions { Barometer = null! });
        Assert.Throws<ArgumentNullException>(() => new EvacuationOptions { OwnLevelSource = null! });
        EvacuationRequirement level = EvacuationRequirement.For(OfClass(PressureClass.High), Pounds(1));
        Assert.Throws<ArgumentNullException>(() => level.GaugeReadingOn(null!));
        Assert.Throws<ArgumentNullException>(() => level.VacuumReadingOn(null!));
        Assert.Null(new EvacuationOptions { OwnLevel = null, LowestAttainable = null }.OwnLevel);
        Assert.StartsWith("R-test: 101.253 kPa absolute", level.ToString(), StringComparison.Ordinal);
    }
}
