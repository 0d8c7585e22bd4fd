namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>Places in the vector of what is fitted: first what all logs share, then one set a log. Logarithms are natural ones of SI values.</summary>
internal static class FitIndex
{
    /// <summary>ln of displacement times efficiency at pressure ratio one.</summary>
    public const int Displacement = 0;

    /// <summary>ln of the hoses' resistance over the one that they should have.</summary>
    public const int Hose = 1;

    /// <summary>ln of the clearance.</summary>
    public const int Clearance = 2;

    /// <summary>How far suction gas warms towards the air.</summary>
    public const int Warming = 3;

    /// <summary>Time that refrigerant is on its way from the machine's inlet to the scale, s.</summary>
    public const int Lag = 4;

    /// <summary>How far vapor of a blend takes its own composition with it, 1, or that of the whole, 0.</summary>
    public const int Drift = 5;

    /// <summary>Number of shared places.</summary>
    public const int Shared = 6;

    /// <summary>ln of the charge. From here on within the set of a log.</summary>
    public const int Charge = 0;

    /// <summary>ln of the internal volume.</summary>
    public const int Volume = 1;

    /// <summary>ln of the conductance from the surroundings to the metal.</summary>
    public const int Outer = 2;

    /// <summary>ln of the metal's heat capacity.</summary>
    public const int Metal = 3;

    /// <summary>ln of the conductance from the metal to the refrigerant.</summary>
    public const int Inner = 4;

    /// <summary>Share of the metal that stays wetted.</summary>
    public const int WetShare = 5;

    /// <summary>Temperature at the start, K.</summary>
    public const int Temperature = 6;

    /// <summary>Condensing temperature, K.</summary>
    public const int Condensing = 7;

    /// <summary>Bias of the gauge, Pa.</summary>
    public const int GaugeBias = 8;

    /// <summary>What the scale shows beyond what has left the appliance, kg.</summary>
    public const int ScaleOffset = 9;

    /// <summary>ln of what the oil holds.</summary>
    public const int OilCapacity = 10;

    /// <summary>ln of the oil's time constant.</summary>
    public const int OilTime = 11;

    /// <summary>ln of what is dissolved at the start.</summary>
    public const int Dissolved = 12;

    /// <summary>Number of places in the set of a log.</summary>
    public const int PerLog = 13;

    /// <summary>First place of the set of a log.</summary>
    public static int Set(int log) => Shared + (log * PerLog);
}
