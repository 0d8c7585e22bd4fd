using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids.Mixtures;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids.Mixtures;

/// <summary>The derivatives of the mixture equation against differences of it, and the identities that bind them.</summary>
public class MixturePhaseTests
{
    /// <summary>Blends that use every kind of departure function between them, at a liquid, a vapor and a dense supercritical state.</summary>
    public static IEnumerable<object[]> States =>
        from blend in new[] { "R-448A", "R-470A", "R-438A", "R-441A", "R-404A", "R-514A", "R-516A", "R-473A" }
        from state in new[] { (0.7, 2.8), (0.8, 0.05), (1.2, 0.9) }
        select new object[] { blend, state.Item1, state.Item2 };

    [Theory]
    [MemberData(nameof(States))]
    public void DerivativesAreThoseOfTheEquation(string blend, double reducedTemperature, double reducedDensity)
    {
        MixtureEngine engine = BlendCases.Model(blend).Engine;
        var phase = new MixturePhase(engine.Equation);
        phase.SetComposition(engine.Composition);
        double t = reducedTemperature * phase.ReducingTemperature;
        double rho = reducedDensity * phase.ReducingDensity;
        double[] densities = [.. engine.Composition.Select(x => x * rho)];
        Set(phase, densities, t);
        int n = engine.Composition.Length;
        double[] logPhi = [.. phase.LogPhi], byT = [.. phase.LogPhiByT], matrix = [.. phase.Matrix], pressureBy = [.. phase.PressureBy];
        double z = phase.Z, zByT = phase.ZByT;
        Assert.Equal(phase.Stiffness, engine.Composition.Select((x, i) => x * pressureBy[i]).Sum(), 1e-9 * Math.Max(1, Math.Abs(phase.Stiffness)));

        for (int j = 0; j < n; j++)
        {
            Agree(logPhi[j], h => Moved(phase, densities, t, j, h, p => p.Residual.A * p.Rho), 1e-3 * densities[j]);
            Agree(pressureBy[j], h => Moved(phase, densities, t, j, h, p => p.Z * p.Rho), 1e-3 * densities[j]);
            for (int i = 0; i < n; i++)
            {
                Agree(matrix[(i * n) + j], h => rho * Moved(phase, densities, t, j, h, p => p.LogPhi[i]), 1e-3 * densities[j]);
                Assert.Equal(matrix[(i * n) + j], matrix[(j * n) + i], 1e-12 * Math.Max(1, Math.Abs(matrix[(i * n) + j])));
            }

            Agree(byT[j], h => t * Heated(phase, densities, t, h, p => p.LogPhi[j]), 1e-3 * t);
        }

        Agree(zByT, h => Heated(phase, densities, t, h, p => p.Z * p.T), 1e-3 * t);
        Assert.True(z > 0);
    }

    [Theory]
    [InlineData("R-448A")]
    [InlineData("R-470A")]
    public void PermutationOfComponentsChangesNothing(string blend)
    {
        MixtureModel model = BlendCases.Model(blend);
        var reversed = (MixtureModel)Refrigerant.Recovery.Fluids.Fluid.Blend(
            model.Composition.Reverse().Select(c => BlendCases.Part(c.Designation, c.MassFraction))).Model;
        Assert.Equal(model.CriticalTemperature, reversed.CriticalTemperature, 1e-5);
        foreach (double t in new[] { 220.0, 260, 300, 330 })
        {
            var a = model.SaturationAtTemperature(t);
            var b = reversed.SaturationAtTemperature(t);
            Assert.Equal(a.Bubble.Pressure, b.Bubble.Pressure, 1e-8 * a.Bubble.Pressure);
            Assert.Equal(a.Dew.Pressure, b.Dew.Pressure, 1e-8 * a.Dew.Pressure);
            Assert.Equal(a.Bubble.Enthalpy, b.Bubble.Enthalpy, 1e-3);
            Assert.Equal(a.Dew.Density, b.Dew.Density, 1e-8 * a.Dew.Density);
        }
    }

    private static void Set(MixturePhase phase, double[] densities, double temperature)
    {
        double rho = phase.SetAmounts(densities);
        phase.SetTemperature(temperature);
        phase.SetDensity(rho);
    }

    private static double Moved(MixturePhase phase, double[] densities, double t, int j, double h, Func<MixturePhase, double> value)
    {
        double[] moved = [.. densities];
        moved[j] += h;
        Set(phase, moved, t);
        double up = value(phase);
        moved[j] -= 2 * h;
        Set(phase, moved, t);
        return (up - value(phase)) / (2 * h);
    }

    private static double Heated(MixturePhase phase, double[] densities, double t, double h, Func<MixturePhase, double> value)
    {
        Set(phase, densities, t + h);
        double up = value(phase);
        Set(phase, densities, t - h);
        return (up - value(phase)) / (2 * h);
    }

    /// <summary>Central differences with two steps, extrapolated (Richardson): error of fourth order.</summary>
    private static void Agree(double analytic, Func<double, double> difference, double step)
    {
        double coarse = difference(step);
        double fine = difference(step / 2);
        double limit = fine + ((fine - coarse) / 3);
        Assert.InRange(analytic - limit, -2e-6 * (1 + Math.Abs(limit)), 2e-6 * (1 + Math.Abs(limit)));
    }
}
