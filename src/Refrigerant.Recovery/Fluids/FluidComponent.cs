namespace Refrigerant.Recovery.Fluids;

/// <summary>One component of a fluid's composition. A pure fluid has one, with both fractions 1.</summary>
public sealed class FluidComponent
{
    internal FluidComponent(string designation, double massFraction, double moleFraction)
    {
        Designation = designation;
        MassFraction = massFraction;
        MoleFraction = moleFraction;
    }

    /// <summary>The component's ASHRAE 34 designation, such as "R-32".</summary>
    public string Designation { get; }

    /// <summary>Mass fraction in the bulk composition, 0 to 1.</summary>
    public double MassFraction { get; }

    /// <summary>Mole fraction in the bulk composition, 0 to 1.</summary>
    public double MoleFraction { get; }
}
