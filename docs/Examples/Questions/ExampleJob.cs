#region usings
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>An invented job: a cold-storage rack with 30 kg of R-134a, with what a technician brings.</summary>
internal static class ExampleJob
{
    #region job
    public static RecoveryJob Create()
    {
        Hose hose = new()
        {
            Length = Length.FromFeet(5),
            InnerDiameter = Length.FromMillimeters(5),
            Fittings = [Fitting.CoreDepressor()], // the valve core is still in
        };
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark(
            "DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5));
        ApplianceOil oil = new()
        {
            Mass = Mass.FromKilograms(0.5),
            Kind = OilKind.PolyolEster,
        };

        return new RecoveryJob
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get("R-134a"),
                Charge = Mass.FromKilograms(30),
                InternalVolume = Volume.FromLiters(75),
                Temperature = Temperature.FromDegreesCelsius(20),
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.005),
                MetalMass = Mass.FromKilograms(150),
                LiquidReachable = true,
                LiquidHeel = Mass.FromKilograms(2),
                Oil = oil,
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
            Hoses = new HoseSet
            {
                VaporSide = [hose],
                LiquidSide = [hose],
                Discharge = [hose],
            },
            Cylinders = [cylinder with { Label = "C1" }, cylinder with { Label = "C2" }],
        };
    }
    #endregion
}
