using System;
using System.Collections.Generic;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

public class ConservationTests
{
    private const double Limit = 1e-9;
    private static readonly string[] Designations = ["R-134a", "R-22", "R-32", "R-290", "R-1234yf", "R-717"];

    private static readonly Gen<Appliance> Appliances =
        from fluid in Gen.Elements(Designations)
        from fill in Gen.Choose(2, 60)
        from liters in Gen.Choose(10, 200)
        from celsius in Gen.Choose(5, 40)
        from conductance in Gen.Choose(0, 200)
        from metal in Gen.Choose(0, 100)
        from oil in Gen.Choose(0, 20)
        from water in Gen.Choose(0, 2)
        select Build(fluid, fill, liters, celsius, conductance, metal, oil, water);

    [Property(MaxTest = 60)]
    public Property Mass_and_energy_balance_with_everything_on() => Prop.ForAll(
        Appliances.ToArbitrary(),
        Gen.Choose(1, 20).Zip(Gen.Choose(3, 15)).ToArbitrary(),
        (appliance, setup) =>
        {
            StageResult pull = VaporRecovery.Simulate(
                appliance,
                Setups.Machine(0.1 * setup.Item1),
                Setups.Hoses(3, setup.Item2),
                Setups.Cylinder(1000, 20),
                new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(60) });
            StageResult hold = Hold.Simulate(appliance, new HoldOptions { Start = pull.After });
            double charge = appliance.Charge.Kilograms;
            return Holds(pull.Closure) && Holds(hold.Closure)
                && Math.Abs(pull.RecoveredMass.Kilograms + pull.RemainingMass.Kilograms - charge) < Limit * charge
                && Math.Abs(pull.Cylinder!.Mass.Kilograms - 20 - pull.RecoveredMass.Kilograms) < Limit * (20 + charge)
                && Math.Abs(hold.RemainingMass.Kilograms - pull.RemainingMass.Kilograms) < Limit * charge;
        });

    [Property(MaxTest = 30)]
    public Property Mass_and_energy_balance_in_push_pull() => Prop.ForAll(
        Appliances.ToArbitrary(),
        appliance =>
        {
            Appliance reachable = appliance with { LiquidReachable = true };
            StageResult result = PushPull.Simulate(reachable, Setups.Machine(0.5), Setups.Hoses(5, 9), Setups.Cylinder(1000, 20), new PushPullOptions());
            double charge = appliance.Charge.Kilograms;
            return Holds(result.Closure)
                && Math.Abs(result.RecoveredMass.Kilograms + result.RemainingMass.Kilograms - charge) < Limit * charge
                && Math.Abs(result.Cylinder!.Mass.Kilograms - 20 - result.RecoveredMass.Kilograms) < Limit * (20 + charge);
        });

    /// <summary>Rounding of 200 t in the cylinder is no loss of the gram beside it.</summary>
    [Fact]
    public void A_trace_beside_a_tank_closes_too()
    {
        Appliance trace = Setups.Appliance("R-123", 1e-3, 0.002, 24, 50) with { LiquidReachable = true };
        RecoveryCylinder tank = Setups.Cylinder(1e6, 2e5);
        StageResult push = PushPull.Simulate(trace, Setups.Machine(0.01), Setups.Hoses(), tank, new PushPullOptions());
        StageResult pull = VaporRecovery.Simulate(
            trace, Setups.Machine(0.01), Setups.Hoses(), tank, new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(20) });
        Assert.True(Holds(push.Closure), push.Closure.Mass.ToString());
        Assert.True(Holds(pull.Closure), pull.Closure.Mass.ToString());
        Assert.True(push.RecoveredMass.Kilograms > 1e-4);
        Assert.True(pull.RecoveredMass.Kilograms > 5e-4);
    }

    [Fact]
    public void The_trajectory_can_be_plotted()
    {
        StageResult result = VaporRecovery.Simulate(
            Setups.Appliance("R-134a", 10, 50, 24, 50),
            Setups.Machine(0.5),
            Setups.Hoses(),
            Setups.Cylinder(),
            new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(50.5) });
        Assert.InRange(result.Trajectory.Count, 25, 401);
        Assert.InRange(result.Closure.Steps, result.Trajectory.Count - 1, result.Closure.Evaluations);
        IReadOnlyList<TrajectoryPoint> points = result.Trajectory;
        Assert.Equal(0, points[0].Time.Seconds);
        Assert.Equal(result.Duration.Seconds, points[^1].Time.Seconds, 1e-9);
        Assert.Equal(50.5, points[^1].AppliancePressure.Kilopascals, 1e-4);
        for (int i = 1; i < points.Count; i++)
        {
            Assert.True(points[i].Time.Seconds > points[i - 1].Time.Seconds || i == points.Count - 1);
            Assert.True(points[i].ApplianceMass.Kilograms <= points[i - 1].ApplianceMass.Kilograms);
            Assert.True(points[i].SuctionPressure.Pascals <= points[i].AppliancePressure.Pascals);
        }
    }

    private static bool Holds(Closure closure) => closure.Mass <= Limit && closure.Energy <= Limit;

    private static Appliance Build(string fluid, int fill, int liters, int celsius, int conductance, int metal, int oil, int water)
    {
        double liquid = Fluid.Get(fluid).Model.SaturationAtTemperature(273.15 + celsius).Bubble.Density;
        double charge = fill / 100.0 * liters * 1e-3 * liquid;
        double oilMass = Math.Min(oil * 0.1, charge);
        return Setups.Appliance(fluid, charge, liters, celsius, conductance == 0 ? null : conductance) with
        {
            MetalMass = Mass.FromKilograms(metal),
            Oil = oilMass > 0.05 ? new ApplianceOil { Mass = Mass.FromKilograms(oilMass), Kind = OilKind.PolyolEster } : null,
            Water = water switch
            {
                1 => TubeWater.Standing(Mass.FromKilograms(20), Temperature.FromDegreesCelsius(celsius), Setups.Conductance(300)),
                2 => TubeWater.Moving(MassFlow.FromKilogramsPerSecond(0.2), Temperature.FromDegreesCelsius(celsius), Setups.Conductance(300)),
                _ => null,
            },
        };
    }
}
