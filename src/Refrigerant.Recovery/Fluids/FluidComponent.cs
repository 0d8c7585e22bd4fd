using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids;

/// <summary>One component of a fluid's composition. A pure fluid has one, with both fractions 1.</summary>
public sealed record FluidComponent
{
    /// <summary>Creates a component, for a property engine.</summary>
    /// <param name="designation">The component's ASHRAE 34 designation.</param>
    /// <param name="massFraction">Mass fraction in the bulk composition, 0 to 1.</param>
    /// <param name="moleFraction">Mole fraction in the bulk composition, 0 to 1.</param>
    /// <exception cref="ArgumentNullException"><paramref name="designation"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A fraction is outside 0 to 1.</exception>
    public FluidComponent(string designation, double massFraction, double moleFraction)
    {
        Designation = Require.NotNull(designation, nameof(designation));
        MassFraction = Require.InRange(massFraction, 0, 1, "", nameof(massFraction));
        MoleFraction = Require.InRange(moleFraction, 0, 1, "", nameof(moleFraction));
    }

    /// <summary>The component's ASHRAE 34 designation, such as "R-32".</summary>
    public string Designation { get; }

    /// <summary>Mass fraction in the bulk composition, 0 to 1.</summary>
    public double MassFraction { get; }

    /// <summary>Mole fraction in the bulk composition, 0 to 1.</summary>
    public double MoleFraction { get; }

    /// <summary>Designation and mass fraction.</summary>
    public override string ToString() => $"{Designation} {Require.Text(MassFraction)}";
}
