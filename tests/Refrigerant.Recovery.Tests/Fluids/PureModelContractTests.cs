using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using FsCheck.Xunit;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Helmholtz;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids;

/// <summary>What the property model promises to its callers: errors, no NaN, no allocation, thread safety.</summary>
public class PureModelContractTests
{
    private static readonly double[] Hostile =
    [
        double.NaN, double.PositiveInfinity, double.NegativeInfinity, double.MaxValue, double.MinValue, double.Epsilon, 0, -0.0, -1, 1e-300, 1e300,
    ];

    public static IEnumerable<object[]> PureFluids => ReferenceTable.PureFluids;

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void HostileNumbersThrowRangeErrorsThatNameTheRange(string fluid)
    {
        HelmholtzModel model = ReferenceTable.Model(fluid);
        double good = 0.8 * model.CriticalTemperature;
        foreach (double bad in Hostile)
        {
            Rejects(() => model.SaturationAtTemperature(bad));
            Rejects(() => model.SaturationAtPressure(bad));
            Rejects(() => model.StateAt(bad, 1e5));
            Rejects(() => model.StateAt(good, bad));
            Rejects(() => model.VesselAtTemperature(bad, 10));
            Rejects(() => model.VesselAtTemperature(good, bad));
            Rejects(() => model.VesselAtEnergy(bad, 3e5));
            Rejects(() => model.DerivativesAt(bad, 10));
            Rejects(() => model.DerivativesAt(good, bad));
            Rejects(() => model.ViscosityAtSaturation(bad));
            Rejects(() => model.StateAtEnthalpy(bad, 3e5));
            Rejects(() => model.StateAtEntropy(bad, 1500));
        }

        foreach (double bad in Hostile.Where(bad => !(Math.Abs(bad) <= 1)))
        {
            Rejects(() => model.VesselAtEnergy(10, bad));
            Rejects(() => model.StateAtEnthalpy(1e5, bad));
            Rejects(() => model.StateAtEntropy(1e5, bad));
        }

        void Rejects(Action call)
        {
            PropertyRangeException error = Assert.Throws<PropertyRangeException>(call);
            Assert.Contains(fluid, error.Message, StringComparison.Ordinal);
            Assert.Contains(model.Source, error.Message, StringComparison.Ordinal);
            Assert.True(error.Minimum < error.Maximum);
            Assert.False(error.Value >= error.Minimum && error.Value <= error.Maximum);
        }
    }

    /// <summary>Any two numbers give finite results or a range error.</summary>
    [Property(MaxTest = 2000)]
    public void AnyNumbersGiveFiniteResultsOrRangeErrors(double a, double b, byte choice)
    {
        PropertyModel model = Fluid.All[choice % Fluid.All.Count].Model;
        double t = model.Range.MinimumTemperature + (Math.Abs(a % 1) * (model.Range.MaximumTemperature - model.Range.MinimumTemperature));
        Check(() => Finite(model.StateAt(a, b)));
        Check(() => Finite(model.StateAt(t, Math.Abs(b) * 1e4)));
        Check(() => Finite(model.VesselAtTemperature(t, Math.Abs(b) * 10).Bulk));
        Check(() => Finite(model.VesselAtEnergy(Math.Abs(b) * 10, a * 1e4).Bulk));
        Check(() => Finite(model.StateAtEnthalpy(Math.Abs(b) * 1e4, a * 1e4)));
        Check(() => Finite(model.StateAtEntropy(Math.Abs(b) * 1e4, a * 100)));
        Check(() => Finite(model.SaturationAtPressure(Math.Abs(b) * 1e4).Dew));

        void Check(Action call)
        {
            try
            {
                call();
            }
            catch (PropertyRangeException)
            {
                return;
            }
        }

        static void Finite(StatePoint s)
        {
            foreach (double value in new[] { s.Temperature, s.Pressure, s.Density, s.Enthalpy, s.Entropy, s.VaporFraction, s.InternalEnergy })
            {
                Assert.True(double.IsFinite(value));
            }

            Assert.True(s.Density > 0 && s.Pressure > 0 && s.Temperature > 0);
        }
    }

    [Fact]
    public void UnstableDensityHasNoDerivatives()
    {
        PropertyModel model = Fluid.Get("R-134a").Model;
        PropertyRangeException error = Assert.Throws<PropertyRangeException>(() => model.DerivativesAt(300, 500));
        Assert.Contains("unstable", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void DensityBeyondTheHighestPressureIsNamedWithTheLimit()
    {
        PropertyModel model = Fluid.Get("R-134a").Model;
        PropertyRangeException error = Assert.Throws<PropertyRangeException>(() => model.VesselAtTemperature(300, 1600));
        Assert.Equal("kg/m³", error.Unit);
        Assert.Equal(1600, error.Value);
        Assert.Equal(model.StateAt(300, model.Range.MaximumPressure).Density, error.Maximum);
    }

    /// <summary>R-22 at 540.6 K and 2263 kg/m³: far beyond its highest pressure the isotherm turns down, to negative pressures.</summary>
    [Fact]
    public void DensityWhereTheEquationTurnsDownIsOutOfRange()
    {
        PropertyModel model = Fluid.Get("R-22").Model;
        Assert.Throws<PropertyRangeException>(() => model.VesselAtTemperature(540.6, 2263));
        Assert.Throws<PropertyRangeException>(() => model.VesselAtEnergy(2247.5, 1_007_692));
    }

    [Theory]
    [InlineData("R-134a")]
    [InlineData("R-744")]
    [InlineData("R-717")]
    public void LaterCallsAllocateNothing(string fluid)
    {
        PropertyModel model = Fluid.Get(fluid).Model;
        double t = 0.85 * model.CriticalTemperature;
        Run();
        Run();
        long before = GC.GetAllocatedBytesForCurrentThread();
        Run();
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);

        void Run()
        {
            SaturationPoint s = model.SaturationAtTemperature(t);
            _ = model.SaturationAtPressure(s.Bubble.Pressure);
            _ = model.StateAt(t, 2 * s.Bubble.Pressure);
            _ = model.StateAt(t, 0.5 * s.Bubble.Pressure);
            _ = model.StateAt(1.1 * model.CriticalTemperature, model.CriticalPressure);
            _ = model.VesselAtTemperature(t, 2 * s.Dew.Density);
            _ = model.VesselAtEnergy(2 * s.Dew.Density, s.Dew.InternalEnergy);
            _ = model.StateAtEnthalpy(s.Bubble.Pressure, s.Dew.Enthalpy + 1e4);
            _ = model.StateAtEntropy(s.Bubble.Pressure, s.Dew.Entropy + 10);
            _ = model.DerivativesAt(t, s.Bubble.Density);
            _ = model.ViscosityAtSaturation(t);
        }
    }

    /// <summary>Fresh models of every fluid, each first used by all threads at once, give what a single thread gets.</summary>
    [Fact]
    public void FirstUseByManyThreads()
    {
        const int Threads = 8;
        HelmholtzModel[] models = Refrigerant.Recovery.Fluids.Data.PureFluids.Factories.Select(f => new HelmholtzModel(f.Value())).ToArray();
        double[][] results = new double[Threads][];
        using var start = new Barrier(Threads);
        Thread[] threads = Enumerable.Range(0, Threads).Select(i => new Thread(() =>
        {
            start.SignalAndWait();
            results[i] = models.Select(Sum).ToArray();
        })).ToArray();
        Array.ForEach(threads, thread => thread.Start());
        Array.ForEach(threads, thread => thread.Join());
        double[] alone = models.Select(model => Sum(ReferenceTable.Model(model.Designation))).ToArray();
        Assert.All(results, result => Assert.Equal(alone, result));

        static double Sum(HelmholtzModel model)
        {
            double t = 0.8 * model.CriticalTemperature;
            return model.SaturationAtTemperature(t).Dew.Density + model.StateAt(t, 1e5).Enthalpy + model.ViscosityAtSaturation(t).Liquid;
        }
    }
}
