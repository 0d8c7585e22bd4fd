using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>What else is known about a filling. Immutable.</summary>
public sealed record FillOptions
{
    /// <summary>Nothing else known.</summary>
    internal static readonly FillOptions None = new();

    /// <summary>For an initializer.</summary>
    public FillOptions()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="rules">See <see cref="Rules"/>.</param>
    /// <param name="today">See <see cref="Today"/>.</param>
    /// <param name="oilVolume">See <see cref="OilVolume"/>.</param>
    /// <param name="applyRecoveredWithOil">See <see cref="ApplyRecoveredWithOil"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public FillOptions(
        FillRules? rules = null,
        DateTime? today = null,
        Volume? oilVolume = null,
        bool? applyRecoveredWithOil = null)
    {
        Rules = rules ?? Rules;
        Today = today ?? Today;
        OilVolume = oilVolume ?? OilVolume;
        ApplyRecoveredWithOil = applyRecoveredWithOil ?? ApplyRecoveredWithOil;
    }

    /// <summary>The filling rules of the place; those of the United States by default.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public FillRules Rules { get; init => field = Require.NotNull(value, nameof(Rules)); } = FillRules.UnitedStates;

    /// <summary>Today's date, against which the requalification date is held; not checked where null. The library reads no clock.</summary>
    public DateTime? Today { get; init; }

    /// <summary>
    /// Oil that is or will be in the cylinder; it takes room from the refrigerant, for 49 CFR 173.305(b) counts it at 131 °F. Zero by default.
    /// Its weight is not in <see cref="FillLimit.MaximumGrossWeight"/>.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public Volume OilVolume
    {
        get;
        init
        {
            Require.NotNegative(value.CubicMeters, "m³", nameof(OilVolume));
            field = value;
        }
    }

    = new(0, VolumeUnit.CubicMeter);

    /// <summary>Whether the published figure for recovered refrigerant with oil binds where there is one (R-12, R-22); shown only, by default.</summary>
    public bool ApplyRecoveredWithOil { get; init; }

    /// <summary>Day and oil.</summary>
    public override string ToString() => FormattableString.Invariant($"{(Today is DateTime day ? day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) : "no day")}, {OilVolume.CubicMeters * 1e3:G7} L of oil{(ApplyRecoveredWithOil ? ", recovered with oil" : string.Empty)}");
}
