#region usings
using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>How long will it take?</summary>
internal static class HowLong
{
    public static void Vapor()
    {
        #region vapor
        Appliance appliance = new()
        {
            Fluid = Fluid.Get("R-134a"),
            Charge = Mass.FromKilograms(10),
            InternalVolume = Volume.FromLiters(40),
            Temperature = Temperature.FromDegreesCelsius(24),
        };
        RecoveryMachine machine = RecoveryMachine.FromDisplacement(
            VolumeFlow.FromLitersPerSecond(0.5));
        Hose hose = new()
        {
            Length = Length.FromFeet(6),
            InnerDiameter = Length.FromMillimeters(8),
        };
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark(
            "DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5));
        Pressure level = EvacuationRequirement
            .For(appliance.Fluid, appliance.Charge).RequiredPressure;

        VaporRecoveryResult result = VaporRecovery.Simulate(
            appliance,
            machine,
            new HoseSet { VaporSide = [hose] },
            cylinder,
            new VaporRecoveryOptions { TargetPressure = level });

        Console.WriteLine($"ends:      {result.End} after {result.Duration.Minutes:F0} min");
        Console.WriteLine($"recovered: {result.RecoveredMass.Kilograms:F2} kg");
        Console.WriteLine($"left:      {result.RemainingMass.Kilograms:F2} kg, "
            + $"{result.Appliance.LiquidMass.Kilograms:F2} kg of it liquid");
        foreach (Finding finding in result.Findings)
        {
            Console.WriteLine(finding);
        }
        #endregion
    }

    /// <summary>The same job with another resistance between the appliance and its surroundings, in K/W.</summary>
    public static VaporRecoveryResult WithHeat(double resistance) => VaporRecovery.Simulate(
        new Appliance
        {
            Fluid = Fluid.Get("R-134a"),
            Charge = Mass.FromKilograms(10),
            InternalVolume = Volume.FromLiters(40),
            Temperature = Temperature.FromDegreesCelsius(24),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(resistance),
        },
        RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
        new HoseSet { VaporSide = [new Hose { Length = Length.FromFeet(6), InnerDiameter = Length.FromMillimeters(8) }] },
        RecoveryCylinder.FromMark("DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)),
        new VaporRecoveryOptions { TargetPressure = Barometer.Standard.FromVacuum(Mercury.FromInches(10)) });
}
