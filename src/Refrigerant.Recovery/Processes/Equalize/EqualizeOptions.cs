using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Processes;

/// <summary>Where an equalization starts and what ends it; one hour at most by default. Immutable.</summary>
public sealed record EqualizeOptions : StageOptions
{
    private const double Hour = 3600;

    /// <summary>An equalization of appliance and cylinder as described.</summary>
    public EqualizeOptions()
        : base(Hour)
    {
    }

    /// <summary>Absolute pressure of the cylinder, rising, at which it is even enough; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? CylinderEndPressure
    {
        get;
        init
        {
            if (value is Pressure given)
            {
                Require.Positive(given.Pascals, "Pa", nameof(CylinderEndPressure));
            }

            field = value;
        }
    }
}
