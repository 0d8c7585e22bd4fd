using System.Collections.Generic;
using Refrigerant.Recovery.Docs.Charts;
using Refrigerant.Recovery.Docs.Questions;

namespace Refrigerant.Recovery.Docs;

/// <summary>Every example and every chart of the documentation.</summary>
internal static class Catalogue
{
    public static IReadOnlyList<Example> Examples { get; } =
    [
        new("level-up-here.txt", LevelUpHere.Run),
    ];

    public static IReadOnlyList<Chart> Charts { get; } =
    [
        new("level-up-here.png", ElevationChart.Draw),
    ];
}
