using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Rules;

/// <summary>Whether an oil is one that goes with a refrigerant in customary use.</summary>
public static class OilMatch
{
    private static readonly (OilFamilies Family, string Text)[] Names =
    [
        (OilFamilies.Mineral, "mineral oil"),
        (OilFamilies.PolyolEster, "polyol ester"),
        (OilFamilies.PolyalkyleneGlycol, "polyalkylene glycol"),
        (OilFamilies.Polyalphaolefin, "polyalphaolefin"),
    ];

    /// <summary>The family that a kind of oil belongs to.</summary>
    /// <param name="oil">The kind of oil.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such kind.</exception>
    public static OilFamilies FamilyOf(OilKind oil) => Require.Defined(oil, nameof(oil)) switch
    {
        OilKind.Mineral or OilKind.Alkylbenzene => OilFamilies.Mineral,
        OilKind.PolyolEster or OilKind.PolyvinylEther => OilFamilies.PolyolEster,
        _ => OilFamilies.PolyalkyleneGlycol,
    };

    /// <summary>The finding where the oil is not one in customary use with the refrigerant, or that is not known here; null where it is.</summary>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="oil">The kind of oil.</param>
    /// <exception cref="ArgumentNullException">The fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No such kind of oil.</exception>
    public static Finding? Check(Fluid fluid, OilKind oil)
    {
        OilFamilies family = FamilyOf(oil);
        OilFamilies customary = RefrigerantFacts.For(Require.NotNull(fluid, nameof(fluid))).Oils;
        if ((customary & family) != OilFamilies.None)
        {
            return null;
        }

        string data = "the maker's data decide.";
        return customary == OilFamilies.None
            ? new Finding(
                RuleCodes.OilUnknown,
                Severity.Note,
                Sources.CommonPractice,
                $"Which oils are customary with {fluid.Designation} is not known here: {data}")
            : new Finding(
                RuleCodes.OilNotCustomary,
                Severity.Caution,
                OilServiceFigures.Families.Source,
                $"{fluid.Designation} is customarily used with {Text(customary)}, not with {Text(family)}: {data}");
    }

    /// <summary>The families in words.</summary>
    private static string Text(OilFamilies families) => string.Join(" or ", Names.Where(name => families.HasFlag(name.Family)).Select(name => name.Text));
}
