using System;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Refrigerant.Recovery.Records;

/// <summary>What describes all documents, those that carry their own converter included.</summary>
internal sealed class DocumentShapes : IJsonTypeInfoResolver
{
    public JsonTypeInfo? GetTypeInfo(Type type, JsonSerializerOptions options) =>
        type == typeof(PlanDocument) ? DocumentShape<PlanDocument>.Create(options)
        : type == typeof(RecoveryRecord) ? DocumentShape<RecoveryRecord>.Create(options)
        : type == typeof(CourseEntry) ? DocumentShape<CourseEntry>.Create(options)
        : type == typeof(CylinderEntry) ? DocumentShape<CylinderEntry>.Create(options)
        : type == typeof(FindingEntry) ? DocumentShape<FindingEntry>.Create(options)
        : type == typeof(LedgerEntry) ? DocumentShape<LedgerEntry>.Create(options)
        : type == typeof(LevelEntry) ? DocumentShape<LevelEntry>.Create(options)
        : type == typeof(LoggedEntry) ? DocumentShape<LoggedEntry>.Create(options)
        : type == typeof(LoggedPoint) ? DocumentShape<LoggedPoint>.Create(options)
        : type == typeof(RuleEntry) ? DocumentShape<RuleEntry>.Create(options)
        : type == typeof(ShipmentEntry) ? DocumentShape<ShipmentEntry>.Create(options)
        : type == typeof(StageEntry) ? DocumentShape<StageEntry>.Create(options)
        : ((IJsonTypeInfoResolver)RecordsContext.Default).GetTypeInfo(type, options);
}
