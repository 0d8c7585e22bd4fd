using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;

namespace Refrigerant.Recovery.Docs.Validation;

/// <summary>Heat from still air to steel cylinders that boil off: trade rules for chlorine against natural convection.</summary>
/// <remarks>
/// Rules: 1.0 lb a day for each °F from a 150 lb cylinder into a vacuum, 1.5 into 35 psig, 8 from a ton container (trade rules for chlorine, read); with 268 kJ/kg (from
/// memory) 2.5 to 4 and 20 W/K over areas of 1.13 and 5.8 m² (estimates).
/// </remarks>
internal static class CylindersInStillAir
{
    private const double LatentHeat = 268e3;
    private const double Pound = 0.45359237;
    private const double Day = 86_400;
    private const double Air = 294;

    /// <summary>Name, lb a day for each °F, area in m², height or diameter in m, whether it stands.</summary>
    public static IReadOnlyList<(string Name, double Rule, double Area, double Size, bool Stands)> Cases { get; } =
    [
        ("150 lb cylinder into a vacuum", 1.0, 1.13, 1.35, true),
        ("150 lb cylinder into 35 psig", 1.5, 1.13, 1.35, true),
        ("ton container", 8, 5.8, 0.76, false),
    ];

    /// <summary>The rule as a heat transfer coefficient, W/(m²·K).</summary>
    public static double OfRule(double poundsPerDayAndFahrenheit, double area) => poundsPerDayAndFahrenheit * Pound / Day * LatentHeat * 1.8 / area;

    /// <summary>Natural convection with the wall some kelvins colder than the air, W/(m²·K).</summary>
    public static double Convection(double size, bool stands, double colder) =>
        stands ? StillAir.Upright(size, Air - colder, Air) : StillAir.Lying(size, Air - colder, Air);

    /// <summary>Prints rules and convection.</summary>
    public static void Print()
    {
        Console.WriteLine("| cylinder | rule, W/K | rule, W/(m²·K) | convection, 5 to 20 K colder than the air, W/(m²·K) | verdict |");
        Console.WriteLine("|---|--:|--:|--:|---|");
        foreach ((string name, double rule, double area, double size, bool stands) in Cases)
        {
            double coefficient = OfRule(rule, area);
            double least = Convection(size, stands, 5), most = Convection(size, stands, 20);
            string verdict = coefficient < least ? $"outside: {(least / coefficient) - 1:P0} more" : coefficient > most ? $"outside: {1 - (most / coefficient):P0} less" : "inside";
            Console.WriteLine($"| {name} | {coefficient * area:F1} | {coefficient:F1} | {least:F1} to {most:F1} | {verdict} |");
        }
    }
}
