using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>What speaks against filling a cylinder with a refrigerant.</summary>
internal static class FillFindings
{
    private const double PressureTolerance = 1e-6;
    private const double Atmosphere = 101_325;

    public static IReadOnlyList<Finding> For(RecoveryCylinder cylinder, Fluid fluid, FillOptions options, IReadOnlyList<FillRule> rules, FillRule governing)
    {
        List<Finding> findings = [];
        findings.AddRange(Marks(cylinder, fluid.Model));
        findings.AddRange(Requalification(cylinder, options.Today));
        findings.AddRange(Content(cylinder, fluid, governing));
        findings.AddRange(Strength(cylinder, fluid.Model));
        double old = rules.First(rule => rule.Kind == FillRuleKind.EightyPercentOfWaterCapacity).Kilograms;
        if (old > governing.Kilograms)
        {
            findings.Add(new Finding(
                Severity.Caution,
                FindingSubject.CylinderOverfill,
                $"80 % of the water capacity would be {Text(Math.Round(old, 2))} kg, {Text(Math.Round(((old / governing.Kilograms) - 1) * 100, 1))} % over the limit of {Down(governing.Kilograms)} kg: do not use the rule without specific gravity.",
                FillFigures.EightyPercentOfWaterCapacity.Source));
        }

        if (governing.Figure.Evidence == Evidence.FromMemory)
        {
            findings.Add(new Finding(
                Severity.Note,
                FindingSubject.Estimate,
                $"The governing figure ({governing.Name}, {governing.Figure.Figure}) is from memory; it is applied because it is the stricter one.",
                governing.Source));
        }

        if (fluid.Quality == ModelQuality.Estimated)
        {
            findings.Add(new Finding(
                Severity.Caution,
                FindingSubject.Estimate,
                $"The properties of {fluid.Designation} rest in part on estimated mixing parameters, and so does this limit.",
                fluid.Model.Source));
        }

        findings.Add(new Finding(
            Severity.Note,
            FindingSubject.Safety,
            "Verify the content by weight on an accurate scale. Local codes and licensed practice govern.",
            FillFigures.ByWeight.Source));
        return findings;
    }

    private static IEnumerable<Finding> Marks(RecoveryCylinder cylinder, PropertyModel model)
    {
        if (cylinder.Specification is not CylinderSpecification mark)
        {
            yield return new Finding(
                Severity.Note,
                FindingSubject.CylinderFitness,
                $"The specification of {cylinder.Label} is not given: check its mark, and that it is approved for {model.Designation}.",
                FillFigures.PressureAt55C.Source);
            yield break;
        }

        if (mark.IsNonRefillable)
        {
            yield return new Finding(
                Severity.Stop, FindingSubject.CylinderFitness, $"{cylinder.Label} is a non-refillable cylinder ({mark}): do not fill it.", FillFigures.NonRefillable.Source);
        }

        double service = cylinder.ServicePressure.Pascals;
        if (mark.ServicePressurePascals is double marked && Math.Abs(marked - service) > PressureTolerance * marked)
        {
            yield return new Finding(
                Severity.Caution,
                FindingSubject.CylinderFitness,
                $"{cylinder.Label} is marked {mark} but its service pressure is given as {Psi(service)} psi: check the mark. The service pressure given is the one used.",
                "49 CFR 173.115");
        }

        if (ListedFillingDensity.For(model.Designation, Psi(service) + ListedFillingDensity.PressureTolerancePsi) is ListedFillingDensity row
            && !mark.IsUn)
        {
            if (row.Types.Count > 0 && !row.Types.Contains(mark.Type))
            {
                yield return new Finding(
                    Severity.Warning,
                    FindingSubject.CylinderFitness,
                    $"DOT {mark.Type} is not among the specifications listed for {model.Designation} ({string.Join(", ", row.Types)}).",
                    row.Figure.Source);
            }

            if (row.ServicePressurePsi > Psi(service) + ListedFillingDensity.PressureTolerancePsi)
            {
                yield return new Finding(
                    Severity.Warning,
                    FindingSubject.CylinderPressure,
                    $"The lowest service pressure listed for {model.Designation} is {row.ServicePressurePsi} psi; {cylinder.Label} has {Psi(service)} psi.",
                    row.Figure.Source);
            }
        }
    }

    private static IEnumerable<Finding> Requalification(RecoveryCylinder cylinder, DateTime? today)
    {
        if (cylinder.RequalificationDue is not DateTime due)
        {
            yield return new Finding(
                Severity.Note,
                FindingSubject.CylinderFitness,
                $"The requalification date of {cylinder.Label} is not given: check it before filling.",
                FillFigures.Requalification.Source);
        }
        else if (today is not DateTime day)
        {
            yield return new Finding(
                Severity.Note,
                FindingSubject.CylinderFitness,
                $"{cylinder.Label} is due for requalification on {Date(due)}; today's date was not given, so this was not checked.",
                FillFigures.Requalification.Source);
        }
        else if (due.Date < day.Date)
        {
            yield return new Finding(
                Severity.Stop,
                FindingSubject.CylinderFitness,
                $"{cylinder.Label} was due for requalification on {Date(due)}, before {Date(day)}: it must not be filled.",
                FillFigures.Requalification.Source);
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
                    Severity.Stop,
                    FindingSubject.Mixing,
                    $"{cylinder.Label} holds or last held {known}: {fluid.Designation} must not be mixed with it.",
                    "common practice: a mixed content can only be destroyed");
            }
        }
        else if (content > 0)
        {
            yield return new Finding(
                Severity.Warning,
                FindingSubject.Mixing,
                $"{cylinder.Label} holds {Text(content)} kg of a refrigerant that is not named: make sure that it is {fluid.Designation}.",
                "common practice: a mixed content can only be destroyed");
        }

        if (content > governing.Kilograms)
        {
            yield return new Finding(
                Severity.Stop,
                FindingSubject.CylinderOverfill,
                $"{cylinder.Label} holds {Text(Math.Round(content, 2))} kg, {FormattableString.Invariant($"{content - governing.Kilograms:G2}")} kg over its limit of {Down(governing.Kilograms)} kg: do not warm it; take the excess out.",
                governing.Source);
        }
    }

    private static IEnumerable<Finding> Strength(RecoveryCylinder cylinder, PropertyModel model)
    {
        bool isUn = cylinder.Specification is { IsUn: true };
        double allowed = FillFigures.ServicePressureRatio * cylinder.ServicePressure.Pascals;
        if (!isUn && BubblePressure(model, FillFigures.LiquidFullTemperature) is double at55 && at55 - Atmosphere > allowed)
        {
            yield return new Finding(
                Severity.Stop,
                FindingSubject.CylinderPressure,
                $"{model.Designation} liquid has {Psi(at55 - Atmosphere)} psi gauge at 55 °C, more than 5/4 of the service pressure ({Psi(allowed)} psi): {cylinder.Label} may not hold it as a liquid.",
                FillFigures.PressureAt55C.Source);
        }

        if (isUn
            && cylinder.Specification!.TestPressurePascals is double test
            && BubblePressure(model, FillFigures.TestTemperature) is double at65
            && at65 > test)
        {
            bool fails = at65 - FillFigures.TestPressureAllowance > test;
            yield return new Finding(
                fails ? Severity.Stop : Severity.Caution,
                FindingSubject.CylinderPressure,
                fails
                    ? $"{model.Designation} liquid has {Text(at65 / 1e5)} bar absolute at 65 °C, more than 1 bar above the test pressure ({Text(test / 1e5)} bar): {cylinder.Label} may not hold it as a liquid."
                    : $"{model.Designation} liquid has {Text(at65 / 1e5)} bar absolute at 65 °C: within 1 bar of the test pressure ({Text(test / 1e5)} bar) as P200 allows, but 49 CFR 173.304b has no such allowance.",
                FillFigures.TestPressureAt65C.Source);
        }
    }

    private static double? BubblePressure(PropertyModel model, double temperature) =>
        temperature >= model.Range.MinimumTemperature && FillDensity.HasLiquidAt(model, temperature)
            ? model.SaturationAtTemperature(temperature).Bubble.Pressure
            : null;

    private static double Psi(double pascals) => Math.Round(pascals / 6894.757293168361, 1);

    private static string Date(DateTime date) => date.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>A limit, rounded to the side on which it is kept.</summary>
    private static string Down(double kilograms) => Text(Math.Floor(kilograms * 100) / 100);

    private static string Text(double value) => Require.Text(value);
}
