using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>What the scale shows on the way through a stage.</summary>
internal static class CylinderReadings
{
    /// <summary>Readings of the scale that are worth writing down.</summary>
    private const int MostReadings = 8;

    /// <summary>Readings at even times; none where nothing moves.</summary>
    public static IReadOnlyList<ScaleReading> For(StageKind kind, StageResult? result, CylinderStanding? cylinder)
    {
        if (cylinder is null || result is null || result.Trajectory.Count < 2 || !StepSimulation.MovesRefrigerant(kind))
        {
            return [];
        }

        double end = result.Duration.Seconds;
        double tare = cylinder.Cylinder.TareWeight.Kilograms;
        var readings = new List<ScaleReading>(MostReadings + 1);
        for (int i = 0; i <= MostReadings; i++)
        {
            double time = end * i / MostReadings;
            readings.Add(new ScaleReading(new Duration(time, DurationUnit.Second), new Mass(tare + Content(result.Trajectory, time), MassUnit.Kilogram)));
        }

        return readings.AsReadOnly();
    }

    /// <summary>kg in the cylinder at a time, s, between the points of a course.</summary>
    public static double Content(Trajectory points, double time)
    {
        int at = 0;
        while (at < points.Count - 2 && points[at + 1].Seconds < time)
        {
            at++;
        }

        double span = points[at + 1].Seconds - points[at].Seconds;
        double share = span > 0 ? Math.Min(1, Math.Max(0, (time - points[at].Seconds) / span)) : 0;
        return points[at].CylinderKilograms + (share * (points[at + 1].CylinderKilograms - points[at].CylinderKilograms));
    }
}
