using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Oils;

namespace Refrigerant.Recovery.Docs.Validation;

/// <summary>Solubility of refrigerant in oil: measured points, what the library takes for the pair, and Raoult's rule alone.</summary>
/// <remarks>
/// Read from the data tables of the public repository carlesRT/sorpproplib_JSON, which names the papers: Wahlström and Vamling, J. Chem. Eng. Data 1999
/// (R-134a and R-32 in pentaerythritol tetrapentanoate) and 45 (2000) 97 (C9 ester); Marcelino Neto and Barbosa, Int. J. Refrig. 31 (2008) 34 (R-600a in
/// an ester of ISO 7); Grebner, Univ. Illinois ACRC TR-13 (1992) (ester); Takigawa et al., Int. J. Refrig. 25 (2002) 1014 (alkylbenzene 15).
/// </remarks>
internal static class OilPairs
{
    /// <summary>Refrigerant, oil, its name, °C, kPa absolute, mole fraction of refrigerant.</summary>
    public static IReadOnlyList<(string Refrigerant, OilKind Kind, string Oil, double Celsius, double Kilopascals, double Fraction)> Points { get; } =
    [
        ("R-134a", OilKind.PolyolEster, "tetrapentanoate", 29.9, 51.5, 0.0907),
        ("R-134a", OilKind.PolyolEster, "tetrapentanoate", 29.9, 90.2, 0.1551),
        ("R-134a", OilKind.PolyolEster, "tetrapentanoate", 29.9, 132.1, 0.2219),
        ("R-134a", OilKind.PolyolEster, "tetrapentanoate", 69.9, 93.9, 0.0662),
        ("R-134a", OilKind.PolyolEster, "C9 ester", 29.9, 103.8, 0.1622),
        ("R-134a", OilKind.PolyolEster, "ester (Grebner)", 20, 208, 0.405),
        ("R-134a", OilKind.PolyolEster, "ester (Grebner)", -10, 57.2, 0.413),
        ("R-134a", OilKind.Alkylbenzene, "alkylbenzene 15", 40, 329, 0.123),
        ("R-134a", OilKind.Alkylbenzene, "alkylbenzene 15", 40, 599, 0.222),
        ("R-32", OilKind.PolyolEster, "tetrapentanoate", 29.9, 71.1, 0.0734),
        ("R-32", OilKind.PolyolEster, "tetrapentanoate", 29.9, 123.8, 0.1216),
        ("R-600a", OilKind.PolyolEster, "ester ISO 7", 20, 11.8, 0.0395),
        ("R-600a", OilKind.PolyolEster, "ester ISO 7", 20, 34.5, 0.1150),
        ("R-600a", OilKind.PolyolEster, "ester ISO 7", 20, 77.6, 0.2288),
        ("R-600a", OilKind.PolyolEster, "ester ISO 7", 30, 27.9, 0.0750),
    ];

    /// <summary>Mole fraction of refrigerant by the factor of the pair.</summary>
    public static double OfPair(string refrigerant, OilKind kind, double celsius, double kilopascals)
    {
        PropertyModel model = Fluid.Get(refrigerant).Model;
        var solution = new OilSolution(model, SolubilityTable.For(model, kind), model.MolarMass);
        double ratio = solution.MassRatio(Share(model, celsius, kilopascals));
        return ratio / (1 + ratio);
    }

    /// <summary>Mole fraction of refrigerant by Raoult's rule.</summary>
    public static double OfRaoult(string refrigerant, double celsius, double kilopascals) => Share(Fluid.Get(refrigerant).Model, celsius, kilopascals);

    /// <summary>Prints the table.</summary>
    public static void Print()
    {
        Console.WriteLine("| refrigerant | oil | °C | kPa absolute | x measured | x of the pair | deviation | Raoult's rule |");
        Console.WriteLine("|---|---|--:|--:|--:|--:|--:|--:|");
        foreach ((string refrigerant, OilKind kind, string oil, double celsius, double kilopascals, double fraction) in Points)
        {
            double pair = OfPair(refrigerant, kind, celsius, kilopascals);
            double raoult = OfRaoult(refrigerant, celsius, kilopascals);
            Console.WriteLine($"| {refrigerant} | {oil} | {celsius} | {kilopascals} | {fraction:F4} | {pair:F4} | {Off(pair, fraction)} | {Off(raoult, fraction)} |");
        }
    }

    private static double Share(PropertyModel model, double celsius, double kilopascals) =>
        1e3 * kilopascals / model.SaturationAtTemperature(celsius + 273.15).Bubble.Pressure;

    private static string Off(double value, double measured) => $"{100 * ((value / measured) - 1):+0;-0;0} %";
}
