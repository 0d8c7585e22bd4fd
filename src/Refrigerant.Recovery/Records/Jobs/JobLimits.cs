using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Estimation;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>
/// The numbers that the members of a job and its log may have, each in its own unit: those of the types that a job is made of, which a test compares. The
/// published schema has them too.
/// </summary>
internal static class JobLimits
{
    /// <summary>The heaviest cylinder, kg.</summary>
    private const double LargestCylinder = 1e6;

    private const double DayMinutes = 1440;

    private static readonly NumberRange Gauge = new(JobLog.LowestGauge / 1e3, JobLog.HighestGauge / 1e3);

    /// <summary>150 K to 400 K; the upper bound has the digits of the sum, which a warmest job is written with.</summary>
    private static readonly NumberRange Celsius = new(-123.15, 400 - 273.15);

    private static readonly Dictionary<(Type Type, string Member), NumberRange> Ranges = new()
    {
        [(typeof(JobDocument), "sweepPressureKilopascalsAbsolute")] = new(0.01, 100),
        [(typeof(JobDocument), "lossPerConnectionMilliliters")] = new(0, 1000),
        [(typeof(JobDocument), "maximumPulls")] = new(1, 50),
        [(typeof(TimesDocument), "setUpMinutes")] = new(0, DayMinutes),
        [(typeof(TimesDocument), "hoseChangeMinutes")] = new(0, DayMinutes),
        [(typeof(TimesDocument), "cylinderChangeMinutes")] = new(0, DayMinutes),
        [(typeof(TimesDocument), "closeMinutes")] = new(0, DayMinutes),
        [(typeof(TimesDocument), "holdMinutes")] = new(0, DayMinutes),
        [(typeof(TimesDocument), "oilServiceMinutes")] = new(0, DayMinutes),
        [(typeof(TimesDocument), "patienceMinutes")] = new(0, DayMinutes),
        [(typeof(AidsDocument), "waterBathCelsius")] = new(0, 60),
        [(typeof(AidsDocument), "heaterWatts")] = new(0, 1e6),
        [(typeof(AidsDocument), "crankcaseHeaterWatts")] = new(0, 1e5),
        [(typeof(AidsDocument), "applianceFans")] = new(1, 100),
        [(typeof(MachinePastDocument), "compressorOilMilliliters")] = new(0, 1e6),
        [(typeof(MachinePastDocument), "separatorOilMilliliters")] = new(0, 1e6),
        [(typeof(MachinePastDocument), "runningSinceOilChangeHours")] = new(0, 1e5),
        [(typeof(MachinePastDocument), "oilChangeIntervalHours")] = new(1, 1e5),
        [(typeof(ApplianceDocument), "chargeKilograms")] = new(1e-6, 1e6),
        [(typeof(ApplianceDocument), "internalVolumeLiters")] = new(1e-3, 1e7),
        [(typeof(ApplianceDocument), "temperatureCelsius")] = new(-223.15, 426.85),
        [(typeof(ApplianceDocument), "surroundingsCelsius")] = Celsius,
        [(typeof(ApplianceDocument), "heatResistanceSquareMeterKelvinsPerWatt")] = new(1e-8, 1e30),
        [(typeof(ApplianceDocument), "heatAreaSquareMeters")] = new(1e-4, 1e6),
        [(typeof(ApplianceDocument), "metalMassKilograms")] = new(0, 1e7),
        [(typeof(ApplianceDocument), "metalHeatCapacityJoulesPerKilogramKelvin")] = new(50, 5000),
        [(typeof(ApplianceDocument), "metalResistanceSquareMeterKelvinsPerWatt")] = new(1e-8, 1e8),
        [(typeof(ApplianceDocument), "dryResistanceFactor")] = new(1, 1000),
        [(typeof(ApplianceDocument), "liquidHeelKilograms")] = new(0, 1e6),
        [(typeof(ApplianceDocument), "designPressureKilopascalsGauge")] = new(1, 5e4),
        [(typeof(SectionDocument), "internalVolumeLiters")] = new(1e-3, 1e7),
        [(typeof(SectionDocument), "chargeKilograms")] = new(1e-6, 1e6),
        [(typeof(ConnectionDocument), "flowCoefficient")] = new(1e-6, 1e4),
        [(typeof(OilDocument), "massKilograms")] = new(0, 1e6),
        [(typeof(OilDocument), "molarMassGramsPerMole")] = new(50, 5000),
        [(typeof(OilDocument), "refrigerantFraction")] = new(0, 0.9),
        [(typeof(OilDocument), "solubilityFactor")] = new(0.01, 10),
        [(typeof(OilDocument), "foamingTimeMinutes")] = new(1 / 60.0, 1e6 / 60),
        [(typeof(OilDocument), "diffusionTimeMinutes")] = new(1 / 60.0, 1e9 / 60),
        [(typeof(WaterDocument), "massKilograms")] = new(1e-3, 1e6),
        [(typeof(WaterDocument), "flowKilogramsPerSecond")] = new(1e-3, 1e5),
        [(typeof(WaterDocument), "temperatureCelsius")] = new(0, 100),
        [(typeof(WaterDocument), "resistanceSquareMeterKelvinsPerWatt")] = new(1e-8, 1e3),
        [(typeof(ComponentDocument), "massFraction")] = new(0, 1),
        [(typeof(BarometerDocument), "elevationMeters")] = new(-430, 11000),
        [(typeof(BarometerDocument), "pressureKilopascalsAbsolute")] = new(10, 200),
        [(typeof(EvacuationDocument), "lowestAttainableKilopascalsAbsolute")] = NumberRange.Positive,
        [(typeof(EvacuationDocument), "internalVolumeLiters")] = NumberRange.Positive,
        [(typeof(EvacuationDocument), "normalTemperatureCelsius")] = new(0, 60),
        [(typeof(EvacuationDocument), "ownLevelKilopascalsAbsolute")] = new(0, 1e4, true),
        [(typeof(OwnRulesDocument), "levelKilopascalsAbsolute")] = new(0, 1e4, true),
        [(typeof(OwnFillRulesDocument), "liquidShare")] = new(0, 1, true),
        [(typeof(OwnFillRulesDocument), "temperatureCelsius")] = new(-273.15, double.PositiveInfinity, true),
        [(typeof(MachineDocument), "displacementLitersPerSecond")] = new(1e-4, 1e4),
        [(typeof(MachineDocument), "clearanceRatio")] = new(0, 0.5),
        [(typeof(MachineDocument), "polytropicExponent")] = new(1, 1.7),
        [(typeof(MachineDocument), "volumetricEfficiency")] = new(0.05, 1),
        [(typeof(MachineDocument), "leakageTerm")] = new(0, 0.04),
        [(typeof(MachineDocument), "isentropicEfficiency")] = new(0.1, 1),
        [(typeof(MachineDocument), "lowPressureSwitchKilopascalsAbsolute")] = NumberRange.Positive,
        [(typeof(MachineDocument), "highPressureCutoutKilopascalsAbsolute")] = NumberRange.Positive,
        [(typeof(MachineDocument), "internalVolumeLiters")] = new(0, 1000),
        [(typeof(MachineDocument), "thermalCutoutCelsius")] = new(50, 300),
        [(typeof(MachineDocument), "liquidRateKilogramsPerSecond")] = new(1e-5, 100),
        [(typeof(MachineDocument), "condensingCoefficientWattsPerSquareMeterKelvin")] = new(0.1, 1e6),
        [(typeof(BodyDocument), "heatCapacityJoulesPerKelvin")] = new(1, 1e8),
        [(typeof(BodyDocument), "airConductanceWattsPerKelvin")] = new(1e-3, 1e6),
        [(typeof(BodyDocument), "gasConductanceWattsPerKelvin")] = new(0, 1e6),
        [(typeof(BodyDocument), "frictionPowerWatts")] = new(0, 1e7),
        [(typeof(CondenserDocument), "ratedDutyWatts")] = new(0, 1e8),
        [(typeof(CondenserDocument), "ratedDifferenceKelvins")] = new(0.1, 200),
        [(typeof(CondenserDocument), "coolantTemperatureCelsius")] = new(-73.15, 400 - 273.15),
        [(typeof(CondenserDocument), "subcoolingKelvins")] = new(0, 50),
        [(typeof(HoseDocument), "lengthMeters")] = new(1e-3, 1e4),
        [(typeof(HoseDocument), "innerDiameterMillimeters")] = new(0.5, 1000),
        [(typeof(HoseDocument), "roughnessMillimeters")] = new(0, 5),
        [(typeof(HoseDocument), "riseMeters")] = new(-1000, 1000),
        [(typeof(FittingDocument), "flowCoefficient")] = new(1e-3, 1e4),
        [(typeof(FittingDocument), "pressureDifferentialRatioFactor")] = new(0.1, 0.99),
        [(typeof(FittingDocument), "liquidPressureRecoveryFactor")] = new(0.1, 1),
        [(typeof(FittingDocument), "lossCoefficient")] = new(0, 1e6),
        [(typeof(FittingDocument), "diameterMillimeters")] = new(0.1, 1000),
        [(typeof(CylinderDocument), "testPressureKilopascalsGauge")] = NumberRange.Positive,
        [(typeof(CylinderDocument), "servicePressureKilopascalsGauge")] = NumberRange.Positive,
        [(typeof(CylinderDocument), "temperatureCelsius")] = Celsius,
        [(typeof(CylinderDocument), "waterCapacityKilograms")] = new(1e-3, LargestCylinder),
        [(typeof(CylinderDocument), "tareWeightKilograms")] = new(1e-3, LargestCylinder),
        [(typeof(CylinderDocument), "contentKilograms")] = new(0, LargestCylinder),
        [(typeof(ReadingEntry), "timeSeconds")] = new(0, JobLog.LongestTime),
        [(typeof(ReadingEntry), "suctionGaugeKilopascals")] = Gauge,
        [(typeof(ReadingEntry), "grossKilograms")] = new(0, JobLog.HeaviestWeight),
        [(typeof(ReadingEntry), "ambientCelsius")] = Celsius,
        [(typeof(ReadingEntry), "pipeCelsius")] = Celsius,
        [(typeof(ReadingEntry), "dischargeGaugeKilopascals")] = Gauge,
    };

    /// <summary>The range of a member; null where it has none.</summary>
    public static NumberRange? Find(Type type, string member) => Ranges.TryGetValue((type, member), out NumberRange range) ? range : null;
}
