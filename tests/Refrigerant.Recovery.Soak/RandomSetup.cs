using System;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using UnitsNet;

namespace Refrigerant.Recovery.Soak;

/// <summary>Setups of stages out of numbers from 0 to 999: sections, check valves, oil, water, cylinders that are partly full, R-744 among the refrigerants.</summary>
internal sealed class RandomSetup(int[] numbers)
{
    private static readonly string[] Fluids = ["R-134a", "R-22", "R-123", "R-290", "R-717", "R-744", "R-410A", "R-407C", "R-455A"];

    private int _next;

    public double Between(double low, double high) => low + ((high - low) * numbers[_next++ % numbers.Length] / 999.0);

    public T Of<T>(params T[] choices) => choices[numbers[_next++ % numbers.Length] % choices.Length];

    public Appliance Appliance()
    {
        string designation = Of(Fluids);
        Fluid fluid = Fluid.Get(designation);
        double kelvins = Between(275, designation == "R-744" ? 298 : 308);
        double liters = Between(5, 150);
        double liquid = fluid.Model.SaturationAtTemperature(kelvins).Bubble.Density;
        double charge = Between(0.01, 0.8) * liquid * liters * 1e-3;
        double oil = Of(0, 0.05) * charge;
        bool split = Of(false, false, true);
        double near = Between(0.2, 0.8);
        return new Appliance
        {
            Fluid = fluid,
            Charge = Mass.FromKilograms(charge),
            InternalVolume = Volume.FromLiters(liters),
            Temperature = Temperature.FromKelvins(kelvins),
            HeatResistance = Conductance(Between(0.5, 200)),
            Surroundings = Temperature.FromKelvins(Between(275, designation == "R-744" ? 300 : 310)),
            MetalMass = Mass.FromKilograms(Of(0.0, 1.0) * liters),
            MetalResistance = Conductance(Between(50, 1000)),
            LiquidReachable = true,
            LiquidHeel = Mass.FromKilograms(0.05 * charge),
            DesignGaugePressure = Of<Pressure?>(null, Pressure.FromMegapascals(designation == "R-744" ? 9 : 3)),
            Oil = oil > 0 ? new ApplianceOil { Mass = Mass.FromKilograms(oil), Kind = OilKind.PolyolEster } : null,
            Water = Of(0, 1, 2) switch
            {
                1 => TubeWater.Standing(Mass.FromKilograms(10), Temperature.FromKelvins(Math.Max(275, kelvins)), Conductance(300)),
                2 => TubeWater.Moving(MassFlow.FromKilogramsPerSecond(0.2), Temperature.FromKelvins(Math.Max(275, kelvins)), Conductance(300)),
                _ => null,
            },
            Sections = split
                ?
                [
                    new ApplianceSection { Name = "a", InternalVolume = Volume.FromLiters(near * liters), Charge = Mass.FromKilograms(near * charge) },
                    new ApplianceSection { Name = "b", InternalVolume = Volume.FromLiters((1 - near) * liters), Charge = Mass.FromKilograms((1 - near) * charge) },
                ]
                : [],
            Connections = split ? [new SectionConnection { From = "b", To = "a", FlowCoefficient = Math.Pow(10, Between(-2.5, 0.5)), IsCheckValve = Of(true, false) }] : [],
            VaporPort = split ? "a" : null,
            LiquidPort = split ? Of("a", "b") : null,
        };
    }

    public RecoveryCylinder Cylinder(Fluid fluid)
    {
        double water = Between(5, 120);
        var cylinder = new RecoveryCylinder
        {
            Label = "C1",
            WaterCapacity = Mass.FromKilograms(water),
            TareWeight = Mass.FromKilograms(0.6 * water),
            ServicePressure = Pressure.FromMegapascals(fluid.Designation == "R-744" ? 12 : Between(1.6, 4)),
        };
        double most = CylinderFill.Limit(cylinder, fluid).MaximumFill.Kilograms;
        return cylinder with { Content = Mass.FromKilograms(Of(0, 0.1, 0.5, 0.9) * most) };
    }

    public RecoveryMachine Machine() =>
        RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(Between(0.05, 2))) with { HighPressureCutout = Pressure.FromMegapascals(Between(2.5, 13)) };

    public HoseSet Hoses()
    {
        var hose = new Hose { Length = Length.FromMeters(Between(1, 6)), InnerDiameter = Length.FromMillimeters(Between(3, 14)) };
        return new HoseSet { VaporSide = [hose], LiquidSide = [hose], Discharge = [hose] };
    }

    private static ThermalResistance Conductance(double wattsPerKelvin) => ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / wattsPerKelvin);
}
