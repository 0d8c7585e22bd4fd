using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Planning;

/// <summary>Parts of one stage, simulated one after the other, as one result.</summary>
internal static class StageResults
{
    /// <summary>Joins them.</summary>
    /// <param name="parts">At least one, each starting where the one before ends.</param>
    /// <param name="end">Why the whole ended.</param>
    public static StageResult Join(IReadOnlyList<StageResult> parts, StageEnd end)
    {
        StageResult first = parts[0], last = parts[parts.Count - 1];
        var points = new List<TrajectoryPoint>();
        double start = 0;
        foreach (StageResult part in parts)
        {
            foreach (TrajectoryPoint point in part.Trajectory)
            {
                if (points.Count == 0 || point.Seconds > 0)
                {
                    points.Add(point with { Seconds = point.Seconds + start });
                }
            }

            start += part.Duration.Seconds;
        }

        StageResult? dry = parts.FirstOrDefault(part => part.LiquidGoneAfter is not null);
        double before = dry is null ? 0 : parts.TakeWhile(part => part != dry).Sum(part => part.Duration.Seconds);
        var figures = new StageFigures
        {
            LiquidGoneAt = dry is null || last.Appliance.HasLiquid ? double.NaN : before + dry.LiquidGoneAfter!.Value.Seconds,
            Coldest = parts.Min(part => part.ColdestSurface.Kelvins),
            Passed = parts.Sum(part => part.MachinePassed),
            FreeFlow = parts.Sum(part => part.FreeFlow),
            HottestDischarge = parts.Max(part => part.HottestDischarge?.Kelvins) ?? double.NaN,
            LargestDrive = parts.Max(part => part.LargestDrive.Pascals),
            CylinderOutOfRange = last.CylinderOutOfRange,
            LiquidMoved = parts.Sum(part => part.LiquidMoved.Kilograms),
            Fractionation = first.Fractionation is not null && first.Before.Appliance.Parts.Count > 0 ? Drift(points, last) : null,
        };
        var closure = new Closure(
            parts.Max(part => part.Closure.Mass), parts.Max(part => part.Closure.Energy), parts.Sum(part => part.Closure.Steps), parts.Sum(part => part.Closure.Evaluations));
        return new StageResult(end, start, first.Before, last.After, Transfers(parts), new Trajectory([.. points]), figures, [.. last.Findings.Where(finding => finding.Code != StageCodes.TimeOver.Id)], closure);
    }

    private static FractionationResult? Drift(List<TrajectoryPoint> points, StageResult last)
    {
        FractionationPoint[] followed = [.. points.Where(point => point.Content is not null).Select(point => new FractionationPoint(point, 0))];
        return followed.Length > 0 && last.Fractionation is FractionationResult result ? new FractionationResult(result.Model, followed) : null;
    }

    private static IReadOnlyList<Transfer> Transfers(IReadOnlyList<StageResult> parts)
    {
        var sums = new List<Transfer>();
        foreach (Transfer transfer in parts[0].Transfers)
        {
            Transfer[] same = [.. parts.SelectMany(part => part.Transfers).Where(t => t.By == transfer.By && t.From == transfer.From && t.To == transfer.To)];
            sums.Add(new Transfer(
                transfer.By,
                transfer.From,
                transfer.To,
                same.Sum(t => t.Mass.Kilograms),
                same.Sum(t => t.EnergyOut.Joules),
                same.Sum(t => t.EnergyIn.Joules),
                Array.AsReadOnly(transfer.Components.Select((component, i) => (component.Designation, same.Sum(t => i < t.Components.Count ? t.Components[i].Kilograms : 0))).ToArray())));
        }

        return sums.AsReadOnly();
    }
}
