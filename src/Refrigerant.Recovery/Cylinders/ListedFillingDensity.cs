using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>A row of the filling densities of 49 CFR 173.304a(a)(2): percent of the water capacity, by the service pressure marked.</summary>
internal sealed class ListedFillingDensity
{
    /// <summary>Marks are whole psi; what a conversion through pascals loses is far less than this.</summary>
    private const double PressureTolerancePsi = 0.5;

    private ListedFillingDensity(string designation, double percent, int servicePressurePsi, string types, Evidence evidence)
    {
        Designation = designation;
        Percent = percent;
        ServicePressurePsi = servicePressurePsi;
        Types = types.Split([' '], StringSplitOptions.RemoveEmptyEntries);
        Figure = new RuleFigure(
            $"filling density of {designation} at {servicePressurePsi} psi service pressure and above",
            $"{Require.Text(percent)} % of WC",
            "49 CFR 173.304a(a)(2)",
            evidence == Evidence.FromMemory ? Editions.None : Editions.Cfr49,
            evidence);
    }

    /// <summary>Every row of a refrigerant of interest here; the lowest service pressure first.</summary>
    public static IReadOnlyList<ListedFillingDensity> All { get; } =
    [
        new("R-12", 119, 225, "3A 3AA 3B 4B 4BA 4BW 4E 39 3E 3AL", Evidence.Read),
        new("R-13", 100, 1800, "3A 3AA 3E 39 3AL", Evidence.Read),
        new("R-13B1", 124, 400, "3A 3AA 3B 4AA 4B 4BA 4BW 3E 39 3AL", Evidence.Read),
        new("R-22", 105, 240, "3A 3AA 3B 4B 4BA 4BW 4E 39 3E 3AL", Evidence.Read),
        new("R-115", 110, 225, "3A 3AA 3B 4BA 4B 4BW 3E 39 3AL", Evidence.Read),
        new("R-142b", 100, 150, "3A 3AA 3B 4B 4BA 4BW 3E 39 3AL", Evidence.Read),
        new("R-152a", 79, 150, "", Evidence.FromMemory),
        new("R-717", 54, 480, "3A 3AA 4AA 3E 3AL", Evidence.Read),
        new("R-744", 68, 1800, "3A 3AX 3AA 3AAX 3T 3E 39 3AL", Evidence.Read),
        new("R-744", 70.3, 2000, "3A 3AX 3AA 3AAX 3T", Evidence.Read),
        new("R-744", 73.2, 2265, "3A 3AX 3AA 3AAX 3T", Evidence.Read),
        new("R-744", 74.5, 2400, "3A 3AX 3AA 3AAX 3T", Evidence.Read),
        new("R-1132a", 73, 2200, "", Evidence.FromMemory),
    ];

    public string Designation { get; }

    public double Percent { get; }

    public int ServicePressurePsi { get; }

    /// <summary>The DOT specifications listed; empty where not known here.</summary>
    public IReadOnlyList<string> Types { get; }

    public RuleFigure Figure { get; }

    /// <summary>The row for a refrigerant: the highest service pressure that the cylinder reaches, else the lowest; null where none is listed.</summary>
    public static ListedFillingDensity? For(string designation, Pressure servicePressure)
    {
        ListedFillingDensity[] rows = [.. All.Where(row => row.Designation == designation)];
        return rows.LastOrDefault(row => row.IsReachedBy(servicePressure)) ?? rows.FirstOrDefault();
    }

    /// <summary>Whether a cylinder of a service pressure has the mark that the row asks for, or a higher one.</summary>
    public bool IsReachedBy(Pressure servicePressure) => ServicePressurePsi <= servicePressure.PoundsForcePerSquareInch + PressureTolerancePsi;
}
