using System;
using Refrigerant.Recovery.Equipment;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>A recovery machine.</summary>
internal sealed record MachineDocument
{
    /// <summary>Displacement rate S: swept volume times speed; from 1e-7 to 10 m³/s.</summary>
    public required double DisplacementLitersPerSecond { get; init; }

    /// <summary>Clearance volume over swept volume c, 0 to 0.5; 0.04 by default.</summary>
    public double? ClearanceRatio { get; init; }

    /// <summary>Polytropic exponent of re-expansion n, 1 to 1.7; 1.15 by default.</summary>
    public double? PolytropicExponent { get; init; }

    /// <summary>Volumetric efficiency at pressure ratio one, leakage not counted, η0, 0.05 to 1; 1 by default.</summary>
    public double? VolumetricEfficiency { get; init; }

    /// <summary>Loss of volumetric efficiency by leakage for each unit of pressure ratio k, 0 to 0.04; none by default.</summary>
    public double? LeakageTerm { get; init; }

    /// <summary>Isentropic efficiency of the compression, 0.1 to 1; 0.65 by default.</summary>
    public double? IsentropicEfficiency { get; init; }

    /// <summary>Absolute suction pressure at which its low-pressure switch stops it; none by default.</summary>
    public double? LowPressureSwitchKilopascalsAbsolute { get; init; }

    /// <summary>Absolute discharge pressure at which its high-pressure cut-out stops it; 3.89 MPa (550 psi gauge) by default.</summary>
    public double? HighPressureCutoutKilopascalsAbsolute { get; init; }

    /// <summary>Internal volume, where refrigerant stays trapped until it is cleared; 0 to 1 m³, 1 L by default (common practice, no source).</summary>
    public double? InternalVolumeLiters { get; init; }

    /// <summary>The condenser; air-cooled and sized to the displacement by default (common practice, no source).</summary>
    public CondenserDocument? Condenser { get; init; }

    /// <summary>Whether its body counts; true by default. False: nothing warms the suction gas, and discharge gas is as hot as compression makes it.</summary>
    public bool? HasBody { get; init; }

    /// <summary>The body that gas and friction warm; typical for the displacement by default. Left out where hasBody is false.</summary>
    public BodyDocument? Body { get; init; }

    /// <summary>Whether gas passes its valves by itself while the pressure behind it is below that before it; true by default.</summary>
    public bool? GasPassesThrough { get; init; }

    /// <summary>Temperature of the discharge gas at which a thermal cut-out stops it, 50 °C to 300 °C; none by default.</summary>
    public double? ThermalCutoutCelsius { get; init; }

    /// <summary>Whether it may draw liquid through a throttled inlet, as its maker says; true by default (common practice, no source).</summary>
    public bool? TakesLiquid { get; init; }

    /// <summary>The most liquid that it moves, as rated, 1e-5 to 100 kg/s; not limited beyond its displacement where it is left out.</summary>
    public double? LiquidRateKilogramsPerSecond { get; init; }

    /// <summary>Conductance with which vapor that it pushes in a push-pull condenses on an appliance's metal, 0.1 to 1e6 W/(m²·K) of the surface of a cube of the appliance's volume; typical where it is left out.</summary>
    public double? CondensingCoefficientWattsPerSquareMeterKelvin { get; init; }

    /// <summary>Whether its compressor runs without oil; false by default.</summary>
    public bool? IsOilless { get; init; }

    /// <summary>Whether it is listed for flammable refrigerants.</summary>
    public bool? ListedForFlammable { get; init; }

    /// <summary>Date of manufacture, which decides the required evacuation level (40 CFR 82.156); today's levels where it is left out.</summary>
    public DateTime? ManufactureDate { get; init; }

    public static MachineDocument From(RecoveryMachine machine) => new()
    {
        DisplacementLitersPerSecond = Exact.Number(machine.Displacement.LitersPerSecond),
        ClearanceRatio = Exact.Number(machine.ClearanceRatio),
        PolytropicExponent = Exact.Number(machine.PolytropicExponent),
        VolumetricEfficiency = Exact.Number(machine.VolumetricEfficiency),
        LeakageTerm = Exact.Number(machine.LeakageTerm),
        IsentropicEfficiency = Exact.Number(machine.IsentropicEfficiency),
        LowPressureSwitchKilopascalsAbsolute = machine.LowPressureSwitch is Pressure low ? Exact.Kilopascals(low) : null,
        HighPressureCutoutKilopascalsAbsolute = Exact.Kilopascals(machine.HighPressureCutout),
        InternalVolumeLiters = Exact.Liters(machine.InternalVolume),
        Condenser = CondenserDocument.From(machine.Condenser),
        HasBody = machine.Body is not null,
        Body = machine.Body is MachineBody body ? BodyDocument.From(body) : null,
        GasPassesThrough = machine.GasPassesThrough,
        ThermalCutoutCelsius = machine.ThermalCutout is Temperature hottest ? Exact.Celsius(hottest) : null,
        TakesLiquid = machine.TakesLiquid,
        LiquidRateKilogramsPerSecond = machine.LiquidRate is MassFlow liquid ? Exact.Number(liquid.KilogramsPerSecond) : null,
        CondensingCoefficientWattsPerSquareMeterKelvin = machine.CondensingCoefficient is double coefficient ? Exact.Number(coefficient) : null,
        IsOilless = machine.IsOilless,
        ListedForFlammable = machine.ListedForFlammable,
        ManufactureDate = machine.ManufactureDate,
    };

    public RecoveryMachine ToMachine(DocumentNode node) => node.Build(() =>
    {
        RecoveryMachine machine = RecoveryMachine.FromDisplacement(new VolumeFlow(DisplacementLitersPerSecond, VolumeFlowUnit.LiterPerSecond));
        return machine with
        {
            ClearanceRatio = ClearanceRatio ?? machine.ClearanceRatio,
            PolytropicExponent = PolytropicExponent ?? machine.PolytropicExponent,
            VolumetricEfficiency = VolumetricEfficiency ?? machine.VolumetricEfficiency,
            LeakageTerm = LeakageTerm ?? machine.LeakageTerm,
            IsentropicEfficiency = IsentropicEfficiency ?? machine.IsentropicEfficiency,
            LowPressureSwitch = LowPressureSwitchKilopascalsAbsolute is double low ? Exact.PressureOf(low) : null,
            HighPressureCutout = HighPressureCutoutKilopascalsAbsolute is double high ? Exact.PressureOf(high) : machine.HighPressureCutout,
            InternalVolume = InternalVolumeLiters is double volume ? Exact.VolumeOf(volume) : machine.InternalVolume,
            Condenser = Condenser?.ToCondenser(node.Member("condenser")) ?? machine.Condenser,
            Body = ToBody(node, machine.Body),
            GasPassesThrough = GasPassesThrough ?? machine.GasPassesThrough,
            ThermalCutout = ThermalCutoutCelsius is double hottest ? Exact.TemperatureOf(hottest) : null,
            TakesLiquid = TakesLiquid ?? machine.TakesLiquid,
            LiquidRate = LiquidRateKilogramsPerSecond is double liquid ? new MassFlow(liquid, MassFlowUnit.KilogramPerSecond) : null,
            CondensingCoefficient = CondensingCoefficientWattsPerSquareMeterKelvin,
            IsOilless = IsOilless ?? machine.IsOilless,
            ListedForFlammable = ListedForFlammable ?? machine.ListedForFlammable,
            ManufactureDate = ManufactureDate,
        };
    });

    private MachineBody? ToBody(DocumentNode node, MachineBody? typical) => (HasBody, Body) switch
    {
        (false, null) => null,
        (false, not null) => throw node.Member("hasBody").Wrong("leave body out, or hasBody."),
        _ => Body?.ToBody(node.Member("body")) ?? typical,
    };
}
