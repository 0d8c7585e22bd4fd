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

    public double? SolubilityFactor { get; init; }

    public double? FoamingTimeMinutes { get; init; }

    public double? DiffusionTimeMinutes { get; init; }

    public static OilDocument From(ApplianceOil oil) => new()
    {
        MassKilograms = Plain.Kilograms(oil.Mass),
        Kind = oil.Kind,
        MolarMassGramsPerMole = oil.MolarMass is MolarMass molar ? Plain.Number(molar.KilogramsPerMole * 1e3) : null,
        RefrigerantFraction = Plain.Number(oil.RefrigerantFraction.DecimalFractions),
        SolubilityFactor = oil.SolubilityFactor is double factor ? Plain.Number(factor) : null,
        FoamingTimeMinutes = Plain.Minutes(oil.FoamingTime),
        DiffusionTimeMinutes = Plain.Minutes(oil.DiffusionTime),
    };

    public ApplianceOil ToOil(DocumentNode node) => node.Build(() =>
    {
        ApplianceOil oil = new() { Mass = Plain.MassOf(MassKilograms), Kind = Kind };
        return oil with
        {
            MolarMass = MolarMassGramsPerMole is double molar ? new MolarMass(molar / 1e3, MolarMassUnit.KilogramPerMole) : null,
            RefrigerantFraction = RefrigerantFraction is double fraction ? new Ratio(fraction, RatioUnit.DecimalFraction) : oil.RefrigerantFraction,
            SolubilityFactor = SolubilityFactor,
            FoamingTime = FoamingTimeMinutes is double foaming ? Plain.DurationOf(foaming) : oil.FoamingTime,
            DiffusionTime = DiffusionTimeMinutes is double diffusion ? Plain.DurationOf(diffusion) : oil.DiffusionTime,
        };
    });
}
