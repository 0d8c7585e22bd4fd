using System.Collections.Generic;
using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Rules;

/// <summary>The figures and sources of oil service, besides those of <see cref="EvacuationFigures"/>.</summary>
internal static class OilServiceFigures
{
    /// <summary>Pipe flow is laminar up to here.</summary>
    public const double LaminarReynolds = 2000;

    /// <summary>And turbulent from here; in between it may be either.</summary>
    public const double TurbulentReynolds = 4000;

    public static readonly RuleFigure Laminar = new(
        "oil in a drain hose flows laminar up to a Reynolds number of", "2000; turbulent from 4000", "any text on fluid mechanics", Editions.None, Evidence.FromMemory);

    public static readonly RuleFigure Nitrogen = new(
        "gas that pushes oil or tests for leaks", "dry nitrogen only; never compressed air or oxygen", "trade journals", Editions.None, Evidence.ReadSecondHand);

    public static readonly RuleFigure Families = new(
        "oil in customary use",
        "mineral with CFC and HCFC, polyol ester (or polyvinyl ether) with HFC, polyalkylene glycol in cars",
        "trade education",
        Editions.None,
        Evidence.ReadSecondHand);

    public static IReadOnlyList<RuleFigure> All { get; } = [Families, Nitrogen, Laminar];
}
