using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>What speaks against filling a cylinder with a refrigerant.</summary>
internal static class FillFindings
{
    private const string MixedContent = "common practice: a mixed content can only be destroyed";
    private const double PressureTolerance = 1e-6;
    private const string Ammonia = "R-717";

    /// <summary>Tare weights of cylinders up to that pressure are between these shares of the water capacity, Pa: common practice, no source.</summary>
    private const double LightestTare = 0.28;
    private const double HeaviestTare = 1.2;
    private const double HeavyFrom = 4.2e6;

    public static IReadOnlyList<Finding> For(RecoveryCylinder cylinder, Fluid fluid, FillOptions options, FillRuleSet set, FillRule governing)
    {
        List<Finding> findings = [];
        findings.AddRange(Marks(cylinder, fluid.Model, options.Rules));
        findings.AddRange(Requalification(cylinder, options));
        findings.AddRange(Content(cylinder, fluid, governing));
        findings.AddRange(FillStrength.For(cylinder, fluid.Model, options.Rules));
        findings.AddRange(Limit(cylinder, fluid, options, set, governing));
        if (fluid.Quality == ModelQuality.Estimated)
        {
            findings.Add(new Finding(
                CylinderCodes.EstimatedProperties,
                Severity.Caution,
                fluid.Model.Source,
                $"The properties of {fluid.Designation} rest in part on estimated mixing parameters, and so does this limit."));
        }

        findings.Add(new Finding(
            CylinderCodes.Weigh,
            Severity.Note,
            options.Rules.Weighing,
            $"Verify the content by weight on an accurate scale. Local codes and licensed practice govern."));
        return findings;
    }

    private static IEnumerable<Finding> Limit(RecoveryCylinder cylinder, Fluid fluid, FillOptions options, FillRuleSet set, FillRule governing)
    {
        if (set.Rules.FirstOrDefault(rule => rule.Kind == FillRuleKind.EightyPercentOfWaterCapacity) is FillRule old && old.Kilograms > governing.Kilograms)
        {
            yield return new Finding(
                CylinderCodes.WaterCapacityRule,
                Severity.Caution,
                old.Source,
                old.Kilograms < 2 * governing.Kilograms
                    ? $"80 % of the water capacity would be {FindingValue.Kilograms("water capacity rule", old.Kilograms)}, {FindingValue.Fraction("over", (old.Kilograms / governing.Kilograms) - 1)} over the limit of {LimitOf(governing)}: do not use the rule without specific gravity."
                    : (FormattableString)$"80 % of the water capacity would be {FindingValue.Kilograms("water capacity rule", old.Kilograms)}, {FindingValue.Number("times", old.Kilograms / governing.Kilograms)} times the limit of {LimitOf(governing)}: do not use the rule without specific gravity.");
        }

        if (set.IsWithoutFigure)
        {
            string missing = options.Rules.WithoutFigure ?? $"{options.Rules.Place} has no filling figure for {fluid.Designation} here.";
            yield return new Finding(
                CylinderCodes.NoFillFigure,
                Severity.Warning,
                governing.Source,
                $"{missing} The limit of {LimitOf(governing)} is a bound of the library's own, not the law: ask the authority, and fill less where in doubt.");
        }

        foreach (FillRuleNotApplied dropped in set.NotApplied.Where(rule => rule.IsOutsideEquation))
        {
            yield return new Finding(
                CylinderCodes.RuleOutsideEquation,
                Severity.Caution,
                fluid.Model.Source,
                $"The rule {FindingValue.Text("rule", dropped.Kind.ToString())} could not be computed for {fluid.Designation} and does not count: {dropped.Reason}");
        }

        if (Full(cylinder, fluid, governing.Kilograms) is double kelvins && kelvins < FillFigures.LiquidFullTemperature * (1 - FillFigures.LiquidFullMargin)
            && !StandsFull(cylinder, fluid.Model, governing.Kilograms))
        {
            yield return new Finding(
                CylinderCodes.LiquidFullWhenWarm,
                governing.Kind == FillRuleKind.GivenByCaller ? Severity.Stop : Severity.Warning,
                fluid.Model.Source,
                $"Filled to {LimitOf(governing)}, {cylinder.Label} is full of liquid at {FindingValue.Kelvins("full at", kelvins, RoundingMode.Down)}: from there it can burst. Keep it well below, or fill less.");
        }

        if (governing.Figure.Evidence == Evidence.FromMemory)
        {
            yield return new Finding(
                CylinderCodes.FigureFromMemory,
                Severity.Note,
                governing.Source,
                $"The governing figure ({governing.Name}, {governing.Figure.Figure}) is from memory; it is applied because it is the stricter one.");
        }
    }

    private static IEnumerable<Finding> Marks(RecoveryCylinder cylinder, PropertyModel model, FillRules rules)
    {
        double tare = cylinder.TareWeight.Kilograms / cylinder.WaterCapacity.Kilograms;
        if (tare < LightestTare || (tare > HeaviestTare && cylinder.ServicePressure.Pascals < HeavyFrom))
        {
            yield return new Finding(
                CylinderCodes.MarksOdd,
                tare < LightestTare ? Severity.Warning : Severity.Note,
                Sources.CommonPractice,
                $"{cylinder.Label}: a tare weight of {FindingValue.Mass("tare", cylinder.TareWeight)} is unusual for a water capacity of {FindingValue.Mass("water capacity", cylinder.WaterCapacity)}: check that both marks are read in the same units.",
                tare < LightestTare ? (FormattableString)$"Pounds of water taken for kilograms allow more than twice what the cylinder may hold." : null);
        }

        if (cylinder.Specification is not CylinderSpecification mark)
        {
            yield return new Finding(
                CylinderCodes.NoMark,
                Severity.Note,
                Sources.CommonPractice,
                $"The specification of {cylinder.Label} is not given: check its mark, and that it is approved for {model.Designation}.");
            yield break;
        }

        if (mark.IsNonRefillable)
        {
            yield return new Finding(
                CylinderCodes.NonRefillable, Severity.Stop, rules.NonRefillable, $"{cylinder.Label} is a non-refillable cylinder ({mark}): do not fill it.");
        }

        double service = cylinder.ServicePressure.Pascals;
        if (mark.ServicePressurePascals is double marked && Math.Abs(marked - service) > PressureTolerance * marked)
        {
            yield return new Finding(
                CylinderCodes.MarkContradicts,
                Severity.Caution,
                "49 CFR 173.115",
                $"{cylinder.Label} is marked {mark} but its service pressure is given as {FindingValue.GaugePascals("service pressure", service)}: check the mark. The service pressure given is the one used.");
        }

        if (rules.Has(FillRuleKind.ListedFillingDensity) && ListedFillingDensity.For(model.Designation, cylinder.ServicePressure) is ListedFillingDensity row && !mark.IsUn)
        {
            if (row.Types.Count > 0 && !row.Types.Contains(mark.Type))
            {
                yield return new Finding(
                    CylinderCodes.NotListedType,
                    model.Designation == Ammonia ? Severity.Stop : Severity.Warning,
                    row.Figure.Source,
                    $"DOT {mark.Type} of {cylinder.Label} is not among the specifications listed for {model.Designation} ({string.Join(", ", row.Types)}).",
                    model.Designation == Ammonia ? (FormattableString)$"Ammonia eats copper, brass and brazed seams: do not fill it." : null);
            }

            if (!row.IsReachedBy(cylinder.ServicePressure))
            {
                yield return new Finding(
                    CylinderCodes.BelowListedPressure,
                    Severity.Stop,
                    row.Figure.Source,
                    $"The lowest service pressure listed for {model.Designation} is {FindingValue.GaugePressure("listed", new Pressure(row.ServicePressurePsi, PressureUnit.PoundForcePerSquareInch))}; {cylinder.Label} has {FindingValue.GaugePascals("service pressure", service)}: do not fill it with it.");
            }
        }
    }

    private static IEnumerable<Finding> Requalification(RecoveryCylinder cylinder, FillOptions options)
    {
        string source = options.Rules.Requalification;
        if (cylinder.RequalificationDue is not DateTime due)
        {
            yield return new Finding(
                CylinderCodes.RequalificationUnknown,
                Severity.Note,
                source,
                $"The requalification date of {cylinder.Label} is not given: check it before filling.");
        }
        else if (options.Today is not DateTime day)
        {
            yield return new Finding(
                CylinderCodes.RequalificationUnknown,
                Severity.Note,
                source,
                $"{cylinder.Label} is due for requalification on {FindingValue.Date("due", due)}; today's date was not given, so this was not checked.");
        }
        else if (due.Date < day.Date)
        {
            yield return new Finding(
                CylinderCodes.RequalificationOverdue,
                Severity.Stop,
                source,
                $"{cylinder.Label} was due for requalification on {FindingValue.Date("due", due)}, before {FindingValue.Date("today", day)}: it must not be filled.");
        }
    }

    private static IEnumerable<Finding> Content(RecoveryCylinder cylinder, Fluid fluid, FillRule governing)
    {
        double content = cylinder.Content.Kilograms;
        if (cylinder.Refrigerant is string held)
        {
            string known = Fluid.TryGet(held, out Fluid? other) ? other.Designation : held.Trim();
            if (!string.Equals(known, fluid.Designation, StringComparison.OrdinalIgnoreCase))
            {
                yield return new Finding(
                    CylinderCodes.OtherRefrigerant,
                    Severity.Stop,
                    MixedContent,
                    $"{cylinder.Label} holds or last held {FindingValue.Text("held", known)}: {fluid.Designation} must not be mixed with it.");
            }
        }
        else if (content > 0)
        {
            yield return new Finding(
                CylinderCodes.UnnamedContent,
                Severity.Warning,
                MixedContent,
                $"{cylinder.Label} holds {FindingValue.Kilograms("content", content)} of a refrigerant that is not named: make sure that it is {fluid.Designation}.");
        }

        if (content > governing.Kilograms)
        {
            yield return new Finding(
                CylinderCodes.OverLimit,
                Severity.Stop,
                governing.Source,
                $"{cylinder.Label} holds {FindingValue.Kilograms("content", content)}, {FindingValue.Kilograms("over", content - governing.Kilograms)} over its limit of {FindingValue.Kilograms("limit", governing.Kilograms)}: do not warm it; take the excess out.");
        }
    }

    /// <summary>Where liquid fills the cylinder, K; null where it never does, or the mass does not fit at all.</summary>
    private static double? Full(RecoveryCylinder cylinder, Fluid fluid, double kilograms)
    {
        double density = kilograms / cylinder.InternalVolume.CubicMeters;
        PropertyModel model = fluid.Model;
        return density > 0 && density <= model.SaturationAtTemperature(model.Range.MinimumTemperature).Bubble.Density
            ? new ClosedVessel(model, density, nameof(kilograms)).LiquidFullTemperature
            : null;
    }

    /// <summary>Whether a cylinder for gas under high pressure stands what has no room for vapor left at 55 °C: carbon dioxide, no liquid any more there, which the law fills by its pressure.</summary>
    private static bool StandsFull(RecoveryCylinder cylinder, PropertyModel model, double kilograms)
    {
        if (model.CriticalTemperature > FillFigures.LiquidFullTemperature)
        {
            return false;
        }

        try
        {
            double allowed = FillFigures.HighestGaugePressure(cylinder) + FillFigures.Atmosphere;
            return kilograms / cylinder.InternalVolume.CubicMeters <= FillDensity.AtPressure(model, FillFigures.LiquidFullTemperature, allowed);
        }
        catch (PropertyRangeException)
        {
            return false;
        }
    }

    private static FindingValue LimitOf(FillRule governing) => FindingValue.Kilograms("limit", governing.Kilograms, RoundingMode.Down);
}
