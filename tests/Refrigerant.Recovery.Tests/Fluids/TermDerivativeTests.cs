using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Fluids.Helmholtz;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids;

/// <summary>Every term family: value by the published formula, and the analytic derivatives by differences of the lower ones.</summary>
public class TermDerivativeTests
{
    public static IEnumerable<object[]> PureFluids => ReferenceTable.PureFluids;

    /// <summary>One term of each family at (τ, δ) = (1.2, 0.7), the formula written out once more.</summary>
    [Fact]
    public void ValuesFollowThePublishedFormulas()
    {
        const double T = 1.2;
        const double D = 0.7;
        Check(new() { Power = new double[,] { { 2, 3, 0.5, 0 } } }, 2 * Math.Pow(D, 3) * Math.Pow(T, 0.5));
        Check(new() { Power = new double[,] { { 2, 3, 0.5, 2 } } }, 2 * Math.Pow(D, 3) * Math.Pow(T, 0.5) * Math.Exp(-D * D));
        Check(
            new() { Exponential = new double[,] { { 2, 0, 3, 0.8, 3 } } },
            2 * Math.Pow(T, 3) * Math.Exp(-0.8 * Math.Pow(D, 3)));
        Check(
            new() { Gaussian = new double[,] { { 2, 1, 3, 0.9, 1.4, 1.1, 0.6 } } },
            2 * D * Math.Pow(T, 3) * Math.Exp((-0.9 * Math.Pow(D - 0.6, 2)) - (1.4 * Math.Pow(T - 1.1, 2))));
        Check(
            new() { DoubleExponential = new double[,] { { 2, 1, 3, 2, 1.7 } } },
            2 * D * Math.Pow(T, 3) * Math.Exp(-(D * D) - Math.Pow(T, 1.7)));
        Check(
            new() { GaoB = new double[,] { { 2, 1, 3, -2.8, 0.4, 1.1, 0.45, 1.2 } } },
            2 * D * Math.Pow(T, 3) * Math.Exp((1 / (1.2 + (0.4 * Math.Pow(T - 1.1, 2)))) - (2.8 * Math.Pow(D - 0.45, 2))));
        Check(
            new() { Gerg = new double[,] { { 2, 1, 3, 0.9, 1.4, 0.5, 0.6 } } },
            2 * D * Math.Pow(T, 3) * Math.Exp((-0.9 * Math.Pow(D - 0.6, 2)) - (1.4 * (D - 0.5))));
        double square = Math.Pow(D - 1, 2);
        double theta = 1 - T + (0.7 * Math.Pow(square, 1 / 0.6));
        double distance = (theta * theta) + (0.3 * Math.Pow(square, 3.5));
        Check(
            new() { NonAnalytic = new double[,] { { 2, 3.5, 0.875, 0.3, 0.7, 0.3, 10, 27.5 } } },
            2 * Math.Pow(distance, 0.875) * D * Math.Exp((-10 * square) - (27.5 * Math.Pow(T - 1, 2))));

        static void Check(ResidualTerms terms, double expected)
        {
            var residual = new ResidualHelmholtz(terms);
            Assert.InRange((At(residual, T, D).A / expected) - 1, -1e-14, 1e-14);
            CheckDerivatives(residual, T, D);
        }
    }

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void DerivativesAgreeWithDifferences(string fluid)
    {
        ResidualHelmholtz residual = ReferenceTable.Model(fluid).Engine.Equation.Residual;
        var random = new Random(20262);
        for (int i = 0; i < 20; i++)
        {
            CheckDerivatives(residual, 0.8 + random.NextDouble(), 0.01 + (2.5 * random.NextDouble()));
        }
    }

    /// <summary>Around the critical point of carbon dioxide, where its non-analytic terms matter.</summary>
    [Fact]
    public void DerivativesOfNonAnalyticTerms()
    {
        ResidualHelmholtz residual = ReferenceTable.Model("R-744").Engine.Equation.Residual;
        foreach (double tau in new[] { 0.97, 0.995, 1.004, 1.03 })
        {
            foreach (double delta in new[] { 0.8, 0.95, 1.05, 1.2 })
            {
                CheckDerivatives(residual, tau, delta);
            }
        }
    }

    private static void CheckDerivatives(ResidualHelmholtz residual, double tau, double delta)
    {
        const double H = 1e-6;
        HelmholtzDerivatives a = At(residual, tau, delta);
        HelmholtzDerivatives low = At(residual, tau * (1 - H), delta);
        HelmholtzDerivatives high = At(residual, tau * (1 + H), delta);
        HelmholtzDerivatives thin = At(residual, tau, delta * (1 - H));
        HelmholtzDerivatives dense = At(residual, tau, delta * (1 + H));
        double scale = new[] { a.A, a.D, a.T, a.DD, a.DT, a.TT, 1 }.Max(Math.Abs);
        Near(a.T, high.A - low.A);
        Near(a.D, dense.A - thin.A);
        Near(a.TT + a.T, high.T - low.T);
        Near(a.DD + a.D, dense.D - thin.D);
        Near(a.DT, dense.T - thin.T);
        Near(a.DT, high.D - low.D);

        double[] isotherm = new double[residual.IsothermLength];
        residual.Isotherm(tau, isotherm);
        residual.ByDensity(tau, delta, isotherm, out double d, out double dd);
        Assert.InRange(d - a.D, -1e-13 * scale, 1e-13 * scale);
        Assert.InRange(dd - a.DD, -1e-13 * scale, 1e-13 * scale);

        void Near(double analytic, double difference) =>
            Assert.InRange((difference / (2 * H)) - analytic, -2e-7 * scale, 2e-7 * scale);
    }

    private static HelmholtzDerivatives At(ResidualHelmholtz residual, double tau, double delta)
    {
        double[] isotherm = new double[residual.IsothermLength];
        residual.Isotherm(tau, isotherm);
        return residual.At(tau, delta, isotherm);
    }
}
