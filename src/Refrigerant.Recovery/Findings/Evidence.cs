namespace Refrigerant.Recovery.Findings;

/// <summary>How well a figure's source was read.</summary>
public enum Evidence
{
    /// <summary>Read in the text named.</summary>
    Read = 0,

    /// <summary>Read in a secondary source that quotes the one named.</summary>
    ReadSecondHand,

    /// <summary>Computed, by what the source says.</summary>
    Computed,

    /// <summary>From memory: not read in the text named.</summary>
    FromMemory,

    /// <summary>Common practice, no source.</summary>
    CommonPractice,

    /// <summary>Given by the caller, who answers for it.</summary>
    GivenByCaller,
}
