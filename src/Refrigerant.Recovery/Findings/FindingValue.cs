using System;
using System.Globalization;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Findings;

/// <summary>A value that a finding rests on: what it is, how much, and how it is written for people. Immutable.</summary>
public sealed partial record FindingValue
{
    private readonly double _si;
    private readonly string _text;
    private readonly RoundingMode _rounding;

    private FindingValue(string name, FindingValueKind kind, double si, RoundingMode rounding = RoundingMode.Nearest, string text = "")
    {
        Name = Require.NotEmpty(name, nameof(name));
        Kind = kind;
        (string parameter, string unit) = Told(kind);
        _si = Require.Finite(si, unit, parameter);
        _rounding = Require.Defined(rounding, nameof(rounding));
        _text = Require.NotNull(text, nameof(text));
    }

    /// <summary>What it is, in a word or two, such as "limit".</summary>
    public string Name { get; }

    /// <summary>What kind of quantity it is.</summary>
    public FindingValueKind Kind { get; }

    /// <summary>The number in the SI unit of its <see cref="Kind"/>, exact; null for a text.</summary>
    public double? InternationalValue => Kind == FindingValueKind.Text ? null : _si;

    /// <summary>The quantity as a UnitsNet type; null for a text.</summary>
    public IQuantity? Quantity => Kind switch
    {
        FindingValueKind.Text => null,
        FindingValueKind.Number => new Scalar(_si, ScalarUnit.Amount),
        FindingValueKind.Share => new Ratio(_si, RatioUnit.DecimalFraction),
        FindingValueKind.Mass => AsMass,
        FindingValueKind.AbsolutePressure or FindingValueKind.GaugePressure or FindingValueKind.Vacuum
            or FindingValueKind.PressureDifference or FindingValueKind.PressurePerTemperature => AsPressure,
        FindingValueKind.Temperature => AsTemperature,
        FindingValueKind.TemperatureDifference => AsDifference,
        FindingValueKind.Volume => AsVolume,
        FindingValueKind.Length => AsLength,
        FindingValueKind.Duration => AsDuration,
        FindingValueKind.Power or FindingValueKind.HeatFlow => AsPower,
        FindingValueKind.MassFlow => AsMassFlow,
        FindingValueKind.VolumeFlow => AsVolumeFlow,
        _ => AsDensity,
    };

    private Mass AsMass => new(_si, MassUnit.Kilogram);

    private Pressure AsPressure => new(_si, PressureUnit.Pascal);

    private Temperature AsTemperature => new(_si, TemperatureUnit.Kelvin);

    private TemperatureDelta AsDifference => new(_si, TemperatureDeltaUnit.Kelvin);

    private Volume AsVolume => new(_si, VolumeUnit.CubicMeter);

    private Length AsLength => new(_si, LengthUnit.Meter);

    private Duration AsDuration => new(_si, DurationUnit.Second);

    private Power AsPower => UnitsNet.Power.FromWatts(_si);

    private MassFlow AsMassFlow => new(_si, MassFlowUnit.KilogramPerSecond);

    private VolumeFlow AsVolumeFlow => new(_si, VolumeFlowUnit.CubicMeterPerSecond);

    private Density AsDensity => new(_si, DensityUnit.KilogramPerCubicMeter);

    /// <summary>The value as people read it, by <see cref="QuantityText"/>.</summary>
    /// <param name="units">The units.</param>
    public string ToText(DisplayUnits units) => InUnits(Require.Defined(units, nameof(units)));

    private string InUnits(DisplayUnits units) => Kind switch
    {
        FindingValueKind.Text or FindingValueKind.Number => _text,
        FindingValueKind.Share => QuantityText.Share(new Ratio(_si, RatioUnit.DecimalFraction), _rounding),
        FindingValueKind.Mass => QuantityText.Mass(AsMass, units, _rounding),
        FindingValueKind.AbsolutePressure => QuantityText.AbsolutePressure(AsPressure, units, _rounding),
        FindingValueKind.GaugePressure => QuantityText.GaugeReading(AsPressure, units, _rounding),
        FindingValueKind.Vacuum => QuantityText.Vacuum(AsPressure, units, _rounding),
        FindingValueKind.PressureDifference => QuantityText.PressureDifference(AsPressure, units, _rounding),
        FindingValueKind.PressurePerTemperature => QuantityText.PressurePerTemperature(AsPressure, units),
        FindingValueKind.Temperature => QuantityText.Temperature(AsTemperature, units, _rounding),
        FindingValueKind.TemperatureDifference => QuantityText.TemperatureDifference(AsDifference, units, _rounding),
        FindingValueKind.Volume => QuantityText.Volume(AsVolume, units, _rounding),
        FindingValueKind.Length => QuantityText.Length(AsLength, units, _rounding),
        FindingValueKind.Duration => QuantityText.Duration(AsDuration),
        FindingValueKind.Power => QuantityText.Power(AsPower),
        FindingValueKind.HeatFlow => QuantityText.HeatFlow(AsPower, units),
        FindingValueKind.MassFlow => QuantityText.MassFlow(AsMassFlow, units),
        FindingValueKind.VolumeFlow => QuantityText.VolumeFlow(AsVolumeFlow, units),
        _ => QuantityText.Density(AsDensity, units),
    };

    /// <summary>Name and value in US customary units; culture-invariant.</summary>
    public override string ToString() => $"{Name} = {ToText(DisplayUnits.UnitedStatesCustomary)}";

    internal static FindingValue Date(string name, DateTime date) => Text(name, date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));

    /// <summary>The parameter that a value of a kind was given by, and its unit.</summary>
    private static (string Parameter, string Unit) Told(FindingValueKind kind) => kind switch
    {
        FindingValueKind.Share => ("share", string.Empty),
        FindingValueKind.Mass => ("mass", "kg"),
        FindingValueKind.AbsolutePressure => ("absolute", "Pa absolute"),
        FindingValueKind.GaugePressure => ("gauge", "Pa gauge"),
        FindingValueKind.Vacuum => ("vacuum", "Pa of vacuum"),
        FindingValueKind.PressureDifference => ("difference", "Pa"),
        FindingValueKind.PressurePerTemperature => ("perKelvin", "Pa/K"),
        FindingValueKind.Temperature => ("temperature", "K"),
        FindingValueKind.TemperatureDifference => ("difference", "K"),
        FindingValueKind.Volume => ("volume", "m³"),
        FindingValueKind.Length => ("length", "m"),
        FindingValueKind.Duration => ("duration", "s"),
        FindingValueKind.Power => ("power", "W"),
        FindingValueKind.HeatFlow => ("heat", "W"),
        FindingValueKind.MassFlow => ("flow", "kg/s"),
        FindingValueKind.VolumeFlow => ("flow", "m³/s"),
        FindingValueKind.Density => ("density", "kg/m³"),
        _ => ("value", string.Empty),
    };
}
