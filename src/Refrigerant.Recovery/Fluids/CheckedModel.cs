using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids;

/// <summary>An engine of the caller's, of which no answer that is not finite gets any further.</summary>
internal sealed class CheckedModel(PropertyModel engine) : PropertyModel
{
    /// <summary>The engine itself; a model of ours is its own.</summary>
    public static PropertyModel EngineOf(PropertyModel model) => model is CheckedModel given ? given.Engine : model;

    private PropertyModel Engine { get; } = engine;

    public override string Designation => Engine.Designation;

    public override double MolarMass => Constant(Engine.MolarMass, nameof(MolarMass));

    public override double CriticalTemperature => Constant(Engine.CriticalTemperature, nameof(CriticalTemperature));

    public override double CriticalPressure => Constant(Engine.CriticalPressure, nameof(CriticalPressure));

    public override double CriticalDensity => Constant(Engine.CriticalDensity, nameof(CriticalDensity));

    public override PropertyRange Range => Engine.Range;

    public override IReadOnlyList<FluidComponent> Composition => Engine.Composition;

    public override ModelQuality Quality => Engine.Quality;

    public override string Source => Engine.Source;

    public override SaturationPoint SaturationAtTemperature(double temperature) =>
        Checked(Engine.SaturationAtTemperature(temperature), nameof(SaturationAtTemperature), temperature);

    public override SaturationPoint SaturationAtPressure(double pressure) =>
        Checked(Engine.SaturationAtPressure(pressure), nameof(SaturationAtPressure), pressure);

    public override StatePoint StateAt(double temperature, double pressure) =>
        Checked(Engine.StateAt(temperature, pressure), nameof(StateAt), temperature, pressure);

    public override VesselPoint VesselAtTemperature(double temperature, double density) =>
        Checked(Engine.VesselAtTemperature(temperature, density), nameof(VesselAtTemperature), temperature, density);

    public override VesselPoint VesselAtEnergy(double density, double internalEnergy) =>
        Checked(Engine.VesselAtEnergy(density, internalEnergy), nameof(VesselAtEnergy), density, internalEnergy);

    public override StatePoint StateAtEnthalpy(double pressure, double enthalpy) =>
        Checked(Engine.StateAtEnthalpy(pressure, enthalpy), nameof(StateAtEnthalpy), pressure, enthalpy);

    public override StatePoint StateAtEntropy(double pressure, double entropy) =>
        Checked(Engine.StateAtEntropy(pressure, entropy), nameof(StateAtEntropy), pressure, entropy);

    public override StateDerivatives DerivativesAt(double temperature, double density)
    {
        StateDerivatives at = Engine.DerivativesAt(temperature, density);
        return IsFinite(at.IsochoricHeatCapacity) && IsFinite(at.IsobaricHeatCapacity) && IsFinite(at.SpeedOfSound) && IsFinite(at.PressureByDensity) && IsFinite(at.PressureByTemperature)
            ? at
            : throw NotFinite(nameof(DerivativesAt), at.ToString(), temperature, density);
    }

    public override SaturationViscosity ViscosityAtSaturation(double temperature)
    {
        SaturationViscosity at = Engine.ViscosityAtSaturation(temperature);
        return IsFinite(at.Liquid) && IsFinite(at.Vapor) ? at : throw NotFinite(nameof(ViscosityAtSaturation), at.ToString(), temperature);
    }

    public override bool TrySaturationAtTemperature(double temperature, out SaturationPoint saturation)
    {
        bool found = Engine.TrySaturationAtTemperature(temperature, out saturation);
        saturation = found ? Checked(saturation, nameof(TrySaturationAtTemperature), temperature) : default;
        return found;
    }

    public override bool TrySaturationAtPressure(double pressure, out SaturationPoint saturation)
    {
        bool found = Engine.TrySaturationAtPressure(pressure, out saturation);
        saturation = found ? Checked(saturation, nameof(TrySaturationAtPressure), pressure) : default;
        return found;
    }

    public override bool TryStateAt(double temperature, double pressure, out StatePoint state)
    {
        bool found = Engine.TryStateAt(temperature, pressure, out state);
        state = found ? Checked(state, nameof(TryStateAt), temperature, pressure) : default;
        return found;
    }

    public override bool TryVesselAtTemperature(double temperature, double density, out VesselPoint vessel)
    {
        bool found = Engine.TryVesselAtTemperature(temperature, density, out vessel);
        vessel = found ? Checked(vessel, nameof(TryVesselAtTemperature), temperature, density) : default;
        return found;
    }

    public override bool TryVesselAtEnergy(double density, double internalEnergy, out VesselPoint vessel)
    {
        bool found = Engine.TryVesselAtEnergy(density, internalEnergy, out vessel);
        vessel = found ? Checked(vessel, nameof(TryVesselAtEnergy), density, internalEnergy) : default;
        return found;
    }

    private static bool IsFinite(double value) => Require.IsFinite(value);

    /// <summary>A phase that is not there has no numbers.</summary>
    private static bool IsFinite(in StatePoint state) => state.Phase == Phase.Undefined
        || (IsFinite(state.Temperature) && IsFinite(state.Pressure) && IsFinite(state.Density) && IsFinite(state.Enthalpy) && IsFinite(state.Entropy) && IsFinite(state.VaporFraction));

    private double Constant(double value, string member) => IsFinite(value) ? value : throw NotFinite(member, Require.Text(value));

    private StatePoint Checked(in StatePoint state, string call, double first, double second) => IsFinite(in state)
        ? state
        : throw NotFinite(call, Told(state), first, second);

    private SaturationPoint Checked(in SaturationPoint saturation, string call, double given) => IsFinite(saturation.Bubble) && IsFinite(saturation.Dew)
        ? saturation
        : throw NotFinite(call, $"bubble {Told(saturation.Bubble)}; dew {Told(saturation.Dew)}", given);

    private VesselPoint Checked(in VesselPoint vessel, string call, double first, double second) => IsFinite(vessel.Bulk) && IsFinite(vessel.Liquid) && IsFinite(vessel.Vapor)
        ? vessel
        : throw NotFinite(call, $"bulk {Told(vessel.Bulk)}; liquid {Told(vessel.Liquid)}; vapor {Told(vessel.Vapor)}", first, second);

    private static string Told(in StatePoint state) => FormattableString.Invariant(
        $"{state.Temperature:G7} K, {state.Pressure:G7} Pa, {state.Density:G7} kg/m³, {state.Enthalpy:G7} J/kg, {state.Entropy:G7} J/(kg·K), vapor fraction {state.VaporFraction:G7}");

    private InvalidOperationException NotFinite(string call, string answer, params double[] given)
    {
        string arguments = given.Length == 0 ? string.Empty : "(" + string.Join(", ", Array.ConvertAll(given, Require.Text)) + ")";
        return new InvalidOperationException(
            $"The property engine {Engine.GetType().Name} of {Designation} answered {call}{arguments} with what is not finite: {answer}. No engine may; see {nameof(PropertyModel)}.");
    }
}
