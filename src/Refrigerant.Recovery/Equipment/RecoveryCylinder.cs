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

    /// <summary>What the technician calls it, such as "C1".</summary>
    public string Label { get; init; } = "cylinder";

    /// <summary>Water capacity (mark WC): the mass of water at 60 °F that fills it. Greater than zero.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public required Mass WaterCapacity
    {
        get;
        init
        {
            Require.Positive(value.Kilograms, "kg", nameof(WaterCapacity));
            field = value;
        }
    }

    /// <summary>Tare weight (mark TW) with its valve. Greater than zero.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public required Mass TareWeight
    {
        get;
        init
        {
            Require.Positive(value.Kilograms, "kg", nameof(TareWeight));
            field = value;
        }
    }

    /// <summary>Marked service pressure as a gauge pressure, such as 400 psi for a 4BA400. Greater than zero.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public required Pressure ServicePressure
    {
        get;
        init
        {
            Require.Positive(value.Pascals, "Pa", nameof(ServicePressure));
            field = value;
        }
    }

    /// <summary>Refrigerant already in it; none by default.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">Negative or not finite.</exception>
    public Mass Content
    {
        get;
        init
        {
            Require.NotNegative(value.Kilograms, "kg", nameof(Content));
            field = value;
        }
    }

    = new(0, MassUnit.Kilogram);

    /// <summary>Internal volume, from the water capacity.</summary>
    public Volume InternalVolume => new(WaterCapacity.Kilograms / WaterDensity, VolumeUnit.CubicMeter);

    /// <summary>Weight on the scale now: tare and content.</summary>
    public Mass GrossWeight => new(TareWeight.Kilograms + Content.Kilograms, MassUnit.Kilogram);
}
