using System.Collections.Generic;
using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Rules;

/// <summary>The figures of places other than the United States, each once.</summary>
internal static class PlaceFigures
{
    /// <summary>Japan: pressures at normal temperature that part the classes, and the charge that parts the second, Pa and kg.</summary>
    public const double JapanLow = 0.3e6;

    public const double JapanHigh = 2e6;
    public const double JapanCharge = 2;

    /// <summary>The normal temperatures taken where none is given: that of a trade source, and the one of Japan's high-pressure gas law (from memory), K.</summary>
    public const double JapanCool = 298.15;

    public const double JapanWarm = 308.15;

    /// <summary>EN 378 and Spain: the internal volume that parts the levels, m³, and the levels, Pa.</summary>
    public const double EuropeanVolume = 0.2;

    public const double EuropeanSmall = 0.6e5;
    public const double EuropeanLarge = 0.3e5;

    /// <summary>20 °C, K.</summary>
    public const double EuropeanTemperature = 293.15;

    private const string JapanSource = "Ordinance 7 of 2014 (Japan), art. 40(i) and Annexed Table 1";
    private const string JapanEdition = "in force 2020-12-28";
    private const string SpainSource = "Spain, RD 552/2019, IF-17, ";
    private const string SpainEdition = "2026";

    public static readonly RuleFigure JapanLowGas = Japan("gas below 0.3 MPa at normal temperature", "0.03 MPa absolute");
    public static readonly RuleFigure JapanSmall = Japan("gas from 0.3 to below 2 MPa at normal temperature, charge below 2 kg", "0.10 MPa absolute");
    public static readonly RuleFigure JapanLarge = Japan("gas from 0.3 to below 2 MPa at normal temperature, charge of 2 kg and more", "0.09 MPa absolute");
    public static readonly RuleFigure JapanHighGas = Japan("gas of 2 MPa and more at normal temperature", "0.10 MPa absolute");
    public static readonly RuleFigure JapanHold = Japan("level at the recovery port, still held after a set time", "no time is named");

    public static readonly RuleFigure JapanException = Japan(
        "no level during servicing where what stays in the circuit cannot escape", "exception");

    public static readonly RuleFigure SpainService = Spain("before work that opens the system or the part, any volume", "0.3 bar absolute", "1.8.2.1 b");
    public static readonly RuleFigure SpainSmall = Spain("before scrapping, internal volume of 0.2 m³ at most", "0.6 bar absolute", "1.8.2.1 c");
    public static readonly RuleFigure SpainLarge = Spain("before scrapping, internal volume above 0.2 m³", "0.3 bar absolute", "1.8.2.1 c");

    public static readonly RuleFigure SpainHold = Spain(
        "finished only if the pressure does not rise with the machine stopped and the whole system at ambient", "no time is named", "1.8.2.1");

    public static readonly RuleFigure SpainTemperature = Spain("levels hold at a vessel temperature of", "20 °C, adapted otherwise", "1.8.2.1");

    public static readonly RuleFigure EuropeanSmallVolume = En378("internal volume of 0.2 m³ at most", "0.6 bar absolute");
    public static readonly RuleFigure EuropeanLargeVolume = En378("internal volume above 0.2 m³", "0.3 bar absolute");
    public static readonly RuleFigure EuropeanHold = En378("finished only if the pressure does not rise with the machine stopped", "no time is named");

    public static readonly RuleFigure CanadaNone = new(
        "all of it is recovered; no pressure is stated", "none", "SOR/2022-110 (Canada), s. 3(2)(b), 15, 16", "2026-07", Evidence.Read);

    public static readonly RuleFigure TransportNone = new(
        "rules of transport: no level of an appliance", "none", "UN Model Regulations; ADR/RID 2025", Editions.Adr, Evidence.Read);

    public static IReadOnlyList<RuleFigure> All { get; } =
    [
        JapanLowGas, JapanSmall, JapanLarge, JapanHighGas, JapanHold, JapanException, SpainService, SpainSmall, SpainLarge, SpainHold,
        SpainTemperature, EuropeanSmallVolume, EuropeanLargeVolume, EuropeanHold, CanadaNone, TransportNone,
    ];

    private static RuleFigure Japan(string rule, string figure) => new(rule, figure, JapanSource, JapanEdition, Evidence.Read);

    private static RuleFigure Spain(string rule, string figure, string section) => new(rule, figure, SpainSource + section, SpainEdition, Evidence.Read);

    private static RuleFigure En378(string rule, string figure) => new(
        rule, figure, "EN 378-4:2016+A1:2019, as Spain's law follows it", Editions.None, Evidence.ReadSecondHand);
}
