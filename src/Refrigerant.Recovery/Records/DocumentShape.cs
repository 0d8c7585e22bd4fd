using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Linq;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Records;

/// <summary>
/// The members of a document that carries its own converter, which the generator of <see cref="RecordsContext"/> therefore does not describe; without dynamic code,
/// so that it works ahead of time compiled.
/// </summary>
/// <typeparam name="T">The document, or a part of one.</typeparam>
internal static class DocumentShape<[DynamicallyAccessedMembers(DynamicallyAccessedMemberTypes.PublicProperties | DynamicallyAccessedMemberTypes.PublicParameterlessConstructor)] T>
    where T : class
{
    public static JsonTypeInfo<T> Create(JsonSerializerOptions options)
    {
        JsonTypeInfo<T> type = JsonMetadataServices.CreateObjectInfo(options, new JsonObjectInfoValues<T>
        {
            ObjectCreator = Activator.CreateInstance<T>,
            PropertyMetadataInitializer = _ => [.. Members().Select(property => Member(property, options))],
        });
        type.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
        return type;
    }

    private static IEnumerable<PropertyInfo> Members() => typeof(T).GetProperties(BindingFlags.Public | BindingFlags.Instance)
        .Where(property => property.GetCustomAttribute<JsonPropertyNameAttribute>() is not null);

    private static JsonPropertyInfo Member(PropertyInfo property, JsonSerializerOptions options)
    {
        Type type = property.PropertyType;
        JsonPropertyInfo member =
            type == typeof(double) ? Of<double>(property, options)
            : type == typeof(double?) ? Of<double?>(property, options)
            : type == typeof(int) ? Of<int>(property, options)
            : type == typeof(bool) ? Of<bool>(property, options)
            : type == typeof(string) ? Of<string>(property, options)
            : type == typeof(DateTime) ? Of<DateTime>(property, options)
            : type == typeof(DateTime?) ? Of<DateTime?>(property, options)
            : type == typeof(DateTimeOffset?) ? Of<DateTimeOffset?>(property, options)
            : type == typeof(Evidence) ? Of<Evidence>(property, options)
            : type == typeof(FindingSubject) ? Of<FindingSubject>(property, options)
            : type == typeof(PressureClass?) ? Of<PressureClass?>(property, options)
            : type == typeof(Severity) ? Of<Severity>(property, options)
            : type == typeof(ShipmentPurpose) ? Of<ShipmentPurpose>(property, options)
            : type == typeof(StageEnd?) ? Of<StageEnd?>(property, options)
            : type == typeof(StageKind) ? Of<StageKind>(property, options)
            : type == typeof(LedgerEntry) ? Of<LedgerEntry>(property, options)
            : type == typeof(LevelEntry) ? Of<LevelEntry>(property, options)
            : type == typeof(LoggedEntry) ? Of<LoggedEntry>(property, options)
            : type == typeof(RuleEntry) ? Of<RuleEntry>(property, options)
            : type == typeof(IReadOnlyList<CourseEntry>) ? Of<IReadOnlyList<CourseEntry>>(property, options)
            : type == typeof(IReadOnlyList<CylinderEntry>) ? Of<IReadOnlyList<CylinderEntry>>(property, options)
            : type == typeof(IReadOnlyList<FindingEntry>) ? Of<IReadOnlyList<FindingEntry>>(property, options)
            : type == typeof(IReadOnlyList<LoggedPoint>) ? Of<IReadOnlyList<LoggedPoint>>(property, options)
            : type == typeof(IReadOnlyList<RuleEntry>) ? Of<IReadOnlyList<RuleEntry>>(property, options)
            : type == typeof(IReadOnlyList<ShipmentEntry>) ? Of<IReadOnlyList<ShipmentEntry>>(property, options)
            : type == typeof(IReadOnlyList<StageEntry>) ? Of<IReadOnlyList<StageEntry>>(property, options)
            : throw new NotSupportedException($"{typeof(T).Name}.{property.Name}: {nameof(DocumentShape<T>)} knows no {type}.");
        member.IsRequired = property.GetCustomAttribute<RequiredMemberAttribute>() is not null;
        return member;
    }

    private static JsonPropertyInfo Of<TMember>(PropertyInfo property, JsonSerializerOptions options)
    {
        var get = (Func<T, TMember>)property.GetMethod!.CreateDelegate(typeof(Func<T, TMember>));
        var set = (Action<T, TMember>)property.SetMethod!.CreateDelegate(typeof(Action<T, TMember>));
        JsonPropertyInfo member = JsonMetadataServices.CreatePropertyInfo(options, new JsonPropertyInfoValues<TMember>
        {
            IsProperty = true,
            IsPublic = true,
            DeclaringType = typeof(T),
            PropertyName = property.Name,
            JsonPropertyName = property.GetCustomAttribute<JsonPropertyNameAttribute>()!.Name,
            Getter = owner => get((T)owner),
            Setter = (owner, value) => set((T)owner, value!),
        });
        member.AttributeProvider = property;
        return member;
    }
}
