using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>A hose with the fittings in it.</summary>
internal sealed record HoseDocument
{
    public required double LengthMeters { get; init; }

    public required double InnerDiameterMillimeters { get; init; }

    public double? RoughnessMillimeters { get; init; }

    public double? RiseMeters { get; init; }

    public IReadOnlyList<FittingDocument>? Fittings { get; init; }

    public static HoseDocument From(Hose hose) => new()
    {
        LengthMeters = Plain.Meters(hose.Length),
        InnerDiameterMillimeters = Plain.Millimeters(hose.InnerDiameter),
        RoughnessMillimeters = Plain.Millimeters(hose.Roughness),
        RiseMeters = Plain.Meters(hose.Rise),
        Fittings = [.. hose.Fittings.Select(fitting => FittingDocument.From(fitting, hose.InnerDiameter))],
    };

    public Hose ToHose(DocumentNode node)
    {
        Fitting[] fittings = Fittings is null ? [] : [.. Fittings.Select((fitting, i) => fitting.ToFitting(node.Member("fittings").Item(i)))];
        return node.Build(() =>
        {
            Hose hose = new() { Length = Plain.LengthOf(LengthMeters), InnerDiameter = Plain.LengthOf(InnerDiameterMillimeters / 1e3), Fittings = fittings };
            return hose with
            {
                Roughness = RoughnessMillimeters is double roughness ? Plain.LengthOf(roughness / 1e3) : hose.Roughness,
                Rise = Plain.LengthOf(RiseMeters ?? 0),
            };
        });
    }
}
