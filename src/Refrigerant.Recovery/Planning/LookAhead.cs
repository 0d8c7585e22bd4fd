using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>Chooses the pull after which a hold passes: plain, with the cylinder cooled, throttled, or with heat on the appliance.</summary>
internal sealed class LookAhead(PlanSituation now)
{
    /// <summary>
    /// Where the rule asks for a pressure above the air, a pull goes no further below it than this share: what it asks, no more. Liquid that stands below it must be boiled nonetheless, and what oil or another part
    /// gives off late may take so long at that pressure that a deeper pull ends sooner.
    /// </summary>
    private const double LowestShare = 0.95;

    /// <summary>Deeper than that it goes where it ends in less than this share of the time, and so much sooner, s. Our choice.</summary>
    private const double MuchSooner = 0.7;
    private const double WorthGoingDeeper = 300;

    /// <summary>A heater that is too strong is tried at a half, a quarter and so on of its power, not below this share.</summary>
    private const double LeastHeat = 0.05;

    private readonly PullSearch _search = new(now);

    /// <summary>The best pull from here.</summary>
    public PullPlan Best()
    {
        double air = now.Job.Barometer.Pressure.Pascals;
        if (!(now.Goal.Pascals > air) || (now.State.Appliance.HasLiquid && now.IsAtGoal))
        {
            return Best(null);
        }

        double level = LowestShare * now.Goal.Pascals;
        PullPlan best = Best(new Pressure(level, PressureUnit.Pascal));
        Pressure?[] deeper = level > air ? [now.Job.Barometer.Pressure, null] : [null];
        foreach (Pressure? lowest in deeper)
        {
            if (best.Seconds < WorthGoingDeeper || best.Fate is not (PullFate.Passes or PullFate.Crawls))
            {
                break;
            }

            PullPlan other = Best(lowest);
            if (other.IsGood && (!best.IsGood || (other.Seconds < MuchSooner * best.Seconds && other.Seconds < best.Seconds - WorthGoingDeeper)))
            {
                best = other;
            }
        }

        return best;
    }

    /// <summary>The best pull that goes no deeper than a pressure; null for no such bound.</summary>
    private PullPlan Best(Pressure? lowest)
    {
        var other = new OtherCylinder(now, _search);
        SimulationInputs cooling = CylinderCooling.Of(now.Stages);
        PlanStep plain = new(StageKind.VaporRecovery)
        {
            Inputs = cooling,
            Reason = cooling == default ? StepReason.Usual : StepReason.Cool,
            LowestPressure = lowest,
        };
        PullPlan best = _search.ToGoal(plain);
        if (best.Fate == PullFate.Limited)
        {
            PullPlan limited = best;
            best = Better([best, .. Cooler(plain)]);
            if (best.How.IsThrottled && other.AtLimit(limited, best) is PullPlan hot)
            {
                return hot;
            }
        }
        else if ((ComesAboveService(best) || CylinderGetsHot(best)) && CylinderCooling.Best(now.Job, cooling) is SimulationInputs cold && cold != cooling)
        {
            PullPlan cooled = _search.ToGoal(plain with { Inputs = cold, Reason = StepReason.Cool });
            best = cooled.Fate <= best.Fate ? cooled : best;
        }

        if (best.Fate == PullFate.Stuck && best.End == StageEnd.PropertyRange && best.After.Appliance.HasLiquid)
        {
            best = _search.AboveSolid(plain) ?? best;
        }

        best = _search.GoOn(best);
        if (other.WhereItCrawls(best) is PullPlan shorter)
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

    /// <summary>Whether the cylinder comes above its marked service pressure.</summary>
    private bool ComesAboveService(PullPlan plan) => now.State.Cylinder is CylinderState state
        && plan.Parts[0].Trajectory.Any(point => point.DischargePascals > state.Cylinder.ServicePressure.Pascals + now.Job.Barometer.Pressure.Pascals);

    /// <summary>Whether the cylinder's content comes above 52 °C (125 °F).</summary>
    private static bool CylinderGetsHot(PullPlan plan) => plan.Parts[0].Trajectory.Any(point => point.CylinderKelvins > CylinderFindings.Hottest);

    private static bool IsBetter(PullPlan warm, PullPlan best) => !IsTooHot(warm) && IsNoWorse(warm, best);

    /// <summary>Whether heat brings the appliance above 52 °C (125 °F), as hot as a cylinder may be, where it was not before.</summary>
    private static bool IsTooHot(PullPlan warm)
    {
        double most = Math.Max(CylinderFindings.Hottest, warm.Parts[0].Before.Appliance.Temperature.Kelvins + 1);
        return warm.Parts.Any(part => part.Trajectory.Any(point => point.ApplianceKelvins > most || point.MetalKelvins > most) || part.Appliance.MetalTemperature.Kelvins > most);
    }

    private static bool IsNoWorse(PullPlan warm, PullPlan best) => warm.Fate < best.Fate || (warm.Fate == best.Fate && warm.Seconds < best.Seconds);

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

    /// <summary>The better fate, then the sooner end; of those that a limit stops the one that leaves least.</summary>
    private static PullPlan Better(IReadOnlyList<PullPlan> plans) => plans
        .OrderBy(plan => plan.Fate)
        .ThenBy(plan => plan.Fate == PullFate.Limited ? plan.After.Appliance.Mass.Kilograms : plan.Seconds).First();

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
