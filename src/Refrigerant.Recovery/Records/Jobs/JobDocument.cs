using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>A job as plain numbers whose names carry the unit. What is null stands for the default of the job.</summary>
internal sealed record JobDocument
{
    public const string CurrentFormat = "refrigerant-recovery-job/1";

    /// <summary>The format of the document, with its version.</summary>
    public string? Format { get; init; }

    /// <summary>What the refrigerant is taken from.</summary>
    public required ApplianceDocument Appliance { get; init; }

    /// <summary>The recovery machine.</summary>
    public required MachineDocument Machine { get; init; }

    /// <summary>The hoses.</summary>
    public required HoseSetDocument Hoses { get; init; }

    /// <summary>The cylinders on hand, partly filled ones included; at most 1000.</summary>
    public required IReadOnlyList<CylinderDocument> Cylinders { get; init; }

    /// <summary>The air at the place, which gauges read against; the standard atmosphere by default.</summary>
    public BarometerDocument? Barometer { get; init; }

    /// <summary>What decides the required level besides refrigerant and charge; a general appliance that is opened for a major repair where it is left out.</summary>
    public EvacuationDocument? Evacuation { get; init; }

    /// <summary>Whether push-pull is used.</summary>
    public PushPullUse? PushPull { get; init; }

    /// <summary>Whether to throttle so that no surface with water behind it freezes; true where it is not given.</summary>
    public bool? KeepAboveFreezing { get; init; }

    /// <summary>Whether the composition of a zeotropic blend is followed while vapor is drawn off it.</summary>
    public bool? FollowComposition { get; init; }

    /// <summary>Whether the machine empties itself into the last cylinder at the end; true by default.</summary>
    public bool? ClearMachine { get; init; }

    /// <summary>Absolute pressure to which hoses and machine are swept of air, 10 Pa to 100 kPa; 15 inHg below a standard atmosphere (50.5 kPa) by default (common practice, no source).</summary>
    public double? SweepPressureKilopascalsAbsolute { get; init; }

    /// <summary>Volume that escapes each time a connection is opened, 0 to 1 L; 2 mL, a low-loss fitting, by default (common practice, no source).</summary>
    public double? LossPerConnectionMilliliters { get; init; }

    /// <summary>Time that handling takes.</summary>
    public TimesDocument? Times { get; init; }

    /// <summary>What is at hand to cool the cylinder and to warm the appliance; nothing by default.</summary>
    public AidsDocument? Aids { get; init; }

    /// <summary>What the machine did before; left out where nothing is known.</summary>
    public MachinePastDocument? MachinePast { get; init; }

    /// <summary>The most pulls that are tried before the plan gives up on the level, 1 to 50; 6 by default.</summary>
    public int? MaximumPulls { get; init; }

    /// <summary>The day of the job, against which requalification dates are checked; left out leaves them unchecked.</summary>
    public DateTime? Day { get; init; }

    public static JobDocument From(RecoveryJob job, FluidResolver? fluids) => new()
    {
        Format = CurrentFormat,
        Appliance = ApplianceDocument.From(job.Appliance, fluids),
        Machine = MachineDocument.From(job.Machine),
        Hoses = HoseSetDocument.From(job.Hoses),
        Cylinders = [.. job.Cylinders.Select(CylinderDocument.From)],
        Barometer = BarometerDocument.From(job.Barometer),
        Evacuation = EvacuationDocument.From(job.Evacuation),
        PushPull = job.PushPull,
        KeepAboveFreezing = job.KeepAboveFreezing,
        FollowComposition = job.FollowComposition,
        ClearMachine = job.ClearMachine,
        SweepPressureKilopascalsAbsolute = Exact.Kilopascals(job.SweepPressure),
        LossPerConnectionMilliliters = Exact.Milliliters(job.LossPerConnection),
        Times = TimesDocument.From(job.Times),
        Aids = AidsDocument.From(job.Aids),
        MachinePast = job.MachinePast is { } past ? MachinePastDocument.From(past, fluids) : null,
        MaximumPulls = job.MaximumPulls,
        Day = job.Day,
    };

    public RecoveryJob ToJob(DocumentNode node, FluidResolver? fluids)
    {
        if (Format is not (null or CurrentFormat))
        {
            throw node.Member("format").Wrong($"it must be \"{CurrentFormat}\", the format that this version reads.");
        }

        Appliance appliance = Appliance.ToAppliance(node.Member("appliance"), fluids);
        RecoveryMachine machine = Machine.ToMachine(node.Member("machine"));
        HoseSet hoses = Hoses.ToHoses(node.Member("hoses"));
        RecoveryCylinder[] cylinders = [.. Cylinders.Zip(node.Member("cylinders").Items(), (cylinder, item) => cylinder.ToCylinder(item))];
        Barometer barometer = Barometer?.ToBarometer(node.Member("barometer")) ?? Gauges.Barometer.Standard;
        return node.Build(() =>
        {
            RecoveryJob job = new() { Appliance = appliance, Machine = machine, Hoses = hoses, Cylinders = cylinders, Barometer = barometer };
            return job with
            {
                Evacuation = Evacuation?.ToOptions(node.Member("evacuation")),
                PushPull = PushPull ?? job.PushPull,
                KeepAboveFreezing = KeepAboveFreezing ?? job.KeepAboveFreezing,
                FollowComposition = FollowComposition ?? job.FollowComposition,
                ClearMachine = ClearMachine ?? job.ClearMachine,
                SweepPressure = SweepPressureKilopascalsAbsolute is double sweep ? Exact.PressureOf(sweep) : job.SweepPressure,
                LossPerConnection = LossPerConnectionMilliliters is double loss ? Exact.SmallVolumeOf(loss) : job.LossPerConnection,
                Times = Times?.ToTimes(node.Member("times")) ?? job.Times,
                Aids = Aids?.ToAids(node.Member("aids")) ?? job.Aids,
                MachinePast = MachinePast?.ToPast(node.Member("machinePast"), fluids),
                MaximumPulls = MaximumPulls ?? job.MaximumPulls,
                Day = Day,
            };
        });
    }
}
