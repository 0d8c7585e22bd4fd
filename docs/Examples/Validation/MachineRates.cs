using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using UnitsNet;

namespace Refrigerant.Recovery.Docs.Validation;

/// <summary>Rates of liquid and of push-pull over the rate of vapor.</summary>
internal static class MachineRates
{
    /// <summary>Inside is what comes within this factor one way or the other.</summary>
    public const double Factor = 2;

    /// <summary>Name, refrigerant, rates of vapor and of the other way in lb/min, bore of the hoses in mm.</summary>
    public static IReadOnlyList<(string Name, string Refrigerant, double Vapor, double Other, double Bore)> Cases { get; } =
    [
        ("twin-cylinder machine, liquid (read second hand)", "R-410A", 0.55, 17.2, 7.9),
        ("large machine, push-pull (common practice, no source)", "R-134a", 2, 80, 12.7),
        ("workshop of instructors: pull 5, push 15", "R-22", 5, 15, 7.9),
        ("direct liquid, up to ten times the vapor (trade article)", "R-22", 0.5, 5, 7.9),
    ];

    /// <summary>Rates of liquid through the machine and of push-pull over that of vapor, of a machine that is fitted to its vapor rate alone.</summary>
    public static (double Liquid, double PushPull) Ratios(string refrigerant, double vaporPounds, double bore)
    {
        var fluid = Fluid.Get(refrigerant);
        RecoveryMachine machine = RatingTest.Fit(new MachineRatings { Fluid = fluid, VaporRate = MassFlow.FromPoundsPerMinute(vaporPounds) }).Machine;
        Hose hose = new() { Length = Length.FromMeters(3), InnerDiameter = Length.FromMillimeters(bore) };
        HoseSet hoses = new() { VaporSide = [hose], LiquidSide = [hose], Discharge = [hose] };
        double kilograms = vaporPounds >= 2 ? 400 : 40;
        Appliance appliance = new()
        {
            Fluid = fluid,
            Charge = Mass.FromKilograms(kilograms),
            InternalVolume = Volume.FromLiters(2 * kilograms),
            Temperature = Temperature.FromDegreesCelsius(24),
            LiquidReachable = true,
        };
        RecoveryCylinder cylinder = new()
        {
            Label = "C1",
            WaterCapacity = Mass.FromKilograms(2 * kilograms),
            TareWeight = Mass.FromKilograms(kilograms),
            ServicePressure = Pressure.FromPoundsForcePerSquareInch(400),
            Content = Mass.FromKilograms(0.1 * kilograms),
        };
        StageResult liquid = LiquidRecovery.Simulate(appliance, machine, hoses, cylinder, new LiquidRecoveryOptions());
        StageResult pushPull = PushPull.Simulate(appliance, machine, hoses, cylinder, new PushPullOptions());
        return (liquid.AverageRate.PoundsPerMinute / vaporPounds, pushPull.AverageRate.PoundsPerMinute / vaporPounds);
    }

    /// <summary>Prints said and simulated ratios.</summary>
    public static void Print()
    {
        Console.WriteLine("| rate over that of vapor | refrigerant | said | liquid through the machine | push-pull | verdict |");
        Console.WriteLine("|---|---|--:|--:|--:|---|");
        foreach ((string name, string refrigerant, double vapor, double other, double bore) in Cases)
        {
            (double liquid, double pushPull) = Ratios(refrigerant, vapor, bore);
            double said = other / vapor;
            double off = Math.Min(Off(liquid, said), Off(pushPull, said));
            Console.WriteLine($"| {name} | {refrigerant} | {said:F0} | {liquid:F0} | {pushPull:F0} | {(off <= Factor ? "inside" : $"outside: {off:F1} times")} |");
        }
    }

    private static double Off(double ours, double said) => Math.Max(ours / said, said / ours);
}
