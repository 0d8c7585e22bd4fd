using System;

namespace Refrigerant.Recovery.Planning;

/// <summary>How much one uncertain input moves the results: rank correlations over the sample, −1 to 1. Immutable.</summary>
public sealed record InputInfluence
{
    internal InputInfluence(UncertainInput input, double onDuration, double onRemaining)
    {
        Input = input;
        OnDuration = onDuration;
        OnRemaining = onRemaining;
    }

    /// <summary>The input.</summary>
    public UncertainInput Input { get; }

    /// <summary>The input in plain words, such as "mass of oil in the appliance".</summary>
    public string Name => Input switch
    {
        UncertainInput.InternalVolume => "internal volume of the appliance",
        UncertainInput.HeatExchange => "heat from the surroundings",
        UncertainInput.Charge => "charge",
        UncertainInput.Displacement => "size of the machine",
        UncertainInput.Temperature => "temperature of appliance and air",
        UncertainInput.Gauge => "error of the gauge",
        UncertainInput.Scale => "error of the scale",
        UncertainInput.Oil => "mass of oil in the appliance",
        _ => "metal that cools with the refrigerant",
    };

    /// <summary>Spearman's rank correlation with the time on site; positive: more of it takes longer.</summary>
    public double OnDuration { get; }

    /// <summary>Spearman's rank correlation with the mass that remains.</summary>
    public double OnRemaining { get; }

    /// <summary>Input and correlations, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Name}: {OnDuration:+0.00;-0.00;0.00} on time, {OnRemaining:+0.00;-0.00;0.00} on what remains");
}
