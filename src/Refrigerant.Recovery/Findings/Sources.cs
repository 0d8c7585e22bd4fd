namespace Refrigerant.Recovery.Findings;

/// <summary>What stands for a source where there is none.</summary>
internal static class Sources
{
    /// <summary>A fact of the trade.</summary>
    public const string CommonPractice = "common practice, no source";
}
