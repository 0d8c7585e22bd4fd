using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Console;

/// <summary>An invented job: a rooftop unit with 11 kg of R-407C at 38 °C on a roof 1600 m above the sea; liquid cannot be reached.</summary>
internal static class RooftopJob
{
    public static RecoveryJob Create()
    {
        Hose quarterInch = new()
        {
            Length = Length.FromFeet(5),
            InnerDiameter = Length.FromMillimeters(4.7),
            Fittings = [Fitting.CoreDepressor()],
        };
        return new RecoveryJob
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get("R-407C"),
                Charge = Mass.FromKilograms(11),
                InternalVolume = Volume.FromLiters(24),
                Temperature = Temperature.FromDegreesCelsius(38),
                Surroundings = Temperature.FromDegreesCelsius(38),
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerKilowatt(16),
                MetalMass = Mass.FromKilograms(90),
                Oil = new ApplianceOil { Mass = Mass.FromKilograms(1.8), Kind = OilKind.PolyolEster },
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
            Hoses = new HoseSet { VaporSide = [quarterInch], Discharge = [quarterInch with { Fittings = [] }] },
            Cylinders =
            [
                RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)) with { Label = "C1", RequalificationDue = new DateTime(2028, 6, 1) },
            ],
            Barometer = Barometer.AtElevation(Length.FromMeters(1600)),
            FollowComposition = true,
            Day = new DateTime(2026, 11, 25),
        };
    }
}
