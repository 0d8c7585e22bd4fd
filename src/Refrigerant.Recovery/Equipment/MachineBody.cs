using System;
using System.Diagnostics.CodeAnalysis;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Equipment;

/// <summary>The body of a recovery machine as heat sees it: it warms suction gas, takes heat from discharge gas and gives it to the air. Immutable.</summary>
public sealed record MachineBody
{
    /// <summary>Typical figures for each m³/s of displacement, of a machine of 0.5 L/s with some 8 kg of metal at the compressor: common practice, no source.</summary>
    private const double CapacityPerDisplacement = 4000 / 5e-4;
    private const double AirPerDisplacement = 6 / 5e-4;
    private const double GasPerDisplacement = 1 / 5e-4;
    private const double FrictionPerDisplacement = 100 / 5e-4;

    /// <summary>For an initializer.</summary>
    public MachineBody()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="heatCapacity">See <see cref="HeatCapacity"/>.</param>
    /// <param name="airConductance">See <see cref="AirConductance"/>.</param>
    /// <param name="gasConductance">See <see cref="GasConductance"/>.</param>
    /// <param name="frictionPower">See <see cref="FrictionPower"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    [SetsRequiredMembers]
    public MachineBody(
        Entropy heatCapacity,
        double airConductance,
        double gasConductance,
        Power frictionPower)
    {
        HeatCapacity = heatCapacity;
        AirConductance = airConductance;
        GasConductance = gasConductance;
        FrictionPower = frictionPower;
    }

    /// <summary>Heat capacity of the metal around the compressor's gas, 1 J/K to 1e8 J/K.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required Entropy HeatCapacity
    {
        get;
        init
        {
            Require.InRange(value.JoulesPerKelvin, 1, 1e8, "J/K", nameof(HeatCapacity));
            field = Held.JoulesPerKelvin(value);
        }
    }

    /// <summary>Conductance from the body to the air that its fan blows over it, W/K, 1e-3 to 1e6.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required double AirConductance { get; init => field = Require.InRange(value, 1e-3, 1e6, "W/K", nameof(AirConductance)); }

    /// <summary>Conductance between the body and the gas that passes it, on the suction and on the discharge side each, W/K, 0 to 1e6.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required double GasConductance { get; init => field = Require.InRange(value, 0, 1e6, "W/K", nameof(GasConductance)); }

    /// <summary>Heat of friction and of the motor that warms the body while the machine runs, 0 to 10 MW.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public required Power FrictionPower
    {
        get;
        init
        {
            Require.InRange(Require.Watts(value, nameof(FrictionPower)), 0, 1e7, "W", nameof(FrictionPower));
            field = Held.Watts(value);
        }
    }

    /// <summary>A typical body for a displacement (common practice, no source): 4 kJ/K, 6 W/K to the air, 1 W/K to the gas and 100 W at 0.5 L/s, in proportion to it.</summary>
    /// <param name="displacement">Displacement rate, 1e-7 to 10 m³/s.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public static MachineBody Typical(VolumeFlow displacement)
    {
        double rate = Require.InRange(displacement.CubicMetersPerSecond, 1e-7, 10, "m³/s", nameof(displacement));
        return new MachineBody
        {
            HeatCapacity = new Entropy(Math.Max(1, CapacityPerDisplacement * rate), EntropyUnit.JoulePerKelvin),
            AirConductance = Math.Max(1e-3, AirPerDisplacement * rate),
            GasConductance = GasPerDisplacement * rate,
            FrictionPower = Power.FromWatts(FrictionPerDisplacement * rate),
        };
    }

    /// <summary>Temperature after standing still, K: T = T_air + (T − T_air)·exp(−t·UA/C).</summary>
    internal double AfterRest(double kelvins, double air, double seconds) =>
        air + ((kelvins - air) * Math.Exp(-seconds * AirConductance / HeatCapacity.JoulesPerKelvin));

    /// <summary>Heat capacity, conductances and heat of friction.</summary>
    public override string ToString() =>
        $"{Require.Text(HeatCapacity.JoulesPerKelvin)} J/K, {Require.Text(AirConductance)} W/K to the air, {Require.Text(GasConductance)} W/K to the gas, {Require.Text((double)FrictionPower.Watts)} W of friction";
}
