using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>Finds, by simulation, how long to pull on from the goal until a hold would pass.</summary>
/// <remarks>
/// What a hold comes to is foreseen from the pull: p_hold = κ·(p·T_a/T + ṁ·t_hold·R·T_a/(M·V)), the gas warmed to the air (or to the temperature at which the place has the level hold) and what still flows off at the end of the pull (from
/// oil, from a part behind a restriction) added to it; κ, 1 at first, is corrected by each hold that is simulated. Only a simulated hold decides.
/// </remarks>
internal sealed class PullSearch(PlanSituation now)
{
    private const double GasConstant = 8.314462618;

    /// <summary>A hold seen ahead ends this share below the goal, so that the real one passes too.</summary>
    private const double Margin = 2e-3;

    /// <summary>A gain of less than this share of the pull, or of these seconds, is not looked for.</summary>
    private const double TimeShare = 0.01;
    private const double TimeStep = 10;

    /// <summary>
    /// A pull crawls that moves less than this share of the machine's usual pace, and less than this share of the charge within a person's patience: a small machine on a large charge
    /// takes long, a large one behind a thin hose or over cold liquid waits, and neither is given up for it. Our choice.
    /// </summary>
    private const double CrawlShare = 0.02;

    /// <summary>A person waits no longer than this, s, for what cannot come. Our choice.</summary>
    private const double Hopeless = 600;

    /// <summary>After a hold that fails, no nearer to it than this share of what is left of the part.</summary>
    private const double LeastAdvance = 0.3;

    private const double FirstPart = 30;
    private const int MostParts = 16;

    /// <summary>Liquid is kept at this many times the pressure of the coldest that is computed. Our choice.</summary>
    private const double AboveColdest = 1.05;

    /// <summary>Boiling above dry ice is looked at for so long, s.</summary>
    private const double LongestBoiling = 86_400;
    private const int MostHolds = 4;
    private const double ShortestHold = 1;

    private readonly double _hold = now.Job.Times.Hold.Seconds >= ShortestHold ? now.Job.Times.Hold.Seconds : 0;
    private readonly double _patience = Math.Max(60, now.Job.Times.Patience.Seconds);
    private readonly double _ambient = now.Job.Appliance.SurroundingsKelvin;
    private readonly double _warm = now.Job.Appliance.SurroundingsKelvin * now.ToReference(now.Job.Appliance.SurroundingsKelvin);
    private readonly double _perKilogram = GasConstant * now.Job.Appliance.SurroundingsKelvin
        / (now.Job.Appliance.Fluid.MolarMass.KilogramsPerMole * now.Job.Appliance.InternalVolume.CubicMeters);

    private readonly double _crawl = CrawlShare * Math.Min(now.Pace, now.Job.Appliance.Charge.Kilograms / Math.Max(60, now.Job.Times.Patience.Seconds));

    private double _correction = 1;

    /// <summary>A pull to the goal, or to where something stops it.</summary>
    /// <param name="how">Inputs, throttling and reason.</param>
    public PullPlan ToGoal(PlanStep how) => ToGoal(how, now.State);

    /// <summary>The same from another state.</summary>
    public PullPlan ToGoal(PlanStep how, SimulationState from)
    {
        PlanStep step = how with { AppliancePressure = now.Goal };
        StageResult first = now.Preview(step, from)!;
        if (ReferenceEquals(from, now.State) && ShareDone(how, first) is PullPlan share)
        {
            return share;
        }

        if (CrawlsFrom(first) is double crawl)
        {
            StageResult cut = now.Preview(step with { Duration = Time(crawl), Reason = StepReason.GiveUp }, from)!;
            return new PullPlan(how, step with { Duration = Time(crawl), Reason = StepReason.GiveUp }, PullFate.Crawls, crawl, [cut]);
        }

        return new PullPlan(how, step, first.End == StageEnd.TargetReached ? PullFate.AtGoal : FateOf(first.End), first.Duration.Seconds, [first]);
    }

    /// <summary>
    /// A pull that keeps what is liquid above the coldest that is computed (of carbon dioxide: above dry ice) until the last of it has boiled; null where that is not so, or crawls.
    /// </summary>
    public PullPlan? AboveSolid(PlanStep how)
    {
        PropertyModel model = now.Job.Appliance.Fluid.Model;
        double floor = AboveColdest * model.SaturationAtTemperature(model.Range.MinimumTemperature).Bubble.Pressure;
        if (!(now.State.Appliance.Pressure.Pascals > floor))
        {
            return null;
        }

        PlanStep step = how with { LowestPressure = new Pressure(floor, PressureUnit.Pascal), Reason = StepReason.KeepLiquid };
        StageResult seen = now.Preview(step with { Duration = Time(LongestBoiling) })!;
        if (seen.LiquidGoneAfter is not Duration dry || CrawlsFrom(seen) < dry.Seconds)
        {
            return null;
        }

        PlanStep timed = step with { Duration = Time(dry.Seconds + 1) };
        StageResult boiled = now.Preview(timed)!;
        return new PullPlan(step, timed, PullFate.Stuck, boiled.Duration.Seconds, [boiled]);
    }

    /// <summary>On from the goal until a hold would pass; what does not come to the goal stays as it is.</summary>
    /// <param name="toGoal">The pull to the goal.</param>
    public PullPlan GoOn(PullPlan toGoal)
    {
        if (toGoal.Fate != PullFate.AtGoal)
        {
            return toGoal;
        }

        StageResult first = toGoal.Last;
        PlanStep how = toGoal.How with
        {
            Reason = toGoal.How.Reason != StepReason.Usual ? toGoal.How.Reason : first.Appliance.HasLiquid ? StepReason.PullLonger : StepReason.PullDeeper,
        };
        if (_hold == 0 && !first.Appliance.HasLiquid && now.ShowsGoal(first.Appliance) && !now.StandsBehind(first.Appliance))
        {
            return toGoal with { Fate = PullFate.Passes };
        }

        _correction = 1;
        var parts = new List<StageResult> { first };
        double length = Math.Max(FirstPart, 0.05 * first.Duration.Seconds);
        double crawlsSince = double.NaN;
        for (int i = 0; i < MostParts; i++)
        {
            SimulationState from = parts[parts.Count - 1].After;
            StageResult part = now.Preview(how with { Duration = Time(length) }, from)!;
            if (Stop(how, parts, from, part) is PullPlan found)
            {
                return found;
            }

            if (CrawlsFrom(part, ref crawlsSince) is double crawl)
            {
                parts.Add(now.Preview(how with { Duration = Time(crawl) }, from)!);
                break;
            }

            parts.Add(part);
            if (part.End != StageEnd.TimeLimit)
            {
                return Plan(how, parts, FateOf(part.End), byGauge: false);
            }

            crawlsSince -= part.Duration.Seconds;
            length = Math.Min(2 * length, double.IsNaN(crawlsSince) ? double.PositiveInfinity : Math.Max(FirstPart, _patience + crawlsSince));
        }

        return Plan(how with { Reason = StepReason.GiveUp }, parts, PullFate.Crawls, byGauge: false);
    }

    /// <summary>Where in a part of the pull to stop so that a hold passes; null where it is not in it.</summary>
    private PullPlan? Stop(PlanStep how, List<StageResult> before, SimulationState from, StageResult part)
    {
        PullPlan? best = null;
        double spent = before.Sum(earlier => earlier.Duration.Seconds);
        double low = 0, high = double.PositiveInfinity;
        bool isLast = part.End != StageEnd.TimeLimit;
        bool calibrates = _hold > 0 && _correction == 1 && !part.Appliance.HasLiquid;
        for (int i = 0; i < MostHolds; i++)
        {
            StageResult cut = part;
            if (!(calibrates && i == 0))
            {
                double at = Foreseen(part, low, high) ?? (best is not null ? 0.5 * (low + high) : isLast && i == 0 ? part.Duration.Seconds : double.NaN);
                if (best is null && low > 0 && !(at - low > LeastAdvance * (part.Duration.Seconds - low)))
                {
                    at = low + (LeastAdvance * (part.Duration.Seconds - low));
                }

                if (!(high - at > Math.Max(TimeStep, TimeShare * (spent + at))))
                {
                    break;
                }

                cut = at >= 0.9 * part.Duration.Seconds || at < 1 ? part : now.Preview(how with { Duration = Time(at) }, from)!;
            }

            if (cut.Trajectory.Count == 0)
            {
                // It could not be computed from here.
                break;
            }

            double length = cut.Duration.Seconds;
            (bool passes, double pressure) = Hold(cut.After);
            _correction *= Math.Max(0.02, Math.Min(5, pressure / Foresee(cut.Trajectory[cut.Trajectory.Count - 1])));
            if (!passes)
            {
                low = Math.Max(low, length);
                if (cut == part)
                {
                    break;
                }

                continue;
            }

            high = length;
            best = Plan(how, [.. before, cut], PullFate.Passes, byGauge: cut.End == StageEnd.TimeLimit);
        }

        return best;
    }

    /// <summary>The first moment of a part without liquid, between two, from which a hold is foreseen to pass, s; null where there is none.</summary>
    private double? Foreseen(StageResult part, double after, double before)
    {
        Trajectory points = part.Trajectory;
        for (int i = 1; i < points.Count && points[i].Seconds < before; i++)
        {
            if (points[i].Seconds > after && points[i].LiquidKilograms <= 0 && Foresee(points[i]) <= (_hold == 0 ? 1 : 1 - Margin) * now.Goal.Pascals)
            {
                return points[i].Seconds;
            }
        }

        return null;
    }

    /// <summary>Pressure at the end of a hold from a moment of a pull, Pa.</summary>
    private double Foresee(in TrajectoryPoint point) => _hold == 0
        ? (point.AppliancePascals - now.Job.GaugeError) * now.ToReference(point.ApplianceKelvins)
        : _correction * ((point.AppliancePascals * _warm / point.ApplianceKelvins) + (Math.Max(0, point.KilogramsPerSecond) * _hold * _perKilogram) - now.Job.GaugeError);

    private (bool Passes, double Pressure) Hold(SimulationState state)
    {
        if (_hold == 0)
        {
            return (!state.Appliance.HasLiquid && now.ShowsGoal(state.Appliance) && !now.StandsBehind(state.Appliance), state.Appliance.Pressure.Pascals);
        }

        StageResult? hold = now.Preview(new PlanStep(StageKind.Hold), state);
        double pressure = hold is null ? double.PositiveInfinity
            : (hold.Appliance.Pressure.Pascals - now.Job.GaugeError) * now.ToReference(hold.Appliance.Temperature.Kelvins);
        return (hold is { End: StageEnd.TimeOver, Appliance.HasLiquid: false } && !now.StandsBehind(hold.Appliance) && pressure <= (1 - (0.5 * Margin)) * now.Goal.Pascals, pressure);
    }

    /// <summary>One step for all parts: to where the gauge stood at their end, or, where it stood as low before, by the clock.</summary>
    private PullPlan Plan(PlanStep how, IReadOnlyList<StageResult> parts, PullFate fate, bool byGauge)
    {
        StageResult last = parts[parts.Count - 1];
        double end = last.Appliance.Pressure.Pascals;
        double total = parts.Sum(part => part.Duration.Seconds);
        bool falls = byGauge && end < 0.999 * now.Goal.Pascals && parts.All(part => part.Trajectory.All(point => point.AppliancePascals >= end * (1 - 1e-9)));
        PlanStep step = falls ? how with { AppliancePressure = new Pressure(end - now.Job.GaugeError, PressureUnit.Pascal) }
            : last.End == StageEnd.TimeLimit ? how with { Duration = Time(total) }
            : how;
        now.Remember(step, StageResults.Join(parts, falls ? StageEnd.TargetReached : last.End));
        return new PullPlan(how, step, fate, total, parts);
    }

    /// <summary>
    /// A pull until the share that a rule asks for instead of a pressure is out and no liquid left, and on to the pressure of the air where it comes to that before it crawls: what is left must not blow out when
    /// the appliance is opened. Null where that is not so.
    /// </summary>
    private PullPlan? ShareDone(PlanStep how, StageResult pull)
    {
        if (now.Requirement.RequiredRecovery is null)
        {
            return null;
        }

        double left = now.LeftByShare;
        double air = now.Job.Barometer.Pressure.Pascals;
        double longest = CrawlsFrom(pull) ?? double.PositiveInfinity;
        double at = double.NaN;
        foreach (TrajectoryPoint point in pull.Trajectory)
        {
            bool isOut = point.LiquidKilograms <= 0 && point.ApplianceKilograms <= left;
            if (isOut && point.AppliancePascals <= air && point.Seconds <= longest)
            {
                at = point.Seconds;
                break;
            }

            at = isOut && double.IsNaN(at) ? point.Seconds : at;
        }

        if (double.IsNaN(at))
        {
            return null;
        }

        PlanStep step = how with { Duration = Time(Math.Max(1, at)) };
        StageResult done = now.Preview(step)!;
        return now.IsShare(done.Appliance) && !done.Appliance.HasLiquid ? new PullPlan(how, step, PullFate.Passes, done.Duration.Seconds, [done]) : null;
    }

    /// <summary>When a person gives up on a pull that crawls, s; null where it does not.</summary>
    private double? CrawlsFrom(StageResult pull)
    {
        double since = double.NaN;
        return CrawlsFrom(pull, ref since);
    }

    /// <summary>The same of a part of a pull.</summary>
    /// <param name="pull">The part.</param>
    /// <param name="since">Since when it crawls, s from the start of the part: below zero from an earlier part, NaN where it does not.</param>
    private double? CrawlsFrom(StageResult pull, ref double since)
    {
        double patience = IsHopeless(pull) ? Math.Min(Hopeless, _patience) : _patience;
        foreach (TrajectoryPoint point in pull.Trajectory)
        {
            if (!Crawls(point))
            {
                since = double.NaN;
            }
            else if (double.IsNaN(since))
            {
                since = point.Seconds;
            }
            else if (point.Seconds - since >= patience)
            {
                return since + patience;
            }
        }

        return null;
    }

    /// <summary>Whether no waiting helps: against this cylinder, even as cool as the air makes it, the machine gets no deeper than above the goal, and no oil gives off gas, or the liquid that is left is where nothing leads to the hose.</summary>
    private bool IsHopeless(StageResult pull)
    {
        if (pull.Cylinder is CylinderState cylinder && !pull.Appliance.HasLiquid && now.Job.Appliance.Oil is null)
        {
            double cool = now.Job.Appliance.Fluid.Model.TrySaturationAtTemperature(_ambient, out SaturationPoint at) ? at.Bubble.Pressure : double.PositiveInfinity;
            return now.Job.Machine.DeepestVacuum(new Pressure(Math.Min(cool, cylinder.Pressure.Pascals), PressureUnit.Pascal)) > now.Goal;
        }

        return now.IsLiquidCutOff(pull.Appliance);
    }

    private bool Crawls(in TrajectoryPoint point) => point.KilogramsPerSecond < _crawl;

    private static Duration Time(double seconds) => new(Math.Max(1, Math.Min(8.64e7, seconds)), DurationUnit.Second);

    private static PullFate FateOf(StageEnd end) => end switch
    {
        StageEnd.CylinderFull => PullFate.CylinderFull,
        StageEnd.HighPressureCutout or StageEnd.CylinderPressure or StageEnd.ThermalCutout or StageEnd.DesignPressure => PullFate.Limited,
        _ => PullFate.Stuck,
    };
}
