using System;
using System.Linq;
using System.Threading;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>What all stages have in common: where they start, what people do, what limits them. Immutable.</summary>
public abstract record StageOptions
{
    /// <summary>Relative error of a step: far inside what any input is known to.</summary>
    internal const double DefaultTolerance = 1e-5;

    private protected StageOptions(double longest) => MaximumDuration = new Duration(longest, DurationUnit.Second);

    /// <summary>With what is common to all stages; what is null takes its default.</summary>
    private protected StageOptions(
        double longest, SimulationState? start, SimulationInputs? inputs, Mass? cylinderLimit, Duration? maximumDuration, CompositionMode? composition, Barometer? barometer)
        : this(longest)
    {
        Start = start ?? Start;
        Inputs = inputs ?? Inputs;
        CylinderLimit = cylinderLimit ?? CylinderLimit;
        MaximumDuration = maximumDuration ?? MaximumDuration;
        Composition = composition ?? Composition;
        Barometer = barometer ?? Barometer;
    }

    /// <summary>State at the start, as the stage before left it; where it is null, appliance and cylinder as described, at the temperature of the surroundings. A state of another refrigerant or of other volumes is refused with an <see cref="System.ArgumentException"/>.</summary>
    public SimulationState? Start { get; init; }

    /// <summary>Heat, fans, valves, cooling throughout the stage.</summary>
    public SimulationInputs Inputs { get; init; }

    /// <summary>Most refrigerant that the cylinder may hold; the limit by the filling rules where it is null.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Mass? CylinderLimit
    {
        get;
        init
        {
            if (value is Mass given)
            {
                Require.Positive(given.Kilograms, "kg", nameof(CylinderLimit));
            }

            field = value;
        }
    }

    /// <summary>Longest time, 1 s to 1000 days.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Duration MaximumDuration
    {
        get;
        init
        {
            Require.InRange(value.Seconds, 1, 8.64e7, "s", nameof(MaximumDuration));
            field = value;
        }
    }

    /// <summary>
    /// Whether the composition of a blend is followed; fixed by default. It is followed for blends of this package's own property models; a pure
    /// fluid has nothing to follow. From a <see cref="Start"/> whose composition was followed it is followed in any case.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    public CompositionMode Composition { get; init => field = Require.Defined(value, nameof(Composition)); }

    /// <summary>
    /// The air at the place, against which design and service pressures, which are gauge pressures, are held; the standard atmosphere by default. Where the air is thinner an
    /// appliance comes to its design pressure at a lower absolute pressure: give the barometer of the place.
    /// </summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public Barometer Barometer { get; init => field = Require.NotNull(value, nameof(Barometer)); } = Barometer.Standard;

    /// <summary>The table of flashing liquid of stages before, of the same refrigerant; one of its own where it is null.</summary>
    internal FlashTable? Flash { get; init; }

    /// <summary>Bound on attempted steps.</summary>
    internal int MaximumSteps { get; init; } = 5000;

    /// <summary>Ends the simulation by an exception.</summary>
    internal CancellationToken Cancellation { get; init; }

    /// <summary>Relative error allowed in a step.</summary>
    internal double RelativeTolerance { get; init; } = DefaultTolerance;

    /// <summary>What the stage is told besides what all have in common; culture-invariant, empty for nothing.</summary>
    private protected abstract string Own { get; }

    /// <summary>What it is told, the inputs and the longest time, culture-invariant.</summary>
    public sealed override string ToString()
    {
        string[] parts =
        [
            Own,
            Inputs.ToString(),
            Start is null ? string.Empty : "from the state given",
            CylinderLimit is Mass limit ? $"cylinder to {Require.Text(limit.Kilograms)} kg" : string.Empty,
            $"{Require.Text(MaximumDuration.Seconds)} s at most",
        ];
        return string.Join(", ", parts.Where(part => part.Length > 0));
    }
}
