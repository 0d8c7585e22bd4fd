using System.Collections.Generic;
using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Gauges;

/// <summary>The figures behind gauge readings.</summary>
internal static class GaugeFigures
{
    public static IReadOnlyList<RuleFigure> All { get; } =
    [
        new(
            "pressure of the air at an elevation",
            "101 325 Pa·(1 − 0.0065·H/288.15)^5.2559, H in m",
            "U.S. Standard Atmosphere (ISO 2533)",
            Editions.UsStandardAtmosphere,
            Evidence.ReadSecondHand),
        new("conventional inch of mercury", "3386.389 Pa", "NIST SP 811", Editions.None, Evidence.ReadSecondHand),
        new("conventional millimeter of mercury", "133.322387415 Pa", "NIST SP 811", Editions.None, Evidence.ReadSecondHand),
        new("lowest land, the shore of the Dead Sea", "−430 m", "geography", Editions.None, Evidence.FromMemory),
    ];
}
