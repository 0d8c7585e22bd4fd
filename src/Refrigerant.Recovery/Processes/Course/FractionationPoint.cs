using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>The content of an appliance at a moment of a recovery, with its composition followed. Immutable.</summary>
public sealed class FractionationPoint
{
    private readonly TrackedContent _content;

    internal FractionationPoint(in TrajectoryPoint point, double startSeconds)
    {
        _content = point.Content!;
        Time = new Duration(startSeconds + point.Seconds, DurationUnit.Second);
        Mass = point.ApplianceMass;
        Liquid = _content.LiquidComposition();
        Vapor = _content.DrawnComposition();
    }

    /// <summary>Since the start of the recovery.</summary>
    public Duration Time { get; }

    /// <summary>Refrigerant left, what oil holds included.</summary>
    public Mass Mass { get; }

    /// <summary>Its temperature.</summary>
    public Temperature Temperature => new(_content.Temperature, TemperatureUnit.Kelvin);

    /// <summary>Absolute pressure of what is left, with the composition it has by then.</summary>
    public Pressure Pressure => new(_content.Pressure, PressureUnit.Pascal);

    /// <summary>Absolute pressure that the same mass would have at the same temperature with the composition as charged; solved when it is asked for.</summary>
    /// <exception cref="PropertyRangeException">That state is outside the range of the blend's equation.</exception>
    public Pressure FixedCompositionPressure => new(_content.FixedCompositionPressure(), PressureUnit.Pascal);

    /// <summary>Composition of all that is left, but for what oil holds.</summary>
    public IReadOnlyList<FluidComponent> Composition => _content.Composition();

    /// <summary>Composition of the liquid; null where there is none.</summary>
    public IReadOnlyList<FluidComponent>? Liquid { get; }

    /// <summary>Composition of the vapor: of what the machine draws.</summary>
    public IReadOnlyList<FluidComponent> Vapor { get; }

    /// <summary>Time, mass, temperature and pressure, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Time.Seconds:G7} s: {Mass.Kilograms:G5} kg at {Temperature.DegreesCelsius:F2} °C, {Pressure.Kilopascals:G5} kPa absolute");
}
