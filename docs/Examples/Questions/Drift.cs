#region usings
using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>What drawing vapor does to a blend.</summary>
internal static class Drift
{
    public static void Print()
    {
        Follow("R-407C");
        Follow("R-448A");
    }

    private static void Follow(string blend)
    {
        #region drift
        Appliance appliance = new()
        {
            Fluid = Fluid.Get(blend),
            Charge = Mass.FromKilograms(10),
            InternalVolume = Volume.FromLiters(50),
            Temperature = Temperature.FromDegreesCelsius(24),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.02),
        };
        Hose hose = new()
        {
            Length = Length.FromMeters(3),
            InnerDiameter = Length.FromMillimeters(10),
        };
        StageResult Draw(CompositionMode mode) => VaporRecovery.Simulate(
            appliance,
            RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
            new HoseSet { VaporSide = [hose] },
            RecoveryCylinder.FromMark("DOT-4BA400", Mass.FromPounds(123), Mass.FromPounds(55)),
            new VaporRecoveryOptions
            {
                TargetPressure = Pressure.FromKilopascals(50),
                Composition = mode,
            });

        StageResult tracked = Draw(CompositionMode.Tracked);
        StageResult asCharged = Draw(CompositionMode.Fixed);
        FractionationPoint last = tracked.Fractionation!.LastLiquid!;
        string liquid = string.Join(
            ", ", last.Liquid!.Select(c => $"{c.Designation} {100 * c.MassFraction:F0} %"));

        Console.WriteLine($"{blend}: the last liquid is {liquid}");
        Console.WriteLine($"  it boils at {last.Pressure.Kilopascals:F0} kPa, "
            + $"as charged it would at {last.FixedCompositionPressure.Kilopascals:F0} kPa");
        Console.WriteLine($"  {tracked.Duration.Minutes:F1} min and "
            + $"{tracked.RemainingMass.Grams:F0} g left, composition followed");
        Console.WriteLine($"  {asCharged.Duration.Minutes:F1} min and "
            + $"{asCharged.RemainingMass.Grams:F0} g left, composition as charged");
        #endregion
    }
}
