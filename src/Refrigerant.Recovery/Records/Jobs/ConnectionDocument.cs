using Refrigerant.Recovery.Equipment;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>What joins two sections of an appliance: an opening that lets little through, or a check valve.</summary>
internal sealed record ConnectionDocument
{
    /// <summary>Name of a section; a check valve opens from here.</summary>
    public required string From { get; init; }

    /// <summary>Name of the other section.</summary>
    public required string To { get; init; }

    /// <summary>Cv: US gallons of water a minute at a drop of 1 psi, 1e-6 to 10 000.</summary>
    public required double FlowCoefficient { get; init; }

    /// <summary>Whether it is a check valve, which lets refrigerant through one way only; false by default.</summary>
    public bool? IsCheckValve { get; init; }

    public static ConnectionDocument Of(SectionConnection connection) => new()
    {
        From = connection.From,
        To = connection.To,
        FlowCoefficient = Exact.Number(connection.FlowCoefficient),
        IsCheckValve = connection.IsCheckValve,
    };

    public SectionConnection ToConnection(DocumentNode node) => node.Build(() => new SectionConnection
    {
        From = From,
        To = To,
        FlowCoefficient = FlowCoefficient,
        IsCheckValve = IsCheckValve ?? false,
    });
}
