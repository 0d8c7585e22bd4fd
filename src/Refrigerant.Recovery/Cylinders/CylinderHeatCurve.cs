using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>Pressure and liquid fill of a closed cylinder against its temperature. Immutable.</summary>
/// <remarks>
/// The cylinder is taken as rigid and free of air. Past the liquid-full point the real pressure is somewhat lower, for steel stretches; the
/// cylinder can burst there all the same.
/// </remarks>
public sealed record CylinderHeatCurve
{
    private readonly double? _liquidFull;

    private CylinderHeatCurve(IReadOnlyList<CylinderHeatPoint> points, double? liquidFull, bool endsEarly)
    {
        Points = new ValueList<CylinderHeatPoint>([.. points]);
        _liquidFull = liquidFull;
        EndsEarly = endsEarly;
    }

    /// <summary>The points, coldest first.</summary>
    public IReadOnlyList<CylinderHeatPoint> Points { get; }

    /// <summary>The temperature at which the cylinder is liquid-full, also where it lies outside the points; null where it never is.</summary>
    public Temperature? LiquidFullTemperature => _liquidFull is double kelvins ? new Temperature(kelvins, TemperatureUnit.Kelvin) : null;

    /// <summary>Whether the points end before the temperature asked for, because pressure or temperature leaves the range of the equation.</summary>
    public bool EndsEarly { get; }

    internal static CylinderHeatCurve Create(ClosedVessel vessel, double from, double to, int intervals)
    {
        List<CylinderHeatPoint> points = new(intervals + 2) { Point(from, vessel.At(from)) };
        double? full = vessel.LiquidFullTemperature;
        double previous = from;
        for (int i = 1; i <= intervals; i++)
        {
            double temperature = from + ((to - from) * i / intervals);
            if (full is double kink && kink > previous && kink < temperature)
            {
                points.Add(Point(kink, vessel.At(kink)));
            }

            if (vessel.TryAt(temperature) is not VesselPoint state)
            {
                return new CylinderHeatCurve(points, full, true);
            }

            points.Add(Point(temperature, state));
            previous = temperature;
        }

        return new CylinderHeatCurve(points, full, false);
    }

    private static CylinderHeatPoint Point(double temperature, in VesselPoint state) => new(
        temperature,
        state.Bulk.Pressure,
        state.Bulk.Phase == Phase.Supercritical ? null : state.LiquidVolumeFraction);

    /// <summary>Where it becomes liquid-full.</summary>
    public override string ToString() => _liquidFull is double kelvins ? FormattableString.Invariant($"liquid-full at {kelvins - 273.15:G7} °C") : "not liquid-full within the curve";
}
