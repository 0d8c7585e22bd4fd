using Refrigerant.Recovery.Equipment;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>The oil in an appliance.</summary>
internal sealed record OilDocument
{
    public required double MassKilograms { get; init; }

    public required OilKind Kind { get; init; }

    public double? MolarMassGramsPerMole { get; init; }

    public double? RefrigerantFraction { get; init; }

    public double? OutgassingTimeMinutes { get; init; }

    public static OilDocument From(ApplianceOil oil) => new()
    {
        MassKilograms = Plain.Kilograms(oil.Mass),
        Kind = oil.Kind,
        MolarMassGramsPerMole = oil.MolarMass is MolarMass molar ? Plain.Number(molar.KilogramsPerMole * 1e3) : null,
        RefrigerantFraction = Plain.Number(oil.RefrigerantFraction.DecimalFractions),
        OutgassingTimeMinutes = Plain.Minutes(oil.OutgassingTime),
    };

    public ApplianceOil ToOil(DocumentNode node) => node.Build(() =>
    {
        ApplianceOil oil = new() { Mass = Plain.MassOf(MassKilograms), Kind = Kind };
        return oil with
        {
            MolarMass = MolarMassGramsPerMole is double molar ? new MolarMass(molar / 1e3, MolarMassUnit.KilogramPerMole) : null,
            RefrigerantFraction = RefrigerantFraction is double fraction ? new Ratio(fraction, RatioUnit.DecimalFraction) : oil.RefrigerantFraction,
            OutgassingTime = OutgassingTimeMinutes is double time ? Plain.DurationOf(time) : oil.OutgassingTime,
        };
    });
}
