using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>What the refrigerant is taken from. The refrigerant is one of the catalogue, or a blend by composition.</summary>
internal sealed record ApplianceDocument
{
    public string? Refrigerant { get; init; }

    public BlendDocument? Blend { get; init; }

    public required double ChargeKilograms { get; init; }

    public required double InternalVolumeLiters { get; init; }

    public required double TemperatureCelsius { get; init; }

    public double? SurroundingsCelsius { get; init; }

    public double? HeatResistanceSquareMeterKelvinsPerWatt { get; init; }

    public double? HeatAreaSquareMeters { get; init; }

    public double? MetalMassKilograms { get; init; }

    public double? MetalHeatCapacityJoulesPerKilogramKelvin { get; init; }

    public double? MetalResistanceSquareMeterKelvinsPerWatt { get; init; }

    public double? DryResistanceFactor { get; init; }

    public bool? LiquidReachable { get; init; }

    public double? LiquidHeelKilograms { get; init; }

    public WaterDocument? Water { get; init; }

    public OilDocument? Oil { get; init; }

    public static ApplianceDocument From(Appliance appliance)
    {
        BlendDocument? blend = BlendDocument.From(appliance.Fluid);
        return new()
        {
            Refrigerant = blend is null ? appliance.Fluid.Designation : null,
            Blend = blend,
            ChargeKilograms = Plain.Kilograms(appliance.Charge),
            InternalVolumeLiters = Plain.Liters(appliance.InternalVolume),
            TemperatureCelsius = Plain.Celsius(appliance.Temperature),
            SurroundingsCelsius = appliance.Surroundings is Temperature surroundings ? Plain.Celsius(surroundings) : null,
            HeatResistanceSquareMeterKelvinsPerWatt = appliance.HeatResistance is ThermalResistance outer ? Plain.Resistance(outer) : null,
            HeatAreaSquareMeters = Plain.Number(appliance.HeatArea.SquareMeters),
            MetalMassKilograms = Plain.Kilograms(appliance.MetalMass),
            MetalHeatCapacityJoulesPerKilogramKelvin = Plain.Number(appliance.MetalHeatCapacity.JoulesPerKilogramKelvin),
            MetalResistanceSquareMeterKelvinsPerWatt = appliance.MetalResistance is ThermalResistance inner ? Plain.Resistance(inner) : null,
            DryResistanceFactor = Plain.Number(appliance.DryResistanceFactor),
            LiquidReachable = appliance.LiquidReachable,
            LiquidHeelKilograms = Plain.Kilograms(appliance.LiquidHeel),
            Water = appliance.Water is TubeWater water ? WaterDocument.From(water) : null,
            Oil = appliance.Oil is ApplianceOil oil ? OilDocument.From(oil) : null,
        };
    }

    public Appliance ToAppliance(DocumentNode node)
    {
        Fluid fluid = ToFluid(node);
        return node.Build(() =>
        {
            Appliance appliance = new()
            {
                Fluid = fluid,
                Charge = Plain.MassOf(ChargeKilograms),
                InternalVolume = Plain.VolumeOf(InternalVolumeLiters),
                Temperature = Plain.TemperatureOf(TemperatureCelsius),
            };
            return appliance with
            {
                Surroundings = SurroundingsCelsius is double surroundings ? Plain.TemperatureOf(surroundings) : null,
                HeatResistance = HeatResistanceSquareMeterKelvinsPerWatt is double outer ? Plain.ResistanceOf(outer) : null,
                HeatArea = HeatAreaSquareMeters is double area ? new Area(area, AreaUnit.SquareMeter) : appliance.HeatArea,
                MetalMass = Plain.MassOf(MetalMassKilograms ?? 0),
                MetalHeatCapacity = MetalHeatCapacityJoulesPerKilogramKelvin is double heat
                    ? new SpecificEntropy(heat, SpecificEntropyUnit.JoulePerKilogramKelvin)
                    : appliance.MetalHeatCapacity,
                MetalResistance = MetalResistanceSquareMeterKelvinsPerWatt is double inner ? Plain.ResistanceOf(inner) : null,
                DryResistanceFactor = DryResistanceFactor ?? appliance.DryResistanceFactor,
                LiquidReachable = LiquidReachable ?? appliance.LiquidReachable,
                LiquidHeel = Plain.MassOf(LiquidHeelKilograms ?? 0),
                Water = Water?.ToWater(node.Member("water")),
                Oil = Oil?.ToOil(node.Member("oil")),
            };
        });
    }

    private Fluid ToFluid(DocumentNode node) => (Refrigerant, Blend) switch
    {
        (string designation, null) => node.Member("refrigerant").Build(() => Fluid.Get(designation)),
        (null, { } blend) => blend.ToFluid(node.Member("blend")),
        _ => throw node.Wrong("give one of refrigerant and blend."),
    };
}
