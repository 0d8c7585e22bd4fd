using Refrigerant.Recovery.Equipment;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>The oil in an appliance.</summary>
internal sealed record OilDocument
{
    /// <summary>Mass of the oil without refrigerant, greater than 0 up to 100 t.</summary>
    public required double MassKilograms { get; init; }

    /// <summary>The oil's family, which gives its typical molar mass.</summary>
    public required OilKind Kind { get; init; }

    /// <summary>Molar mass of the oil, 0.05 to 5 kg/mol; where it is left out a typical one of its family: mineral and alkylbenzene 320 g/mol, others 600 g/mol (from memory).</summary>
    public double? MolarMassGramsPerMole { get; init; }

    /// <summary>Mass fraction of refrigerant in the liquid of oil and refrigerant at the start, 0 to 0.9; 0.2 by default (common practice, no source).</summary>
    public double? RefrigerantFraction { get; init; }

    /// <summary>Time constant with which the dissolved refrigerant follows its equilibrium, 1 s to 1e6 s; 30 min by default (common practice, no source).</summary>
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
