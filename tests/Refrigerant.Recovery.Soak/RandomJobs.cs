using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using UnitsNet;

namespace Refrigerant.Recovery.Soak;

/// <summary>Random jobs, most of them sensible: a tenth asks for what the planner must turn down or cannot finish.</summary>
internal static class RandomJobs
{
    private static readonly string[] Fluids =
        ["R-134a", "R-22", "R-32", "R-290", "R-123", "R-1234yf", "R-744", "R-717", "R-410A", "R-407C", "R-404A", "R-507A", "R-513A", "R-448A"];

    /// <summary>A job with one of the refrigerants of everyday.</summary>
    public static RecoveryJob Next(Random random) => Next(random, Fluid.Get(Fluids[random.Next(Fluids.Length)]));

    /// <summary>A job with a refrigerant.</summary>
    public static RecoveryJob Next(Random random, Fluid fluid)
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
                Fluid = fluid,
                Charge = Mass.FromKilograms(charge),
                InternalVolume = Volume.FromLiters(charge * Between(random, random.Next(10) == 0 ? 0.5 : 2.2, 8)),
                Temperature = Temperature.FromDegreesCelsius(Between(random, -20, 45)),
                Surroundings = random.Next(3) == 0 ? null : Temperature.FromDegreesCelsius(Between(random, -20, 45)),
                HeatResistance = random.Next(10) switch
                {
                    0 or 1 => null,
                    2 => Appliance.PerfectInsulation,
                    _ => ThermalResistance.FromSquareMeterKelvinsPerWatt(Math.Pow(10, Between(random, -4, 0))),
                },
                MetalMass = Mass.FromKilograms(random.Next(3) == 0 ? 0 : charge * Between(random, 1, 12)),
                LiquidReachable = random.Next(2) == 0,
                LiquidHeel = Mass.FromKilograms(charge * Between(random, 0, 0.2)),
                Water = random.Next(4) switch
                {
                    0 => TubeWater.Standing(Mass.FromKilograms(charge), Temperature.FromDegreesCelsius(Between(random, 1, 30)), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.001)),
                    1 => TubeWater.Moving(MassFlow.FromKilogramsPerSecond(1), Temperature.FromDegreesCelsius(Between(random, 1, 30)), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.001)),
                    _ => null,
                },
                DesignGaugePressure = random.Next(4) == 0 ? Pressure.FromBars(Between(random, 1, 45)) : null,
                Oil = random.Next(3) == 0 ? new ApplianceOil { Mass = Mass.FromKilograms(charge * 0.1), Kind = (OilKind)random.Next(5) } : null,
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(Between(random, 0.1, 3)), Between(random, 0, 0.1)) with
            {
                ListedForFlammable = random.Next(2) == 0,
            },
            Hoses = new HoseSet { VaporSide = [hose], LiquidSide = random.Next(3) == 0 ? [] : [hose], Discharge = [hose] },
            Cylinders = [.. Enumerable.Range(1, random.Next(4)).Select(i => Cylinder(random, i, fluid))],
            Aids = random.Next(3) == 0
                ? new SiteAids { HasIce = random.Next(2) == 0, HasCylinderFan = random.Next(2) == 0, Heater = Power.FromWatts(random.Next(2) == 0 ? 0 : Between(random, 100, 3000)) }
                : SiteAids.None,
            Times = new JobTimes { Hold = Duration.FromMinutes(random.Next(4) switch { 0 => 0, 1 => Between(random, 0.5, 60), _ => 10 }) },
            Evacuation = random.Next(6) switch
            {
                0 => new EvacuationOptions { Purpose = OpeningPurpose.OilChange },
                1 => new EvacuationOptions { OwnLevel = Pressure.FromKilopascals(Between(random, 5, 200)) },
                _ => null,
            },
            Barometer = Barometer.AtElevation(Length.FromMeters(Between(random, -400, 4000))),
            PushPull = (PushPullUse)random.Next(3),
            KeepAboveFreezing = random.Next(2) == 0,
        };
    }

    private static RecoveryCylinder Cylinder(Random random, int number, Fluid fluid)
    {
        string mark = fluid.Designation switch { "R-744" => "3AA1800", "R-717" => "3AA480", _ => "4BA400" };
        Mass capacity = Mass.FromPounds(Between(random, 25, 1000));
        RecoveryCylinder cylinder = random.Next(3) == 0
            ? RecoveryCylinder.FromTestPressure(Pressure.FromBars(Between(random, 30, 70)), capacity, capacity * 0.5)
            : RecoveryCylinder.FromMark(mark, capacity, capacity * 0.5);
        return cylinder with { Label = FormattableString.Invariant($"C{number}"), Content = capacity * (random.Next(2) == 0 ? 0 : Between(random, 0, 0.5)) };
    }

    private static double Between(Random random, double low, double high) => low + ((high - low) * random.NextDouble());
}
