using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Rules;

/// <summary>Oil pushed out of a vessel through a drain hose by gas at a steady gauge pressure. Immutable.</summary>
/// <remarks>
/// <para>
/// Laminar: ṁ = π·D⁴·ρ·Δp/(128·μ·L) (Hagen–Poiseuille), with entrance and exit losses, and Churchill's friction factor beyond laminar flow
/// (<see cref="Friction"/>). Δp = p_gauge + ρ·g·(h − rise), h the depth over the hose, which falls in step with the mass m:
/// t = ∫ dm/ṁ, taken over the logarithm of Δp, so that it is exact for laminar flow.
/// </para>
/// <para>The outlet is open to the air, or to a receiver that the gauge pressure counts from. Local codes and licensed practice govern.</para>
/// </remarks>
public sealed record OilPush
{
    /// <summary>Highest gauge pressure considered, Pa.</summary>
    private const double HighestGauge = 1e7;

    /// <summary>What takes longer, s (a year), counts as not draining.</summary>
    private const double LongestTime = 3.2e7;

    /// <summary>Shortest time asked for, s.</summary>
    private const double ShortestTime = 1e-3;

    /// <summary>Below this Reynolds number the oil counts as not flowing.</summary>
    private const double LeastReynolds = 1e-8;

    /// <summary>The search for a pressure starts this far above the one at which the last oil just does not flow, Pa.</summary>
    private const double LeastAbove = 1e-3;

    /// <summary>The logarithm of a pressure is found to this.</summary>
    private const double Tolerance = 1e-12;

    /// <summary>Intervals of the time integral (Simpson's rule; even).</summary>
    private const int Intervals = 32;

    private readonly double? _seconds;

    private OilPush(OilToDrain oil, double gauge, double? seconds, double flow, double reynolds, IReadOnlyList<Finding> findings)
    {
        Oil = oil;
        GaugePressure = new Pressure(gauge, PressureUnit.Pascal);
        _seconds = seconds;
        InitialFlow = new MassFlow(flow, MassFlowUnit.KilogramPerSecond);
        ReynoldsNumber = reynolds;
        Findings = Require.Copy(findings, nameof(findings));
    }

    /// <summary>The oil and its hose.</summary>
    public OilToDrain Oil { get; }

    /// <summary>Gauge pressure of the gas over the oil.</summary>
    public Pressure GaugePressure { get; }

    /// <summary>Time until the vessel is empty; null where the oil does not run out, or would take more than a year.</summary>
    public Duration? Duration => _seconds is double seconds ? new Duration(seconds, DurationUnit.Second) : null;

    /// <summary>Flow at the start.</summary>
    public MassFlow InitialFlow { get; }

    /// <summary>Reynolds number 4·ṁ/(π·D·μ) at the start, where it is highest, in the narrowest hose.</summary>
    public double ReynoldsNumber { get; }

    /// <summary>Whether the flow is laminar throughout (Reynolds number up to 2000).</summary>
    public bool IsLaminar => ReynoldsNumber <= OilServiceFigures.LaminarReynolds;

    /// <summary>What to know, heaviest first.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>How long it takes at a gauge pressure.</summary>
    /// <param name="oil">The oil and its hose.</param>
    /// <param name="gaugePressure">Gauge pressure of the gas over the oil, 0 (it runs by itself) to 10 MPa.</param>
    /// <exception cref="ArgumentNullException">The oil is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is outside its range.</exception>
    /// <example>
    /// <code>
    /// OilToDrain oil = new()
    /// {
    ///     Mass = Mass.FromKilograms(4),
    ///     Viscosity = DynamicViscosity.FromMillipascalSeconds(60),
    ///     Hoses =
    ///     [
    ///         new Hose
    ///         {
    ///             Length = Length.FromMeters(2),
    ///             InnerDiameter = Length.FromMillimeters(8),
    ///         },
    ///     ],
    /// };
    /// OilPush push = OilPush.At(oil, Pressure.FromKilopascals(30));
    /// Console.WriteLine($"{push.Duration?.Seconds:F0} s"); // 169 s
    /// </code>
    /// </example>
    public static OilPush At(OilToDrain oil, Pressure gaugePressure)
    {
        Require.NotNull(oil, nameof(oil));
        double gauge = Require.InRange(gaugePressure.Pascals, 0, HighestGauge, "Pa gauge", nameof(gaugePressure));
        return new Course(oil).Result(gauge);
    }

    /// <summary>Which gauge pressure empties the vessel in a time; none above the air where the oil runs out sooner by itself.</summary>
    /// <param name="oil">The oil and its hose.</param>
    /// <param name="time">The time, 1 ms to 3.2e7 s (a year); at least what 10 MPa takes.</param>
    /// <exception cref="ArgumentNullException">The oil is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside its range, or shorter than what 10 MPa takes.</exception>
    public static OilPush Within(OilToDrain oil, Duration time)
    {
        Require.NotNull(oil, nameof(oil));
        double seconds = Require.InRange(time.Seconds, ShortestTime, LongestTime, "s", nameof(time));
        var course = new Course(oil);
        return course.Result(course.GaugeFor(seconds));
    }

    /// <summary>Time and pressure, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Oil.Mass.Kilograms:G4} kg of oil at {GaugePressure.Kilopascals:F1} kPa gauge: {(_seconds is double seconds ? FormattableString.Invariant($"{seconds / 60:F1} min") : "does not run out")}, Re {ReynoldsNumber:F0}");

    /// <summary>The flow of the oil in its hose, plain SI.</summary>
    private sealed class Course
    {
        private readonly OilToDrain _oil;
        private readonly Line _line;
        private readonly double _mass;
        private readonly double _density;
        private readonly double _viscosity;
        private readonly double _depthPressure;
        private readonly double _risePressure;

        public Course(OilToDrain oil)
        {
            _oil = oil;
            _line = new Line(oil.Hoses);
            _mass = oil.Mass.Kilograms;
            _density = oil.Density.KilogramsPerCubicMeter;
            _viscosity = oil.Viscosity.PascalSeconds;
            _depthPressure = _density * LiquidLine.Gravity * oil.Depth.Meters;
            _risePressure = _density * LiquidLine.Gravity * _line.Rise;
        }

        public OilPush Result(double gauge)
        {
            double flow = Flow(gauge + _depthPressure - _risePressure);
            double reynolds = _line.LargestReynolds(flow, _viscosity);
            double? seconds = Seconds(gauge);
            return new OilPush(_oil, gauge, seconds, flow, reynolds, OilPushFindings.For(_oil, _line.Rise, _risePressure, gauge, seconds is not null, reynolds));
        }

        public double GaugeFor(double seconds)
        {
            double lowest = Math.Max(0, _risePressure);
            if (Seconds(lowest) <= seconds)
            {
                return lowest;
            }

            double? shortest = Seconds(HighestGauge);
            if (!(shortest <= seconds))
            {
                throw new ArgumentOutOfRangeException(
                    "time",
                    $"time is {Require.Text(seconds)} s; at the highest pressure considered (10 MPa gauge) "
                    + (shortest is double least ? $"the oil takes {Require.Text(least)} s." : "the oil does not run out, or takes more than a year."));
            }

            if (Seconds(lowest + LeastAbove) <= seconds)
            {
                return lowest + LeastAbove;
            }

            var late = new Late(this, lowest, seconds);
            return lowest + Math.Exp(BracketedRoot.Find(ref late, Math.Log(LeastAbove), Math.Log(HighestGauge - lowest), Tolerance));
        }

        /// <summary>Mass flow at a pressure difference that counts all heads, kg/s.</summary>
        private double Flow(double difference) =>
            difference > 0 ? LiquidLine.MassFlow(_line, difference + _risePressure, _density, _viscosity) : 0;

        /// <summary>Time to empty the vessel; null where it does not come to an end within a year.</summary>
        private double? Seconds(double gauge)
        {
            double last = gauge - _risePressure;
            if (!(last > 0) || _line.LargestReynolds(Flow(last), _viscosity) < LeastReynolds)
            {
                return null;
            }

            // Δp = Δp_last·r^u, u from 0 to 1: dm/m0 = dΔp/(Δp_first − Δp_last).
            double logarithm = Math.Log(1 + (_depthPressure / last));
            double perUnit = _depthPressure > 1e-9 * last ? logarithm * last / _depthPressure : 1;
            double sum = 0;
            for (int i = 0; i <= Intervals; i++)
            {
                double weight = i is 0 or Intervals ? 1 : (i % 2 == 1 ? 4 : 2);
                double growth = Math.Exp(logarithm * i / Intervals);
                sum += weight * growth / Flow(last * growth);
            }

            double seconds = _mass * perUnit * sum / (3 * Intervals);
            return seconds <= LongestTime ? seconds : null;
        }

        /// <summary>How much too long it takes, as a logarithm, over the logarithm of the pressure above the lowest one.</summary>
        private readonly struct Late(Course course, double lowest, double seconds) : IScalarFunction
        {
            /// <summary>What does not come to an end counts as this much too long: e^100.</summary>
            private const double Never = 100;

            public double Value(double x) => course.Seconds(lowest + Math.Exp(x)) is double takes ? Math.Log(takes / seconds) : Never;
        }
    }
}
