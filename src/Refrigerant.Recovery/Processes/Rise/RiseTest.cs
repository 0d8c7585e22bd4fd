using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>The rise test: two readings of a closed appliance, and what they say about the refrigerant still inside.</summary>
/// <remarks>
/// The mass in a closed volume does not change. Once all of it is vapor it is V·ρ(T, p). As long as the pressure is that of
/// saturation at the temperature read, liquid is there and the vapor is only the least there can be. A pressure above saturation is not
/// the refrigerant's: air, or another gas. Air that leaks in below saturation looks like refrigerant: the readings cannot tell.
/// </remarks>
public static class RiseTest
{
    /// <summary>The air is nowhere at a higher pressure, Pa: none leaks in against more. Highest at sea level ever read: 108.5 kPa, from memory.</summary>
    private const double HighestAir = 110_000;

    /// <summary>Evaluates two readings.</summary>
    /// <param name="readings">The readings and how well they are known.</param>
    /// <exception cref="ArgumentNullException">The readings are null.</exception>
    /// <exception cref="PropertyRangeException">A temperature is outside the saturation curve of the refrigerant.</exception>
    /// <example>
    /// <code>
    /// RiseTestResult rise = RiseTest.Judge(new RiseTestReadings
    /// {
    ///     Fluid = Fluid.Get("R-134a"),
    ///     InternalVolume = Volume.FromLiters(60),
    ///     FirstPressure = Pressure.FromKilopascals(50),
    ///     FirstTemperature = Temperature.FromDegreesCelsius(5),
    ///     SecondPressure = Pressure.FromKilopascals(52),
    ///     SecondTemperature = Temperature.FromDegreesCelsius(15),
    /// });
    /// Console.WriteLine(rise.Verdict); // VaporOnly
    /// </code>
    /// </example>
    public static RiseTestResult Judge(RiseTestReadings readings)
    {
        PropertyModel model = Require.NotNull(readings, nameof(readings)).Fluid.Model;
        double t1 = readings.FirstTemperature.Kelvins;
        double t2 = readings.SecondTemperature.Kelvins;
        double p1 = readings.FirstPressure.Pascals;
        double p2 = readings.SecondPressure.Pascals;
        double dp = readings.PressureUncertainty.Pascals;
        double dt = readings.TemperatureUncertainty.Kelvins;
        double volume = readings.InternalVolume.CubicMeters;
        double dv = readings.VolumeUncertainty.DecimalFractions;

        StatePoint dew = model.SaturationAtTemperature(t2).Dew;
        double bubble = model.SaturationAtTemperature(t2).Bubble.Pressure;
        double highest = model.SaturationAtTemperature(Within(model, t2 + dt)).Bubble.Pressure;
        double lowest = model.SaturationAtTemperature(Within(model, t2 - dt)).Dew.Pressure;
        if (p2 - dp > highest)
        {
            double gas = p2 - bubble;
            return new RiseTestResult(
                RiseTestVerdict.ForeignGas,
                volume * dew.Density,
                null,
                gas,
                [
                    new Finding(
                        StageCodes.RiseForeignGas,
                        Severity.Warning,
                        "Dalton's law and the saturation pressure",
                        $"{FindingValue.Pascals("pressure", p2)} is {FindingValue.PressureDifference("above", new Pressure(gas, PressureUnit.Pascal))} above saturation at {FindingValue.Kelvins("temperature", t2)}: air or another gas is in the appliance, by a leak or from before. Find the leak before pulling again."),
                ]);
        }

        if (p2 + dp >= lowest)
        {
            double least = volume * (1 - dv) * model.SaturationAtTemperature(Within(model, t2 - dt)).Dew.Density;
            return new RiseTestResult(
                RiseTestVerdict.LiquidLeft,
                volume * dew.Density,
                null,
                0,
                [
                    new Finding(
                        StageCodes.RiseLiquid,
                        Severity.Warning,
                        "saturation pressure",
                        $"The pressure is that of saturation at {FindingValue.Kelvins("temperature", t2)}: liquid is left. At least {FindingValue.Kilograms("at least", least)} are inside, how much more the readings do not tell. Pull again."),
                ]);
        }

        double density = model.StateAt(t2, p2).Density;
        double mass = volume * density;

        // Dry gas at constant volume and mass: p rises with T alone, at constant density. What rises beyond that evaporated, left the oil or leaked in.
        double expected = Expected(model, t1, p1, t2, dp, dt, out double error);
        double uncertainty = Math.Sqrt((dp * dp) + (error * error));
        double unexplained = p2 - expected;
        bool mayBeAir = unexplained > uncertainty && p2 <= HighestAir;
        double relative = Math.Sqrt((dv * dv) + (dp / p2 * (dp / p2)) + (dt / t2 * (dt / t2)));
        var findings = new List<Finding>
        {
            new(
                StageCodes.RiseVapor,
                Severity.Note,
                "density of the real gas",
                mayBeAir
                    ? $"No liquid is left by these readings. At most {FindingValue.Kilograms("mass", mass)} ± {FindingValue.Fraction("uncertainty", relative)} of refrigerant are inside, besides what oil holds: so much if no air leaked in."
                    : (FormattableString)$"All of it is vapor: {FindingValue.Kilograms("mass", mass)} ± {FindingValue.Fraction("uncertainty", relative)} are inside, besides what oil holds."),
        };

        if (-unexplained > uncertainty)
        {
            findings.Insert(0, new Finding(
                StageCodes.RiseFalls,
                Severity.Warning,
                "density of the real gas at constant volume",
                $"The pressure fell {FindingValue.PressureDifference("missing", new Pressure(-unexplained, PressureUnit.Pascal))} below what this gas has when only its temperature changes: something still draws, a valve or the gauge is wrong, or the temperature is not the gas's. It proves nothing; hold again."));
        }

        if (unexplained > uncertainty)
        {
            findings.Insert(0, new Finding(
                StageCodes.RiseUnexplained,
                Severity.Caution,
                "density of the real gas at constant volume",
                $"The pressure rose {FindingValue.PressureDifference("unexplained", new Pressure(unexplained, PressureUnit.Pascal))} more than warming of the gas explains: {FindingValue.Text("origins", mayBeAir ? "liquid that evaporated, refrigerant from oil, or air that leaks in" : "liquid that evaporated, or refrigerant from oil or from another part")}. Hold again: what comes from liquid or oil levels off, a leak does not."));
        }

        return new RiseTestResult(RiseTestVerdict.VaporOnly, mass, mass * relative, Math.Max(0, unexplained), findings.AsReadOnly());
    }

    /// <summary>p(T2, ρ(T1, p1)) of the real gas, Pa: where the first reading was at saturation, of its dry vapor alone.</summary>
    /// <remarks>
    /// Error by the slopes at constant density: δp = (∂p/∂ρ)₂/(∂p/∂ρ)₁·(δp1 − (∂p/∂T)₁·δT1) + (∂p/∂T)₂·δT2, its three parts independent.
    /// </remarks>
    private static double Expected(PropertyModel model, double t1, double p1, double t2, double dp, double dt, out double error)
    {
        double density = VaporAt(model, t1, p1);
        StatePoint second = model.VesselAtTemperature(t2, density).Bulk;
        double dry = second.Phase == Phase.TwoPhase ? model.SaturationAtTemperature(t2).Dew.Density : density;
        StateDerivatives first = model.DerivativesAt(t1, density);
        StateDerivatives then = model.DerivativesAt(t2, dry);
        double share = then.PressureByDensity / first.PressureByDensity;
        double byFirstPressure = share * dp;
        double byFirstTemperature = share * first.PressureByTemperature * dt;
        double bySecondTemperature = then.PressureByTemperature * dt;
        error = Math.Sqrt((byFirstPressure * byFirstPressure) + (byFirstTemperature * byFirstTemperature) + (bySecondTemperature * bySecondTemperature));
        return second.Pressure;
    }

    private static double VaporAt(PropertyModel model, double temperature, double pressure)
    {
        if (temperature <= model.Range.MaximumSaturationTemperature)
        {
            StatePoint dew = model.SaturationAtTemperature(temperature).Dew;
            if (pressure >= dew.Pressure)
            {
                return dew.Density;
            }
        }

        return model.StateAt(temperature, pressure).Density;
    }

    private static double Within(PropertyModel model, double temperature) =>
        Math.Min(model.Range.MaximumSaturationTemperature, Math.Max(model.Range.MinimumTemperature, temperature));
}
