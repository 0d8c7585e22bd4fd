using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Helmholtz;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids;

/// <summary>Random states of every fluid over its whole range: stability, consistency, round trips.</summary>
public class PureStateTests
{
    private const int States = 120;

    public static IEnumerable<object[]> PureFluids => ReferenceTable.PureFluids;

    /// <summary>
    /// The density satisfies the equation, on a rising isotherm, on the right side of the two-phase region; and no other root outside that
    /// region has a lower Gibbs energy. (Inside it the equations have loops of no physical meaning.)
    /// </summary>
    [Theory]
    [MemberData(nameof(PureFluids))]
    public void DensityIsTheStableRoot(string fluid)
    {
        HelmholtzModel model = ReferenceTable.Model(fluid);
        ResidualHelmholtz residual = model.Engine.Equation.Residual;
        double[] isotherm = new double[residual.IsothermLength];
        foreach ((double temperature, double pressure) in RandomStates(model))
        {
            StatePoint s = model.StateAt(temperature, pressure);
            double tau = model.Engine.Equation.ReducingTemperature / temperature;
            residual.Isotherm(tau, isotherm);
            double unit = model.Engine.Equation.GasConstant * temperature * model.Engine.Equation.ReducingDensity;
            double found = s.Density / model.Engine.Equation.ReducingDensity;
            residual.ByDensity(tau, found, isotherm, out double d, out double dd);
            double slope = found * (1 + (2 * d) + dd);
            Assert.True(slope > 0);
            Assert.InRange(((found * (1 + d)) - (pressure / unit)) / slope, -1e-11, 1e-11);

            double vaporEnd = double.PositiveInfinity;
            double liquidEnd = double.PositiveInfinity;
            if (temperature <= model.Range.MaximumSaturationTemperature)
            {
                SaturationPoint saturation = model.SaturationAtTemperature(temperature);
                vaporEnd = saturation.Dew.Density / model.Engine.Equation.ReducingDensity;
                liquidEnd = saturation.Bubble.Density / model.Engine.Equation.ReducingDensity;
                bool isLiquid = pressure >= saturation.Bubble.Pressure;
                Assert.Equal(isLiquid ? Phase.Liquid : Phase.Vapor, s.Phase);
                Assert.True(isLiquid ? found >= liquidEnd * (1 - 1e-9) : found <= vaporEnd * (1 + 1e-9));
            }

            double gibbs = Gibbs(found);
            double before = 0;
            double missingBefore = -1;
            for (int i = 1; i <= 250; i++)
            {
                double delta = i < 60 ? 1e-6 * Math.Pow(3e4, i / 60.0) : 0.03 + ((Math.Max(3.6, 1.02 * found) - 0.03) * (i - 60) / 190);
                residual.ByDensity(tau, delta, isotherm, out d, out _);
                double missing = (delta * (1 + d)) - (pressure / unit);
                bool isPhysical = delta <= vaporEnd || before >= liquidEnd;
                if (missingBefore < 0 && missing >= 0 && isPhysical && !(before <= found * (1 + 1e-9) && delta >= found * (1 - 1e-9)))
                {
                    Assert.True(Gibbs(Root(before, delta)) > gibbs - 1e-8);
                }

                before = delta;
                missingBefore = missing;
            }

            double Gibbs(double delta)
            {
                HelmholtzDerivatives r = residual.At(tau, delta, isotherm);
                return Math.Log(delta) + r.A + r.D;
            }

            double Root(double low, double high)
            {
                for (int i = 0; i < 50; i++)
                {
                    double middle = 0.5 * (low + high);
                    residual.ByDensity(tau, middle, isotherm, out double slopeD, out _);
                    (low, high) = (middle * (1 + slopeD)) - (pressure / unit) < 0 ? (middle, high) : (low, middle);
                }

                return low;
            }
        }
    }

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void DerivativesAgreeWithDifferencesOfStates(string fluid)
    {
        HelmholtzModel model = ReferenceTable.Model(fluid);
        double critical = model.Engine.Curves.CriticalTemperature;
        foreach ((double temperature, double pressure) in RandomStates(model))
        {
            double step = 1e-4 * temperature;
            bool isNearCritical = Math.Abs((temperature / critical) - 1) < 0.05;
            if (isNearCritical || temperature - step < model.Range.MinimumTemperature || temperature + step > model.Range.MaximumTemperature)
            {
                continue;
            }

            StatePoint s = model.StateAt(temperature, pressure);
            StatePoint cold = model.StateAt(temperature - step, pressure);
            StatePoint warm = model.StateAt(temperature + step, pressure);
            if (cold.Phase != s.Phase || warm.Phase != s.Phase)
            {
                continue;
            }

            StateDerivatives d = model.DerivativesAt(temperature, s.Density);
            double cp = (warm.Enthalpy - cold.Enthalpy) / (2 * step);
            Assert.InRange((cp / d.IsobaricHeatCapacity) - 1, -1e-4, 1e-4);

            // dh = T ds at constant pressure; cp − cv and the speed of sound by their thermodynamic identities.
            Assert.InRange(((warm.Enthalpy - cold.Enthalpy) / (temperature * (warm.Entropy - cold.Entropy))) - 1, -1e-6, 1e-6);
            double difference = temperature * Math.Pow(d.PressureByTemperature / s.Density, 2) / d.PressureByDensity;
            Assert.InRange((d.IsobaricHeatCapacity - d.IsochoricHeatCapacity - difference) / d.IsobaricHeatCapacity, -1e-10, 1e-10);
            double sound = d.IsobaricHeatCapacity / d.IsochoricHeatCapacity * d.PressureByDensity;
            Assert.InRange((sound / (d.SpeedOfSound * d.SpeedOfSound)) - 1, -1e-10, 1e-10);
            double expansion = (cold.Density - warm.Density) / (2 * step);
            Assert.InRange((expansion / (d.PressureByTemperature / d.PressureByDensity)) - 1, -1e-3, 1e-3);
        }
    }

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void RoundTrips(string fluid)
    {
        HelmholtzModel model = ReferenceTable.Model(fluid);
        foreach ((double temperature, double pressure) in RandomStates(model))
        {
            StatePoint s = model.StateAt(temperature, pressure);
            double stiffness = model.DerivativesAt(temperature, s.Density).PressureByDensity * s.Density;
            StatePoint byDensity = model.VesselAtTemperature(temperature, s.Density).Bulk;
            bool isSaturated = byDensity.VaporFraction is > 0 and < 1e-9 or > 1 - 1e-9 and < 1;
            Assert.True(isSaturated || s.Phase == byDensity.Phase);
            Assert.InRange((byDensity.Pressure - pressure) / stiffness, -1e-11, 1e-11);
            Assert.InRange(byDensity.Enthalpy - s.Enthalpy, -1e-3, 1e-3);

            VesselPoint byEnergy = model.VesselAtEnergy(s.Density, s.InternalEnergy);
            Assert.InRange((byEnergy.Bulk.Temperature / temperature) - 1, -1e-9, 1e-9);

            // Along the isobar heat capacity is large next to the critical point, so that temperature follows enthalpy and not the reverse.
            StatePoint byEnthalpy = model.StateAtEnthalpy(pressure, s.Enthalpy);
            Assert.InRange(byEnthalpy.Enthalpy - s.Enthalpy, -1e-2, 1e-2);
            Assert.InRange((byEnthalpy.Temperature / temperature) - 1, -1e-7, 1e-7);
            StatePoint byEntropy = model.StateAtEntropy(pressure, s.Entropy);
            Assert.InRange(byEntropy.Entropy - s.Entropy, -1e-4, 1e-4);
            Assert.InRange((byEntropy.Temperature / temperature) - 1, -1e-7, 1e-7);
        }
    }

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void TwoPhaseVesselsAddUp(string fluid)
    {
        HelmholtzModel model = ReferenceTable.Model(fluid);
        var random = new Random(20263);
        for (int i = 0; i < States; i++)
        {
            double temperature = Between(random, model.Range.MinimumTemperature, model.Range.MaximumSaturationTemperature);
            SaturationPoint saturation = model.SaturationAtTemperature(temperature);
            double density = Math.Exp(Between(random, Math.Log(saturation.Dew.Density), Math.Log(saturation.Bubble.Density)));
            VesselPoint vessel = model.VesselAtTemperature(temperature, density);
            double x = vessel.Bulk.VaporFraction;
            double volume = ((1 - x) / vessel.Liquid.Density) + (x / vessel.Vapor.Density);
            double energy = ((1 - x) * vessel.Liquid.InternalEnergy) + (x * vessel.Vapor.InternalEnergy);
            Assert.Equal(Phase.TwoPhase, vessel.Bulk.Phase);
            Assert.InRange((volume * density) - 1, -1e-11, 1e-11);
            Assert.InRange(energy - vessel.Bulk.InternalEnergy, -1e-4, 1e-4);
            Assert.InRange(vessel.LiquidVolumeFraction, 0, 1);

            VesselPoint back = model.VesselAtEnergy(density, vessel.Bulk.InternalEnergy);
            Assert.InRange((back.Bulk.Temperature / temperature) - 1, -1e-9, 1e-9);

            StatePoint onIsobar = model.StateAtEnthalpy(vessel.Bulk.Pressure, vessel.Bulk.Enthalpy);
            Assert.InRange(onIsobar.VaporFraction - x, -1e-9, 1e-9);
        }
    }

    /// <summary>The slope of the energy that the vessel solver uses, by differences.</summary>
    [Theory]
    [InlineData("R-134a")]
    [InlineData("R-744")]
    [InlineData("R-290")]
    public void VesselEnergySlope(string fluid)
    {
        PureEngine engine = ReferenceTable.Model(fluid).Engine;
        foreach (double share in new[] { 0.75, 0.85, 0.95 })
        {
            double temperature = share * engine.Curves.CriticalTemperature;
            foreach (double density in new[] { 20.0, 300, 1200 })
            {
                const double Step = 1e-3;
                VesselSolver.Energy(engine, temperature - Step, density, out double low, out _);
                VesselSolver.Energy(engine, temperature + Step, density, out double high, out _);
                VesselSolver.Energy(engine, temperature, density, out _, out double slope);
                Assert.InRange(((high - low) / (2 * Step) / slope) - 1, -1e-6, 1e-6);
            }
        }
    }

    /// <summary>The last fraction of a millikelvin below critical, which the curves leave open.</summary>
    [Theory]
    [MemberData(nameof(PureFluids))]
    public void StatesBetweenTheCurvesAndTheCriticalPoint(string fluid)
    {
        HelmholtzModel model = ReferenceTable.Model(fluid);
        double low = model.Range.MaximumSaturationTemperature;
        double high = Math.Min(model.Engine.Curves.CriticalTemperature, model.Range.MaximumTemperature);
        for (int i = 1; i <= 10; i++)
        {
            double temperature = low + ((high - low) * i / 10);
            StatePoint vapor = model.StateAt(temperature, 0.999 * model.CriticalPressure);
            if (model.Range.MaximumPressure > 1.1 * model.CriticalPressure)
            {
                Assert.True(model.StateAt(temperature, 1.1 * model.CriticalPressure).Density > vapor.Density);
            }

            VesselPoint vessel = model.VesselAtTemperature(temperature, model.CriticalDensity);
            Assert.InRange(vessel.Bulk.Pressure / model.CriticalPressure, 0.95, 1.05);
        }
    }

    private static double Between(Random random, double low, double high) => low + ((high - low) * random.NextDouble());

    /// <summary>States spread over the range, along saturation, around the critical point, and at high pressure.</summary>
    private static IEnumerable<(double Temperature, double Pressure)> RandomStates(HelmholtzModel model)
    {
        var random = new Random(20264);
        PropertyRange range = model.Range;
        for (int i = 0; i < States; i++)
        {
            double temperature = Between(random, range.MinimumTemperature, range.MaximumTemperature);
            double pressure = Math.Exp(Between(random, Math.Log(10), Math.Log(range.MaximumPressure)));
            switch (i % 4)
            {
                case 1 when temperature < range.MaximumSaturationTemperature:
                    pressure = model.SaturationAtTemperature(temperature).Dew.Pressure * Between(random, 0.999, 1.001);
                    break;
                case 2:
                    temperature = Math.Min(range.MaximumTemperature, model.CriticalTemperature * Between(random, 0.97, 1.05));
                    pressure = model.CriticalPressure * Between(random, 0.85, 1.15);
                    break;
                case 3:
                    pressure = model.CriticalPressure * Math.Exp(Between(random, 0, 5));
                    break;
            }

            yield return (temperature, Math.Min(pressure, range.MaximumPressure));
        }
    }
}
