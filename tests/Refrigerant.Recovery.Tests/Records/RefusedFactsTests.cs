using System;
using System.Text.Json.Nodes;
using Refrigerant.Recovery.Records;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>Facts of a record that say nothing, blank texts and days that were not given, are refused where they are made and where they are read.</summary>
public class RefusedFactsTests
{
    private static readonly DateTime Day = new(2026, 11, 25);

    [Fact]
    public void A_shipment_names_refrigerant_recipient_and_day()
    {
        foreach (string blank in new[] { "", " " })
        {
            Assert.Equal("Refrigerant", Assert.Throws<ArgumentException>(() => new ShipmentEntry(blank, 1, ShipmentPurpose.Destruction, "Example Reclaim", Day)).ParamName);
            Assert.Equal("Recipient", Assert.Throws<ArgumentException>(() => new ShipmentEntry("R-22", 1, ShipmentPurpose.Destruction, blank, Day)).ParamName);
        }

        Assert.Equal("Date", Assert.Throws<ArgumentException>(() => new ShipmentEntry("R-22", 1, ShipmentPurpose.Destruction, "Example Reclaim", default)).ParamName);
        Assert.Equal("Date", Assert.Throws<ArgumentException>(() => new RecordFacts("Example Cooling", "12 Sample Street", default)).ParamName);
    }

    [Fact]
    public void A_record_that_is_none_is_told_by_its_place() => Assert.Contains(
        "records[1] is null", Assert.Throws<ArgumentNullException>(() => MonthlyTotal.From([RecoveryRecordTests.Measured(), null!])).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("refrigerant", " ")]
    [InlineData("recipient", "")]
    [InlineData("date", "0001-01-01")]
    public void A_record_with_such_a_shipment_is_told_by_path(string member, string value)
    {
        JsonNode record = JsonNode.Parse(RecoveryRecordJson.Write(RecoveryRecordTests.Measured()))!;
        record["shipments"]![0]![member] = value;
        DocumentException error = Assert.Throws<DocumentException>(() => RecoveryRecordJson.Read(record.ToJsonString()));
        Assert.Equal("$.shipments[0]." + member, error.Path);
    }
}
