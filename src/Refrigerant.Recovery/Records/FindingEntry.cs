using System;
using System.Text.Json.Serialization;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>A finding in a document. Immutable.</summary>
[JsonConverter(typeof(DocumentJsonConverter<FindingEntry>))]
public sealed record FindingEntry
{
    /// <summary>Its stable code, such as "cylinder-over-limit"; empty where a document has none.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("code")]
    public string Code { get; init => field = Require.NotNull(value, nameof(Code)); } = string.Empty;

    /// <summary>How much it weighs.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    [JsonPropertyName("severity")]
    public required Severity Severity { get; init => field = Require.Defined(value, nameof(Severity)); }

    /// <summary>What it is about.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    [JsonPropertyName("subject")]
    public required FindingSubject Subject { get; init => field = Require.Defined(value, nameof(Subject)); }

    /// <summary>A sentence for people.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("message")]
    public required string Message { get; init => field = Require.NotNull(value, nameof(Message)); }

    /// <summary>The law, standard or paper behind it, or "common practice".</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("source")]
    public required string Source { get; init => field = Require.NotNull(value, nameof(Source)); }

    internal static FindingEntry From(Finding finding) => new()
    {
        Code = finding.Code,
        Severity = finding.Severity,
        Subject = finding.Subject,
        Message = finding.Message,
        Source = finding.Source,
    };

    /// <summary>Severity and sentence.</summary>
    public override string ToString() => $"{Severity}: {Message}";
}
