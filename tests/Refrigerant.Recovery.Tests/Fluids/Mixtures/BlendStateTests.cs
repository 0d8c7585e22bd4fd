using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids.Mixtures;

/// <summary>Random states of every blend: the density root, two phases, round trips.</summary>
public class BlendStateTests
{
    private const int States = 16;

    public static IEnumerable<object[]> Blends => BlendCases.All;

    /// <summary>
    /// The whole isotherm is searched for roots. A liquid's density is the last one: beyond it the pressure is higher everywhere. A vapor's is
    /// the first: before it the pressure is lower everywhere. So neither is one of the roots between the phases, of which the equations
    /// have several. Above the curves, where both are the same or belong to no saturated state, the one of lower Gibbs energy.
    /// </summary>
    [Theory]
    [MemberData(nameof(Blends))]
    public void DensityIsTheStableRoot(string blend)
    {
        MixtureModel model = BlendCases.Model(blend);
        PropertyRange range = model.Range;
        var random = new Random(blend.Length + model.Composition.Count);
        var phase = new MixturePhase(model.Engine.Equation);
        phase.SetComposition(model.Engine.Composition);
        double step = 0.02 * phase.ReducingDensity;
        for (int k = 0; k < States; k++)
        {
            double t = range.MinimumTemperature + (random.NextDouble() * (range.MaximumTemperature - range.MinimumTemperature));
            double p = Math.Exp(Math.Log(100) + (random.NextDouble() * Math.Log(range.MaximumPressure / 200)));
            StatePoint s = model.StateAt(t, p);
            if (s.Phase == Phase.TwoPhase)
            {
                continue;
            }

            phase.SetTemperature(t);
            double found = s.Density / model.MolarMass;
            double reached = phase.PressureAt(found, out double slope);
            Assert.True(slope > 0, $"{t} K {p} Pa: unstable");
            Assert.InRange((reached - p) / (slope * found), -1e-11, 1e-11);
            double last = LastRoot(phase, p, step), first = FirstRoot(phase, p, step);
            if (t <= range.MaximumSaturationTemperature)
            {
                bool isLiquid = p >= model.SaturationAtTemperature(t).Bubble.Pressure;
                Assert.Equal(isLiquid ? Phase.Liquid : Phase.Vapor, s.Phase);
                Assert.InRange(found / (isLiquid ? last : first), 1 - 1e-9, 1 + 1e-9);
            }
            else
            {
                Assert.InRange(found / (Gibbs(phase, last) < Gibbs(phase, first) ? last : first), 1 - 1e-9, 1 + 1e-9);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Blends))]
    public void TwoPhasesAreInEquilibriumAndConserveEverything(string blend)
    {
        MixtureModel model = BlendCases.Model(blend);
        MixtureEngine engine = model.Engine;
        PropertyRange range = model.Range;
        var random = new Random(3 * blend.Length);
        MixtureScratch scratch = engine.Rent();
        for (int k = 0; k < 8; k++)
        {
            double t = range.MinimumTemperature + ((0.2 + (0.78 * random.NextDouble())) * (range.MaximumSaturationTemperature - range.MinimumTemperature));
            SaturationPoint s = model.SaturationAtTemperature(t);
            double density = s.Dew.Density * Math.Pow(s.Bubble.Density / s.Dew.Density, 0.02 + (0.96 * random.NextDouble()));
            Assert.True(BlendStates.TryVolume(engine, scratch, t, engine.MolarMass / density));
            PhaseSplit split = scratch.Split;
            for (int i = 0; i < engine.Composition.Length; i++)
            {
                double liquid = Math.Log(split.Liquid.X[i] * split.Liquid.Rho) + split.Liquid.LogPhi[i];
                double vapor = Math.Log(split.Vapor.X[i] * split.Vapor.Rho) + split.Vapor.LogPhi[i];
                Assert.InRange(liquid - vapor, -1e-8, 1e-8);
                double whole = (split.LiquidAmount * split.Liquid.X[i]) + (split.VaporAmount * split.Vapor.X[i]);
                Assert.InRange((whole / engine.Composition[i]) - 1, -1e-12, 1e-12);
            }

            Assert.InRange((split.LiquidVolume + split.VaporVolume) / (engine.MolarMass / density), 1 - 1e-12, 1 + 1e-12);
            Assert.InRange(split.Pressure, s.Dew.Pressure * (1 - 1e-8), s.Bubble.Pressure * (1 + 1e-8));

            VesselPoint vessel = model.VesselAtTemperature(t, density);
            Assert.Equal(Phase.TwoPhase, vessel.Bulk.Phase);
            VesselPoint byEnergy = model.VesselAtEnergy(density, vessel.Bulk.InternalEnergy);
            Assert.Equal(t, byEnergy.Bulk.Temperature, 1e-6);
            Assert.Equal(vessel.Bulk.VaporFraction, byEnergy.Bulk.VaporFraction, 1e-8);
            if (s.Dew.Pressure < 0.9995 * s.Bubble.Pressure)
            {
                // Temperature and pressure fix the split only where there is a glide.
                Assert.Equal(1, model.StateAt(t, vessel.Bulk.Pressure).Density / density, 1e-6);
            }

            Assert.Equal(t, model.StateAtEnthalpy(vessel.Bulk.Pressure, vessel.Bulk.Enthalpy).Temperature, 1e-5);
            Assert.Equal(t, model.StateAtEntropy(vessel.Bulk.Pressure, vessel.Bulk.Entropy).Temperature, 1e-5);
        }
    }

    [Theory]
    [MemberData(nameof(Blends))]
    public void SinglePhasesRoundTrip(string blend)
    {
        MixtureModel model = BlendCases.Model(blend);
        double tc = model.CriticalTemperature;
        foreach ((double t, double p) in new[] { (0.65 * tc, 3e6), (0.85 * tc, 1e4), (1.15 * tc, 2e6), (1.1 * tc, 9e6), (0.95 * tc, 12e6) })
        {
            StatePoint s = model.StateAt(Math.Min(t, model.Range.MaximumTemperature), p);
            VesselPoint vessel = model.VesselAtTemperature(s.Temperature, s.Density);
            Assert.Equal(s.Phase, vessel.Bulk.Phase);
            Assert.Equal(1, vessel.Bulk.Pressure / p, 1e-7);
            Assert.Equal(s.Temperature, model.VesselAtEnergy(s.Density, s.InternalEnergy).Bulk.Temperature, 1e-5);
            Assert.Equal(s.Temperature, model.StateAtEnthalpy(p, s.Enthalpy).Temperature, 1e-5);
            Assert.Equal(s.Temperature, model.StateAtEntropy(p, s.Entropy).Temperature, 1e-5);
        }
    }

    [Theory]
    [InlineData("R-410A")]
    [InlineData("R-448A")]
    public void LaterCallsAllocateNothing(string blend)
    {
        MixtureModel model = BlendCases.Model(blend);
        Run();
        Run();
        long before = GC.GetAllocatedBytesForCurrentThread();
        Run();
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);

        void Run()
        {
            SaturationPoint s = model.SaturationAtTemperature(290);
            _ = model.SaturationAtPressure(5e5);
            _ = model.StateAt(290, 0.5 * s.Dew.Pressure);
            _ = model.StateAt(290, 1.5 * s.Bubble.Pressure);
            VesselPoint v = model.VesselAtTemperature(290, 400);
            _ = model.VesselAtEnergy(400, v.Bulk.InternalEnergy);
            _ = model.StateAtEnthalpy(5e5, 3e5);
            _ = model.StateAtEntropy(5e5, 1500);
            _ = model.DerivativesAt(290, s.Bubble.Density);
        }
    }

    private static double LastRoot(MixturePhase phase, double p, double step)
    {
        double rho = 4 * phase.ReducingDensity;
        while (phase.PressureAt(rho, out _) < p)
        {
            rho += step;
        }

        while (rho > step && phase.PressureAt(rho - step, out _) > p)
        {
            rho -= step;
        }

        return Bisect(phase, p, Math.Max(0, rho - step), rho);
    }

    private static double FirstRoot(MixturePhase phase, double p, double step)
    {
        // From the ideal gas in steps of 2 %, so that the narrow vapor branch of a cold isotherm is not stepped over.
        double before = 0, rho = 0.5 * p / (8.314462618 * phase.T);
        while (phase.PressureAt(rho, out _) < p)
        {
            before = rho;
            rho += Math.Min(0.02 * rho, step);
        }

        return Bisect(phase, p, before, rho);
    }

    private static double Bisect(MixturePhase phase, double p, double low, double high)
    {
        for (int k = 0; k < 80; k++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = phase.PressureAt(middle, out _) > p ? (low, middle) : (middle, high);
        }

        return high;
    }

    private static double Gibbs(MixturePhase phase, double rho)
    {
        phase.SetDensity(rho);
        return Math.Log(rho) + phase.X.Select((x, i) => x * phase.LogPhi[i]).Sum();
    }
}
