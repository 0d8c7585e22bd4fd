using System;
using System.Globalization;
using System.Linq;
using System.Threading;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Findings;

/// <summary>A finding: a code and values for programs, a text in the reader's units for people.</summary>
public class FindingTests
{
    private static readonly FindingCode Code = new("too-full", FindingSubject.CylinderOverfill, "more than the limit is in it");

    private static Finding Sample(bool hot = true) => new(
        Code,
        Severity.Stop,
        "a standard",
        $"{FindingValue.Text("cylinder", "C1")} holds {FindingValue.Mass("content", Mass.FromKilograms(22.04))}, its limit is {FindingValue.Mass("limit", Mass.FromKilograms(20.87), RoundingMode.Down)}.",
        hot ? (FormattableString)$"It is at {FindingValue.Temperature("temperature", Temperature.FromDegreesCelsius(50))}." : null);

    [Fact]
    public void Text_IsInTheUnitsOfTheReader()
    {
        Assert.Equal("C1 holds 22 kg, its limit is 20.8 kg. It is at 50 °C.", Sample().ToText(DisplayUnits.International));
        Assert.Equal("C1 holds 48.6 lb, its limit is 46 lb. It is at 122 °F.", Sample().ToText(DisplayUnits.UnitedStatesCustomary));
        Assert.Equal(Sample().ToText(DisplayUnits.UnitedStatesCustomary), Sample().Message);
        Assert.EndsWith("20.8 kg.", Sample(hot: false).ToText(DisplayUnits.International), StringComparison.Ordinal);
    }

    [Fact]
    public void Values_AreTyped()
    {
        Finding finding = Sample();
        Assert.Equal(("too-full", FindingSubject.CylinderOverfill, Severity.Stop), (finding.Code, finding.Subject, finding.Severity));
        Assert.Equal(["cylinder", "content", "limit", "temperature"], finding.Values.Select(value => value.Name));
        Assert.Equal(20.87, Assert.IsType<Mass>(finding.Value("limit")!.Quantity).Kilograms);
        Assert.Equal(323.15, finding.Value("temperature")!.InternationalValue!.Value, 1e-9);
        Assert.Null(finding.Value("cylinder")!.Quantity);
        Assert.Null(finding.Value("price"));
    }

    [Fact]
    public void Text_DoesNotDependOnTheCulture()
    {
        CultureInfo before = Thread.CurrentThread.CurrentCulture;
        string expected = Sample().ToText(DisplayUnits.International);
        try
        {
            Thread.CurrentThread.CurrentCulture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            Thread.CurrentThread.CurrentCulture.NumberFormat.NumberDecimalSeparator = ",";
            Finding other = new(Code, Severity.Note, "none", $"{FindingValue.Number("ratio", 1.5)}, {1.5:F1}, {1.5}.");
            Assert.Equal("1.5, 1.5, 1.5.", other.Message);
            Assert.Equal(expected, Sample().ToText(DisplayUnits.International));
        }
        finally
        {
            Thread.CurrentThread.CurrentCulture = before;
        }
    }

    [Fact]
    public void EveryKind_HasATextAndAQuantity()
    {
        FindingValue[] values =
        [
            FindingValue.Number("n", 2512.4), FindingValue.Share("s", Ratio.FromPercent(80)), FindingValue.Mass("m", Mass.FromKilograms(0.15)),
            FindingValue.AbsolutePressure("a", Pressure.FromKilopascals(50.46)), FindingValue.GaugePressure("g", Pressure.FromPascals(-50_796)),
            FindingValue.Vacuum("v", Pressure.FromPascals(50_796)), FindingValue.PressureDifference("d", Pressure.FromPascals(6894.757)),
            FindingValue.PressurePerTemperature("r", Pressure.FromPascals(720_000)), FindingValue.Temperature("t", Temperature.FromKelvins(273.15)),
            FindingValue.TemperatureDifference("dt", TemperatureDelta.FromKelvins(5)), FindingValue.Volume("vol", Volume.FromLiters(2.5)),
            FindingValue.Length("l", Length.FromMillimeters(8)), FindingValue.Duration("time", Duration.FromMinutes(35)),
            FindingValue.Power("p", Power.FromWatts(1500)), FindingValue.HeatFlow("q", Power.FromWatts(1500)),
            FindingValue.MassFlow("mf", MassFlow.FromKilogramsPerMinute(0.45)), FindingValue.VolumeFlow("vf", VolumeFlow.FromLitersPerSecond(0.5)),
            FindingValue.Density("rho", Density.FromKilogramsPerCubicMeter(1060)),
        ];
        Assert.Equal(
            ["2512", "80 %", "150 g", "50.5 kPa absolute", "50.8 kPa of vacuum", "50.8 kPa of vacuum", "6.89 kPa", "720 kPa per K", "0 °C", "5 K", "2.5 L", "8 mm", "35 min", "1500 W", "1500 W", "0.45 kg/min", "0.5 L/s", "1060 kg/m³"],
            values.Select(value => value.ToText(DisplayUnits.International)));
        Assert.Equal(
            ["2512", "80 %", "5.3 oz", "7.32 psia", "15 inHg of vacuum", "15 inHg of vacuum", "1 psi", "58 psi per °F", "32 °F", "9 °F", "0.66 gal", "0.315 in", "35 min", "1500 W", "5118 Btu/h", "0.992 lb/min", "1.06 cfm", "66.2 lb/ft³"],
            values.Select(value => value.ToText(DisplayUnits.UnitedStatesCustomary)));
        Assert.Equal(Enum.GetValues<FindingValueKind>().Skip(1), values.Select(value => value.Kind).Distinct().Order());
        Assert.All(values, value => Assert.NotNull(value.Quantity));
        Assert.Equal(values.Select(value => value.InternationalValue), values.Select(value => (double?)SiOf(value)));
    }

    [Fact]
    public void BadInput_Throws()
    {
        Assert.Throws<ArgumentException>(() => new FindingCode("Too Full", FindingSubject.Oil, "x"));
        Assert.Throws<ArgumentException>(() => new FindingCode(string.Empty, FindingSubject.Oil, "x"));
        Assert.Throws<ArgumentException>(() => new Finding(Code, Severity.Note, "none"));
        Assert.Throws<ArgumentNullException>(() => new Finding(null!, Severity.Note, "none", $"x"));
        Assert.Throws<ArgumentOutOfRangeException>(() => FindingValue.Number("n", double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => FindingValue.AbsolutePressure("p", Pressure.FromPascals(-1)));
    }

    private static double SiOf(FindingValue value) => value.Quantity switch
    {
        Scalar q => q.Amount,
        Ratio q => q.DecimalFractions,
        Mass q => q.Kilograms,
        Pressure q => q.Pascals,
        Temperature q => q.Kelvins,
        TemperatureDelta q => q.Kelvins,
        Volume q => q.CubicMeters,
        Length q => q.Meters,
        Duration q => q.Seconds,
        Power q => (double)q.Watts,
        MassFlow q => q.KilogramsPerSecond,
        VolumeFlow q => q.CubicMetersPerSecond,
        Density q => q.KilogramsPerCubicMeter,
        _ => double.NaN,
    };
}
