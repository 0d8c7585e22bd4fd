#region usings
using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Processes;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>A vacuum over cold liquid.</summary>
internal static class ColdPool
{
    public static void Run()
    {
        #region pool
        // The worst case: no heat reaches the appliance at all.
        Appliance appliance = new()
        {
            Fluid = Fluid.Get("R-134a"),
            Charge = Mass.FromKilograms(10),
            InternalVolume = Volume.FromLiters(50),
            Temperature = Temperature.FromDegreesCelsius(24),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1e6),
        };
        Hose hose = new()
        {
            Length = Length.FromFeet(6),
            InnerDiameter = Length.FromMillimeters(8),
        };
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark(
            "DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5));
        Pressure target = Barometer.Standard.FromVacuum(Mercury.FromInches(15));

        StageResult pull = VaporRecovery.Simulate(
            appliance,
            RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
            new HoseSet { VaporSide = [hose] },
            cylinder,
            new VaporRecoveryOptions { TargetPressure = target });

        Console.WriteLine($"15 inHg after {pull.Duration.Minutes:F0} min");
        Console.WriteLine($"left: {pull.RemainingMass.Kilograms:F1} kg, "
            + $"{pull.Appliance.LiquidMass.Kilograms:F1} kg of it liquid "
            + $"at {pull.Appliance.Temperature.DegreesCelsius:F0} °C");
        #endregion
    }
}
