using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using UnitsNet;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>Setups that several tests share; all invented.</summary>
internal static class Setups
{
    public static ThermalResistance Conductance(double wattsPerKelvin) => ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / wattsPerKelvin);

    public static Appliance Appliance(string fluid, double kilograms, double liters, double celsius, double? conductance) => new()
    {
        Fluid = Fluid.Get(fluid),
        Charge = Mass.FromKilograms(kilograms),
        InternalVolume = Volume.FromLiters(liters),
        Temperature = Temperature.FromDegreesCelsius(celsius),
        MetalMass = Mass.Zero,
        HeatResistance = conductance is double given ? Conductance(given) : null,
    };

    public static RecoveryMachine Ideal(double litersPerSecond) => RecoveryMachine.Ideal(VolumeFlow.FromLitersPerSecond(litersPerSecond));

    public static RecoveryMachine Machine(double litersPerSecond) =>
        RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(litersPerSecond));

    public static RecoveryCylinder Cylinder(double waterKilograms = 21.6, double content = 0) => new()
    {
        Label = "C1",
        WaterCapacity = Mass.FromKilograms(waterKilograms),
        TareWeight = Mass.FromKilograms(0.6 * waterKilograms),
        ServicePressure = Pressure.FromPoundsForcePerSquareInch(400),
        Content = Mass.FromKilograms(content),
    };

    public static Hose Hose(double meters, double millimeters, params Fitting[] fittings) => new()
    {
        Length = Length.FromMeters(meters),
        InnerDiameter = Length.FromMillimeters(millimeters),
        Fittings = fittings,
    };

    public static HoseSet Hoses(double meters = 3, double millimeters = 10) => new()
    {
        VaporSide = [Hose(meters, millimeters)],
        LiquidSide = [Hose(meters, millimeters)],
        Discharge = [Hose(meters, millimeters)],
    };

    /// <summary>The machine draws at the appliance's own pressure, against a fixed discharge pressure.</summary>
    public static StageResult WithoutHoses(Appliance appliance, RecoveryMachine machine, VaporRecoveryOptions options) =>
        VaporRecovery.Run(appliance, machine, null, null, options);
}
