using Refrigerant.Recovery.Equipment;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>Water in tubes: standing where its mass is given, moving where its flow is.</summary>
internal sealed record WaterDocument
{
    public const string OneOf = "give one of massKilograms, for standing water, and flowKilogramsPerSecond, for moving water.";

    /// <summary>Mass of standing water, 1 g to 1000 t. Give this or flowKilogramsPerSecond.</summary>
    public double? MassKilograms { get; init; }

    /// <summary>Flow of moving water, 0.001 to 1e5 kg/s. Give this or massKilograms.</summary>
    public double? FlowKilogramsPerSecond { get; init; }

    /// <summary>Temperature at the start, or of the water that enters.</summary>
    public required double TemperatureCelsius { get; init; }

    /// <summary>Resistance between water and metal, as for heatResistance over heatArea.</summary>
    public required double ResistanceSquareMeterKelvinsPerWatt { get; init; }

    public static WaterDocument From(TubeWater water) => new()
    {
        MassKilograms = water.IsMoving ? null : Exact.Kilograms(water.Mass),
        FlowKilogramsPerSecond = water.IsMoving ? Exact.Number(water.Flow.KilogramsPerSecond) : null,
        TemperatureCelsius = Exact.Celsius(water.Temperature),
        ResistanceSquareMeterKelvinsPerWatt = Exact.Resistance(water.Resistance),
    };

    public TubeWater ToWater(DocumentNode node)
    {
        Temperature temperature = Exact.TemperatureOf(TemperatureCelsius);
        ThermalResistance resistance = Exact.ResistanceOf(ResistanceSquareMeterKelvinsPerWatt);
        return (MassKilograms, FlowKilogramsPerSecond) switch
        {
            (double mass, null) => node.Build(() => TubeWater.Standing(Exact.MassOf(mass), temperature, resistance)),
            (null, double flow) => node.Build(() => TubeWater.Moving(new MassFlow(flow, MassFlowUnit.KilogramPerSecond), temperature, resistance)),
            _ => throw node.Wrong(OneOf),
        };
    }
}
