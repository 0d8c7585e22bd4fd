using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids.Mixtures;

/// <summary>
/// Two blends at which two implementations of the same equation disagree, decided by the tangent plane (Michelsen 1982,
/// doi:10.1016/0378-3812(82)85001-2): a phase is stable if no other one, of any composition at the same temperature and pressure, lies below the tangent plane of its Gibbs energy. Roots and compositions are scanned, with fugacities of the equation alone.
/// </summary>
public class DisputedBlendTests
{
    /// <summary>A distance that a scan in steps of composition and bisection of density leaves, over RT.</summary>
    private const double Zero = 2e-6;

    /// <summary>
    /// R-431A (R-290 and R-152a) at 192.7 K. CoolProp 8.0.1dev: dew at 13940.906 Pa. A liquid of a quarter propane by mole forms there first;
    /// the liquid in which propane prevails would form at a pressure 1.3 % higher, where the vapor is no longer stable.
    /// </summary>
    [Fact]
    public void OfR431ATheFirstLiquidOfAColdVaporIsPoorInPropane()
    {
        var mixture = new Scan("R-431A", 192.7);
        (double distance, double propane) = mixture.Lowest(mixture.Vapor(13940.906), 13940.906);
        Assert.InRange(distance, -1e-5, 1e-5);
        Assert.InRange(propane, 0.2, 0.3);
        Assert.True(mixture.Lowest(mixture.Vapor(14122), 14122).Distance < -0.01);
    }

    /// <summary>So the curves of R-431A begin above that: from their cold end on, the vapor of the dew curve is stable.</summary>
    [Fact]
    public void TheDewCurveOfR431ABeginsWhereItsLiquidIsTheFirst()
    {
        MixtureModel model = BlendCases.Model("R-431A");
        double cold = model.Range.MinimumTemperature;
        Assert.InRange(cold, 193.7, 197);
        foreach (double t in new[] { cold, cold + 2, 220 })
        {
            double pressure = model.SaturationAtTemperature(t).Dew.Pressure;
            var mixture = new Scan("R-431A", t);
            Assert.InRange(mixture.Lowest(mixture.Vapor(pressure), pressure).Distance, -Zero, Zero);
        }
    }

    /// <summary>
    /// R-514A at 430.7 K. CoolProp 8.0.1dev has a saturated liquid 77 % less dense and a bubble pressure 7e-4 away. The isotherm has five roots there;
    /// both the densest liquid and the vapor of this library are stable, and the middle root has the higher Gibbs energy.
    /// </summary>
    [Fact]
    public void OfR514ATheDensestLiquidIsTheStableOne()
    {
        const double t = 430.7;
        SaturationPoint saturation = BlendCases.Model("R-514A").SaturationAtTemperature(t);
        var mixture = new Scan("R-514A", t);
        double[] roots = [.. mixture.Roots(saturation.Bubble.Pressure)];
        Assert.Equal(5, roots.Length);
        Assert.Equal(1.77, roots[4] / roots[2], 0.01);
        Assert.True(mixture.Gibbs(roots[4]) < mixture.Gibbs(roots[2]));
        Assert.True(mixture.Lowest(roots[4], saturation.Bubble.Pressure).Distance > -Zero);
        Assert.True(mixture.Lowest(mixture.Vapor(saturation.Dew.Pressure), saturation.Dew.Pressure).Distance > -Zero);
    }

    /// <summary>
    /// Half a kelvin above, the equation prefers its middle root. No liquid has two densities at one composition, so that is a fault of the equation;
    /// the curves stay on the branch that continues the cold liquid.
    /// </summary>
    [Fact]
    public void AboveItTheEquationOfR514AHasALiquidTooMany()
    {
        const double t = 431.7;
        double pressure = BlendCases.Model("R-514A").SaturationAtTemperature(t).Bubble.Pressure;
        var mixture = new Scan("R-514A", t);
        double[] roots = [.. mixture.Roots(pressure)];
        Assert.True(mixture.Gibbs(roots[4]) > mixture.Gibbs(roots[2]));
    }

    /// <summary>The equation of a blend of two at one temperature.</summary>
    private sealed class Scan
    {
        private readonly MixturePhase _bulk;
        private readonly MixturePhase _trial;
        private readonly double _temperature;

        public Scan(string blend, double temperature)
        {
            MixtureEngine engine = BlendCases.Model(blend).Engine;
            _bulk = new MixturePhase(engine.Equation);
            _trial = new MixturePhase(engine.Equation);
            _bulk.SetComposition(engine.Composition);
            _temperature = temperature;
            _bulk.SetTemperature(temperature);
        }

        /// <summary>All molar densities of the bulk composition at a pressure, rising.</summary>
        public IEnumerable<double> Roots(double pressure) => Roots(_bulk, pressure);

        public double Vapor(double pressure) => Roots(pressure).First();

        /// <summary>Molar Gibbs energy of the bulk composition at a molar density, over RT, up to a constant.</summary>
        public double Gibbs(double density)
        {
            _bulk.SetDensity(density);
            return Enumerable.Range(0, 2).Sum(i => _bulk.X[i] * LogFugacity(_bulk, i));
        }

        /// <summary>
        /// The phase lowest below (or least above) the tangent plane of the bulk: its distance over RT and its first mole fraction. A phase is the
        /// first root or the last: a root between them lies on a loop that propane's equation has at densities of no liquid.
        /// </summary>
        public (double Distance, double First) Lowest(double density, double pressure)
        {
            _bulk.SetDensity(density);
            double[] bulk = [LogFugacity(_bulk, 0), LogFugacity(_bulk, 1)];
            (double Distance, double First) lowest = (double.PositiveInfinity, 0);
            for (int k = 1; k < 400; k++)
            {
                double x = k / 400.0;
                _trial.SetComposition([x, 1 - x]);
                _trial.SetTemperature(_temperature);
                double[] roots = [.. Roots(_trial, pressure)];
                foreach (double root in new[] { roots[0], roots[^1] })
                {
                    _trial.SetDensity(root);
                    double distance = (x * (LogFugacity(_trial, 0) - bulk[0])) + ((1 - x) * (LogFugacity(_trial, 1) - bulk[1]));
                    if (distance < lowest.Distance)
                    {
                        lowest = (distance, x);
                    }
                }
            }

            return lowest;
        }

        private static double LogFugacity(MixturePhase phase, int i) => Math.Log(phase.X[i] * phase.Rho) + phase.LogPhi[i];

        private static IEnumerable<double> Roots(MixturePhase phase, double pressure)
        {
            const int steps = 1500;
            double top = 3.4 * phase.ReducingDensity;
            double previous = 1e-6 * top;
            bool isBelow = phase.PressureAt(previous, out _) < pressure;
            for (int k = 1; k <= steps; k++)
            {
                double next = top * Math.Pow(1e-6, 1 - (k / (double)steps));
                bool below = phase.PressureAt(next, out _) < pressure;
                if (below != isBelow)
                {
                    yield return Bisect(phase, pressure, previous, next, isBelow);
                }

                (previous, isBelow) = (next, below);
            }
        }

        private static double Bisect(MixturePhase phase, double pressure, double low, double high, bool lowIsBelow)
        {
            for (int k = 0; k < 60; k++)
            {
                double middle = 0.5 * (low + high);
                if (phase.PressureAt(middle, out _) < pressure == lowIsBelow)
                {
                    low = middle;
                }
                else
                {
                    high = middle;
                }
            }

            return 0.5 * (low + high);
        }
    }
}
