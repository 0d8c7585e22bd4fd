using Refrigerant.Recovery.Cylinders;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>Filling rules of one's own: liquid fills a share of the volume at a temperature.</summary>
internal sealed record OwnFillRulesDocument
{
    /// <summary>What the set is called.</summary>
    public required string Place { get; init; }

    /// <summary>The share of the volume, above 0, at most 1.</summary>
    public required double LiquidShare { get; init; }

    /// <summary>The temperature at which it holds.</summary>
    public required double TemperatureCelsius { get; init; }

    /// <summary>Where it comes from, for the record.</summary>
    public required string Source { get; init; }

    public static OwnFillRulesDocument? From(FillRules rules) => rules.Own is not { } own ? null : new()
    {
        Place = rules.Place,
        LiquidShare = Exact.Number(own.Share),
        TemperatureCelsius = Exact.Number(own.Celsius),
        Source = own.Figure.Source,
    };

    public FillRules ToRules(DocumentNode node) =>
        node.Build(() => FillRules.FromCaller(Place, new Ratio(LiquidShare, RatioUnit.DecimalFraction), Exact.TemperatureOf(TemperatureCelsius), Source));
}
