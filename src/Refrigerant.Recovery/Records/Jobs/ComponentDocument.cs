namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>A component of a blend.</summary>
internal sealed record ComponentDocument
{
    /// <summary>Designation of a pure refrigerant of the catalogue.</summary>
    public required string Refrigerant { get; init; }

    /// <summary>Mass fraction, 0 to 1.</summary>
    public required double MassFraction { get; init; }
}
