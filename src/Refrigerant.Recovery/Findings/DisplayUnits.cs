namespace Refrigerant.Recovery.Findings;

/// <summary>The units that a text for people is written in.</summary>
public enum DisplayUnits
{
    /// <summary>As gauges and scales in the United States show it: psig, inHg, lb and oz, °F.</summary>
    UnitedStatesCustomary = 0,

    /// <summary>The International System: kPa, kg and g, °C.</summary>
    International,
}
