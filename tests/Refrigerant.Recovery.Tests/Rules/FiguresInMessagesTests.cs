using System;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Rules;

/// <summary>A technician acts on the text of a finding: its figures are those of the result, in the unit that it says.</summary>
public class FiguresInMessagesTests
{
    private static readonly Fluid R134a = Fluid.Get("R-134a");

    [Fact]
    public void TrappedLiquid_SaysTemperatureAndRise()
    {
        TrappedLiquid trapped = TrappedLiquid.ShutIn(R134a, Temperature.FromDegreesCelsius(20));
        string expected = FormattableString.Invariant($"at 20 °C rises by {trapped.PressurePerKelvin.Kilopascals:F0} kPa per K");
        Assert.Contains(expected, Assert.Single(trapped.Findings).ToText(DisplayUnits.International));
        Assert.Contains("at 68 °F rises by ", trapped.Findings[0].ToText(DisplayUnits.UnitedStatesCustomary));
        Assert.InRange(trapped.PressurePerKelvin.Bars, 5, 9);
    }

    [Fact]
    public void TestPressure_IsComparedInTheSameUnit()
    {
        Fluid fluid = Fluid.Get("R-410A");
        double at65 = fluid.SaturationAt(Temperature.FromDegreesCelsius(65)).Bubble.Pressure.Bars;
        RecoveryCylinder cylinder = RecoveryCylinder.FromTestPressure(Pressure.FromBars(30), Mass.FromKilograms(10), Mass.FromKilograms(5));
        Finding stop = CylinderFill.Limit(cylinder, fluid).Findings.Single(f => f.Code == "cylinder-too-weak");
        Assert.Equal(Severity.Stop, stop.Severity);
        Assert.Contains(FormattableString.Invariant($"liquid has {(at65 * 100) - 101.325:F0} kPa gauge at 65 °C"), stop.ToText(DisplayUnits.International));
        Assert.Contains("the test pressure (3000 kPa gauge)", stop.ToText(DisplayUnits.International));
    }

    [Fact]
    public void Altitude_SaysTheReadingHereAndTheOneOfTheRegulation()
    {
        EvacuationRequirement level = EvacuationRequirement.For(
            R134a, Mass.FromPounds(300), new EvacuationOptions { Barometer = Barometer.AtElevation(Length.FromMeters(1600)) });
        Finding finding = level.Findings.Single(f => f.Subject == FindingSubject.VacuumAndAltitude);

        // 40 CFR 82.156(a) Table 1: 15 inHg for medium pressure and 200 lb or more. Here: 83.524 kPa (U.S. Standard Atmosphere 1976) less 50.46 kPa.
        Assert.Contains("which is 15 inHg of vacuum on the regulation's 29.9 inHg atmosphere", finding.Message);
        Assert.Contains("shows 9.8 inHg of vacuum", finding.Message);
    }

    [Theory]
    [InlineData(70, "Isolate the leaking parts")]
    [InlineData(20, "at or below the regular one")]
    public void Leak_SaysWhichLevelStands(double kilopascals, string expected)
    {
        EvacuationRequirement level = EvacuationRequirement.For(
            R134a, Mass.FromPounds(300), new EvacuationOptions { LowestAttainable = Pressure.FromKilopascals(kilopascals) });
        Assert.Contains(expected, level.Findings.Single(f => f.Subject == FindingSubject.Leak).Message);
    }
}
