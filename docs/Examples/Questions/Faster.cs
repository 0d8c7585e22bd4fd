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
        RecoveryMachine machine = Machine(0.5);
        Condenser water = machine.Condenser with
        {
            CoolantTemperature = Temperature.FromDegreesCelsius(12),
        };
        RecoveryMachine cooled = machine with { Condenser = water };
        Appliance fansOff = Job with { HeatResistance = Resistance(0.02) };
        Appliance warm = Job with { Temperature = Temperature.FromDegreesCelsius(35) };

        yield return ("as it stands", Minutes(Job, machine, thin));
        yield return ("valve core removed", Minutes(Job, machine, noCore));
        yield return ("and 8 mm instead of 5 mm bore", Minutes(Job, machine, wide));
        yield return ("and 3 ft instead of 6 ft", Minutes(Job, machine, shortWide));
        yield return ("and the condenser cooled to 12 °C", Minutes(Job, cooled, shortWide));
        yield return ("and all of it in air of 35 °C", Minutes(warm, cooled, shortWide));
        yield return ("as it stands, twice the machine", Minutes(Job, Machine(1), thin));
        yield return ("as it stands, appliance's fans off", Minutes(fansOff, machine, thin));
    }

    private static double Minutes(Appliance appliance, RecoveryMachine machine, Hose hose)
    {
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark(
            "DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5));
        VaporRecoveryOptions toTenInches = new()
        {
            TargetPressure = Barometer.Standard.FromVacuum(Mercury.FromInches(10)),
        };
        HoseSet hoses = new() { VaporSide = [hose] };
        return VaporRecovery
            .Simulate(appliance, machine, hoses, cylinder, toTenInches).Duration.Minutes;
    }

    private static RecoveryMachine Machine(double litersPerSecond) =>
        RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(litersPerSecond));

    private static ThermalResistance Resistance(double kelvinsPerWatt) =>
        ThermalResistance.FromSquareMeterKelvinsPerWatt(kelvinsPerWatt);
    #endregion

    #region job
    private static Appliance Job => new()
    {
        Fluid = Fluid.Get("R-134a"),
        Charge = Mass.FromKilograms(10),
        InternalVolume = Volume.FromLiters(40),
        Temperature = Temperature.FromDegreesCelsius(24),
        HeatResistance = Resistance(0.005), // 200 W/K: its fans run
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
