using System;
using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Rules;

/// <summary>The level that a rule asks for: an absolute pressure, for small appliances a share of the charge as well.</summary>
internal sealed class EvacuationLevel
{
    private EvacuationLevel(RuleFigure rule, double pascals, double? fraction = null)
    {
        Rule = rule;
        Pascals = pascals;
        Fraction = fraction;
    }

    public RuleFigure Rule { get; }

    public double Pascals { get; }

    public double? Fraction { get; }

    public static EvacuationLevel Find(PressureClass pressureClass, double charge, EvacuationOptions options)
    {
        if (options.OwnLevel is UnitsNet.Pressure own)
        {
            return new EvacuationLevel(
                new RuleFigure("level given by the caller", "as given", options.OwnLevelSource, Editions.None, Evidence.Read), own.Pascals);
        }

        double ambient = options.Barometer.Pressure.Pascals;
        EvacuationLevel regular = options.Appliance switch
        {
            ApplianceKind.Small => Small(options),
            ApplianceKind.MotorVehicle => Vacuum(EvacuationFigures.MotorVehicle, EvacuationFigures.MotorVehicleVacuum),
            _ => ByPurpose(pressureClass, charge, options, ambient),
        };

        // The leaking part need not go below what it can reach clean, and never stays above 0 psig.
        return options.LowestAttainable is UnitsNet.Pressure attainable && attainable.Pascals > regular.Pascals
            ? new EvacuationLevel(EvacuationFigures.Leak, Math.Max(regular.Pascals, Math.Min(attainable.Pascals, ambient)))
            : regular;
    }

    private static EvacuationLevel ByPurpose(PressureClass pressureClass, double charge, EvacuationOptions options, double ambient) => options.Purpose switch
    {
        OpeningPurpose.NonMajorRepair => new EvacuationLevel(EvacuationFigures.NonMajorRepair, ambient),
        OpeningPurpose.OilChange => new EvacuationLevel(EvacuationFigures.OilChange, ambient + EvacuationFigures.OilChangeGauge),
        _ => Table(pressureClass, charge >= EvacuationFigures.ChargeThreshold, IsOld(options)),
    };

    private static EvacuationLevel Table(PressureClass pressureClass, bool large, bool old) => pressureClass switch
    {
        PressureClass.Low => new EvacuationLevel(EvacuationFigures.Low, EvacuationFigures.LowPressureLevel),
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
        EvacuationFigures.Atmosphere - EvacuationFigures.SmallApplianceVacuum,
        !IsOld(options) && options.CompressorRuns ? EvacuationFigures.FractionCompressorRuns : EvacuationFigures.FractionOtherwise);

    private static EvacuationLevel Inches(RuleFigure rule, double inches) => Vacuum(rule, inches * EvacuationFigures.PascalsPerInch);

    private static EvacuationLevel Vacuum(RuleFigure rule, double vacuum) => new(rule, EvacuationFigures.Atmosphere - vacuum);

    private static bool IsOld(EvacuationOptions options) => options.MachineManufactured < EvacuationFigures.MachineDate;
}
