using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Rules;

/// <summary>Which refrigerants a pressure and a temperature at rest allow, with liquid there. Never a promise: an identifier decides. Immutable.</summary>
/// <remarks>
/// Deviation of a refrigerant: how far the pressure read lies outside its dew and bubble pressures, over √(u_p² + (dp/dT·u_T)² + (q·p)²), u the
/// uncertainties of the readings and q that of its model. Vapor without liquid has no saturation pressure, and air or a mixture can look like
/// anything.
/// </remarks>
public sealed record RefrigerantIdentification
{
    /// <summary>What the models may be off in pressure: a pure refrigerant or published blend, and an estimated one (see the page on blends).</summary>
    private const double PublishedUncertainty = 0.01;

    private const double EstimatedUncertainty = 0.15;

    /// <summary>Candidates that are kept though they do not fit.</summary>
    private const double FarthestKept = 3;

    /// <summary>The change of temperature that may tell candidates apart, K. Our choice: warm water or a night outside.</summary>
    private const double OtherTemperature = 20;

    private RefrigerantIdentification(IReadOnlyList<RefrigerantCandidate> candidates, IReadOnlyList<Finding> findings)
    {
        Candidates = Require.Copy(candidates, nameof(candidates));
        Findings = Require.Copy(findings, nameof(findings));
    }

    /// <summary>The candidates, best first: those that fit and those that nearly do.</summary>
    public IReadOnlyList<RefrigerantCandidate> Candidates { get; }

    /// <summary>Those that fit.</summary>
    public IEnumerable<RefrigerantCandidate> Fitting => Candidates.Where(candidate => candidate.Fits);

    /// <summary>What to know: that none fits, what would tell them apart, which are dangerous, and that an identifier decides.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Holds refrigerants against a pressure and a temperature.</summary>
    /// <param name="pressure">Absolute pressure at rest, greater than zero.</param>
    /// <param name="temperature">Temperature of the liquid, greater than 0 K.</param>
    /// <param name="pressureAccuracy">Plus or minus of the pressure, zero or more.</param>
    /// <param name="temperatureAccuracy">Plus or minus of the temperature, zero or more.</param>
    /// <param name="among">The refrigerants that come into question; null for all that the library carries, which takes a moment the first time.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <exception cref="ArgumentNullException">A refrigerant is null.</exception>
    public static RefrigerantIdentification From(
        Pressure pressure, Temperature temperature, Pressure pressureAccuracy, TemperatureDelta temperatureAccuracy, IReadOnlyList<Fluid>? among = null)
    {
        double p = Require.Positive(pressure.Pascals, "Pa absolute", nameof(pressure));
        double t = Require.Positive(temperature.Kelvins, "K", nameof(temperature));
        double dp = Require.NotNegative(pressureAccuracy.Pascals, "Pa", nameof(pressureAccuracy));
        double dt = Require.NotNegative(temperatureAccuracy.Kelvins, "K", nameof(temperatureAccuracy));
        RefrigerantCandidate[] found = [.. Require.Copy(among ?? Fluid.All, nameof(among))
            .Select(fluid => Candidate(fluid, p, t, dp, dt))
            .OfType<RefrigerantCandidate>()
            .Where(candidate => candidate.Deviation <= FarthestKept)
            .OrderBy(candidate => candidate.Deviation)
            .ThenBy(candidate => candidate.BubblePressure.Pascals - candidate.DewPressure.Pascals)];
        return new RefrigerantIdentification(found, FindingsFor([.. found.Where(candidate => candidate.Fits)], p, t));
    }

    /// <summary>Those that fit, best first.</summary>
    public override string ToString() => Fitting.Any() ? Words([.. Fitting.Select(candidate => candidate.Fluid.Designation)]) : "none fits";

    private static RefrigerantCandidate? Candidate(Fluid fluid, double p, double t, double dp, double dt)
    {
        PropertyModel model = fluid.Model;
        if (t - dt < model.Range.MinimumTemperature || t + dt > model.Range.MaximumSaturationTemperature)
        {
            return null;
        }

        SaturationPoint here = model.SaturationAtTemperature(t);
        double slope = dt > 0 ? (model.SaturationAtTemperature(t + dt).Bubble.Pressure - model.SaturationAtTemperature(t - dt).Bubble.Pressure) / 2 : 0;
        double quality = fluid.Quality == ModelQuality.Estimated ? EstimatedUncertainty : PublishedUncertainty;
        double uncertainty = Math.Sqrt((dp * dp) + (slope * slope) + (quality * quality * p * p));
        double outside = Math.Max(0, Math.Max(p - here.Bubble.Pressure, here.Dew.Pressure - p));
        return new RefrigerantCandidate(fluid, here.Bubble.Pressure, here.Dew.Pressure, outside / uncertainty);
    }

    private static IReadOnlyList<Finding> FindingsFor(RefrigerantCandidate[] fitting, double p, double t)
    {
        List<Finding> findings = [];
        if (fitting.Length == 0)
        {
            findings.Add(new Finding(
                RuleCodes.NoneFits,
                Severity.Warning,
                Sources.CommonPractice,
                $"None of the refrigerants has {FindingValue.Pascals("pressure", p)} at {FindingValue.Kelvins("temperature", t)}: air in it, a mixture, no liquid, or a temperature that is not that of the liquid. Use an identifier before you recover it."));
        }
        else if (fitting.Length > 1)
        {
            findings.Add(Several(fitting, t));
        }

        string[] dangerous = [.. fitting
            .Select(candidate => RefrigerantFacts.For(candidate.Fluid))
            .Where(facts => facts.IsFlammable != false || facts.IsToxic != false)
            .Select(facts => facts.Fluid.Designation)];
        if (dangerous.Length > 0)
        {
            findings.Add(new Finding(
                RuleCodes.CandidateDangerous,
                Severity.Warning,
                "ASHRAE Standard 34 (from memory)",
                $"Among those that fit, {FindingValue.Text("dangerous", Words(dangerous))} burn, are toxic or have no safety group that was found: handle it as if it were one of them."));
        }

        findings.Add(new Finding(
            RuleCodes.IdentifierDecides,
            Severity.Caution,
            Sources.CommonPractice,
            $"Pressure and temperature only exclude; they never prove. An identifier decides, before anything is recovered into a cylinder that holds something."));
        return findings;
    }

    private static Finding Several(RefrigerantCandidate[] fitting, double t)
    {
        FormattableString? apart = null;
        if (Bubble(fitting[0], t + OtherTemperature) is double first && Bubble(fitting[1], t + OtherTemperature) is double second)
        {
            apart = $"At {FindingValue.Kelvins("other temperature", t + OtherTemperature)}, {fitting[0].Fluid.Designation} would have {FindingValue.Pascals("first there", first)} and {fitting[1].Fluid.Designation} {FindingValue.Pascals("second there", second)}: a second reading tells them apart only if the gauge can.";
        }

        return new Finding(
            RuleCodes.SeveralFit,
            Severity.Caution,
            Sources.CommonPractice,
            $"{FindingValue.Number("number", fitting.Length)} refrigerants fit: {FindingValue.Text("candidates", Words([.. fitting.Select(candidate => candidate.Fluid.Designation)]))}.",
            apart);
    }

    private static double? Bubble(RefrigerantCandidate candidate, double kelvins) =>
        kelvins <= candidate.Fluid.Model.Range.MaximumSaturationTemperature ? candidate.Fluid.Model.SaturationAtTemperature(kelvins).Bubble.Pressure : null;

    /// <summary>The first few, and how many more.</summary>
    private static string Words(string[] names)
    {
        const int Most = 6;
        string text = string.Join(", ", names.Take(Most));
        return names.Length > Most ? FormattableString.Invariant($"{text} and {names.Length - Most} more") : text;
    }
}
