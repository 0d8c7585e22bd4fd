using System;
using System.Globalization;
using System.Text.RegularExpressions;
using FsCheck.Xunit;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Findings;

/// <summary>Texts that a technician holds against a gauge or a scale.</summary>
public class QuantityTextTests
{
    private const DisplayUnits Us = DisplayUnits.UnitedStatesCustomary;
    private const DisplayUnits Si = DisplayUnits.International;

    // One pound is 0.45359237 kg, 16 oz: the definition.
    [Theory]
    [InlineData(0.15, "5.3 oz", "150 g")]
    [InlineData(0.005, "0.18 oz", "5 g")]
    [InlineData(0, "0 lb", "0 kg")]
    [InlineData(0.45359237, "1 lb", "454 g")]
    [InlineData(2.49475804, "5 lb 8 oz", "2.49 kg")]
    [InlineData(1.2, "2 lb 10.3 oz", "1.2 kg")]
    [InlineData(10.2, "22.5 lb", "10.2 kg")]
    [InlineData(140, "308.6 lb", "140 kg")]
    [InlineData(20000, "44092 lb", "20000 kg")]
    [InlineData(-0.15, "-5.3 oz", "-150 g")]
    public void Mass_IsThatOfTheScale(double kilograms, string customary, string metric)
    {
        Assert.Equal(customary, QuantityText.Mass(Mass.FromKilograms(kilograms), Us));
        Assert.Equal(metric, QuantityText.Mass(Mass.FromKilograms(kilograms), Si));
    }

    [Fact]
    public void Ounces_CarryIntoPounds()
    {
        Assert.Equal("6 lb", QuantityText.Mass(Mass.FromPounds(5.99), Us));
        Assert.Equal("5 lb 15 oz", QuantityText.Mass(Mass.FromPounds(5.99), Us, RoundingMode.Down));
        Assert.Equal("16 oz", QuantityText.Mass(Mass.FromPounds(0.999), Us));
    }

    [Fact]
    public void Limits_AreRoundedToTheSideOnWhichTheyAreKept()
    {
        Assert.Equal("20.8 kg", QuantityText.Mass(Mass.FromKilograms(20.87), Si, RoundingMode.Down));
        Assert.Equal("20.9 kg", QuantityText.Mass(Mass.FromKilograms(20.81), Si, RoundingMode.Up));
        Assert.Equal("46 lb", QuantityText.Mass(Mass.FromPounds(46), Us, RoundingMode.Down));
    }

    // 1 psi = 6894.757 Pa, 1 inHg = 3386.389 Pa, 1 mmHg = 133.322 Pa (NIST SP 811).
    [Theory]
    [InlineData(417_200, "45.8 psig", "316 kPa gauge")]
    [InlineData(101_325, "0 psig", "0 kPa gauge")]
    [InlineData(101_320, "0 psig", "0 kPa gauge")]
    [InlineData(29.9 * 3386.389, "0 psig", "0 kPa gauge")]
    [InlineData(50_529.2, "15 inHg of vacuum", "50.8 kPa of vacuum")]
    [InlineData(3333.06, "28.94 inHg of vacuum", "98 kPa of vacuum")]
    [InlineData(101_325 + 344_737.9, "50 psig", "345 kPa gauge")]
    [InlineData(3_900_000, "551 psig", "3799 kPa gauge")]
    public void Gauge_GoesFromPsiToInchesOfMercury(double pascals, string customary, string metric)
    {
        Pressure air = Pressure.FromPascals(101_325);
        Assert.Equal(customary, QuantityText.GaugePressure(Pressure.FromPascals(pascals), air, Us));
        Assert.Equal(metric, QuantityText.GaugePressure(Pressure.FromPascals(pascals), air, Si));
    }

    /// <summary>The atmosphere of 40 CFR 82 (29.9 inHg) is zero on every gauge, to whichever side a level is rounded.</summary>
    [Theory]
    [InlineData(RoundingMode.Down)]
    [InlineData(RoundingMode.Up)]
    public void The_atmosphere_of_the_regulation_reads_zero(RoundingMode rounding)
    {
        Pressure level = Pressure.FromPascals((29.9 * 3386.389) - 101_325);
        Assert.Equal(("0 psig", "0 kPa gauge"), (QuantityText.GaugeReading(level, Us, rounding), QuantityText.GaugeReading(level, Si, rounding)));
    }

    [Theory]
    [InlineData(466_000, "67.6 psia", "466 kPa absolute")]
    [InlineData(3333.06, "25 mmHg absolute", "3.33 kPa absolute")]
    [InlineData(66.66, "500 microns", "66.7 Pa absolute")]
    [InlineData(0, "0 microns", "0 kPa absolute")]
    public void Absolute_GoesFromPsiToMicrons(double pascals, string customary, string metric)
    {
        Assert.Equal(customary, QuantityText.AbsolutePressure(Pressure.FromPascals(pascals), Us));
        Assert.Equal(metric, QuantityText.AbsolutePressure(Pressure.FromPascals(pascals), Si));
    }

    [Theory]
    [InlineData(273.13, "32 °F", "0 °C")]
    [InlineData(273.15, "32 °F", "0 °C")]
    [InlineData(296.15, "73 °F", "23 °C")]
    [InlineData(236.95, "-33 °F", "-36.2 °C")]
    [InlineData(255.3722, "0 °F", "-17.8 °C")]
    [InlineData(255.15, "0 °F", "-18 °C")]
    public void Temperature_HasNoMinusNought(double kelvins, string customary, string metric)
    {
        Assert.Equal(customary, QuantityText.Temperature(Temperature.FromKelvins(kelvins), Us));
        Assert.Equal(metric, QuantityText.Temperature(Temperature.FromKelvins(kelvins), Si));
    }

    // 1 US gallon is 231 in³ (3.785411784 L), 128 fl oz; one foot 0.3048 m: definitions.
    [Theory]
    [InlineData(0.0025, "0.66 gal", "2.5 L")]
    [InlineData(0.0022, "0.581 gal", "2.2 L")]
    [InlineData(0.00035, "11.8 fl oz", "350 mL")]
    [InlineData(120, "4238 ft³", "120 m³")]
    public void Volume_TellsNearOnesApart(double cubicMeters, string customary, string metric)
    {
        Assert.Equal(customary, QuantityText.Volume(Volume.FromCubicMeters(cubicMeters), Us));
        Assert.Equal(metric, QuantityText.Volume(Volume.FromCubicMeters(cubicMeters), Si));
    }

    [Theory]
    [InlineData(0, "0 s")]
    [InlineData(4.26, "4.3 s")]
    [InlineData(45, "45 s")]
    [InlineData(59.7, "1 min")]
    [InlineData(192, "3 min 12 s")]
    [InlineData(599.6, "10 min")]
    [InlineData(2100, "35 min")]
    [InlineData(3599, "1 h")]
    [InlineData(4680, "1 h 18 min")]
    [InlineData(-90, "-1 min 30 s")]
    public void Duration_CarriesOver(double seconds, string expected) => Assert.Equal(expected, QuantityText.Duration(Duration.FromSeconds(seconds)));

    [Fact]
    public void OtherQuantities()
    {
        Assert.Equal("0.315 in", QuantityText.Length(Length.FromMillimeters(8), Us));
        Assert.Equal("8 mm", QuantityText.Length(Length.FromMillimeters(8), Si));
        Assert.Equal("5249 ft", QuantityText.Length(Length.FromMeters(1600), Us));
        Assert.Equal("1500 W", QuantityText.Power(Power.FromWatts(1500)));
        Assert.Equal("5118 Btu/h", QuantityText.HeatFlow(Power.FromWatts(1500), Us));
        Assert.Equal("0.992 lb/min", QuantityText.MassFlow(MassFlow.FromKilogramsPerMinute(0.45), Us));
        Assert.Equal("36 g/min", QuantityText.MassFlow(MassFlow.FromKilogramsPerMinute(0.036), Si));
        Assert.Equal("1.06 cfm", QuantityText.VolumeFlow(VolumeFlow.FromLitersPerSecond(0.5), Us));
        Assert.Equal("0.5 L/s", QuantityText.VolumeFlow(VolumeFlow.FromLitersPerSecond(0.5), Si));
        Assert.Equal("38 g/m³", QuantityText.Density(Density.FromKilogramsPerCubicMeter(0.038), Si));
        Assert.Equal("9 °F", QuantityText.TemperatureDifference(TemperatureDelta.FromKelvins(5), Us));
        Assert.Equal("14.5 kPa", QuantityText.PressureDifference(Pressure.FromPascals(14_500), Si));
        Assert.Equal("15 inHg of vacuum", QuantityText.Vacuum(Pressure.FromPascals(15 * 3386.389), Us));
        Assert.Equal("0.52 %", QuantityText.Share(Ratio.FromDecimalFractions(0.0052)));
    }

    /// <summary>The printed figure, read back, is the mass to within the digits promised and on the side asked for.</summary>
    [Property(MaxTest = 500)]
    public void Mass_ReadBack_IsTheMass(ushort seed)
    {
        double kilograms = Math.Pow(10, (seed / 65536.0 * 9) - 4);
        foreach (RoundingMode mode in new[] { RoundingMode.Nearest, RoundingMode.Down, RoundingMode.Up })
        {
            foreach (DisplayUnits units in new[] { Us, Si })
            {
                string text = QuantityText.Mass(Mass.FromKilograms(kilograms), units, mode);
                Assert.DoesNotContain("E", text, StringComparison.Ordinal);
                double read = Read(text);
                Assert.True(Math.Abs(read - kilograms) <= 0.055 * kilograms, text);
                Assert.True(mode != RoundingMode.Down || read <= kilograms * (1 + 1e-6), text);
                Assert.True(mode != RoundingMode.Up || read >= kilograms * (1 - 1e-6), text);
            }
        }
    }

    [Fact]
    public void BelowNothing_Throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => QuantityText.GaugePressure(Pressure.FromPascals(-1), Pressure.FromPascals(1e5), Us));
        Assert.Throws<ArgumentOutOfRangeException>(() => QuantityText.AbsolutePressure(Pressure.FromPascals(-1), Us));
        Assert.Throws<ArgumentOutOfRangeException>(() => QuantityText.Vacuum(Pressure.FromPascals(-1), Us));
    }

    /// <summary>Messages of errors: no exponent within what a person reads, no minus nought.</summary>
    [Theory]
    [InlineData(20_000_000, "20000000")]
    [InlineData(1e-7, "1E-07")]
    [InlineData(0.00012, "0.00012")]
    [InlineData(-0.0, "0")]
    [InlineData(101325.25, "101325.2")]
    [InlineData(double.NaN, "NaN")]
    public void Errors_PrintPlainNumbers(double value, string expected) => Assert.Equal(expected, Require.Text(value));

    private static double Read(string text)
    {
        double sum = 0;
        foreach (Match match in Regex.Matches(text, @"([\d.]+) (kg|g|lb|oz)"))
        {
            sum += double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture)
                * match.Groups[2].Value switch { "kg" => 1, "g" => 1e-3, "lb" => 0.45359237, _ => 0.45359237 / 16 };
        }

        return sum;
    }
}
