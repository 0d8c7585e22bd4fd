using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>A job as plain numbers whose names carry the unit. What is null stands for the default of the job.</summary>
internal sealed record JobDocument
{
    public const string CurrentFormat = "refrigerant-recovery-job/1";

    public string? Format { get; init; }

    public required ApplianceDocument Appliance { get; init; }

    public required MachineDocument Machine { get; init; }

    public required HoseSetDocument Hoses { get; init; }

    public required IReadOnlyList<CylinderDocument> Cylinders { get; init; }

    public BarometerDocument? Barometer { get; init; }

    public EvacuationDocument? Evacuation { get; init; }

    public PushPullUse? PushPull { get; init; }

    public bool? KeepAboveFreezing { get; init; }

    public bool? FollowComposition { get; init; }

    public bool? ClearMachine { get; init; }

    public double? SweepPressureKilopascalsAbsolute { get; init; }

    public double? LossPerConnectionMilliliters { get; init; }

    public TimesDocument? Times { get; init; }

    public int? MaximumPulls { get; init; }

    public DateTime? Day { get; init; }

    public static JobDocument From(RecoveryJob job) => new()
    {
        Format = CurrentFormat,
        Appliance = ApplianceDocument.From(job.Appliance),
        Machine = MachineDocument.From(job.Machine),
        Hoses = HoseSetDocument.From(job.Hoses),
        Cylinders = [.. job.Cylinders.Select(CylinderDocument.From)],
        Barometer = BarometerDocument.From(job.Barometer),
        Evacuation = EvacuationDocument.From(job.Evacuation),
        PushPull = job.PushPull,
        KeepAboveFreezing = job.KeepAboveFreezing,
        FollowComposition = job.FollowComposition,
        ClearMachine = job.ClearMachine,
        SweepPressureKilopascalsAbsolute = Plain.Kilopascals(job.SweepPressure),
        LossPerConnectionMilliliters = Plain.Number(job.LossPerConnection.CubicMeters * 1e6),
        Times = TimesDocument.From(job.Times),
        MaximumPulls = job.MaximumPulls,
        Day = job.Day,
    };

    public RecoveryJob ToJob(DocumentNode node)
    {
        if (Format is not (null or CurrentFormat))
        {
            throw node.Member("format").Wrong($"it must be \"{CurrentFormat}\", the format that this version reads.");
        }

        Appliance appliance = Appliance.ToAppliance(node.Member("appliance"));
        RecoveryMachine machine = Machine.ToMachine(node.Member("machine"));
        HoseSet hoses = Hoses.ToHoses(node.Member("hoses"));
        RecoveryCylinder[] cylinders = [.. Cylinders.Select((cylinder, i) => cylinder.ToCylinder(node.Member("cylinders").Item(i)))];
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
                SweepPressure = SweepPressureKilopascalsAbsolute is double sweep ? Plain.PressureOf(sweep) : job.SweepPressure,
                LossPerConnection = LossPerConnectionMilliliters is double loss ? new Volume(loss / 1e6, VolumeUnit.CubicMeter) : job.LossPerConnection,
                Times = Times?.ToTimes(node.Member("times")) ?? job.Times,
                MaximumPulls = MaximumPulls ?? job.MaximumPulls,
                Day = Day,
            };
        });
    }
}
