namespace Refrigerant.Recovery.Processes;

/// <summary>A published figure of a recovery machine.</summary>
public enum RatingKind
{
    /// <summary>Vapor rate.</summary>
    VaporRate = 0,

    /// <summary>Push-pull liquid rate.</summary>
    PushPullRate,

    /// <summary>Final vacuum.</summary>
    FinalVacuum,
}
