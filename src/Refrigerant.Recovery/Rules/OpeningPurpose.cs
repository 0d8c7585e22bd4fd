namespace Refrigerant.Recovery.Rules;

/// <summary>Why the appliance is opened.</summary>
public enum OpeningPurpose
{
    /// <summary>A major repair, or any repair that an evacuation to the atmosphere follows.</summary>
    MajorRepair = 0,

    /// <summary>Disposal.</summary>
    Disposal,

    /// <summary>A repair that is not major and that no evacuation to the atmosphere follows.</summary>
    NonMajorRepair,

    /// <summary>An oil change.</summary>
    OilChange,
}
