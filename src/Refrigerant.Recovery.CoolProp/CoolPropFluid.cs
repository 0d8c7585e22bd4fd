using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.CoolProp.Models;
using Refrigerant.Recovery.CoolProp.Native;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.CoolProp;

/// <summary>
/// Loads fluids whose properties CoolProp computes. Each is a <see cref="Fluid"/> like any other: every layer of the library accepts it, and
/// its enthalpies and entropies count from the same reference states. A fluid is thread-safe; calls into CoolProp are made one at a time. Its
/// native state is freed when the fluid is no longer used.
/// </summary>
/// <remarks>
/// Where a member asks for no library, <see cref="CoolPropLibrary.Open()"/> finds it. A failure inside CoolProp comes back as
/// <see cref="CoolPropException"/> with its text, a value outside the equation's range as <see cref="PropertyRangeException"/>. Viscosity
/// needs CoolProp's viscosity model of the fluid: without one <see cref="PropertyModel.ViscosityAtSaturation"/> throws
/// <see cref="CoolPropException"/>; of a blend it is CoolProp's mixing rule and marked as an estimate.
/// </remarks>
public static class CoolPropFluid
{
    private const double FractionTolerance = 1e-6;

    /// <summary>Loads any fluid that CoolProp knows.</summary>
    /// <param name="name">
    /// CoolProp's name, taken as it stands ("R134a", "CarbonDioxide", the predefined mixture "R410A.mix", the pseudo-pure "R410A"), or a
    /// designation with its hyphen ("R-134a", "R-744", "R-410A"). The designation of a blend loads the predefined mixture where CoolProp has
    /// it, the same kind of model as the embedded engine's, and the pseudo-pure fluid otherwise.
    /// </param>
    /// <param name="library">The library; null for the one that <see cref="CoolPropLibrary.Open()"/> finds.</param>
    /// <exception cref="ArgumentException"><paramref name="name"/> is null, blank, or names several fluids.</exception>
    /// <exception cref="CoolPropUnavailableException">There is no usable library.</exception>
    /// <exception cref="CoolPropException">CoolProp does not know the fluid.</exception>
    public static Fluid Load(string name, CoolPropLibrary? library = null)
    {
        string checkedName = CheckName(name, nameof(name));
        library ??= CoolPropLibrary.Open();
        return Fluid.FromModel(LoadModel(library, checkedName));
    }

    /// <summary>Loads CoolProp's model of a fluid's composition: the pure fluid, or the mixture of the same components in the same fractions.</summary>
    /// <param name="fluid">The fluid, from any engine.</param>
    /// <param name="library">The library; null for the one that <see cref="CoolPropLibrary.Open()"/> finds.</param>
    /// <exception cref="ArgumentNullException"><paramref name="fluid"/> is null.</exception>
    /// <exception cref="CoolPropUnavailableException">There is no usable library.</exception>
    /// <exception cref="CoolPropException">CoolProp does not know a component or a pair of components.</exception>
    public static Fluid LoadEquivalent(Fluid fluid, CoolPropLibrary? library = null)
    {
        if (fluid is null)
        {
            throw new ArgumentNullException(nameof(fluid));
        }

        library ??= CoolPropLibrary.Open();
        return fluid.IsBlend
            ? Fluid.FromModel(Mix(
                library,
                fluid.Designation,
                [.. fluid.Composition.Select(component => ToName(component.Designation))],
                [.. fluid.Composition.Select(component => component.MoleFraction)]))
            : Load(fluid.Designation, library);
    }

    /// <summary>Loads a mixture of given mass fractions.</summary>
    /// <param name="designation">What the mixture is to be called.</param>
    /// <param name="components">Two or more components, each by CoolProp's name or by designation with hyphen, with their mass fractions, which add up to 1 within 1e-6.</param>
    /// <param name="library">The library; null for the one that <see cref="CoolPropLibrary.Open()"/> finds.</param>
    /// <exception cref="ArgumentException">The designation is blank, there are fewer than two components, a name is blank or twice there, or the fractions do not add up to 1.</exception>
    /// <exception cref="CoolPropUnavailableException">There is no usable library.</exception>
    /// <exception cref="CoolPropException">CoolProp does not know a component or has no parameters of a pair.</exception>
    public static Fluid FromMassFractions(
        string designation, IReadOnlyList<KeyValuePair<string, double>> components, CoolPropLibrary? library = null)
    {
        (string[] names, double[] masses) = CheckComponents(designation, components);
        library ??= CoolPropLibrary.Open();
        double[] molarMasses = BlendLoader.MolarMasses(library, names);
        double moles = masses.Zip(molarMasses, (mass, molarMass) => mass / molarMass).Sum();
        return Fluid.FromModel(Mix(library, designation, names, [.. masses.Zip(molarMasses, (mass, molarMass) => mass / molarMass / moles)]));
    }

    /// <summary>Loads a mixture of given mole fractions.</summary>
    /// <param name="designation">What the mixture is to be called.</param>
    /// <param name="components">Two or more components, each by CoolProp's name or by designation with hyphen, with their mole fractions, which add up to 1 within 1e-6.</param>
    /// <param name="library">The library; null for the one that <see cref="CoolPropLibrary.Open()"/> finds.</param>
    /// <exception cref="ArgumentException">The designation is blank, there are fewer than two components, a name is blank or twice there, or the fractions do not add up to 1.</exception>
    /// <exception cref="CoolPropUnavailableException">There is no usable library.</exception>
    /// <exception cref="CoolPropException">CoolProp does not know a component or has no parameters of a pair.</exception>
    public static Fluid FromMoleFractions(
        string designation, IReadOnlyList<KeyValuePair<string, double>> components, CoolPropLibrary? library = null)
    {
        (string[] names, double[] moles) = CheckComponents(designation, components);
        return Fluid.FromModel(Mix(library ?? CoolPropLibrary.Open(), designation, names, moles));
    }

    private static PropertyModel LoadModel(CoolPropLibrary library, string name)
    {
        NativeState state = Create(library, name);
        string designation = RefrigerantNames.IsDesignation(name) ? name : RefrigerantNames.Designation(state.Name);
        try
        {
            bool pure;
            lock (NativeApi.Gate)
            {
                pure = state.ComponentNames().Length == 1;
            }

            return pure ? PureModel.Load(library, state, designation) : BlendLoader.Load(library, state, designation);
        }
        catch
        {
            state.Dispose();
            throw;
        }
    }

    private static NativeState Create(CoolPropLibrary library, string name)
    {
        if (!RefrigerantNames.IsDesignation(name))
        {
            return new NativeState(library, name);
        }

        string own = RefrigerantNames.Name(name);
        if (RefrigerantNames.IsBlend(name))
        {
            try
            {
                return new NativeState(library, own + ".mix");
            }
            catch (CoolPropException)
            {
                return new NativeState(library, own);
            }
        }

        return new NativeState(library, own);
    }

    private static BlendModel Mix(CoolPropLibrary library, string designation, string[] names, double[] moleFractions)
    {
        var state = new NativeState(library, string.Join("&", names));
        try
        {
            double sum = moleFractions.Sum();
            lock (NativeApi.Gate)
            {
                state.SetMoleFractions([.. moleFractions.Select(fraction => fraction / sum)]);
            }

            return BlendLoader.Load(library, state, designation);
        }
        catch
        {
            state.Dispose();
            throw;
        }
    }

    private static string ToName(string name) => RefrigerantNames.IsDesignation(name) ? RefrigerantNames.Name(name) : name;

    private static (string[] Names, double[] Fractions) CheckComponents(
        string designation, IReadOnlyList<KeyValuePair<string, double>> components)
    {
        if (string.IsNullOrWhiteSpace(designation))
        {
            throw new ArgumentException("designation is blank; the mixture must have one.", nameof(designation));
        }

        if (components is null)
        {
            throw new ArgumentNullException(nameof(components));
        }

        if (components.Count < 2)
        {
            throw new ArgumentException(FormattableString.Invariant($"components has {components.Count}; a mixture has 2 or more."), nameof(components));
        }

        string[] names = [.. components.Select(component => ToName(CheckName(component.Key, nameof(components))))];
        if (names.Distinct(StringComparer.OrdinalIgnoreCase).Count() < names.Length)
        {
            throw new ArgumentException("components has the same component twice.", nameof(components));
        }

        foreach (KeyValuePair<string, double> component in components)
        {
            if (!(component.Value > 0 && component.Value < 1))
            {
                throw new ArgumentOutOfRangeException(
                    nameof(components), FormattableString.Invariant($"The fraction of {component.Key} is {component.Value:G7}; it must be between 0 and 1."));
            }
        }

        double sum = components.Sum(component => component.Value);
        if (Math.Abs(sum - 1) > FractionTolerance)
        {
            throw new ArgumentException(FormattableString.Invariant($"The fractions add up to {sum:G9}; they must add up to 1 within 1e-6."), nameof(components));
        }

        return (names, [.. components.Select(component => component.Value / sum)]);
    }

    private static string CheckName(string name, string parameter)
    {
        if (string.IsNullOrWhiteSpace(name))
        {
            throw new ArgumentException($"{parameter} is blank; it must be a name that CoolProp knows or a designation such as \"R-134a\".", parameter);
        }

        if (name.IndexOfAny(['&', ',', '\0']) >= 0)
        {
            throw new ArgumentException($"{parameter} is \"{name}\"; it must name one fluid. Mixtures are made by their fractions.", parameter);
        }

        return name.Trim();
    }
}
