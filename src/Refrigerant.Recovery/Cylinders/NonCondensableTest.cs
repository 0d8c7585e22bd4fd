using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Cylinders;

/// <summary>Air in a cylinder, told from its pressure and temperature at rest, with the accuracy of both readings. Immutable.</summary>
/// <remarks>
/// Partial pressure p − p_sat(T) (Dalton), mole fraction (p − p_sat)/p. The cylinder must have liquid in it, at one temperature
/// throughout. For a blend p_sat is the bubble pressure of the bulk composition; how far the composition of the liquid may have shifted is
/// covered by letting p_sat reach down to the dew pressure.
/// </remarks>
public sealed record NonCondensableTest
{
    /// <summary>Low-pressure refrigerants, for which AHRI 700 has no entry (from memory).</summary>
    private static readonly string[] WithoutLimit = ["R-11", "R-113", "R-123"];

    private static readonly FindingValue Allowed = FindingValue.Fraction("allowed", NonCondensableFigures.MoleFractionLimit);

    private readonly double _partial;
    private readonly double _low;
    private readonly double _best;
    private readonly double _high;
    private readonly double _saturation;

    private NonCondensableTest(double partial, double low, double best, double high, double saturation, NonCondensableVerdict verdict, IReadOnlyList<Finding> findings)
    {
        _partial = partial;
        _low = low;
        _best = best;
        _high = high;
        _saturation = saturation;
        Verdict = verdict;
        Findings = Require.Copy(findings, nameof(findings));
    }

    /// <summary>Best estimate of the partial pressure of air and other gases; zero where the pressure is not above saturation.</summary>
    public Pressure PartialPressure => new(_partial, PressureUnit.Pascal);

    /// <summary>The saturation pressure it was held against, absolute: for a blend the bubble pressure.</summary>
    public Pressure SaturationPressure => new(_saturation, PressureUnit.Pascal);

    /// <summary>Best estimate of their mole (volume) fraction in the vapor.</summary>
    public Ratio MoleFraction => new(_best, RatioUnit.DecimalFraction);

    /// <summary>The lowest fraction that the readings allow.</summary>
    public Ratio LowestMoleFraction => new(_low, RatioUnit.DecimalFraction);

    /// <summary>The highest fraction that the readings allow.</summary>
    public Ratio HighestMoleFraction => new(_high, RatioUnit.DecimalFraction);

    /// <summary>Whether that is more than the 1.5 % by volume of AHRI 700.</summary>
    public NonCondensableVerdict Verdict { get; }

    /// <summary>What should be known about the verdict.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Judges a cylinder by its readings.</summary>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="pressure">Absolute pressure in the cylinder, greater than zero.</param>
    /// <param name="temperature">Its temperature at rest, on the saturation curves.</param>
    /// <param name="pressureAccuracy">Plus or minus of the pressure, zero or more.</param>
    /// <param name="temperatureAccuracy">Plus or minus of the temperature, zero or more.</param>
    /// <exception cref="ArgumentNullException">The fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="PropertyRangeException">The temperature is outside the saturation curves.</exception>
    /// <example>
    /// <code>
    /// NonCondensableTest test = NonCondensableTest.Judge(
    ///     Fluid.Get("R-134a"),
    ///     pressure: Pressure.FromKilopascals(700),
    ///     temperature: Temperature.FromDegreesCelsius(25),
    ///     pressureAccuracy: Pressure.FromKilopascals(5),
    ///     temperatureAccuracy: TemperatureDelta.FromDegreesCelsius(0.5));
    /// Console.WriteLine(test.Verdict); // AboveLimit
    /// </code>
    /// </example>
    public static NonCondensableTest Judge(
        Fluid fluid, Pressure pressure, Temperature temperature, Pressure pressureAccuracy, TemperatureDelta temperatureAccuracy)
    {
        PropertyModel model = Require.NotNull(fluid, nameof(fluid)).Model;
        double p = Require.Positive(pressure.Pascals, "Pa absolute", nameof(pressure));
        double dp = Require.NotNegative(pressureAccuracy.Pascals, "Pa", nameof(pressureAccuracy));
        double dT = Require.NotNegative(temperatureAccuracy.Kelvins, "K", nameof(temperatureAccuracy));
        double kelvins = temperature.Kelvins;

        double saturation = model.SaturationAtTemperature(kelvins).Bubble.Pressure;
        double least = Dew(model, kelvins - dT);
        double most = Bubble(model, kelvins + dT);
        double low = Fraction(p - dp, most);
        double high = Fraction(p + dp, least);
        List<Finding> findings = [];
        NonCondensableVerdict verdict = high <= NonCondensableFigures.MoleFractionLimit ? NonCondensableVerdict.WithinLimit
            : low > NonCondensableFigures.MoleFractionLimit ? NonCondensableVerdict.AboveLimit
            : NonCondensableVerdict.CannotTell;
        if (p + dp < least)
        {
            verdict = NonCondensableVerdict.CannotTell;
            findings.Add(new Finding(
                CylinderCodes.NoTestOfAir,
                Severity.Warning,
                NonCondensableFigures.Limit.Source,
                $"The pressure is below saturation ({FindingValue.Pascals("saturation", saturation)}): no liquid in the cylinder, another refrigerant, or a temperature that is not that of the content. The test tells nothing."));
        }
        else if (verdict == NonCondensableVerdict.CannotTell)
        {
            findings.Add(new Finding(
                CylinderCodes.AirNotTold,
                Severity.Caution,
                NonCondensableFigures.Limit.Source,
                $"Between {FindingValue.Fraction("lowest", low)} and {FindingValue.Fraction("highest", high)} by volume: the readings are not accurate enough to tell on which side of {Allowed} it is."));
        }
        else if (verdict == NonCondensableVerdict.AboveLimit)
        {
            findings.Add(new Finding(
                CylinderCodes.Air,
                Severity.Warning,
                NonCondensableFigures.Limit.Source,
                $"At least {FindingValue.Fraction("lowest", low)} by volume of air or other gases, above the {Allowed} of the purity standard: let the cylinder settle and check again; then recycle or reclaim. It may also be another refrigerant."));
        }

        if (Array.IndexOf(WithoutLimit, model.Designation) >= 0)
        {
            findings.Add(new Finding(
                CylinderCodes.AirWithoutLimit,
                Severity.Note,
                "AHRI 700 (from memory)",
                $"The purity standard sets no limit on non-condensable gases for {model.Designation}; {Allowed} is used for comparison."));
        }

        return new NonCondensableTest(Math.Max(0, p - saturation), low, Fraction(p, saturation), high, saturation, verdict, findings);
    }

    /// <summary>Verdict and fraction, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Verdict}: {_best * 100:F2} % ({_low * 100:F2} to {_high * 100:F2} %) of air and other gases in the vapor");

    private static double Fraction(double pressure, double saturation) => pressure > saturation ? (pressure - saturation) / pressure : 0;

    private static double Dew(PropertyModel model, double temperature) =>
        model.SaturationAtTemperature(Math.Max(temperature, model.Range.MinimumTemperature)).Dew.Pressure;

    private static double Bubble(PropertyModel model, double temperature) =>
        model.SaturationAtTemperature(Math.Min(temperature, model.Range.MaximumSaturationTemperature)).Bubble.Pressure;
}
