using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

public class FractionationTests
{
    private const double Limit = 1e-9;

    private static readonly Gen<Appliance> Appliances =
        from fluid in Gen.Elements("R-448A", "R-407C", "R-454B", "R-507A", "R-438A", "R-455A", "R-414B")
        from fill in Gen.Choose(2, 60)
        from liters in Gen.Choose(10, 200)
        from celsius in Gen.Choose(5, 40)
        from conductance in Gen.Choose(10, 200)
        from metal in Gen.Choose(0, 100)
        from oil in Gen.Choose(0, 20)
        select Build(fluid, fill, liters, celsius, conductance, metal, oil);

    /// <summary>A component is named as a fluid is; one that the blend does not have is none.</summary>
    [Fact]
    public void Components_are_found_as_fluids_are()
    {
        FractionationResult result = Recovery(Setups.Appliance("R-407C", 10, 50, 24, 50)).Fractionation!;
        Assert.NotEqual(0, result.LiquidDrift("R-32"));
        Assert.Equal(result.LiquidDrift("R-32"), result.LiquidDrift("r32"));
        Assert.Equal(result.LiquidDrift("R-32"), result.LiquidDrift("HFC-32"));
        foreach (string none in new[] { "R-999", "R-22", "R-407C", "" })
        {
            ArgumentException error = Assert.Throws<ArgumentException>(() => result.LiquidDrift(none));
            Assert.Equal("designation", error.ParamName);
            Assert.Contains("R-32, R-125, R-134a", error.Message, StringComparison.Ordinal);
        }

        Assert.Throws<ArgumentNullException>(() => result.LiquidDrift(null!));
    }

    [Theory]
    [InlineData("R-407C", "R-32", 0.15)]
    [InlineData("R-448A", "R-32", 0.15)]
    [InlineData("R-455A", "R-744", 0.018)]
    public void The_volatile_component_leaves_first(string fluid, string volatileOne, double atLeast)
    {
        Appliance appliance = Setups.Appliance(fluid, 10, 50, 24, 50);
        StageResult recovery = Recovery(appliance);
        FractionationResult result = recovery.Fractionation!;
        Assert.InRange(recovery.Closure.Mass, 0, Limit);
        Assert.True(result.LiquidDrift(volatileOne) < -atLeast, $"{result.LiquidDrift(volatileOne)}");
        Assert.True(result.LastLiquid!.Pressure < 0.92 * result.LastLiquid.FixedCompositionPressure);
        Assert.Contains(result.Findings, f => f.Subject == FindingSubject.Fractionation);
        foreach (FractionationPoint point in result.Points)
        {
            Assert.Equal(1, point.Vapor.Sum(c => c.MassFraction), 12);
            Assert.Equal(1, point.Vapor.Sum(c => c.MoleFraction), 12);
        }

        FractionationPoint first = result.Points[0];
        Assert.Equal(first.FixedCompositionPressure.Pascals, first.Pressure.Pascals, 1e-6 * first.Pressure.Pascals);
        Assert.All(appliance.Fluid.Composition.Zip(first.Composition), pair => Assert.Equal(pair.First.MassFraction, pair.Second.MassFraction, 9));
    }

    /// <summary>Pressure, flow and what stays behind follow from the drifted composition.</summary>
    [Fact]
    public void What_stays_behind_is_of_the_drifted_composition()
    {
        Appliance appliance = Setups.Appliance("R-407C", 10, 50, 24, 50);
        StageResult tracked = Recovery(appliance), asCharged = Recovery(appliance, CompositionMode.Fixed);
        Assert.Null(asCharged.Fractionation);
        Assert.Equal(StageEnd.TargetReached, tracked.End);
        Assert.Equal(50, tracked.Appliance.Pressure.Kilopascals, 1e-3);

        // At one temperature and pressure the heavier vapor that is left weighs more.
        Assert.True(tracked.RemainingMass > 1.1 * asCharged.RemainingMass);
        Assert.Equal("R-134a", tracked.Appliance.Composition.OrderByDescending(c => c.MassFraction).First().Designation);
        Assert.True(tracked.Appliance.Composition.Single(c => c.Designation == "R-134a").MassFraction > 0.8);
        Assert.Equal(appliance.Fluid.Composition, asCharged.Appliance.Composition);
        double half = appliance.Charge.Kilograms / 2;
        Assert.True(At(tracked, half).AppliancePressure < 0.97 * At(asCharged, half).AppliancePressure);

        static TrajectoryPoint At(StageResult result, double kilograms) =>
            result.Trajectory.OrderBy(point => Math.Abs(point.ApplianceMass.Kilograms - kilograms)).First();
    }

    [Property(MaxTest = 15)]
    public Property Every_component_is_accounted_for_through_pull_hold_and_pull() => Prop.ForAll(
        Appliances.ToArbitrary(),
        Gen.Choose(1, 20).Zip(Gen.Choose(3, 15)).ToArbitrary(),
        (appliance, setup) =>
        {
            StageResult first = Pull(appliance, setup, null);
            StageResult hold = Hold.Simulate(appliance, new HoldOptions { Start = first.After });
            StageResult second = Pull(appliance, setup, hold.After);
            double charge = appliance.Charge.Kilograms;
            return Holds(first) && Holds(second)
                && hold.Closure.Mass <= Limit && hold.Closure.Energy <= Limit
                && Math.Abs(first.RecoveredMass.Kilograms + second.RecoveredMass.Kilograms + second.RemainingMass.Kilograms - charge) < Limit * charge
                && (appliance.Oil is not null || Same(first.Appliance.Composition, hold.Appliance.Composition));
        });

    /// <summary>What a component loses between two points is what was drawn times its share of the vapor (trapezoidal rule).</summary>
    [Fact]
    public void Components_leave_with_the_composition_of_the_vapor()
    {
        IReadOnlyList<FractionationPoint> points = Setups.WithoutHoses(
            Setups.Appliance("R-448A", 10, 50, 24, 50),
            Setups.Ideal(0.5),
            new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(50), ReceiverPressure = Pressure.FromKilopascals(1000), Composition = CompositionMode.Tracked, RelativeTolerance = 1e-7 })
            .Fractionation!.Points;
        for (int i = 0; i < 5; i++)
        {
            double predicted = points[0].Composition[i].MassFraction * points[0].Mass.Kilograms;
            for (int k = 1; k < points.Count; k++)
            {
                double drawn = points[k - 1].Mass.Kilograms - points[k].Mass.Kilograms;
                predicted -= drawn * 0.5 * (points[k - 1].Vapor[i].MassFraction + points[k].Vapor[i].MassFraction);
                Assert.Equal(points[k].Composition[i].MassFraction * points[k].Mass.Kilograms, predicted, 5e-4);
            }
        }
    }

    /// <summary>A blend of hardly any glide hardly drifts, and its recovery is the same.</summary>
    [Theory]
    [InlineData("R-507A", "R-125", 0.25)]
    [InlineData("R-513A", "R-1234yf", 0.12)]
    [InlineData("R-500", "R-12", 0.25)]
    public void An_azeotrope_behaves_as_one_substance(string fluid, string component, double most)
    {
        Appliance appliance = Setups.Appliance(fluid, 10, 50, 24, 50);
        StageResult tracked = Recovery(appliance), asCharged = Recovery(appliance, CompositionMode.Fixed);
        FractionationPoint last = tracked.Fractionation!.LastLiquid!;
        Assert.InRange(Math.Abs(tracked.Fractionation!.LiquidDrift(component)), 0, most);
        Assert.InRange(last.Pressure / last.FixedCompositionPressure, 0.97, 1.01);
        Assert.InRange(tracked.Duration / asCharged.Duration, 0.99, 1.01);
    }

    [Fact]
    public void What_burns_and_becomes_more_is_said_and_what_is_estimated_too()
    {
        // R-32 and R-1234yf burn, R-125 and R-134a do not; R-401A's pairs are estimated.
        Assert.Contains(Recovery(Setups.Appliance("R-448A", 10, 50, 24, 50)).Fractionation!.Findings, f => f.Subject == FindingSubject.Flammability);
        Assert.Contains(Recovery(Setups.Appliance("R-401A", 10, 50, 24, 50)).Fractionation!.Findings, f => f.Subject == FindingSubject.Estimate);
    }

    [Fact]
    public void A_pure_fluid_has_nothing_to_follow()
    {
        Appliance appliance = Setups.Appliance("R-134a", 10, 50, 24, 50);
        StageResult tracked = Recovery(appliance), asCharged = Recovery(appliance, CompositionMode.Fixed);
        Assert.Null(tracked.Fractionation);
        Assert.Equal(asCharged.Duration, tracked.Duration);
        Assert.Equal(asCharged.RemainingMass, tracked.RemainingMass);
    }

    /// <summary>Push-pull does not follow the composition: it takes what is left as charged, at its temperature.</summary>
    [Fact]
    public void A_push_pull_keeps_account_of_each_component_that_was_followed_before()
    {
        Appliance appliance = Setups.Appliance("R-407C", 20, 50, 24, 50) with { LiquidReachable = true };
        StageResult pull = VaporRecovery.Simulate(
            appliance, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60), new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(700), Composition = CompositionMode.Tracked });
        Assert.True(pull.Appliance.HasLiquid);
        StageResult push = PushPull.Simulate(appliance, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 20), new PushPullOptions { Start = new SimulationState(pull.Appliance) });

        // Push-pull takes liquid and vapor from the bubble and dew curves, which moves a blend's temperature by a kelvin.
        Assert.Equal(pull.Appliance.Temperature.Kelvins, push.Trajectory[0].ApplianceTemperature.Kelvins, 1.2);
        Assert.Equal(pull.RemainingMass.Kilograms, push.RecoveredMass.Kilograms + push.RemainingMass.Kilograms, 1e-9);
        Assert.InRange(push.Closure.Mass, 0, Limit);
        Assert.Equal(1, push.Appliance.Composition.Sum(component => component.MassFraction), 1e-9);
        StageResult flow = Equalization.Simulate(
            appliance, Setups.Hoses(), Setups.Cylinder(60), new EqualizationOptions { Start = new SimulationState(pull.Appliance) });
        Assert.Equal(pull.RemainingMass.Kilograms, flow.RecoveredMass.Kilograms + flow.Appliance.Mass.Kilograms, 1e-9);
    }

    private static bool Holds(StageResult result) =>
        result.Closure.Mass <= Limit && result.Closure.Energy <= Limit;

    private static bool Same(IReadOnlyList<FluidComponent> a, IReadOnlyList<FluidComponent> b) =>
        a.Zip(b).All(pair => Math.Abs(pair.First.MassFraction - pair.Second.MassFraction) < Limit);

    private static StageResult Pull(Appliance appliance, (int Pace, int Hose) setup, SimulationState? start) => VaporRecovery.Simulate(
        appliance,
        Setups.Machine(0.1 * setup.Pace),
        Setups.Hoses(3, setup.Hose),
        Setups.Cylinder(1000, 20),
        new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(60), Composition = CompositionMode.Tracked, Start = start });

    private static StageResult Recovery(Appliance appliance, CompositionMode mode = CompositionMode.Tracked) => Setups.WithoutHoses(
        appliance,
        Setups.Ideal(0.5),
        new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(50), ReceiverPressure = Pressure.FromKilopascals(1000), Composition = mode });

    private static Appliance Build(string fluid, int fill, int liters, int celsius, int conductance, int metal, int oil)
    {
        double liquid = Fluid.Get(fluid).Model.SaturationAtTemperature(273.15 + celsius).Bubble.Density;
        double charge = fill / 100.0 * liters * 1e-3 * liquid;
        double oilMass = Math.Min(oil * 0.1, charge);
        return Setups.Appliance(fluid, charge, liters, celsius, conductance) with
        {
            MetalMass = Mass.FromKilograms(metal),
            Oil = oilMass > 0.05 ? new ApplianceOil { Mass = Mass.FromKilograms(oilMass), Kind = OilKind.PolyolEster } : null,
        };
    }

    /// <summary>The points of a stage are told from its start.</summary>
    [Fact]
    public void Points_are_told_from_the_start_of_the_stage()
    {
        StageResult pull = VaporRecovery.Simulate(
            Setups.Appliance("R-407C", 2, 20, 20, 50), Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(21.6, 2), new VaporRecoveryOptions { Composition = CompositionMode.Tracked, MaximumDuration = Duration.FromSeconds(10) });
        Assert.Equal((0.0, 10.0), (pull.Fractionation!.Points[0].Time.Seconds, pull.Fractionation.Points[^1].Time.Seconds));
        Assert.Equal(pull.Trajectory.Select(point => point.Time.Seconds), pull.Fractionation.Points.Select(point => point.Time.Seconds));
    }

    /// <summary>A stage that ends where it begins has that one point.</summary>
    [Fact]
    public void A_stage_that_ends_at_once_has_one_point()
    {
        StageResult pull = VaporRecovery.Simulate(
            Setups.Appliance("R-407C", 2, 20, 20, 50), Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(21.6, 2), new VaporRecoveryOptions { Composition = CompositionMode.Tracked, TargetPressure = Pressure.FromBars(20) });
        Assert.Equal((StageEnd.TargetReached, 0.0), (pull.End, pull.Duration.Seconds));
        Assert.Single(pull.Fractionation!.Points);
    }
}
