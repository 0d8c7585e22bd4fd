using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>The condenser of a recovery machine.</summary>
internal sealed record CondenserDocument
{
    public required double RatedDutyWatts { get; init; }

    public double? RatedDifferenceKelvins { get; init; }

    public CondenserCooling? Cooling { get; init; }

    public double? CoolantTemperatureCelsius { get; init; }

    public double? SubcoolingKelvins { get; init; }

    public static CondenserDocument From(Condenser condenser) => new()
    {
        RatedDutyWatts = Plain.Number((double)condenser.RatedDuty.Watts),
        RatedDifferenceKelvins = Plain.Number(condenser.RatedDifference.Kelvins),
        Cooling = condenser.Cooling,
        CoolantTemperatureCelsius = condenser.CoolantTemperature is Temperature coolant ? Plain.Celsius(coolant) : null,
        SubcoolingKelvins = Plain.Number(condenser.Subcooling.Kelvins),
    };

    public Condenser ToCondenser(DocumentNode node) => node.Build(() =>
    {
        // A power is a decimal inside, which overflows where a double does not, so the range comes first.
        Condenser condenser = new() { RatedDuty = Power.FromWatts(Require.InRange(RatedDutyWatts, 0, 1e8, "W", nameof(Condenser.RatedDuty))) };
        return condenser with
        {
            RatedDifference = RatedDifferenceKelvins is double difference ? Plain.DifferenceOf(difference) : condenser.RatedDifference,
            Cooling = Cooling ?? condenser.Cooling,
            CoolantTemperature = CoolantTemperatureCelsius is double coolant ? Plain.TemperatureOf(coolant) : null,
            Subcooling = SubcoolingKelvins is double subcooling ? Plain.DifferenceOf(subcooling) : condenser.Subcooling,
        };
    });
}
