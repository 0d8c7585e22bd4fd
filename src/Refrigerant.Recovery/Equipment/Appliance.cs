using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Equipment;

/// <summary>What the refrigerant is taken from: an air conditioner, a rack, a chiller. Immutable.</summary>
/// <remarks>
/// Heat reaches the refrigerant from the surroundings through <see cref="HeatResistance"/>, then from the metal through
/// <see cref="MetalResistance"/>, both over <see cref="HeatArea"/>: heat flow = area·ΔT/resistance. With the default area of 1 m² a
/// resistance in m²·K/W reads as K/W.
/// </remarks>
public sealed record Appliance
{
    /// <summary>Specific heat of steel, J/(kg·K), from memory.</summary>
    private const double Steel = 480;

    /// <summary>For an initializer.</summary>
    public Appliance()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="fluid">See <see cref="Fluid"/>.</param>
    /// <param name="charge">See <see cref="Charge"/>.</param>
    /// <param name="internalVolume">See <see cref="InternalVolume"/>.</param>
    /// <param name="temperature">See <see cref="Temperature"/>.</param>
    /// <param name="surroundings">See <see cref="Surroundings"/>.</param>
    /// <param name="heatResistance">See <see cref="HeatResistance"/>.</param>
    /// <param name="heatArea">See <see cref="HeatArea"/>.</param>
    /// <param name="metalMass">See <see cref="MetalMass"/>.</param>
    /// <param name="metalHeatCapacity">See <see cref="MetalHeatCapacity"/>.</param>
    /// <param name="metalResistance">See <see cref="MetalResistance"/>.</param>
    /// <param name="dryResistanceFactor">See <see cref="DryResistanceFactor"/>.</param>
    /// <param name="liquidReachable">See <see cref="LiquidReachable"/>.</param>
    /// <param name="liquidHeel">See <see cref="LiquidHeel"/>.</param>
    /// <param name="water">See <see cref="Water"/>.</param>
    /// <param name="oil">See <see cref="Oil"/>.</param>
    /// <param name="designGaugePressure">See <see cref="DesignGaugePressure"/>.</param>
    /// <param name="sections">See <see cref="Sections"/>.</param>
    /// <param name="connections">See <see cref="Connections"/>.</param>
    /// <param name="vaporPort">See <see cref="VaporPort"/>.</param>
    /// <param name="liquidPort">See <see cref="LiquidPort"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public Appliance(
        Fluid fluid,
        Mass charge,
        Volume internalVolume,
        Temperature temperature,
        Temperature? surroundings = null,
        ThermalResistance? heatResistance = null,
        Area? heatArea = null,
        Mass? metalMass = null,
        SpecificEntropy? metalHeatCapacity = null,
        ThermalResistance? metalResistance = null,
        double? dryResistanceFactor = null,
        bool? liquidReachable = null,
        Mass? liquidHeel = null,
        TubeWater? water = null,
        ApplianceOil? oil = null,
        Pressure? designGaugePressure = null,
        IReadOnlyList<ApplianceSection>? sections = null,
        IReadOnlyList<SectionConnection>? connections = null,
        string? vaporPort = null,
        string? liquidPort = null)
    {
        Fluid = fluid;
        Charge = charge;
        InternalVolume = internalVolume;
        Temperature = temperature;
        Surroundings = surroundings ?? Surroundings;
        HeatResistance = heatResistance ?? HeatResistance;
        HeatArea = heatArea ?? HeatArea;
        MetalMass = metalMass ?? MetalMass;
        MetalHeatCapacity = metalHeatCapacity ?? MetalHeatCapacity;
        MetalResistance = metalResistance ?? MetalResistance;
        DryResistanceFactor = dryResistanceFactor ?? DryResistanceFactor;
        LiquidReachable = liquidReachable ?? LiquidReachable;
        LiquidHeel = liquidHeel ?? LiquidHeel;
        Water = water ?? Water;
        Oil = oil ?? Oil;
        DesignGaugePressure = designGaugePressure ?? DesignGaugePressure;
        Sections = sections ?? Sections;
        Connections = connections ?? Connections;
        VaporPort = vaporPort ?? VaporPort;
        LiquidPort = liquidPort ?? LiquidPort;
    }

    /// <summary>A resistance that lets no heat through that counts.</summary>
    public static ThermalResistance PerfectInsulation => new(1e30, ThermalResistanceUnit.SquareMeterKelvinPerWatt);

    /// <summary>The refrigerant.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public required Fluid Fluid
    {
        get;
        init => field = Require.NotNull(value, nameof(Fluid));
    }

    /// <summary>Mass of refrigerant in it, what the oil holds included; 1 mg to 1000 t.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required Mass Charge
    {
        get;
        init
        {
            Require.InRange(value.Kilograms, 1e-6, 1e6, "kg", nameof(Charge));
            field = Held.Kilograms(value);
        }
    }

    /// <summary>Volume that the refrigerant may fill; 1 mL to 10 000 m³.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required Volume InternalVolume
    {
        get;
        init
        {
            Require.InRange(value.CubicMeters, 1e-6, 1e4, "m³", nameof(InternalVolume));
            field = Held.Liters(value);
        }
    }

    /// <summary>Temperature of refrigerant, metal and oil at the start, 50 K to 700 K and within the range of the refrigerant's equation.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required Temperature Temperature
    {
        get;
        init
        {
            Require.Kelvins(value, 50, 700, nameof(Temperature));
            field = Held.Celsius(value);
        }
    }

    /// <summary>Temperature of the surroundings, 150 K to 400 K; that of the appliance where it is null.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Temperature? Surroundings
    {
        get;
        init
        {
            if (value is Temperature given)
            {
                Require.Kelvins(given, 150, 400, nameof(Surroundings));
            }

            field = Held.Celsius(value);
        }
    }

    /// <summary>
    /// Resistance from the surroundings to the metal, for 1 m²; 1e-8 m²·K/W or more, <see cref="PerfectInsulation"/> for no heat at all.
    /// Where it is null that of still air on an appliance of its volume stands in, and results say so.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1e-8 m²·K/W.</exception>
    public ThermalResistance? HeatResistance
    {
        get;
        init
        {
            if (value is ThermalResistance given)
            {
                Require.InRange(given.SquareMeterKelvinsPerWatt, 1e-8, 1e30, "m²·K/W", nameof(HeatResistance));
            }

            field = Held.SquareMeterKelvinsPerWatt(value);
        }
    }

    /// <summary>Area that the resistances refer to, 1 cm² to 1e6 m²; 1 m² by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Area HeatArea
    {
        get;
        init
        {
            Require.InRange(value.SquareMeters, 1e-4, 1e6, "m²", nameof(HeatArea));
            field = Held.SquareMeters(value);
        }
    }

    = new(1, AreaUnit.SquareMeter);

    /// <summary>
    /// Mass of the metal that cools with the refrigerant, 0 to 10 000 t: zero means no metal. Where it is null a typical one for its volume and charge stands in,
    /// and results say so.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Mass? MetalMass
    {
        get;
        init
        {
            if (value is Mass given)
            {
                Require.InRange(given.Kilograms, 0, 1e7, "kg", nameof(MetalMass));
            }

            field = Held.Kilograms(value);
        }
    }

    /// <summary>Specific heat capacity of the metal, 50 to 5000 J/(kg·K); 480 J/(kg·K), steel (from memory), by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public SpecificEntropy MetalHeatCapacity
    {
        get;
        init
        {
            Require.InRange(value.JoulesPerKilogramKelvin, 50, 5000, "J/(kg·K)", nameof(MetalHeatCapacity));
            field = Held.JoulesPerKilogramKelvin(value);
        }
    }

    = new(Steel, SpecificEntropyUnit.JoulePerKilogramKelvin);

    /// <summary>
    /// Resistance from the metal to boiling refrigerant, for 1 m²; 1e-8 m²·K/W or more. Where it is null it is zero without metal
    /// or water, else a typical one for its volume (common practice, no source).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public ThermalResistance? MetalResistance
    {
        get;
        init
        {
            if (value is ThermalResistance given)
            {
                Require.InRange(given.SquareMeterKelvinsPerWatt, 1e-8, 1e8, "m²·K/W", nameof(MetalResistance));
            }

            field = Held.SquareMeterKelvinsPerWatt(value);
        }
    }

    /// <summary>
    /// How many times larger the resistance from metal to refrigerant is once no liquid is left, 1 to 1000; 10 by default
    /// (gas against boiling liquid: common practice, no source). It applies where the metal or water counts.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public double DryResistanceFactor
    {
        get;
        init
        {
            Require.InRange(value, 1, 1000, string.Empty, nameof(DryResistanceFactor));
            field = value;
        }
    }

    = 10;

    /// <summary>Whether a port lies below the liquid, so that liquid can be drawn.</summary>
    public bool LiquidReachable { get; init; }

    /// <summary>Mass of liquid that stays below the liquid port, 0 to the charge; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Mass LiquidHeel
    {
        get;
        init
        {
            Require.InRange(value.Kilograms, 0, 1e6, "kg", nameof(LiquidHeel));
            field = Held.Kilograms(value);
        }
    }

    /// <summary>Water in tubes of the appliance; none by default.</summary>
    public TubeWater? Water { get; init; }

    /// <summary>Oil in it; none by default.</summary>
    public ApplianceOil? Oil { get; init; }

    /// <summary>
    /// The pressure that it is built for or that its relief device opens at, gauge, 1 kPa to 50 MPa; null where it is not known. Nothing that a machine does
    /// may bring its pressure above it: a low-pressure chiller's rupture disc stands at 15 psi.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Pressure? DesignGaugePressure
    {
        get;
        init
        {
            if (value is Pressure given)
            {
                Require.InRange(given.Pascals, 1e3, 5e7, "Pa gauge", nameof(DesignGaugePressure));
            }

            field = Held.Kilopascals(value);
        }
    }

    /// <summary>
    /// Its volumes, where restrictions separate them; none by default: it is one vessel. Volumes and charges add up to those of the appliance. Metal, water and
    /// heat are shared out in proportion to the volumes; oil is in the first one.
    /// </summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    /// <exception cref="ArgumentException">Two sections have the same name, or there is only one.</exception>
    public IReadOnlyList<ApplianceSection> Sections
    {
        get;
        init
        {
            field = Require.Copy(value, nameof(Sections));
            for (int i = 0; i < field.Count; i++)
            {
                for (int j = 0; j < i; j++)
                {
                    if (field[i].Name == field[j].Name)
                    {
                        throw new ArgumentException($"Sections has two sections of the name \"{field[i].Name}\".", nameof(Sections));
                    }
                }
            }

            if (field.Count == 1)
            {
                throw new ArgumentException("Sections has one section; leave it empty for an appliance of one vessel.", nameof(Sections));
            }
        }
    }

    = new ValueList<ApplianceSection>([]);

    /// <summary>What joins the sections; none by default.</summary>
    /// <exception cref="ArgumentNullException">The list or one of its members is null.</exception>
    public IReadOnlyList<SectionConnection> Connections { get; init => field = Require.Copy(value, nameof(Connections)); } = new ValueList<SectionConnection>([]);

    /// <summary>Name of the section whose port vapor is drawn from; the first where it is null.</summary>
    public string? VaporPort { get; init; }

    /// <summary>Name of the section whose port liquid is drawn from; that of vapor where it is null.</summary>
    public string? LiquidPort { get; init; }

    /// <summary>Its sections as they count: itself where it is one vessel.</summary>
    /// <exception cref="ArgumentException">Volumes or charges of the sections do not add up, or a port or a connection leads nowhere.</exception>
    internal IReadOnlyList<ApplianceSection> EffectiveSections
    {
        get
        {
            _ = VaporPortSection;
            _ = LiquidPortSection;
            if (Sections.Count == 0)
            {
                if (Connections.Count > 0)
                {
                    throw new ArgumentException($"Connections has {Connections.Count} members, but the appliance has no sections to join.", nameof(Connections));
                }

                return [new ApplianceSection { Name = "appliance", InternalVolume = InternalVolume, Charge = Charge }];
            }

            double volume = 0, charge = 0;
            foreach (ApplianceSection section in Sections)
            {
                volume += section.InternalVolume.CubicMeters;
                charge += section.Charge.Kilograms;
            }

            RequireSum(volume, InternalVolume.CubicMeters, "m³", nameof(InternalVolume));
            RequireSum(charge, Charge.Kilograms, "kg", nameof(Charge));
            foreach (SectionConnection connection in Connections)
            {
                if (SectionOf(connection.From, nameof(Connections)) == SectionOf(connection.To, nameof(Connections)))
                {
                    throw new ArgumentException($"A connection leads from section \"{connection.From}\" to itself.", nameof(Connections));
                }
            }

            return Sections;
        }
    }

    /// <summary>Place of the section that vapor is drawn from.</summary>
    internal int VaporPortSection => VaporPort is string name ? SectionOf(name, nameof(VaporPort)) : 0;

    /// <summary>Place of the section that liquid is drawn from.</summary>
    internal int LiquidPortSection => LiquidPort is string name ? SectionOf(name, nameof(LiquidPort)) : VaporPortSection;

    /// <summary>Place of the section that holds the oil.</summary>
    internal int OilSection => 0;

    /// <summary>Conductance from all of the metal to boiling refrigerant, W/K.</summary>
    internal double InnerConductance => MetalResistance is ThermalResistance given ? HeatArea.SquareMeters / given.SquareMeterKelvinsPerWatt : TypicalHeat.BoilingFor(InternalVolume.CubicMeters);

    /// <summary>Temperature of the surroundings that counts, K.</summary>
    internal double SurroundingsKelvin => (Surroundings ?? Temperature).Kelvins;

    /// <summary>Conductance from the surroundings to the metal, W/K.</summary>
    internal double OuterConductance =>
        HeatResistance is ThermalResistance given ? HeatArea.SquareMeters / given.SquareMeterKelvinsPerWatt : TypicalHeat.ConductanceFor(InternalVolume.CubicMeters);

    /// <summary>Mass of the metal that counts, kg.</summary>
    internal double MetalKilograms => MetalMass is Mass given ? given.Kilograms : TypicalHeat.MetalFor(InternalVolume.CubicMeters, Charge.Kilograms);

    /// <summary>Heat capacity of the metal, J/K.</summary>
    internal double MetalCapacity => MetalKilograms * MetalHeatCapacity.JoulesPerKilogramKelvin;

    /// <summary>Refrigerant, charge, volume and temperature.</summary>
    public override string ToString() => $"{Require.Text(Charge.Kilograms)} kg of {Fluid.Designation} in {Require.Text(InternalVolume.CubicMeters * 1e3)} L at {Require.Text(Temperature.Kelvins - 273.15)} °C";

    private static void RequireSum(double sum, double whole, string unit, string parameter)
    {
        const double rounding = 1e-6;
        if (Math.Abs(sum - whole) > rounding * whole)
        {
            throw new ArgumentException($"{parameter} is {Require.Text(whole)} {unit} but that of its sections adds up to {Require.Text(sum)} {unit}.", parameter);
        }
    }

    private int SectionOf(string name, string parameter)
    {
        if (Sections.Count == 0 && name == "appliance")
        {
            return 0;
        }

        for (int i = 0; i < Sections.Count; i++)
        {
            if (Sections[i].Name == name)
            {
                return i;
            }
        }

        throw new ArgumentException(
            $"{parameter} names \"{name}\", but the appliance has no section of that name; it has {(Sections.Count == 0 ? "none" : string.Join(", ", Sections.Select(section => section.Name)))}.", parameter);
    }
}
