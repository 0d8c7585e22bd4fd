using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Rules;

/// <summary>What should be known about a required level.</summary>
internal static class EvacuationFindings
{
    private static readonly string[] ExemptRefrigerants = ["R-744", "R-717", "R-290", "R-600a", "R-441A"];

    public static IReadOnlyList<Finding> For(
        Fluid fluid, double charge, EvacuationOptions options, PressureClassification classification, EvacuationLevel level)
    {
        List<Finding> findings = [];
        if (options.Class is null && options.OwnLevel is null && options.Appliance == ApplianceKind.General)
        {
            findings.AddRange(classification.Findings);
        }

        if (options.Class is PressureClass given && given != classification.ByLetter)
        {
            findings.Add(new Finding(
                Severity.Caution,
                FindingSubject.EvacuationLevel,
                $"The class was set to {given}; by the letter {fluid.Designation} is {classification.ByLetter}.",
                EvacuationFigures.Classes.Source));
        }

        findings.AddRange(Place(options, level));
        findings.AddRange(Leak(options, level));
        findings.AddRange(Purpose(charge, options, classification));
        findings.AddRange(Charge(charge, options));
        if (ExemptRefrigerants.Contains(fluid.Designation))
        {
            findings.Add(new Finding(
                Severity.Note,
                FindingSubject.Compliance,
                $"{fluid.Designation} is exempt from the venting prohibition in some or all uses: {EvacuationFigures.Exempt.Figure}.",
                EvacuationFigures.Exempt.Source));
        }

        return findings;
    }

    private static IEnumerable<Finding> Place(EvacuationOptions options, EvacuationLevel level)
    {
        double ambient = options.Barometer.Pressure.Pascals;
        bool relative = level.Rule == EvacuationFigures.OilChange;
        if (level.Pascals > ambient && !relative)
        {
            yield return new Finding(
                Severity.Caution,
                FindingSubject.VacuumAndAltitude,
                $"The level of {Kilopascals(level.Pascals)} kPa absolute is above the air at the place ({Kilopascals(ambient)} kPa, {options.Barometer.Description}): "
                + "at that level refrigerant would still blow out; go down to 0 on the gauge at least.",
                EvacuationFigures.Basis.Source);
        }
        else if (level.Pascals < ambient && ambient < EvacuationFigures.Atmosphere)
        {
            yield return new Finding(
                Severity.Caution,
                FindingSubject.VacuumAndAltitude,
                $"A vacuum gauge here ({options.Barometer.Description}) shows {Inches(ambient - level.Pascals)} inHg at the required level, which is {Inches(EvacuationFigures.Atmosphere - level.Pascals)} inHg "
                + "on the regulation's 29.9 inHg atmosphere.",
                EvacuationFigures.Basis.Source);
        }
    }

    private static IEnumerable<Finding> Leak(EvacuationOptions options, EvacuationLevel level)
    {
        if (options.LowestAttainable is UnitsNet.Pressure attainable)
        {
            string text = level.Rule == EvacuationFigures.Leak
                ? "Isolate the leaking parts and take the parts that do not leak to the regular level; this level is for the leaking parts only."
                : "The level attainable is at or below the regular one, which stands.";
            yield return new Finding(Severity.Caution, FindingSubject.Leak, text, EvacuationFigures.Leak.Source);
            if (level.Rule == EvacuationFigures.Leak && attainable.Pascals > options.Barometer.Pressure.Pascals)
            {
                yield return new Finding(
                    Severity.Warning,
                    FindingSubject.Leak,
                    $"{Kilopascals(attainable.Pascals)} kPa absolute is above 0 psig here, which a leak does not excuse: 0 psig is required.",
                    EvacuationFigures.Leak.Source);
            }
        }
    }

    private static IEnumerable<Finding> Purpose(double charge, EvacuationOptions options, PressureClassification classification)
    {
        PressureClass applied = options.Class ?? classification.ByLetter;
        if (options.Purpose == OpeningPurpose.NonMajorRepair && applied == PressureClass.Low)
        {
            yield return new Finding(
                Severity.Caution,
                FindingSubject.Compliance,
                "A low-pressure appliance is pressurized to no more than 0 psig before opening: without nitrogen where the refrigerant boils at or below 85 °F, with heat first where it boils above.",
                EvacuationFigures.NonMajorRepair.Source);
        }

        if (options.Purpose == OpeningPurpose.Disposal
            && charge > EvacuationFigures.SmallApplianceCharge
            && charge < EvacuationFigures.DisposalRecordCharge)
        {
            yield return new Finding(
                Severity.Note,
                FindingSubject.Compliance,
                "Disposal with a full charge above 5 lb and below 50 lb: keep records for three years of company, location, date, refrigerant, monthly quantities, and what was sent on to whom.",
                EvacuationFigures.DisposalRecord.Source);
        }
    }

    private static IEnumerable<Finding> Charge(double charge, EvacuationOptions options)
    {
        if (options.IsMachineSystemDependent && charge > EvacuationFigures.SystemDependentCharge)
        {
            yield return new Finding(
                Severity.Stop,
                FindingSubject.Machine,
                FormattableString.Invariant($"System-dependent equipment may not be used on {charge:F1} kg ({charge / EvacuationFigures.KilogramsPerPound:F1} lb): the full charge is above 15 lb."),
                EvacuationFigures.SystemDependent.Source);
        }

        if (options.Appliance == ApplianceKind.General && charge <= EvacuationFigures.SmallApplianceCharge)
        {
            yield return new Finding(
                Severity.Note,
                FindingSubject.Compliance,
                "With 5 lb or less, an appliance that was charged and hermetically sealed in a factory is a small appliance, with a level of its own.",
                EvacuationFigures.SmallApplianceDefinition.Source);
        }
    }

    private static string Kilopascals(double pascals) => Require.Text(Math.Round(pascals / 1000, 3));

    private static string Inches(double pascals) => Require.Text(Math.Round(pascals / EvacuationFigures.PascalsPerInch, 2));
}
