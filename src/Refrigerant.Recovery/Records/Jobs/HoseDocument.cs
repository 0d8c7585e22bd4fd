using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>A hose with the fittings in it.</summary>
internal sealed record HoseDocument
{
    /// <summary>Length, from 1 mm to 10 km.</summary>
    public required double LengthMeters { get; init; }

    /// <summary>Inner diameter, from 0.5 mm to 1 m. A "half-inch" hose is named by its fittings; its bore is less.</summary>
    public required double InnerDiameterMillimeters { get; init; }

    /// <summary>Roughness of the wall, 0 to 5 mm; 0.01 mm (smooth rubber) by default.</summary>
    public double? RoughnessMillimeters { get; init; }

    /// <summary>Height of its outlet above its inlet, −1000 m to 1000 m; zero by default.</summary>
    public double? RiseMeters { get; init; }

    /// <summary>Valves, couplers and core depressors in it; none by default.</summary>
    public IReadOnlyList<FittingDocument>? Fittings { get; init; }

    public static HoseDocument From(Hose hose) => new()
    {
        LengthMeters = Exact.Meters(hose.Length),
        InnerDiameterMillimeters = Exact.Millimeters(hose.InnerDiameter),
        RoughnessMillimeters = Exact.Millimeters(hose.Roughness),
        RiseMeters = Exact.Meters(hose.Rise),
        Fittings = [.. hose.Fittings.Select(fitting => FittingDocument.From(fitting))],
    };

    public Hose ToHose(DocumentNode node)
    {
        Fitting[] fittings = Fittings is null ? [] : [.. Fittings.Zip(node.Member("fittings").Items(), (fitting, item) => fitting.ToFitting(item))];
        return node.Build(() =>
        {
            Hose hose = new() { Length = Exact.LengthOf(LengthMeters), InnerDiameter = Exact.BoreOf(InnerDiameterMillimeters), Fittings = fittings };
            return hose with
            {
                Roughness = RoughnessMillimeters is double roughness ? Exact.BoreOf(roughness) : hose.Roughness,
                Rise = Exact.LengthOf(RiseMeters ?? 0),
            };
        });
    }
}
