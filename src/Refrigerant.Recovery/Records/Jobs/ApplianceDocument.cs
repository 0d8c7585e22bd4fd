using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>What the refrigerant is taken from. The refrigerant is one of the catalogue, or a blend by composition.</summary>
internal sealed record ApplianceDocument
{
    /// <summary>Designation of the refrigerant, such as "R-134a". Give this or blend.</summary>
    public string? Refrigerant { get; init; }

    /// <summary>A blend that the catalogue does not have. Give this or refrigerant.</summary>
    public BlendDocument? Blend { get; init; }

    /// <summary>Mass of refrigerant in it, what the oil holds included; 1 mg to 1000 t.</summary>
    public required double ChargeKilograms { get; init; }

    /// <summary>Volume that the refrigerant may fill; 1 mL to 10 000 m³.</summary>
    public required double InternalVolumeLiters { get; init; }

    /// <summary>Temperature of refrigerant, metal and oil at the start, 50 K to 700 K and within the range of the refrigerant's equation.</summary>
    public required double TemperatureCelsius { get; init; }

    /// <summary>Temperature of the surroundings, 150 K to 400 K; that of the appliance where it is left out.</summary>
    public double? SurroundingsCelsius { get; init; }

    /// <summary>Resistance from the surroundings to the metal, for 1 m²; 1e-8 m²·K/W or more, 1e30 for no heat at all. Where it is left out that of an appliance of its volume in still air stands in (common practice, no source), and results say so.</summary>
    public double? HeatResistanceSquareMeterKelvinsPerWatt { get; init; }

    /// <summary>Area that the resistances refer to, 1 cm² to 1e6 m²; 1 m² by default.</summary>
    public double? HeatAreaSquareMeters { get; init; }

    /// <summary>Mass of the metal that cools with the refrigerant, 0 to 10 000 t; 0 for none. Where it is left out what is typical of its volume and charge stands in (common practice, no source), and results say so.</summary>
    public double? MetalMassKilograms { get; init; }

    /// <summary>Specific heat capacity of the metal, 50 to 5000 J/(kg·K); 480 J/(kg·K), steel (from memory), by default.</summary>
    public double? MetalHeatCapacityJoulesPerKilogramKelvin { get; init; }

    /// <summary>Resistance from the metal to boiling refrigerant, for 1 m²; 1e-8 m²·K/W or more. Where it is left out it is zero without metal, water or oil, else a typical one for its volume (common practice, no source).</summary>
    public double? MetalResistanceSquareMeterKelvinsPerWatt { get; init; }

    /// <summary>How many times larger the resistance from metal to refrigerant is once no liquid is left, 1 to 1000; 10 by default (gas against boiling liquid: common practice, no source). It applies where the metal or water counts.</summary>
    public double? DryResistanceFactor { get; init; }

    /// <summary>Whether a port lies below the liquid, so that liquid can be drawn.</summary>
    public bool? LiquidReachable { get; init; }

    /// <summary>Mass of liquid that stays below the liquid port, 0 to the charge; none by default.</summary>
    public double? LiquidHeelKilograms { get; init; }

    /// <summary>Water in tubes of the appliance; none by default.</summary>
    public WaterDocument? Water { get; init; }

    /// <summary>Oil in it; none by default.</summary>
    public OilDocument? Oil { get; init; }

    /// <summary>The pressure that it is built for or that its relief device opens at, 1 kPa to 50 MPa gauge; left out where it is not known.</summary>
    public double? DesignPressureKilopascalsGauge { get; init; }

    /// <summary>Its volumes, where restrictions separate them: two or more, whose volumes and charges add up to those of the appliance; none by default: it is one vessel.</summary>
    public IReadOnlyList<SectionDocument>? Sections { get; init; }

    /// <summary>What joins the sections; none by default.</summary>
    public IReadOnlyList<ConnectionDocument>? Connections { get; init; }

    /// <summary>Name of the section whose port vapor is drawn from; the first where it is left out.</summary>
    public string? VaporPort { get; init; }

    /// <summary>Name of the section whose port liquid is drawn from; that of vapor where it is left out.</summary>
    public string? LiquidPort { get; init; }

    public static ApplianceDocument From(Appliance appliance, FluidResolver? fluids)
    {
        BlendDocument? blend = BlendDocument.From(appliance.Fluid, fluids);
        return new()
        {
            Refrigerant = blend is null ? appliance.Fluid.Designation : null,
            Blend = blend,
            ChargeKilograms = Exact.Kilograms(appliance.Charge),
            InternalVolumeLiters = Exact.Liters(appliance.InternalVolume),
            TemperatureCelsius = Exact.Celsius(appliance.Temperature),
            SurroundingsCelsius = appliance.Surroundings is Temperature surroundings ? Exact.Celsius(surroundings) : null,
            HeatResistanceSquareMeterKelvinsPerWatt = appliance.HeatResistance is ThermalResistance outer ? Exact.Resistance(outer) : null,
            HeatAreaSquareMeters = Exact.Number(appliance.HeatArea.SquareMeters),
            MetalMassKilograms = appliance.MetalMass is Mass metal ? Exact.Kilograms(metal) : null,
            MetalHeatCapacityJoulesPerKilogramKelvin = Exact.Number(appliance.MetalHeatCapacity.JoulesPerKilogramKelvin),
            MetalResistanceSquareMeterKelvinsPerWatt = appliance.MetalResistance is ThermalResistance inner ? Exact.Resistance(inner) : null,
            DryResistanceFactor = Exact.Number(appliance.DryResistanceFactor),
            LiquidReachable = appliance.LiquidReachable,
            LiquidHeelKilograms = Exact.Kilograms(appliance.LiquidHeel),
            Water = appliance.Water is TubeWater water ? WaterDocument.From(water) : null,
            Oil = appliance.Oil is ApplianceOil oil ? OilDocument.From(oil) : null,
            DesignPressureKilopascalsGauge = appliance.DesignGaugePressure is Pressure design ? Exact.Kilopascals(design) : null,
            Sections = [.. appliance.Sections.Select(SectionDocument.From)],
            Connections = [.. appliance.Connections.Select(ConnectionDocument.Of)],
            VaporPort = appliance.VaporPort,
            LiquidPort = appliance.LiquidPort,
        };
    }

    public Appliance ToAppliance(DocumentNode node, FluidResolver? fluids)
    {
        Fluid fluid = BlendDocument.ToFluid(Refrigerant, Blend, node, fluids);
        ApplianceSection[] sections = Sections is null ? [] : [.. Sections.Zip(node.Member("sections").Items(), (section, item) => section.ToSection(item))];
        SectionConnection[] connections =
            Connections is null ? [] : [.. Connections.Zip(node.Member("connections").Items(), (connection, item) => connection.ToConnection(item))];
        return node.Build(() =>
        {
            Appliance appliance = new()
            {
                Fluid = fluid,
                Charge = Exact.MassOf(ChargeKilograms),
                InternalVolume = Exact.VolumeOf(InternalVolumeLiters),
                Temperature = Exact.TemperatureOf(TemperatureCelsius),
            };
            return appliance with
            {
                Surroundings = SurroundingsCelsius is double surroundings ? Exact.TemperatureOf(surroundings) : null,
                HeatResistance = HeatResistanceSquareMeterKelvinsPerWatt is double outer ? Exact.ResistanceOf(outer) : null,
                HeatArea = HeatAreaSquareMeters is double area ? new Area(area, AreaUnit.SquareMeter) : appliance.HeatArea,
                MetalMass = MetalMassKilograms is double metal ? Exact.MassOf(metal) : null,
                MetalHeatCapacity = MetalHeatCapacityJoulesPerKilogramKelvin is double heat
                    ? new SpecificEntropy(heat, SpecificEntropyUnit.JoulePerKilogramKelvin)
                    : appliance.MetalHeatCapacity,
                MetalResistance = MetalResistanceSquareMeterKelvinsPerWatt is double inner ? Exact.ResistanceOf(inner) : null,
                DryResistanceFactor = DryResistanceFactor ?? appliance.DryResistanceFactor,
                LiquidReachable = LiquidReachable ?? appliance.LiquidReachable,
                LiquidHeel = Exact.MassOf(LiquidHeelKilograms ?? 0),
                Water = Water?.ToWater(node.Member("water")),
                Oil = Oil?.ToOil(node.Member("oil")),
                DesignGaugePressure = DesignPressureKilopascalsGauge is double design ? Exact.PressureOf(design) : null,
                Sections = sections,
                Connections = connections,
                VaporPort = VaporPort,
                LiquidPort = LiquidPort,
            };
        });
    }
}
