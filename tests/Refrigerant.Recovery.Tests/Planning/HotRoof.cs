using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>R-410A on a roof at 46 °C, into a cylinder that gets hot; its plans are made once for all tests.</summary>
internal static class HotRoof
{
    private static readonly Dictionary<string, Lazy<RecoveryPlan>> Plans = new()
    {
        ["one"] = new(() => RecoveryPlanner.Plan(Job(1))),
        ["two"] = new(() => RecoveryPlanner.Plan(Job(2))),
        ["ice"] = new(() => RecoveryPlanner.Plan(Job(1) with { Aids = new SiteAids { HasIce = true } })),
        ["bath"] = new(() => RecoveryPlanner.Plan(Job(1) with { Aids = new SiteAids { WaterBath = Temperature.FromDegreesCelsius(25) } })),
        ["fan"] = new(() => RecoveryPlanner.Plan(Job(1) with { Aids = new SiteAids { HasCylinderFan = true } })),
        ["thermal"] = new(() => RecoveryPlanner.Plan(Job(1) with { Machine = Job(1).Machine with { ThermalCutout = Temperature.FromDegreesCelsius(110) } })),
    };

    /// <summary>One or two cylinders, ice, a bath at 25 °C, a fan, or a thermal cut-out at 110 °C.</summary>
    public static RecoveryPlan Plan(string name) => Plans[name].Value;

    public static RecoveryJob Job(int cylinders, double megapascals = 3.9) => new()
    {
        Appliance = new Appliance
        {
            Fluid = Fluid.Get("R-410A"),
            Charge = Mass.FromKilograms(6),
            InternalVolume = Volume.FromLiters(14),
            Temperature = Temperature.FromDegreesCelsius(46),
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5), highPressureCutout: Pressure.FromMegapascals(megapascals)),
        Hoses = new HoseSet { VaporSide = [Jobs.Hose(5, 8)], Discharge = [Jobs.Hose(5, 8)] },
        Cylinders = [.. Enumerable.Range(1, cylinders).Select(i => Jobs.Cylinder(47.6, $"C{i}"))],
    };
}
