using System;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using UnitsNet;

namespace Refrigerant.Recovery.Processes;

/// <summary>Where an equalization starts and what ends it; one hour at most by default. Immutable.</summary>
public sealed record EqualizationOptions : StageOptions
{
    private const double Hour = 3600;

    /// <summary>An equalization of appliance and cylinder as described.</summary>
    public EqualizationOptions()
        : base(Hour)
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="cylinderEndPressure">See <see cref="CylinderEndPressure"/>.</param>
    /// <param name="start">See <see cref="StageOptions.Start"/>.</param>
    /// <param name="inputs">See <see cref="StageOptions.Inputs"/>.</param>
    /// <param name="cylinderLimit">See <see cref="StageOptions.CylinderLimit"/>.</param>
    /// <param name="maximumDuration">See <see cref="StageOptions.MaximumDuration"/>.</param>
    /// <param name="composition">See <see cref="StageOptions.Composition"/>.</param>
    /// <param name="barometer">See <see cref="StageOptions.Barometer"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public EqualizationOptions(
        Pressure? cylinderEndPressure = null,
        SimulationState? start = null,
        SimulationInputs? inputs = null,
        Mass? cylinderLimit = null,
        Duration? maximumDuration = null,
        CompositionMode? composition = null,
        Barometer? barometer = null)
        : base(Hour, start, inputs, cylinderLimit, maximumDuration, composition, barometer)
    {
        CylinderEndPressure = cylinderEndPressure ?? CylinderEndPressure;
    }

    /// <summary>Absolute pressure of the cylinder, rising, at which it is even enough; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? CylinderEndPressure { get; init => field = Require.Positive(value, "Pa", nameof(CylinderEndPressure)); }

    private protected override string Own => "equalization";
}
