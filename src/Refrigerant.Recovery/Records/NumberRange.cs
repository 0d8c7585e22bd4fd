using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>The numbers that a member of a document may have, in its own unit.</summary>
internal readonly record struct NumberRange(double Minimum, double Maximum, bool IsAbove = false)
{
    /// <summary>Greater than zero.</summary>
    public static NumberRange Positive { get; } = new(0, double.PositiveInfinity, true);

    public bool Has(double value) => (IsAbove ? value > Minimum : value >= Minimum) && value <= Maximum;

    public override string ToString() => (IsAbove, double.IsInfinity(Maximum)) switch
    {
        (true, true) => $"greater than {Require.Text(Minimum)}",
        (true, false) => $"greater than {Require.Text(Minimum)}, at most {Require.Text(Maximum)}",
        (false, true) => $"{Require.Text(Minimum)} or more",
        _ => $"from {Require.Text(Minimum)} to {Require.Text(Maximum)}",
    };
}
