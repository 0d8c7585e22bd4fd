using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>A job: what is to be emptied, with what, where, and down to which level. Immutable.</summary>
public sealed record RecoveryJob
{
    private const int MostCylinders = 1000;

    /// <summary>For an initializer.</summary>
    public RecoveryJob()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="appliance">See <see cref="Appliance"/>.</param>
    /// <param name="machine">See <see cref="Machine"/>.</param>
    /// <param name="hoses">See <see cref="Hoses"/>.</param>
    /// <param name="cylinders">See <see cref="Cylinders"/>.</param>
    /// <param name="barometer">See <see cref="Barometer"/>.</param>
    /// <param name="evacuation">See <see cref="Evacuation"/>.</param>
    /// <param name="pushPull">See <see cref="PushPull"/>.</param>
    /// <param name="keepAboveFreezing">See <see cref="KeepAboveFreezing"/>.</param>
    /// <param name="clearMachine">See <see cref="ClearMachine"/>.</param>
    /// <param name="followComposition">See <see cref="FollowComposition"/>.</param>
    /// <param name="sweepPressure">See <see cref="SweepPressure"/>.</param>
    /// <param name="lossPerConnection">See <see cref="LossPerConnection"/>.</param>
    /// <param name="times">See <see cref="Times"/>.</param>
    /// <param name="maximumPulls">See <see cref="MaximumPulls"/>.</param>
    /// <param name="day">See <see cref="Day"/>.</param>
    /// <param name="aids">See <see cref="Aids"/>.</param>
    /// <param name="machinePast">See <see cref="MachinePast"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public RecoveryJob(
        Appliance appliance,
        RecoveryMachine machine,
        HoseSet hoses,
        IReadOnlyList<RecoveryCylinder> cylinders,
        Barometer? barometer = null,
        EvacuationOptions? evacuation = null,
        PushPullUse? pushPull = null,
        bool? keepAboveFreezing = null,
        bool? clearMachine = null,
        bool? followComposition = null,
        Pressure? sweepPressure = null,
        Volume? lossPerConnection = null,
        JobTimes? times = null,
        int? maximumPulls = null,
        DateTime? day = null,
        SiteAids? aids = null,
        MachinePast? machinePast = null)
    {
        Appliance = appliance;
        Machine = machine;
        Hoses = hoses;
        Cylinders = cylinders;
        Barometer = barometer ?? Barometer;
        Evacuation = evacuation ?? Evacuation;
        PushPull = pushPull ?? PushPull;
        KeepAboveFreezing = keepAboveFreezing ?? KeepAboveFreezing;
        ClearMachine = clearMachine ?? ClearMachine;
        FollowComposition = followComposition ?? FollowComposition;
        SweepPressure = sweepPressure ?? SweepPressure;
        LossPerConnection = lossPerConnection ?? LossPerConnection;
        Times = times ?? Times;
        MaximumPulls = maximumPulls ?? MaximumPulls;
        Day = day ?? Day;
        Aids = aids ?? Aids;
        MachinePast = machinePast ?? MachinePast;
    }

    /// <summary>What the refrigerant is taken from.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public required Appliance Appliance { get; init => field = Require.NotNull(value, nameof(Appliance)); }

    /// <summary>The recovery machine.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public required RecoveryMachine Machine { get; init => field = Require.NotNull(value, nameof(Machine)); }

    /// <summary>The hoses.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public required HoseSet Hoses { get; init => field = Require.NotNull(value, nameof(Hoses)); }

    /// <summary>The cylinders on hand, partly filled ones included; at most 1000.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    /// <exception cref="ArgumentException">More than 1000 cylinders, or two with the same label.</exception>
    public required IReadOnlyList<RecoveryCylinder> Cylinders
    {
        get;
        init
        {
            field = Require.Copy(value, nameof(Cylinders));
            if (field.Count > MostCylinders)
            {
                throw new ArgumentException($"Cylinders has {field.Count} members; at most {MostCylinders} are planned with.", nameof(Cylinders));
            }

            var labels = new HashSet<string>(StringComparer.Ordinal);
            foreach (RecoveryCylinder cylinder in field)
            {
                if (!labels.Add(cylinder.Label))
                {
                    throw new ArgumentException($"Cylinders has two with the label \"{cylinder.Label}\": give each a label of its own.", nameof(Cylinders));
                }
            }
        }
    }

    /// <summary>The air at the place, which gauges read against; the standard atmosphere by default.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public Barometer Barometer { get; init => field = Require.NotNull(value, nameof(Barometer)); } = Barometer.Standard;

    /// <summary>
    /// What decides the required level besides refrigerant and charge; the planner puts in <see cref="Barometer"/> and the machine's date of
    /// manufacture. Null: a general appliance that is opened for a major repair.
    /// </summary>
    public EvacuationOptions? Evacuation { get; init; }

    /// <summary>What the level is asked for with: barometer, volume and the machine's date as the job tells them.</summary>
    internal EvacuationOptions EffectiveEvacuation => (Evacuation ?? new EvacuationOptions()) with
    {
        Barometer = Barometer,
        InternalVolume = Evacuation?.InternalVolume ?? Appliance.InternalVolume,
        MachineManufactured = Machine.ManufactureDate ?? Evacuation?.MachineManufactured,
    };

    /// <summary>Whether push-pull is used.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such use.</exception>
    public PushPullUse PushPull { get; init => field = Require.Defined(value, nameof(PushPull)); }

    /// <summary>Whether to throttle so that no surface with water behind it freezes; true by default, of no effect without <see cref="Appliance.Water"/>.</summary>
    public bool KeepAboveFreezing { get; init; } = true;

    /// <summary>Whether the machine is throttled where water in tubes would freeze.</summary>
    internal bool KeepsTubes => KeepAboveFreezing && Appliance.Water is not null;

    /// <summary>The refrigerant that the machine held last, where it is another than the job's; null where it is not, or not known.</summary>
    internal Fluids.Fluid? ForeignInMachine => MachinePast?.Refrigerant is Fluids.Fluid last && last.Designation != Appliance.Fluid.Designation ? last : null;

    /// <summary>Whether liquid can be reached and a hose for it is there.</summary>
    internal bool HasLiquidHose => Appliance.LiquidReachable && Hoses.LiquidSide.Count > 0;

    /// <summary>Whether the machine empties itself into the last cylinder at the end; true by default.</summary>
    public bool ClearMachine { get; init; } = true;

    /// <summary>
    /// Whether the composition of a zeotropic blend is followed while vapor is drawn off it, through all pulls, holds and cylinders; false by
    /// default: it counts as fixed. What push-pull leaves behind counts as charged, and so does what a cylinder holds.
    /// For blends of this package's own property models; of no effect for others.
    /// </summary>
    public bool FollowComposition { get; init; }

    /// <summary>Absolute pressure to which hoses and machine are swept of air, 10 Pa to 100 kPa; 15 inHg below a standard atmosphere (50.5 kPa) by default (common practice, no source).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Pressure SweepPressure
    {
        get;
        init
        {
            Require.InRange(value.Pascals, 10, 1e5, "Pa absolute", nameof(SweepPressure));
            field = Held.Kilopascals(value);
        }
    }

    = new(50.5, PressureUnit.Kilopascal);

    /// <summary>Volume that escapes each time a connection is opened, 0 to 1 L; 2 mL, a low-loss fitting, by default (common practice, no source).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Volume LossPerConnection
    {
        get;
        init
        {
            Require.InRange(value.CubicMeters, 0, 1e-3, "m³", nameof(LossPerConnection));
            field = Held.Milliliters(value);
        }
    }

    = new(2, VolumeUnit.Milliliter);

    /// <summary>Time that handling takes.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public JobTimes Times { get; init => field = Require.NotNull(value, nameof(Times)); } = new();

    /// <summary>What is at hand to cool the cylinder and to warm the appliance; nothing by default.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public SiteAids Aids { get; init => field = Require.NotNull(value, nameof(Aids)); } = SiteAids.None;

    /// <summary>What the machine did before; null where nothing is known, and nothing is said.</summary>
    public MachinePast? MachinePast { get; init; }

    /// <summary>The most pulls that are tried before the plan gives up on the level, 1 to 50; 6 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public int MaximumPulls
    {
        get;
        init
        {
            Require.InRange(value, 1, 50, string.Empty, nameof(MaximumPulls));
            field = value;
        }
    }

    = 6;

    /// <summary>The day of the job, against which requalification dates are checked; null leaves them unchecked.</summary>
    public DateTime? Day { get; init => field = Held.Day(value); }

    /// <summary>How far the gauge on which a pull is ended reads low, Pa.</summary>
    internal double GaugeError { get; init; }

    /// <summary>How far the scale on which a cylinder is filled reads low, kg.</summary>
    internal double ScaleError { get; init; }

    /// <summary>What is emptied, and into how many cylinders.</summary>
    public override string ToString() => $"{Appliance} into {Cylinders.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)} cylinders";
}
