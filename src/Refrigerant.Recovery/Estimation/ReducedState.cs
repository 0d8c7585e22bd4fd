namespace Refrigerant.Recovery.Estimation;

/// <summary>What changes while an appliance is emptied, as the reduced model follows it. SI.</summary>
internal struct ReducedState
{
    /// <summary>Refrigerant that has left the appliance, kg.</summary>
    public double Delivered;

    /// <summary>Temperature of the refrigerant, K.</summary>
    public double Temperature;

    /// <summary>Mean temperature of the metal, K.</summary>
    public double MetalTemperature;

    /// <summary>Temperature of the metal that liquid wets, K.</summary>
    public double WetTemperature;

    /// <summary>Refrigerant dissolved in oil, or held back where no gauge sees it, kg.</summary>
    public double Dissolved;

    /// <summary>How far the liquid of a blend had changed when that was last found, as <see cref="ReducedModel"/> keeps it from step to step; zero where it was not found yet.</summary>
    public double Glide;

    /// <summary>Suction over appliance pressure as it was last found; zero where nothing was drawn.</summary>
    public double Suction;
}
