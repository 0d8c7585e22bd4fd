namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>A reduced Helmholtz energy and its derivatives, each multiplied by the powers of delta and tau it is taken by.</summary>
internal struct HelmholtzDerivatives
{
    /// <summary>α.</summary>
    public double A;

    /// <summary>δ·∂α/∂δ.</summary>
    public double D;

    /// <summary>δ²·∂²α/∂δ².</summary>
    public double DD;

    /// <summary>τ·∂α/∂τ.</summary>
    public double T;

    /// <summary>δ·τ·∂²α/∂δ∂τ.</summary>
    public double DT;

    /// <summary>τ²·∂²α/∂τ².</summary>
    public double TT;
}
