using System;

namespace Refrigerant.Recovery.Equipment;

/// <summary>Heat from still air to a wall by natural convection; plain SI doubles.</summary>
/// <remarks>
/// <para>
/// Churchill and Chu 1975, Int. J. Heat Mass Transfer 18, 1323 and 1049 (from memory): vertical wall of height L, upright cylinders included,
/// Nu = {0.825 + 0.387·Ra^(1/6)/[1 + (0.492/Pr)^(9/16)]^(8/27)}²; horizontal cylinder of diameter D,
/// Nu = {0.60 + 0.387·Ra^(1/6)/[1 + (0.559/Pr)^(9/16)]^(8/27)}². Ra = g·β·ΔT·L³/(ν·a), β = 1/T at the film temperature.
/// </para>
/// <para>
/// Air at atmospheric pressure by powers of T through the values of the textbook tables at 300 K (k = 0.0263 W/(m·K), ν = 15.9e-6 m²/s, Pr = 0.707,
/// from memory). Radiation and wind are not in it.
/// </para>
/// </remarks>
internal static class StillAir
{
    private const double Gravity = 9.80665;
    private const double Prandtl = 0.707;
    private const double Reference = 300;
    private const double Conductivity = 0.0263;
    private const double ConductivityPower = 0.82;
    private const double Viscosity = 15.9e-6;
    private const double ViscosityPower = 1.75;

    /// <summary>Heat transfer coefficient of an upright wall or cylinder of a height (m), W/(m²·K).</summary>
    public static double Upright(double height, double wallTemperature, double airTemperature) =>
        Coefficient(height, wallTemperature, airTemperature, 0.825, 0.492);

    /// <summary>Heat transfer coefficient of a lying cylinder of a diameter (m), W/(m²·K).</summary>
    public static double Lying(double diameter, double wallTemperature, double airTemperature) =>
        Coefficient(diameter, wallTemperature, airTemperature, 0.6, 0.559);

    private static double Coefficient(double length, double wallTemperature, double airTemperature, double atRest, double prandtlScale)
    {
        double film = 0.5 * (wallTemperature + airTemperature);
        double conductivity = Conductivity * Math.Pow(film / Reference, ConductivityPower);
        double viscosity = Viscosity * Math.Pow(film / Reference, ViscosityPower);
        double rayleigh = Gravity / film * Math.Abs(wallTemperature - airTemperature) * length * length * length * Prandtl / (viscosity * viscosity);
        double root = atRest + (0.387 * Math.Pow(rayleigh, 1.0 / 6) / Math.Pow(1 + Math.Pow(prandtlScale / Prandtl, 9.0 / 16), 8.0 / 27));
        return root * root * conductivity / length;
    }
}
