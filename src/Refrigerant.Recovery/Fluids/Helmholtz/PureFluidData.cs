namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>The published constants of one pure fluid's equation of state, molar and SI.</summary>
internal sealed class PureFluidData
{
    /// <summary>The ASHRAE 34 designation.</summary>
    public required string Designation { get; init; }

    /// <summary>The chemical name.</summary>
    public required string Name { get; init; }

    /// <summary>The CAS registry number.</summary>
    public required string CasNumber { get; init; }

    /// <summary>The publication of the equation of state.</summary>
    public required string Source { get; init; }

    /// <summary>Molar mass, kg/mol.</summary>
    public required double MolarMass { get; init; }

    /// <summary>Molar gas constant of the equation, J/(mol·K).</summary>
    public required double GasConstant { get; init; }

    /// <summary>Reducing temperature, K: τ = ReducingTemperature/T.</summary>
    public required double ReducingTemperature { get; init; }

    /// <summary>Reducing molar density, mol/m³: δ = molar density/ReducingMolarDensity.</summary>
    public required double ReducingMolarDensity { get; init; }

    /// <summary>Stated critical temperature, K.</summary>
    public required double CriticalTemperature { get; init; }

    /// <summary>Stated critical pressure, Pa.</summary>
    public required double CriticalPressure { get; init; }

    /// <summary>Stated critical molar density, mol/m³.</summary>
    public required double CriticalMolarDensity { get; init; }

    /// <summary>Acentric factor.</summary>
    public required double AcentricFactor { get; init; }

    /// <summary>Lowest valid temperature, K.</summary>
    public required double MinimumTemperature { get; init; }

    /// <summary>Highest valid temperature, K.</summary>
    public required double MaximumTemperature { get; init; }

    /// <summary>Highest valid pressure, Pa.</summary>
    public required double MaximumPressure { get; init; }

    /// <summary>The ideal-gas part.</summary>
    public required IdealHelmholtz IdealGas { get; init; }

    /// <summary>The residual part.</summary>
    public required ResidualTerms Residual { get; init; }

    /// <summary>Rows T in K, liquid and vapor viscosity along saturation in Pa·s, ascending in T; null where none is published.</summary>
    public double[,]? SaturationViscosity { get; init; }
}
