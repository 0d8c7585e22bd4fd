using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.CoolProp.Tests.Conformance;

/// <summary>Compares two engines' models of one fluid, state by state, and keeps the worst deviation of each property.</summary>
/// <remarks>
/// Pressures, densities, heat capacities and speeds of sound deviate relative to the second engine's; enthalpies relative to 100 kJ/kg and
/// entropies relative to 500 J/(kg·K), since their zero is arbitrary. Those of a blend are differences: the two engines add up the zeros of
/// its components in different ways, which shifts all of its states alike.
/// </remarks>
internal sealed class Comparison
{
    private const double EnthalpyScale = 100e3;
    private const double EntropyScale = 500;
    private const int SaturationPoints = 15;

    /// <summary>
    /// Above this share of its critical temperature the equation of R-514A has five density roots at the bubble pressure, and CoolProp takes the
    /// middle one, which is not the stable one at 430.7 K (the embedded engine's tests prove it): not compared.
    /// </summary>
    private const double WarmShareOfR514A = 0.95;

    /// <summary>The part of the way from the cold end of both to the critical point at which saturation is compared last.</summary>
    private const double WarmShare = 0.985;

    /// <summary>Nothing is compared below this pressure, Pa: far below any vacuum that is pulled or measured.</summary>
    private const double LowestPressure = 1;

    private readonly Dictionary<string, Worst> _worst = [];

    /// <summary>Whether enthalpies and entropies are compared as differences from the first saturated liquid that both engines answered.</summary>
    private readonly bool _differences;

    private (double Enthalpy, double Entropy)? _zero;

    private Comparison(string designation, bool differences)
    {
        Designation = designation;
        _differences = differences;
    }

    public string Designation { get; }

    public int States { get; private set; }

    /// <summary>States at which the second engine failed, with its words for the first few.</summary>
    public List<string> Refused { get; } = [];

    public IReadOnlyDictionary<string, Worst> Worsts => _worst;

    public static Comparison Of(PropertyModel ours, PropertyModel theirs)
    {
        var comparison = new Comparison(ours.Designation, ours.Composition.Count > 1);
        double cold = Math.Max(ours.Range.MinimumTemperature, theirs.Range.MinimumTemperature);
        double warm = Math.Min(
            Math.Min(ours.Range.MaximumSaturationTemperature, theirs.Range.MaximumSaturationTemperature), (ours.Designation == "R-514A" ? WarmShareOfR514A : WarmShare) * ours.CriticalTemperature);
        foreach (double temperature in Spread(cold, warm, SaturationPoints))
        {
            SaturationPoint point = ours.SaturationAtTemperature(temperature);
            if (point.Dew.Pressure < LowestPressure)
            {
                continue;
            }

            comparison.Saturation(ours, theirs, temperature);
            foreach (double factor in new[] { 1.2, 3, 10 })
            {
                comparison.SinglePhase(ours, theirs, temperature, point.Bubble.Pressure * factor);
            }

            foreach (double factor in new[] { 0.9, 0.5, 0.05 })
            {
                comparison.SinglePhase(ours, theirs, temperature, point.Dew.Pressure * factor);
            }
        }

        foreach (double factor in new[] { 1.05, 1.15, 1.3 })
        {
            foreach (double share in new[] { 0.1, 0.8, 1.5, 3 })
            {
                comparison.SinglePhase(ours, theirs, ours.CriticalTemperature * factor, ours.CriticalPressure * share);
            }
        }

        return comparison;
    }

    private static IEnumerable<double> Spread(double from, double to, int count) =>
        Enumerable.Range(0, count).Select(i => from + ((to - from) * i / (count - 1)));

    private void Saturation(PropertyModel ours, PropertyModel theirs, double temperature) => Try(
        FormattableString.Invariant($"saturation at {temperature:F3} K"),
        () => theirs.SaturationAtTemperature(temperature),
        reference =>
        {
            SaturationPoint point = ours.SaturationAtTemperature(temperature);
            Add("saturation pressure", Relative(point.Bubble.Pressure, reference.Bubble.Pressure), temperature, reference.Bubble.Pressure);
            Add("saturation pressure", Relative(point.Dew.Pressure, reference.Dew.Pressure), temperature, reference.Dew.Pressure);
            Add("saturated liquid density", Relative(point.Bubble.Density, reference.Bubble.Density), temperature, reference.Bubble.Pressure);
            Add("saturated vapor density", Relative(point.Dew.Density, reference.Dew.Density), temperature, reference.Dew.Pressure);
            Caloric("saturated enthalpy", "saturated entropy", point.Bubble, reference.Bubble);
            Caloric("saturated enthalpy", "saturated entropy", point.Dew, reference.Dew);
        });

    private void SinglePhase(PropertyModel ours, PropertyModel theirs, double temperature, double pressure)
    {
        bool both = pressure >= LowestPressure
            && pressure <= Math.Min(ours.Range.MaximumPressure, theirs.Range.MaximumPressure)
            && temperature <= Math.Min(ours.Range.MaximumTemperature, theirs.Range.MaximumTemperature);
        if (!both)
        {
            return;
        }

        Try(
            FormattableString.Invariant($"{temperature:F3} K and {pressure:G6} Pa"),
            () => (Point: theirs.StateAt(temperature, pressure), Derivatives: Derivatives(theirs, temperature, pressure)),
            reference =>
            {
                StatePoint point = ours.StateAt(temperature, pressure);
                StateDerivatives derivatives = ours.DerivativesAt(temperature, point.Density);
                Add("density", Relative(point.Density, reference.Point.Density), temperature, pressure);
                Caloric("enthalpy", "entropy", point, reference.Point);
                Add("cp", Relative(derivatives.IsobaricHeatCapacity, reference.Derivatives.IsobaricHeatCapacity), temperature, pressure);
                Add("speed of sound", Relative(derivatives.SpeedOfSound, reference.Derivatives.SpeedOfSound), temperature, pressure);
            });
    }

    private static StateDerivatives Derivatives(PropertyModel model, double temperature, double pressure) =>
        model.DerivativesAt(temperature, model.StateAt(temperature, pressure).Density);

    private void Caloric(string enthalpy, string entropy, in StatePoint point, in StatePoint reference)
    {
        double aboveEnthalpy = point.Enthalpy - reference.Enthalpy;
        double aboveEntropy = point.Entropy - reference.Entropy;
        _zero ??= _differences ? (aboveEnthalpy, aboveEntropy) : (0, 0);
        Add(enthalpy, Math.Abs(aboveEnthalpy - _zero.Value.Enthalpy) / EnthalpyScale, point.Temperature, point.Pressure);
        Add(entropy, Math.Abs(aboveEntropy - _zero.Value.Entropy) / EntropyScale, point.Temperature, point.Pressure);
    }

    private void Try<T>(string state, Func<T> theirs, Action<T> compare)
    {
        States++;
        T reference;
        try
        {
            reference = theirs();
        }
        catch (Exception error) when (error is CoolPropException or PropertyRangeException or ConvergenceException)
        {
            Refused.Add($"{state}: {error.Message}");
            return;
        }

        compare(reference);
    }

    private void Add(string property, double deviation, double temperature, double pressure)
    {
        if (!_worst.TryGetValue(property, out Worst worst) || !(deviation <= worst.Deviation))
        {
            _worst[property] = new Worst(deviation, temperature, pressure);
        }
    }

    private static double Relative(double value, double reference) => Math.Abs((value / reference) - 1);

    /// <summary>The largest deviation of a property and where it stands.</summary>
    internal readonly record struct Worst(double Deviation, double Temperature, double Pressure);
}
