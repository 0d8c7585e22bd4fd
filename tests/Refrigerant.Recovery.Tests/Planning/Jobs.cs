using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Invented jobs for the tests of plans.</summary>
internal static class Jobs
{
    public static RecoveryCylinder Cylinder(double waterCapacityPounds, string label = "C") =>
        RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(waterCapacityPounds), Mass.FromPounds((waterCapacityPounds * 0.3) + 12)) with { Label = label };

    public static Hose Hose(double feet = 10, double boreMillimeters = 10.5) => new()
    {
        Length = Length.FromFeet(feet),
        InnerDiameter = Length.FromMillimeters(boreMillimeters),
    };

    public static HoseSet Hoses(double feet = 10, double boreMillimeters = 10.5) => new()
    {
        VaporSide = [Hose(feet, boreMillimeters)],
        LiquidSide = [Hose(feet, boreMillimeters)],
        Discharge = [Hose(feet, boreMillimeters)],
    };

    /// <summary>A water chiller with liquid that can be reached.</summary>
    public static RecoveryJob Chiller(string fluid = "R-134a", double kilograms = 60, double litersPerKilogram = 2.3, int cylinders = 2) => new()
    {
        Appliance = new Appliance
        {
            Fluid = Fluid.Get(fluid),
            Charge = Mass.FromKilograms(kilograms),
            InternalVolume = Volume.FromLiters(kilograms * litersPerKilogram),
            Temperature = Temperature.FromDegreesCelsius(18),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.01),
            MetalMass = Mass.FromKilograms(10 * kilograms),
            LiquidReachable = true,
            LiquidHeel = Mass.FromKilograms(0.05 * kilograms),
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.8)),
        Hoses = Hoses(),
        Cylinders = [.. Enumerable.Range(1, cylinders).Select(i => Cylinder(123, $"C{i}"))],
    };
}
