using Refrigerant.Recovery.Estimation;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Parameters of the reduced model that tests of it start from.</summary>
internal static class ReducedParts
{
    /// <summary>6 kg in 18 L, as the workbench's job, with a hose and a machine with clearance.</summary>
    public static ReducedParameters Typical() => new()
    {
        Charge = 6,
        Volume = 0.018,
        OuterConductance = 40,
        InnerConductance = 600,
        MetalCapacity = 20_000,
        Displacement = 5e-4,
        Clearance = 0.04,
        InverseExponent = 1 / 1.05,
        HoseResistance = 3e9,
        HoseFlow = 0.008,
        FixedLoss = 0.5,
        DischargePressure = 8e5,
        WetShare = 1,
        WetExponent = 1,
        FullLevel = 1,
        OilTime = 100,
        DryFactor = 15,
        FirstTemperature = 295,
        Drift = 1,
    };

    /// <summary>Vapor in metal that keeps its temperature, with no hose and no clearance: t = (V/S)·ln(p1/p2).</summary>
    public static ReducedParameters Vapor(double charge, double volume, double displacement) => new()
    {
        Charge = charge,
        Volume = volume,
        OuterConductance = 1e7,
        InnerConductance = 1e7,
        MetalCapacity = 1e7,
        Displacement = displacement,
        InverseExponent = 1,
        HoseFlow = 1,
        FixedLoss = 1,
        DischargePressure = 1e3,
        WetShare = 1,
        FullLevel = 1,
        WetExponent = 1,
        OilTime = 100,
        DryFactor = 1,
    };

    /// <summary>Refrigerant and metal at one temperature.</summary>
    public static ReducedState At(double kelvins) => new() { Temperature = kelvins, MetalTemperature = kelvins, WetTemperature = kelvins };
}
