using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Records.Jobs;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Records;

/// <summary>A column of a log as comma-separated values: its name, its units, and the member of a reading behind it.</summary>
internal sealed class LogColumn
{
    private const string Number = "it must be a number with a decimal point, such as 12.5, not NaN or infinite; empty where it was not read.";

    private static readonly Dictionary<string, Func<double, double>> Times = new()
    {
        ["s"] = value => value,
        ["min"] = value => 60 * value,
        ["h"] = value => 3600 * value,
    };

    private static readonly Dictionary<string, Func<double, double>> Pressures = new()
    {
        ["kPa"] = value => value,
        ["Pa"] = value => value / 1e3,
        ["MPa"] = value => 1e3 * value,
        ["bar"] = value => 1e2 * value,
        ["psi"] = value => new Pressure(value, PressureUnit.PoundForcePerSquareInch).Kilopascals,
    };

    private static readonly Dictionary<string, Func<double, double>> Weights = new()
    {
        ["kg"] = value => value,
        ["g"] = value => 1e-3 * value,
        ["lb"] = value => 0.45359237 * value,
        ["oz"] = value => 0.45359237 / 16 * value,
    };

    private static readonly Dictionary<string, Func<double, double>> Temperatures = new()
    {
        ["°C"] = value => value,
        ["C"] = value => value,
        ["K"] = value => value - 273.15,
        ["°F"] = FromFahrenheit,
        ["F"] = FromFahrenheit,
    };

    private static readonly Dictionary<string, Func<double, double>> None = [];

    private readonly Dictionary<string, Func<double, double>> _units;
    private readonly Func<JobReading, string, Func<double, double>?, JobReading?> _set;
    private readonly Func<JobReading, double?> _get;

    private LogColumn(
        string name,
        string member,
        Dictionary<string, Func<double, double>> units,
        Func<JobReading, double?> get,
        Func<JobReading, string, Func<double, double>?, JobReading?> set,
        string reason = Number)
    {
        Name = name;
        Member = member;
        _units = units;
        _get = get;
        _set = set;
        Reason = reason;
    }

    /// <summary>All columns, in the order in which they are written.</summary>
    public static IReadOnlyList<LogColumn> All { get; } =
    [
        Quantity("time", nameof(JobReading.Time), Times, reading => reading.Time.Seconds, (reading, value) => reading with { Time = new Duration(value, DurationUnit.Second) }),
        Quantity("suction gauge", nameof(JobReading.SuctionGaugePressure), Pressures, reading => reading.SuctionGaugePressure?.Kilopascals, (reading, value) => reading with { SuctionGaugePressure = Exact.PressureOf(value) }),
        Quantity("gross weight", nameof(JobReading.GrossWeight), Weights, reading => reading.GrossWeight?.Kilograms, (reading, value) => reading with { GrossWeight = new Mass(value, MassUnit.Kilogram) }),
        Quantity("ambient", nameof(JobReading.Ambient), Temperatures, reading => reading.Ambient?.DegreesCelsius, (reading, value) => reading with { Ambient = Exact.TemperatureOf(value) }),
        Quantity("pipe", nameof(JobReading.PipeTemperature), Temperatures, reading => reading.PipeTemperature?.DegreesCelsius, (reading, value) => reading with { PipeTemperature = Exact.TemperatureOf(value) }),
        Quantity("discharge gauge", nameof(JobReading.DischargeGaugePressure), Pressures, reading => reading.DischargeGaugePressure?.Kilopascals, (reading, value) => reading with { DischargeGaugePressure = Exact.PressureOf(value) }),
        Switch("machine", nameof(JobReading.MachineRunning), ("on", "off"), reading => reading.MachineRunning, (reading, value) => reading with { MachineRunning = value }),
        Switch("valve", nameof(JobReading.ValveOpen), ("open", "shut"), reading => reading.ValveOpen, (reading, value) => reading with { ValveOpen = value }),
        new("cylinder", nameof(JobReading.Cylinder), None, _ => null, (reading, field, _) => field.Trim().Length == 0 ? null : reading with { Cylinder = field }, "it must be a text that is not blank; empty for the same cylinder as before."),
    ];

    public string Name { get; }

    /// <summary>The member of <see cref="JobReading"/>.</summary>
    public string Member { get; }

    public bool IsRequired => Member == nameof(JobReading.Time);

    /// <summary>Name and unit as written.</summary>
    public string Header => _units.Count == 0 ? Name : $"{Name} [{_units.Keys.First()}]";

    private string Reason { get; }

    private (string Yes, string No)? States { get; init; }

    /// <summary>Whether it may have that unit; empty for a column without one.</summary>
    public bool Knows(string unit) => _units.Count == 0 ? unit.Length == 0 : _units.ContainsKey(unit);

    /// <summary>Whether a reading has something to write here.</summary>
    public bool IsWritten(JobReading reading) => Text(reading).Length > 0 && (States is not (string yes, _) || Text(reading) != yes);

    /// <summary>What is written of a reading.</summary>
    public string Text(JobReading reading) => Member switch
    {
        nameof(JobReading.Cylinder) => Quoted(reading.Cylinder ?? string.Empty),
        nameof(JobReading.MachineRunning) => reading.MachineRunning ? States!.Value.Yes : States!.Value.No,
        nameof(JobReading.ValveOpen) => reading.ValveOpen ? States!.Value.Yes : States!.Value.No,
        _ => _get(reading) is double value ? Plain.Text(value + 0.0) : string.Empty,
    };

    /// <summary>The reading with the field that a line has here.</summary>
    /// <exception cref="DocumentException">The field is none of this column.</exception>
    public JobReading Set(JobReading reading, string unit, string field, int line) =>
        _set(reading, field, _units.Count == 0 ? null : _units[unit]) ?? throw JobLogCsv.Wrong(line, Name, field, Reason);

    /// <summary>The column as the header may have it.</summary>
    public override string ToString() => _units.Count == 0 ? Name : $"{Name} [{string.Join(" or ", _units.Keys)}]";

    private static LogColumn Quantity(
        string name, string member, Dictionary<string, Func<double, double>> units, Func<JobReading, double?> get, Func<JobReading, double, JobReading> set) =>
        new(name, member, units, get, (reading, field, convert) =>
            double.TryParse(field, NumberStyles.Float & ~NumberStyles.AllowThousands, CultureInfo.InvariantCulture, out double value) && Require.IsFinite(value) && Require.IsFinite(convert!(value))
                ? set(reading, convert(value))
                : null);

    private static LogColumn Switch(
        string name, string member, (string Yes, string No) states, Func<JobReading, bool> get, Func<JobReading, bool, JobReading> set) =>
        new(
            name,
            member,
            None,
            reading => get(reading) ? 1 : 0,
            (reading, field, _) => field == states.Yes || field == "1" ? set(reading, true) : field == states.No || field == "0" ? set(reading, false) : null,
            $"it must be {states.Yes} or {states.No}, or 1 or 0.")
        {
            States = states,
        };

    /// <summary>Text in quotes where RFC 4180 asks for them, and where blanks around it or a sign of a comment would be lost.</summary>
    private static string Quoted(string text) =>
        text.IndexOfAny([',', '"', '\n', '\r', '#']) < 0 && text.Trim().Length == text.Length ? text : "\"" + text.Replace("\"", "\"\"") + "\"";

    private static double FromFahrenheit(double value) => (value - 32) / 1.8;
}
