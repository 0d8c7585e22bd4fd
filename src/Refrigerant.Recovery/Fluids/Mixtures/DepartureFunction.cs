using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>What a pair of components adds to the ideal mixing of their residual Helmholtz energies.</summary>
internal sealed class DepartureFunction
{
    /// <param name="name">The name that pairs refer to.</param>
    /// <param name="terms">The terms in the reduced density and inverse reduced temperature of the mixture.</param>
    /// <param name="source">The publication.</param>
    public DepartureFunction(string name, ResidualTerms terms, string source)
    {
        Name = name;
        Residual = new ResidualHelmholtz(terms);
        Source = source;
    }

    public string Name { get; }

    public ResidualHelmholtz Residual { get; }

    public string Source { get; }
}
