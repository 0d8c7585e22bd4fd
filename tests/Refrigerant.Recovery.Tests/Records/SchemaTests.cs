using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Records.Jobs;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>The published schemas are those of the types; RECOVERY_SCHEMAS=folder writes them anew.</summary>
public class SchemaTests
{
    private const string FolderVariable = "RECOVERY_SCHEMAS";

    public static TheoryData<string> Kinds => ["job", "log", "plan", "record"];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_published_schema_is_that_of_the_types(string kind)
    {
        string file = $"recovery-{kind}.schema.json";
        string generated = Generate(kind);
        if (Environment.GetEnvironmentVariable(FolderVariable) is { Length: > 0 } folder)
        {
            File.WriteAllText(Path.Combine(folder, file), generated);
        }
        else
        {
            Assert.Equal(generated, File.ReadAllText(Path.Combine(AppContext.BaseDirectory, file)), ignoreLineEndingDifferences: true);
        }
    }

    /// <summary>Just inside each number of a job's limits it is read, just outside it is not: neither by the table of limits nor by the types themselves.</summary>
    [Fact]
    public void Limits_of_a_job_are_those_of_what_it_is_made_of()
    {
        JsonNode full = JsonNode.Parse(RecoveryJobJson.Write(FullJob.Create()))!;
        JsonNode schema = JsonNode.Parse(Generate("job"))!;
        int tried = 0;
        foreach (JsonValue value in Numbers(full).ToArray())
        {
            (JsonNode rule, Type owner) = Rule(schema, value.GetPath());
            NumberRange range = JobLimits.Find(owner, value.GetPropertyName()) ?? throw new InvalidOperationException($"{value.GetPath()} has no limits");
            bool isWhole = (rule["type"] is JsonArray types ? types[0] : rule["type"])!.GetValue<string>() == "integer";
            double below = isWhole ? 1 : range.Minimum == 0 ? 1e-9 : 1e-6 * Math.Abs(range.Minimum);
            double above = isWhole ? 1 : 1e-6 * range.Maximum;
            Assert.True(Accepts(full, value, isWhole ? range.Minimum : range.Minimum + below), $"{value.GetPath()} = {range.Minimum}");
            Assert.False(Builds(full, value, range.Minimum - below), $"{value.GetPath()} = {range.Minimum} less {below}");
            if (!double.IsInfinity(range.Maximum))
            {
                Assert.True(Accepts(full, value, isWhole ? range.Maximum : range.Maximum - above), $"{value.GetPath()} = {range.Maximum}");
                Assert.False(Builds(full, value, range.Maximum + above), $"{value.GetPath()} = {range.Maximum} and {above}");
            }

            Assert.NotNull(rule["minimum"] ?? rule["exclusiveMinimum"]);
            tried++;
        }

        Assert.InRange(tried, 100, 150);
    }

    private static string Generate(string kind)
    {
        (JsonTypeInfo type, string title, string description) = kind switch
        {
            "job" => ((JsonTypeInfo)DocumentWriter.TypeOf<JobDocument>(), "Refrigerant recovery job", "What is to be emptied, with what, where, and down to which level. Numbers carry their unit in the name; pressures are absolute or gauge as their name says. What is left out takes its default."),
            "log" => (DocumentWriter.TypeOf<LogDocument>(), "Log of a refrigerant recovery", "What gauge, scale and clock showed while a job was done, in order of time. Numbers carry their unit in the name; pressures are gauge pressures against the air at the place."),
            "plan" => (DocumentWriter.TypeOf<PlanDocument>(), "Refrigerant recovery plan", "The stages, times, cylinders, masses, findings and cautions of a job. Numbers carry their unit in the name; pressures are absolute unless the name says gauge. Planning figures: local codes and licensed practice govern."),
            _ => (DocumentWriter.TypeOf<RecoveryRecord>(), "Record of a refrigerant recovery", "What was recovered from what, when and into which cylinders. Members that 40 CFR 82.156(a)(3) asks records to hold name that section. Numbers carry their unit in the name. Members that are not required are left out where they are unknown. Local codes and licensed practice govern."),
        };
        return SchemaGenerator.Generate(type, title, description);
    }

    private static bool Accepts(JsonNode full, JsonValue value, double number) => RecoveryJobJson.TryRead(With(full, value, number), out _, out _);

    /// <summary>Whether the types take the number, past the table of limits.</summary>
    private static bool Builds(JsonNode full, JsonValue value, double number)
    {
        using var document = JsonDocument.Parse(With(full, value, number));
        try
        {
            JobDocument job = document.RootElement.Deserialize(DocumentWriter.TypeOf<JobDocument>())!;
            return job.ToJob(new DocumentNode(document.RootElement, "$"), null) is not null;
        }
        catch (Exception e) when (e is DocumentException or JsonException)
        {
            return false;
        }
    }

    private static string With(JsonNode full, JsonValue value, double number)
    {
        JsonNode copy = full.DeepClone();
        JsonNode target = Numbers(copy).Single(v => v.GetPath() == value.GetPath());
        target.ReplaceWith(value.GetPropertyName() == "maximumPulls" ? (JsonNode)(int)number : number);
        return copy.ToJsonString();
    }

    private static System.Collections.Generic.IEnumerable<JsonValue> Numbers(JsonNode node) => node switch
    {
        JsonObject o => o.SelectMany(p => p.Value is null ? [] : Numbers(p.Value)),
        JsonArray a => a.SelectMany(i => i is null ? [] : Numbers(i)),
        JsonValue v when v.GetValueKind() == JsonValueKind.Number => [v],
        _ => [],
    };

    /// <summary>Follows a path through the schema to the rule of a number and the type that holds it.</summary>
    private static (JsonNode Rule, Type Owner) Rule(JsonNode schema, string path)
    {
        JsonNode here = schema;
        string owner = "job";
        foreach (string step in path.Split('.').Skip(1))
        {
            here = here["properties"]![step.Split('[')[0]]!;
            JsonNode target = step.Contains('[', StringComparison.Ordinal) ? here["items"]! : here;
            if ((target["$ref"] ?? target["anyOf"]?[0]!["$ref"]) is JsonNode reference)
            {
                owner = reference.GetValue<string>().Split('/')[^1];
                here = schema["$defs"]![owner]!;
            }
        }

        return (here, typeof(JobDocument).Assembly.GetType($"Refrigerant.Recovery.Records.Jobs.{char.ToUpperInvariant(owner[0])}{owner[1..]}Document", throwOnError: true)!);
    }
}
