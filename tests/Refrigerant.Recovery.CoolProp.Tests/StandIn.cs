using System;
using System.Runtime.InteropServices;

namespace Refrigerant.Recovery.CoolProp.Tests;

/// <summary>The stand-in for CoolProp's shared library, as the tests' build compiled it, and its fluid in closed form.</summary>
internal static class StandIn
{
    public const double R = 8.314462618;
    public const double T0 = 273.15;
    public const double LiquidCompression = 1e-5;
    public const double LiquidDensitySlope = 2.0;

    public static string Path { get; } = File("standin");

    public static string Long32Path { get; } = File("standin_long32");

    public static string OldPath { get; } = File("standin_old");

    public static string ForeignPath { get; } = File("standin_foreign");

    public static string? WhyMissing =>
        System.IO.File.Exists(Path) ? null : "No C compiler was found when the tests were built, so the stand-in library is missing.";

    public static CoolPropLibrary Library => CoolPropLibrary.Open(Path);

    public static unsafe int LiveStates => ((delegate* unmanaged[Cdecl]<int>)Export("standin_live_states"))();

    public static unsafe int Overlaps => ((delegate* unmanaged[Cdecl]<int>)Export("standin_overlaps"))();

    /// <summary>One of the stand-in's fluids; the numbers are those of standin.c.</summary>
    public sealed record Twin(double M, double Tc, double P0, double B, double Rho0, double Cl, double Cp, double L)
    {
        public static Twin R901 { get; } = new(0.100, 400, 3e5, 2500, 1000, 1500, 900, 200e3);

        public static Twin R902 { get; } = new(0.050, 360, 8e5, 2300, 950, 1600, 950, 260e3);

        public double Pressure(double t) => P0 * Math.Exp(B * ((1 / T0) - (1 / t)));

        public double LiquidDensity(double t, double p) => SaturatedLiquidDensity(t) + (LiquidCompression * (p - Pressure(t)));

        public double SaturatedLiquidDensity(double t) => Rho0 - (LiquidDensitySlope * (t - T0));

        public double GasDensity(double t, double p) => p * M / (R * t);

        /// <summary>Counted from 200 kJ/kg for saturated liquid at 0 °C.</summary>
        public double LiquidEnthalpy(double t) => (Cl * (t - T0)) + 200e3;

        public double GasEnthalpy(double t) => (Cp * (t - T0)) + L + 200e3;

        /// <summary>Counted from 1 kJ/(kg·K) for saturated liquid at 0 °C.</summary>
        public double LiquidEntropy(double t) => (Cl * Math.Log(t / T0)) + 1e3;

        public double GasEntropy(double t, double p) => (Cp * Math.Log(t / T0)) + (L / T0) - (R / M * Math.Log(p / P0)) + 1e3;
    }

    private static string File(string name) => System.IO.Path.Combine(AppContext.BaseDirectory, "native", name + ".so");

    private static nint Export(string name) => NativeLibrary.GetExport(NativeLibrary.Load(Path), name);
}
