using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Rules;

/// <summary>What a place wants written down, by whom and for how long it is kept. Immutable.</summary>
public sealed record RecordRule
{
    internal RecordRule(string trigger, int? years, RuleFigure figure, params string[] fields)
    {
        Trigger = trigger;
        Years = years;
        Figure = figure;
        Fields = Require.Copy(fields, nameof(fields));
    }

    /// <summary>Who writes, and when.</summary>
    public string Trigger { get; }

    /// <summary>The fields, in the words of the rule, translated where need be.</summary>
    public IReadOnlyList<string> Fields { get; }

    /// <summary>Years that it is kept, at least; null where none were found.</summary>
    public int? Years { get; }

    /// <summary>The rule with its source.</summary>
    public RuleFigure Figure { get; }

    /// <summary>Trigger and source.</summary>
    public override string ToString() => $"{Trigger} ({Figure.Source})";
}
