using System;

namespace Refrigerant.Recovery.Equipment;

/// <summary>Heat exchange and metal of an appliance where they are not given, from its size; plain SI doubles. Common practice, no source.</summary>
/// <remarks>
/// Set by what vehicle air conditioners show: with 3 to 5 L and some 1.2 kg they take up 0.5 to 3 W/K from still air, and the metal in contact with the
/// refrigerant holds 1.5 to 3 kJ/K for each kg of charge (estimates from what recoveries leave in them). Surfaces grow as volume to the power of two
/// thirds: a chiller of 2 m³ comes to some 100 W/K.
/// </remarks>
internal static class TypicalHeat
{
    /// <summary>Surface of coils, lines and shells over that of a cube's face of the same volume, V^(2/3), times some 3 W/(m²·K) of still air, W/(m²·K).</summary>
    private const double ConductancePerFace = 60;

    /// <summary>Boiling liquid on the inside of the same appliance: tubes of some 10 mm have 400 m² for each m³, with some 500 W/(m²·K), W/(m²·K).</summary>
    private const double BoilingPerFace = 14_000;

    /// <summary>Metal for each m³ of volume, kg.</summary>
    private const double MetalPerVolume = 1500;

    /// <summary>Metal for each kg of charge at least.</summary>
    private const double MetalPerCharge = 2.5;

    /// <summary>Conductance from the surroundings to the metal of an appliance of a volume (m³), W/K.</summary>
    public static double ConductanceFor(double volume) => ConductancePerFace * Math.Pow(volume, 2.0 / 3);

    /// <summary>Conductance from the metal of an appliance of a volume (m³) to boiling refrigerant, W/K.</summary>
    public static double BoilingFor(double volume) => BoilingPerFace * Math.Pow(volume, 2.0 / 3);

    /// <summary>Mass of the metal that cools with the refrigerant, for a volume (m³) and a charge (kg), kg.</summary>
    public static double MetalFor(double volume, double charge) => Math.Max(MetalPerVolume * volume, MetalPerCharge * charge);
}
