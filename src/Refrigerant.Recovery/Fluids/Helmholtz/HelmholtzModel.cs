using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Threading;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The property model of a pure fluid: its published Helmholtz-energy equation of state, and saturation curves derived from it. The curves
/// are built at the first use that needs them; after it, no method allocates.
/// </summary>
internal sealed class HelmholtzModel : PropertyModel
{
    /// <summary>Lowest pressure of a state, Pa, and lowest density, kg/m³: what is less is a vacuum beyond any vessel's.</summary>
    private const double LeastAmount = 1e-12;

    /// <summary>A density above any that an equation's highest pressure reaches, in critical densities.</summary>
    private const double MostDensity = 4.5;

    /// <summary>Relative excess over an end of the curves that is taken for rounding in a caller's unit conversion.</summary>
    private const double Rounding = 1e-12;

    /// <summary>Relative excess of a pressure that follows from a density's last digits.</summary>
    private const double PressureRounding = 1e-7;

    /// <summary>Where the stated highest pressure is below critical, the saturation line stays valid to its end, and this part more.</summary>
    private const double CriticalAllowance = 1e-4;

    private readonly PureFluidData _data;
    private readonly Lazy<PureEngine> _engine;
    private readonly Lazy<PropertyRange> _range;
    private readonly Lazy<PureViscosity> _viscosity;

    public HelmholtzModel(PureFluidData data)
    {
        _data = data;
        Composition = Array.AsReadOnly([new FluidComponent(data.Designation, 1, 1)]);
        _engine = new Lazy<PureEngine>(() => PureEngine.Create(data), LazyThreadSafetyMode.ExecutionAndPublication);
        _range = new Lazy<PropertyRange>(CreateRange, LazyThreadSafetyMode.ExecutionAndPublication);
        _viscosity = new Lazy<PureViscosity>(() => PureViscosity.Create(data, _engine.Value.Curves.CriticalTemperature), LazyThreadSafetyMode.ExecutionAndPublication);
    }

    public override string Designation => _data.Designation;

    public override double MolarMass => _data.MolarMass;

    public override double CriticalTemperature => _data.CriticalTemperature;

    public override double CriticalPressure => _data.CriticalPressure;

    public override double CriticalDensity => _data.CriticalMolarDensity * _data.MolarMass;

    public override PropertyRange Range => _range.Value;

    public override IReadOnlyList<FluidComponent> Composition { get; }

    public override ModelQuality Quality => ModelQuality.Published;

    public override string Source => _data.Source;

    /// <summary>The published constants.</summary>
    public PureFluidData Data => _data;

    /// <summary>The equation and its curves, built when first asked for.</summary>
    public PureEngine Engine => _engine.Value;

    public override SaturationPoint SaturationAtTemperature(double temperature)
    {
        PureEngine engine = _engine.Value;
        CheckSaturationTemperature(engine, temperature);
        SaturationValues s = engine.Curves.AtTemperature(temperature);
        return new SaturationPoint(s.Liquid, s.Vapor);
    }

    public override bool TrySaturationAtTemperature(double temperature, out SaturationPoint saturation)
    {
        PureEngine engine = _engine.Value;
        bool isInside = IsSaturationTemperature(engine, temperature);
        SaturationValues s = isInside ? engine.Curves.AtTemperature(temperature) : default;
        saturation = isInside ? new SaturationPoint(s.Liquid, s.Vapor) : default;
        return isInside;
    }

    public override bool TrySaturationAtPressure(double pressure, out SaturationPoint saturation)
    {
        PureEngine engine = _engine.Value;
        bool isInside = IsSaturationPressure(engine, pressure);
        SaturationValues s = isInside ? engine.Curves.AtPressure(pressure) : default;
        saturation = isInside ? new SaturationPoint(s.Liquid, s.Vapor) : default;
        return isInside;
    }

    public override bool TryStateAt(double temperature, double pressure, out StatePoint state)
    {
        state = default;
        return IsTemperature(temperature) && IsPressure(pressure) && base.TryStateAt(temperature, pressure, out state);
    }

    public override bool TryVesselAtTemperature(double temperature, double density, out VesselPoint vessel)
    {
        vessel = default;
        if (!IsTemperature(temperature) || !IsDensity(density))
        {
            return false;
        }

        VesselPoint found = VesselSolver.AtTemperature(_engine.Value, temperature, density);
        vessel = IsResult(found) ? found : default;
        return IsResult(found);
    }

    public override bool TryVesselAtEnergy(double density, double internalEnergy, out VesselPoint vessel)
    {
        vessel = default;
        if (!IsDensity(density) || !Require.IsFinite(internalEnergy))
        {
            return false;
        }

        try
        {
            return VesselSolver.TryFindTemperature(_engine.Value, density, internalEnergy, out double temperature)
                && TryVesselAtTemperature(temperature, density, out vessel);
        }
        catch (ConvergenceException)
        {
            return false;
        }
    }

    public override SaturationPoint SaturationAtPressure(double pressure)
    {
        PureEngine engine = _engine.Value;
        if (!IsSaturationPressure(engine, pressure))
        {
            Throw(nameof(pressure), pressure, engine.MinimumSaturationPressure, engine.MaximumSaturationPressure, "Pa");
        }

        SaturationValues s = engine.Curves.AtPressure(pressure);
        return new SaturationPoint(s.Liquid, s.Vapor);
    }

    public override StatePoint StateAt(double temperature, double pressure)
    {
        CheckTemperature(temperature);
        PureEngine engine = _engine.Value;
        CheckPressure(pressure);
        return engine.StateAt(temperature, pressure);
    }

    public override VesselPoint VesselAtTemperature(double temperature, double density)
    {
        CheckTemperature(temperature);
        CheckDensity(density);
        VesselPoint vessel = VesselSolver.AtTemperature(_engine.Value, temperature, density);
        CheckResult(vessel);
        return vessel;
    }

    public override VesselPoint VesselAtEnergy(double density, double internalEnergy)
    {
        CheckDensity(density);
        PureEngine engine = _engine.Value;
        if (double.IsNaN(internalEnergy) || !VesselSolver.TryFindTemperature(engine, density, internalEnergy, out double temperature))
        {
            VesselSolver.Energy(engine, _data.MinimumTemperature, density, out double minimum, out _);
            VesselSolver.Energy(engine, _data.MaximumTemperature, density, out double maximum, out _);
            Throw(nameof(internalEnergy), internalEnergy, minimum, maximum, "J/kg");
            return default;
        }

        VesselPoint vessel = VesselSolver.AtTemperature(engine, temperature, density);
        CheckResult(vessel);
        return vessel;
    }

    public override StatePoint StateAtEnthalpy(double pressure, double enthalpy) =>
        OnIsobar(pressure, enthalpy, isEntropy: false, nameof(enthalpy), "J/kg");

    public override StatePoint StateAtEntropy(double pressure, double entropy) =>
        OnIsobar(pressure, entropy, isEntropy: true, nameof(entropy), "J/(kg·K)");

    public override StateDerivatives DerivativesAt(double temperature, double density)
    {
        CheckTemperature(temperature);
        CheckDensity(density);
        StateDerivatives derivatives = _engine.Value.Equation.Derivatives(temperature, density);
        if (!(derivatives.PressureByDensity > 0) || !Require.IsFinite(derivatives.SpeedOfSound))
        {
            ThrowUnstable(temperature, density);
        }

        return derivatives;
    }

    public override SaturationViscosity ViscosityAtSaturation(double temperature)
    {
        CheckSaturationTemperature(_engine.Value, temperature);
        return _viscosity.Value.At(temperature);
    }

    internal override IsochoricSlopes VaporAt(double temperature, double density)
    {
        CheckTemperature(temperature);
        CheckDensity(density);
        IsochoricSlopes slopes = _engine.Value.Equation.Slopes(temperature, density);
        if (!(slopes.Pressure > 0 && slopes.Pressure <= _range.Value.MaximumPressure))
        {
            Throw("pressure at that density", slopes.Pressure, 0, _range.Value.MaximumPressure, "Pa");
        }

        return slopes;
    }

    private PropertyRange CreateRange() => new(
        _data.MinimumTemperature,
        _data.MaximumTemperature,
        Math.Max(_data.MaximumPressure, Engine.MaximumSaturationPressure * (1 + CriticalAllowance)),
        Engine.Curves.MaximumTemperature,
        Engine.MinimumSaturationPressure,
        Engine.MaximumSaturationPressure);

    private StatePoint OnIsobar(double pressure, double target, bool isEntropy, string parameter, string unit)
    {
        PureEngine engine = _engine.Value;
        CheckPressure(pressure);
        if (double.IsNaN(target) || !IsobarSolver.TryFind(engine, pressure, target, isEntropy, out StatePoint state))
        {
            Throw(
                parameter,
                target,
                IsobarSolver.ValueAt(engine, _data.MinimumTemperature, pressure, isEntropy),
                IsobarSolver.ValueAt(engine, _data.MaximumTemperature, pressure, isEntropy),
                unit);
            return default;
        }

        return state;
    }

    private static bool IsSaturationPressure(PureEngine engine, double pressure) =>
        pressure >= engine.MinimumSaturationPressure * (1 - Rounding) && pressure <= engine.MaximumSaturationPressure * (1 + Rounding);

    private bool IsTemperature(double temperature) =>
        temperature >= _data.MinimumTemperature * (1 - Rounding) && temperature <= _data.MaximumTemperature * (1 + Rounding);

    private bool IsSaturationTemperature(PureEngine engine, double temperature) =>
        temperature >= _data.MinimumTemperature * (1 - Rounding) && temperature <= engine.Curves.MaximumTemperature * (1 + Rounding);

    private bool IsPressure(double pressure) => pressure >= LeastAmount && pressure <= _range.Value.MaximumPressure;

    private bool IsDensity(double density) => density >= LeastAmount && density <= MostDensity * CriticalDensity;

    private bool IsResult(in VesselPoint vessel) =>
        vessel.Bulk.Pressure > 0 && vessel.Bulk.Pressure <= _range.Value.MaximumPressure * (1 + PressureRounding);

    private void CheckTemperature(double temperature)
    {
        if (!IsTemperature(temperature))
        {
            Throw(nameof(temperature), temperature, _data.MinimumTemperature, _data.MaximumTemperature, "K");
        }
    }

    private void CheckSaturationTemperature(PureEngine engine, double temperature)
    {
        if (!IsSaturationTemperature(engine, temperature))
        {
            Throw(nameof(temperature), temperature, _data.MinimumTemperature, engine.Curves.MaximumTemperature, "K");
        }
    }

    private void CheckPressure(double pressure)
    {
        if (!IsPressure(pressure))
        {
            Throw(nameof(pressure), pressure, LeastAmount, _range.Value.MaximumPressure, "Pa");
        }
    }

    private void CheckDensity(double density)
    {
        if (!IsDensity(density))
        {
            Throw(nameof(density), density, LeastAmount, MostDensity * CriticalDensity, "kg/m³");
        }
    }

    /// <summary>A density may be too high for the temperature: the pressure that results tells.</summary>
    private void CheckResult(in VesselPoint vessel)
    {
        if (!IsResult(vessel))
        {
            double densest = _engine.Value.StateAt(vessel.Bulk.Temperature, _range.Value.MaximumPressure).Density;
            Throw("density", vessel.Bulk.Density, LeastAmount, densest, "kg/m³");
        }
    }

    private void ThrowUnstable(double temperature, double density)
    {
        if (temperature <= _engine.Value.Curves.MaximumTemperature)
        {
            SaturationValues s = _engine.Value.Curves.AtTemperature(temperature);
            bool isVapor = density < 0.5 * (s.LiquidDensity + s.VaporDensity);
            Throw(
                "density of a single phase (this one is mechanically unstable)",
                density,
                isVapor ? LeastAmount : s.LiquidDensity,
                isVapor ? s.VaporDensity : MostDensity * CriticalDensity,
                "kg/m³");
        }

        Throw("density (mechanically unstable)", density, LeastAmount, MostDensity * CriticalDensity, "kg/m³");
    }

    [DoesNotReturn]
    private void Throw(string parameter, double value, double minimum, double maximum, string unit) =>
        throw new PropertyRangeException(_data.Designation, parameter, value, minimum, maximum, unit, _data.Source);
}
