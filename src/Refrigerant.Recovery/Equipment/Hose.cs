using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Equipment;

/// <summary>A hose, or a run of tube, with the fittings in it. Immutable.</summary>
public sealed record Hose
{
    /// <summary>Roughness of smooth rubber tubing, m: 0.006 to 0.07 mm in published tables of pipe roughness.</summary>
    private const double SmoothRubberMillimeters = 0.01;

    /// <summary>For an initializer.</summary>
    public Hose()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="length">See <see cref="Length"/>.</param>
    /// <param name="innerDiameter">See <see cref="InnerDiameter"/>.</param>
    /// <param name="roughness">See <see cref="Roughness"/>.</param>
    /// <param name="rise">See <see cref="Rise"/>.</param>
    /// <param name="fittings">See <see cref="Fittings"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public Hose(
        Length length,
        Length innerDiameter,
        Length? roughness = null,
        Length? rise = null,
        IReadOnlyList<Fitting>? fittings = null)
    {
        Length = length;
        InnerDiameter = innerDiameter;
        Roughness = roughness ?? Roughness;
        Rise = rise ?? Rise;
        Fittings = fittings ?? Fittings;
    }

    /// <summary>Length, from 1 mm to 10 km.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required Length Length
    {
        get;
        init
        {
            Require.InRange(value.Meters, 1e-3, 1e4, "m", nameof(Length));
            field = Held.Meters(value);
        }
    }

    /// <summary>Inner diameter, from 0.5 mm to 1 m. A "half-inch" hose is named by its fittings; its bore is less.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required Length InnerDiameter
    {
        get;
        init
        {
            Require.InRange(value.Meters, 5e-4, 1, "m", nameof(InnerDiameter));
            field = Held.Millimeters(value);
        }
    }

    /// <summary>Roughness of the wall, 0 to 5 mm; 0.01 mm (smooth rubber) by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Length Roughness
    {
        get;
        init
        {
            Require.InRange(value.Meters, 0, 5e-3, "m", nameof(Roughness));
            field = Held.Millimeters(value);
        }
    }

    = new(SmoothRubberMillimeters, LengthUnit.Millimeter);

    /// <summary>Height of its outlet above its inlet, −1000 m to 1000 m; zero by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Length Rise
    {
        get;
        init
        {
            Require.InRange(value.Meters, -1000, 1000, "m", nameof(Rise));
            field = Held.Meters(value);
        }
    }

    /// <summary>Valves, couplers and core depressors in it; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    public IReadOnlyList<Fitting> Fittings
    {
        get;
        init => field = Require.Copy(value, nameof(Fittings));
    }

    = new ValueList<Fitting>([]);

    /// <summary>Internal volume.</summary>
    public Volume InternalVolume => new(Area * Length.Meters, VolumeUnit.CubicMeter);

    /// <summary>Cross-section, m².</summary>
    internal double Area => 0.25 * Math.PI * InnerDiameter.Meters * InnerDiameter.Meters;

    /// <summary>Length, bore and fittings.</summary>
    public override string ToString() => $"{Require.Text(Length.Meters)} m of {Require.Text(InnerDiameter.Meters * 1e3)} mm bore{(Fittings.Count == 0 ? string.Empty : " with " + string.Join(", ", Fittings))}";
}
