using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Oils;
using Refrigerant.Recovery.Residuals;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Rules;

/// <summary>Oil that is drained, and the refrigerant that leaves dissolved in it: an estimate. Immutable.</summary>
/// <remarks>
/// Equilibrium at the pressure and temperature at which the oil is drained, by Raoult's rule with a factor for the pair, as in <see cref="ResidualCharge"/>.
/// Oil gives off refrigerant late: right after a pull it holds more. Local codes and licensed practice govern.
/// </remarks>
public sealed record DrainedOil
{
    /// <summary>Heaviest oil, kg: far beyond any machine.</summary>
    private const double MostOil = 1e6;

    /// <summary>Pressures this near to the limit count as at it, Pa.</summary>
    private const double Rounding = 1;

    private DrainedOil(Fluid fluid, ApplianceOil oil, MassRange dissolved, bool isLowerBound, IReadOnlyList<Finding> findings)
    {
        Fluid = fluid;
        Oil = oil;
        Dissolved = dissolved;
        IsLowerBound = isLowerBound;
        Findings = Require.Copy(findings, nameof(findings));
    }

    /// <summary>The refrigerant.</summary>
    public Fluid Fluid { get; }

    /// <summary>The oil.</summary>
    public ApplianceOil Oil { get; }

    /// <summary>Refrigerant that leaves with the oil.</summary>
    public MassRange Dissolved { get; }

    /// <summary>Whether it may be more than the upper bound says: the pressure is too near saturation for the rule.</summary>
    public bool IsLowerBound { get; }

    /// <summary>Refrigerant as a share of what is drained, by mass: best estimate; zero where there is no oil.</summary>
    public Ratio MassFraction => new(Share(Dissolved.BestKilograms), RatioUnit.DecimalFraction);

    /// <summary>The same by the upper bound.</summary>
    public Ratio HighestMassFraction => new(Share(Dissolved.HighKilograms), RatioUnit.DecimalFraction);

    /// <summary>What to know, heaviest first.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Estimates what leaves with oil that is drained.</summary>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="oil">The oil, 1000 t at most.</param>
    /// <param name="temperature">Temperature of the oil, greater than 0 K.</param>
    /// <param name="pressure">Absolute pressure over the oil when it is drained, greater than zero.</param>
    /// <param name="barometer">The air at the place, which the limit in gauge pressure counts from; null for the standard atmosphere.</param>
    /// <exception cref="ArgumentNullException">The fluid or the oil is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="PropertyRangeException">The temperature is outside the range of the refrigerant's equation.</exception>
    /// <example>
    /// <code>
    /// DrainedOil drained = DrainedOil.Estimate(
    ///     Fluid.Get("R-22"),
    ///     new ApplianceOil { Mass = Mass.FromKilograms(4), Kind = OilKind.Mineral },
    ///     Temperature.FromDegreesCelsius(20),
    ///     Pressure.FromKilopascals(101.325));
    /// Console.WriteLine($"{drained.MassFraction.Percent:F1} %"); // 4.9 %
    /// </code>
    /// </example>
    public static DrainedOil Estimate(Fluid fluid, ApplianceOil oil, Temperature temperature, Pressure pressure, Barometer? barometer = null)
    {
        PropertyModel model = Require.NotNull(fluid, nameof(fluid)).Model;
        double mass = Require.InRange(Require.NotNull(oil, nameof(oil)).Mass.Kilograms, 0, MostOil, "kg", nameof(oil));
        double kelvins = Require.Positive(temperature.Kelvins, "K", nameof(temperature));
        double pascals = Require.Positive(pressure.Pascals, "Pa absolute", nameof(pressure));
        MassRange dissolved = DissolvedInOil.UpToLimit(model, kelvins, pascals, oil, out bool atLeast);
        double gauge = (barometer ?? Barometer.Standard).ToGauge(pressure).Pascals;
        List<Finding> findings = [];
        if (gauge > EvacuationFigures.OilChangeGauge + Rounding)
        {
            findings.Add(new Finding(
                RuleCodes.OilUnderPressure,
                Severity.Stop,
                EvacuationFigures.OilChange.Source,
                $"{FindingValue.GaugePascals("pressure", gauge)} stands over the oil: before an oil change evacuate to {FindingValue.GaugePascals("allowed", EvacuationFigures.OilChangeGauge)} at most, or drain the oil into a receiver at that at most and recover from there."));
        }

        if (mass > 0)
        {
            findings.Add(atLeast
                ? new Finding(
                    RuleCodes.OilNearSaturation,
                    Severity.Warning,
                    SolubilityTable.Source,
                    $"The oil is so near saturation that it holds {FindingValue.Kilograms("dissolved", dissolved.BestKilograms)} of {fluid.Designation} at least: warm it and pull the pressure down before it is drained, or it foams and boils as it comes out.")
                : new Finding(
                    RuleCodes.OilTakesRefrigerant,
                    Severity.Caution,
                    SolubilityTable.Source,
                    $"The oil takes some {FindingValue.Kilograms("dissolved", dissolved.BestKilograms)} of {fluid.Designation} with it, between {FindingValue.Kilograms("lowest", dissolved.LowKilograms)} and {FindingValue.Kilograms("highest", dissolved.HighKilograms)}: an estimate. Warmer oil at a lower pressure holds less; let it stand before it is drained."));
        }

        return new DrainedOil(fluid, oil, dissolved, atLeast, [.. findings.OrderByDescending(finding => finding.Severity)]);
    }

    /// <summary>Mass and share, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Dissolved} of {Fluid.Designation} in {Oil.Mass.Kilograms:G4} kg of oil, {MassFraction.Percent:G3} % by mass");

    private double Share(double dissolved) => dissolved > 0 ? dissolved / (dissolved + Oil.Mass.Kilograms) : 0;
}
