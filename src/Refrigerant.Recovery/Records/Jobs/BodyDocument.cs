using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>The body of a recovery machine as heat sees it.</summary>
internal sealed record BodyDocument
{
    /// <summary>Heat capacity of the metal around the compressor's gas, 1 J/K to 1e8 J/K.</summary>
    public required double HeatCapacityJoulesPerKelvin { get; init; }

    /// <summary>Conductance from the body to the air that its fan blows over it, 1e-3 to 1e6 W/K.</summary>
    public required double AirConductanceWattsPerKelvin { get; init; }

    /// <summary>Conductance between the body and the gas that passes it, on the suction and on the discharge side each, 0 to 1e6 W/K.</summary>
    public required double GasConductanceWattsPerKelvin { get; init; }

    /// <summary>Heat of friction and of the motor that warms the body while the machine runs, 0 to 10 MW.</summary>
    public required double FrictionPowerWatts { get; init; }

    public static BodyDocument From(MachineBody body) => new()
    {
        HeatCapacityJoulesPerKelvin = Exact.Number(body.HeatCapacity.JoulesPerKelvin),
        AirConductanceWattsPerKelvin = Exact.Number(body.AirConductance),
        GasConductanceWattsPerKelvin = Exact.Number(body.GasConductance),
        FrictionPowerWatts = Exact.Watts(body.FrictionPower),
    };

    public MachineBody ToBody(DocumentNode node) => node.Build(() => new MachineBody
    {
        HeatCapacity = new Entropy(HeatCapacityJoulesPerKelvin, EntropyUnit.JoulePerKelvin),
        AirConductance = AirConductanceWattsPerKelvin,
        GasConductance = GasConductanceWattsPerKelvin,

        // A power is a decimal inside, which overflows where a double does not, so the range comes first.
        FrictionPower = Power.FromWatts(Require.InRange(FrictionPowerWatts, 0, 1e7, "W", nameof(MachineBody.FrictionPower))),
    });
}
