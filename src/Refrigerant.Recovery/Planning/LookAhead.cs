using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>Chooses the pull after which a hold passes: plain, with the cylinder cooled, throttled, or with heat on the appliance.</summary>
internal sealed class LookAhead(PlanSituation now)
{
    /// <summary>Where the rule asks for a pressure above the air, no pull goes further below it than this share: what it asks, no more. Liquid that stands below it must be boiled nonetheless.</summary>
    private const double LowestShare = 0.95;

    /// <summary>A heater that is too strong is tried at a half, a quarter and so on of its power, not below this share.</summary>
    private const double LeastHeat = 0.05;

    /// <summary>A wait of less than this many changes of the cylinder is not looked into. Our choice.</summary>
    private const double LongWait = 3;

    /// <summary>Another cylinder helps whose pressure is below this share of the connected one's.</summary>
    private const double Lower = 0.7;

    /// <summary>And that ends the pull in less than this share of the time that is left. Our choice.</summary>
    private const double Sooner = 0.7;

    private readonly PullSearch _search = new(now);

    /// <summary>The best pull from here.</summary>
    public PullPlan Best()
    {
        SimulationInputs cooling = CylinderCooling.Of(now.Stages);
        PlanStep plain = new(StageKind.VaporRecovery)
        {
            Inputs = cooling,
            Reason = cooling == default ? StepReason.Usual : StepReason.Cool,
            LowestPressure = now.Goal.Pascals > now.Job.Barometer.Pressure.Pascals && !(now.State.Appliance.HasLiquid && now.IsAtGoal) ? new Pressure(LowestShare * now.Goal.Pascals, PressureUnit.Pascal) : null,
        };
        PullPlan best = _search.ToGoal(plain);
        if (best.Fate == PullFate.Limited)
        {
            best = Better([best, .. Cooler(plain)]);
        }

        if (best.Fate == PullFate.Stuck && best.End == StageEnd.PropertyRange && best.After.Appliance.HasLiquid)
        {
            best = _search.AboveSolid(plain) ?? best;
        }

        best = _search.GoOn(best);
        if (ForOtherCylinder(best) is PullPlan shorter)
        {
            return shorter;
        }

        if (now.Job.Aids.CanWarm && best.Fate != PullFate.Limited)
        {
            PullPlan warm = Warm(best, 1);
            for (double share = 0.5; share > LeastHeat && !IsBetter(warm, best) && (double)now.Job.Aids.Heater.Watts > 0; share /= 2)
            {
                warm = Warm(best, share);
            }

            if (IsBetter(warm, best))
            {
                double saved = best.IsGood ? best.Seconds - warm.Seconds : 0;
                PlanStep step = warm.Step with { Saves = new Duration(saved, DurationUnit.Second) };
                best = warm with { Step = step };
            }
        }

        return best;
    }

    /// <summary>
    /// The pull up to where the cylinder's pressure leaves the machine little to draw, where another cylinder, cooler or emptier, lets it end sooner from there; null where it does not.
    /// </summary>
    private PullPlan? ForOtherCylinder(PullPlan best)
    {
        double change = now.Job.Times.CylinderChange.Seconds;
        if (best.Fate is not (PullFate.Passes or PullFate.Stuck or PullFate.Crawls) || best.Seconds < LongWait * change || now.NextCylinder is not CylinderStanding other
            || now.WithCylinder(other).Cylinder is not CylinderState fresh)
        {
            return null;
        }

        foreach (TrajectoryPoint point in best.Parts[0].Trajectory)
        {
            bool crawls = point.LiquidKilograms <= 0 && fresh.Pressure.Pascals < Lower * point.DischargePascals && point.AppliancePascals > now.Goal.Pascals
                && now.Job.Machine.EfficiencyAt(point.DischargePascals / point.AppliancePascals) < StandardStrategy.NearDeepest * now.Job.Machine.VolumetricEfficiency;
            if (!crawls || point.Seconds < 1)
            {
                continue;
            }

            double left = best.Seconds - point.Seconds;
            PlanStep step = best.How with { Duration = new Duration(point.Seconds, DurationUnit.Second), Reason = StepReason.UntilChange };
            if (left < LongWait * change || now.Preview(step) is not { End: StageEnd.TimeLimit } cut)
            {
                return null;
            }

            PullPlan after = _search.ToGoal(best.How, cut.After with { Cylinder = fresh });
            return after.Fate <= PullFate.AtGoal && change + after.Seconds < Sooner * left ? new PullPlan(best.How, step, PullFate.Passes, point.Seconds, [cut]) : null;
        }

        return null;
    }

    private static bool IsBetter(PullPlan warm, PullPlan best) => warm.Fate < best.Fate || (warm.Fate == best.Fate && warm.Seconds < best.Seconds);

    /// <summary>The pull with heat on the appliance, the heater at a share of its power.</summary>
    private PullPlan Warm(PullPlan cold, double share) =>
        _search.GoOn(_search.ToGoal(cold.How with { Inputs = Warmed(cold.How.Inputs, share), Reason = StepReason.Warm }));

    /// <summary>Ways to keep the cylinder below its limits.</summary>
    private IEnumerable<PullPlan> Cooler(PlanStep plain)
    {
        SimulationInputs best = CylinderCooling.Best(now.Job, plain.Inputs);
        if (best != plain.Inputs)
        {
            PlanStep cooled = plain with { Inputs = best, Reason = StepReason.Cool };
            PullPlan plan = _search.ToGoal(cooled);
            yield return plan;
            if (plan.Fate == PullFate.Limited)
            {
                yield return _search.ToGoal(cooled with { IsThrottled = true });
            }
        }

        yield return _search.ToGoal(plain with { Reason = StepReason.Throttle, IsThrottled = true });
    }

    private static PullPlan Better(IReadOnlyList<PullPlan> plans) => plans.OrderBy(plan => plan.Fate).ThenBy(plan => plan.Seconds).First();

    private SimulationInputs Warmed(SimulationInputs inputs, double share)
    {
        SiteAids aids = now.Job.Aids;
        return inputs with
        {
            HeaterPower = share * (double)aids.Heater.Watts,
            CrankcaseHeaterPower = now.Job.Appliance.Oil is null ? 0 : (double)aids.CrankcaseHeater.Watts,
            FanFactor = aids.ApplianceFans,
        };
    }
}
