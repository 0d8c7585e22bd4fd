using System;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Estimation.Calibration;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
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

    /// <summary>What is fitted is displacement times efficiency: of a machine of 80 % told with the same displacement it is that displacement all the same.</summary>
    [Fact]
    public void The_displacement_is_that_before_the_efficiency()
    {
        RecoveryJob job = LogParts.Job with { Machine = LogParts.Job.Machine with { VolumetricEfficiency = 0.8 } };
        JobCalibration fit = JobCalibration.Fit(job, Log(0));
        Assert.Equal(5e-4, fit.Displacement.Told.CubicMetersPerSecond, 1e-9);
        Assert.Equal(5e-4, fit.Displacement.Best.CubicMetersPerSecond, 0.05 * 5e-4);
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

    /// <summary>
    /// Bayes: the fit weighed data of variance v against the prior σ², c = v/(σ² + v) of which is left; the data with what the blocks show, b·σ²/(1 − c)², and the floor on top are weighed anew.
    /// </summary>
    [Fact]
    public void What_the_log_tells_is_weighed_against_what_was_told()
    {
        var bench = new Parts.Workbench();
        var truth = new Parts.OwnTruth(bench, 0.95) { Machine = 0.85 };
        JobLog log = LogParts.Every(5, 100, t =>
        {
            EstimatorBlock block = truth.Next(5);
            return LogParts.At(t, block.Gauge, 13.5 + block.Delivered);
        });
        JobCalibration found = JobCalibration.Fit(LogParts.Job, log);
        CalibrationFit fit = CalibrationFit.Run([new LoggedJob(LogParts.Job, log)], new CalibrationOptions(), default);
        foreach ((int index, double floor, double low, double best, double high, double kept) in new[]
        {
            (FitIndex.Displacement, 0.05, found.Displacement.Low.CubicMetersPerSecond, found.Displacement.Best.CubicMetersPerSecond, found.Displacement.High.CubicMetersPerSecond, found.Displacement.SpreadKept.DecimalFractions),
            (FitIndex.Hose, 0.15, found.HoseResistance.Low, found.HoseResistance.Best, found.HoseResistance.High, found.HoseResistance.SpreadKept.DecimalFractions),
            (FitIndex.Set(0) + FitIndex.Charge, 0.015, found.Appliances[0].Charge.Low.Kilograms, found.Appliances[0].Charge.Best.Kilograms, found.Appliances[0].Charge.High.Kilograms, found.Appliances[0].Charge.SpreadKept.DecimalFractions),
            (FitIndex.Set(0) + FitIndex.Volume, 0.2, found.Appliances[0].InternalVolume.Low.CubicMeters, found.Appliances[0].InternalVolume.Best.CubicMeters, found.Appliances[0].InternalVolume.High.CubicMeters, found.Appliances[0].InternalVolume.SpreadKept.DecimalFractions),
        })
        {
            double c = fit.Curvature[index];
            Assert.InRange(c, 0, 0.999);
            double prior = Math.Pow(fit.Prior.Sigma[index], 2);
            double told = fit.Prior.Mean[index];
            double data = told + ((fit.Values[index] - told) / (1 - c));
            double variance = (prior * c / (1 - c)) + (fit.Blocks[index] * prior / Math.Pow(1 - c, 2)) + (floor * floor);
            double mean = ((told / prior) + (data / variance)) / ((1 / prior) + (1 / variance));
            double sigma = Math.Sqrt(1 / ((1 / prior) + (1 / variance)));
            double efficiency = index == FitIndex.Displacement ? LogParts.Job.Machine.VolumetricEfficiency : 1;
            Assert.Equal(Math.Exp(mean), best * efficiency, 1e-6 * Math.Exp(mean));
            Assert.Equal(Math.Exp(mean - (1.6448536 * sigma)), low * efficiency, 1e-5 * Math.Exp(mean));
            Assert.Equal(Math.Exp(mean + (1.6448536 * sigma)), high * efficiency, 1e-5 * Math.Exp(mean));
            Assert.Equal(sigma / Math.Sqrt(prior), kept, 1e-6);
        }

        // The machine draws 85 % of what was told: found, and planned with.
        Assert.True(found.Displacement.IsIdentified);
        Assert.Equal(0.85, found.Displacement.Best / found.Displacement.Told, 0.06);
        Assert.Equal(found.Displacement.Best.CubicMetersPerSecond, found.Jobs[0].Machine.Displacement.CubicMetersPerSecond, 1e-12);
        Assert.Equal(fit.Misfit, found.Misfit, 1e-12);
        Assert.InRange(found.Misfit, 0, 0.3);
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
