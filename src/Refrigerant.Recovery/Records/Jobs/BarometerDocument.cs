using Refrigerant.Recovery.Gauges;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>The air at the place, by its elevation or by the reading of a barometer.</summary>
internal sealed record BarometerDocument
{
    public const string OneOf = "give one of elevationMeters and pressureKilopascalsAbsolute.";

    /// <summary>Elevation above sea level, -430 to 11 000 m, for the standard atmosphere. Give this or pressureKilopascalsAbsolute.</summary>
    public double? ElevationMeters { get; init; }

    /// <summary>The barometer as read at the place, 10 to 200 kPa, not reduced to sea level. Give this or elevationMeters.</summary>
    public double? PressureKilopascalsAbsolute { get; init; }

    /// <summary>Null for the standard atmosphere, the default.</summary>
    public static BarometerDocument? From(Barometer barometer) =>
        ReferenceEquals(barometer, Barometer.Standard) ? null
        : barometer.ElevationMeters is double elevation ? new() { ElevationMeters = Exact.Number(elevation) }
        : new() { PressureKilopascalsAbsolute = Exact.Number(barometer.Kilopascals) };

    public Barometer ToBarometer(DocumentNode node) => (ElevationMeters, PressureKilopascalsAbsolute) switch
    {
        (double elevation, null) => node.Member("elevationMeters").Build(() => Barometer.AtElevation(Exact.LengthOf(elevation))),
        (null, double pressure) => node.Member("pressureKilopascalsAbsolute").Build(() => Barometer.Reading(Exact.PressureOf(pressure))),
        _ => throw node.Wrong(OneOf),
    };
}
