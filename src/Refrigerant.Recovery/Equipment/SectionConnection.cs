using System;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Equipment;

/// <summary>What joins two sections of an appliance: an opening that lets little through, or a check valve. Immutable.</summary>
public sealed record SectionConnection
{
    /// <summary>For an initializer.</summary>
    public SectionConnection()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="from">See <see cref="From"/>.</param>
    /// <param name="to">See <see cref="To"/>.</param>
    /// <param name="flowCoefficient">See <see cref="FlowCoefficient"/>.</param>
    /// <param name="isCheckValve">See <see cref="IsCheckValve"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public SectionConnection(
        string from,
        string to,
        double flowCoefficient,
        bool? isCheckValve = null)
    {
        From = from;
        To = to;
        FlowCoefficient = flowCoefficient;
        IsCheckValve = isCheckValve ?? IsCheckValve;
    }

    /// <summary>Name of a section; a check valve opens from here.</summary>
    /// <exception cref="ArgumentException">The name is null or empty.</exception>
    public required string From { get; init => field = Require.NotEmpty(value, nameof(From)); }

    /// <summary>Name of the other section.</summary>
    /// <exception cref="ArgumentException">The name is null or empty.</exception>
    public required string To { get; init => field = Require.NotEmpty(value, nameof(To)); }

    /// <summary>
    /// Flow coefficient Cv in US gal/min of water at 1 psi, 1e-6 to 1e4: an expansion device nearly shut some 0.001 to 0.05 (common practice, no source). A connection
    /// that lets nothing through is none: leave it out.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required double FlowCoefficient { get; init => field = Require.InRange(value, 1e-6, 1e4, "US gal/min at 1 psi", nameof(FlowCoefficient)); }

    /// <summary>Whether it is a check valve, which lets refrigerant through from <see cref="From"/> to <see cref="To"/> only.</summary>
    public bool IsCheckValve { get; init; }

    /// <summary>What it joins, its flow coefficient, and whether it is a check valve.</summary>
    public override string ToString() => $"{From} to {To}, Cv {Require.Text(FlowCoefficient)}{(IsCheckValve ? ", check valve" : string.Empty)}";
}
