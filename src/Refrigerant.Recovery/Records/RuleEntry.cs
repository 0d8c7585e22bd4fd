using System;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>A rule that a result rests on, with the edition that was read. Immutable.</summary>
public sealed record RuleEntry
{
    /// <summary>What the rule says, in a few words.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public required string Rule { get; init => field = Require.NotNull(value, nameof(Rule)); }

    /// <summary>The figure with its unit.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public required string Figure { get; init => field = Require.NotNull(value, nameof(Figure)); }

    /// <summary>The document and section.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public required string Source { get; init => field = Require.NotNull(value, nameof(Source)); }

    /// <summary>The edition that was read.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public required string Edition { get; init => field = Require.NotNull(value, nameof(Edition)); }

    /// <summary>How well the source was read.</summary>
    public required Evidence Evidence { get; init; }

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
}
