using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Console;

/// <summary>An invented job: a water chiller with 140 kg of R-134a in a plant room at 12 °C, water kept moving through its tubes.</summary>
internal static class ChillerJob
{
    public static RecoveryJob Create()
    {
        Length bore = Length.FromMillimeters(10.5);
        Hose tenFeet = new()
        {
            Length = Length.FromFeet(10),
            InnerDiameter = bore,
            Fittings = [Fitting.BallValve(bore), Fitting.BallValve(bore)],
        };
        return new RecoveryJob
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get("R-134a"),
                Charge = Mass.FromKilograms(140),
                InternalVolume = Volume.FromLiters(320),
                Temperature = Temperature.FromDegreesCelsius(12),
                Surroundings = Temperature.FromDegreesCelsius(12),
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerKilowatt(12),
                MetalMass = Mass.FromKilograms(1400),
                LiquidReachable = true,
                LiquidHeel = Mass.FromKilograms(6),
                Water = TubeWater.Moving(
                    MassFlow.FromKilogramsPerSecond(2), Temperature.FromDegreesCelsius(12), ThermalResistance.FromSquareMeterKelvinsPerKilowatt(0.8)),
                Oil = new ApplianceOil { Mass = Mass.FromKilograms(9), Kind = OilKind.PolyolEster },
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.9)),
            Hoses = new HoseSet { VaporSide = [tenFeet], LiquidSide = [tenFeet, tenFeet], Discharge = [tenFeet] },
            Cylinders =
            [
                RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(239), Mass.FromPounds(81)) with { Label = "C1", RequalificationDue = new DateTime(2028, 6, 1) },
                RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(239), Mass.FromPounds(82)) with { Label = "C2", RequalificationDue = new DateTime(2029, 3, 1) },
                RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)) with
                {
                    Label = "C3", Content = Mass.FromKilograms(4), Refrigerant = "R-134a", RequalificationDue = new DateTime(2027, 9, 1),
                },
            ],
            Barometer = Barometer.AtElevation(Length.FromMeters(120)),
            Day = new DateTime(2026, 11, 25),
        };
    }
}
