using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Findings;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Each condition and each reading that was left out has its finding, with the severity that it deserves, and no other.</summary>
public class EstimateFindingsTests
{
    private static readonly Workbench Bench = new();

    private static readonly Dictionary<JobCondition, (FindingCode Code, Severity Severity)> Expected = new()
    {
        [JobCondition.ColdPool] = (ReadingCodes.ColdPool, Severity.Warning),
        [JobCondition.MachineUnderperforming] = (ReadingCodes.MachineWeak, Severity.Caution),
        [JobCondition.HoseBlocked] = (ReadingCodes.HoseBlocked, Severity.Warning),
        [JobCondition.ValveClosed] = (ReadingCodes.ValveClosed, Severity.Warning),
        [JobCondition.ScaleDisturbed] = (ReadingCodes.ScaleDisturbed, Severity.Caution),
        [JobCondition.GaugeInconsistent] = (ReadingCodes.GaugeDisagrees, Severity.Caution),
        [JobCondition.ForeignGas] = (ReadingCodes.AirComesIn, Severity.Warning),
        [JobCondition.LevelOutOfReach] = (ReadingCodes.LevelOutOfReach, Severity.Caution),
        [JobCondition.RestSuggested] = (ReadingCodes.RestTells, Severity.Note),
        [JobCondition.CylinderChanged] = (ReadingCodes.CylinderChanged, Severity.Note),
        [JobCondition.TareChanged] = (ReadingCodes.TareChanged, Severity.Note),
        [JobCondition.LiquidTransfer] = (ReadingCodes.LiquidMoves, Severity.Note),
        [JobCondition.ChargeInconsistent] = (ReadingCodes.ChargeDisagrees, Severity.Caution),
        [JobCondition.GaugeAbsolute] = (ReadingCodes.GaugeAbsolute, Severity.Caution),
        [JobCondition.WeightNet] = (ReadingCodes.WeightNet, Severity.Note),
        [JobCondition.CylinderInconsistent] = (ReadingCodes.CylinderUnlikeTold, Severity.Caution),
        [JobCondition.CylinderUnknown] = (ReadingCodes.CylinderUnknown, Severity.Warning),
        [JobCondition.CylinderLosesWeight] = (ReadingCodes.CylinderLosesWeight, Severity.Warning),
        [JobCondition.StandingPressureInconsistent] = (ReadingCodes.StandingPressureDisagrees, Severity.Caution),
    };

    /// <summary>A rest is asked for with the reason at hand: valves first where the gauge may not see the appliance.</summary>
    [Theory]
    [InlineData(true, 0.9, "every valve is open")]
    [InlineData(false, 0.9, "half an hour")]
    [InlineData(false, 0.5, "ten seconds to a minute")]
    public void A_rest_has_its_reason(bool isFall, double vapor, string says)
    {
        var estimate = new RawEstimate { IsFallOpen = isFall, VaporOnly = vapor };
        estimate.Set(JobCondition.RestSuggested, true);
        Finding finding = Assert.Single(EstimateFindings.Of(Bench.Job, in estimate, true));
        Assert.Contains(says, finding.ToString(), StringComparison.Ordinal);
    }

    /// <summary>A pressure that is too high may overfill a cylinder, one that is too low need not.</summary>
    [Theory]
    [InlineData(19, Severity.Warning, "warmer than told")]
    [InlineData(-19, Severity.Caution, "colder than told")]
    public void What_stands_too_high_weighs_more(double kelvins, Severity severity, string says)
    {
        var estimate = new RawEstimate { StandsOff = kelvins };
        estimate.Set(JobCondition.StandingPressureInconsistent, true);
        Finding finding = Assert.Single(EstimateFindings.Of(Bench.Job, in estimate, true));
        Assert.Equal(severity, finding.Severity);
        Assert.Contains(says, finding.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_condition_has_its_finding()
    {
        JobCondition[] all = Enum.GetValues<JobCondition>();
        Assert.Equal(all.Length, Expected.Count);
        Assert.Equal(JobConditions.Last, all.Max());
        Assert.Equal(JobConditions.Count, all.Length);
        foreach (JobCondition condition in all)
        {
            var estimate = default(RawEstimate);
            estimate.Set(condition, true);
            estimate.Set(JobCondition.ColdPool, false);
            foreach (JobCondition each in all)
            {
                Assert.Equal(each == condition, estimate.Has(each));
            }

            Finding finding = Assert.Single(EstimateFindings.Of(Bench.Job, in estimate, true));
            Assert.Equal(Expected[condition].Code.Id, finding.Code);
            Assert.Equal(Expected[condition].Severity, finding.Severity);
            Assert.NotEmpty(finding.Source);
        }

        var none = default(RawEstimate);
        Assert.Empty(EstimateFindings.Of(Bench.Job, in none, true));
        Assert.Throws<ArgumentOutOfRangeException>(() => none.Has((JobCondition)(-1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => none.Has(JobConditions.Last + 1));
    }

    [Theory]
    [InlineData(UnusedReadings.TimeNotANumber, "job-time-unused", "no number")]
    [InlineData(UnusedReadings.TimeJumped, "job-time-unused", "jumps ahead")]
    [InlineData(UnusedReadings.TimeNotLater, "job-time-unused", "not later")]
    [InlineData(UnusedReadings.GaugeNotANumber, "job-gauge-unused", "no number")]
    [InlineData(UnusedReadings.GaugeOutOfRange, "job-gauge-unused", "beyond what the gauge can show")]
    [InlineData(UnusedReadings.GaugeInconsistent, "job-gauge-unused", "does not agree")]
    [InlineData(UnusedReadings.GaugeStuck, "job-gauge-unused", "shows the same")]
    [InlineData(UnusedReadings.GaugeShutOff, "job-gauge-unused", "valve shut")]
    [InlineData(UnusedReadings.WeightNotANumber, "job-weight-unused", "no number")]
    [InlineData(UnusedReadings.WeightOutOfRange, "job-weight-unused", "beyond what a scale can show")]
    [InlineData(UnusedReadings.WeightJumped, "job-weight-unused", "jumped")]
    [InlineData(UnusedReadings.WeightInconsistent, "job-weight-unused", "another unit")]
    [InlineData(UnusedReadings.WeightStuck, "job-weight-unused", "shows the same")]
    [InlineData(UnusedReadings.TemperatureOutOfRange, "job-sensor-unused", "temperature")]
    [InlineData(UnusedReadings.DischargeOutOfRange, "job-sensor-unused", "discharge")]
    public void What_was_left_out_is_said(UnusedReadings what, string code, string words)
    {
        var estimate = new RawEstimate { NotUsed = what };
        Finding finding = Assert.Single(EstimateFindings.Of(Bench.Job, in estimate, true));
        Assert.Equal(code, finding.Code);
        Assert.Equal(Severity.Note, finding.Severity);
        Assert.Contains(words, finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void All_that_was_left_out_is_said_at_once()
    {
        var estimate = new RawEstimate { NotUsed = (UnusedReadings)0x7FFF };
        Assert.Equal(Enum.GetValues<UnusedReadings>().Length - 1, EstimateFindings.Of(Bench.Job, in estimate, true).Count);
    }

    [Fact]
    public void Oil_that_was_not_told_is_asked_for()
    {
        var estimate = default(RawEstimate);
        Finding finding = Assert.Single(EstimateFindings.Of(Bench.Job, in estimate, false));
        Assert.Equal(ReadingCodes.OilNotTold.Id, finding.Code);
        Assert.Equal(Severity.Note, finding.Severity);
    }

    /// <summary>From three in ten on that a cylinder fills is worth a word; at its limit it is to stop.</summary>
    [Theory]
    [InlineData(0.29, null)]
    [InlineData(0.31, Severity.Warning)]
    [InlineData(0.99, Severity.Warning)]
    [InlineData(1, Severity.Stop)]
    public void A_cylinder_that_fills_is_said(double probability, Severity? expected)
    {
        var estimate = new RawEstimate { CylinderLimitFirst = probability };
        IReadOnlyList<Finding> findings = EstimateFindings.Of(Bench.Job, in estimate, true);
        Assert.Equal(expected is null ? 0 : 1, findings.Count);
        if (expected is Severity severity)
        {
            Assert.Equal(severity, findings[0].Severity);
            Assert.Equal(ReadingCodes.CylinderFillsFirst.Id, findings[0].Code);
            Assert.Equal(severity == Severity.Stop, findings[0].Message.Contains("stop and change it", StringComparison.Ordinal));
        }
    }

    /// <summary>Over liquid a rest of a minute tells, of vapor alone one of half an hour.</summary>
    [Theory]
    [InlineData(0.5, "ten seconds to a minute")]
    [InlineData(0.79, "ten seconds to a minute")]
    [InlineData(0.82, "half an hour")]
    public void A_rest_is_as_long_as_it_must_be(double vapor, string words)
    {
        var estimate = new RawEstimate { VaporOnly = vapor };
        estimate.Set(JobCondition.RestSuggested, true);
        Assert.Contains(words, Assert.Single(EstimateFindings.Of(Bench.Job, in estimate, true)).Message, StringComparison.Ordinal);
    }
}
