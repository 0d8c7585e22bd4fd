using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>The figures of the general filling rules, each once.</summary>
internal static class FillFigures
{
    public const double EightyPercent = 0.8;

    /// <summary>77 °F, K.</summary>
    public const double GuidelineTemperature = 298.15;

    /// <summary>20 °C, K.</summary>
    public const double SpanishTemperature = 293.15;

    /// <summary>131 °F, 55 °C, K.</summary>
    public const double LiquidFullTemperature = 328.15;

    /// <summary>70 °F, K; 49 CFR says 21 °C (70 °F).</summary>
    public const double ServiceTemperature = 294.15 + (1.0 / 9);

    /// <summary>Standard atmosphere, Pa: between gauge pressures of the rules and absolute ones.</summary>
    public const double Atmosphere = 101_325;

    /// <summary>5/4: the share of its service pressure that a cylinder may see.</summary>
    public const double ServicePressureRatio = 1.25;
    public const double FillingRatioFactor = 0.95;

    /// <summary>50 °C, K.</summary>
    public const double FillingRatioTemperature = 323.15;

    /// <summary>60 °C, K.</summary>
    public const double VaporTemperature = 333.15;

    /// <summary>65 °C, K.</summary>
    public const double TestTemperature = 338.15;

    /// <summary>1 bar, by which P200 reduces the absolute pressure at 65 °C before it is held against the (gauge) test pressure.</summary>
    public const double TestPressureAllowance = 1e5;

    /// <summary>Where the table is not the law of the place, its ratio binds where it is stricter than the rule by more than this share. Our choice.</summary>
    public const double SecondOpinionTolerance = 0.02;

    /// <summary>"Not liquid-full" means less than full: the share by which the mass stays below it. Our choice.</summary>
    public const double LiquidFullMargin = 1e-6;

    public static readonly RuleFigure EightyPercentAt25C = new(
        "liquid fills 80 % of the volume at 77 °F (25 °C)", "0.8·V·ρ'(25 °C)", "AHRI Guideline K", Editions.GuidelineK, Evidence.ReadSecondHand);

    public static readonly RuleFigure NotLiquidFullAt55C = new(
        "not liquid-full at any temperature up to 55 °C (131 °F)", "V·ρ'(55 °C)", "49 CFR 173.304(b); mixtures and oil 173.305(b)", Editions.Cfr49, Evidence.Read);

    public static readonly RuleFigure LiquidDensityAt50C = new(
        "0.95 times the liquid density at 50 °C", "0.95·V·ρ'(50 °C)", "UN Model Regulations, P200 (3)(c); 49 CFR 173.304b(b)(2)", Editions.UnModelRegulations, Evidence.Read);

    public static readonly RuleFigure NotLiquidFullAt60C = new(
        "not liquid-full at any temperature up to 60 °C", "V·ρ'(60 °C)", "UN Model Regulations, P200 (3)(c); 49 CFR 173.304b(b)(2)", Editions.UnModelRegulations, Evidence.Read);

    /// <summary>The same two where P200 applies by itself.</summary>
    public static readonly RuleFigure P200Density = new("P200: " + LiquidDensityAt50C.Rule, LiquidDensityAt50C.Figure, "UN Model Regulations, P200 (3)(c); ADR/RID P200 (5)(c)", Editions.Adr, Evidence.Read);

    public static readonly RuleFigure P200Full = new("P200: " + NotLiquidFullAt60C.Rule, NotLiquidFullAt60C.Figure, "UN Model Regulations, P200 (3)(c); ADR/RID P200 (5)(c)", Editions.Adr, Evidence.Read);

    public static readonly RuleFigure TestPressureAt65C = new(
        "pressure at 65 °C, less 1 bar, at most the test pressure", "p(65 °C) − 1 bar", "UN Model Regulations, P200 (3)", Editions.UnModelRegulations, Evidence.Read);

    public static readonly RuleFigure PressureAt55C = new(
        "pressure at 55 °C at most 5/4 of the service pressure", "5/4", "49 CFR 173.301(a)(8), 173.301a(d)", Editions.Cfr49, Evidence.Read);

    public static readonly RuleFigure PressureAt21C = new(
        "pressure at 21 °C (70 °F) at most the service pressure", "1", "49 CFR 173.301a(c)", Editions.Cfr49, Evidence.Read);

    public static readonly RuleFigure EightyPercentOfWaterCapacity = new(
        "80 % of the water capacity, without specific gravity (never a limit here)", "0.8·WC", "trade rule of the early 1990s, as reported with AHRI Guideline K", Editions.GuidelineK, Evidence.ReadSecondHand);

    public static readonly RuleFigure EightyPercentAt20C = new(
        "liquid fills about 80 % of the volume at about 20 °C, checked by weight", "0.8·V·ρ'(20 °C)", "Spain, RD 552/2019, IF-17, 1.4.10 and 1.8.4", "2026", Evidence.Read);

    public static readonly RuleFigure LibraryShare = new(
        "bound of the library's own: liquid fills 80 % of the volume at 25 °C", "0.8·V·ρ'(25 °C)", Sources.CommonPractice, Editions.None, Evidence.CommonPractice);

    public static readonly RuleFigure LibraryFull = new(
        "bound of the library's own: not liquid-full up to 60 °C", "V·ρ'(60 °C)", Sources.CommonPractice, Editions.None, Evidence.CommonPractice);

    public static readonly RuleFigure LibraryPressure = new(
        "bound of the library's own: pressure at 55 °C at most 5/4 of the service pressure", "p(55 °C)", Sources.CommonPractice, Editions.None, Evidence.CommonPractice);

    public static readonly RuleFigure Requalification = new(
        "a cylinder overdue for requalification is not filled", "the due date", "49 CFR 173.301(a)(6)", Editions.Cfr49, Evidence.Read);

    public static readonly RuleFigure NonRefillable = new(
        "a DOT 39 cylinder is not refilled", "never", "49 CFR 178.65", Editions.None, Evidence.FromMemory);

    public static readonly RuleFigure WaterVolume = new(
        "volume of one pound of water at 60 °F, for the volume behind a water capacity", "27.737 in³", "49 CFR 173.304a", Editions.None, Evidence.FromMemory);

    public static readonly RuleFigure ByWeight = new(
        "content is verified by weight, on an accurate scale", "weight", "49 CFR 173.304a(c)", Editions.Cfr49, Evidence.Read);

    /// <summary>Gauge pressure that a cylinder may see: 5/4 of its service pressure, Pa.</summary>
    public static double HighestGaugePressure(RecoveryCylinder cylinder) => ServicePressureRatio * cylinder.ServicePressure.Pascals;

    public static IReadOnlyList<RuleFigure> All { get; } =
    [
        EightyPercentAt25C, NotLiquidFullAt55C, LiquidDensityAt50C, NotLiquidFullAt60C, P200Density, P200Full, TestPressureAt65C, PressureAt55C, PressureAt21C,
        EightyPercentOfWaterCapacity, EightyPercentAt20C, LibraryShare, LibraryFull, LibraryPressure, WaterVolume, Requalification, NonRefillable, ByWeight,
    ];
}
