using System;
using System.Collections.Generic;

namespace Refrigerant.Recovery.CoolProp;

/// <summary>ASHRAE 34 designations and the names under which CoolProp has the same fluids.</summary>
/// <remarks>Most differ by the hyphen only: R-134a is R134a. The table has the others, as CoolProp's fluid files name them.</remarks>
internal static class RefrigerantNames
{
    private static readonly Dictionary<string, string> ByDesignation = new(StringComparer.OrdinalIgnoreCase)
    {
        ["R-50"] = "Methane",
        ["R-152a"] = "R152A",
        ["R-170"] = "Ethane",
        ["R-227ea"] = "R227EA",
        ["R-236ea"] = "R236EA",
        ["R-236fa"] = "R236FA",
        ["R-290"] = "n-Propane",
        ["R-365mfc"] = "R365MFC",
        ["R-600"] = "n-Butane",
        ["R-600a"] = "IsoButane",
        ["R-601"] = "n-Pentane",
        ["R-601a"] = "Isopentane",
        ["R-702"] = "Hydrogen",
        ["R-704"] = "Helium",
        ["R-717"] = "Ammonia",
        ["R-718"] = "Water",
        ["R-720"] = "Neon",
        ["R-728"] = "Nitrogen",
        ["R-732"] = "Oxygen",
        ["R-740"] = "Argon",
        ["R-744"] = "CarbonDioxide",
        ["R-744A"] = "NitrousOxide",
        ["R-764"] = "SulfurDioxide",
        ["R-1150"] = "Ethylene",
        ["R-1270"] = "Propylene",
        ["R-C270"] = "CycloPropane",
        ["R-E170"] = "DimethylEther",
    };

    private static readonly Dictionary<string, string> ByName = Reverse();

    /// <summary>Whether a text is a designation such as "R-134a": with the hyphen, which none of CoolProp's names of refrigerants has.</summary>
    public static bool IsDesignation(string text) => text.StartsWith("R-", StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a designation is of the 400 or 500 series: a blend.</summary>
    public static bool IsBlend(string designation) =>
        designation.Length >= 5 && designation[2] is '4' or '5' && IsDigit(designation[3]) && IsDigit(designation[4])
        && (designation.Length == 5 || !IsDigit(designation[5]));

    /// <summary>CoolProp's name of a designation.</summary>
    public static string Name(string designation) =>
        ByDesignation.TryGetValue(designation, out string? name) ? name : "R" + designation.Substring(2);

    /// <summary>The designation of one of CoolProp's names; the name itself where it has none.</summary>
    public static string Designation(string name)
    {
        const string Predefined = ".mix";
        string bare = name.EndsWith(Predefined, StringComparison.OrdinalIgnoreCase) ? name.Substring(0, name.Length - Predefined.Length) : name;
        if (ByName.TryGetValue(bare, out string? designation))
        {
            return designation;
        }

        bool refrigerant = bare.Length > 1 && bare[0] is 'R' or 'r' && (IsDigit(bare[1]) || (bare.Length > 2 && bare[1] is 'C' or 'E' && IsDigit(bare[2])));
        return refrigerant ? "R-" + bare.Substring(1) : bare;
    }

    private static bool IsDigit(char character) => character is >= '0' and <= '9';

    private static Dictionary<string, string> Reverse()
    {
        var names = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (KeyValuePair<string, string> pair in ByDesignation)
        {
            names[pair.Value] = pair.Key;
        }

        return names;
    }
}
