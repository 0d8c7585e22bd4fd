using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Simulation;

/// <summary>Everything that a stage hands on to the next: appliance, cylinder, machine. Immutable.</summary>
public sealed record SimulationState
{
    /// <summary>A state of an appliance, with no cylinder connected and a machine at the temperature of the air.</summary>
    /// <param name="appliance">The appliance.</param>
    /// <exception cref="System.ArgumentNullException">The value is null.</exception>
    public SimulationState(ApplianceState appliance) => Appliance = Require.NotNull(appliance, nameof(appliance));

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="appliance">See <see cref="Appliance"/>.</param>
    /// <param name="cylinder">See <see cref="Cylinder"/>.</param>
    /// <param name="machineTemperature">See <see cref="MachineTemperature"/>.</param>
    /// <exception cref="System.ArgumentException">A value outside the range of its member.</exception>
    public SimulationState(ApplianceState appliance, CylinderState? cylinder = null, Temperature? machineTemperature = null)
        : this(appliance)
    {
        Cylinder = cylinder;
        MachineTemperature = machineTemperature;
    }

    /// <summary>The appliance.</summary>
    public ApplianceState Appliance { get; init => field = Require.NotNull(value, nameof(Appliance)); }

    /// <summary>The cylinder that is connected; null for none.</summary>
    public CylinderState? Cylinder { get; init; }

    /// <summary>Temperature of the machine's body; that of the air where it is null.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">Outside 150 K to 600 K.</exception>
    public Temperature? MachineTemperature
    {
        get;
        init
        {
            if (value is Temperature given)
            {
                Require.InRange(given.Kelvins, 150, 600, "K", nameof(MachineTemperature));
            }

            field = value;
        }
    }

    /// <summary>Appliance, cylinder and temperature of the machine.</summary>
    public override string ToString() => $"appliance: {Appliance}; cylinder: {Cylinder?.ToString() ?? "none"}"
        + (MachineTemperature is Temperature given ? $"; machine at {Require.Text(given.Kelvins - 273.15)} °C" : string.Empty);
}
