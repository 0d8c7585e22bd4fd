using System;
using System.Linq;
using System.Text.Json.Nodes;
using Refrigerant.Recovery.Records;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>What the published schema and the reader both take besides what is written: null for what may be left out, the place of the schema, a byte order mark.</summary>
public class OpenMemberTests
{
    private static readonly PublishedSchema Schema = new("recovery-job.schema.json");

    /// <summary>Every member of a job in turn is null: the schema refuses it where it must be given, and then the reader does too.</summary>
    [Fact]
    public void Null_is_taken_by_both_or_refused_by_both()
    {
        string full = RecoveryJobJson.Write(FullJob.Create());
        int taken = 0;
        int refused = 0;
        foreach (string path in Paths(JsonNode.Parse(full)!).ToArray())
        {
            JsonNode job = JsonNode.Parse(full)!;
            Put(job, path);
            string text = job.ToJsonString();
            bool fits = Schema.Breaches(text).Length == 0;
            bool isRead = RecoveryJobJson.TryRead(text, out _, out var errors);
            bool isRefused = errors.Any(error => error.Path == path && error.Message.Contains("must be given", StringComparison.Ordinal));
            Assert.True(fits ? !isRefused : !isRead && isRefused, $"{path}: the schema {(fits ? "takes" : "refuses")} null, the reader: {string.Join(" ", errors)}");
            taken += fits ? 1 : 0;
            refused += fits ? 0 : 1;
        }

        Assert.True(taken > 50 && refused > 20, $"{taken}, {refused}");
    }

    [Theory]
    [InlineData("\uFEFF", "")]
    [InlineData("", "\"$schema\": \"recovery-job.schema.json\",")]
    [InlineData("\uFEFF", "\"$schema\": \"https://example.com/schema\",")]
    public void A_mark_at_the_start_and_the_place_of_the_schema_are_taken(string start, string member)
    {
        string text = RecoveryJobJson.Write(FullJob.Create());
        string marked = start + "{" + member + text[1..];
        Assert.Equal(RecoveryJobJson.Read(text), RecoveryJobJson.Read(marked));
        Assert.Equal(RecoveryJobJson.Read(text), RecoveryJobJson.Read(System.Text.Encoding.UTF8.GetBytes(marked), null));
        Assert.Empty(Schema.Breaches(marked.TrimStart('\uFEFF')));
    }

    [Theory]
    [InlineData("\"$schema\": 3,", "$.$schema")]
    [InlineData("\"$schema\": \"x\", \"another\": 1,", "$.another")]
    [InlineData("\"$schema\": \"x\", \"day\": \"\\ud800\",", "$")]
    public void What_else_is_wrong_is_still_told(string members, string path)
    {
        Assert.False(RecoveryJobJson.TryRead("{" + members + RecoveryJobJson.Write(FullJob.Create())[1..], out _, out var errors));
        Assert.Contains(errors, error => error.Path == path);
    }

    [Fact]
    public void Only_one_mark_is_taken() => Assert.False(RecoveryJobJson.TryRead("\uFEFF\uFEFF" + RecoveryJobJson.Write(FullJob.Create()), out _, out _));

    private static System.Collections.Generic.IEnumerable<string> Paths(JsonNode node) => node switch
    {
        JsonObject o => o.SelectMany(member => new[] { member.Value!.GetPath() }.Concat(Paths(member.Value))),
        JsonArray a => a.SelectMany(item => Paths(item!)),
        _ => [],
    };

    private static void Put(JsonNode node, string path)
    {
        string[] steps = path.Split('.');
        JsonNode here = node;
        foreach (string step in steps.Skip(1).SkipLast(1))
        {
            string[] parts = step.TrimEnd(']').Split('[');
            here = parts.Length == 1 ? here[step]! : here[parts[0]]![int.Parse(parts[1], null)]!;
        }

        here[steps[^1]] = null;
    }
}
