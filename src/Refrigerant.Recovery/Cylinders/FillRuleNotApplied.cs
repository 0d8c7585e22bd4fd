namespace Refrigerant.Recovery.Cylinders;

/// <summary>A rule that gave no mass, and why. Immutable.</summary>
public sealed record FillRuleNotApplied
{
    internal FillRuleNotApplied(FillRuleKind kind, string reason, bool isOutsideEquation)
    {
        Kind = kind;
        Reason = reason;
        IsOutsideEquation = isOutsideEquation;
    }

    /// <summary>Which rule.</summary>
    public FillRuleKind Kind { get; }

    /// <summary>Why it gave no mass.</summary>
    public string Reason { get; }

    /// <summary>Whether the rule would apply, but its temperature or pressure is outside the range of the refrigerant's equation.</summary>
    public bool IsOutsideEquation { get; }

    /// <summary>Rule and reason.</summary>
    public override string ToString() => $"{Kind}: {Reason}";
}
