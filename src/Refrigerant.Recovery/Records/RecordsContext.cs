using System;
using System.Collections.Generic;
using System.Text.Json.Serialization;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records.Jobs;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Records;

/// <summary>The generated metadata of all documents: no reflection, so that it works ahead of time compiled.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    UseStringEnumConverter = true,
    Converters = [typeof(DateJsonConverter)])]
[JsonSerializable(typeof(JobDocument))]
[JsonSerializable(typeof(DateTimeOffset?))]
[JsonSerializable(typeof(Evidence))]
[JsonSerializable(typeof(FindingSubject))]
[JsonSerializable(typeof(PressureClass?))]
[JsonSerializable(typeof(Severity))]
[JsonSerializable(typeof(ShipmentPurpose))]
[JsonSerializable(typeof(StageEnd?))]
[JsonSerializable(typeof(StageKind))]
[JsonSerializable(typeof(IReadOnlyList<CourseEntry>))]
[JsonSerializable(typeof(IReadOnlyList<CylinderEntry>))]
[JsonSerializable(typeof(IReadOnlyList<FindingEntry>))]
[JsonSerializable(typeof(IReadOnlyList<LoggedPoint>))]
[JsonSerializable(typeof(IReadOnlyList<RuleEntry>))]
[JsonSerializable(typeof(IReadOnlyList<ShipmentEntry>))]
[JsonSerializable(typeof(IReadOnlyList<StageEntry>))]
[JsonSerializable(typeof(LogDocument))]
internal sealed partial class RecordsContext : JsonSerializerContext;
