using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>What the machine did last and what oil is in it: what it may carry into this job. Immutable.</summary>
public sealed record MachinePast
{
    /// <summary>For an initializer.</summary>
    public MachinePast()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="refrigerant">See <see cref="Refrigerant"/>.</param>
    /// <param name="isCleared">See <see cref="IsCleared"/>.</param>
    /// <param name="oil">See <see cref="Oil"/>.</param>
    /// <param name="compressorOil">See <see cref="CompressorOil"/>.</param>
    /// <param name="separatorOil">See <see cref="SeparatorOil"/>.</param>
    /// <param name="runningSinceOilChange">See <see cref="RunningSinceOilChange"/>.</param>
    /// <param name="oilChangeInterval">See <see cref="OilChangeInterval"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public MachinePast(
        Fluid? refrigerant = null,
        bool? isCleared = null,
        OilKind? oil = null,
        Volume? compressorOil = null,
        Volume? separatorOil = null,
        Duration? runningSinceOilChange = null,
        Duration? oilChangeInterval = null)
    {
        Refrigerant = refrigerant ?? Refrigerant;
        IsCleared = isCleared ?? IsCleared;
        Oil = oil ?? Oil;
        CompressorOil = compressorOil ?? CompressorOil;
        SeparatorOil = separatorOil ?? SeparatorOil;
        RunningSinceOilChange = runningSinceOilChange ?? RunningSinceOilChange;
        OilChangeInterval = oilChangeInterval ?? OilChangeInterval;
    }

    /// <summary>The refrigerant of its last job; null where it is new, evacuated, or not known.</summary>
    public Fluid? Refrigerant { get; init; }

    /// <summary>Whether it was cleared after its last job; true by default.</summary>
    public bool IsCleared { get; init; } = true;

    /// <summary>Family of the oil in its compressor; null where it is not known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    public OilKind? Oil { get; init => field = Require.Defined(value, nameof(Oil)); }

    /// <summary>Volume of the oil in its compressor, 0 to 1 m³; 150 mL (5 fl oz) by default (common practice, no source).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Volume CompressorOil { get; init => field = Checked(value, nameof(CompressorOil)); } = new(150, VolumeUnit.Milliliter);

    /// <summary>Volume of the oil in its separator, 0 to 1 m³; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Volume SeparatorOil { get; init => field = Checked(value, nameof(SeparatorOil)); }

    /// <summary>Running time since its oil was changed, 0 to 100 000 h; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration RunningSinceOilChange
    {
        get;
        init
        {
            Require.InRange(value.Seconds, 0, 3.6e8, "s", nameof(RunningSinceOilChange));
            field = Held.Hours(value);
        }
    }

    /// <summary>Running time after which its maker wants the oil changed, 1 h to 100 000 h; null where it is not known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration? OilChangeInterval
    {
        get;
        init
        {
            if (value is Duration given)
            {
                Require.InRange(given.Seconds, 3600, 3.6e8, "s", nameof(OilChangeInterval));
            }

            field = Held.Hours(value);
        }
    }

    private static Volume Checked(Volume value, string parameter)
    {
        Require.InRange(value.CubicMeters, 0, 1, "m³", parameter);
        return Held.Milliliters(value);
    }

    /// <summary>Last refrigerant, oils, and running time since the oil was changed.</summary>
    public override string ToString() =>
        $"last {Refrigerant?.Designation ?? "refrigerant unknown"}, {(IsCleared ? "cleared" : "not cleared")}, {Require.Text(CompressorOil.CubicMeters * 1e6)} mL of {Oil?.ToString() ?? "unknown"} oil, "
        + $"{Require.Text(SeparatorOil.CubicMeters * 1e6)} mL in the separator, {Require.Text(RunningSinceOilChange.Seconds / 3600)} h since the oil was changed"
        + (OilChangeInterval is Duration interval ? $" of {Require.Text(interval.Seconds / 3600)} h" : string.Empty);
}
