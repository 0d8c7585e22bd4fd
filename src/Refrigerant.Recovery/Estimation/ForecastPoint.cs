namespace Refrigerant.Recovery.Estimation;

/// <summary>A forecast of a batch.</summary>
internal struct ForecastPoint
{
    public ForecastRun Run;

    /// <summary>What had left the appliance at its beginning, kg.</summary>
    public double Delivered;

    public double Weight;

    /// <summary>Place in the spread of what the forecast leaves out, standard normal.</summary>
    public double Z;

    /// <summary>Standard deviation of that: share of the time, up to which time, and s.</summary>
    public double Relative;

    public double Longest;

    public double Seconds;
}
