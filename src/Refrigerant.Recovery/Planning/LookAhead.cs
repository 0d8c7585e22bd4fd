using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>Finds, by simulation, the pull after which a hold passes: to the goal, and on from there until it would.</summary>
internal sealed class LookAhead(PlanSituation now)
{
    /// <summary>A hold seen ahead ends this share below the goal, so that the real one passes too.</summary>
    private const double Margin = 2e-3;

    /// <summary>A machine that moves less than this share of its usual pace crawls: common practice, no source.</summary>
    private const double CrawlShare = 0.02;

    /// <summary>The moment to stop is found to this share of the pull, or this many seconds.</summary>
    private const double TimeShare = 0.02;
    private const double TimeStep = 10;

    private const double FirstChunk = 30;
    private const int MostChunks = 14;
    private const int MostBisections = 5;
    private const double ShortestHold = 1;

    private readonly double _hold = now.Job.Times.Hold.Seconds;
    private readonly double _patience = Math.Max(60, now.Job.Times.Patience.Seconds);

    /// <summary>The best pull from here: the plain one, and where that does not do, with cooling, throttled or warm, whichever ends sooner.</summary>
    public PullPlan Best()
    {
        SimulationInputs cooling = CylinderCooling.Of(now.Stages);
        PullPlan plain = Evaluate(new PlanStep(StageKind.VaporRecovery) { Inputs = cooling, Reason = cooling == default ? StepReason.Usual : StepReason.Cool });
        var plans = new List<PullPlan> { plain };
        if (plain.Fate == PullFate.Limited)
        {
            plans.AddRange(Cooler(cooling));
        }

        PullPlan best = Better(plans);
        if (now.Job.Aids.CanWarm && best.Fate != PullFate.Limited)
        {
            PullPlan warm = Evaluate(best.Step with { Duration = null, AppliancePressure = null, Inputs = Warmed(best.Step.Inputs), Reason = StepReason.Warm });
            if (warm.Fate < best.Fate || (warm.Fate == best.Fate && warm.Seconds < best.Seconds))
            {
                double saved = best.IsGood ? best.Seconds - warm.Seconds : 0;
                best = warm with { Step = warm.Step with { Saves = new Duration(saved, DurationUnit.Second) } };
            }
        }

        return best;
    }

    /// <summary>Ways to keep the cylinder below its limits.</summary>
    private IEnumerable<PullPlan> Cooler(SimulationInputs cooling)
    {
        SimulationInputs best = CylinderCooling.Best(now.Job, cooling);
        if (best != cooling)
        {
            PullPlan cooled = Evaluate(new PlanStep(StageKind.VaporRecovery) { Inputs = best, Reason = StepReason.Cool });
            yield return cooled;
            if (cooled.Fate == PullFate.Limited)
            {
                yield return Evaluate(new PlanStep(StageKind.VaporRecovery) { Inputs = best, Reason = StepReason.Cool, IsThrottled = true });
            }
        }

        yield return Evaluate(new PlanStep(StageKind.VaporRecovery) { Inputs = cooling, Reason = StepReason.Throttle, IsThrottled = true });
    }

    private static PullPlan Better(List<PullPlan> plans) => plans.OrderBy(plan => plan.Fate).ThenBy(plan => plan.Seconds).First();

    private SimulationInputs Warmed(SimulationInputs inputs)
    {
        SiteAids aids = now.Job.Aids;
        return inputs with
        {
            HeaterPower = (double)aids.Heater.Watts,
            CrankcaseHeaterPower = now.Job.Appliance.Oil is null ? 0 : (double)aids.CrankcaseHeater.Watts,
            FanFactor = aids.ApplianceFans,
        };
    }

    /// <summary>A pull with given inputs, to where a hold would pass.</summary>
    private PullPlan Evaluate(PlanStep how)
    {
        PlanStep toGoal = how with { AppliancePressure = now.Goal };
        StageResult first = now.Preview(toGoal)!;
        if (ShareDone(first) is double early)
        {
            PlanStep share = how with { Duration = new Duration(early, DurationUnit.Second) };
            StageResult done = now.Preview(share)!;
            if (Passes(done.After))
            {
                return new PullPlan(share, PullFate.Passes, done.Duration.Seconds, done.After, done.End);
            }
        }

        if (CrawlsFrom(first) is double crawl)
        {
            return new PullPlan(
                how with { Duration = new Duration(crawl, DurationUnit.Second), Reason = StepReason.GiveUp }, PullFate.Crawls, crawl, first.After, StageEnd.TimeLimit);
        }

        if (first.End != StageEnd.TargetReached)
        {
            return new PullPlan(toGoal, FateOf(first.End), first.Duration.Seconds, first.After, first.End);
        }

        return Passes(first.After)
            ? new PullPlan(toGoal, PullFate.Passes, first.Duration.Seconds, first.After, first.End)
            : GoOn(how, first);
    }

    /// <summary>On from the goal until a hold would pass.</summary>
    private PullPlan GoOn(PlanStep how, StageResult first)
    {
        StepReason reason = how.Reason != StepReason.Usual ? how.Reason : first.Appliance.HasLiquid ? StepReason.PullLonger : StepReason.PullDeeper;
        SimulationState state = first.After;
        double spent = first.Duration.Seconds;
        double length = Math.Max(FirstChunk, 0.03 * spent);
        double crawled = 0;
        for (int i = 0; i < MostChunks; i++)
        {
            StageResult chunk = now.Preview(how with { Duration = new Duration(length, DurationUnit.Second) }, state)!;
            if (Passes(chunk.After))
            {
                return Narrowed(how with { Reason = reason }, state, spent, chunk);
            }

            spent += chunk.Duration.Seconds;
            if (chunk.End != StageEnd.TimeLimit)
            {
                return new PullPlan(how with { Reason = reason }, FateOf(chunk.End), spent, chunk.After, chunk.End);
            }

            crawled = Flow(chunk) < CrawlShare * now.Pace ? crawled + chunk.Duration.Seconds : 0;
            if (crawled >= _patience)
            {
                break;
            }

            state = chunk.After;
            length = Math.Min(2 * length, crawled > 0 ? Math.Max(FirstChunk, _patience - crawled) : double.PositiveInfinity);
        }

        return new PullPlan(how with { Duration = new Duration(spent, DurationUnit.Second), Reason = StepReason.GiveUp }, PullFate.Crawls, spent, state, StageEnd.TimeLimit);
    }

    /// <summary>The earliest moment in the last part of a pull after which a hold passes.</summary>
    private PullPlan Narrowed(PlanStep how, SimulationState from, double spent, StageResult last)
    {
        double low = 0, high = last.Duration.Seconds;
        StageResult best = last;
        for (int i = 0; i < MostBisections && high - low > Math.Max(TimeStep, TimeShare * (spent + high)); i++)
        {
            double middle = 0.5 * (low + high);
            StageResult tried = now.Preview(how with { Duration = new Duration(middle, DurationUnit.Second) }, from)!;
            if (Passes(tried.After))
            {
                (high, best) = (middle, tried);
            }
            else
            {
                low = middle;
            }
        }

        // The gauge tells when, unless it showed as little before: then the clock does.
        double end = best.Appliance.Pressure.Pascals;
        bool falls = end < 0.999 * Math.Min(from.Appliance.Pressure.Pascals, now.Goal.Pascals)
            && best.Trajectory.All(point => point.AppliancePascals >= end * (1 - 1e-9));
        double total = spent + high;
        PlanStep step = falls
            ? how with { AppliancePressure = new Pressure(end - now.Job.GaugeError, PressureUnit.Pascal), Duration = null }
            : how with { Duration = new Duration(total, DurationUnit.Second) };
        return new PullPlan(step, PullFate.Passes, total, best.After, best.End);
    }

    /// <summary>Whether a hold from here would pass, or the share asked for is out; never over liquid.</summary>
    private bool Passes(SimulationState state)
    {
        if (state.Appliance.HasLiquid || !now.ShowsGoal(state.Appliance))
        {
            return false;
        }

        if (_hold < ShortestHold || now.IsShare(state.Appliance))
        {
            return true;
        }

        StageResult? hold = now.Preview(
            new PlanStep(StageKind.Hold) { AppliancePressure = new Pressure((1 - Margin) * now.Goal.Pascals, PressureUnit.Pascal) }, state);
        return hold is null || (hold.End == StageEnd.TimeOver && !hold.Appliance.HasLiquid);
    }

    /// <summary>When the share that a rule asks for instead of a pressure is out and no liquid left, s; null where that is not so.</summary>
    private double? ShareDone(StageResult pull)
    {
        if (now.Requirement.RequiredRecovery is not Ratio share)
        {
            return null;
        }

        double left = (1 - share.DecimalFractions) * now.Job.Appliance.Charge.Kilograms;
        foreach (TrajectoryPoint point in pull.Trajectory)
        {
            if (point.LiquidKilograms <= 0 && point.ApplianceKilograms <= left)
            {
                return Math.Max(1, point.Seconds);
            }
        }

        return null;
    }

    /// <summary>When a person gives up on a pull that crawls, s; null where it does not.</summary>
    private double? CrawlsFrom(StageResult pull)
    {
        double since = double.NaN;
        foreach (TrajectoryPoint point in pull.Trajectory)
        {
            if (point.KilogramsPerSecond >= CrawlShare * now.Pace)
            {
                since = double.NaN;
            }
            else if (double.IsNaN(since))
            {
                since = point.Seconds;
            }
            else if (point.Seconds - since > _patience)
            {
                return since + _patience;
            }
        }

        return null;
    }

    private static double Flow(StageResult result) => result.Trajectory.Count > 0 ? result.Trajectory[result.Trajectory.Count - 1].KilogramsPerSecond : 0;

    private static PullFate FateOf(StageEnd end) => end switch
    {
        StageEnd.CylinderFull => PullFate.CylinderFull,
        StageEnd.HighPressureCutout or StageEnd.CylinderPressure or StageEnd.ThermalCutout or StageEnd.DesignPressure => PullFate.Limited,
        _ => PullFate.Stuck,
    };
}
