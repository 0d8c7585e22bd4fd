#region usings
using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Processes;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>What would make it faster?</summary>
internal static class Faster
{
    #region change
    /// <summary>The job with one thing changed, and how many minutes it takes.</summary>
    public static IEnumerable<(string Change, double Minutes)> Compare()
    {
        Hose thin = new()
        {
            Length = Length.FromFeet(6),
            InnerDiameter = Length.FromMillimeters(5),
            Fittings = [Fitting.CoreDepressor()],
        };
        Hose noCore = thin with { Fittings = [] };
        Hose wide = noCore with { InnerDiameter = Length.FromMillimeters(8) };
        Hose shortWide = wide with { Length = Length.FromFeet(3) };
        RecoveryMachine machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5));
        RecoveryMachine cooled = machine with
        {
            Condenser = machine.Condenser with { CoolantTemperature = Temperature.FromDegreesCelsius(12) },
        };
        RecoveryMachine twice = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(1));
        Appliance fansOff = Job with { HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.02) };
        Appliance warm = Job with { Temperature = Temperature.FromDegreesCelsius(35) };

        yield return ("as it stands", Minutes(Job, machine, thin));
        yield return ("valve core removed", Minutes(Job, machine, noCore));
        yield return ("and 8 mm instead of 5 mm bore", Minutes(Job, machine, wide));
        yield return ("and 3 ft instead of 6 ft", Minutes(Job, machine, shortWide));
        yield return ("and the condenser cooled to 12 °C", Minutes(Job, cooled, shortWide));
        yield return ("and the appliance in air of 35 °C", Minutes(warm, cooled, shortWide));
        yield return ("as it stands, but with a machine twice as large", Minutes(Job, twice, thin));
        yield return ("as it stands, but with the fans of the appliance off", Minutes(fansOff, machine, thin));
    }

    private static double Minutes(Appliance appliance, RecoveryMachine machine, Hose hose) =>
        VaporRecovery.Simulate(
            appliance,
            machine,
            new HoseSet { VaporSide = [hose] },
            RecoveryCylinder.FromMark("DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)),
            new VaporRecoveryOptions
            {
                TargetPressure = Barometer.Standard.FromVacuum(Mercury.FromInches(10)),
            }).Duration.Minutes;
    #endregion

    #region job
    private static Appliance Job => new()
    {
        Fluid = Fluid.Get("R-134a"),
        Charge = Mass.FromKilograms(10),
        InternalVolume = Volume.FromLiters(40),
        Temperature = Temperature.FromDegreesCelsius(24),
        HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.005), // 200 W/K: fans on
    };
    #endregion

    public static void Print()
    {
        #region print
        foreach ((string change, double minutes) in Compare())
        {
            Console.WriteLine($"{minutes,5:F0} min  {change}");
        }
        #endregion
    }
}
