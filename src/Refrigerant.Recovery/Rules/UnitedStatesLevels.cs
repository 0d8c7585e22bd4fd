using System;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Rules;

/// <summary>40 CFR 82.156.</summary>
internal sealed class UnitedStatesLevels : ILevelRules
{
    private static readonly HoldRule Verified = new(EvacuationFigures.Verify);

    public EvacuationLevel Find(LevelQuestion question)
    {
        EvacuationOptions options = question.Options;
        if (options.Appliance == ApplianceKind.Small)
        {
            Require.InRange(question.Kilograms, 0, EvacuationFigures.SmallApplianceCharge, "kg for a small appliance (40 CFR 82.152)", "charge");
        }

        PressureClassification classification = PressureClassification.For(question.Fluid);
        PressureClass pressureClass = options.Class ?? classification.ByLetter;
        EvacuationLevel level = Level(pressureClass, question.Kilograms, options);
        return new EvacuationLevel(level.Rule, level.Kind, level.Pascals, level.Fraction)
        {
            Class = pressureClass,
            Classification = classification,
            Hold = Verified,
            Findings = EvacuationFindings.For(question, classification, level),
        };
    }

    private static EvacuationLevel Level(PressureClass pressureClass, double charge, EvacuationOptions options)
    {
        double ambient = options.Barometer.Pressure.Pascals;
        EvacuationLevel regular = options.Appliance switch
        {
            ApplianceKind.Small => Small(options),
            ApplianceKind.MotorVehicle => Vacuum(EvacuationFigures.MotorVehicle, EvacuationFigures.MotorVehicleVacuum),
            _ => ByPurpose(pressureClass, charge, options, ambient),
        };

        // The leaking part need not go below what it can reach clean, and never stays above 0 psig.
        return options.LowestAttainable is UnitsNet.Pressure attainable && attainable.Pascals > regular.Pascals
            ? new EvacuationLevel(EvacuationFigures.Leak, LevelKind.AbsolutePressure, Math.Max(regular.Pascals, Math.Min(attainable.Pascals, ambient)))
            : regular;
    }

    private static EvacuationLevel ByPurpose(PressureClass pressureClass, double charge, EvacuationOptions options, double ambient) => options.Purpose switch
    {
        OpeningPurpose.NonMajorRepair => new EvacuationLevel(EvacuationFigures.NonMajorRepair, LevelKind.GaugePressure, ambient),
        OpeningPurpose.OilChange => new EvacuationLevel(EvacuationFigures.OilChange, LevelKind.GaugePressure, ambient + EvacuationFigures.OilChangeGauge),
        _ => Table(pressureClass, charge >= EvacuationFigures.ChargeThreshold, IsOld(options)),
    };

    private static EvacuationLevel Table(PressureClass pressureClass, bool large, bool old) => pressureClass switch
    {
        PressureClass.Low => new EvacuationLevel(EvacuationFigures.Low, LevelKind.AbsolutePressure, EvacuationFigures.LowPressureLevel),
        PressureClass.Medium => large
            ? Inches(EvacuationFigures.MediumLarge, old ? 4 : 15)
            : Inches(EvacuationFigures.MediumSmall, old ? 4 : 10),
        PressureClass.High => large
            ? Inches(EvacuationFigures.HighLarge, old ? 4 : 10)
            : Inches(EvacuationFigures.HighSmall, 0),
        _ => Inches(EvacuationFigures.VeryHigh, 0),
    };

    private static EvacuationLevel Small(EvacuationOptions options) => new(
        EvacuationFigures.SmallAppliance,
        LevelKind.ShareOrPressure,
        EvacuationFigures.Atmosphere - EvacuationFigures.SmallApplianceVacuum,
        !IsOld(options) && options.CompressorRuns ? EvacuationFigures.FractionCompressorRuns : EvacuationFigures.FractionOtherwise);

    private static EvacuationLevel Inches(RuleFigure rule, double inches) => Vacuum(rule, inches * EvacuationFigures.PascalsPerInch);

    private static EvacuationLevel Vacuum(RuleFigure rule, double vacuum) => new(rule, LevelKind.AbsolutePressure, EvacuationFigures.Atmosphere - vacuum);

    private static bool IsOld(EvacuationOptions options) => options.MachineManufactured < EvacuationFigures.MachineDate;
}
