using System.Collections.Generic;
using Refrigerant.Recovery.Docs.Charts;
using Refrigerant.Recovery.Docs.Questions;

namespace Refrigerant.Recovery.Docs;

/// <summary>Every example and every chart of the documentation.</summary>
internal static class Catalogue
{
    public static IReadOnlyList<Example> Examples { get; } =
    [
        new("level-up-here.txt", LevelUpHere.Gauge),
        new("how-much-limit.txt", HowMuchMayIPut.Limit),
        new("how-much-rules.txt", HowMuchMayIPut.Rules),
        new("how-much-scale.txt", HowMuchMayIPut.OnTheScale),
        new("how-much-heat.txt", HowMuchMayIPut.Heat),
    ];

    public static IReadOnlyList<Chart> Charts { get; } =
    [
        new("level-up-here.png", ElevationChart.Draw),
        new("how-much.png", CylinderHeatChart.Draw),
    ];
}
