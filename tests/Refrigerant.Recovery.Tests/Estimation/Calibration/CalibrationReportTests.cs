using System;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Findings;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>A log in which the machine stands: saturation at the temperature told, and a weight that stays.</summary>
public class CalibrationReportTests
{
    private static readonly double Root3 = Math.Sqrt(3);
    private static readonly Lazy<JobCalibration> Still = new(() => JobCalibration.Fit(LogParts.Job, Log(0)));

    /// <summary>It tells nothing of machine, hose, charge and metal: they stay as told, with the range that they had, 1.645 standard deviations to either side of the logarithm.</summary>
    [Fact]
    public void What_the_log_cannot_tell_stays_as_told()
    {
        JobCalibration fit = Still.Value;
        Range(fit.Displacement.Told.CubicMetersPerSecond, fit.Displacement.Low.CubicMetersPerSecond, fit.Displacement.Best.CubicMetersPerSecond, fit.Displacement.High.CubicMetersPerSecond, 5e-4, Root(0.25 / Root3, 0.1));
        Range(fit.ClearanceRatio.Told, fit.ClearanceRatio.Low, fit.ClearanceRatio.Best, fit.ClearanceRatio.High, LogParts.Job.Machine.ClearanceRatio, 0.5);
        Range(fit.HoseResistance.Told, fit.HoseResistance.Low, fit.HoseResistance.Best, fit.HoseResistance.High, 1, Root(0.9 / Root3, 0.3));
        FittedAppliance appliance = fit.Appliances[0];
        Range(appliance.Charge.Told.Kilograms, appliance.Charge.Low.Kilograms, appliance.Charge.Best.Kilograms, appliance.Charge.High.Kilograms, 6, 0.25 / Root3);
        Range(appliance.MetalMass.Told.Kilograms, appliance.MetalMass.Low.Kilograms, appliance.MetalMass.Best.Kilograms, appliance.MetalMass.High.Kilograms, 20_000 / 480.0, Root(0.9 / Root3, 0.3));
        Range(appliance.HeatResistance.Told.SquareMeterKelvinsPerWatt, appliance.HeatResistance.Low.SquareMeterKelvinsPerWatt, appliance.HeatResistance.Best.SquareMeterKelvinsPerWatt, appliance.HeatResistance.High.SquareMeterKelvinsPerWatt, 1 / 40.0, Root(0.9 / Root3, 0.3));
        Assert.InRange(fit.Misfit, 0, 0.5);
        Assert.False(fit.Displacement.IsIdentified || fit.HoseResistance.IsIdentified || appliance.Charge.IsIdentified);
    }

    [Fact]
    public void Each_is_said_with_what_would_tell_it_and_the_plan_is_as_told()
    {
        JobCalibration fit = Still.Value;
        string[] untold = [.. fit.Findings.Where(f => f.Code == ReadingCodes.FitUntold.Id).Select(f => f.Message)];
        foreach (string what in new[] { "the hoses' resistance", "the displacement", "the clearance", "the charge", "the internal volume", "the heat exchange", "the metal" })
        {
            Assert.Single(untold, message => message.StartsWith($"The log could not tell {what}:", StringComparison.Ordinal));
        }

        Assert.DoesNotContain(fit.Findings, f => f.Severity >= Severity.Warning);
        Assert.Equal(LogParts.Job.Machine, fit.Jobs[0].Machine);
        Assert.Equal(LogParts.Job.Appliance.Charge, fit.Jobs[0].Appliance.Charge);
        Assert.Equal(LogParts.Job.Appliance.InternalVolume, fit.Jobs[0].Appliance.InternalVolume);
        Assert.Equal(LogParts.Job.Appliance.MetalMass, fit.Jobs[0].Appliance.MetalMass);
        Assert.Equal(50, fit.Jobs[0].Hoses.VaporSide[0].InnerDiameter.Millimeters, 1e-3);
    }

    /// <summary>A gauge that stands 250 kPa too high or too low: said with its sign and how far its class lets it be off, and nothing is planned with.</summary>
    [Theory]
    [InlineData(250e3, "high")]
    [InlineData(-250e3, "low")]
    public void A_gauge_that_is_off_is_said(double off, string word)
    {
        JobCalibration fit = JobCalibration.Fit(LogParts.Job, Log(off));
        Finding finding = Assert.Single(fit.Findings, f => f.Code == ReadingCodes.FitGaugeOff.Id);
        Assert.Contains($"too {word} by the fit", finding.Message, StringComparison.Ordinal);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(fit.Findings.Max(f => f.Severity), fit.Findings[0].Severity);
    }

    private static JobLog Log(double off)
    {
        double gauge = LogParts.Job.Appliance.Fluid.Model.SaturationAtTemperature(295).Dew.Pressure - 1e5 + off;
        return LogParts.Every(5, 40, t => LogParts.At(t, gauge, 13.5, isRunning: false));
    }

    private static double Root(double a, double b) => Math.Sqrt((a * a) + (b * b));

    /// <summary>To what a bound on what can be, and a log that tells next to nothing, change.</summary>
    private static void Range(double told, double low, double best, double high, double expected, double sigma)
    {
        double reach = Math.Exp(1.6448536 * sigma);
        Assert.Equal(expected, told, 1e-6 * expected);
        Assert.Equal(expected, best, 0.05 * expected);
        Assert.Equal(expected / reach, low, 0.06 * expected);
        Assert.Equal(expected * reach, high, 0.08 * expected * reach);
    }
}
