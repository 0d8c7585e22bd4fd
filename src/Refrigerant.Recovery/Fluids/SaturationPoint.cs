using System;

namespace Refrigerant.Recovery.Fluids;

/// <summary>
/// Saturated liquid (bubble point) and saturated vapor (dew point) of the bulk composition, in plain SI doubles. Asked by
/// temperature both share the temperature, asked by pressure both share the pressure; for a pure fluid both share both.
/// </summary>
public readonly record struct SaturationPoint
{
    /// <summary>Creates the pair.</summary>
    /// <param name="bubble">Saturated liquid.</param>
    /// <param name="dew">Saturated vapor.</param>
    public SaturationPoint(in StatePoint bubble, in StatePoint dew)
    {
        Bubble = bubble;
        Dew = dew;
    }

    /// <summary>Saturated liquid of the bulk composition.</summary>
    public StatePoint Bubble { get; }

    /// <summary>Saturated vapor of the bulk composition.</summary>
    public StatePoint Dew { get; }

    /// <summary>Temperatures and pressures of both sides.</summary>
    public override string ToString() => FormattableString.Invariant($"bubble {Bubble.Temperature:G7} K, {Bubble.Pressure:G7} Pa; dew {Dew.Temperature:G7} K, {Dew.Pressure:G7} Pa");
}
