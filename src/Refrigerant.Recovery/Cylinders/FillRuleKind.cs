namespace Refrigerant.Recovery.Cylinders;

/// <summary>The rules that say how full a cylinder may be.</summary>
public enum FillRuleKind
{
    /// <summary>Liquid fills 80 % of the volume at 77 °F (25 °C).</summary>
    EightyPercentAt25C = 0,

    /// <summary>Not liquid-full at any temperature up to 55 °C.</summary>
    NotLiquidFullAt55C,

    /// <summary>0.95 times the density of the liquid at 50 °C.</summary>
    LiquidDensityAt50C,

    /// <summary>Not liquid-full at any temperature up to 60 °C.</summary>
    NotLiquidFullAt60C,

    /// <summary>The pressure at 65 °C does not exceed the test pressure.</summary>
    TestPressureAt65C,

    /// <summary>The filling ratio listed for the refrigerant in the UN Model Regulations and ADR.</summary>
    ListedFillingRatio,

    /// <summary>The filling density listed for the refrigerant in 49 CFR.</summary>
    ListedFillingDensity,

    /// <summary>The pressure at 55 °C does not exceed 5/4 of the service pressure.</summary>
    PressureAt55C,

    /// <summary>The pressure at 70 °F (21 °C) does not exceed the service pressure.</summary>
    PressureAt21C,

    /// <summary>80 % of the water capacity, without specific gravity. Shown to tell how far it is off; never a limit.</summary>
    EightyPercentOfWaterCapacity,

    /// <summary>The figure for recovered refrigerant that carries oil.</summary>
    RecoveredWithOil,

    /// <summary>Liquid fills 80 % of the volume at 20 °C.</summary>
    EightyPercentAt20C,

    /// <summary>Volume over the filling constant of Japan's ordinance.</summary>
    ListedFillingConstant,

    /// <summary>A bound of the library's own, where a place has no figure.</summary>
    LibraryBound,

    /// <summary>The caller's own rule.</summary>
    GivenByCaller,
}
