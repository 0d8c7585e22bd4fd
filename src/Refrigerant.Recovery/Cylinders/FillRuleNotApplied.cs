namespace Refrigerant.Recovery.Cylinders;

/// <summary>A rule that gave no mass, and why. Immutable.</summary>
public sealed class FillRuleNotApplied
{
    internal FillRuleNotApplied(FillRuleKind kind, string reason)
    {
        Kind = kind;
        Reason = reason;
    }

    /// <summary>Which rule.</summary>
    public FillRuleKind Kind { get; }

    /// <summary>Why it gave no mass.</summary>
    public string Reason { get; }

    /// <summary>Rule and reason.</summary>
    public override string ToString() => $"{Kind}: {Reason}";
}
