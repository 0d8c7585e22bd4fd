using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Rules;

/// <summary>Oil in a vessel and the hose that it is drained through. Immutable.</summary>
public sealed record OilToDrain
{
    /// <summary>For an initializer.</summary>
    public OilToDrain()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="mass">See <see cref="Mass"/>.</param>
    /// <param name="viscosity">See <see cref="Viscosity"/>.</param>
    /// <param name="hoses">See <see cref="Hoses"/>.</param>
    /// <param name="density">See <see cref="Density"/>.</param>
    /// <param name="depth">See <see cref="Depth"/>.</param>
    /// <param name="allowableGaugePressure">See <see cref="AllowableGaugePressure"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public OilToDrain(
        Mass mass,
        DynamicViscosity viscosity,
        IReadOnlyList<Hose> hoses,
        Density? density = null,
        Length? depth = null,
        Pressure? allowableGaugePressure = null)
    {
        Mass = mass;
        Viscosity = viscosity;
        Hoses = hoses;
        Density = density ?? Density;
        Depth = depth ?? Depth;
        AllowableGaugePressure = allowableGaugePressure ?? AllowableGaugePressure;
    }

    /// <summary>Mass of the oil, 1 g to 100 t.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required Mass Mass { get; init => field = Require.InRange(value, 1e-3, 1e5, nameof(Mass)); }

    /// <summary>Dynamic viscosity of the oil at its temperature, 0.1 mPa·s to 10 Pa·s: kinematic viscosity times density, from the maker's data. Dissolved refrigerant thins it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required DynamicViscosity Viscosity
    {
        get;
        init
        {
            Require.InRange(value.PascalSeconds, 1e-4, 10, "Pa·s", nameof(Viscosity));
            field = value;
        }
    }

    /// <summary>Density of the oil, 500 to 1500 kg/m³; 950 kg/m³ by default (common practice, no source).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Density Density
    {
        get;
        init
        {
            Require.InRange(value.KilogramsPerCubicMeter, 500, 1500, "kg/m³", nameof(Density));
            field = value;
        }
    }

    = new(950, DensityUnit.KilogramPerCubicMeter);

    /// <summary>The drain hose, and what follows it; at least one. The rise of a hose counts.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    /// <exception cref="ArgumentException">The list is empty.</exception>
    public required IReadOnlyList<Hose> Hoses
    {
        get;
        init
        {
            field = Require.Copy(value, nameof(Hoses));
            if (field.Count == 0)
            {
                throw new ArgumentException("Hoses has no hose; the oil needs at least one.", nameof(Hoses));
            }
        }
    }

    /// <summary>Depth of the oil over the inlet of the hose at the start, 0 to 10 m; 0 by default. It falls in step with the mass.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Length Depth
    {
        get;
        init
        {
            Require.InRange(value.Meters, 0, 10, "m", nameof(Depth));
            field = value;
        }
    }

    /// <summary>Gauge pressure that the weakest part stands: vessel, hose, sight glass; null where it is not known, which a finding says.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? AllowableGaugePressure { get; init => field = Require.Positive(value, "Pa gauge", nameof(AllowableGaugePressure)); }

    /// <summary>Mass and depth.</summary>
    public override string ToString() => FormattableString.Invariant($"{Mass.Kilograms:G7} kg of oil from {Depth.Meters:G7} m below, {Hoses.Count} hoses");
}
