using System;
using Refrigerant.Recovery.CoolProp.Native;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.CoolProp.Models;

/// <summary>A pure or pseudo-pure fluid: CoolProp takes every pair of inputs directly.</summary>
internal sealed class PureModel : CoolPropModel
{
    /// <summary>CoolProp's number for a two-phase state (DataStructures.h, iphase_twophase).</summary>
    private const int TwoPhaseNumber = 6;

    private PureModel(NativeState state, FluidFacts facts)
        : base(state, facts)
    {
    }

    /// <summary>Loads a fluid of one component.</summary>
    /// <exception cref="CoolPropException">CoolProp does not know the fluid.</exception>
    public static PureModel Load(CoolPropLibrary library, NativeState state, string designation)
    {
        lock (NativeApi.Gate)
        {
            ComponentFacts component = ComponentFacts.Read(state);
            state.Update(InputPair.QualityTemperature, 0, component.MinimumTemperature);
            double lowest = state.Output(Property.Pressure);
            state.Update(InputPair.QualityTemperature, 1, component.MaximumSaturationTemperature);
            double highest = state.Output(Property.Pressure);
            string equation = library.FluidText(state.Name, "BibTeX-EOS") is { Length: > 0 } key ? $", equation of state {key}" : "";
            return new PureModel(state, new FluidFacts
            {
                Designation = designation,
                Source = $"CoolProp {library.Version}{equation}",
                Composition = [new FluidComponent(designation, 1, 1)],
                MolarMass = component.MolarMass,
                CriticalTemperature = state.Output(Property.CriticalTemperature),
                CriticalPressure = state.Output(Property.CriticalPressure),
                CriticalDensity = state.Output(Property.CriticalDensity),
                Range = new PropertyRange(
                    component.MinimumTemperature,
                    component.MaximumTemperature,
                    component.MaximumPressure,
                    component.MaximumSaturationTemperature,
                    lowest,
                    highest),
                MinimumSaturationPressure = lowest,
                MaximumSaturationPressure = highest,
                Reference = component.Reference,
            });
        }
    }

    protected override StatePoint Stable(double temperature, double pressure)
    {
        CoolPropException? failure = State.TryUpdate(InputPair.PressureTemperature, pressure, temperature);
        if (failure is null && ReadStable(temperature) is StatePoint point)
        {
            return point;
        }

        // On the saturation curve CoolProp refuses to choose, and far from it it may stop at an unstable density: take the side ourselves.
        if (temperature <= Range.MaximumSaturationTemperature)
        {
            SaturationPoint saturation = Saturation(temperature);
            if (pressure >= saturation.Bubble.Pressure || pressure <= saturation.Dew.Pressure)
            {
                return OnSide(temperature, pressure, pressure >= saturation.Bubble.Pressure, saturation);
            }
        }

        throw failure ?? new CoolPropException(
            Designation, FormattableString.Invariant($"{temperature:G7} K and {pressure:G7} Pa"), "it gave a state that is not stable.");
    }

    protected override VesselPoint Vessel(double temperature, double density)
    {
        State.Update(InputPair.DensityTemperature, density, temperature);
        return Present();
    }

    protected override VesselPoint VesselOfEnergy(double density, double internalEnergy) =>
        Attempt(InputPair.DensityEnergy, density, internalEnergy - Reference.Enthalpy) ?? SolveEnergy(density, internalEnergy);

    protected override StatePoint OfCaloric(double pressure, double value, Property property)
    {
        VesselPoint? found = property == Property.Enthalpy
            ? Attempt(InputPair.EnthalpyPressure, value - Reference.Enthalpy, pressure)
            : Attempt(InputPair.PressureEntropy, pressure, value - Reference.Entropy);
        return found?.Bulk ?? SolveCaloric(pressure, value, property);
    }

    protected override StatePoint BetweenSaturated(in SaturationPoint saturation, double value, Property property)
    {
        StatePoint liquid = saturation.Bubble;
        StatePoint vapor = saturation.Dew;
        double quality = (value - Caloric(liquid, property)) / (Caloric(vapor, property) - Caloric(liquid, property));
        double volume = (1 / liquid.Density) + (quality * ((1 / vapor.Density) - (1 / liquid.Density)));
        return Mix(liquid, vapor, quality, 1 / volume);
    }

    protected override ReferenceOffset PhaseReference(bool liquid) => Reference;

    /// <summary>The state of two inputs, or null where CoolProp finds none: below the lowest saturation pressure it flashes few pairs.</summary>
    private VesselPoint? Attempt(InputPair pair, double first, double second)
    {
        try
        {
            State.Update(pair, first, second);
            return Present();
        }
        catch (CoolPropException)
        {
            return null;
        }
    }

    private VesselPoint Present()
    {
        double density = State.Output(Property.Density);
        return (int)State.Output(Property.Phase) == TwoPhaseNumber
            ? ReadTwoPhase(density)
            : OnePhase(Read(PhaseOf(State.Output(Property.Temperature), density)));
    }

    /// <summary>The present state, or null where its density lies between the phases.</summary>
    private StatePoint? ReadStable(double temperature)
    {
        bool stable = temperature >= CriticalTemperature
            || State.Derivative(Property.Pressure, Property.Density, Property.Temperature) > 0;
        return stable ? Read(PhaseOf(temperature, State.Output(Property.Density))) : null;
    }
}
