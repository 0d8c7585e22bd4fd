using System;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Soak;
using UnitsNet;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>What must hold for every plan.</summary>
public class PlanProperties
{
    private static readonly string[] Fluids = ["R-134a", "R-22", "R-32", "R-290", "R-123", "R-410A", "R-407C"];

    public static Arbitrary<RecoveryJob> RandomJobs() => (
        from fluid in Gen.Elements(Fluids)
        from charge in Gen.Choose(1, 120)
        from spread in Gen.Choose(18, 60)
        from celsius in Gen.Choose(-5, 40)
        from outer in Gen.Choose(-10, 45)
        from conductance in Gen.Choose(1, 300)
        from metal in Gen.Choose(0, 800)
        from displacement in Gen.Choose(1, 30)
        from bore in Gen.Choose(4, 14)
        from capacities in Gen.Choose(20, 250).ListOf()
        from reachable in Gen.Elements(true, false)
        from follow in Gen.Elements(true, false)
        select Create(fluid, charge, spread * 0.1, celsius, outer, conductance, metal, displacement * 0.1, bore, [.. capacities.Take(4)], reachable) with
        {
            FollowComposition = follow,
        }).ToArbitrary();

    [Property(Arbitrary = [typeof(PlanProperties)], MaxTest = 60)]
    public Property A_plan_breaks_nothing_that_always_holds(RecoveryJob job)
    {
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        string[] broken = [.. PlanInvariants.Broken(plan)];
        return (broken.Length == 0).Label(string.Join("; ", broken) + " | " + plan);
    }

    [Property(Arbitrary = [typeof(PlanProperties)], MaxTest = 10)]
    public Property The_same_job_is_the_same_plan(RecoveryJob job)
    {
        RecoveryPlan one = RecoveryPlanner.Plan(job), two = RecoveryPlanner.Plan(job);
        return (one.TotalDuration.Seconds.Equals(two.TotalDuration.Seconds)
            && one.End.Pressure.Pascals.Equals(two.End.Pressure.Pascals)
            && one.Findings.Select(finding => finding.Message).SequenceEqual(two.Findings.Select(finding => finding.Message))).Label(one + " | " + two);
    }

    private static RecoveryJob Create(
        string fluid, double charge, double litersPerKilogram, double celsius, double outer, double conductance, double metal, double displacement, double bore, int[] capacities, bool reachable)
    {
        RecoveryJob job = Jobs.Chiller();
        return job with
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get(fluid),
                Charge = Mass.FromKilograms(charge),
                InternalVolume = Volume.FromLiters(charge * Math.Max(litersPerKilogram, fluid == "R-290" ? 3.2 : 1.8)),
                Temperature = Temperature.FromDegreesCelsius(celsius),
                Surroundings = Temperature.FromDegreesCelsius(outer),
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / conductance),
                MetalMass = Mass.FromKilograms(metal),
                LiquidReachable = reachable,
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(displacement)),
            Hoses = Jobs.Hoses(boreMillimeters: bore),
            Cylinders = [.. capacities.Select((capacity, i) => Jobs.Cylinder(capacity, $"C{i}"))],
        };
    }
}
