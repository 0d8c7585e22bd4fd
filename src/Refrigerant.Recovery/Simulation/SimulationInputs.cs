using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Simulation;

/// <summary>What people do to the setup while it runs: machine, valves, heat, cooling. Plain SI doubles. Immutable.</summary>
/// <remarks>Openings are shares of a valve's full opening: 1 open, 0 shut.</remarks>
public readonly struct SimulationInputs : System.IEquatable<SimulationInputs>
{
    private readonly double _closing;
    private readonly double _liquidClosing;
    private readonly double _fan;
    private readonly double _cylinder;
    private readonly double _water;
    private readonly bool _isStopped;

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="machineRunning">See <see cref="MachineRunning"/>.</param>
    /// <param name="inletOpening">See <see cref="InletOpening"/>.</param>
    /// <param name="liquidOpening">See <see cref="LiquidOpening"/>.</param>
    /// <param name="heaterPower">See <see cref="HeaterPower"/>.</param>
    /// <param name="crankcaseHeaterPower">See <see cref="CrankcaseHeaterPower"/>.</param>
    /// <param name="fanFactor">See <see cref="FanFactor"/>.</param>
    /// <param name="waterFactor">See <see cref="WaterFactor"/>.</param>
    /// <param name="airTemperature">See <see cref="AirTemperature"/>.</param>
    /// <param name="cylinderSurroundings">See <see cref="CylinderSurroundings"/>.</param>
    /// <param name="cylinderFactor">See <see cref="CylinderFactor"/>.</param>
    /// <exception cref="System.ArgumentException">A value outside the range of its member.</exception>
    public SimulationInputs(
        bool? machineRunning = null,
        double? inletOpening = null,
        double? liquidOpening = null,
        double? heaterPower = null,
        double? crankcaseHeaterPower = null,
        double? fanFactor = null,
        double? waterFactor = null,
        double? airTemperature = null,
        double? cylinderSurroundings = null,
        double? cylinderFactor = null)
    {
        MachineRunning = machineRunning ?? MachineRunning;
        InletOpening = inletOpening ?? InletOpening;
        LiquidOpening = liquidOpening ?? LiquidOpening;
        HeaterPower = heaterPower ?? HeaterPower;
        CrankcaseHeaterPower = crankcaseHeaterPower ?? CrankcaseHeaterPower;
        FanFactor = fanFactor ?? FanFactor;
        WaterFactor = waterFactor ?? WaterFactor;
        AirTemperature = airTemperature ?? AirTemperature;
        CylinderSurroundings = cylinderSurroundings ?? CylinderSurroundings;
        CylinderFactor = cylinderFactor ?? CylinderFactor;
    }

    /// <summary>Machine running, valves open, no heat but that of the air: the inputs of a default value too.</summary>
    public static SimulationInputs Running => default;

    /// <summary>Whether the machine runs; true by default.</summary>
    public bool MachineRunning
    {
        get => !_isStopped;
        init => _isStopped = !value;
    }

    /// <summary>Opening of the valve at the machine's inlet, 0 to 1; 1 by default.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">Outside the range.</exception>
    public double InletOpening
    {
        get => 1 - _closing;
        init => _closing = 1 - Require.InRange(value, 0, 1, string.Empty, nameof(InletOpening));
    }

    /// <summary>Opening of the valve on the liquid hose of a push-pull, 0 to 1; 1 by default.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">Outside the range.</exception>
    public double LiquidOpening
    {
        get => 1 - _liquidClosing;
        init => _liquidClosing = 1 - Require.InRange(value, 0, 1, string.Empty, nameof(LiquidOpening));
    }

    /// <summary>Heat that a blanket or another electric heater brings to the appliance's metal, W, 0 to 1e7; none by default.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">Outside the range.</exception>
    public double HeaterPower
    {
        get;
        init => field = Require.InRange(value, 0, 1e7, "W", nameof(HeaterPower));
    }

    /// <summary>Heat that a crankcase heater brings to the oil, W, 0 to 1e6; none by default. Without oil it goes to the metal.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">Outside the range.</exception>
    public double CrankcaseHeaterPower
    {
        get;
        init => field = Require.InRange(value, 0, 1e6, "W", nameof(CrankcaseHeaterPower));
    }

    /// <summary>Heat exchange of the appliance with the air as a multiple of that in still air: its own fans running; 0 to 100, 1 by default.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">Outside the range.</exception>
    public double FanFactor
    {
        get => 1 + _fan;
        init => _fan = Require.InRange(value, 0, 100, string.Empty, nameof(FanFactor)) - 1;
    }

    /// <summary>Conductance of the water in the tubes as a multiple of that described: 0 for none, 1 by default, at most 100.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">Outside the range.</exception>
    public double WaterFactor
    {
        get => 1 + _water;
        init => _water = Require.InRange(value, 0, 100, string.Empty, nameof(WaterFactor)) - 1;
    }

    /// <summary>Temperature of the air, K, 150 to 400; that of the surroundings as described where it is null.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">Outside the range.</exception>
    public double? AirTemperature
    {
        get;
        init => field = value is double given ? Require.InRange(given, 150, 400, "K", nameof(AirTemperature)) : null;
    }

    /// <summary>Temperature of what surrounds the cylinder (shade, water, ice), K, 200 to 400; that of the air where it is null.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">Outside the range.</exception>
    public double? CylinderSurroundings
    {
        get;
        init => field = value is double given ? Require.InRange(given, 200, 400, "K", nameof(CylinderSurroundings)) : null;
    }

    /// <summary>Heat exchange around the cylinder as a multiple of that in still air: a water or ice bath some 50; 0.01 to 200, 1 by default.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">Outside the range.</exception>
    public double CylinderFactor
    {
        get => 1 + _cylinder;
        init => _cylinder = Require.InRange(value, 0.01, 200, string.Empty, nameof(CylinderFactor)) - 1;
    }

    /// <summary>Whether two inputs are the same.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    public static bool operator ==(in SimulationInputs left, in SimulationInputs right) => left.Equals(right);

    /// <summary>Whether two inputs differ.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    public static bool operator !=(in SimulationInputs left, in SimulationInputs right) => !left.Equals(right);

    /// <inheritdoc/>
    public bool Equals(SimulationInputs other) =>
        _isStopped == other._isStopped && _closing == other._closing && _liquidClosing == other._liquidClosing && _fan == other._fan
        && _water == other._water && _cylinder == other._cylinder && HeaterPower == other.HeaterPower && CrankcaseHeaterPower == other.CrankcaseHeaterPower
        && AirTemperature == other.AirTemperature && CylinderSurroundings == other.CylinderSurroundings;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is SimulationInputs other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => InletOpening.GetHashCode() ^ (HeaterPower.GetHashCode() * 31) ^ (FanFactor.GetHashCode() * 17) ^ _isStopped.GetHashCode();

    /// <summary>What differs from a machine that runs with all valves open, culture-invariant.</summary>
    public override string ToString()
    {
        string[] differs =
        [
            MachineRunning ? "machine on" : "machine off",
            InletOpening == 1 ? "" : System.FormattableString.Invariant($"inlet {InletOpening:P0}"),
            LiquidOpening == 1 ? "" : System.FormattableString.Invariant($"liquid {LiquidOpening:P0}"),
            HeaterPower == 0 ? "" : System.FormattableString.Invariant($"heater {HeaterPower:G3} W"),
            CrankcaseHeaterPower == 0 ? "" : System.FormattableString.Invariant($"crankcase heater {CrankcaseHeaterPower:G3} W"),
            FanFactor == 1 ? "" : System.FormattableString.Invariant($"fan ×{FanFactor:G3}"),
            WaterFactor == 1 ? "" : System.FormattableString.Invariant($"water ×{WaterFactor:G3}"),
            CylinderFactor == 1 ? "" : System.FormattableString.Invariant($"cylinder ×{CylinderFactor:G3}"),
            AirTemperature is double air ? System.FormattableString.Invariant($"air {air:G5} K") : "",
            CylinderSurroundings is double around ? System.FormattableString.Invariant($"around the cylinder {around:G5} K") : "",
        ];
        return string.Join(", ", System.Array.FindAll(differs, text => text.Length > 0));
    }
}
