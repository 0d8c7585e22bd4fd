using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>
/// Whatever the appliance (sections, check valves, oil, water, heaters, blends followed or not, R-744) and the order of stages: each ends and says why, balances close to 1e-9 of what vessels hold,
/// and no cylinder goes over its limit or what it is built for.
/// </summary>
public class StagePropertyTests
{
    private const double Limit = 1e-9;
    private static readonly string[] Fluids = ["R-134a", "R-22", "R-123", "R-290", "R-717", "R-744", "R-410A", "R-407C", "R-455A"];

    [Property(MaxTest = 40)]
    public Property Three_stages_after_each_other() => Prop.ForAll(Gen.Choose(0, 999).ArrayOf(30).ToArbitrary(), numbers =>
    {
        var dice = new Dice(numbers);
        Appliance appliance = dice.Appliance();
        RecoveryCylinder cylinder = dice.Cylinder(appliance.Fluid);
        RecoveryMachine machine = dice.Machine();
        HoseSet hoses = Setups.Hoses(dice.Between(1, 6), dice.Between(3, 14));
        CompositionMode composition = dice.Of(CompositionMode.Fixed, CompositionMode.Tracked);
        double limit = CylinderFill.Limit(cylinder, appliance.Fluid).MaximumFill.Kilograms;
        var start = new SimulationState(ApplianceState.Initial(appliance))
        {
            Cylinder = CylinderState.Initial(cylinder, appliance.Fluid, Temperature.FromKelvins(dice.Between(278, 303))),
        };
        var story = new List<string>();
        for (int i = 0; i < 3; i++)
        {
            string kind = dice.Of("vapor", "liquid", "push-pull", "equalize", "hold");
            var inputs = new SimulationInputs { HeaterPower = dice.Of(0, 300), CrankcaseHeaterPower = dice.Of(0, 80), FanFactor = dice.Of(1, 4), CylinderFactor = dice.Of(1, 50) };
            StageResult result;
            try
            {
                result = Run(kind, appliance, machine, hoses, cylinder, start, inputs, composition);
            }
            catch (Exception error)
            {
                throw new InvalidOperationException($"{Describe()} {kind} from {start}: {error}", error);
            }

            story.Add($"{kind}: {result.End} after {result.Duration.Seconds:G4} s");
            Check(result, limit, kind == "hold", Describe);
            start = result.After;
        }

        string Describe() => $"{appliance} {appliance.Sections.Count} sections, {composition}, oil {appliance.Oil}, water {appliance.Water is not null}, {cylinder}, {machine}: {string.Join("; ", story)};";
    });

    /// <summary>The engine taken in steps of a second or less comes to what the stage comes to.</summary>
    [Property(MaxTest = 15)]
    public Property Small_steps_agree_with_the_stage() => Prop.ForAll(Gen.Choose(0, 999).ArrayOf(30).ToArbitrary(), numbers =>
    {
        var dice = new Dice(numbers);
        Appliance appliance = dice.Appliance();
        RecoveryCylinder cylinder = dice.Cylinder(appliance.Fluid);
        RecoveryMachine machine = dice.Machine();
        HoseSet hoses = Setups.Hoses(dice.Between(1, 6), dice.Between(3, 14));
        CompositionMode composition = dice.Of(CompositionMode.Fixed, CompositionMode.Tracked);
        bool pulls = dice.Of(true, false);
        var inputs = new SimulationInputs { HeaterPower = dice.Of(0, 300), CrankcaseHeaterPower = dice.Of(0, 80), FanFactor = dice.Of(1, 4) };
        var start = new SimulationState(ApplianceState.Initial(appliance)) { Cylinder = CylinderState.Initial(cylinder, appliance.Fluid, Temperature.FromKelvins(293.15)) };
        StageResult stage = pulls
            ? VaporRecovery.Simulate(appliance, machine, hoses, cylinder, new VaporRecoveryOptions { Start = start, Inputs = inputs, Composition = composition, MaximumDuration = Duration.FromSeconds(60) })
            : Hold.Simulate(appliance, new HoldOptions { Start = start, Inputs = inputs, Composition = composition, Duration = Duration.FromSeconds(60) });
        RecoverySimulation simulation = RecoverySimulation.Start(new SimulationSetup
        {
            Appliance = appliance,
            Machine = machine,
            Hoses = hoses,
            Cylinder = cylinder,
            Composition = composition,
            Start = start,
            Hookup = pulls ? SimulationHookup.VaporRecovery : SimulationHookup.Isolated,
        });
        double length = stage.Duration.Seconds / Math.Max(1, Math.Ceiling(stage.Duration.Seconds));
        for (int i = 0; i < Math.Ceiling(stage.Duration.Seconds) && stage.Duration.Seconds > 0; i++)
        {
            StepOutcome outcome = simulation.Step(length, inputs);
            if (outcome == StepOutcome.OutOfRange && stage.End == StageEnd.PropertyRange)
            {
                return;
            }

            Assert.True(outcome == StepOutcome.Done, $"{outcome} {i} {appliance} {composition} {stage} {simulation}");
        }

        string text = $"{appliance} {composition} {stage} {simulation}";
        double scale = appliance.Charge.Kilograms;
        Assert.True(Math.Abs(simulation.ApplianceMass - stage.RemainingMass.Kilograms) <= 1e-3 * scale, text);
        Assert.True(Math.Abs(simulation.AppliancePressure - stage.Appliance.Pressure.Pascals) <= 3e-3 * stage.Before.Appliance.Pressure.Pascals, text);
        Assert.True(Math.Abs(simulation.CylinderPressure - stage.Cylinder!.Pressure.Pascals) <= 3e-3 * stage.Cylinder.Pressure.Pascals, text);
    });

    private static StageResult Run(
        string kind, Appliance appliance, RecoveryMachine machine, HoseSet hoses, RecoveryCylinder cylinder, SimulationState start, SimulationInputs inputs, CompositionMode composition)
    {
        switch (kind)
        {
            case "vapor":
                var pull = new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(60), MaximumDuration = Duration.FromHours(3) };
                return VaporRecovery.Simulate(appliance, machine, hoses, cylinder, pull with { Start = start, Inputs = inputs, Composition = composition });
            case "liquid":
                return LiquidRecovery.Simulate(appliance, machine, hoses, cylinder, new LiquidRecoveryOptions { Start = start, Inputs = inputs, Composition = composition });
            case "push-pull":
                return PushPull.Simulate(appliance, machine, hoses, cylinder, new PushPullOptions { Start = start, Inputs = inputs, Composition = composition });
            case "equalize":
                return Equalization.Simulate(appliance, hoses, cylinder, new EqualizeOptions { Start = start, Inputs = inputs, Composition = composition });
            default:
                return Hold.Simulate(appliance, new HoldOptions { Start = start, Inputs = inputs, Composition = composition });
        }
    }

    private static void Check(StageResult result, double limit, bool stands, Func<string> describe)
    {
        string text = describe();
        CylinderState before = result.Before.Cylinder!;
        CylinderState after = result.Cylinder!;
        double held = Math.Max(result.Before.Appliance.Mass.Kilograms, Math.Max(before.Mass.Kilograms, after.Mass.Kilograms));
        Assert.True(result.Closure.Mass <= Limit && result.Closure.Energy <= Limit, $"{text} closes to {result.Closure.Mass:G3} and {result.Closure.Energy:G3}");
        double lost = result.Before.Appliance.Mass.Kilograms + before.Mass.Kilograms - result.Appliance.Mass.Kilograms - after.Mass.Kilograms;
        Assert.True(Math.Abs(lost) <= Limit * held, $"{text} loses {lost:G3} kg");
        Assert.True(after.Mass.Kilograms <= Math.Max(before.Mass.Kilograms, limit) * (1 + 1e-6), $"{text} fills the cylinder to {after.Mass.Kilograms} of {limit} kg");
        double most = (1.25 * before.Cylinder.ServicePressure.Pascals) + 101_325;
        Assert.True(stands || after.Pressure.Pascals <= Math.Max(before.Pressure.Pascals, most) * (1 + 1e-6), $"{text} brings the cylinder to {after.Pressure} of {most} Pa");
        Assert.True(result.RemainingMass.Kilograms >= 0 && double.IsFinite(result.Appliance.Pressure.Pascals) && double.IsFinite(after.Temperature.Kelvins), text);
        double[] gained = [.. result.Appliance.Composition.Select(component => component.MassFraction)];
        Assert.Equal(1, gained.Sum(), 1e-9);
        Assert.All(gained, share => Assert.InRange(share, 0, 1));

        // What arrives, by component, is what leaves.
        foreach (Transfer transfer in result.Transfers.Where(transfer => transfer.Components.Count > 0))
        {
            Assert.True(Math.Abs(transfer.Components.Sum(part => part.Kilograms) - transfer.Mass.Kilograms) <= Limit * held, text);
        }
    }

    /// <summary>Numbers from 0 to 999 as setups.</summary>
    private sealed class Dice(int[] numbers)
    {
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
            return Setups.Appliance(designation, charge, liters, kelvins - 273.15, Between(0.5, 200)) with
            {
                Surroundings = Temperature.FromKelvins(Between(275, designation == "R-744" ? 300 : 310)),
                MetalMass = Mass.FromKilograms(Of(0.0, 1.0) * liters),
                MetalResistance = Setups.Conductance(Between(50, 1000)),
                LiquidReachable = true,
                LiquidHeel = Mass.FromKilograms(0.05 * charge),
                DesignGaugePressure = Of<Pressure?>(null, Pressure.FromMegapascals(designation == "R-744" ? 9 : 3)),
                Oil = oil > 0 ? new ApplianceOil { Mass = Mass.FromKilograms(oil), Kind = OilKind.PolyolEster } : null,
                Water = Of(0, 1, 2) switch
                {
                    1 => TubeWater.Standing(Mass.FromKilograms(10), Temperature.FromKelvins(Math.Max(275, kelvins)), Setups.Conductance(300)),
                    2 => TubeWater.Moving(MassFlow.FromKilogramsPerSecond(0.2), Temperature.FromKelvins(Math.Max(275, kelvins)), Setups.Conductance(300)),
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
            RecoveryCylinder cylinder = Setups.Cylinder(Between(5, 120)) with { ServicePressure = Pressure.FromMegapascals(fluid.Designation == "R-744" ? 12 : Between(1.6, 4)) };
            double most = CylinderFill.Limit(cylinder, fluid).MaximumFill.Kilograms;
            return cylinder with { Content = Mass.FromKilograms(Of(0, 0.1, 0.5, 0.9) * most) };
        }

        public RecoveryMachine Machine() => Setups.Machine(Between(0.05, 2)) with { HighPressureCutout = Pressure.FromMegapascals(Between(2.5, 13)) };
    }
}
