namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>What a two-phase equilibrium of given overall amounts is asked to meet.</summary>
internal enum SplitGoal
{
    /// <summary>Temperature and pressure.</summary>
    TemperaturePressure,

    /// <summary>Temperature and volume.</summary>
    TemperatureVolume,

    /// <summary>Internal energy and volume.</summary>
    EnergyVolume,

    /// <summary>Enthalpy and pressure.</summary>
    EnthalpyPressure,

    /// <summary>Entropy and pressure.</summary>
    EntropyPressure,
}

/// <summary>How an attempt at a two-phase equilibrium ended.</summary>
internal enum SplitOutcome
{
    /// <summary>Both phases are there, in equilibrium.</summary>
    TwoPhase,

    /// <summary>The liquid vanished on the way.</summary>
    NoLiquid,

    /// <summary>The vapor vanished on the way.</summary>
    NoVapor,

    /// <summary>Both phases became the same.</summary>
    Same,

    /// <summary>The iteration did not arrive within its bound.</summary>
    NotConverged,
}
