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

    public static void Liquid()
    {
        #region liquid
        // The liquid can be reached: push-pull moves it, then vapor recovery takes the rest.
        Appliance appliance = new()
        {
            Fluid = Fluid.Get("R-134a"),
            Charge = Mass.FromKilograms(18),
            InternalVolume = Volume.FromLiters(40),
            Temperature = Temperature.FromDegreesCelsius(24),
            LiquidReachable = true,
            LiquidHeel = Mass.FromKilograms(1),
        };
        RecoveryMachine machine = RecoveryMachine.FromDisplacement(
            VolumeFlow.FromLitersPerSecond(0.5));
        Hose hose = new()
        {
            Length = Length.FromFeet(6),
            InnerDiameter = Length.FromMillimeters(8),
        };
        HoseSet hoses = new() { VaporSide = [hose], LiquidSide = [hose], Discharge = [hose] };
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark(
            "DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)) with
        {
            Content = Mass.FromKilograms(1), // equalized with the appliance first
            Refrigerant = "R-134a",
        };
        Pressure level = EvacuationRequirement
            .For(appliance.Fluid, appliance.Charge).RequiredPressure;

        PushPullResult push = PushPull.Simulate(
            appliance, machine, hoses, cylinder, new PushPullOptions());
        VaporRecoveryResult rest = VaporRecovery.Simulate(
            appliance,
            machine,
            hoses,
            cylinder,
            new VaporRecoveryOptions
            {
                Start = push.Appliance,
                CylinderStart = push.Cylinder,
                TargetPressure = level,
            });
        VaporRecoveryResult vaporOnly = VaporRecovery.Simulate(
            appliance,
            machine,
            hoses,
            cylinder,
            new VaporRecoveryOptions { TargetPressure = level });

        Console.WriteLine($"push-pull:  {push.Duration.Minutes,5:F1} min, "
            + $"{push.RecoveredMass.Kilograms:F1} kg, pace set by: {push.Limit}");
        Console.WriteLine($"then vapor: {rest.Duration.Minutes,5:F1} min, "
            + $"{rest.RecoveredMass.Kilograms:F1} kg");
        Console.WriteLine($"vapor only: {vaporOnly.Duration.Minutes,5:F1} min");
        foreach (Finding finding in push.Findings)
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
