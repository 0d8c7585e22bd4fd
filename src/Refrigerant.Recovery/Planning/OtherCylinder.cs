using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>Whether a pull ends sooner that is stopped for another cylinder, cooler or emptier than the connected one.</summary>
internal sealed class OtherCylinder(PlanSituation now, PullSearch search)
{
    /// <summary>A wait of less than this many changes of the cylinder is not looked into. Our choice.</summary>
    private const double LongWait = 3;

    /// <summary>Another cylinder helps whose pressure is below this share of the connected one's.</summary>
    private const double Lower = 0.7;

    /// <summary>And that ends the pull in less than this share of the time that is left. Our choice.</summary>
    private const double Sooner = 0.7;

    private readonly double _change = now.Job.Times.CylinderChange.Seconds;

    /// <summary>
    /// The pull up to where the cylinder's pressure leaves the machine little to draw, where another one lets it end sooner from there; null where it does not.
    /// </summary>
    public PullPlan? WhereItCrawls(PullPlan best)
    {
        if (best.Fate is not (PullFate.Passes or PullFate.Stuck or PullFate.Crawls) || best.Seconds < LongWait * _change || Next is not CylinderState fresh)
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
            if (left < LongWait * _change || now.Preview(step) is not { End: StageEnd.TimeLimit } cut)
            {
                return null;
            }

            PullPlan after = search.ToGoal(best.How, cut.After with { Cylinder = fresh });
            return after.Fate <= PullFate.AtGoal && _change + after.Seconds < Sooner * left ? new PullPlan(best.How, step, PullFate.Passes, point.Seconds, [cut]) : null;
        }

        return null;
    }

    /// <summary>The pull up to the limit of a hot cylinder, where another one lets it end sooner from there than throttling does; null where it does not.</summary>
    public PullPlan? AtLimit(PullPlan limited, PullPlan throttled)
    {
        if (limited.Seconds < 1 || throttled.Seconds - limited.Seconds < LongWait * _change || limited.End == StageEnd.ThermalCutout
            || Next is not CylinderState fresh || !(fresh.Pressure.Pascals < Lower * limited.After.Cylinder!.Pressure.Pascals))
        {
            return null;
        }

        PullPlan after = search.ToGoal(limited.How, limited.After with { Cylinder = fresh });
        return limited.Seconds + _change + after.Seconds < Sooner * throttled.Seconds ? limited with { Step = limited.Step with { Reason = StepReason.UntilLimit }, Fate = PullFate.Passes } : null;
    }

    /// <summary>The next cylinder as it would stand when connected; null where there is none.</summary>
    private CylinderState? Next => now.NextCylinder is CylinderStanding other ? now.WithCylinder(other).Cylinder : null;
}
