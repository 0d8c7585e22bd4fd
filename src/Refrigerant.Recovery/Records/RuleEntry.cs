using System;
using System.Text.Json.Serialization;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>A rule that a result rests on, with the edition that was read. Immutable.</summary>
[JsonConverter(typeof(DocumentJsonConverter<RuleEntry>))]
public sealed record RuleEntry
{
    /// <summary>What the rule says, in a few words.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("rule")]
    public required string Rule { get; init => field = Require.NotNull(value, nameof(Rule)); }

    /// <summary>The figure with its unit.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("figure")]
    public required string Figure { get; init => field = Require.NotNull(value, nameof(Figure)); }

    /// <summary>The document and section.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("source")]
    public required string Source { get; init => field = Require.NotNull(value, nameof(Source)); }

    /// <summary>The edition that was read.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonPropertyName("edition")]
    public required string Edition { get; init => field = Require.NotNull(value, nameof(Edition)); }

    /// <summary>How well the source was read.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    [JsonPropertyName("evidence")]
    public required Evidence Evidence { get; init => field = Require.Defined(value, nameof(Evidence)); }

    /// <summary>A rule as an entry.</summary>
    /// <param name="figure">The rule.</param>
    /// <exception cref="ArgumentNullException"><paramref name="figure"/> is null.</exception>
    internal static RuleEntry From(RuleFigure figure)
    {
        Require.NotNull(figure, nameof(figure));
        return new RuleEntry
        {
            Rule = figure.Rule,
            Figure = figure.Figure,
            Source = figure.Source,
            Edition = figure.Edition,
            Evidence = figure.Evidence,
        };
    }

    /// <summary>The rule, its figure and source.</summary>
    public override string ToString() => $"{Rule}: {Figure} ({Source})";
}
