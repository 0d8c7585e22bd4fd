using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>What is at hand to cool a cylinder and to warm an appliance; never a flame on either.</summary>
internal sealed record AidsDocument
{
    /// <summary>Whether there is ice enough for a bath around the cylinder; false by default.</summary>
    public bool? HasIce { get; init; }

    /// <summary>Temperature of water for a bath around the cylinder, 0 °C to 60 °C; none by default.</summary>
    public double? WaterBathCelsius { get; init; }

    /// <summary>Whether there is a fan to blow on the cylinder; false by default.</summary>
    public bool? HasCylinderFan { get; init; }

    /// <summary>Electric heat for the appliance (blanket, warm box), 0 to 1 MW; none by default.</summary>
    public double? HeaterWatts { get; init; }

    /// <summary>Crankcase heater of the appliance's compressor, 0 to 100 kW; none by default.</summary>
    public double? CrankcaseHeaterWatts { get; init; }

    /// <summary>Heat exchange of the appliance with the air while its own fans run, as a multiple of that in still air, 1 to 100; 1, no fans, by default.</summary>
    public double? ApplianceFans { get; init; }

    public static AidsDocument From(SiteAids aids) => new()
    {
        HasIce = aids.HasIce,
        WaterBathCelsius = aids.WaterBath is Temperature bath ? Exact.Celsius(bath) : null,
        HasCylinderFan = aids.HasCylinderFan,
        HeaterWatts = Exact.Watts(aids.Heater),
        CrankcaseHeaterWatts = Exact.Watts(aids.CrankcaseHeater),
        ApplianceFans = Exact.Number(aids.ApplianceFans),
    };

    public SiteAids ToAids(DocumentNode node) => node.Build(() =>
    {
        SiteAids aids = new();
        return aids with
        {
            HasIce = HasIce ?? aids.HasIce,
            WaterBath = WaterBathCelsius is double bath ? Exact.TemperatureOf(bath) : null,
            HasCylinderFan = HasCylinderFan ?? aids.HasCylinderFan,

            // A power is a decimal inside, which overflows where a double does not, so the range comes first.
            Heater = HeaterWatts is double heater ? Power.FromWatts(Require.InRange(heater, 0, 1e6, "W", nameof(SiteAids.Heater))) : aids.Heater,
            CrankcaseHeater = CrankcaseHeaterWatts is double crankcase
                ? Power.FromWatts(Require.InRange(crankcase, 0, 1e5, "W", nameof(SiteAids.CrankcaseHeater)))
                : aids.CrankcaseHeater,
            ApplianceFans = ApplianceFans ?? aids.ApplianceFans,
        };
    });
}
