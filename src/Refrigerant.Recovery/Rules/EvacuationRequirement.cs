using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Rules;

/// <summary>The level to which an appliance must be evacuated before it is opened: by 40 CFR 82.156, the rules of another place, or the caller. Immutable.</summary>
/// <remarks>
/// The regulation's vacuum is relative to an atmosphere of 29.9 inHg, whatever the barometer at the place. A technician verifies that the
/// level has been reached before opening (82.156(a)). Local codes and licensed practice govern.
/// </remarks>
public sealed record EvacuationRequirement
{
    private readonly double _pascals;
    private readonly double? _fraction;
    private readonly double? _reference;
    private readonly Barometer _barometer;

    internal EvacuationRequirement(Fluid fluid, RuleSet rules, EvacuationLevel level, Barometer barometer, IReadOnlyList<Finding> findings)
    {
        Fluid = fluid;
        Rules = rules;
        Classification = level.Classification;
        Class = level.Class;
        Kind = level.Kind;
        Hold = level.Hold;
        _pascals = level.Pascals;
        _fraction = level.Fraction;
        _reference = level.ReferenceKelvins;
        Rule = level.Rule;
        _barometer = barometer;
        Findings = Require.Copy(findings, nameof(findings));
    }

    /// <summary>The refrigerant.</summary>
    public Fluid Fluid { get; }

    /// <summary>The rules of the place that it follows from.</summary>
    public RuleSet Rules { get; }

    /// <summary>What kind of level it is.</summary>
    public LevelKind Kind { get; }

    /// <summary>
    /// The absolute pressure to reach: at or below it. Where the place states none (<see cref="LevelKind.NoFigure"/>), that of the air.
    /// </summary>
    public Pressure RequiredPressure => new(_pascals, PressureUnit.Pascal);

    /// <summary>
    /// For a small appliance, the share of the charge whose recovery meets the rule just as <see cref="RequiredPressure"/> does; otherwise null.
    /// </summary>
    public Ratio? RequiredRecovery => _fraction is double fraction ? new Ratio(fraction, RatioUnit.DecimalFraction) : null;

    /// <summary>The pressure class applied in the United States: the caller's, else that by the letter; null under other rules.</summary>
    public PressureClass? Class { get; }

    /// <summary>How the class follows from the pressure at 104 °F; null under other rules.</summary>
    public PressureClassification? Classification { get; }

    /// <summary>How the level is to be proved; null where the place says nothing of it.</summary>
    public HoldRule? Hold { get; }

    /// <summary>The temperature of the appliance at which the level holds; null where the place names none.</summary>
    public Temperature? ReferenceTemperature => _reference is double kelvins ? new Temperature(kelvins, TemperatureUnit.Kelvin) : null;

    /// <summary>The rule that sets the level.</summary>
    public RuleFigure Rule { get; }

    /// <summary>The document and section.</summary>
    public string Source => Rule.Source;

    /// <summary>
    /// The level as the regulation of the United States words it: vacuum relative to 29.9 inHg, negative where it is above that atmosphere; null
    /// under other rules.
    /// </summary>
    public Pressure? VacuumOnRegulationBasis =>
        Rules == RuleSet.UnitedStates ? new Pressure(EvacuationFigures.Atmosphere - _pascals, PressureUnit.Pascal) : null;

    /// <summary>The reading of a gauge at the place; negative is vacuum.</summary>
    public Pressure GaugeReading => GaugeReadingOn(_barometer);

    /// <summary>What should be known about the level.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>The level required before an appliance is opened.</summary>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="charge">Full charge of the appliance, greater than zero.</param>
    /// <param name="options">Kind of appliance, purpose, machine and place; null for the defaults, which are the stricter cases.</param>
    /// <exception cref="ArgumentNullException">The fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The charge is not greater than zero, or above 5 lb for a small appliance.</exception>
    /// <exception cref="PropertyRangeException">The fluid's equation does not cover 104 °F.</exception>
    /// <example>
    /// <code>
    /// Barometer here = Barometer.AtElevation(Length.FromMeters(1600));
    /// EvacuationRequirement level = EvacuationRequirement.For(
    ///     Fluid.Get("R-134a"),
    ///     charge: Mass.FromPounds(300),
    ///     new EvacuationOptions { Barometer = here });
    /// Console.WriteLine($"{level.RequiredPressure.Kilopascals:F1} kPa"); // 50.5 kPa
    /// </code>
    /// </example>
    public static EvacuationRequirement For(Fluid fluid, Mass charge, EvacuationOptions? options = null)
    {
        Require.NotNull(fluid, nameof(fluid));
        double kilograms = Require.Positive(charge.Kilograms, "kg", nameof(charge));
        options ??= EvacuationOptions.Default;
        EvacuationLevel level = options.OwnLevel is Pressure own
            ? CallersLevel(own, options.OwnLevelSource)
            : options.Rules.Levels.Find(new LevelQuestion(fluid, kilograms, options));
        return new EvacuationRequirement(
            fluid, options.Rules, level, options.Barometer, [.. EvacuationFindings.AboveAir(level, options.Barometer), .. level.Findings]);
    }

    /// <summary>The reading of a gauge under a barometer; negative is vacuum.</summary>
    /// <param name="barometer">The air at the place.</param>
    /// <exception cref="ArgumentNullException">The barometer is null.</exception>
    public Pressure GaugeReadingOn(Barometer barometer) => Require.NotNull(barometer, nameof(barometer)).ToGauge(RequiredPressure);

    /// <summary>The reading of a vacuum gauge under a barometer; null where the level is above that barometer.</summary>
    /// <param name="barometer">The air at the place.</param>
    /// <exception cref="ArgumentNullException">The barometer is null.</exception>
    public Pressure? VacuumReadingOn(Barometer barometer) =>
        _pascals <= Require.NotNull(barometer, nameof(barometer)).Pressure.Pascals ? barometer.ToVacuum(RequiredPressure) : null;

    /// <summary>Whether a pressure meets the level.</summary>
    /// <param name="absolute">Absolute pressure reached, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not finite.</exception>
    public bool IsMetBy(Pressure absolute) => Require.NotNegative(absolute.Pascals, "Pa absolute", nameof(absolute)) <= _pascals;

    /// <summary>Level and rule, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Fluid.Designation}: {_pascals / 1000:F3} kPa absolute ({Rule.Rule}; {Source})");

    internal static EvacuationLevel CallersLevel(Pressure level, string source) => new(
        new RuleFigure("level given by the caller", Require.Text(level.Pascals / 1000) + " kPa absolute", source, Editions.None, Evidence.GivenByCaller),
        LevelKind.AbsolutePressure,
        level.Pascals);
}
