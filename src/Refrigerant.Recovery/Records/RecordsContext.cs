using System.Text.Json.Serialization;
using Refrigerant.Recovery.Records.Jobs;

namespace Refrigerant.Recovery.Records;

/// <summary>The generated metadata of all documents: no reflection, so that it works ahead of time compiled.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    UseStringEnumConverter = true,
    Converters = [typeof(DateJsonConverter)])]
[JsonSerializable(typeof(JobDocument))]
[JsonSerializable(typeof(PlanDocument))]
[JsonSerializable(typeof(RecoveryRecord))]
[JsonSerializable(typeof(LogDocument))]
internal sealed partial class RecordsContext : JsonSerializerContext;
