using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Rules;

namespace Refrigerant.Recovery.Docs.Tables;

/// <summary>Every refrigerant of the catalogue with what is known about it.</summary>
internal static class RefrigerantsTable
{
    public static void Print()
    {
        Console.WriteLine("| refrigerant | group | GWP AR4 | AR5 | AR6 | ODP | critical, °C | psia at 104 °F | class by 40 CFR 82.152 | model |");
        Console.WriteLine("|---|---|--:|--:|--:|--:|--:|--:|---|---|");
        foreach (Fluid fluid in Fluid.All)
        {
            Console.WriteLine(Line(fluid));
        }
    }

    private static string Line(Fluid fluid)
    {
        RefrigerantFacts facts = RefrigerantFacts.For(fluid);
        string model = fluid.Quality == ModelQuality.Published ? "published" : "**estimated**";
        string pressure = "";
        string name = "";
        try
        {
            PressureClassification found = PressureClassification.For(fluid);
            pressure = found.PressureAt104F?.PoundsForcePerSquareInch.ToString("F1", null) ?? "above critical";
            name = Name(found.ByLetter);
        }
        catch (PropertyRangeException)
        {
            pressure = "outside range";
        }

        return $"| {fluid.Designation} | {facts.SafetyGroup?.Value} | {Gwp(facts, AssessmentReport.Fourth)} | {Gwp(facts, AssessmentReport.Fifth)} "
            + $"| {Gwp(facts, AssessmentReport.Sixth)} | {facts.OzoneDepletionPotential} | {fluid.CriticalTemperature.DegreesCelsius:F1} | {pressure} | {name} | {model} |";
    }

    private static string Gwp(RefrigerantFacts facts, AssessmentReport report) => facts.GlobalWarmingPotential(report) is SourcedFigure figure
        ? (figure.IsUpperBound ? "&lt;" : "") + figure.Value.ToString(figure.Value < 10 ? "G3" : "F0", null)
        : "";

    private static string Name(PressureClass found) => found switch
    {
        PressureClass.Low => "low",
        PressureClass.Medium => "medium",
        PressureClass.High => "high",
        _ => "very high",
    };
}
