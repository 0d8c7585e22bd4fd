namespace Refrigerant.Recovery.Processes;

/// <summary>Where an equalization starts and what limits it; one hour at most by default. Immutable.</summary>
public sealed record EqualizeOptions : StageOptions
{
    private const double Hour = 3600;

    /// <summary>An equalization of appliance and cylinder as described.</summary>
    public EqualizeOptions()
        : base(Hour)
    {
    }
}
