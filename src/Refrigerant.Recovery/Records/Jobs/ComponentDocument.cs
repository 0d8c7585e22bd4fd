namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>A component of a blend.</summary>
internal sealed record ComponentDocument
{
    public required string Refrigerant { get; init; }

    public required double MassFraction { get; init; }
}
