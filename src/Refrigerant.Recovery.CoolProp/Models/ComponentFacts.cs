using System;
using Refrigerant.Recovery.CoolProp.Native;

namespace Refrigerant.Recovery.CoolProp.Models;

/// <summary>What a fluid of one component brings to itself or to a blend, in SI units.</summary>
internal sealed record ComponentFacts
{
    public required double MolarMass { get; init; }

    public required double MinimumTemperature { get; init; }

    public required double MaximumTemperature { get; init; }

    public required double MaximumPressure { get; init; }

    public required double MaximumSaturationTemperature { get; init; }

    public required ReferenceOffset Reference { get; init; }

    /// <summary>Reads them. The caller holds the gate.</summary>
    public static ComponentFacts Read(NativeState state)
    {
        double warm = SaturationEnds.Warm(state, state.Output(Property.CriticalTemperature));
        double lowest = Math.Max(state.Output(Property.MinimumTemperature), state.Output(Property.TripleTemperature));
        double cold = SaturationEnds.Cold(state, lowest, warm);
        return new ComponentFacts
        {
            MolarMass = state.Output(Property.MolarMass),
            MinimumTemperature = cold,
            MaximumTemperature = state.Output(Property.MaximumTemperature),
            MaximumPressure = state.Output(Property.MaximumPressure),
            MaximumSaturationTemperature = warm,
            Reference = ReferenceOffset.Of(state, cold, warm),
        };
    }
}
