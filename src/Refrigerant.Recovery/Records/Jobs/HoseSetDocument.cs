using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>The hoses of a job.</summary>
internal sealed record HoseSetDocument
{
    /// <summary>From the appliance's vapor port to the machine's inlet; at least one. In push-pull the machine blows through them.</summary>
    public required IReadOnlyList<HoseDocument> VaporSide { get; init; }

    /// <summary>A second run beside vaporSide, from another vapor port of the appliance to the machine's inlet; none by default. It counts in vapor recovery.</summary>
    public IReadOnlyList<HoseDocument>? SecondVaporSide { get; init; }

    /// <summary>From the appliance's liquid port to the cylinder, as push-pull uses it; none by default.</summary>
    public IReadOnlyList<HoseDocument>? LiquidSide { get; init; }

    /// <summary>From the machine's outlet to the cylinder; none by default. It counts for volume only.</summary>
    public IReadOnlyList<HoseDocument>? Discharge { get; init; }

    public static HoseSetDocument From(HoseSet hoses) => new()
    {
        VaporSide = From(hoses.VaporSide),
        SecondVaporSide = From(hoses.SecondVaporSide),
        LiquidSide = From(hoses.LiquidSide),
        Discharge = From(hoses.Discharge),
    };

    public HoseSet ToHoses(DocumentNode node)
    {
        Hose[] vapor = ToHoses(VaporSide, node.Member("vaporSide"));
        Hose[] second = ToHoses(SecondVaporSide, node.Member("secondVaporSide"));
        Hose[] liquid = ToHoses(LiquidSide, node.Member("liquidSide"));
        Hose[] discharge = ToHoses(Discharge, node.Member("discharge"));
        return node.Build(() => new HoseSet { VaporSide = vapor, SecondVaporSide = second, LiquidSide = liquid, Discharge = discharge });
    }

    private static HoseDocument[] From(IReadOnlyList<Hose> hoses) => [.. hoses.Select(HoseDocument.From)];

    private static Hose[] ToHoses(IReadOnlyList<HoseDocument>? hoses, DocumentNode node) =>
        hoses is null ? [] : [.. hoses.Zip(node.Items(), (hose, item) => hose.ToHose(item))];
}
