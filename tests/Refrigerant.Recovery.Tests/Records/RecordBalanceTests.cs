using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Tests.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>A record says where its masses cannot be.</summary>
public class RecordBalanceTests
{
    private static readonly RecoveryPlan Plan = RecoveryPlanner.Plan(Jobs.Chiller(kilograms: 30, cylinders: 1));

    /// <summary>Weighed with 30 kg, half as much or half as much again of a charge of 30 kg: only what fits within a tenth goes without a word.</summary>
    [Theory]
    [InlineData(29, null)]
    [InlineData(15, "in no account")]
    [InlineData(45, "more than the charge")]
    public void What_cannot_be_is_said(double received, string? said)
    {
        RecoveryRecord record = RecoveryRecord.From(Plan, new RecordFacts
        {
            Company = "Example Cooling",
            Location = "12 Sample Street",
            Date = new DateTime(2026, 11, 27),
            ScaleReadings = new Dictionary<string, Mass> { ["C1"] = Plan.Job.Cylinders[0].TareWeight + Mass.FromKilograms(received) },
        });
        FindingEntry? finding = record.Findings.SingleOrDefault(entry => entry.Code == "record-unexplained");
        Assert.Equal(said is null, finding is null);
        Assert.Contains(said ?? string.Empty, finding?.Message ?? string.Empty, StringComparison.Ordinal);
    }
}
