using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Gauges;

namespace Refrigerant.Recovery.Rules;

/// <summary>The figures of 40 CFR Part 82 Subpart F, each once.</summary>
internal static class EvacuationFigures
{
    public const double PascalsPerPsi = 6894.757293168361;
    public const double KilogramsPerPound = 0.45359237;
    public const double PascalsPerInch = Mercury.PascalsPerInch;
    public const double PascalsPerMillimeter = Mercury.PascalsPerMillimeter;

    /// <summary>104 °F, K.</summary>
    public const double ClassTemperature = 313.15;

    public const double LowLimit = 45 * PascalsPerPsi;
    public const double MediumLimit = 170 * PascalsPerPsi;
    public const double HighLimit = 355 * PascalsPerPsi;

    /// <summary>The regulation's standard atmosphere, 29.9 inHg, Pa.</summary>
    public const double Atmosphere = 29.9 * PascalsPerInch;

    public const double ChargeThreshold = 200 * KilogramsPerPound;
    public const double SmallApplianceCharge = 5 * KilogramsPerPound;
    public const double DisposalRecordCharge = 50 * KilogramsPerPound;
    public const double SystemDependentCharge = 15 * KilogramsPerPound;
    public const double LowPressureLevel = 25 * PascalsPerMillimeter;
    public const double SmallApplianceVacuum = 4 * PascalsPerInch;
    public const double MotorVehicleVacuum = 102 * PascalsPerMillimeter;
    public const double OilChangeGauge = 5 * PascalsPerPsi;
    public const double FractionCompressorRuns = 0.9;
    public const double FractionOtherwise = 0.8;

    /// <summary>The refrigerant whose class by the letter is not the one that the trade uses.</summary>
    public const string CustomarilyHigh = "R-32";

    /// <summary>Machines made or imported on or after this day meet the stricter levels.</summary>
    public static readonly DateTime MachineDate = new(1993, 11, 15);

    public static readonly RuleFigure Classes = Cfr(
        "pressure class by the liquid-phase saturation pressure at 104 °F",
        "low < 45, medium 45 to 170, high 170 to 355, very high > 355 psia, or critical temperature < 104 °F",
        "82.152");

    public static readonly RuleFigure Basis = Cfr("vacuum relative to a standard atmosphere", "29.9 inHg (101.25 kPa)", "82.156(a) Table 1");

    public static readonly RuleFigure VeryHigh = Cfr("very high-pressure appliance", "0 inHg of vacuum", "82.156(a) Table 1");

    public static readonly RuleFigure HighSmall = Cfr("high-pressure appliance, charge below 200 lb", "0 inHg of vacuum", "82.156(a) Table 1");

    public static readonly RuleFigure HighLarge = Cfr(
        "high-pressure appliance, charge of 200 lb and more", "10 inHg of vacuum; 4 with a machine made before 15 Nov 1993", "82.156(a) Table 1");

    public static readonly RuleFigure MediumSmall = Cfr(
        "medium-pressure appliance, charge below 200 lb", "10 inHg of vacuum; 4 with a machine made before 15 Nov 1993", "82.156(a) Table 1");

    public static readonly RuleFigure MediumLarge = Cfr(
        "medium-pressure appliance, charge of 200 lb and more", "15 inHg of vacuum; 4 with a machine made before 15 Nov 1993", "82.156(a) Table 1");

    public static readonly RuleFigure Low = Cfr("low-pressure appliance", "25 mmHg absolute (3.333 kPa)", "82.156(a) Table 1");

    public static readonly RuleFigure NonMajorRepair = Cfr(
        "not a major repair and no evacuation to atmosphere after it", "0 psig", "82.156(a)(1)(i) and (ii)");

    public static readonly RuleFigure OilChange = Cfr("oil change", "at most 5 psig", "82.156(a)(1)(iii)");

    public static readonly RuleFigure Leak = Cfr(
        "leak: parts that leak, to the lowest level without substantial contamination", "never above 0 psig", "82.156(a)(2)");

    public static readonly RuleFigure DisposalRecord = Cfr(
        "records of the disposal of an appliance, kept for three years", "charge above 5 lb and below 50 lb", "82.156(a)(3)");

    public static readonly RuleFigure SmallAppliance = Cfr(
        "small appliance", "90 % recovered with its compressor running, 80 % without or with a machine made before 15 Nov 1993; or 4 inHg of vacuum", "82.156(b)");

    public static readonly RuleFigure SmallApplianceDefinition = Cfr(
        "small appliance: made, charged and hermetically sealed in a factory", "charge of 5 lb (2.268 kg) or less", "82.152");

    public static readonly RuleFigure MotorVehicle = Cfr(
        "motor vehicle air conditioner and the like, at disposal", "102 mmHg of vacuum (not absolute)", "82.156(c) and (d)");

    public static readonly RuleFigure SystemDependent = Cfr("system-dependent equipment", "charge of 15 lb at most", "82.156(e)");

    public static readonly RuleFigure Exempt = Cfr(
        "exempt from the venting prohibition", "carbon dioxide in any use; ammonia, propane, isobutane, R-441A in listed uses", "82.154(a)(1)");

    public static readonly RuleFigure Verify = Cfr(
        "the technician verifies, before opening, that the level has been reached", "no time and no rise are named", "82.156(a)");

    public static readonly RuleFigure MajorRepair = Cfr(
        "major repair: removal of compressor, condenser, evaporator or auxiliary coil, or a large opening", "more than 4 in² for more than 15 min", "82.152");

    public static IReadOnlyList<RuleFigure> All { get; } =
    [
        Classes, Basis, VeryHigh, HighSmall, HighLarge, MediumSmall, MediumLarge, Low, SmallApplianceDefinition, SmallAppliance, MotorVehicle,
        MajorRepair, NonMajorRepair, OilChange, Leak, Verify, DisposalRecord, SystemDependent, Exempt,
    ];

    private static RuleFigure Cfr(string rule, string figure, string section) =>
        new(rule, figure, "40 CFR " + section, Editions.Cfr40, Evidence.Read);
}
