using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Processes;

/// <summary>How long an appliance stands shut, and what ends it earlier; 15 min by default (common practice, no source). Immutable.</summary>
public sealed record HoldOptions : StageOptions
{
    private const double QuarterOfAnHour = 900;

    /// <summary>A hold of a quarter of an hour.</summary>
    public HoldOptions()
        : base(QuarterOfAnHour)
    {
    }

    /// <summary>How long the valves stay closed, 1 s to 1000 days: the same as <see cref="StageOptions.MaximumDuration"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration Duration
    {
        get => MaximumDuration;
        init
        {
            Require.InRange(value.Seconds, 1, 8.64e7, "s", nameof(Duration));
            MaximumDuration = value;
        }
    }

    /// <summary>Absolute pressure of the appliance at which it ends early, since another pull is needed anyway; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? EndPressure { get; init => field = Checked(value, nameof(EndPressure)); }

    /// <summary>Absolute pressure of the cylinder, falling, at which it is cool enough; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? CylinderEndPressure { get; init => field = Checked(value, nameof(CylinderEndPressure)); }

    private static Pressure? Checked(Pressure? value, string parameter)
    {
        if (value is Pressure given)
        {
            Require.Positive(given.Pascals, "Pa", parameter);
        }

        return value;
    }
}
