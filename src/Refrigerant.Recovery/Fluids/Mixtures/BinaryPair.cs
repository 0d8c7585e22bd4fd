namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// Parameters of one pair of components in the multi-fluid model (Kunz and Wagner 2012, doi:10.1021/je300655b), seen in the order
/// (first, second): the betas invert when the order does.
/// </summary>
internal sealed class BinaryPair
{
    public BinaryPair(double betaT, double gammaT, double betaV, double gammaV, double weight, DepartureFunction? departure, string? source)
    {
        BetaT = betaT;
        GammaT = gammaT;
        BetaV = betaV;
        GammaV = gammaV;
        Weight = weight;
        Departure = departure;
        Source = source;
    }

    /// <summary>Lorentz–Berthelot combining rules, all four parameters 1: the estimate where no parameters are published.</summary>
    public static BinaryPair Estimated { get; } = new(1, 1, 1, 1, 0, null, null);

    public double BetaT { get; }

    public double GammaT { get; }

    public double BetaV { get; }

    public double GammaV { get; }

    /// <summary>F, the factor of the departure function.</summary>
    public double Weight { get; }

    public DepartureFunction? Departure { get; }

    /// <summary>The publication, or null for the estimate.</summary>
    public string? Source { get; }

    public BinaryPair Reversed() => new(1 / BetaT, GammaT, 1 / BetaV, GammaV, Weight, Departure, Source);
}
