using System;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Equipment;

/// <summary>One volume of an appliance that a restriction separates from the others: behind a shut solenoid valve, an expansion device, a check valve. Immutable.</summary>
public sealed record ApplianceSection
{
    /// <summary>For an initializer.</summary>
    public ApplianceSection()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="name">See <see cref="Name"/>.</param>
    /// <param name="internalVolume">See <see cref="InternalVolume"/>.</param>
    /// <param name="charge">See <see cref="Charge"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public ApplianceSection(
        string name,
        Volume internalVolume,
        Mass charge)
    {
        Name = name;
        InternalVolume = internalVolume;
        Charge = charge;
    }

    /// <summary>What it is called, such as "receiver"; not empty and unlike the names of the other sections.</summary>
    /// <exception cref="ArgumentException">The name is null or empty.</exception>
    public required string Name { get; init => field = Require.NotEmpty(value, nameof(Name)); }

    /// <summary>Its internal volume, 1 mL to 10 000 m³; the volumes of all sections add up to that of the appliance.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required Volume InternalVolume
    {
        get;
        init
        {
            Require.InRange(value.CubicMeters, 1e-6, 1e4, "m³", nameof(InternalVolume));
            field = Held.Liters(value);
        }
    }

    /// <summary>Refrigerant in it before the job, 1 mg to 1000 t; the charges of all sections add up to that of the appliance.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required Mass Charge
    {
        get;
        init
        {
            Require.InRange(value.Kilograms, 1e-6, 1e6, "kg", nameof(Charge));
            field = Held.Kilograms(value);
        }
    }

    /// <summary>Name, charge and volume.</summary>
    public override string ToString() => $"{Name}: {Require.Text(Charge.Kilograms)} kg in {Require.Text(InternalVolume.CubicMeters * 1e3)} L";
}
