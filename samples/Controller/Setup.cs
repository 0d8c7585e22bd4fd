using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Rules;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Controller;

/// <summary>An invented setup: what is emptied, into what, where. SI doubles, read once from the typed API before the loop starts.</summary>
internal sealed record Setup
{
    public required string Name { get; init; }

    public required Fluid Fluid { get; init; }

    public required double Charge { get; init; }

    public required double ApplianceVolume { get; init; }

    public required RecoveryCylinder Cylinder { get; init; }

    /// <summary>When the condenser fan fails, s; never by default.</summary>
    public double FanStops { get; init; } = double.PositiveInfinity;

    public double Surroundings { get; init; } = 298.15;

    public double ApplianceConductance { get; init; } = 80;

    public double CylinderConductance { get; init; } = 15;

    public double CondenserConductance { get; init; } = 120;

    public RecoveryMachine Machine { get; } = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.6));

    public double Displacement => Machine.Displacement.CubicMetersPerSecond;

    public double CylinderVolume => Cylinder.InternalVolume.CubicMeters;

    public double CylinderContent => Cylinder.Content.Kilograms;

    /// <summary>A controller with the level, the limit and the cut-out of this setup.</summary>
    public RecoveryController CreateController() => new(
        EvacuationRequirement.For(Fluid, Mass.FromKilograms(Charge)).RequiredPressure.Pascals,
        CylinderFill.Limit(Cylinder, Fluid).MaximumFill.Kilograms,
        Machine.HighPressureCutout.Pascals);

    public static Setup[] All() =>
    [
        new()
        {
            Name = "a cold-drink cabinet into an empty cylinder",
            Fluid = Fluid.Get("R-134a"),
            Charge = 4,
            ApplianceVolume = 0.011,
            Cylinder = Cylinder50(0.2),
        },
        new()
        {
            Name = "a display case into a cylinder that is nearly full",
            Fluid = Fluid.Get("R-22"),
            Charge = 6,
            ApplianceVolume = 0.015,
            Cylinder = Cylinder50(17),
        },
        new()
        {
            Name = "a rooftop unit, and the condenser fan fails after three minutes",
            Fluid = Fluid.Get("R-32"),
            Charge = 6,
            ApplianceVolume = 0.016,
            Cylinder = Cylinder50(1),
            CondenserConductance = 400,
            FanStops = 180,
        },
    ];

    private static RecoveryCylinder Cylinder50(double content) =>
        RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)) with { Content = Mass.FromKilograms(content) };
}
