using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>Makes components of the pure fluids of the catalogue.</summary>
internal static class MixtureComponents
{
    public static MixtureComponent Create(HelmholtzModel pure)
    {
        PureEquation equation = pure.Engine.Equation;
        return new MixtureComponent(
            pure.Data,
            equation.Residual,
            equation.EnthalpyOffset * pure.MolarMass,
            equation.EntropyOffset * pure.MolarMass);
    }
}
