using System;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Equipment;

/// <summary>A refillable recovery cylinder: its marks and what is in it. Immutable.</summary>
public sealed record RecoveryCylinder
{
    /// <summary>
    /// Mass of water that 1 m³ holds at 60 °F, by the conversion 1 lb = 27.737 in³ (49 CFR 173.304a; that conversion from memory).
    /// </summary>
    internal const double WaterDensity = 0.45359237 / (27.737 * 0.0254 * 0.0254 * 0.0254);

    /// <summary>From a sampling flask to ten tank cars, kg; beyond it a unit or a digit is wrong.</summary>
    private const double SmallestMass = 1e-3, LargestMass = 1e6;

    /// <summary>For an initializer.</summary>
    public RecoveryCylinder()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="waterCapacity">See <see cref="WaterCapacity"/>.</param>
    /// <param name="tareWeight">See <see cref="TareWeight"/>.</param>
    /// <param name="servicePressure">See <see cref="ServicePressure"/>.</param>
    /// <param name="label">See <see cref="Label"/>.</param>
    /// <param name="content">See <see cref="Content"/>.</param>
    /// <param name="refrigerant">See <see cref="Refrigerant"/>.</param>
    /// <param name="requalificationDue">See <see cref="RequalificationDue"/>.</param>
    /// <param name="specification">See <see cref="Specification"/>.</param>
    /// <param name="temperature">See <see cref="Temperature"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public RecoveryCylinder(
        Mass waterCapacity,
        Mass tareWeight,
        Pressure servicePressure,
        string? label = null,
        Mass? content = null,
        string? refrigerant = null,
        DateTime? requalificationDue = null,
        CylinderSpecification? specification = null,
        Temperature? temperature = null)
    {
        WaterCapacity = waterCapacity;
        TareWeight = tareWeight;
        ServicePressure = servicePressure;
        Label = label ?? Label;
        Content = content ?? Content;
        Refrigerant = refrigerant ?? Refrigerant;
        RequalificationDue = requalificationDue ?? RequalificationDue;
        Specification = specification ?? Specification;
        Temperature = temperature ?? Temperature;
    }

    /// <summary>What the technician calls it, such as "C1".</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    /// <exception cref="ArgumentException">Blank.</exception>
    public string Label { get; init => field = Require.NotEmpty(value, nameof(Label)); } = "cylinder";

    /// <summary>Water capacity (mark WC): the mass of water at 60 °F that fills it, 1e-3 to 1e6 kg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not finite.</exception>
    public required Mass WaterCapacity
    {
        get;
        init
        {
            Require.InRange(value.Kilograms, SmallestMass, LargestMass, "kg", nameof(WaterCapacity));
            field = Held.Kilograms(value);
        }
    }

    /// <summary>Tare weight (mark TW) with its valve, 1e-3 to 1e6 kg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not finite.</exception>
    public required Mass TareWeight
    {
        get;
        init
        {
            Require.InRange(value.Kilograms, SmallestMass, LargestMass, "kg", nameof(TareWeight));
            field = Held.Kilograms(value);
        }
    }

    /// <summary>Marked service pressure as a gauge pressure, such as 400 psi for a 4BA400. Greater than zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public required Pressure ServicePressure
    {
        get;
        init
        {
            Require.Positive(value.Pascals, "Pa", nameof(ServicePressure));
            field = Held.Kilopascals(value);
        }
    }

    /// <summary>Refrigerant already in it, 0 to 1e6 kg; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not finite.</exception>
    public Mass Content
    {
        get;
        init
        {
            Require.InRange(value.Kilograms, 0, LargestMass, "kg", nameof(Content));
            field = Held.Kilograms(value);
        }
    }

    = new(0, MassUnit.Kilogram);

    /// <summary>
    /// Temperature of cylinder and content when it is connected, 150 K to 400 K: above that of the air for one out of a hot van or the sun, below it for one that was cooled before;
    /// that of the surroundings where it is null.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Temperature? Temperature
    {
        get;
        init
        {
            if (value is Temperature given)
            {
                Require.Kelvins(given, 150, 400, nameof(Temperature));
            }

            field = Held.Celsius(value);
        }
    }

    /// <summary>What it is built to: the DOT or TC mark or the UN/ADR test pressure; unknown by default.</summary>
    public CylinderSpecification? Specification { get; init; }

    /// <summary>Designation of the refrigerant it holds or last held, such as "R-134a"; null for one that is new, or cleaned and evacuated.</summary>
    public string? Refrigerant { get; init; }

    /// <summary>The day on which its requalification (retest) falls due; the time of day is ignored. Null where unknown.</summary>
    public DateTime? RequalificationDue { get; init => field = Held.Day(value); }

    /// <summary>Internal volume, from the water capacity.</summary>
    public Volume InternalVolume => new(WaterCapacity.Kilograms / WaterDensity, VolumeUnit.CubicMeter);

    /// <summary>Weight on the scale now: tare and content.</summary>
    public Mass GrossWeight => new(TareWeight.Kilograms + Content.Kilograms, MassUnit.Kilogram);

    /// <summary>A cylinder by its DOT or TC mark, which gives the service pressure too.</summary>
    /// <param name="mark">The mark, such as "DOT-4BA400"; see <see cref="CylinderSpecification.FromMark"/>.</param>
    /// <param name="waterCapacity">Water capacity (mark WC), 1e-3 to 1e6 kg.</param>
    /// <param name="tareWeight">Tare weight (mark TW), 1e-3 to 1e6 kg.</param>
    /// <param name="label">See <see cref="Label"/>; its default where null.</param>
    /// <param name="content">See <see cref="Content"/>; empty where null.</param>
    /// <param name="refrigerant">See <see cref="Refrigerant"/>.</param>
    /// <param name="requalificationDue">See <see cref="RequalificationDue"/>.</param>
    /// <exception cref="ArgumentException">The mark is unknown, or a mass is outside its range.</exception>
    public static RecoveryCylinder FromMark(
        string mark,
        Mass waterCapacity,
        Mass tareWeight,
        string? label = null,
        Mass? content = null,
        string? refrigerant = null,
        DateTime? requalificationDue = null)
    {
        CylinderSpecification specification = CylinderSpecification.FromMark(mark);
        return new RecoveryCylinder(
            waterCapacity, tareWeight, specification.ServicePressure!.Value, label, content, refrigerant, requalificationDue, specification);
    }

    /// <summary>
    /// A UN/ADR cylinder by its test pressure. Its service pressure is set to two thirds of that (the ratio for compressed gases, from memory).
    /// </summary>
    /// <param name="testPressure">Marked test pressure, gauge, greater than zero.</param>
    /// <param name="waterCapacity">Water capacity, 1e-3 to 1e6 kg.</param>
    /// <param name="tareWeight">Tare weight, 1e-3 to 1e6 kg.</param>
    /// <param name="label">See <see cref="Label"/>; its default where null.</param>
    /// <param name="content">See <see cref="Content"/>; empty where null.</param>
    /// <param name="refrigerant">See <see cref="Refrigerant"/>.</param>
    /// <param name="requalificationDue">See <see cref="RequalificationDue"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is not greater than zero, a mass is outside its range, or a value is not finite.</exception>
    public static RecoveryCylinder FromTestPressure(
        Pressure testPressure,
        Mass waterCapacity,
        Mass tareWeight,
        string? label = null,
        Mass? content = null,
        string? refrigerant = null,
        DateTime? requalificationDue = null)
    {
        CylinderSpecification specification = CylinderSpecification.FromTestPressure(testPressure);
        return new RecoveryCylinder(
            waterCapacity, tareWeight, new Pressure(testPressure.Pascals * 2 / 3, PressureUnit.Pascal), label, content, refrigerant, requalificationDue, specification);
    }

    /// <summary>The same cylinder with the content that a scale reading tells.</summary>
    /// <param name="scaleReading">Weight of the cylinder, its valve and its content; not below the tare weight.</param>
    /// <exception cref="ArgumentOutOfRangeException">Below the tare weight, or not finite.</exception>
    public RecoveryCylinder WeighedAt(Mass scaleReading)
    {
        double gross = Require.Finite(scaleReading.Kilograms, "kg", nameof(scaleReading));
        double content = gross - TareWeight.Kilograms;
        if (content < 0)
        {
            throw new ArgumentOutOfRangeException(
                nameof(scaleReading),
                $"{nameof(scaleReading)} is {Require.Text(gross)} kg, below the tare weight {Require.Text(TareWeight.Kilograms)} kg of {Label}: "
                + "check the mark, the unit and the scale's zero.");
        }

        if (content > LargestMass)
        {
            throw new ArgumentOutOfRangeException(
                nameof(scaleReading),
                $"{nameof(scaleReading)} is {Require.Text(gross)} kg; it must be from {Require.Text(TareWeight.Kilograms)} to {Require.Text(TareWeight.Kilograms + LargestMass)} kg for {Label}.");
        }

        return this with { Content = new Mass(content, MassUnit.Kilogram) };
    }

    /// <summary>Label, mark and content.</summary>
    public override string ToString() => $"{Label}{(Specification is null ? string.Empty : $" ({Specification})")}: {Require.Text(Content.Kilograms)} kg, water capacity {Require.Text(WaterCapacity.Kilograms)} kg, tare {Require.Text(TareWeight.Kilograms)} kg";
}
