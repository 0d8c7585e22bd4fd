using System;
using System.Linq;
using System.Threading.Tasks;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Data;
using Refrigerant.Recovery.Fluids.Mixtures;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids.Mixtures;

/// <summary>What a blend's model promises to its callers: errors, threads, viscosity, data.</summary>
public class BlendContractTests
{
    private static readonly double[] Hostile =
    [
        double.NaN, double.PositiveInfinity, double.NegativeInfinity, double.MaxValue, double.MinValue, double.Epsilon, 0, -0.0, -1, 1e-300, 1e300,
    ];

    [Theory]
    [InlineData("R-410A")]
    [InlineData("R-448A")]
    [InlineData("R-508B")]
    public void HostileNumbersThrowRangeErrors(string blend)
    {
        MixtureModel model = BlendCases.Model(blend);
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
            Assert.Contains(blend, error.Message, StringComparison.Ordinal);
            Assert.False(error.Value >= error.Minimum && error.Value <= error.Maximum);
        }
    }

    /// <summary>
    /// Two phases are found everywhere between dew and bubble point, also where a cold liquid almost splits into two or does (R-446A below 173 K), and next
    /// to the boundaries.
    /// </summary>
    [Theory]
    [InlineData("R-446A")]
    [InlineData("R-472A")]
    [InlineData("R-472B")]
    [InlineData("R-473A")]
    [InlineData("R-437A")]
    [InlineData("R-438A")]
    [InlineData("R-508A")]
    [InlineData("R-503")]
    [InlineData("R-414A")]
    public void ColdTwoPhaseStatesAreFound(string blend)
    {
        MixtureModel model = BlendCases.Model(blend);
        foreach (double above in new[] { 0.0, 0.5, 1.5, 4, 12 })
        {
            double t = model.Range.MinimumTemperature + above;
            SaturationPoint s = model.SaturationAtTemperature(t);
            foreach (double share in new[] { 1e-7, 1e-5, 0.003, 0.08, 0.25, 0.5, 0.74, 0.9, 0.999, 1 - 1e-7 })
            {
                double p = s.Dew.Pressure * Math.Pow(s.Bubble.Pressure / s.Dew.Pressure, share);
                double density = s.Dew.Density * Math.Pow(s.Bubble.Density / s.Dew.Density, share);
                double enthalpy = model.StateAt(t, p).Enthalpy;

                // Where there is hardly any glide the enthalpy hangs on the last digits of the temperature.
                Assert.Equal(enthalpy, model.StateAtEnthalpy(p, enthalpy).Enthalpy, 0.1);
                VesselPoint vessel = model.VesselAtTemperature(t, density);
                Assert.InRange(vessel.Bulk.Pressure, s.Dew.Pressure * (1 - 1e-7), s.Bubble.Pressure * (1 + 1e-7));
                Assert.InRange(model.VesselAtEnergy(density, vessel.Bulk.InternalEnergy).Bulk.Temperature, t - 1e-3, t + 1e-3);
            }
        }
    }

    [Fact]
    public void AnUnstableDensityHasNoDerivatives()
    {
        MixtureModel model = BlendCases.Model("R-410A");
        var phase = new MixturePhase(model.Engine.Equation);
        phase.SetComposition(model.Engine.Composition);
        phase.SetTemperature(280);
        int unstable = 0;
        for (double density = 50; density < 1100; density += 25)
        {
            _ = phase.PressureAt(density / model.MolarMass, out double slope);
            if (slope < 0)
            {
                unstable++;
                Assert.Throws<PropertyRangeException>(() => model.DerivativesAt(280, density));
            }
        }

        Assert.True(unstable > 5);
    }

    [Fact]
    public void CallsFromManyThreadsAgree()
    {
        MixtureModel model = BlendCases.Model("R-449A");
        double[] densities = [.. Enumerable.Range(1, 200).Select(k => 5.0 * k)];
        double[] expected = [.. densities.Select(d => model.VesselAtTemperature(290, d).Bulk.Enthalpy)];
        double[] found = new double[densities.Length];
        Parallel.For(0, densities.Length, k => found[k] = model.VesselAtTemperature(290, densities[k]).Bulk.Enthalpy);
        Assert.Equal(expected, found);
    }

    /// <summary>The mixing rules stay between the components and say that they are estimates.</summary>
    [Theory]
    [InlineData("R-410A")]
    [InlineData("R-407C")]
    [InlineData("R-470A")]
    public void ViscosityIsAnEstimateBetweenThoseOfTheComponents(string blend)
    {
        MixtureModel model = BlendCases.Model(blend);
        const double t = 270;
        SaturationViscosity v = model.ViscosityAtSaturation(t);
        SaturationViscosity[] parts = [.. model.Composition.Select(c => Fluid.Get(c.Designation).Model.ViscosityAtSaturation(t))];
        Assert.True(v.IsEstimate);
        Assert.InRange(v.Liquid, parts.Min(p => p.Liquid), parts.Max(p => p.Liquid));
        Assert.InRange(v.Vapor, 0.9 * parts.Min(p => p.Vapor), 1.1 * parts.Max(p => p.Vapor));
    }

    [Fact]
    public void AllPairsAndDeparturesAreThereWithTheirSources()
    {
        Assert.Equal(293, BinaryPairTable.Rows.Split('\n').Length);
        Assert.Equal(14, DepartureTable.Create().Count);
        Assert.All(BinaryPairTable.Sources, source => Assert.Matches(@"\b(19|20)\d\d\b", source));
        foreach (string row in BlendTable.Rows.Split('\n'))
        {
            var (designation, parts) = BlendFactory.Parse(row);
            Assert.Equal(1, parts.Sum(p => p.Value), 12);
            Assert.All(parts, p => Assert.True(Fluid.TryGet(p.Key, out _), $"{designation}: {p.Key}"));
        }
    }

    /// <summary>Lemmon and Jacobsen 2004, J. Phys. Chem. Ref. Data 33, 593, doi:10.1063/1.1649997: R-125 with R-143a has F = 1.1697.</summary>
    [Fact]
    public void APairReadBackwardsHasInverseBetas()
    {
        BinaryPair pair = BinaryPairs.Get("R-32", "R-1234yf"), back = BinaryPairs.Get("R-1234yf", "R-32");
        Assert.Equal(1, pair.BetaT * back.BetaT, 14);
        Assert.Equal(1, pair.BetaV * back.BetaV, 14);
        Assert.Equal(pair.GammaT, back.GammaT);
        Assert.Same(pair.Departure, back.Departure);
        Assert.Equal(1.1697, BinaryPairs.Get("R-143a", "R-125").Weight);
        Assert.Null(BinaryPairs.Get("R-22", "R-124").Source);
    }
}
