using Refrigerant.Recovery.Equipment;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>A volume of an appliance that a restriction separates from the others.</summary>
internal sealed record SectionDocument
{
    /// <summary>What it is called, such as "receiver"; not empty and unlike the names of the other sections.</summary>
    public required string Name { get; init; }

    /// <summary>Its internal volume, 1 mL to 10 000 m³; the volumes of all sections add up to that of the appliance.</summary>
    public required double InternalVolumeLiters { get; init; }

    /// <summary>Refrigerant in it before the job, 1 mg to 1000 t; the charges of all sections add up to that of the appliance.</summary>
    public required double ChargeKilograms { get; init; }

    public static SectionDocument From(ApplianceSection section) => new()
    {
        Name = section.Name,
        InternalVolumeLiters = Exact.Liters(section.InternalVolume),
        ChargeKilograms = Exact.Kilograms(section.Charge),
    };

    public ApplianceSection ToSection(DocumentNode node) => node.Build(() => new ApplianceSection
    {
        Name = Name,
        InternalVolume = Exact.VolumeOf(InternalVolumeLiters),
        Charge = Exact.MassOf(ChargeKilograms),
    });
}
