namespace Refrigerant.Recovery.Oils;

/// <summary>How many times Raoult's rule a pair of refrigerant and oil dissolves, by moles.</summary>
internal readonly struct RaoultFactor
{
    /// <param name="thin">At vanishing pressure, greater than zero.</param>
    /// <param name="saturated">At saturation, greater than zero.</param>
    /// <param name="isMeasured">Whether it is fitted to measurements of that pair.</param>
    public RaoultFactor(double thin, double saturated, bool isMeasured)
    {
        Thin = thin;
        Saturated = saturated;
        IsMeasured = isMeasured;
    }

    public double Thin { get; }

    public double Saturated { get; }

    public bool IsMeasured { get; }
}
