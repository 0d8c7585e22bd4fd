using System;
using Refrigerant.Recovery.Equipment;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>A recovery machine.</summary>
internal sealed record MachineDocument
{
    public required double DisplacementLitersPerSecond { get; init; }

    public double? ClearanceRatio { get; init; }

    public double? PolytropicExponent { get; init; }

    public double? VolumetricEfficiency { get; init; }

    public double? LeakageTerm { get; init; }

    public double? IsentropicEfficiency { get; init; }

    public double? LowPressureSwitchKilopascalsAbsolute { get; init; }

    public double? HighPressureCutoutKilopascalsAbsolute { get; init; }

    public double? InternalVolumeLiters { get; init; }

    public CondenserDocument? Condenser { get; init; }

    public bool? ListedForFlammable { get; init; }

    public DateTime? ManufactureDate { get; init; }

    public static MachineDocument From(RecoveryMachine machine) => new()
    {
        DisplacementLitersPerSecond = Plain.Number(machine.Displacement.CubicMetersPerSecond * 1e3),
        ClearanceRatio = Plain.Number(machine.ClearanceRatio),
        PolytropicExponent = Plain.Number(machine.PolytropicExponent),
        VolumetricEfficiency = Plain.Number(machine.VolumetricEfficiency),
        LeakageTerm = Plain.Number(machine.LeakageTerm),
        IsentropicEfficiency = Plain.Number(machine.IsentropicEfficiency),
        LowPressureSwitchKilopascalsAbsolute = machine.LowPressureSwitch is Pressure low ? Plain.Kilopascals(low) : null,
        HighPressureCutoutKilopascalsAbsolute = Plain.Kilopascals(machine.HighPressureCutout),
        InternalVolumeLiters = Plain.Liters(machine.InternalVolume),
        Condenser = CondenserDocument.From(machine.Condenser),
        ListedForFlammable = machine.ListedForFlammable,
        ManufactureDate = machine.ManufactureDate,
    };

    public RecoveryMachine ToMachine(DocumentNode node) => node.Build(() =>
    {
        RecoveryMachine machine = RecoveryMachine.FromDisplacement(new VolumeFlow(DisplacementLitersPerSecond / 1e3, VolumeFlowUnit.CubicMeterPerSecond));
        return machine with
        {
            ClearanceRatio = ClearanceRatio ?? machine.ClearanceRatio,
            PolytropicExponent = PolytropicExponent ?? machine.PolytropicExponent,
            VolumetricEfficiency = VolumetricEfficiency ?? machine.VolumetricEfficiency,
            LeakageTerm = LeakageTerm ?? machine.LeakageTerm,
            IsentropicEfficiency = IsentropicEfficiency ?? machine.IsentropicEfficiency,
            LowPressureSwitch = LowPressureSwitchKilopascalsAbsolute is double low ? Plain.PressureOf(low) : null,
            HighPressureCutout = HighPressureCutoutKilopascalsAbsolute is double high ? Plain.PressureOf(high) : machine.HighPressureCutout,
            InternalVolume = InternalVolumeLiters is double volume ? Plain.VolumeOf(volume) : machine.InternalVolume,
            Condenser = Condenser?.ToCondenser(node.Member("condenser")) ?? machine.Condenser,
            ListedForFlammable = ListedForFlammable ?? machine.ListedForFlammable,
            ManufactureDate = ManufactureDate,
        };
    });
}
