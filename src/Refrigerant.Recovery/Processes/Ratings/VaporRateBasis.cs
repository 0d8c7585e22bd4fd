namespace Refrigerant.Recovery.Processes;

/// <summary>How a published vapor rate was measured.</summary>
public enum VaporRateBasis
{
    /// <summary>
    /// A chamber of vapor only, from saturation at the rating temperature down to a tenth of that pressure, but not below the final vacuum
    /// nor above 100 kPa (40 CFR 82 Subpart F Appendix B3, 3.11 and 7.4.1.2). The high-temperature rate is the same from 40 °C.
    /// </summary>
    VaporChamber = 0,

    /// <summary>The steady rate at saturation at the rating temperature.</summary>
    SteadyAtSaturation,

    /// <summary>The average from start to final vacuum of a stated appliance.</summary>
    AverageOfAppliance,
}
