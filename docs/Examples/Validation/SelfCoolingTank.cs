using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Processes;
using UnitsNet;

namespace Refrigerant.Recovery.Docs.Validation;

/// <summary>A tank of liquefied gas that is drained of its liquid within seconds and cools itself: where the pressure stands when the liquid ends.</summary>
/// <remarks>
/// Nitrous oxide, a public student record of 2019 (read): 11.7 kg from 659 psig, the liquid ends near 425 psig; 7.7 kg from 588 psig, near 390 psig. Not reported, with the range
/// taken: filled to 70 to 95 % with liquid; metal that follows the liquid 0 to 0.5 kJ/K for each kg of content. The pressure at the end follows from the energy, not from the orifice.
/// </remarks>
internal static class SelfCoolingTank
{
    /// <summary>Content in kg, gauge pressures in psi at the start and where the liquid ends.</summary>
    public static IReadOnlyList<(double Kilograms, double Start, double End)> Runs { get; } = [(11.7, 659, 425), (7.7, 588, 390)];

    private static readonly double[] Fills = [0.7, 0.95];
    private static readonly double[] Metals = [0, 500];

    /// <summary>Gauge pressure where the liquid ends, psi, over the ranges.</summary>
    public static (double Least, double Most) AtEnd(double kilograms, double start)
    {
        double[] all = [.. from fill in Fills from metal in Metals select AtEnd(kilograms, start, fill, metal)];
        return (all.Min(), all.Max());
    }

    /// <summary>Prints measured and simulated pressures.</summary>
    public static void Print()
    {
        Console.WriteLine("| nitrous oxide | from, psig | liquid ends, psig | simulated, psig | verdict |");
        Console.WriteLine("|---|--:|--:|--:|---|");
        foreach ((double kilograms, double start, double end) in Runs)
        {
            (double least, double most) = AtEnd(kilograms, start);
            string verdict = end < least ? $"outside: {(least / end) - 1:P0} more" : end > most ? $"outside: {1 - (most / end):P0} less" : "inside";
            Console.WriteLine($"| {kilograms} kg | {start} | {end} | {least:F0} to {most:F0} | {verdict} |");
        }
    }

    private static double AtEnd(double kilograms, double start, double fill, double metal)
    {
        Fluid fluid = NitrousOxide.Fluid;
        SaturationState at = fluid.SaturationAt(Barometer.Standard.FromGauge(Pressure.FromPoundsForcePerSquareInch(start)));
        double density = (fill * at.Bubble.Density.KilogramsPerCubicMeter) + ((1 - fill) * at.Dew.Density.KilogramsPerCubicMeter);
        Hose wide = new() { Length = Length.FromMeters(1), InnerDiameter = Length.FromMillimeters(40) };
        StageResult drained = LiquidRecovery.Simulate(
            new Appliance
            {
                Fluid = fluid,
                Charge = Mass.FromKilograms(kilograms),
                InternalVolume = Volume.FromCubicMeters(kilograms / density),
                Temperature = at.Bubble.Temperature,
                HeatResistance = Appliance.PerfectInsulation,
                MetalMass = Mass.FromKilograms(metal * kilograms / 480),
                LiquidReachable = true,
                LiquidHeel = Mass.Zero,
            },
            RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(2.5)),
            new HoseSet { VaporSide = [wide], LiquidSide = [wide], Discharge = [wide] },
            new RecoveryCylinder { WaterCapacity = Mass.FromKilograms(2000), TareWeight = Mass.FromKilograms(100), ServicePressure = Pressure.FromPoundsForcePerSquareInch(2000), Content = Mass.FromKilograms(30) },
            new LiquidRecoveryOptions { CylinderLimit = Mass.FromKilograms(500) });
        return Barometer.Standard.ToGauge(drained.Appliance.Pressure).PoundsForcePerSquareInch;
    }
}
