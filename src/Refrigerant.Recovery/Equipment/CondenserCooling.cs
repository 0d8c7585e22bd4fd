namespace Refrigerant.Recovery.Equipment;

/// <summary>What cools a condenser.</summary>
public enum CondenserCooling
{
    /// <summary>Air of the surroundings.</summary>
    Air = 0,

    /// <summary>Water.</summary>
    Water,
}
