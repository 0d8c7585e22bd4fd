using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Rules;

/// <summary>Nitrogen before a flame: how often the volume is exchanged until what is left of a refrigerant cannot burn. Immutable.</summary>
/// <remarks>
/// The target is a tenth of the lower flammability limit in air. A steady flow of nitrogen that mixes thins exponentially: n = ln(ρ/c), ρ the
/// density of the vapor left, c the target, n the volumes of nitrogen over the internal volume. Dead ends do not mix, and oil gives off
/// refrigerant late: a detector at the opening decides, not this figure.
/// </remarks>
public sealed record FlamePurge
{
    private readonly double? _exchanges;
    private readonly double? _limit;
    private readonly double _density;
    private readonly double _pressure;

    private FlamePurge(Fluid fluid, double density, double pressure, double? limit, double? exchanges, RuleFigure? figure, Finding? finding)
    {
        Fluid = fluid;
        _density = density;
        _pressure = pressure;
        _limit = limit;
        _exchanges = exchanges;
        LimitFigure = figure;
        Findings = new ValueList<Finding>(finding is null ? [] : [finding]);
    }

    /// <summary>The refrigerant.</summary>
    public Fluid Fluid { get; }

    /// <summary>Density of the vapor that is left before the purge.</summary>
    public Density VaporDensity => new(_density, DensityUnit.KilogramPerCubicMeter);

    /// <summary>Lower flammability limit in air; null where none was found, or the refrigerant does not burn.</summary>
    public Density? LowerLimit => _limit is double value ? new Density(value, DensityUnit.KilogramPerCubicMeter) : null;

    /// <summary>The limit with its source; null where there is none.</summary>
    public RuleFigure? LimitFigure { get; }

    /// <summary>Volumes of nitrogen over the internal volume; 0 where it does not burn; null where no limit was found.</summary>
    public double? VolumeExchanges => _exchanges;

    /// <summary>The caution, with its numbers; empty where the refrigerant does not burn.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>How much nitrogen goes through before a flame is lit.</summary>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="pressure">Absolute pressure of what is left, greater than zero.</param>
    /// <param name="temperature">Its temperature, greater than 0 K.</param>
    /// <exception cref="ArgumentNullException">The fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not greater than zero.</exception>
    /// <exception cref="PropertyRangeException">The state is outside the range of the fluid's equation.</exception>
    public static FlamePurge Estimate(Fluid fluid, Pressure pressure, Temperature temperature)
    {
        PropertyModel model = Require.NotNull(fluid, nameof(fluid)).Model;
        double pascals = Require.Positive(pressure.Pascals, "Pa absolute", nameof(pressure));
        double kelvins = Require.Positive(temperature.Kelvins, "K", nameof(temperature));
        double density = Residuals.VaporDensity.At(model, kelvins, pascals, out _);
        if (RefrigerantFacts.For(fluid).IsFlammable == false)
        {
            return new FlamePurge(fluid, density, pascals, null, 0, null, null);
        }

        if (FlammabilityFigures.Find(fluid.Designation) is not (double limit, RuleFigure figure))
        {
            return new FlamePurge(fluid, density, pascals, null, null, null, new Finding(
                RuleCodes.FlammabilityUnknown,
                Severity.Warning,
                Sources.CommonPractice,
                $"No lower flammability limit was found for {fluid.Designation}, which may burn: no flame. Purge with dry nitrogen and trust a detector only."));
        }

        double exchanges = Math.Max(0, Math.Log(density / (FlammabilityFigures.PurgeShare * limit)));
        return new FlamePurge(fluid, density, pascals, limit, exchanges, figure, new Finding(
            RuleCodes.PurgeBeforeFlame,
            Severity.Warning,
            figure.Source,
            $"Before a flame, send dry nitrogen through: {FindingValue.Number("volume exchanges", exchanges, 2)} times the internal volume thin the {fluid.Designation} that is left ({FindingValue.Density("vapor left", new Density(density, DensityUnit.KilogramPerCubicMeter))}) to {FindingValue.Fraction("share of the lower limit", FlammabilityFigures.PurgeShare)} of its lower flammability limit, {FindingValue.Density("lower limit", new Density(limit, DensityUnit.KilogramPerCubicMeter))}.",
            $"Dead ends do not mix and oil gives off refrigerant late: a detector at the opening decides. Never air or oxygen; keep nitrogen flowing while you braze."));
    }

    /// <summary>What to do before a flame about what a recovery leaves; null where it does not burn, or there is nothing.</summary>
    /// <remarks>Counted as if what liquid and oil hold were in the vapor already: it comes out sooner or later.</remarks>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="volume">The internal volume.</param>
    /// <param name="left">What is left.</param>
    /// <param name="dissolved">Of that in oil.</param>
    /// <param name="presses">Whether it stands above the air: nitrogen would blow it out.</param>
    internal static Finding? Left(Fluid fluid, Volume volume, Mass left, Mass dissolved, bool presses)
    {
        if (RefrigerantFacts.For(fluid).IsFlammable != true || !(left.Kilograms > 0))
        {
            return null;
        }

        FindingValue mass = FindingValue.Mass("left", left);
        FormattableString oil = dissolved.Kilograms > 0
            ? (FormattableString)$"{mass} of {fluid.Designation} are left, {FindingValue.Mass("dissolved", dissolved)} of them in the oil, which gives them off late."
            : (FormattableString)$"{mass} of {fluid.Designation} are left.";
        if (presses)
        {
            return new Finding(
                RuleCodes.PurgeBeforeFlame, Severity.Warning, Sources.CommonPractice, oil, $"It burns and stands above the air: nothing that could light it while it is open. Before a flame recover it down to the air or below; nitrogen goes through only then.");
        }

        if (FlammabilityFigures.Find(fluid.Designation) is not (double limit, RuleFigure figure))
        {
            return new Finding(
                RuleCodes.FlammabilityUnknown, Severity.Warning, Sources.CommonPractice, oil, $"It burns, and no lower flammability limit was found: no flame. Purge with dry nitrogen and trust a detector only.");
        }

        double exchanges = Math.Max(0, Math.Log(left.Kilograms / volume.CubicMeters / (FlammabilityFigures.PurgeShare * limit)));
        return new Finding(
            RuleCodes.PurgeBeforeFlame,
            Severity.Warning,
            figure.Source,
            oil,
            exchanges > 0
                ? $"Before a flame, or before it is opened where something could light it, send dry nitrogen through, {FindingValue.Number("volume exchanges", exchanges, 2)} times the internal volume at least, and let a detector at the opening decide. Never air or oxygen."
                : (FormattableString)$"Before a flame, or before it is opened where something could light it, send dry nitrogen through and let a detector at the opening decide. Never air or oxygen.");
    }

    /// <summary>Refrigerant and exchanges, culture-invariant.</summary>
    public override string ToString() => _exchanges is double exchanges
        ? FormattableString.Invariant($"{Fluid.Designation}: {exchanges:F1} volumes of nitrogen")
        : $"{Fluid.Designation}: no lower flammability limit was found";

    /// <summary>
    /// How often the volume is filled to a pressure with nitrogen and let down again to where it was: n = ln(ρ/c)/ln(p₁/p₀), rounded up; null
    /// where no limit was found.
    /// </summary>
    /// <param name="to">Absolute pressure that nitrogen fills to, above the pressure of what is left.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not above it.</exception>
    public int? FillingsTo(Pressure to)
    {
        if (!(to.Pascals > _pressure))
        {
            throw new ArgumentOutOfRangeException(
                nameof(to), $"{nameof(to)} is {Require.Text(to.Pascals)} Pa absolute; it must be above {Require.Text(_pressure)} Pa absolute.");
        }

        return _exchanges is double exchanges ? (int)Math.Min(1e6, Math.Ceiling(exchanges / Math.Log(to.Pascals / _pressure))) : null;
    }
}
