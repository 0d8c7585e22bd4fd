using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>A stage as a test sets it down, in place of what a simulation would tell.</summary>
internal sealed record CourseStage(PlanStep Step)
{
    public CourseStage(StageKind kind)
        : this(new PlanStep(kind))
    {
    }

    /// <summary>Null where the stage is left to the planner itself: handling, a change, a sweep.</summary>
    public StageEnd? End { get; init; } = StageEnd.TimeLimit;

    public double Seconds { get; init; } = 600;

    public Func<SimulationState, SimulationState> After { get; init; } = state => state;

    /// <summary>The course; of two points, the start and the end, where none is given.</summary>
    public IReadOnlyList<TrajectoryPoint>? Points { get; init; }

    public StageFigures Figures { get; init; } = new();

    /// <summary>kg that comes into the cylinder by the scale.</summary>
    public double Received { get; init; }

    public StageResult Result(SimulationState from)
    {
        SimulationState after = After(from);
        TrajectoryPoint[] points = Points is null ? [Point(from, 0), Point(after, Seconds)] : [.. Points];
        return new StageResult(
            End!.Value, Seconds, from, after, [new Transfer("machine", "appliance", "cylinder", Received, 0, 0, [])], new Trajectory(points), Figures, [], default);
    }

    private static TrajectoryPoint Point(SimulationState state, double seconds) => new()
    {
        Seconds = seconds,
        AppliancePascals = state.Appliance.Pressure.Pascals,
        SuctionPascals = state.Appliance.Pressure.Pascals,
        DischargePascals = state.Cylinder?.Pressure.Pascals ?? 0,
        ApplianceKelvins = state.Appliance.Temperature.Kelvins,
        MetalKelvins = state.Appliance.MetalTemperature.Kelvins,
        CylinderKelvins = state.Cylinder?.Temperature.Kelvins ?? 0,
        ApplianceKilograms = state.Appliance.Mass.Kilograms,
        LiquidKilograms = state.Appliance.LiquidMass.Kilograms,
        CylinderKilograms = state.Cylinder?.Mass.Kilograms ?? 0,
    };
}

/// <summary>Courses that tests set down stage by stage: what follows from a course is asked for exactly, on both sides of each limit, without simulating it.</summary>
internal static class Course
{
    /// <summary>The level of the job, Pa absolute.</summary>
    public const double Goal = 90_000;

    /// <summary>The air there, Pa: the standard atmosphere.</summary>
    public const double Air = 101_325;

    /// <summary>2 kg of R-134a at 20 °C in 20 L, mostly liquid; the air at 20 °C; to 90 kPa, held for ten minutes.</summary>
    public static RecoveryJob Job() => new()
    {
        Appliance = new Appliance
        {
            Fluid = Fluid.Get("R-134a"),
            Charge = Mass.FromKilograms(2),
            InternalVolume = Volume.FromLiters(20),
            Temperature = Temperature.FromKelvins(293.15),
            MetalMass = Mass.FromKilograms(10),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.1),
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)) with { Body = null, ThermalCutout = null },
        Hoses = new HoseSet { VaporSide = [Jobs.Hose(5, 8)], Discharge = [Jobs.Hose(5, 8)] },
        Cylinders = [Jobs.Cylinder(47.6, "C1")],
        Evacuation = new EvacuationOptions { OwnLevel = Pressure.FromPascals(Goal) },
        Times = new JobTimes { CylinderChange = Duration.Zero },
    };

    public static RecoveryJob With(this RecoveryJob job, Func<Appliance, Appliance> change) => job with { Appliance = change(job.Appliance) };

    public static CourseStage SetUp { get; } = new(StageKind.SetUp) { End = null };

    public static CourseStage Sweep { get; } = new(StageKind.HoseSweep) { End = null };

    public static CourseStage Close { get; } = new(StageKind.Close) { End = null };

    public static CourseStage Change(string label, StepReason reason = StepReason.Usual) =>
        new(new PlanStep(StageKind.CylinderChange) { Cylinder = Jobs.Cylinder(47.6, label), Reason = reason }) { End = null };

    public static CourseStage Pull(StageEnd end = StageEnd.TargetReached, StepReason reason = StepReason.Usual) => new(new PlanStep(StageKind.VaporRecovery) { Reason = reason }) { End = end };

    public static CourseStage Hold(double seconds = 600) => new(StageKind.Hold) { End = StageEnd.TimeOver, Seconds = seconds };

    /// <summary>A run over the stages, ended by a strategy of the test's own.</summary>
    public static PlanRun Run(RecoveryJob job, params CourseStage[] stages)
    {
        var run = new PlanRun(job, new Script(stages));
        run.Run(default, null);
        return run;
    }

    public static RecoveryPlan Plan(RecoveryJob job, params CourseStage[] stages) => RecoveryPlanner.Plan(job, new Script(stages));

    /// <summary>The situation after the stages.</summary>
    public static PlanSituation Situation(RecoveryJob job, params CourseStage[] stages) => new(Run(job, stages));

    /// <summary>Puts what a test tells of a step in the place of its simulation, from where the situation stands or from another state.</summary>
    public static StageResult Tell(this PlanSituation now, CourseStage stage, SimulationState? from = null)
    {
        StageResult result = stage.Result(from ?? now.State);
        now.Remember(stage.Step, from ?? now.State, result);
        return result;
    }

    /// <summary>The appliance at rest with so much in it at a temperature.</summary>
    public static Func<SimulationState, SimulationState> Holds(RecoveryJob job, double kilograms, double kelvins = 293.15, double? metal = null) => state => state with
    {
        Appliance = ApplianceState.FromMeasured(
            job.Appliance, Mass.FromKilograms(kilograms), Temperature.FromKelvins(kelvins), metal is double given ? Temperature.FromKelvins(given) : null),
    };

    /// <summary>Vapor alone at a pressure.</summary>
    public static Func<SimulationState, SimulationState> Stands(RecoveryJob job, double pascals, double kelvins = 293.15) =>
        Holds(job, job.Appliance.Fluid.Model.StateAt(kelvins, pascals).Density * job.Appliance.InternalVolume.CubicMeters, kelvins);

    /// <summary>Parts of an appliance with so much in each, of a thousandth more in the oil of the first where there is oil.</summary>
    public static Func<SimulationState, SimulationState> Parts(RecoveryJob job, params (double Kilograms, double Kelvins)[] parts) => state =>
    {
        SectionState[] sections =
        [
            .. job.Appliance.Sections.Zip(parts, (section, part) => SectionState.AtRest(
                section.Name, job.Appliance.Fluid.Model, section.InternalVolume.CubicMeters, part.Kilograms, part.Kelvins, part.Kelvins, part.Kelvins, 0)),
        ];
        return state with { Appliance = new ApplianceState(job.Appliance, sections, job.Appliance.VaporPortSection) };
    };

    /// <summary>The connected cylinder with so much in it at a temperature.</summary>
    public static Func<SimulationState, SimulationState> Cylinder(RecoveryJob job, double kilograms, double kelvins) => state => state with
    {
        Cylinder = new CylinderState(
            state.Cylinder!.Cylinder,
            SectionState.AtRest(state.Cylinder.Cylinder.Label, job.Appliance.Fluid.Model, state.Cylinder.Cylinder.InternalVolume.CubicMeters, kilograms, kelvins, kelvins, kelvins, 0),
            0),
    };

    public static Func<SimulationState, SimulationState> And(this Func<SimulationState, SimulationState> first, Func<SimulationState, SimulationState> second) => state => second(first(state));

    public static Finding? Said(this IEnumerable<Finding> findings, string code) => findings.SingleOrDefault(finding => finding.Code == code);

    public static double Figure(this Finding finding, string name) => finding.Values.First(value => value.Name == name).InternationalValue!.Value;

    public static string Word(this Finding finding, string name) => finding.Values.First(value => value.Name == name).ToText(DisplayUnits.International);

    /// <summary>Asks for one stage after the other and puts what the test tells of each in the place of its simulation.</summary>
    private sealed class Script(IReadOnlyList<CourseStage> stages) : IRecoveryStrategy
    {
        public PlanStep? Next(PlanSituation now)
        {
            if (now.Stages.Count == stages.Count)
            {
                return null;
            }

            CourseStage stage = stages[now.Stages.Count];
            PlanStep step = stage.Step.Kind == StageKind.SetUp && stage.Step.Cylinder is null ? stage.Step with { Cylinder = now.NextCylinder!.Cylinder } : stage.Step;
            if (stage.End is not null)
            {
                now.Remember(step, stage.Result(now.State));
            }

            return step;
        }
    }
}
