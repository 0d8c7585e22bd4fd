namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>What one call of a mixture's model works in.</summary>
internal sealed class MixtureScratch
{
    public MixtureScratch(MixtureEquation equation, double[] composition)
    {
        Bulk = new MixturePhase(equation);
        Bulk.SetComposition(composition);
        Trial = new MixturePhase(equation);
        Split = new PhaseSplit(equation);
        LogK = new double[equation.Count];
        OtherLogK = new double[equation.Count];
    }

    /// <summary>A phase of the bulk composition.</summary>
    public MixturePhase Bulk { get; }

    /// <summary>A phase of any composition.</summary>
    public MixturePhase Trial { get; }

    public PhaseSplit Split { get; }

    public double[] LogK { get; }

    public double[] OtherLogK { get; }
}
