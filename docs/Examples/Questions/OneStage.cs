#region usings
using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>One stage simulated by itself, and a machine known by its ratings.</summary>
internal static class OneStage
{
    public static void Vapor()
    {
        #region vapor
        RecoveryJob job = ExampleJob.Create();
        StageResult result = VaporRecovery.Simulate(
            job.Appliance,
            job.Machine,
            job.Hoses,
            job.Cylinders[0],
            new VaporRecoveryOptions
            {
                TargetPressure = Barometer.Standard.FromVacuum(Mercury.FromInches(10)),
            });

        Console.WriteLine($"ends: {result.End} after {result.Duration.Minutes:F0} min");
        Console.WriteLine($"recovered: {result.RecoveredMass.Kilograms:F1} kg");
        Console.WriteLine($"left: {result.RemainingMass.Kilograms:F1} kg");
        #endregion
    }

    public static void Ratings()
    {
        #region ratings
        // An invented machine, sold by these three figures.
        RatingFit fit = RatingTest.Fit(new MachineRatings
        {
            Fluid = Fluids.Fluid.Get("R-22"),
            VaporRate = MassFlow.FromKilogramsPerMinute(0.25),
            PushPullRate = MassFlow.FromKilogramsPerMinute(12),
            FinalVacuum = Barometer.Standard.FromVacuum(Mercury.FromInches(15)),
        });

        RecoveryMachine machine = fit.Machine;
        Console.WriteLine($"displacement {machine.Displacement.LitersPerSecond:F2} L/s, "
            + $"clearance {machine.ClearanceRatio * 100:F1} %");
        foreach (RatingDeviation rating in fit.Deviations)
        {
            Console.WriteLine($"{rating.Rating}: {rating.Relative.Percent:+0.0;-0.0;0.0} %"
                + (rating.IsFitted ? " (fitted)" : ""));
        }
        #endregion
    }

    /// <summary>The example job's appliance without metal, with a resistance to its surroundings in K/W, emptied by vapor alone.</summary>
    public static StageResult WithHeat(double resistance)
    {
        RecoveryJob job = ExampleJob.Create();
        return VaporRecovery.Simulate(
            job.Appliance with
            {
                Charge = Mass.FromKilograms(18),
                Oil = null,
                MetalMass = Mass.Zero,
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(resistance),
            },
            job.Machine,
            job.Hoses,
            job.Cylinders[0],
            new VaporRecoveryOptions { TargetPressure = Barometer.Standard.FromVacuum(Mercury.FromInches(10)) });
    }
}
