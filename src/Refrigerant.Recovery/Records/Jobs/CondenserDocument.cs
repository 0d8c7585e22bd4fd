using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>The condenser of a recovery machine.</summary>
internal sealed record CondenserDocument
{
    /// <summary>Heat it rejects at ratedDifference, 0 to 100 MW; 0 means that it does not condense.</summary>
    public required double RatedDutyWatts { get; init; }

    /// <summary>Difference between condensing and coolant temperature of the rating, 0.1 K to 200 K; 15 K by default (common practice, no source).</summary>
    public double? RatedDifferenceKelvins { get; init; }

    /// <summary>Whether water or air takes the heat.</summary>
    public CondenserCooling? Cooling { get; init; }

    /// <summary>Temperature of the air or water that enters; the surroundings of the appliance where it is left out.</summary>
    public double? CoolantTemperatureCelsius { get; init; }

    /// <summary>Subcooling below the condensing temperature that it reaches where its duty allows, 0 K to 50 K; 3 K by default.</summary>
    public double? SubcoolingKelvins { get; init; }

    public static CondenserDocument From(Condenser condenser) => new()
    {
        RatedDutyWatts = Exact.Watts(condenser.RatedDuty),
        RatedDifferenceKelvins = Exact.Number(condenser.RatedDifference.Kelvins),
        Cooling = condenser.Cooling,
        CoolantTemperatureCelsius = condenser.CoolantTemperature is Temperature coolant ? Exact.Celsius(coolant) : null,
        SubcoolingKelvins = Exact.Number(condenser.Subcooling.Kelvins),
    };

    public Condenser ToCondenser(DocumentNode node) => node.Build(() =>
    {
        // A power is a decimal inside, which overflows where a double does not, so the range comes first.
        Condenser condenser = new() { RatedDuty = Power.FromWatts(Require.InRange(RatedDutyWatts, 0, 1e8, "W", nameof(Condenser.RatedDuty))) };
        return condenser with
        {
            RatedDifference = RatedDifferenceKelvins is double difference ? Exact.DifferenceOf(difference) : condenser.RatedDifference,
            Cooling = Cooling ?? condenser.Cooling,
            CoolantTemperature = CoolantTemperatureCelsius is double coolant ? Exact.TemperatureOf(coolant) : null,
            Subcooling = SubcoolingKelvins is double subcooling ? Exact.DifferenceOf(subcooling) : condenser.Subcooling,
        };
    });
}
