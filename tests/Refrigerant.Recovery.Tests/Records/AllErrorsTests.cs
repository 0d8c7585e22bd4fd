using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json.Nodes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Tests.Planning;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>A document with several things wrong is told each of them, and nothing else.</summary>
public class AllErrorsTests
{
    /// <summary>Where something is put, what, and where its error is told.</summary>
    private static readonly (string At, string Json, string Path)[] Defects =
    [
        ("$.appliance.refrigerant", "\"R-999\"", "$.appliance.refrigerant"),
        ("$.appliance.chargeKilograms", "-1", "$.appliance.chargeKilograms"),
        ("$.appliance.temperatureCelsius", "\"warm\"", "$.appliance.temperatureCelsius"),
        ("$.appliance.oil.solubilityFactor", "99", "$.appliance.oil.solubilityFactor"),
        ("$.appliance.water.massKilograms", "null", "$.appliance.water"),
        ("$.appliance.sections[0].name", "\"\"", "$.appliance.sections[0].name"),
        ("$.appliance.connections[0].flowCoefficient", "0", "$.appliance.connections[0].flowCoefficient"),
        ("$.machine.clearanceRatio", "0.9", "$.machine.clearanceRatio"),
        ("$.machine.condenser.cooling", "\"Ice\"", "$.machine.condenser.cooling"),
        ("$.machine.hasBody", "false", "$.machine.hasBody"),
        ("$.hoses.vaporSide[0].lengthMeters", "0", "$.hoses.vaporSide[0].lengthMeters"),
        ("$.hoses.vaporSide[0].fittings[0]", "{}", "$.hoses.vaporSide[0].fittings[0]"),
        ("$.cylinders[0].mark", "\"9ZZ\"", "$.cylinders[0].mark"),
        ("$.cylinders[0].requalificationDue", "\"soon\"", "$.cylinders[0].requalificationDue"),
        ("$.cylinders[1].contentKilograms", "\"much\"", "$.cylinders[1].contentKilograms"),
        ("$.barometer.elevationMeters", "99999", "$.barometer.elevationMeters"),
        ("$.evacuation.rules", "\"Atlantis\"", "$.evacuation.rules"),
        ("$.evacuation.normalTemperatureCelsius", "true", "$.evacuation.normalTemperatureCelsius"),
        ("$.times.holdMinutes", "-5", "$.times.holdMinutes"),
        ("$.aids.heaterWatts", "1e9", "$.aids.heaterWatts"),
        ("$.machinePast.refrigerant", "\"R-999\"", "$.machinePast.refrigerant"),
        ("$.maximumPulls", "1.5", "$.maximumPulls"),
        ("$.format", "\"another/1\"", "$.format"),
    ];

    private static readonly string Full = RecoveryJobJson.Write(FullJob.Create());

    /// <summary>What excludes each other, and labels that are given twice, are told beside what is wrong around them.</summary>
    [Fact]
    public void Contradictions_are_told_beside_other_errors()
    {
        JsonNode job = JsonNode.Parse(Full)!;
        job["cylinders"]![1]!["label"] = "C1";
        job["cylinders"]![1]!["mark"] = "4BA400";
        job["cylinders"]![2]!["tareWeightKilograms"] = "light";
        job["appliance"]!["sections"]![1]!["name"] = "evaporator";
        job["appliance"]!["sections"]![0]!["chargeKilograms"] = -1;
        job["appliance"]!["blend"] = new JsonObject { ["components"] = new JsonArray() };
        job["appliance"]!["water"]!["flowKilogramsPerSecond"] = 1;
        job["appliance"]!["water"]!["temperatureCelsius"] = 1000;
        job["barometer"] = new JsonObject { ["elevationMeters"] = 99999, ["pressureKilopascalsAbsolute"] = 95 };
        job["evacuation"]!["ownRules"] = new JsonObject { ["place"] = "here", ["levelKilopascalsAbsolute"] = 0, ["source"] = "contract" };
        job["hoses"]!["vaporSide"]![0]!["fittings"]![1]!["lossCoefficient"] = "much";
        Assert.False(RecoveryJobJson.TryRead(job.ToJsonString(), out _, out IReadOnlyList<DocumentError> errors));
        Assert.Equal(
            [
                "$.appliance", "$.appliance.blend", "$.appliance.sections[0].chargeKilograms", "$.appliance.sections[1].name", "$.appliance.water", "$.appliance.water.temperatureCelsius",
                "$.barometer", "$.barometer.elevationMeters", "$.cylinders[1]", "$.cylinders[1].label", "$.cylinders[2].tareWeightKilograms", "$.evacuation",
                "$.evacuation.ownRules", "$.evacuation.ownRules.levelKilopascalsAbsolute", "$.hoses.vaporSide[0].fittings[1]", "$.hoses.vaporSide[0].fittings[1].lossCoefficient",
            ],
            errors.Select(error => error.Path).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Each_alone_is_told_alone()
    {
        foreach ((string at, string json, string path) in Defects)
        {
            Assert.Equal([path], Paths([(at, json, path)]));
        }
    }

    [Property(MaxTest = 300)]
    public bool Several_are_told_each_and_nothing_else(NonEmptyArray<PositiveInt> chosen)
    {
        (string At, string Json, string Path)[] defects = [.. chosen.Get.Select(i => Defects[i.Get % Defects.Length]).Distinct()];
        return defects.Select(d => d.Path).Order(StringComparer.Ordinal).SequenceEqual(Paths(defects));
    }

    [Fact]
    public void All_at_once_are_told_all() =>
        Assert.Equal(Defects.Select(d => d.Path).Order(StringComparer.Ordinal), Paths(Defects));

    [Theory]
    [InlineData("name[0]")]
    [InlineData("refrigerant.")]
    [InlineData("[")]
    [InlineData(".")]
    [InlineData("")]
    public void A_member_that_no_document_has_is_told_whatever_its_name(string name)
    {
        JsonNode job = JsonNode.Parse(Full)!;
        job["appliance"]!["sections"]![0]![name] = 1;
        job["machine"]!["clearanceRatio"] = 7;
        Assert.False(RecoveryJobJson.TryRead(job.ToJsonString(), out _, out IReadOnlyList<DocumentError> errors));
        Assert.Equal(["$.appliance.sections[0]." + name, "$.machine.clearanceRatio"], errors.Select(error => error.Path).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Labels_given_twice_are_told_beside_what_else_is_wrong()
    {
        JsonNode job = JsonNode.Parse(Full)!;
        job["cylinders"]![1]!["label"] = (string)job["cylinders"]![0]!["label"]!;
        job["machine"]!["clearanceRatio"] = 7;
        Assert.False(RecoveryJobJson.TryRead(job.ToJsonString(), out _, out IReadOnlyList<DocumentError> errors));
        Assert.Equal(["$.cylinders[1].label", "$.machine.clearanceRatio"], errors.Select(error => error.Path).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("$.appliance.chargeKilograms", "\"much\"", "it must be a number, from 1E-06 to 1000000.")]
    [InlineData("$.maximumPulls", "2.5", "it must be a whole number, from 1 to 50.")]
    [InlineData("$.evacuation.lowestAttainableKilopascalsAbsolute", "[]", "it must be a number, greater than 0.")]
    public void A_wrong_type_is_told_the_range(string at, string json, string reason)
    {
        Assert.False(RecoveryJobJson.TryRead(With(Full, at, json), out _, out IReadOnlyList<DocumentError> errors));
        Assert.EndsWith(reason, Assert.Single(errors).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_values_of_one_entry_of_a_plan_are_told_both()
    {
        string plan = RecoveryPlanJson.Write(RecoveryPlanner.Plan(Jobs.Chiller()));
        string bad = With(With(plan, "$.ledger.chargeKilograms", "-1"), "$.ledger.releasedKilograms", "-2");
        Assert.False(RecoveryPlanJson.TryRead(bad, out _, out IReadOnlyList<DocumentError> errors));
        Assert.Equal(["$.ledger.chargeKilograms", "$.ledger.releasedKilograms"], errors.Select(error => error.Path).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_reading_of_a_log_is_looked_at()
    {
        const string Log = """
            { "format": "refrigerant-recovery-log/1", "readings": [ { "timeSeconds": 0 }, { "timeSeconds": 5, "grossKilograms": -1, "ambientCelsius": 900 },
              { "timeSeconds": 4 }, { "timeSeconds": 6, "suctionGaugeKilopascals": "low" }, { "timeSeconds": 6 } ] }
            """;
        Assert.False(JobLogJson.TryRead(Log, out _, out IReadOnlyList<DocumentError> errors));
        Assert.Equal(
            ["$.readings[1].ambientCelsius", "$.readings[1].grossKilograms", "$.readings[3].suctionGaugeKilopascals"],
            errors.Select(error => error.Path).Order(StringComparer.Ordinal));
        Assert.False(JobLogJson.TryRead(Log.Replace("\"low\"", "7", StringComparison.Ordinal).Replace(", \"grossKilograms\": -1, \"ambientCelsius\": 900", "", StringComparison.Ordinal), out _, out errors));
        Assert.Equal(["$.readings[2].timeSeconds", "$.readings[4].timeSeconds"], errors.Select(error => error.Path));
    }

    [Fact]
    public void Every_bad_line_of_a_CSV_log_is_told()
    {
        const string Log = "time [s],suction gauge [kPa],gross weight [kg]\n0,1,20\n1,low,-5\n2,1\n,1,20\n3,1,20\n2,1,20\n4,1,20\n";
        Assert.False(JobLogCsv.TryRead(Log, out JobLog? log, out IReadOnlyList<DocumentError> errors));
        Assert.Null(log);
        Assert.Equal(["line 3, suction gauge", "line 3, gross weight", "line 4", "line 5, time", "line 7, time"], errors.Select(error => error.Path));
        Assert.Equal(errors, Assert.Throws<DocumentException>(() => JobLogCsv.Read(Log)).Errors);
        Assert.True(JobLogCsv.TryRead("time [s]\n0\n1\n", out log, out errors));
        Assert.Equal(2, log.Readings.Count);
        Assert.Empty(errors);
        Assert.False(JobLogCsv.TryRead("time [s]\n" + string.Concat(Enumerable.Repeat("x\n", 5000)), out _, out errors));
        Assert.Equal(1000, errors.Count);
    }

    private static string[] Paths(IEnumerable<(string At, string Json, string Path)> defects)
    {
        string job = defects.Aggregate(Full, (text, defect) => With(text, defect.At, defect.Json));
        return RecoveryJobJson.TryRead(job, out _, out IReadOnlyList<DocumentError> errors) ? [] : [.. errors.Select(error => error.Path).Order(StringComparer.Ordinal)];
    }

    /// <summary>The document with another value at a place.</summary>
    private static string With(string text, string at, string json)
    {
        JsonNode root = JsonNode.Parse(text)!;
        JsonNode here = root;
        string[] steps = at.Substring(2).Replace("[", ".[", StringComparison.Ordinal).Split('.');
        for (int i = 0; i < steps.Length; i++)
        {
            bool isItem = steps[i][0] == '[';
            int index = isItem ? int.Parse(steps[i].Trim('[', ']'), System.Globalization.CultureInfo.InvariantCulture) : 0;
            if (i < steps.Length - 1)
            {
                here = (isItem ? here[index] : here[steps[i]])!;
            }
            else if (isItem)
            {
                here[index] = JsonNode.Parse(json);
            }
            else
            {
                here[steps[i]] = JsonNode.Parse(json);
            }
        }

        return root.ToJsonString();
    }
}
