using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using UnitsNet;

namespace Refrigerant.Recovery.Docs.Validation;

/// <summary>What a valve core costs: at its port, and over a pull of vapor.</summary>
/// <remarks>Trade press: a core blocks some 90 % of the flow through its port, and taking it out about doubles the speed of a recovery.</remarks>
internal static class ValveCores
{
    public const double SaidAtThePort = 10;
    public const double SaidInTheJob = 2;

    /// <summary>Lengths and bores of hoses of a quarter inch, m and mm.</summary>
    public static IReadOnlyList<(double Meters, double Millimeters)> Hoses { get; } = [(1.5, 4.8), (1.5, 6.3), (0.9, 7.9)];

    private static readonly Fitting Open = Fitting.FromLossCoefficient("open port", 1.5, Length.FromMillimeters(5));

    /// <summary>Time with the core over that without it, through a hose; as good as none where the hose is as short and wide as can be.</summary>
    public static double InTheJob(double meters, double millimeters) =>
        Pull(Fitting.CoreDepressor(), meters, millimeters, 0.5) / Pull(Open, meters, millimeters, 0.5);

    /// <summary>The same where nothing but the port holds back.</summary>
    public static double AtThePort() => Pull(Fitting.CoreDepressor(), 1e-3, 100, 50) / Pull(Open, 1e-3, 100, 50);

    /// <summary>Prints both.</summary>
    public static void Print()
    {
        Console.WriteLine("| without the core over with it | said | simulated |");
        Console.WriteLine("|---|--:|--:|");
        Console.WriteLine($"| flow, where nothing but the port holds back | {SaidAtThePort:F0} | {AtThePort():F1} |");
        foreach ((double meters, double millimeters) in Hoses)
        {
            Console.WriteLine($"| speed of a pull of vapor, {meters} m of {millimeters} mm | {SaidInTheJob:F0} | {InTheJob(meters, millimeters):F1} |");
        }
    }

    /// <summary>Minutes to pull vapor of R-22 from 600 to 100 kPa.</summary>
    private static double Pull(Fitting port, double meters, double millimeters, double litersPerSecond)
    {
        Hose hose = new() { Length = Length.FromMeters(meters), InnerDiameter = Length.FromMillimeters(millimeters), Fittings = [port] };
        Hose wide = new() { Length = Length.FromMeters(1), InnerDiameter = Length.FromMillimeters(50) };
        Appliance appliance = new()
        {
            Fluid = Fluid.Get("R-22"),
            Charge = Mass.FromKilograms(2.4),
            InternalVolume = Volume.FromLiters(100),
            Temperature = Temperature.FromDegreesCelsius(24),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1e-4),
            MetalMass = Mass.Zero,
        };
        return VaporRecovery.Simulate(
            appliance,
            RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(litersPerSecond)),
            new HoseSet { VaporSide = [hose], Discharge = [wide] },
            RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(123), Mass.FromPounds(60)),
            new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(100) }).Duration.Minutes;
    }
}
