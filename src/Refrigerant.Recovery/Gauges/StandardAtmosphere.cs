using System;

namespace Refrigerant.Recovery.Gauges;

/// <summary>The troposphere of the U.S. Standard Atmosphere 1976 (the same model as ISO 2533).</summary>
internal static class StandardAtmosphere
{
    /// <summary>Pressure at sea level, Pa.</summary>
    public const double SeaLevelPressure = 101_325;

    /// <summary>Top of the troposphere, geopotential m.</summary>
    public const double Tropopause = 11_000;

    /// <summary>The shore of the Dead Sea, the lowest land, m (from memory).</summary>
    public const double LowestLand = -430;

    private const double SeaLevelTemperature = 288.15;
    private const double LapseRate = 0.0065;
    private const double Gravity = 9.80665;
    private const double MolarMassOfAir = 0.0289644;
    private const double GasConstant = 8.31432;

    /// <summary>
    /// p = p0·(1 − L·H/T0)^(g·M/(R·L)), H the geopotential altitude in m, L the lapse rate, with the constants of the 1976 standard.
    /// </summary>
    public static double PressureAt(double elevation) =>
        SeaLevelPressure
        * Math.Pow(1 - (LapseRate * elevation / SeaLevelTemperature), Gravity * MolarMassOfAir / (GasConstant * LapseRate));
}
