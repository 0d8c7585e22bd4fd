using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Oils;

namespace Refrigerant.Recovery.Rules;

/// <summary>Every figure of law, standard and trade that results rest on, with its source.</summary>
public static class RuleBook
{
    /// <summary>The figures, in the order of the layers that use them.</summary>
    public static IReadOnlyList<RuleFigure> All { get; } =
    [
        .. GaugeFigures.All,
        .. FillFigures.All,
        .. ListedFillingDensity.All.Select(row => row.Figure),
        .. ListedFillingRatio.All.Select(row => row.Figure),
        .. FillConstantFigures.All,
        .. OilBearingFillingRatio.All.Select(row => row.Figure),
        .. NonCondensableFigures.All,
        .. PurityFigures.All,
        .. SolubilityTable.Figures,
        .. EvacuationFigures.All,
        .. PlaceFigures.All,
        .. RecordFigures.All.Distinct(),
        .. FlammabilityFigures.All,
        .. OilServiceFigures.All,
    ];
}
