using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json.Nodes;
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

public class RecoveryRecordTests
{
    /// <summary>A disposal with 20 kg (44 lb), within the 5 to 50 lb of 40 CFR 82.156(a)(3).</summary>
    private static readonly RecoveryPlan Plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 20, cylinders: 2) with
    {
        Evacuation = new EvacuationOptions { Purpose = OpeningPurpose.Disposal },
        Barometer = Barometer.AtElevation(Length.FromMeters(500)),
    });

    internal static RecordFacts Facts { get; } = new()
    {
        Company = "Example Cooling",
        Location = "12 Sample Street",
        Date = new DateTime(2026, 11, 25),
    };

    internal static RecoveryRecord Measured() => RecoveryRecord.From(Plan, Facts with
    {
        CompletedAt = new DateTimeOffset(2026, 11, 25, 14, 30, 0, TimeSpan.FromHours(-7)),
        Technician = "A. Technician",
        Appliance = "chiller 2",
        ScaleReadings = new Dictionary<string, Mass> { ["C1"] = Before("C1") + Mass.FromKilograms(18.6) },
        GaugeReading = -Mercury.FromInches(9),
        Shipments =
        [
            new ShipmentEntry
            {
                Refrigerant = "R-134a", Kilograms = 18.6, Purpose = ShipmentPurpose.Reclamation, Recipient = "Example Reclaim", Date = new DateTime(2026, 12, 3),
            },
        ],
    });

    [Fact]
    public void A_record_of_a_plan_says_what_was_planned()
    {
        RecoveryRecord record = RecoveryRecord.From(Plan, Facts);
        Assert.Equal(Plan.Ledger.InCylinders.Kilograms, record.RecoveredKilograms, 1e-9);
        Assert.Equal((false, false, true), (record.IsRecoveredMeasured, record.IsLevelMeasured, record.IsDisposal));
        Assert.Equal(Plan.Ledger.InAppliance.Kilograms, record.ResidualKilograms, 1e-9);
        Assert.Equal(Plan.Cylinders.Count(use => use.Received.Kilograms > 0), record.Cylinders.Count);
        Assert.Equal(0, record.Ledger.UnexplainedKilograms, 1e-6);
    }

    [Fact]
    public void Scale_and_gauge_replace_what_was_planned()
    {
        RecoveryRecord record = Measured();
        Assert.Equal(18.6, record.RecoveredKilograms, 1e-9);
        Assert.Equal("C1", Assert.Single(record.Cylinders).Label);
        Assert.True(record.IsRecoveredMeasured && record.IsLevelMeasured);

        // 9 inHg below the air at 500 m (95.46 kPa, U.S. Standard Atmosphere) is 64.98 kPa, below the 67.39 kPa of 40 CFR 82.156 for R-134a.
        Assert.Equal(64.98, record.Level.ReachedKilopascalsAbsolute, 0.01);
        Assert.True(record.Level.IsReached);
        LedgerEntry ledger = record.Ledger;
        Assert.Equal(
            ledger.ChargeKilograms,
            ledger.InCylindersKilograms + ledger.VaporInApplianceKilograms + ledger.LiquidInApplianceKilograms + ledger.InOilKilograms
            + ledger.InHosesAndMachineKilograms + ledger.ReleasedKilograms + ledger.UnexplainedKilograms,
            1e-9);
    }

    [Fact]
    public void A_level_that_the_gauge_does_not_show_is_not_reached_whatever_was_planned()
    {
        RecoveryRecord record = RecoveryRecord.From(Plan, Facts with { GaugeReading = -Mercury.FromInches(5) });
        Assert.True(Plan.IsLevelReached);
        Assert.False(record.Level.IsReached);
        Assert.Contains(record.Findings, f => f.Subject == FindingSubject.EvacuationLevel && f.Severity == Severity.Warning);
    }

    [Fact]
    public void An_overfilled_cylinder_on_the_scale_is_told()
    {
        Mass gross = Plan.Cylinders.Single(use => use.Cylinder.Label == "C1").Limit.MaximumGrossWeight + Mass.FromKilograms(0.1);
        RecoveryRecord record = RecoveryRecord.From(Plan, Facts with { ScaleReadings = new Dictionary<string, Mass> { ["C1"] = gross } });
        Assert.Contains(record.Findings, f => f.Subject == FindingSubject.CylinderOverfill && f.Severity == Severity.Stop);
    }

    [Fact]
    public void Readings_that_cannot_be_are_argument_errors()
    {
        Assert.Throws<ArgumentException>(() => Weighed("C9", Mass.FromKilograms(50)));
        Assert.Throws<ArgumentException>(() => Weighed("C1", Before("C1") - Mass.FromKilograms(1)));
        Assert.Equal("GaugeReading", Assert.Throws<ArgumentOutOfRangeException>(() => RecoveryRecord.From(Plan, Facts with { GaugeReading = -Mercury.FromInches(40) })).ParamName);
    }

    /// <summary>40 CFR 82.156(a)(3): a full charge of more than 5 lb and less than 50 lb, at disposal, for three years.</summary>
    [Theory]
    [InlineData(20, true, true)]
    [InlineData(20, false, false)]
    [InlineData(2.2, true, false)]
    [InlineData(23, true, false)]
    public void Only_the_disposals_that_the_regulation_names_must_be_kept(double kilograms, bool disposal, bool kept)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: kilograms) with
        {
            Evacuation = new EvacuationOptions { Purpose = disposal ? OpeningPurpose.Disposal : OpeningPurpose.MajorRepair },
        });
        Assert.Equal(kept ? new DateTime(2029, 11, 25) : null, RecoveryRecord.From(plan, Facts).KeepUntil);
    }

    [Fact]
    public void A_record_survives_the_round_trip()
    {
        foreach (RecoveryRecord record in new[] { Measured(), RecoveryRecord.From(Plan, Facts) })
        {
            string json = RecoveryRecordJson.Write(record);
            RecoveryRecord read = RecoveryRecordJson.Read(json);
            Assert.Equivalent(record, read, strict: true);
            Assert.Equal(json, RecoveryRecordJson.Write(read));
        }
    }

    [Theory]
    [InlineData("company")]
    [InlineData("location")]
    [InlineData("date")]
    [InlineData("refrigerant")]
    [InlineData("recoveredKilograms")]
    [InlineData("shipments")]
    public void A_record_without_what_the_regulation_asks_for_is_not_read(string name)
    {
        JsonObject document = JsonNode.Parse(RecoveryRecordJson.Write(Measured()))!.AsObject();
        Assert.True(document.Remove(name));
        Assert.Equal("$." + name, Assert.Throws<DocumentException>(() => RecoveryRecordJson.Read(document.ToJsonString())).Path);
    }

    [Fact]
    public void Records_add_up_by_month_and_refrigerant()
    {
        RecoveryRecord record = Measured();
        RecoveryRecord[] records =
        [
            record, record with { RecoveredKilograms = 1.4 }, record with { Refrigerant = "R-22", RecoveredKilograms = 3 },
            record with { Date = new DateTime(2026, 12, 1), RecoveredKilograms = 5 }, record with { IsDisposal = false, RecoveredKilograms = 100 },
        ];
        Assert.Equal(
            [(2026, 11, "R-134a", 20.0, 2), (2026, 11, "R-22", 3.0, 1), (2026, 12, "R-134a", 5.0, 1)],
            MonthlyTotal.From(records).Select(total => (total.Year, total.Month, total.Refrigerant, Math.Round(total.Kilograms, 9), total.Records)));
        Assert.Equal(120, MonthlyTotal.From(records, disposalsOnly: false)[0].Kilograms, 1e-9);
        Assert.Throws<ArgumentNullException>(() => MonthlyTotal.From([null!]));
    }

    private static Mass Before(string label) => Plan.Job.Cylinders.Single(cylinder => cylinder.Label == label).GrossWeight;

    private static RecoveryRecord Weighed(string label, Mass gross) =>
        RecoveryRecord.From(Plan, Facts with { ScaleReadings = new Dictionary<string, Mass> { [label] = gross } });

    [Fact]
    public void A_logged_job_is_its_record_planned_beside_measured()
    {
        Mass before = Before("C1");
        JobReading At(double minutes, double kilopascals, double kilograms, bool running) => new()
        {
            Time = Duration.FromMinutes(minutes),
            SuctionGaugePressure = Pressure.FromKilopascals(kilopascals),
            GrossWeight = before + Mass.FromKilograms(kilograms),
            MachineRunning = running,
        };
        JobLog log = JobLog.FromReadings([At(0, 400, 0, true), At(10, 200, 11, true), At(20, 50, 17, true), At(30, -40, 18.5, true), At(31, -40, 18.6, false), At(41, -31, 18.6, false)]);
        RecoveryRecord record = RecoveryRecord.From(Plan, Facts with { Log = log });
        Assert.True(record.IsRecoveredMeasured);
        Assert.True(record.IsLevelMeasured);
        Assert.Equal(18.6, record.RecoveredKilograms, 1e-9);
        Assert.Equal((Plan.Job.Barometer.Pressure.Pascals / 1e3) - 31, record.Level.ReachedKilopascalsAbsolute, 1e-6);
        LoggedEntry logged = record.Logged!;
        Assert.Equal((6, 2460, 1860), (logged.Readings, logged.DurationSeconds, logged.MachineSeconds));
        Assert.Equal(11, logged.Course[1].MeasuredRecoveredKilograms!.Value, 1e-9);
        Assert.InRange(logged.Course[1].PlannedRecoveredKilograms!.Value, 0.1, 20);
        Assert.Equal(RecoveryRecordJson.Write(record), RecoveryRecordJson.Write(RecoveryRecordJson.Read(RecoveryRecordJson.Write(record))));
        Assert.Empty(new PublishedSchema("recovery-record.schema.json").Breaches(RecoveryRecordJson.Write(record)));
    }
}
