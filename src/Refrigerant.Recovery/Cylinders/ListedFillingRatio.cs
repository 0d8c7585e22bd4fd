using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>A row of the table in packing instruction P200: kilograms per liter of water capacity, by test pressure.</summary>
internal sealed class ListedFillingRatio
{
    private ListedFillingRatio(string designation, int unNumber, double testPressureBar, double kilogramsPerLiter)
    {
        Designation = designation;
        TestPressureBar = testPressureBar;
        KilogramsPerLiter = kilogramsPerLiter;
        Figure = new RuleFigure(
            $"filling ratio of {designation} (UN {unNumber}) at {Require.Text(testPressureBar)} bar test pressure",
            $"{Require.Text(kilogramsPerLiter)} kg/l",
            "ADR/RID, 4.1.4.1, P200 table 2",
            Editions.Adr,
            Evidence.Read);
    }

    /// <summary>Every row; a refrigerant's lowest test pressure first.</summary>
    public static IReadOnlyList<ListedFillingRatio> All { get; } =
    [
        new("R-12", 1028, 16, 1.15),
        new("R-13", 1022, 100, 0.83), new("R-13", 1022, 120, 0.90), new("R-13", 1022, 190, 1.04), new("R-13", 1022, 250, 1.11),
        new("R-13B1", 1009, 42, 1.13), new("R-13B1", 1009, 120, 1.44), new("R-13B1", 1009, 250, 1.60),
        new("R-14", 1982, 200, 0.71), new("R-14", 1982, 300, 0.90),
        new("R-21", 1029, 10, 1.23),
        new("R-22", 1018, 27, 1.03),
        new("R-23", 1984, 190, 0.88), new("R-23", 1984, 250, 0.96),
        new("R-32", 3252, 48, 0.78),
        new("R-41", 2454, 300, 0.63),
        new("R-114", 1958, 10, 1.30),
        new("R-115", 1020, 25, 1.05),
        new("R-116", 2193, 200, 1.13),
        new("R-124", 1021, 11, 1.20),
        new("R-125", 3220, 35, 0.87), new("R-125", 3220, 49, 0.95),
        new("R-134a", 3159, 18, 1.05),
        new("R-142b", 2517, 10, 0.99),
        new("R-143a", 2035, 35, 0.73),
        new("R-152a", 1030, 16, 0.79),
        new("R-161", 2453, 30, 0.57),
        new("R-170", 1035, 95, 0.25), new("R-170", 1035, 120, 0.30), new("R-170", 1035, 300, 0.40),
        new("R-218", 2424, 25, 1.04),
        new("R-227ea", 3296, 13, 1.21),
        new("R-C318", 1976, 11, 1.32),
        new("R-404A", 3337, 36, 0.82),
        new("R-407A", 3338, 32, 0.94),
        new("R-407B", 3339, 33, 0.93),
        new("R-407C", 3340, 30, 0.95),
        new("R-500", 2602, 22, 1.01),
        new("R-502", 1973, 31, 1.01),
        new("R-503", 2599, 31, 0.12), new("R-503", 2599, 42, 0.17), new("R-503", 2599, 100, 0.64),
        new("R-290", 1978, 23, 0.43),
        new("R-600", 1011, 10, 0.52),
        new("R-600a", 1969, 10, 0.49),
        new("R-1270", 1077, 27, 0.43),
        new("R-E170", 1033, 18, 0.58),
        new("R-717", 1005, 29, 0.54),
        new("R-744", 1013, 190, 0.68), new("R-744", 1013, 250, 0.76),
    ];

    public string Designation { get; }

    public double TestPressureBar { get; }

    public double KilogramsPerLiter { get; }

    public RuleFigure Figure { get; }

    /// <summary>
    /// The row for a refrigerant: the highest test pressure that the cylinder reaches; where that is not known, or below all of them, the
    /// lowest; null where none is listed.
    /// </summary>
    public static ListedFillingRatio? For(string designation, double? testPressureBar)
    {
        ListedFillingRatio[] rows = [.. All.Where(row => row.Designation == designation)];
        return rows.LastOrDefault(row => row.TestPressureBar <= testPressureBar) ?? rows.FirstOrDefault();
    }
}
