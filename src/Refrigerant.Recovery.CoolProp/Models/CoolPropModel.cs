using System;
using System.Collections.Generic;
using Refrigerant.Recovery.CoolProp.Native;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.CoolProp.Models;

/// <summary>A property model over one CoolProp state: what pure fluids and blends have in common.</summary>
internal abstract class CoolPropModel : PropertyModel
{
    /// <summary>No liquid of any fluid is denser than this multiple of its critical density; a guard, not a limit of the equations.</summary>
    private const double DensestOverCritical = 6;

    private const double TemperatureAccuracy = 1e-9;

    private readonly FluidFacts _facts;

    protected CoolPropModel(NativeState state, FluidFacts facts)
    {
        State = state;
        _facts = facts;
    }

    public sealed override string Designation => _facts.Designation;

    public sealed override double MolarMass => _facts.MolarMass;

    public sealed override double CriticalTemperature => _facts.CriticalTemperature;

    public sealed override double CriticalPressure => _facts.CriticalPressure;

    public sealed override double CriticalDensity => _facts.CriticalDensity;

    public sealed override PropertyRange Range => _facts.Range;

    public sealed override IReadOnlyList<FluidComponent> Composition => _facts.Composition;

    public sealed override ModelQuality Quality => ModelQuality.Published;

    public sealed override string Source => _facts.Source;

    protected NativeState State { get; }

    protected ReferenceOffset Reference => _facts.Reference;

    protected double MaximumDensity => DensestOverCritical * CriticalDensity;

    public sealed override SaturationPoint SaturationAtTemperature(double temperature)
    {
        CheckSaturationTemperature(temperature);
        lock (NativeApi.Gate)
        {
            return Saturation(temperature);
        }
    }

    public sealed override SaturationPoint SaturationAtPressure(double pressure)
    {
        Check(pressure, _facts.MinimumSaturationPressure, _facts.MaximumSaturationPressure, "Pa", nameof(pressure));
        lock (NativeApi.Gate)
        {
            return SaturationUnder(pressure);
        }
    }

    public sealed override StatePoint StateAt(double temperature, double pressure)
    {
        CheckTemperature(temperature);
        CheckPressure(pressure);
        lock (NativeApi.Gate)
        {
            return Stable(temperature, pressure);
        }
    }

    public sealed override VesselPoint VesselAtTemperature(double temperature, double density)
    {
        CheckTemperature(temperature);
        CheckDensity(density);
        lock (NativeApi.Gate)
        {
            return WithinPressure(Vessel(temperature, density));
        }
    }

    public sealed override VesselPoint VesselAtEnergy(double density, double internalEnergy)
    {
        CheckDensity(density);
        CheckFinite(internalEnergy, "J/kg", nameof(internalEnergy));
        lock (NativeApi.Gate)
        {
            VesselPoint vessel = VesselOfEnergy(density, internalEnergy);
            CheckTemperature(vessel.Bulk.Temperature);
            return WithinPressure(vessel);
        }
    }

    public sealed override StatePoint StateAtEnthalpy(double pressure, double enthalpy)
    {
        CheckPressure(pressure);
        CheckFinite(enthalpy, "J/kg", nameof(enthalpy));
        lock (NativeApi.Gate)
        {
            StatePoint point = OfCaloric(pressure, enthalpy, Property.Enthalpy);
            CheckTemperature(point.Temperature);
            return point;
        }
    }

    public sealed override StatePoint StateAtEntropy(double pressure, double entropy)
    {
        CheckPressure(pressure);
        CheckFinite(entropy, "J/(kg·K)", nameof(entropy));
        lock (NativeApi.Gate)
        {
            StatePoint point = OfCaloric(pressure, entropy, Property.Entropy);
            CheckTemperature(point.Temperature);
            return point;
        }
    }

    public sealed override StateDerivatives DerivativesAt(double temperature, double density)
    {
        CheckTemperature(temperature);
        CheckDensity(density);
        lock (NativeApi.Gate)
        {
            StateDerivatives derivatives = Homogeneous(temperature, density, density > CriticalDensity, () => new StateDerivatives(
                State.Output(Property.IsochoricHeatCapacity),
                State.Output(Property.IsobaricHeatCapacity),
                State.Output(Property.SpeedOfSound),
                State.Derivative(Property.Pressure, Property.Density, Property.Temperature),
                State.Derivative(Property.Pressure, Property.Temperature, Property.Density)));
            if (derivatives.PressureByDensity > 0)
            {
                return derivatives;
            }

            SaturationPoint saturation = Saturation(Math.Min(temperature, Range.MaximumSaturationTemperature));
            bool liquid = density > CriticalDensity;
            throw OutOfRange(
                density, liquid ? saturation.Bubble.Density : 0, liquid ? MaximumDensity : saturation.Dew.Density, "kg/m³", nameof(density));
        }
    }

    /// <summary>Dynamic viscosity of saturated liquid and vapor.</summary>
    /// <exception cref="CoolPropException">CoolProp has no viscosity of this fluid; its text says so.</exception>
    public sealed override SaturationViscosity ViscosityAtSaturation(double temperature)
    {
        CheckSaturationTemperature(temperature);
        lock (NativeApi.Gate)
        {
            State.Update(InputPair.QualityTemperature, 0, temperature);
            double liquid = State.Output(Property.Viscosity);
            State.Update(InputPair.QualityTemperature, 1, temperature);
            double vapor = State.Output(Property.Viscosity);
            return liquid > 0 && vapor > 0
                ? new SaturationViscosity(liquid, vapor, isEstimate: Composition.Count > 1)
                : throw new CoolPropException(Designation, "viscosity", "it gave a viscosity that is not positive.");
        }
    }

    /// <summary>The stable state at a temperature and pressure within the range.</summary>
    protected abstract StatePoint Stable(double temperature, double pressure);

    /// <summary>The equilibrium at a temperature and mean density.</summary>
    protected abstract VesselPoint Vessel(double temperature, double density);

    /// <summary>The equilibrium at a mean density and internal energy.</summary>
    protected abstract VesselPoint VesselOfEnergy(double density, double internalEnergy);

    /// <summary>The state of an enthalpy or entropy at a pressure.</summary>
    protected abstract StatePoint OfCaloric(double pressure, double value, Property property);

    /// <summary>The two-phase state of an enthalpy or entropy between those of the saturated states under a pressure.</summary>
    protected abstract StatePoint BetweenSaturated(in SaturationPoint saturation, double value, Property property);

    /// <summary>The reference offset of one phase of the present two-phase state.</summary>
    protected abstract ReferenceOffset PhaseReference(bool liquid);

    protected static double Caloric(in StatePoint point, Property property) => property == Property.Enthalpy ? point.Enthalpy : point.Entropy;

    protected SaturationPoint Saturation(double temperature)
    {
        State.Update(InputPair.QualityTemperature, 0, temperature);
        StatePoint bubble = Read(Phase.Liquid);
        State.Update(InputPair.QualityTemperature, 1, temperature);
        return new SaturationPoint(bubble, Read(Phase.Vapor));
    }

    protected SaturationPoint SaturationUnder(double pressure)
    {
        State.Update(InputPair.PressureQuality, pressure, 0);
        StatePoint bubble = Read(Phase.Liquid);
        State.Update(InputPair.PressureQuality, pressure, 1);
        return new SaturationPoint(bubble, Read(Phase.Vapor));
    }

    /// <summary>The present single-phase state.</summary>
    protected StatePoint Read(Phase phase) => new(
        phase,
        State.Output(Property.Temperature),
        State.Output(Property.Pressure),
        State.Output(Property.Density),
        State.Output(Property.Enthalpy) + Reference.Enthalpy,
        State.Output(Property.Entropy) + Reference.Entropy,
        phase == Phase.Liquid ? 0 : 1);

    /// <summary>The phase of a homogeneous state.</summary>
    protected Phase PhaseOf(double temperature, double density) =>
        temperature > CriticalTemperature ? Phase.Supercritical
        : density > CriticalDensity ? Phase.Liquid
        : Phase.Vapor;

    /// <summary>A vessel with one phase in it.</summary>
    protected static VesselPoint OnePhase(in StatePoint point) =>
        point.Phase == Phase.Liquid ? new VesselPoint(point, point, default) : new VesselPoint(point, default, point);

    /// <summary>The present two-phase state as a vessel of a mean density.</summary>
    protected VesselPoint ReadTwoPhase(double density)
    {
        StatePoint liquid = ReadSide(Phase.Liquid);
        StatePoint vapor = ReadSide(Phase.Vapor);
        double quality = ((1 / density) - (1 / liquid.Density)) / ((1 / vapor.Density) - (1 / liquid.Density));
        return new VesselPoint(Mix(liquid, vapor, Math.Min(1, Math.Max(0, quality)), density), liquid, vapor);
    }

    /// <summary>Liquid and vapor together, by the lever rule, at a given mean density.</summary>
    protected static StatePoint Mix(in StatePoint liquid, in StatePoint vapor, double quality, double density) => new(
        Phase.TwoPhase,
        liquid.Temperature + (quality * (vapor.Temperature - liquid.Temperature)),
        liquid.Pressure + (quality * (vapor.Pressure - liquid.Pressure)),
        density,
        liquid.Enthalpy + (quality * (vapor.Enthalpy - liquid.Enthalpy)),
        liquid.Entropy + (quality * (vapor.Entropy - liquid.Entropy)),
        quality);

    /// <summary>Evaluates the equation at a temperature and density as one phase, stable or not, and reads from it.</summary>
    protected T Homogeneous<T>(double temperature, double density, bool liquid, Func<T> read)
    {
        bool impose = Composition.Count > 1 || temperature < CriticalTemperature;
        if (!impose)
        {
            State.Update(InputPair.DensityTemperature, density, temperature);
            return read();
        }

        State.ImposePhase(liquid ? "phase_liquid" : "phase_gas");
        try
        {
            State.Update(InputPair.DensityTemperature, density, temperature);
            return read();
        }
        finally
        {
            State.FreePhase();
        }
    }

    /// <summary>
    /// The liquid or vapor at a temperature and pressure whose side of the saturation curve is known. CoolProp's density is kept if it lies on
    /// that side; otherwise (it may stop at a root between the phases) the density is found from the equation's pressure on that side.
    /// </summary>
    protected StatePoint OnSide(double temperature, double pressure, bool liquid, in SaturationPoint saturation)
    {
        const double EdgeTolerance = 1e-6;
        Phase phase = liquid ? Phase.Liquid : Phase.Vapor;
        State.ImposePhase(liquid ? "phase_liquid" : "phase_gas");
        try
        {
            if (State.TryUpdate(InputPair.PressureTemperature, pressure, temperature) is null)
            {
                StatePoint point = Read(phase);
                if (liquid ? point.Density >= saturation.Bubble.Density * (1 - EdgeTolerance) : point.Density <= saturation.Dew.Density * (1 + EdgeTolerance))
                {
                    return point;
                }
            }
        }
        finally
        {
            State.FreePhase();
        }

        double density = liquid
            ? LiquidDensity(temperature, pressure, saturation.Bubble.Density)
            : VaporDensity(temperature, pressure, saturation.Dew);
        return Homogeneous(temperature, density, liquid, () => Read(phase));
    }

    /// <summary>The energy equation of a closed vessel solved over temperature.</summary>
    protected VesselPoint SolveEnergy(double density, double internalEnergy)
    {
        double Excess(double temperature) => Vessel(temperature, density).Bulk.InternalEnergy - internalEnergy;
        double low = Excess(Range.MinimumTemperature);
        double high = Excess(Range.MaximumTemperature);
        if (low > 0 || high < 0)
        {
            throw OutOfRange(internalEnergy, internalEnergy + low, internalEnergy + high, "J/kg", nameof(internalEnergy));
        }

        double root = Root.Find(
            Excess,
            Range.MinimumTemperature,
            Range.MaximumTemperature,
            TemperatureAccuracy,
            () => FormattableString.Invariant($"{Designation} at {density:G7} kg/m³ with {internalEnergy:G7} J/kg"));
        return Vessel(root, density);
    }

    /// <summary>The temperature (or quality) of an enthalpy or entropy at a pressure, solved from states at temperature and pressure.</summary>
    protected StatePoint SolveCaloric(double pressure, double value, Property property)
    {
        double low = Range.MinimumTemperature;
        double high = Range.MaximumTemperature;
        if (pressure >= _facts.MinimumSaturationPressure && pressure <= _facts.MaximumSaturationPressure)
        {
            SaturationPoint saturation = SaturationUnder(pressure);
            if (value < Caloric(saturation.Bubble, property))
            {
                high = Math.Min(high, saturation.Bubble.Temperature);
            }
            else if (value > Caloric(saturation.Dew, property))
            {
                low = Math.Max(low, saturation.Dew.Temperature);
            }
            else
            {
                return BetweenSaturated(saturation, value, property);
            }
        }

        double Excess(double temperature) => Caloric(Stable(temperature, pressure), property) - value;
        double below = Excess(low);
        double above = Excess(high);
        if (below == 0 || (below > 0 && IsRounding(below, value)))
        {
            return Stable(low, pressure);
        }

        if (above == 0 || (above < 0 && IsRounding(above, value)))
        {
            return Stable(high, pressure);
        }

        bool enthalpy = property == Property.Enthalpy;
        if (below > 0 || above < 0)
        {
            throw OutOfRange(value, value + below, value + above, enthalpy ? "J/kg" : "J/(kg·K)", enthalpy ? "enthalpy" : "entropy");
        }

        double root = Root.Find(
            Excess,
            low,
            high,
            TemperatureAccuracy,
            () => FormattableString.Invariant($"{Designation} at {pressure:G7} Pa with {IndexTable.Name(property)} {value:G7}"));
        return Stable(root, pressure);
    }

    protected PropertyRangeException OutOfRange(double value, double minimum, double maximum, string unit, string parameter) =>
        new(Designation, parameter, value, minimum, maximum, unit, Source);

    /// <summary>A state found on a saturation curve differs from one found beside it by no more than CoolProp's own convergence.</summary>
    private static bool IsRounding(double excess, double value) => Math.Abs(excess) <= 1e-7 * (1 + Math.Abs(value));

    private StatePoint ReadSide(Phase phase)
    {
        bool liquid = phase == Phase.Liquid;
        ReferenceOffset offset = PhaseReference(liquid);
        return new StatePoint(
            phase,
            State.Output(Property.Temperature),
            State.Output(Property.Pressure),
            State.SaturatedOutput(liquid, Property.Density),
            State.SaturatedOutput(liquid, Property.Enthalpy) + offset.Enthalpy,
            State.SaturatedOutput(liquid, Property.Entropy) + offset.Entropy,
            liquid ? 0 : 1);
    }

    private double PressureAt(double temperature, double density, bool liquid) =>
        Homogeneous(temperature, density, liquid, () => State.Output(Property.Pressure));

    private double LiquidDensity(double temperature, double pressure, double saturated)
    {
        const double Step = 1.05;
        double high = saturated * Step;
        while (PressureAt(temperature, high, liquid: true) < pressure)
        {
            high *= Step;
            if (high > MaximumDensity)
            {
                throw new CoolPropException(
                    Designation, "the liquid's density", FormattableString.Invariant($"none at {temperature:G7} K reaches {pressure:G7} Pa."));
            }
        }

        return Density(temperature, pressure, liquid: true, saturated, high);
    }

    private double VaporDensity(double temperature, double pressure, in StatePoint dew)
    {
        // A vapor is at least half as dense as the ideal gas that has its pressure: its compressibility factor stays below 2.
        double ideal = dew.Density * pressure / dew.Pressure;
        return Density(temperature, pressure, liquid: false, Math.Min(ideal, dew.Density) / 4, dew.Density);
    }

    private double Density(double temperature, double pressure, bool liquid, double low, double high)
    {
        const double RelativeAccuracy = 1e-13;
        double Excess(double density) => PressureAt(temperature, density, liquid) - pressure;

        // At a pressure that is the saturation pressure but for rounding the end itself is the solution.
        if (Excess(low) >= 0)
        {
            return low;
        }

        if (Excess(high) <= 0)
        {
            return high;
        }

        return Root.Find(
            Excess, low, high, high * RelativeAccuracy, () => FormattableString.Invariant($"{Designation} at {temperature:G7} K and {pressure:G7} Pa"));
    }

    private VesselPoint WithinPressure(in VesselPoint vessel)
    {
        const double Rounding = 1e-9;
        return vessel.Bulk.Pressure <= Range.MaximumPressure * (1 + Rounding)
            ? vessel
            : throw OutOfRange(vessel.Bulk.Pressure, 0, Range.MaximumPressure, "Pa", "pressure");
    }

    private void CheckSaturationTemperature(double temperature) =>
        Check(temperature, Range.MinimumTemperature, Range.MaximumSaturationTemperature, "K", nameof(temperature));

    private void CheckTemperature(double temperature) =>
        Check(temperature, Range.MinimumTemperature, Range.MaximumTemperature, "K", nameof(temperature));

    private void CheckPressure(double pressure) => Check(pressure, double.Epsilon, Range.MaximumPressure, "Pa", nameof(pressure));

    private void CheckDensity(double density) => Check(density, double.Epsilon, MaximumDensity, "kg/m³", nameof(density));

    private void CheckFinite(double value, string unit, string parameter) => Check(value, -double.MaxValue, double.MaxValue, unit, parameter);

    private void Check(double value, double minimum, double maximum, string unit, string parameter)
    {
        if (!(value >= minimum && value <= maximum))
        {
            throw OutOfRange(value, minimum, maximum, unit, parameter);
        }
    }
}
