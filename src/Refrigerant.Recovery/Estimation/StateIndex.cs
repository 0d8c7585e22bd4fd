namespace Refrigerant.Recovery.Estimation;

/// <summary>Places in the state vector of the filters. Logarithms are natural ones of SI values.</summary>
internal static class StateIndex
{
    /// <summary>ln of the charge, kg.</summary>
    public const int Charge = 0;

    /// <summary>ln of the internal volume, m³.</summary>
    public const int Volume = 1;

    /// <summary>ln of the conductance from the surroundings to the metal, W/K.</summary>
    public const int Outer = 2;

    /// <summary>ln of the metal's heat capacity, J/K.</summary>
    public const int Metal = 3;

    /// <summary>ln of the conductance from the metal to the refrigerant, W/K.</summary>
    public const int Inner = 4;

    /// <summary>ln of displacement times efficiency at pressure ratio one, m³/s.</summary>
    public const int Displacement = 5;

    /// <summary>ln of the hose's resistance, 1/m⁴.</summary>
    public const int Hose = 6;

    /// <summary>ln of the clearance.</summary>
    public const int Clearance = 7;

    /// <summary>ln of the share of the metal that stays wetted until the last liquid goes.</summary>
    public const int WetShare = 8;

    /// <summary>How far suction gas warms towards the air.</summary>
    public const int Warming = 9;

    /// <summary>ln of what the oil holds, kg.</summary>
    public const int OilCapacity = 10;

    /// <summary>ln of the oil's time constant, s.</summary>
    public const int OilTime = 11;

    /// <summary>Condensing temperature, K.</summary>
    public const int Condensing = 12;

    /// <summary>Bias of the gauge, Pa.</summary>
    public const int GaugeBias = 13;

    /// <summary>Slow error of gauge and model together, Pa.</summary>
    public const int GaugeDrift = 14;

    /// <summary>What the scale shows beyond what has left the appliance, kg.</summary>
    public const int ScaleOffset = 15;

    /// <summary>ln of what is dissolved in oil, kg. From here on the model moves the states.</summary>
    public const int Dissolved = 16;

    /// <summary>What has left the appliance, kg.</summary>
    public const int Delivered = 17;

    /// <summary>Mean temperature of the metal, K.</summary>
    public const int MetalTemperature = 18;

    /// <summary>Temperature of the metal that liquid wets, K.</summary>
    public const int WetTemperature = 19;

    /// <summary>Temperature of the refrigerant, K.</summary>
    public const int Temperature = 20;

    /// <summary>Number of states.</summary>
    public const int Count = 21;

    /// <summary>The first of the states that the model moves.</summary>
    public const int FirstMoving = Dissolved;

    /// <summary>Number of states that the model moves.</summary>
    public const int Moving = Count - FirstMoving;

    /// <summary>Whether a state is the logarithm of a quantity.</summary>
    public static bool IsLogarithm(int index) => index is <= WetShare or OilCapacity or OilTime or Dissolved;
}
