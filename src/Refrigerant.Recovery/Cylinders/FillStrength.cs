using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>Whether a cylinder stands the refrigerant as a warm liquid, by the rule of the place.</summary>
internal static class FillStrength
{
    /// <summary>A mark that the rule itself lists for a refrigerant holds where its equation of today gives up to 1 % more than 5/4 of it: R-22 has 300.8 psig at 55 °C, listed for 240 psi. Our choice.</summary>
    private const double ListedTolerance = 1.01;

    public static IEnumerable<Finding> For(RecoveryCylinder cylinder, PropertyModel model, FillRules rules)
    {
        bool isUn = cylinder.Specification is { IsUn: true };
        bool byTest = cylinder.Specification?.TestPressurePascals is not null && (rules.Has(FillRuleKind.TestPressureAt65C) || rules.Has(FillRuleKind.ListedFillingConstant));
        double allowed = FillFigures.HighestGaugePressure(cylinder);
        if (!isUn
            && (rules.Has(FillRuleKind.PressureAt55C) || !byTest)
            && BubblePressure(model, FillFigures.LiquidFullTemperature) is double at55
            && at55 - FillFigures.Atmosphere > allowed
            && !IsListedAt55C(cylinder, model, rules))
        {
            RuleFigure rule = rules.Has(FillRuleKind.PressureAt55C) ? FillFigures.PressureAt55C : FillFigures.LibraryPressure;
            yield return TooWeak(cylinder, model, rule, at55, FillFigures.LiquidFullTemperature, allowed, "5/4 of the service pressure");
        }

        if (cylinder.Specification?.TestPressurePascals is not double test)
        {
            yield break;
        }

        if (rules.Has(FillRuleKind.TestPressureAt65C)
            && (isUn || !rules.Has(FillRuleKind.PressureAt55C))
            && BubblePressure(model, FillFigures.TestTemperature) is double at65
            && at65 > test)
        {
            if (at65 - FillFigures.TestPressureAllowance > test)
            {
                yield return TooWeak(cylinder, model, FillFigures.TestPressureAt65C, at65, FillFigures.TestTemperature, test, "the test pressure");
            }
            else if (rules.Has(FillRuleKind.PressureAt55C))
            {
                yield return new Finding(
                    CylinderCodes.WithinAllowance,
                    Severity.Caution,
                    FillFigures.TestPressureAt65C.Source,
                    $"{model.Designation} liquid has {FindingValue.Pascals("pressure", at65)} at {FindingValue.Kelvins("temperature", FillFigures.TestTemperature)}: within 1 bar of the test pressure ({FindingValue.GaugePascals("test pressure", test)}) as P200 allows, but 49 CFR 173.304b has no such allowance.");
            }
        }

        if (rules.Has(FillRuleKind.ListedFillingConstant)
            && BubblePressure(model, FillConstantFigures.Temperature) is double at48
            && FillConstantFigures.TestPressureRatio * at48 > test)
        {
            yield return TooWeak(
                cylinder, model, FillConstantFigures.Classes, at48, FillConstantFigures.Temperature, test / FillConstantFigures.TestPressureRatio, "3/5 of the test pressure");
        }
    }

    /// <summary>Whether the rule lists this refrigerant for cylinders of this specification and mark, though its liquid has a little more than 5/4 of the service pressure at 55 °C.</summary>
    public static bool IsListedAt55C(RecoveryCylinder cylinder, PropertyModel model, FillRules rules) =>
        rules.Has(FillRuleKind.ListedFillingDensity)
        && BubblePressure(model, FillFigures.LiquidFullTemperature) is double at55
        && at55 - FillFigures.Atmosphere <= ListedTolerance * FillFigures.HighestGaugePressure(cylinder)
        && cylinder.Specification is CylinderSpecification mark
        && ListedFillingDensity.For(model.Designation, cylinder.ServicePressure) is ListedFillingDensity row
        && row.IsReachedBy(cylinder.ServicePressure)
        && row.Types.Contains(mark.Type);

    private static Finding TooWeak(
        RecoveryCylinder cylinder, PropertyModel model, RuleFigure rule, double absolute, double kelvins, double allowed, string bound) => new(
        CylinderCodes.TooWeak,
        Severity.Stop,
        rule.Source,
        $"{model.Designation} liquid has {FindingValue.GaugePascals("pressure", absolute - FillFigures.Atmosphere)} at {FindingValue.Kelvins("temperature", kelvins)}, more than {bound} ({FindingValue.GaugePascals("allowed", allowed)}): {cylinder.Label} may not hold it as a liquid.");

    private static double? BubblePressure(PropertyModel model, double temperature) =>
        temperature >= model.Range.MinimumTemperature && FillDensity.HasLiquidAt(model, temperature)
            ? model.SaturationAtTemperature(temperature).Bubble.Pressure
            : null;
}
