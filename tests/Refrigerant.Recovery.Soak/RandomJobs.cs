using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Soak;

/// <summary>Random jobs, most of them sensible: a tenth asks for what the planner must turn down or cannot finish.</summary>
internal static class RandomJobs
{
    private static readonly string[] Fluids =
        ["R-134a", "R-22", "R-32", "R-290", "R-123", "R-1234yf", "R-744", "R-717", "R-410A", "R-407C", "R-404A", "R-507A", "R-513A", "R-448A"];

    public static RecoveryJob Next(Random random)
    {
        double charge = Math.Pow(10, Between(random, -0.3, 2.3));
        Hose hose = new()
        {
            Length = Length.FromMeters(Between(random, 0.5, 12)),
            InnerDiameter = Length.FromMillimeters(Between(random, 3, 20)),
            Fittings = random.Next(2) == 0 ? [] : [Fitting.CoreDepressor(), Fitting.FromFlowCoefficient("valve", Between(random, 0.2, 5))],
        };
        return new RecoveryJob
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get(Fluids[random.Next(Fluids.Length)]),
                Charge = Mass.FromKilograms(charge),
                InternalVolume = Volume.FromLiters(charge * Between(random, random.Next(10) == 0 ? 0.5 : 2.2, 8)),
                Temperature = Temperature.FromDegreesCelsius(Between(random, -20, 45)),
                Surroundings = random.Next(3) == 0 ? null : Temperature.FromDegreesCelsius(Between(random, -20, 45)),
                HeatResistance = random.Next(5) == 0 ? null : ThermalResistance.FromSquareMeterKelvinsPerWatt(Math.Pow(10, Between(random, -3, 0))),
                MetalMass = Mass.FromKilograms(random.Next(3) == 0 ? 0 : charge * Between(random, 1, 12)),
                LiquidReachable = random.Next(2) == 0,
                LiquidHeel = Mass.FromKilograms(charge * Between(random, 0, 0.2)),
                Water = random.Next(4) switch
                {
                    0 => TubeWater.Standing(Mass.FromKilograms(charge), Temperature.FromDegreesCelsius(Between(random, 1, 30)), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.001)),
                    1 => TubeWater.Moving(MassFlow.FromKilogramsPerSecond(1), Temperature.FromDegreesCelsius(Between(random, 1, 30)), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.001)),
                    _ => null,
                },
                Oil = random.Next(3) == 0 ? new ApplianceOil { Mass = Mass.FromKilograms(charge * 0.1), Kind = (OilKind)random.Next(5) } : null,
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(Between(random, 0.1, 3)), Between(random, 0, 0.1)) with
            {
                ListedForFlammable = random.Next(2) == 0,
            },
            Hoses = new HoseSet { VaporSide = [hose], LiquidSide = random.Next(3) == 0 ? [] : [hose], Discharge = [hose] },
            Cylinders = [.. Enumerable.Range(1, random.Next(4)).Select(i => Cylinder(random, i))],
            Barometer = Barometer.AtElevation(Length.FromMeters(Between(random, -400, 4000))),
            PushPull = (PushPullUse)random.Next(3),
            KeepAboveFreezing = random.Next(2) == 0,
        };
    }

    private static RecoveryCylinder Cylinder(Random random, int number)
    {
        Mass capacity = Mass.FromPounds(Between(random, 25, 1000));
        RecoveryCylinder cylinder = random.Next(3) == 0
            ? RecoveryCylinder.FromTestPressure(Pressure.FromBars(Between(random, 30, 70)), capacity, capacity * 0.5)
            : RecoveryCylinder.FromMark("4BA400", capacity, capacity * 0.5);
        return cylinder with { Label = FormattableString.Invariant($"C{number}"), Content = capacity * (random.Next(2) == 0 ? 0 : Between(random, 0, 0.5)) };
    }

    private static double Between(Random random, double low, double high) => low + ((high - low) * random.NextDouble());
}
