using System;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>What a rise test says as far as its instruments tell it: liquid, vapor or another gas by saturation, a leak by the gas law.</summary>
public class RiseVerdictTests
{
    private const double Cold = 283.15, Warm = 293.15;
    private const double GaugePascals = 400, Kelvin = 0.8, Share = 0.12;
    private static readonly Fluid R134a = Fluid.Get("R-134a");

    /// <summary>Saturation at the temperature that the gas may at least or at most have, and a gauge that is off by its own uncertainty.</summary>
    [Theory]
    [InlineData(-1, -GaugePascals - 40, RiseTestVerdict.VaporOnly)]
    [InlineData(-1, -GaugePascals + 40, RiseTestVerdict.LiquidLeft)]
    [InlineData(1, GaugePascals - 40, RiseTestVerdict.LiquidLeft)]
    [InlineData(1, GaugePascals + 40, RiseTestVerdict.ForeignGas)]
    public void Saturation_parts_vapor_liquid_and_foreign_gas(int side, double beyond, RiseTestVerdict verdict)
    {
        double edge = Saturation(Warm + (side * Kelvin)) + beyond;
        RiseTestResult result = Judge(300e3, edge);
        Assert.Equal(verdict, result.Verdict);
        Assert.Equal(verdict == RiseTestVerdict.VaporOnly, result.Uncertainty is not null);
        if (verdict == RiseTestVerdict.ForeignGas)
        {
            Assert.Equal(edge - Saturation(Warm), result.UnexplainedPressure.Pascals, 1e-6);
        }
    }

    /// <summary>
    /// Thin gas, p = ρRT/M: warmed it has p1·T2/T1, known to √(δp²·(1 + (T2/T1)²) + (p1/T1·δT)²·(1 + (T2/T1)²)); what differs by more than that is told, what differs by less is not.
    /// </summary>
    [Theory]
    [InlineData(1.15, "rise-unexplained")]
    [InlineData(0.85, null)]
    [InlineData(-0.85, null)]
    [InlineData(-1.15, "rise-falls")]
    public void What_differs_from_the_gas_law_by_more_than_the_readings_is_told(double share, string? code)
    {
        const double First = 20e3;
        double ratio = Warm / Cold;
        double byTemperature = ratio * First / Cold * Kelvin, byOther = First / Cold * Kelvin;
        double uncertainty = Math.Sqrt((GaugePascals * GaugePascals * (1 + (ratio * ratio))) + (byTemperature * byTemperature) + (byOther * byOther));
        RiseTestResult result = Judge(First, (First * ratio) + (share * uncertainty));
        Assert.Equal(code, result.Findings.Select(finding => finding.Code).SingleOrDefault(found => found is "rise-unexplained" or "rise-falls"));
        Assert.Equal(Math.Max(0, share) * uncertainty, result.UnexplainedPressure.Pascals, 0.06 * uncertainty);
    }

    /// <summary>Below the air an unexplained rise may be air: nobody may be told then that all of it is refrigerant. Above the highest air, or explained, it is.</summary>
    [Theory]
    [InlineData(30e3, 101e3, true)]
    [InlineData(30e3, 31e3, false)]
    [InlineData(115e3, 200e3, false)]
    public void What_may_be_air_is_not_called_refrigerant(double first, double second, bool mayBeAir)
    {
        RiseTestResult result = Judge(first, second);
        Assert.Equal(RiseTestVerdict.VaporOnly, result.Verdict);
        string inside = result.Findings.Single(finding => finding.Code == "rise-vapor-only").Message;
        Assert.Equal(mayBeAir, inside.Contains("if no air leaked in", StringComparison.Ordinal));
        Assert.Equal(!mayBeAir, inside.StartsWith("All of it is vapor", StringComparison.Ordinal));
        Assert.Equal(mayBeAir, result.Findings.Any(finding => finding.Message.Contains("air that leaks in", StringComparison.Ordinal)));
    }

    /// <summary>Independent errors of volume, pressure and temperature add up as squares.</summary>
    [Fact]
    public void The_mass_is_known_as_well_as_volume_pressure_and_temperature()
    {
        RiseTestResult result = Judge(20e3, 21e3);
        double relative = Math.Sqrt((Share * Share) + (GaugePascals / 21e3 * GaugePascals / 21e3) + (Kelvin / Warm * Kelvin / Warm));
        Assert.Equal(relative, result.Uncertainty!.Value / result.VaporMass, 1e-9);
        Assert.Equal(0.04 * 21e3 * R134a.MolarMass.KilogramsPerMole / (8.314462618 * Warm), result.VaporMass.Kilograms, 0.01 * result.VaporMass.Kilograms);
    }

    private static double Saturation(double kelvins) => R134a.SaturationAt(Temperature.FromKelvins(kelvins)).Bubble.Pressure.Pascals;

    private static RiseTestResult Judge(double first, double second) => RiseTest.Judge(new RiseTestReadings
    {
        Fluid = R134a,
        InternalVolume = Volume.FromLiters(40),
        FirstPressure = Pressure.FromPascals(first),
        FirstTemperature = Temperature.FromKelvins(Cold),
        SecondPressure = Pressure.FromPascals(second),
        SecondTemperature = Temperature.FromKelvins(Warm),
        PressureUncertainty = Pressure.FromPascals(GaugePascals),
        TemperatureUncertainty = TemperatureDelta.FromKelvins(Kelvin),
        VolumeUncertainty = Ratio.FromDecimalFractions(Share),
    });
}
