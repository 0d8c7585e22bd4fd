using System;
using System.Collections.Generic;
using Refrigerant.Recovery.CoolProp.Native;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.CoolProp.Models;

/// <summary>
/// A blend on CoolProp's multi-fluid model. CoolProp flashes blends at a given vapor fraction or at pressure and temperature only; the other
/// questions are solved here from those and from the equation itself, with the phases at equilibrium (their compositions differ from the bulk's).
/// </summary>
internal sealed class BlendModel : CoolPropModel
{
    private const double FractionAccuracy = 1e-13;

    private readonly ComponentFacts[] _components;

    public BlendModel(NativeState state, FluidFacts facts, ComponentFacts[] components)
        : base(state, facts) => _components = components;

    /// <summary>The mass-weighted sum of the components' offsets.</summary>
    /// <param name="components">The components.</param>
    /// <param name="moleFractions">Their mole fractions.</param>
    public static ReferenceOffset Weigh(IReadOnlyList<ComponentFacts> components, IReadOnlyList<double> moleFractions)
    {
        double mass = 0;
        double enthalpy = 0;
        double entropy = 0;
        for (int i = 0; i < components.Count; i++)
        {
            double share = moleFractions[i] * components[i].MolarMass;
            mass += share;
            enthalpy += share * components[i].Reference.Enthalpy;
            entropy += share * components[i].Reference.Entropy;
        }

        return new ReferenceOffset(enthalpy / mass, entropy / mass);
    }

    protected override StatePoint Stable(double temperature, double pressure)
    {
        if (temperature > Range.MaximumSaturationTemperature)
        {
            State.Update(InputPair.PressureTemperature, pressure, temperature);
            return Read(PhaseOf(temperature, State.Output(Property.Density)));
        }

        SaturationPoint saturation = Saturation(temperature);
        if (pressure >= saturation.Bubble.Pressure || pressure <= saturation.Dew.Pressure)
        {
            return OnSide(temperature, pressure, pressure >= saturation.Bubble.Pressure, saturation);
        }

        UpdateBetween(InputPair.QualityTemperature, temperature, Property.Pressure, pressure);
        return ReadTwoPhase(State.Output(Property.Density)).Bulk;
    }

    protected override VesselPoint Vessel(double temperature, double density)
    {
        bool liquid = density > CriticalDensity;
        if (temperature <= Range.MaximumSaturationTemperature)
        {
            SaturationPoint saturation = Saturation(temperature);
            if (density < saturation.Bubble.Density && density > saturation.Dew.Density)
            {
                UpdateBetween(InputPair.QualityTemperature, temperature, Property.Density, density);
                return ReadTwoPhase(density);
            }

            liquid = density >= saturation.Bubble.Density;
        }

        Phase phase = temperature > CriticalTemperature ? Phase.Supercritical : liquid ? Phase.Liquid : Phase.Vapor;
        return OnePhase(Homogeneous(temperature, density, liquid, () => Read(phase)));
    }

    protected override VesselPoint VesselOfEnergy(double density, double internalEnergy) => SolveEnergy(density, internalEnergy);

    protected override StatePoint OfCaloric(double pressure, double value, Property property) => SolveCaloric(pressure, value, property);

    protected override StatePoint BetweenSaturated(in SaturationPoint saturation, double value, Property property)
    {
        double offset = property == Property.Enthalpy ? Reference.Enthalpy : Reference.Entropy;
        UpdateBetween(InputPair.PressureQuality, saturation.Bubble.Pressure, property, value - offset);
        return ReadTwoPhase(State.Output(Property.Density)).Bulk;
    }

    protected override ReferenceOffset PhaseReference(bool liquid) => Weigh(_components, State.MoleFractions(liquid));

    /// <summary>Brings the state to the vapor fraction at which a property has a value, at a given temperature or pressure.</summary>
    private void UpdateBetween(InputPair pair, double given, Property property, double value)
    {
        void Update(double fraction)
        {
            bool byTemperature = pair == InputPair.QualityTemperature;
            State.Update(pair, byTemperature ? fraction : given, byTemperature ? given : fraction);
        }

        // Volume, not density, is nearly linear in the vapor fraction.
        double Scale(double number) => property == Property.Density ? 1 / number : number;
        double Excess(double fraction)
        {
            Update(fraction);
            return Scale(State.Output(property)) - Scale(value);
        }

        Update(Root.Find(
            Excess,
            0,
            1,
            FractionAccuracy,
            () => FormattableString.Invariant(
                $"{Designation} with {IndexTable.Name(property)} {value:G7} at {given:G7} {(pair == InputPair.QualityTemperature ? "K" : "Pa")}")));
    }
}
