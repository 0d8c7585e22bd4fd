using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>The filling constants of Japan's Cylinder Safety Ordinance: at most V/C kilograms, V the volume in liters.</summary>
internal static class FillConstantFigures
{
    /// <summary>48 °C, K.</summary>
    public const double Temperature = 321.15;

    /// <summary>C of a refrigerant that is not listed is this over its specific gravity at 48 °C.</summary>
    public const double Numerator = 1.05;

    /// <summary>Test pressure over the pressure at 48 °C, at least; taken with absolute pressures here, the stricter reading.</summary>
    public const double TestPressureRatio = 5.0 / 3;

    private const string Source = "Cylinder Safety Ordinance (Japan, MITI 50 of 1966), art. ";
    private const string Edition = "text in force 2026-06-12";

    public static readonly RuleFigure NotListed = new(
        "filling constant of a refrigerant that is not listed", "C = 1.05 / specific gravity at 48 °C; V/C kg", Source + "22", Edition, Evidence.Read);

    public static readonly RuleFigure Classes = new(
        "fluorocarbon cylinder classes FC1 to FC4: 5/3 of the pressure at 48 °C at most the test pressure", "3.0, 4.0, 5.0, 6.0 MPa", Source + "2", Edition, Evidence.Read);

    public static readonly RuleFigure Reinspection = new(
        "re-inspection of welded cylinders", "every 5 years, from 20 years of age every 2", Source + "24", Edition, Evidence.Read);

    /// <summary>C in L/kg, by designation.</summary>
    private static readonly IReadOnlyDictionary<string, double> Constants = new Dictionary<string, double>
    {
        ["R-290"] = 2.35,
        ["R-1270"] = 2.27,
        ["R-600"] = 2.05,
        ["R-717"] = 1.86,
        ["R-E170"] = 1.67,
        ["R-744"] = 1.34,
        ["R-152a"] = 1.27,
        ["R-32"] = 1.24,
        ["R-404A"] = 1.15,
        ["R-1234yf"] = 1.05,
        ["R-500"] = 1.00,
        ["R-13"] = 1.00,
        ["R-22"] = 0.98,
        ["R-1234ze(E)"] = 0.96,
        ["R-134a"] = 0.94,
        ["R-502"] = 0.93,
        ["R-115"] = 0.90,
        ["R-12"] = 0.86,
        ["R-13B1"] = 0.79,
        ["R-114"] = 0.76,
        ["R-C318"] = 0.74,
    };

    public static IReadOnlyList<RuleFigure> All { get; } = [.. Constants.Select(row => Listed(row.Key, row.Value)), NotListed, Classes, Reinspection];

    /// <summary>The constant listed for a refrigerant, L/kg, with its figure; null where none is.</summary>
    public static (double Constant, RuleFigure Figure)? For(string designation) =>
        Constants.TryGetValue(designation, out double constant) ? (constant, Listed(designation, constant)) : null;

    private static RuleFigure Listed(string designation, double constant) => new(
        "filling constant of " + designation, $"C = {Require.Text(constant)} L/kg; V/C kg", Source + "22", Edition, Evidence.Read);
}
