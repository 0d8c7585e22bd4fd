using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Controller;

/// <summary>An invented scenario: what was told of it, what it is in truth, what goes wrong.</summary>
internal sealed record Scenario
{
    public required string Name { get; init; }

    /// <summary>The job as it was planned.</summary>
    public required RecoveryJob Told { get; init; }

    /// <summary>The appliance as it is: charge and heat are seldom what was told.</summary>
    public required Appliance InTruth { get; init; }

    /// <summary>When the suction hose is kinked.</summary>
    public Interval Kink { get; init; }

    /// <summary>How much of the way stays open in the kink.</summary>
    public double KinkOpening { get; init; } = 0.2;

    /// <summary>When a hose lies on the scale.</summary>
    public Interval HoseOnScale { get; init; }

    /// <summary>What it weighs, kg.</summary>
    public double HosePull { get; init; } = 0.6;

    /// <summary>When the suction gauge shows nothing.</summary>
    public Interval GaugeSilent { get; init; }

    public static Scenario[] All() =>
    [
        Of("a cold-drink cabinet; the gauge falls silent for 4 s, then a hose drags on the scale", "R-134a", 4, 11, 25, 1.15, 0.2) with
        {
            GaugeSilent = new Interval(120, 124),
            HoseOnScale = new Interval(200, 380),
        },
        Of("a display case into a cylinder that is nearly full", "R-22", 6, 15, 25, 0.95, 17),
        Of("a rooftop unit in the heat, whose pressure the cylinder cannot take", "R-32", 6, 16, 52, 1, 1),
        Of("a cold room; the suction hose is kinked from minute 1 to minute 5", "R-404A", 7, 20, 22, 0.9, 1) with { Kink = new Interval(60, 300) },
    ];

    private static Scenario Of(string name, string fluid, double kilograms, double liters, double celsius, double truth, double inCylinder)
    {
        var appliance = new Appliance
        {
            Fluid = Fluid.Get(fluid),
            Charge = Mass.FromKilograms(kilograms),
            InternalVolume = Volume.FromLiters(liters),
            Temperature = Temperature.FromDegreesCelsius(celsius),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.02),
            MetalMass = Mass.FromKilograms(3 * kilograms),
        };
        var hose = new Hose { Length = Length.FromMeters(1.5), InnerDiameter = Length.FromMillimeters(8) };
        return new Scenario
        {
            Name = name,
            Told = new RecoveryJob
            {
                Appliance = appliance,
                Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.6)),
                Hoses = new HoseSet { VaporSide = [hose], Discharge = [hose] },
                Cylinders =
                [
                    RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)) with
                    {
                        Label = "C1",
                        Content = Mass.FromKilograms(inCylinder),
                        Refrigerant = fluid,
                    },
                ],
            },
            InTruth = appliance with { Charge = Mass.FromKilograms(truth * kilograms) },
        };
    }
}
