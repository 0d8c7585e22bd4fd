using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Planning;

/// <summary>The work of one stage on site: what is connected to what, how everything stands, what to watch. Immutable.</summary>
/// <remarks>Common practice, no source. Local codes and licensed practice govern.</remarks>
public sealed record Hookup
{
    internal Hookup(IReadOnlyList<HookupLine> lines, IReadOnlyList<HookupSetting> settings, IReadOnlyList<StageWatch> watches, IReadOnlyList<ScaleReading> scale)
    {
        Lines = Require.Copy(lines, nameof(lines));
        Settings = Require.Copy(settings, nameof(settings));
        Watches = Require.Copy(watches, nameof(watches));
        Scale = new ValueList<ScaleReading>([.. scale]);
    }

    /// <summary>The lines, from port to port in the direction of the flow; none where hoses come off.</summary>
    public IReadOnlyList<HookupLine> Lines { get; }

    /// <summary>Valves and settings.</summary>
    public IReadOnlyList<HookupSetting> Settings { get; }

    /// <summary>What ends the stage, as gauge, scale and clock show it: the one that comes first.</summary>
    public IReadOnlyList<StageWatch> Watches { get; }

    /// <summary>What the scale under the cylinder shows against time; empty where nothing moves.</summary>
    public IReadOnlyList<ScaleReading> Scale { get; }

    /// <summary>Lines and settings in plain words.</summary>
    public override string ToString() => $"{(Lines.Count == 0 ? "no lines" : string.Join(", ", Lines))}; {string.Join(", ", Settings)}";
}

/// <summary>One line of a hookup. Immutable.</summary>
public sealed record HookupLine
{
    internal HookupLine(HookupPort from, HookupPort to, IReadOnlyList<Hose> hoses)
    {
        From = from;
        To = to;
        Hoses = Require.Copy(hoses, nameof(hoses));
    }

    /// <summary>Where the flow comes from.</summary>
    public HookupPort From { get; }

    /// <summary>Where it goes.</summary>
    public HookupPort To { get; }

    /// <summary>The hoses, one after the other; empty where a drain hose or another one serves.</summary>
    public IReadOnlyList<Hose> Hoses { get; }

    /// <summary>From and to in plain words.</summary>
    public override string ToString() => HookupText.Of(From) + " to " + HookupText.Of(To);
}

/// <summary>How one thing stands in a hookup. Immutable.</summary>
public sealed record HookupSetting
{
    internal HookupSetting(HookupItem item, HookupPosition position, string? why = null)
    {
        Item = item;
        Position = position;
        Why = why;
    }

    /// <summary>What.</summary>
    public HookupItem Item { get; }

    /// <summary>How it stands.</summary>
    public HookupPosition Position { get; }

    /// <summary>Why, where it is not plain; null otherwise.</summary>
    public string? Why { get; }

    /// <summary>Item, position and reason in plain words.</summary>
    public override string ToString() => HookupText.Of(Item) + " " + HookupText.Of(Position) + (Why is null ? string.Empty : ": " + Why);
}

/// <summary>What is watched.</summary>
public enum WatchedBy
{
    /// <summary>The gauge on the appliance.</summary>
    ApplianceGauge = 0,

    /// <summary>The gauge on the cylinder, or at the machine's outlet.</summary>
    CylinderGauge,

    /// <summary>The scale under the cylinder.</summary>
    Scale,

    /// <summary>The clock.</summary>
    Clock,

    /// <summary>The sight glass, or the hose, which runs vapor.</summary>
    SightGlass,

    /// <summary>The machine, which stops or labors.</summary>
    Machine,
}

/// <summary>Something that ends a stage, in the unit of what shows it. Immutable.</summary>
public sealed record StageWatch
{
    internal StageWatch(WatchedBy by, FindingValue? value, string text)
    {
        By = by;
        Value = value;
        Text = text;
    }

    /// <summary>What shows it.</summary>
    public WatchedBy By { get; }

    /// <summary>The reading; null where it is no number.</summary>
    public FindingValue? Value { get; }

    /// <summary>What happens there and what to do, without the reading.</summary>
    public string Text { get; }

    /// <summary>The reading and what to do, in the reader's units, culture-invariant.</summary>
    /// <param name="units">The units.</param>
    public string ToText(DisplayUnits units) => Value is null ? Text : Value.ToText(units) + ": " + Text;

    /// <summary>In US customary units.</summary>
    public override string ToString() => ToText(DisplayUnits.UnitedStatesCustomary);
}

/// <summary>What the scale under the cylinder shows at a moment of a stage.</summary>
public readonly struct ScaleReading : IEquatable<ScaleReading>
{
    internal ScaleReading(Duration time, Mass gross)
    {
        Time = time;
        GrossWeight = gross;
    }

    /// <summary>Since the stage began.</summary>
    public Duration Time { get; }

    /// <summary>Weight of cylinder and content.</summary>
    public Mass GrossWeight { get; }

    /// <summary>Whether two readings are the same.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    public static bool operator ==(ScaleReading left, ScaleReading right) => left.Equals(right);

    /// <summary>Whether two readings differ.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    public static bool operator !=(ScaleReading left, ScaleReading right) => !left.Equals(right);

    /// <inheritdoc/>
    public bool Equals(ScaleReading other) => Time.Seconds.Equals(other.Time.Seconds) && GrossWeight.Kilograms.Equals(other.GrossWeight.Kilograms);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is ScaleReading other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Time.GetHashCode() ^ (GrossWeight.GetHashCode() * 31);

    /// <summary>Time and weight, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Time.Minutes:F1} min: {GrossWeight.Kilograms:F2} kg ({GrossWeight.Pounds:F1} lb)");
}
