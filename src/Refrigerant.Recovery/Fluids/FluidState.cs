using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Fluids;

/// <summary>One equilibrium state of a <see cref="Fluid"/>. Pressures are absolute.</summary>
/// <remarks>
/// A value of sixty-four bytes: pass it by <c>in</c> in hot code. Heat capacities and the speed of sound are computed when asked for.
/// Enthalpy and entropy references: see <see cref="StatePoint"/>.
/// </remarks>
public readonly record struct FluidState
{
    private readonly PropertyModel _model;
    private readonly StatePoint _point;

    internal FluidState(PropertyModel model, in StatePoint point)
    {
        _model = model;
        _point = point;
    }

    /// <summary>The same state in plain SI doubles.</summary>
    public StatePoint Point => _point;

    /// <summary>The phase.</summary>
    public Phase Phase => _point.Phase;

    /// <summary>Temperature.</summary>
    public Temperature Temperature => new(_point.Temperature, TemperatureUnit.Kelvin);

    /// <summary>Absolute pressure.</summary>
    public Pressure Pressure => new(_point.Pressure, PressureUnit.Pascal);

    /// <summary>Density.</summary>
    public Density Density => new(_point.Density, DensityUnit.KilogramPerCubicMeter);

    /// <summary>Specific enthalpy.</summary>
    public SpecificEnergy Enthalpy => new(_point.Enthalpy, SpecificEnergyUnit.JoulePerKilogram);

    /// <summary>Specific entropy.</summary>
    public SpecificEntropy Entropy => new(_point.Entropy, SpecificEntropyUnit.JoulePerKilogramKelvin);

    /// <summary>Specific internal energy.</summary>
    /// <exception cref="InvalidOperationException">This is the default value, not a state.</exception>
    public SpecificEnergy InternalEnergy
    {
        get
        {
            _ = Model;
            return new(_point.InternalEnergy, SpecificEnergyUnit.JoulePerKilogram);
        }
    }

    /// <summary>Vapor mass fraction (quality): 0 for liquid, 1 for vapor and supercritical fluid.</summary>
    public Ratio Quality => new(_point.VaporFraction, RatioUnit.DecimalFraction);

    /// <summary>Specific isobaric heat capacity cp of a single phase.</summary>
    /// <exception cref="InvalidOperationException">The state is two-phase, for which it is not defined.</exception>
    public SpecificEntropy IsobaricHeatCapacity => new(Derivatives.IsobaricHeatCapacity, SpecificEntropyUnit.JoulePerKilogramKelvin);

    /// <summary>Specific isochoric heat capacity cv of a single phase.</summary>
    /// <exception cref="InvalidOperationException">The state is two-phase.</exception>
    public SpecificEntropy IsochoricHeatCapacity => new(Derivatives.IsochoricHeatCapacity, SpecificEntropyUnit.JoulePerKilogramKelvin);

    /// <summary>Speed of sound in a single phase.</summary>
    /// <exception cref="InvalidOperationException">The state is two-phase.</exception>
    public Speed SpeedOfSound => new(Derivatives.SpeedOfSound, SpeedUnit.MeterPerSecond);

    private PropertyModel Model => _model ?? throw new InvalidOperationException("This FluidState is the default value, not a state of a fluid.");

    private StateDerivatives Derivatives
    {
        get
        {
            if (_point.Phase == Phase.TwoPhase)
            {
                throw new InvalidOperationException(
                    $"{Model.Designation} at {Require.Text(_point.Temperature)} K and {Require.Text(_point.Pressure)} Pa is two-phase: "
                    + "heat capacities and the speed of sound are defined for its Bubble and Dew states only.");
            }

            return Model.DerivativesAt(_point.Temperature, _point.Density);
        }
    }

    /// <summary>Whether two states are the same of the same fluid.</summary>
    /// <param name="other">The other.</param>
    public bool Equals(FluidState other) => Fluid.Same(_model, other._model) && _point.Equals(other._point);

    /// <inheritdoc/>
    public override int GetHashCode() => _point.GetHashCode();

    /// <summary>Phase, temperature, pressure and density with units, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{_point.Phase}: {_point.Temperature - 273.15:F2} °C, {_point.Pressure / 1000:F2} kPa absolute, {_point.Density:G6} kg/m³");
}
