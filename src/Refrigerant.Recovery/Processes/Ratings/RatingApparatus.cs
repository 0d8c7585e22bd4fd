namespace Refrigerant.Recovery.Processes;

/// <summary>The test apparatus of 40 CFR 82 Subpart F Appendix B3, 6.3.</summary>
public enum RatingApparatus
{
    /// <summary>Small hoses: a chamber of 0.09 m³ and a receiving cylinder of 50 lb water capacity.</summary>
    SmallHoses = 0,

    /// <summary>Large hoses: a chamber of 0.45 m³ and a receiving cylinder of 1000 lb water capacity.</summary>
    LargeHoses,
}
