namespace Refrigerant.Recovery.Estimation;

/// <summary>What the reduced model shows at an instant. SI.</summary>
internal struct ReducedOutput
{
    /// <summary>In the appliance, Pa.</summary>
    public double Pressure;

    /// <summary>At the machine's inlet, Pa.</summary>
    public double SuctionPressure;

    /// <summary>Into the machine, kg/s.</summary>
    public double Flow;

    /// <summary>Refrigerant in the appliance besides what oil holds, kg.</summary>
    public double Mass;

    /// <summary>Liquid among it, kg.</summary>
    public double LiquidMass;

    /// <summary>Whether there is none.</summary>
    public bool IsDry;
}
