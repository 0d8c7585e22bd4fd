using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Gauges;

namespace Refrigerant.Recovery.Rules;

/// <summary>What should be known about a level that the United States require.</summary>
internal static class EvacuationFindings
{
    private static readonly string[] ExemptRefrigerants = ["R-744", "R-717", "R-290", "R-600a", "R-441A"];

    public static IReadOnlyList<Finding> For(LevelQuestion question, PressureClassification classification, EvacuationLevel level)
    {
        EvacuationOptions options = question.Options;
        List<Finding> findings = [];
        if (options.Class is null && options.Appliance == ApplianceKind.General)
        {
            findings.AddRange(classification.Findings);
        }

        if (options.Class is PressureClass given && given != classification.ByLetter)
        {
            findings.Add(new Finding(
                RuleCodes.ClassSet,
                Severity.Caution,
                EvacuationFigures.Classes.Source,
                $"The class was set to {given}; by the letter {question.Fluid.Designation} is {classification.ByLetter}."));
        }

        double ambient = options.Barometer.Pressure.Pascals;
        if (level.Pascals < ambient && ambient < EvacuationFigures.Atmosphere)
        {
            findings.Add(new Finding(
                RuleCodes.LevelOnGauge,
                Severity.Caution,
                EvacuationFigures.Basis.Source,
                $"A vacuum gauge here ({options.Barometer.Description}) shows {FindingValue.Vacuum("on this gauge", Pascals(ambient - level.Pascals))} at the required level, which is {FindingValue.Vacuum("by the regulation", Pascals(EvacuationFigures.Atmosphere - level.Pascals))} on the regulation's 29.9 inHg atmosphere."));
        }

        findings.AddRange(Leak(options, level));
        findings.AddRange(Purpose(question.Kilograms, options, classification));
        findings.AddRange(Charge(question.Kilograms, options));
        if (ExemptRefrigerants.Contains(question.Fluid.Designation))
        {
            findings.Add(new Finding(
                RuleCodes.VentingExempt,
                Severity.Note,
                EvacuationFigures.Exempt.Source,
                $"{question.Fluid.Designation} is exempt from the venting prohibition in some or all uses: {EvacuationFigures.Exempt.Figure}."));
        }

        return findings;
    }

    /// <summary>Of every place: a level above the air lets refrigerant blow out, unless the rule means just that.</summary>
    public static IEnumerable<Finding> AboveAir(EvacuationLevel level, Barometer barometer)
    {
        double ambient = barometer.Pressure.Pascals;
        if (level.Pascals > ambient && level.Kind != LevelKind.GaugePressure)
        {
            yield return new Finding(
                RuleCodes.LevelAboveAir,
                Severity.Caution,
                level.Rule.Source,
                $"The level of {FindingValue.Pascals("level", level.Pascals)} is above the air at the place ({FindingValue.Pascals("air", ambient)}, {barometer.Description}): at that level refrigerant would still blow out; go down to 0 on the gauge at least.");
        }
    }

    private static IEnumerable<Finding> Leak(EvacuationOptions options, EvacuationLevel level)
    {
        if (options.LowestAttainable is UnitsNet.Pressure attainable)
        {
            string text = level.Rule == EvacuationFigures.Leak
                ? "Isolate the leaking parts and take the parts that do not leak to the regular level; this level is for the leaking parts only."
                : "The level attainable is at or below the regular one, which stands.";
            yield return new Finding(RuleCodes.LeakingParts, Severity.Caution, EvacuationFigures.Leak.Source, $"{text}");
            if (level.Rule == EvacuationFigures.Leak && attainable.Pascals > options.Barometer.Pressure.Pascals)
            {
                yield return new Finding(
                    RuleCodes.LeakAboveAir,
                    Severity.Warning,
                    EvacuationFigures.Leak.Source,
                    $"{FindingValue.AbsolutePressure("attainable", attainable)} is above 0 psig here, which a leak does not excuse: 0 psig is required.");
            }
        }
    }

    private static IEnumerable<Finding> Purpose(double charge, EvacuationOptions options, PressureClassification classification)
    {
        PressureClass applied = options.Class ?? classification.ByLetter;
        if (options.Purpose == OpeningPurpose.NonMajorRepair && applied == PressureClass.Low)
        {
            yield return new Finding(
                RuleCodes.Pressurize,
                Severity.Caution,
                EvacuationFigures.NonMajorRepair.Source,
                $"A low-pressure appliance is pressurized to no more than 0 psig before opening: without nitrogen where the refrigerant boils at or below 85 °F, with heat first where it boils above.");
        }

        if (options.Purpose == OpeningPurpose.Disposal
            && charge > EvacuationFigures.SmallApplianceCharge
            && charge < EvacuationFigures.DisposalRecordCharge)
        {
            yield return new Finding(
                RuleCodes.DisposalRecord,
                Severity.Note,
                EvacuationFigures.DisposalRecord.Source,
                $"Disposal with a full charge above 5 lb and below 50 lb: keep records for three years of company, location, date, refrigerant, monthly quantities, and what was sent on to whom.");
        }
    }

    private static IEnumerable<Finding> Charge(double charge, EvacuationOptions options)
    {
        if (options.IsMachineSystemDependent && charge > EvacuationFigures.SystemDependentCharge)
        {
            yield return new Finding(
                RuleCodes.SystemDependent,
                Severity.Stop,
                EvacuationFigures.SystemDependent.Source,
                $"System-dependent equipment may not be used on {FindingValue.Kilograms("charge", charge)}: the full charge is above 15 lb.");
        }

        if (options.Appliance == ApplianceKind.General && charge <= EvacuationFigures.SmallApplianceCharge)
        {
            yield return new Finding(
                RuleCodes.MaybeSmall,
                Severity.Note,
                EvacuationFigures.SmallApplianceDefinition.Source,
                $"With 5 lb or less, an appliance that was charged and hermetically sealed in a factory is a small appliance, with a level of its own.");
        }
    }

    private static UnitsNet.Pressure Pascals(double value) => new(System.Math.Max(0, value), UnitsNet.Units.PressureUnit.Pascal);
}
