using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.CoolProp.Native;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.CoolProp.Models;

/// <summary>Loads blends.</summary>
internal static class BlendLoader
{
    /// <summary>Makes the model of a state of several components whose mole fractions are set.</summary>
    /// <exception cref="CoolPropException">CoolProp cannot follow the blend's saturation curves.</exception>
    public static BlendModel Load(CoolPropLibrary library, NativeState state, string designation)
    {
        lock (NativeApi.Gate)
        {
            string[] names = state.ComponentNames();
            double[] moles = state.MoleFractions();
            ComponentFacts[] components = ReadComponents(library, names);
            double molarMass = components.Zip(moles, (component, share) => component.MolarMass * share).Sum();
            (double temperature, double pressure, double density) = Critical(state, molarMass);
            double warm = SaturationEnds.Warm(state, temperature);
            double cold = SaturationEnds.Cold(state, components.Max(component => component.MinimumTemperature), warm);
            (double lowest, double highest) = Pressures(state, cold, warm);
            var facts = new FluidFacts
            {
                Designation = designation,
                Source = $"CoolProp {library.Version}, multi-fluid model of {string.Join(", ", names)}",
                Composition = [.. names.Select((name, i) => new FluidComponent(
                    RefrigerantNames.Designation(name), Math.Min(1, moles[i] * components[i].MolarMass / molarMass), Math.Min(1, moles[i])))],
                MolarMass = molarMass,
                CriticalTemperature = temperature,
                CriticalPressure = pressure,
                CriticalDensity = density,
                Range = new PropertyRange(
                    cold, components.Min(component => component.MaximumTemperature), components.Min(component => component.MaximumPressure), warm, lowest, highest),
                MinimumSaturationPressure = lowest,
                MaximumSaturationPressure = highest,
                Reference = BlendModel.Weigh(components, moles),
            };
            return new BlendModel(state, facts, components);
        }
    }

    /// <summary>The molar masses of named components, kg/mol.</summary>
    public static double[] MolarMasses(CoolPropLibrary library, IEnumerable<string> names)
    {
        var masses = new List<double>();
        foreach (string name in names)
        {
            using var state = new NativeState(library, name);
            lock (NativeApi.Gate)
            {
                masses.Add(state.Output(Property.MolarMass));
            }
        }

        return [.. masses];
    }

    private static ComponentFacts[] ReadComponents(CoolPropLibrary library, string[] names)
    {
        var components = new ComponentFacts[names.Length];
        for (int i = 0; i < names.Length; i++)
        {
            using var state = new NativeState(library, names[i]);
            components[i] = ComponentFacts.Read(state);
        }

        return components;
    }

    /// <summary>
    /// CoolProp's critical point of the bulk composition; where it finds none, or more than one, the reducing point of the multi-fluid model,
    /// which lies near it.
    /// </summary>
    private static (double Temperature, double Pressure, double Density) Critical(NativeState state, double molarMass)
    {
        try
        {
            return (state.Output(Property.CriticalTemperature), state.Output(Property.CriticalPressure), state.Output(Property.CriticalDensity));
        }
        catch (CoolPropException)
        {
            double temperature = state.Output(Property.ReducingTemperature);
            double density = state.Output(Property.ReducingMolarDensity) * molarMass;
            state.ImposePhase("phase_gas");
            try
            {
                state.Update(InputPair.DensityTemperature, density, temperature);
                return (temperature, state.Output(Property.Pressure), density);
            }
            finally
            {
                state.FreePhase();
            }
        }
    }

    /// <summary>Between the bubble pressure at the cold end and the lower of the two pressures at the warm end both saturated states exist.</summary>
    private static (double Lowest, double Highest) Pressures(NativeState state, double cold, double warm)
    {
        state.Update(InputPair.QualityTemperature, 0, cold);
        double lowest = state.Output(Property.Pressure);
        state.Update(InputPair.QualityTemperature, 0, warm);
        double bubble = state.Output(Property.Pressure);
        state.Update(InputPair.QualityTemperature, 1, warm);
        return (lowest, Math.Min(bubble, state.Output(Property.Pressure)));
    }
}
