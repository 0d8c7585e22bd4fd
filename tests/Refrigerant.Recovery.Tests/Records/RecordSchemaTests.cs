using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using Refrigerant.Recovery.Records;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>The published schema says what is written and read, no more and no less.</summary>
public class RecordSchemaTests
{
    private static readonly PublishedSchema Schema = new("recovery-record.schema.json");

    [Fact]
    public void A_written_record_fits_the_schema() => Assert.Empty(Schema.Breaches(RecoveryRecordJson.Write(RecoveryRecordTests.Measured())));

    [Theory]
    [InlineData("\"company\": \"Example Cooling\",", "", "$.company is missing")]
    [InlineData("\"company\": \"Example Cooling\",", "\"company\": 3,", "$.company is no string")]
    [InlineData("\"recoveredKilograms\": 18.6", "\"recoveredKilograms\": -1", "$.recoveredKilograms is below 0")]
    [InlineData("\"Reclamation\"", "\"Burning\"", "$.shipments[0].purpose is not in the list")]
    [InlineData("\"isDisposal\"", "\"disposal\"", "$.disposal is unknown")]
    [InlineData("2026-11-25\"", "25 November\"", "$.date is no date")]
    [InlineData("recovery-record/1", "recovery-record/2", "$.format is not refrigerant-recovery-record/1")]
    public void The_check_itself_finds_what_does_not_fit(string good, string bad, string breach) =>
        Assert.Contains(breach, Schema.Breaches(RecoveryRecordJson.Write(RecoveryRecordTests.Measured()).Replace(good, bad, StringComparison.Ordinal)));

    [Fact]
    public void The_schema_has_every_member_that_is_read_and_requires_the_same() => Schema.AssertMatches(DocumentWriter.TypeOf<RecoveryRecord>(), new()
    {
        ["cylinderEntry"] = DocumentWriter.TypeOf<CylinderEntry>(),
        ["findingEntry"] = DocumentWriter.TypeOf<FindingEntry>(),
        ["ledgerEntry"] = DocumentWriter.TypeOf<LedgerEntry>(),
        ["levelEntry"] = DocumentWriter.TypeOf<LevelEntry>(),
        ["loggedEntry"] = DocumentWriter.TypeOf<LoggedEntry>(),
        ["loggedPoint"] = DocumentWriter.TypeOf<LoggedPoint>(),
        ["ruleEntry"] = DocumentWriter.TypeOf<RuleEntry>(),
        ["shipmentEntry"] = DocumentWriter.TypeOf<ShipmentEntry>(),
    });

    /// <summary>What 40 CFR 82.156(a)(3) asks records to hold is there, required, and marked with the section.</summary>
    [Fact]
    public void What_the_regulation_asks_for_is_marked()
    {
        string[] marked = [.. Members(string.Empty, Schema.Root).Concat(Members("shipments.", Schema.Root.GetProperty("$defs").GetProperty("shipmentEntry")))];
        Assert.Equal(
            ["company", "location", "date", "refrigerant", "isDisposal", "recoveredKilograms", "shipments", "shipments.refrigerant", "shipments.kilograms", "shipments.purpose", "shipments.recipient", "shipments.date"],
            marked);

        static IEnumerable<string> Members(string prefix, JsonElement schema)
        {
            HashSet<string?> required = [.. schema.GetProperty("required").EnumerateArray().Select(item => item.GetString())];
            return schema.GetProperty("properties").EnumerateObject()
                .Where(member => required.Contains(member.Name) && member.Value.GetProperty("description").GetString()!.Contains("82.156(a)(3)", StringComparison.Ordinal))
                .Select(member => prefix + member.Name);
        }
    }
}
