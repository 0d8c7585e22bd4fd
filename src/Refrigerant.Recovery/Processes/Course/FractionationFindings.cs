using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;

namespace Refrigerant.Recovery.Processes;

/// <summary>What a drift of composition should make people think of.</summary>
internal static class FractionationFindings
{
    /// <summary>A smaller rise of the flammable components' share of the liquid or vapor, by mole, is not worth a word.</summary>
    private const double WorthSaying = 0.02;

    private const string Method = "multi-fluid model with a balance of each component and a flash at each step";

    /// <summary>Components of class 2L, 2 or 3 of ANSI/ASHRAE Standard 34, from memory.</summary>
    private static readonly HashSet<string> Flammable = new(StringComparer.Ordinal)
    {
        "R-32", "R-40", "R-41", "R-141b", "R-142b", "R-143a", "R-152a", "R-161", "R-170", "R-290", "R-365mfc", "R-600", "R-600a", "R-601", "R-601a",
        "R-717", "R-1130(E)", "R-1132(E)", "R-1132a", "R-1234yf", "R-1234ze(E)", "R-1234ze(Z)", "R-1243zf", "R-1270", "R-E170",
    };

    public static IReadOnlyList<Finding> For(MixtureModel model, FractionationResult result)
    {
        var findings = new List<Finding>();
        if (result.LastLiquid is FractionationPoint last)
        {
            FractionationPoint first = result.Points.First(point => point.Liquid is not null);
            Drift(findings, model, first, last);
            Burning(findings, model, first, last);
        }

        if (model.Quality == ModelQuality.Estimated)
        {
            findings.Add(new Finding(
                PlanCodes.BlendEstimated,
                Severity.Note,
                model.Source,
                $"A pair of {FindingValue.Text("refrigerant", model.Designation)}'s components has no published mixture parameters: pressures may be off by 5 % to 15 %, and compositions with them."));
        }

        findings.Sort((a, b) => b.Severity.CompareTo(a.Severity));
        return findings.AsReadOnly();
    }

    private static void Drift(List<Finding> findings, MixtureModel model, FractionationPoint first, FractionationPoint last)
    {
        string[] parts = [.. first.Liquid!.Zip(last.Liquid!, (a, b) => FormattableString.Invariant(
            $"{a.Designation} {a.MassFraction * 100:F1} % to {b.MassFraction * 100:F1} %"))];
        double change = (last.Pressure.Pascals / last.FixedCompositionPressure.Pascals) - 1;
        FindingValue off = FindingValue.Fraction("pressure, off by", Math.Abs(change));
        findings.Add(new Finding(
            StageCodes.BlendDrifts,
            Severity.Note,
            Method,
            $"Drawing vapor changes {FindingValue.Text("refrigerant", model.Designation)}. Its liquid goes from {FindingValue.Text("composition", string.Join(", ", parts))} by mass with {FindingValue.Mass("left", last.Mass)} left; the pressure then is {off} {(change < 0 ? "below" : "above")} that of the blend as charged at the same temperature. Recover liquid first, and do not charge what is left as {model.Designation}."));
    }

    /// <summary>No public formula says when a mixture burns; what can be said is how the share of components that do changes.</summary>
    private static void Burning(List<Finding> findings, MixtureModel model, FractionationPoint first, FractionationPoint last)
    {
        bool all = model.Composition.All(c => Flammable.Contains(c.Designation));
        double asCharged = Share(model.Composition);
        (string Where, double Share)[] places = [("liquid", Share(last.Liquid!)), ("vapor", Math.Max(Share(first.Vapor), Share(last.Vapor)))];
        (string where, double most) = places[0].Share >= places[1].Share ? places[0] : places[1];
        if (all || most < asCharged + WorthSaying)
        {
            return;
        }

        findings.Add(new Finding(
            StageCodes.BlendMayBurn,
            Severity.Caution,
            "ANSI/ASHRAE Standard 34 classes of the components, from memory; " + Method,
            $"Components that burn by themselves rise from {FindingValue.Fraction("as charged", asCharged)} of {FindingValue.Text("refrigerant", model.Designation)} as charged to {FindingValue.Fraction("most", most)} by mole of its {where}. No public formula says whether that burns: ANSI/ASHRAE 34 and ISO 817 classify a blend by tests of its worst case of fractionation. Where in doubt treat it as flammable; local codes and licensed practice govern."));
    }

    private static double Share(IReadOnlyList<FluidComponent> composition) =>
        composition.Where(c => Flammable.Contains(c.Designation)).Sum(c => c.MoleFraction);
}
