using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>Published filling ratios for recovered refrigerant that carries oil (of a density of at least 0.82 kg/dm³ at 15 °C).</summary>
internal sealed class OilBearingFillingRatio
{
    private OilBearingFillingRatio(string designation, double kilogramsPerLiter)
    {
        Designation = designation;
        KilogramsPerLiter = kilogramsPerLiter;
        Figure = new RuleFigure(
            $"filling ratio of recovered {designation} with refrigeration oil",
            $"{Require.Text(kilogramsPerLiter)} kg/l",
            "TRG 102, annex group 3.1 (Germany)",
            Editions.Trg102,
            Evidence.Read);
    }

    public static IReadOnlyList<OilBearingFillingRatio> All { get; } = [new("R-22", 0.75), new("R-12", 0.75)];

    public string Designation { get; }

    public double KilogramsPerLiter { get; }

    public RuleFigure Figure { get; }

    public static OilBearingFillingRatio? For(string designation) => All.FirstOrDefault(row => row.Designation == designation);
}
