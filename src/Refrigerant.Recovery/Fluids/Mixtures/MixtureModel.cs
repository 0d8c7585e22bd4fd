using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Linq;
using System.Threading;
using Refrigerant.Recovery.Fluids.Helmholtz;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// The property model of a blend: the multi-fluid Helmholtz model of its composition, with bubble and dew curves derived from it. The
/// critical point and the curves are found at the first use that needs them; after it, no method allocates while calls do not overlap.
/// </summary>
internal sealed class MixtureModel : PropertyModel
{
    /// <summary>Lowest pressure of a state, Pa, and lowest density, kg/m³.</summary>
    private const double LeastAmount = 1e-9;

    /// <summary>A density above any that the highest pressure reaches, in critical densities.</summary>
    private const double MostDensity = 5;

    /// <summary>
    /// Blends may be asked up to this temperature, K, and pressure, Pa, even where a component's own equation ends a little lower: a
    /// component is evaluated at the mixture's reduced temperature, not at its own.
    /// </summary>
    private const double LeastMaximumTemperature = 425;

    private const double LeastMaximumPressure = 20e6;

    /// <summary>A temperature or pressure that a lookup at an end of the curves returned may be asked again, rounding included.</summary>
    private const double Rounding = 1e-12;

    private readonly double[] _moleFractions;
    private readonly Lazy<MixtureEngine> _engine;
    private readonly Lazy<PropertyRange> _range;
    private readonly Lazy<BlendViscosity> _viscosity;
    private readonly Lazy<GlideTable> _glide;

    /// <param name="designation">The blend's designation.</param>
    /// <param name="components">The components, in the order of the composition.</param>
    /// <param name="massFractions">Mass fractions that add up to 1.</param>
    /// <param name="moleFractions">Mole fractions that add up to 1.</param>
    public MixtureModel(string designation, IReadOnlyList<HelmholtzModel> components, double[] massFractions, double[] moleFractions)
    {
        Designation = designation;
        _moleFractions = moleFractions;
        Composition = Array.AsReadOnly(
            components.Select((c, i) => new FluidComponent(c.Designation, massFractions[i], moleFractions[i])).ToArray());
        MolarMass = components.Select((c, i) => c.MolarMass * moleFractions[i]).Sum();
        (Quality, Source) = Describe(components);
        _engine = new Lazy<MixtureEngine>(
            () => new MixtureEngine(new MixtureEquation([.. components.Select(MixtureComponents.Create)]), moleFractions),
            LazyThreadSafetyMode.ExecutionAndPublication);
        _range = new Lazy<PropertyRange>(() => CreateRange(components), LazyThreadSafetyMode.ExecutionAndPublication);
        _viscosity = new Lazy<BlendViscosity>(() => new BlendViscosity(components), LazyThreadSafetyMode.ExecutionAndPublication);
        _glide = new Lazy<GlideTable>(() => GlideTable.Of(this), LazyThreadSafetyMode.ExecutionAndPublication);
    }

    public override string Designation { get; }

    public override double MolarMass { get; }

    public override double CriticalTemperature => Engine.Critical.Temperature;

    public override double CriticalPressure => Engine.Critical.Pressure;

    public override double CriticalDensity => Engine.Critical.Density * MolarMass;

    public override PropertyRange Range => _range.Value;

    public override IReadOnlyList<FluidComponent> Composition { get; }

    public override ModelQuality Quality { get; }

    public override string Source { get; }

    /// <summary>The equation, its critical point and its curves, built when first asked for.</summary>
    public MixtureEngine Engine => _engine.Value;

    /// <summary>The blend as vapor leaves it, tabled when first asked for.</summary>
    public GlideTable Glide => _glide.Value;

    public override SaturationPoint SaturationAtTemperature(double temperature)
    {
        BlendCurves curves = Engine.Curves;
        CheckSaturationTemperature(curves, temperature);
        return curves.Saturation.AtTemperature(temperature);
    }

    public override SaturationPoint SaturationAtPressure(double pressure)
    {
        BlendCurves curves = Engine.Curves;
        if (!IsSaturationPressure(curves, pressure))
        {
            Throw(nameof(pressure), pressure, curves.MinimumPressure, curves.MaximumPressure, "Pa");
        }

        double within = Math.Max(curves.MinimumPressure, Math.Min(curves.MaximumPressure, pressure));
        SaturationPoint point = curves.Saturation.AtPressure(within);
        return within == pressure ? point : new SaturationPoint(point.Bubble.WithPressure(pressure), point.Dew.WithPressure(pressure));
    }

    public override bool TrySaturationAtTemperature(double temperature, out SaturationPoint saturation)
    {
        saturation = default;
        return IsSaturationTemperature(Engine.Curves, temperature) && base.TrySaturationAtTemperature(temperature, out saturation);
    }

    public override bool TrySaturationAtPressure(double pressure, out SaturationPoint saturation)
    {
        saturation = default;
        return IsSaturationPressure(Engine.Curves, pressure) && base.TrySaturationAtPressure(pressure, out saturation);
    }

    public override bool TryStateAt(double temperature, double pressure, out StatePoint state)
    {
        state = default;
        return IsTemperature(temperature) && IsPressure(pressure) && base.TryStateAt(temperature, pressure, out state);
    }

    public override bool TryVesselAtTemperature(double temperature, double density, out VesselPoint vessel)
    {
        vessel = default;
        return IsTemperature(temperature) && IsDensity(density) && base.TryVesselAtTemperature(temperature, density, out vessel);
    }

    public override bool TryVesselAtEnergy(double density, double internalEnergy, out VesselPoint vessel)
    {
        vessel = default;
        if (!IsDensity(density) || double.IsNaN(internalEnergy))
        {
            return false;
        }

        MixtureScratch scratch = Engine.Rent();
        try
        {
            if (!BlendVessel.TryFind(Engine, scratch, Range, density, internalEnergy, out VesselPoint found) || !(found.Bulk.Pressure <= Range.MaximumPressure))
            {
                return false;
            }

            vessel = found;
            return true;
        }
        catch (ConvergenceException)
        {
            return false;
        }
        finally
        {
            Engine.Return(scratch);
        }
    }

    public override StatePoint StateAt(double temperature, double pressure)
    {
        CheckTemperature(temperature);
        CheckPressure(pressure);
        MixtureScratch scratch = Engine.Rent();
        StatePoint state = BlendStates.AtPressure(Engine, scratch, temperature, pressure).Bulk;
        Engine.Return(scratch);
        return state;
    }

    public override VesselPoint VesselAtTemperature(double temperature, double density)
    {
        CheckTemperature(temperature);
        CheckDensity(density);
        MixtureScratch scratch = Engine.Rent();
        VesselPoint vessel = BlendStates.AtDensity(Engine, scratch, temperature, density);
        Engine.Return(scratch);
        CheckResult(vessel);
        return vessel;
    }

    public override VesselPoint VesselAtEnergy(double density, double internalEnergy)
    {
        CheckDensity(density);
        MixtureScratch scratch = Engine.Rent();
        if (double.IsNaN(internalEnergy) || !BlendVessel.TryFind(Engine, scratch, Range, density, internalEnergy, out VesselPoint vessel))
        {
            double minimum = BlendVessel.Energy(Engine, scratch, Range.MinimumTemperature, density);
            double maximum = BlendVessel.Energy(Engine, scratch, Range.MaximumTemperature, density);
            Throw(nameof(internalEnergy), internalEnergy, minimum, maximum, "J/kg");
            return default;
        }

        Engine.Return(scratch);
        CheckResult(vessel);
        return vessel;
    }

    public override StatePoint StateAtEnthalpy(double pressure, double enthalpy) =>
        OnIsobar(pressure, enthalpy, isEntropy: false, nameof(enthalpy), "J/kg");

    public override StatePoint StateAtEntropy(double pressure, double entropy) =>
        OnIsobar(pressure, entropy, isEntropy: true, nameof(entropy), "J/(kg·K)");

    public override StateDerivatives DerivativesAt(double temperature, double density)
    {
        IsochoricSlopes isochore = SlopesAt(temperature, density, out double stiffness);

        // A heat capacity that is not positive belongs to a loop of the equation, not to a phase.
        if (!(stiffness > 0) || !(isochore.HeatCapacity > 0))
        {
            Throw("density (mechanically unstable)", density, LeastAmount, MostDensity * CriticalDensity, "kg/m³");
        }

        double slope = MixtureEquation.GasConstant / MolarMass * temperature * stiffness;
        double thermal = isochore.PressureByTemperature / density;
        double cv = isochore.HeatCapacity;
        double cp = cv + (temperature * thermal * thermal / slope);
        return new StateDerivatives(cv, cp, Math.Sqrt(cp / cv * slope), slope, isochore.PressureByTemperature);
    }

    public override SaturationViscosity ViscosityAtSaturation(double temperature)
    {
        CheckSaturationTemperature(Engine.Curves, temperature);
        return _viscosity.Value.At(temperature, _moleFractions);
    }

    internal override IsochoricSlopes VaporAt(double temperature, double density)
    {
        IsochoricSlopes slopes = SlopesAt(temperature, density, out _);
        if (!(slopes.Pressure > 0 && slopes.Pressure <= Range.MaximumPressure && slopes.HeatCapacity > 0))
        {
            Throw("pressure at that density", slopes.Pressure, 0, Range.MaximumPressure, "Pa");
        }

        return slopes;
    }

    private static (ModelQuality Quality, string Source) Describe(IReadOnlyList<HelmholtzModel> components)
    {
        ModelQuality quality = ModelQuality.Published;
        var sources = new List<string> { "Kunz and Wagner 2012, doi:10.1021/je300655b (multi-fluid model)" };
        for (int i = 0; i < components.Count; i++)
        {
            for (int j = i + 1; j < components.Count; j++)
            {
                string? source = BinaryPairs.Get(components[i].Designation, components[j].Designation).Source;
                if (source is null)
                {
                    quality = ModelQuality.Estimated;
                    source = $"{components[i].Designation}/{components[j].Designation} estimated by Lorentz–Berthelot";
                }

                if (!sources.Contains(source))
                {
                    sources.Add(source);
                }
            }
        }

        return (quality, string.Join("; ", sources));
    }

    private PropertyRange CreateRange(IReadOnlyList<HelmholtzModel> components) => new(
        Engine.Curves.MinimumTemperature,
        Math.Max(LeastMaximumTemperature, components.Min(c => c.Data.MaximumTemperature)),
        Math.Max(LeastMaximumPressure, components.Min(c => c.Data.MaximumPressure)),
        Engine.Curves.MaximumTemperature,
        Engine.Curves.MinimumPressure,
        Engine.Curves.MaximumPressure);

    /// <summary>One phase, stable or not, and (∂p/∂ρ)/(RT).</summary>
    private IsochoricSlopes SlopesAt(double temperature, double density, out double stiffness)
    {
        CheckTemperature(temperature);
        CheckDensity(density);
        MixtureScratch scratch = Engine.Rent();
        MixturePhase phase = scratch.Bulk;
        phase.SetTemperature(temperature);
        phase.SetDensity(density / MolarMass);
        phase.SetIdealGas();
        stiffness = phase.Stiffness;
        var slopes = new IsochoricSlopes(
            phase.Pressure,
            phase.Energy / MolarMass,
            phase.HeatCapacity / MolarMass,
            phase.Rho * MixtureEquation.GasConstant * phase.ZByT);
        Engine.Return(scratch);
        return slopes;
    }

    private StatePoint OnIsobar(double pressure, double target, bool isEntropy, string parameter, string unit)
    {
        CheckPressure(pressure);
        MixtureScratch scratch = Engine.Rent();
        if (double.IsNaN(target) || !BlendIsobar.TryFind(Engine, scratch, Range, pressure, target, isEntropy, out StatePoint state))
        {
            Throw(
                parameter,
                target,
                BlendIsobar.ValueAt(Engine, scratch, Range.MinimumTemperature, pressure, isEntropy),
                BlendIsobar.ValueAt(Engine, scratch, Range.MaximumTemperature, pressure, isEntropy),
                unit);
            return default;
        }

        Engine.Return(scratch);
        return state;
    }

    private static bool IsSaturationTemperature(BlendCurves curves, double temperature) =>
        temperature >= curves.MinimumTemperature * (1 - Rounding) && temperature <= curves.MaximumTemperature * (1 + Rounding);

    private static bool IsSaturationPressure(BlendCurves curves, double pressure) =>
        pressure >= curves.MinimumPressure * (1 - Rounding) && pressure <= curves.MaximumPressure * (1 + Rounding);

    private bool IsTemperature(double temperature) =>
        temperature >= Range.MinimumTemperature * (1 - Rounding) && temperature <= Range.MaximumTemperature * (1 + Rounding);

    private bool IsPressure(double pressure) => pressure >= LeastAmount && pressure <= Range.MaximumPressure;

    private bool IsDensity(double density) => density >= LeastAmount && density <= MostDensity * CriticalDensity;

    private void CheckTemperature(double temperature)
    {
        if (!IsTemperature(temperature))
        {
            Throw(nameof(temperature), temperature, Range.MinimumTemperature, Range.MaximumTemperature, "K");
        }
    }

    private void CheckSaturationTemperature(BlendCurves curves, double temperature)
    {
        if (!IsSaturationTemperature(curves, temperature))
        {
            Throw(nameof(temperature), temperature, curves.MinimumTemperature, curves.MaximumTemperature, "K");
        }
    }

    private void CheckPressure(double pressure)
    {
        if (!IsPressure(pressure))
        {
            Throw(nameof(pressure), pressure, LeastAmount, Range.MaximumPressure, "Pa");
        }
    }

    private void CheckDensity(double density)
    {
        if (!IsDensity(density))
        {
            Throw(nameof(density), density, LeastAmount, MostDensity * CriticalDensity, "kg/m³");
        }
    }

    private void CheckResult(in VesselPoint vessel)
    {
        if (!(vessel.Bulk.Pressure <= Range.MaximumPressure))
        {
            Throw("pressure at that density", vessel.Bulk.Pressure, LeastAmount, Range.MaximumPressure, "Pa");
        }
    }

    [DoesNotReturn]
    private void Throw(string parameter, double value, double minimum, double maximum, string unit) =>
        throw new PropertyRangeException(Designation, parameter, value, minimum, maximum, unit, Source);
}
