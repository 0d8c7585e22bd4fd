using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Threading.Tasks;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Tests.Planning;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>Documents within a host: any serializer's options, streams, all errors at once, fluids of other engines.</summary>
public class HostTests
{
    private static readonly PlanDocument Plan = PlanDocument.From(RecoveryPlanner.Plan(Jobs.Chiller()), course: true);

    private static readonly RecoveryRecord Record = RecoveryRecordTests.Measured();

    public static TheoryData<string> Options => ["plain", "web", "strict"];

    [Theory]
    [MemberData(nameof(Options))]
    public void A_plan_and_a_record_have_one_shape_in_any_serializer(string name)
    {
        JsonSerializerOptions options = Make(name);
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(RecoveryPlanJson.Write(Plan)), JsonNode.Parse(JsonSerializer.Serialize(Plan, options))));
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(RecoveryRecordJson.Write(Record)), JsonNode.Parse(JsonSerializer.Serialize(Record, options))));
        Assert.Equal(Plan, JsonSerializer.Deserialize<PlanDocument>(RecoveryPlanJson.Write(Plan), options));
        Assert.Equal(Record, JsonSerializer.Deserialize<RecoveryRecord>(RecoveryRecordJson.Write(Record), options));
    }

    [Theory]
    [MemberData(nameof(Options))]
    public void A_job_is_bound_by_its_converter(string name)
    {
        JsonSerializerOptions options = Make(name);
        options.Converters.Add(RecoveryJobJson.CreateConverter());
        RecoveryJob job = FullJob.Create();
        string json = JsonSerializer.Serialize(job, options);
        Assert.True(JsonNode.DeepEquals(JsonNode.Parse(RecoveryJobJson.Write(job)), JsonNode.Parse(json)));
        Assert.Equal(RecoveryJobJson.Read(json), JsonSerializer.Deserialize<RecoveryJob>(json, options));
        JsonException error = Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<RecoveryJob>(json.Replace("21.5", "-1", StringComparison.Ordinal), options));
        Assert.Equal("$.appliance.chargeKilograms", Assert.IsType<DocumentException>(error.InnerException).Path);
    }

    [Theory]
    [MemberData(nameof(Options))]
    public void A_bad_plan_or_record_is_told_as_a_job_is(string name)
    {
        JsonSerializerOptions options = Make(name);
        string plan = JsonSerializer.Serialize(Plan, options), record = JsonSerializer.Serialize(Record, options);
        Assert.Equal(Plan, JsonSerializer.Deserialize<PlanDocument>(plan, options));
        Assert.Equal(Record, JsonSerializer.Deserialize<RecoveryRecord>(record, options));
        JsonNode bad = JsonNode.Parse(plan)!;
        bad["totalDurationSeconds"] = -1;
        bad["stages"]![0]!["kind"] = null;
        bad["ledger"] = null;
        JsonException error = Assert.Throws<JsonException>(() => bad.Deserialize<PlanDocument>(options));
        Assert.Equal(["$.ledger", "$.stages[0].kind", "$.totalDurationSeconds"], Assert.IsType<DocumentException>(error.InnerException).Errors.Select(each => each.Path).Order(StringComparer.Ordinal));
        Assert.Contains("totalDurationSeconds is -1", error.Message, StringComparison.Ordinal);
        JsonNode other = JsonNode.Parse(record)!;
        other["format"] = "another/1";
        Assert.Equal("$.format", Assert.Throws<JsonException>(() => other.Deserialize<RecoveryRecord>(options)).Path);
        Assert.Equal("$.date", Assert.Throws<JsonException>(() => JsonSerializer.Deserialize("""{"refrigerant":"R-22","kilograms":1,"purpose":"Reclamation","recipient":"one","date":"soon"}""", HostContext.Default.ShipmentEntry)).Path);
        Assert.Equal(Plan, JsonSerializer.Deserialize(JsonSerializer.Serialize(Plan, HostContext.Default.PlanDocument), HostContext.Default.PlanDocument));
    }

    /// <summary>So that a member added to a document is not forgotten: it has its name, and its type has the converter that makes it strict.</summary>
    [Fact]
    public void Every_member_of_a_document_carries_its_name()
    {
        Type[] documents = [.. Types(typeof(PlanDocument), []).Concat(Types(typeof(RecoveryRecord), [])).Distinct()];
        Assert.InRange(documents.Length, 10, 40);
        Assert.All(documents, type => Assert.Equal(typeof(DocumentJsonConverter<>).MakeGenericType(type), type.GetCustomAttribute<JsonConverterAttribute>()?.ConverterType));
        foreach (PropertyInfo property in documents.SelectMany(type => type.GetProperties(BindingFlags.Public | BindingFlags.Instance)))
        {
            string place = $"{property.DeclaringType!.Name}.{property.Name}";
            Assert.True(JsonNamingPolicy.CamelCase.ConvertName(property.Name) == property.GetCustomAttribute<JsonPropertyNameAttribute>()?.Name, place);
        }
    }

    [Fact]
    public void Everything_that_is_wrong_is_told_at_once()
    {
        JsonNode job = JsonNode.Parse(RecoveryJobJson.Write(FullJob.Create()))!;
        job["appliance"]!["refrigerant"] = "R-9999";
        job["appliance"]!["chargeKilogram"] = 3;
        job["machine"]!["clearanceRatio"] = 2;
        job["machine"]!["condenser"]!["cooling"] = "Snow";
        job["hoses"]!["liquidSide"]![0]!["fittings"]![1]!.AsObject().Remove("lossCoefficient");
        job["cylinders"]![0]!["mark"] = "9ZZ";
        job["cylinders"]![2]!["tareWeightKilograms"] = "light";
        job["day"] = "tomorrow";
        job.AsObject().Remove("barometer");
        job["barometer"] = new JsonObject();
        Assert.False(RecoveryJobJson.TryRead(job.ToJsonString(), out RecoveryJob? read, out IReadOnlyList<DocumentError> errors));
        Assert.Null(read);
        Assert.Equal(
            [
                "$.appliance.chargeKilogram", "$.appliance.refrigerant", "$.barometer", "$.cylinders[0].mark", "$.cylinders[2].tareWeightKilograms", "$.day",
                "$.hoses.liquidSide[0].fittings[1]", "$.machine.clearanceRatio", "$.machine.condenser.cooling",
            ],
            errors.Select(error => error.Path).Order(StringComparer.Ordinal));
        Assert.All(errors, error => Assert.StartsWith(error.Path, error.Message, StringComparison.Ordinal));
        Assert.Equal(errors, Assert.Throws<DocumentException>(() => RecoveryJobJson.Read(job.ToJsonString())).Errors);
    }

    [Fact]
    public void A_plan_and_a_record_tell_everything_too()
    {
        string bad = RecoveryPlanJson.Write(Plan).Replace("\"moved", "\"Moved", StringComparison.Ordinal);
        Assert.False(RecoveryPlanJson.TryRead(bad, out _, out IReadOnlyList<DocumentError> errors));
        Assert.Equal(2 * Plan.Stages.Count, errors.Count);
        Assert.True(RecoveryRecordJson.TryRead(RecoveryRecordJson.Write(Record), out RecoveryRecord? record, out errors));
        Assert.Empty(errors);
        Assert.Equal(Record, record);
    }

    [Fact]
    public async Task Streams_and_utf8_are_read_with_and_without_a_byte_order_mark()
    {
        RecoveryJob job = RecoveryJobJson.Read(RecoveryJobJson.Write(FullJob.Create()));
        using var stream = new MemoryStream();
        await RecoveryJobJson.WriteAsync(job, stream);
        Assert.Equal(RecoveryJobJson.Write(job), Encoding.UTF8.GetString(stream.ToArray()));
        byte[] marked = [.. Encoding.UTF8.GetPreamble(), .. stream.ToArray()];
        Assert.Equal(job, RecoveryJobJson.Read(marked, null));
        Assert.True(RecoveryJobJson.TryRead(stream.ToArray(), null, out RecoveryJob? read, out _));
        Assert.Equal(job, read);
        Assert.Equal(job, await RecoveryJobJson.ReadAsync(new MemoryStream(marked)));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => RecoveryJobJson.ReadAsync(stream, cancellation: new System.Threading.CancellationToken(true)));

        using var plan = new MemoryStream();
        await RecoveryPlanJson.WriteAsync(Plan, plan);
        plan.Position = 0;
        Assert.Equal(Plan, await RecoveryPlanJson.ReadAsync(plan));
        Assert.Equal(Plan, RecoveryPlanJson.Read(plan.ToArray()));
        using var record = new MemoryStream();
        await RecoveryRecordJson.WriteAsync(Record, record);
        record.Position = 0;
        Assert.Equal(Record, await RecoveryRecordJson.ReadAsync(record));
    }

    [Fact]
    public async Task A_stream_without_end_is_given_up()
    {
        DocumentException error = await Assert.ThrowsAsync<DocumentException>(() => RecoveryJobJson.ReadAsync(new Blanks()));
        Assert.Contains("at most", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fluid_of_another_engine_is_written_and_read_by_a_resolver()
    {
        var other = Fluid.FromModel(new Doubles.SimpleFluid());
        RecoveryJob job = Jobs.Chiller();
        job = job with { Appliance = job.Appliance with { Fluid = other } };
        Assert.Throws<ArgumentException>(() => RecoveryJobJson.Write(job));
        Fluid? Resolve(string designation) => designation == other.Designation ? other : null;
        string json = RecoveryJobJson.Write(job, Resolve);
        Assert.Contains($"\"refrigerant\": \"{other.Designation}\"", json, StringComparison.Ordinal);
        Assert.Same(other, RecoveryJobJson.Read(json, Resolve).Appliance.Fluid);
        Assert.Throws<DocumentException>(() => RecoveryJobJson.Read(json));
        Assert.Equal("R-134a", RecoveryJobJson.Read(RecoveryJobJson.Write(FullJob.Create()), Resolve).Appliance.Fluid.Designation);
    }

    [Fact]
    public void Two_readings_of_one_text_are_equal()
    {
        RecoveryJob job = FullJob.Create();
        foreach (string text in new[] { RecoveryJobJson.Write(job), RecoveryJobJson.Write(job with { Appliance = job.Appliance with { Fluid = FullJob.Blend() } }) })
        {
            RecoveryJob first = RecoveryJobJson.Read(text);
            RecoveryJob second = RecoveryJobJson.Read(text);
            Assert.Equal(first, second);
            Assert.Equal(first.GetHashCode(), second.GetHashCode());
            Assert.NotEqual(first, second with { Cylinders = [.. second.Cylinders.Skip(1)] });
            Assert.NotEqual(first, second with { Hoses = second.Hoses with { Discharge = [] } });
        }

        string plan = RecoveryPlanJson.Write(Plan);
        Assert.Equal(RecoveryPlanJson.Read(plan), RecoveryPlanJson.Read(plan));
        Assert.Equal(RecoveryPlanJson.Read(plan).GetHashCode(), RecoveryPlanJson.Read(plan).GetHashCode());
        Assert.NotEqual(Plan, Plan with { Findings = [.. Plan.Findings.Skip(1)] });
        string record = RecoveryRecordJson.Write(Record);
        Assert.Equal(RecoveryRecordJson.Read(record), RecoveryRecordJson.Read(record));
    }

    private static JsonSerializerOptions Make(string name) => name switch
    {
        "plain" => new(),
        "web" => new(JsonSerializerDefaults.Web),
        _ => new(JsonSerializerDefaults.Strict),
    };

    private static HashSet<Type> Types(Type type, HashSet<Type> seen)
    {
        Type plain = type.IsGenericType ? type.GetGenericArguments()[0] : type;
        if (plain.Assembly == typeof(PlanDocument).Assembly && plain.IsClass && seen.Add(plain))
        {
            foreach (PropertyInfo property in plain.GetProperties(BindingFlags.Public | BindingFlags.Instance))
            {
                Types(property.PropertyType, seen);
            }
        }

        return seen;
    }

    /// <summary>Blanks without end.</summary>
    private sealed class Blanks : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            buffer.AsSpan(offset, count).Fill((byte)' ');
            return count;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}

/// <summary>A generated context of a host.</summary>
[JsonSerializable(typeof(PlanDocument))]
[JsonSerializable(typeof(ShipmentEntry))]
internal sealed partial class HostContext : JsonSerializerContext;
