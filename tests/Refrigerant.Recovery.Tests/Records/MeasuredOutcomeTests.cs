using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Tests.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>What was read takes the place of what a plan foresaw: a record never says both.</summary>
public class MeasuredOutcomeTests
{
    private static readonly string[] Foreseen = ["level-reached", "share-recovered", "level-not-reached", "level-not-held", "still-above-air"];

    /// <summary>R-32, down to the air (40 CFR 82.156 Table 1, high pressure, below 200 lb).</summary>
    private static readonly RecoveryPlan Plan = RecoveryPlanner.Plan(Jobs.Chiller("R-32", 10, cylinders: 1));

    /// <summary>A small appliance: 90 % of the charge or 4 inHg of vacuum (40 CFR 82.156(b)).</summary>
    private static readonly RecoveryPlan Small = RecoveryPlanner.Plan(Jobs.Chiller("R-134a", 0.6, 5, cylinders: 1) with
    {
        Evacuation = new EvacuationOptions { Appliance = ApplianceKind.Small, Purpose = OpeningPurpose.Disposal },
    });

    /// <summary>Above the level the plan's word goes, and with it what holds only once the level is reached.</summary>
    [Theory]
    [InlineData(-20, true)]
    [InlineData(5, false)]
    [InlineData(150, false)]
    public void A_gauge_above_the_level_leaves_nothing_of_the_planned_level(double kilopascals, bool reached)
    {
        Assert.Contains(Plan.Findings, finding => finding.Code == "level-reached");
        Assert.Contains(Plan.Findings, finding => finding.Code == "purge-before-flame");
        RecoveryRecord record = From(Plan, 9.9, kilopascals);
        Assert.Equal(reached, record.Level.IsReached);
        Assert.DoesNotContain(record.Findings, finding => Foreseen.Contains(finding.Code));
        Assert.Equal(!reached, record.Findings.Any(finding => finding.Code == "measured-above-level"));
        Assert.Equal(reached, record.Findings.Any(finding => finding.Code == "purge-before-flame"));
    }

    /// <summary>The share is that of the scale, not of the plan: nine tenths and not less, by weight alone as by weight beside a gauge above the level.</summary>
    [Theory]
    [InlineData(0.95, null, true)]
    [InlineData(0.79, null, false)]
    [InlineData(0.95, 50.0, true)]
    [InlineData(0.79, 50.0, false)]
    public void A_share_is_what_the_scale_gives(double share, double? kilopascals, bool reached)
    {
        Assert.Equal(LevelOutcome.ShareRecovered, Small.Verdict.Outcome);
        RecoveryRecord record = From(Small, share * 0.6, kilopascals);
        Assert.Equal(reached, record.Level.IsReached);
        FindingEntry? told = record.Findings.SingleOrDefault(finding => finding.Code == "share-recovered");
        Assert.Equal(reached, told is not null);
        Assert.Contains(reached ? FormattableString.Invariant($"{share * 100:F0} %") : string.Empty, told?.Message ?? string.Empty, StringComparison.Ordinal);
        Assert.Equal(!reached, record.Findings.Any(finding => finding.Code is "measured-above-level" or "level-not-shown"));
    }

    /// <summary>A valve that stayed shut: the machine runs to the end of the log, a quarter of the charge is missing on the scale, and nobody read the appliance at rest.</summary>
    [Theory]
    [InlineData(7.5, false)]
    [InlineData(9.8, true)]
    public void A_level_that_weights_do_not_bear_out_is_not_reached(double received, bool reached)
    {
        Mass before = Plan.Job.Cylinders[0].GrossWeight;
        JobReading At(double minutes, double kilograms) => new()
        {
            Time = Duration.FromMinutes(minutes),
            SuctionGaugePressure = Pressure.FromKilopascals(-60),
            GrossWeight = before + Mass.FromKilograms(kilograms),
            MachineRunning = true,
        };
        RecoveryRecord record = RecoveryRecord.From(Plan, RecoveryRecordTests.Facts with { Log = JobLog.FromReadings([At(0, 0), At(10, received), At(20, received)]) });
        Assert.False(record.IsLevelMeasured);
        Assert.Equal(reached, record.Level.IsReached);
        Assert.Equal(reached, record.Findings.Any(finding => finding.Code == "level-reached"));
        Assert.Equal(!reached, record.Findings.Any(finding => finding.Code == "level-not-shown"));
        FindingEntry? missing = record.Findings.SingleOrDefault(finding => finding.Code == "record-unexplained");
        Assert.Equal(reached, missing is null);
        Assert.Contains(reached ? string.Empty : "as liquid behind a shut valve", missing?.Message ?? string.Empty, StringComparison.Ordinal);
    }

    /// <summary>At 1800 m (81.5 kPa, U.S. Standard Atmosphere 1976) 2 kPa on the gauge are below the level of the law, and blow out.</summary>
    [Theory]
    [InlineData(2, true)]
    [InlineData(-1, false)]
    public void What_still_blows_out_is_told_at_altitude(double kilopascals, bool told)
    {
        var facts = RecoveryRecordTests.Facts with { GaugeReading = Pressure.FromKilopascals(kilopascals), Barometer = Barometer.AtElevation(Length.FromMeters(1800)) };
        RecoveryRecord record = RecoveryRecord.From(Plan, facts);
        Assert.True(record.Level.IsReached);
        FindingEntry? caution = record.Findings.SingleOrDefault(finding => finding.Code == "still-above-air");
        Assert.Equal(told ? Severity.Caution : null, caution?.Severity);
    }

    /// <summary>What a plan forbids stands where nothing that was read speaks against it: weights of a job whose cylinders were too few.</summary>
    [Fact]
    public void What_a_plan_forbids_stands_unless_it_was_read_otherwise()
    {
        RecoveryPlan few = RecoveryPlanner.Plan(Jobs.Chiller("R-32", 30, cylinders: 1) with { Cylinders = [Jobs.Cylinder(30, "C1")] });
        RecoveryRecord weighed = From(few, 8, null), read = From(few, 8, 1200);
        Assert.False(weighed.Level.IsReached || read.Level.IsReached);
        Assert.Contains(weighed.Findings, finding => finding is { Code: "level-not-reached", Severity: Severity.Stop });
        Assert.DoesNotContain(weighed.Findings, finding => finding.Code == "level-not-shown");
        Assert.DoesNotContain(read.Findings, finding => finding.Code == "level-not-reached");
        Assert.Contains(read.Findings, finding => finding.Code == "measured-above-level");
    }

    private static RecoveryRecord From(RecoveryPlan plan, double kilograms, double? kilopascals) => RecoveryRecord.From(plan, RecoveryRecordTests.Facts with
    {
        ScaleReadings = new Dictionary<string, Mass> { ["C1"] = plan.Job.Cylinders[0].GrossWeight + Mass.FromKilograms(kilograms) },
        GaugeReading = kilopascals is double gauge ? Pressure.FromKilopascals(gauge) : null,
    });
}
