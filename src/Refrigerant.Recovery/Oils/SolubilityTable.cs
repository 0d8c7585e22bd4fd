using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Oils;

/// <summary>Factors on Raoult's rule, pair by pair: fitted where measurements were read, by family elsewhere.</summary>
internal static class SolubilityTable
{
    public const string Source = "Raoult's rule with a factor for the pair of refrigerant and oil (estimate)";

    /// <summary>Bounds of an estimate, against its best figure, where the pair was measured: the measured points come within 15 %, oils of one kind differ by as much again.</summary>
    public const double MeasuredSpread = 1.35;

    /// <summary>The same where it was not: factors of a family differ by that much.</summary>
    public const double FamilySpread = 2;

    /// <summary>Typical molar masses, kg/mol: mineral oil and alkylbenzene 300 to 350 g/mol, the others of ISO 32 to 68 500 to 750 g/mol (from memory).</summary>
    private const double LightOil = 0.32;
    private const double HeavyOil = 0.6;

    private static readonly (string Refrigerant, OilKind Kind, RaoultFactor Factor)[] Measured =
    [
        ("R-134a", OilKind.PolyolEster, new(1.45, 1.25, true)),
        ("R-32", OilKind.PolyolEster, new(2.1, 1.0, true)),
        ("R-600a", OilKind.PolyolEster, new(1.07, 0.35, true)),
        ("R-134a", OilKind.Alkylbenzene, new(0.4, 0.07, true)),
    ];

    public static IReadOnlyList<RuleFigure> Figures { get; } =
    [
        new("R-134a in polyol ester, times Raoult's rule by moles", "1.45 at low pressure to 1.25 at saturation", "fitted to Wahlström and Vamling, J. Chem. Eng. Data 1999 and 45 (2000) 97; Grebner, Univ. Illinois ACRC TR-13 (1992)", Editions.None, Evidence.ReadSecondHand),
        new("R-32 in polyol ester, times Raoult's rule by moles", "2.1 at low pressure to 1.0 at saturation", "fitted to Wahlström and Vamling, J. Chem. Eng. Data 1999", Editions.None, Evidence.ReadSecondHand),
        new("R-600a in polyol ester, times Raoult's rule by moles", "1.07 at low pressure to 0.35 at saturation", "fitted to Marcelino Neto and Barbosa, Int. J. Refrig. 31 (2008) 34", Editions.None, Evidence.ReadSecondHand),
        new("R-134a in alkylbenzene, times Raoult's rule by moles", "0.4 at low pressure to 0.07 at saturation", "fitted to Takigawa et al., Int. J. Refrig. 25 (2002) 1014", Editions.None, Evidence.ReadSecondHand),
        new("fluorinated refrigerants in ester, ether and glycol oils, times Raoult's rule", "1.5 to 1.0; in mineral oil and alkylbenzene 0.4 to 0.07", "between the measured pairs", Editions.None, Evidence.FromMemory),
        new("chlorinated refrigerants in mineral oil and alkylbenzene, times Raoult's rule", "1.6 to 1.0; in other oils 2.0 to 1.2", "textbook charts", Editions.None, Evidence.FromMemory),
        new("hydrocarbons in mineral oil and alkylbenzene, times Raoult's rule", "1.0; in other oils as R-600a", "textbook figures", Editions.None, Evidence.FromMemory),
        new("carbon dioxide in ester, ether and glycol oils, times Raoult's rule", "4 to 1; in mineral oil and alkylbenzene 1.0", "textbook charts", Editions.None, Evidence.FromMemory),
        new("ammonia in oils, times Raoult's rule", "0.35 to 0.2; in glycols 1.5 to 1.0", "textbook figures", Editions.None, Evidence.FromMemory),
        new("molar mass of mineral oil and alkylbenzene", "300 to 350 g/mol, 320 by default", "textbook figures", Editions.None, Evidence.FromMemory),
        new("molar mass of ester, ether and glycol oils, ISO 32 to 68", "500 to 750 g/mol, 600 by default", "textbook figures", Editions.None, Evidence.FromMemory),
    ];

    /// <summary>Molar mass that counts for an oil, kg/mol.</summary>
    public static double MolarMassOf(ApplianceOil oil) =>
        oil.MolarMass?.KilogramsPerMole ?? (oil.Kind is OilKind.Mineral or OilKind.Alkylbenzene ? LightOil : HeavyOil);

    /// <summary>The factor of a pair; of a blend the mean over its components by moles.</summary>
    public static RaoultFactor For(PropertyModel model, OilKind kind)
    {
        double thin = 0;
        double saturated = 0;
        bool measured = true;
        IReadOnlyList<FluidComponent> composition = model.Composition;
        if (composition.Count <= 1)
        {
            return ForPure(model.Designation, kind);
        }

        foreach (FluidComponent component in composition)
        {
            RaoultFactor factor = ForPure(component.Designation, kind);
            thin += component.MoleFraction * factor.Thin;
            saturated += component.MoleFraction * factor.Saturated;
            measured &= factor.IsMeasured;
        }

        return new RaoultFactor(thin, saturated, measured);
    }

    private static RaoultFactor ForPure(string designation, OilKind kind)
    {
        foreach ((string refrigerant, OilKind oil, RaoultFactor factor) in Measured)
        {
            if (oil == kind && refrigerant.Equals(designation, StringComparison.OrdinalIgnoreCase))
            {
                return factor;
            }
        }

        bool light = kind is OilKind.Mineral or OilKind.Alkylbenzene;
        return SoluteFamilies.Of(designation) switch
        {
            SoluteFamily.Chlorinated => light ? new(1.6, 1, false) : new(2, 1.2, false),
            SoluteFamily.Hydrocarbon => light ? new(1, 1, false) : new(1.07, 0.35, false),
            SoluteFamily.CarbonDioxide => light ? new(1, 1, false) : new(4, 1, false),
            SoluteFamily.Ammonia => kind == OilKind.PolyalkyleneGlycol ? new(1.5, 1, false) : new(0.35, 0.2, false),
            _ => light ? new(0.4, 0.07, false) : new(1.5, 1, false),
        };
    }
}
