using System;
using System.Collections.Generic;
using System.Linq;
using System.Runtime.Intrinsics;
using Refrigerant.Recovery.Fluids.Data;
using Refrigerant.Recovery.Fluids.Helmholtz;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids;

/// <summary>What is evaluated four at a time has the digits of what is evaluated one by one, to the last bit, so that every platform gives the same results.</summary>
public class SameDigitsTests
{
    private const int Points = 200;

    public static IEnumerable<object[]> PureFluids => ReferenceTable.PureFluids;

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void Terms(string fluid) => Compare(ReferenceTable.Model(fluid).Engine.Equation.Residual);

    [Fact]
    public void DepartureFunctions() => Assert.All(DepartureTable.Create(), departure => Compare(departure.Residual));

    [Theory]
    [MemberData(nameof(PureFluids))]
    public void IdealGas(string fluid)
    {
        IdealHelmholtz ideal = ReferenceTable.Model(fluid).Data.IdealGas;
        var random = new Random(1);
        for (int i = 0; i < Points; i++)
        {
            double tau = 0.3 + (3 * random.NextDouble());
            ideal.SumByVector(tau, Math.Log(tau), out double a, out double t, out double tt);
            ideal.SumOneByOne(tau, Math.Log(tau), out double a1, out double t1, out double tt1);
            Assert.Equal((a1, t1, tt1), (a, t, tt));
        }
    }

    [Fact]
    public void NonAnalyticTerms()
    {
        var terms = new NonAnalyticTerms(ReferenceTable.Model("R-744").Data.Residual.NonAnalytic);
        var random = new Random(2);
        for (int i = 0; i < Points; i++)
        {
            double tau = 0.7 + (0.6 * random.NextDouble()), delta = i == 0 ? 1 : 3 * random.NextDouble();
            HelmholtzDerivatives four = default, one = default;
            terms.AddByVector(tau, delta, delta - 1, tau - 1, ref four);
            terms.AddOneByOne(tau, delta, delta - 1, tau - 1, ref one);
            Assert.Equal(one, four);
        }
    }

    [Fact]
    public void Curves()
    {
        var random = new Random(3);
        var table = new CurveTable(1);
        double[] values = [.. Enumerable.Range(0, CurveTable.Order * CurveTable.Count).Select(_ => random.NextDouble() - 0.5)];
        table.Add(2, 5, values);
        for (int i = 0; i < Points; i++)
        {
            double x = 2 + (3 * random.NextDouble());
            table.Evaluate(0, x, out CurveValues four);
            table.EvaluatePlain(0, x, out CurveValues one);
            Assert.Equal(one, four);
            table.EvaluateFirst(0, x, out CurveValues first);
            Assert.Equal((one.First, one.Second, one.Third, one.Fourth), (first.First, first.Second, first.Third, first.Fourth));
        }

        // A polynomial of degree 9 is itself, and its slope too.
        for (int i = 0; i < CurveTable.Order; i++)
        {
            double x = CurveTable.Node(i, 2, 5);
            values.AsSpan(i * CurveTable.Count, CurveTable.Count).Fill(Math.Pow(x - 3, 9));
        }

        var power = new CurveTable(1);
        power.Add(2, 5, values);
        power.Evaluate(0, 4.5, out CurveValues value);
        power.Slopes(0, 4.5, out CurveValues slope);
        Assert.Equal(Math.Pow(1.5, 9), value.Eighth, 1e-10);
        Assert.Equal(9 * Math.Pow(1.5, 8), slope.Eighth, 1e-9);
    }

    [Fact]
    public void ExponentialsAndLogarithmsAreRightToTheLastDigits()
    {
        var random = new Random(4);
        for (int i = 0; i < 100_000; i++)
        {
            double x = (random.NextDouble() - 0.5) * (i % 2 == 0 ? 1400 : 4);
            double exponential = Exponential.Of(x);
            Assert.InRange((exponential / Math.Exp(x)) - 1, -4e-16, 4e-16);
            Assert.Equal(exponential, Exponential.Of(Vector256.Create(x))[i & 3]);
            double y = Math.Exp(x / 2);
            double logarithm = NaturalLogarithm.Of(y);
            Assert.InRange(logarithm - Math.Log(y), -4e-16 * Math.Max(1, Math.Abs(logarithm)), 4e-16 * Math.Max(1, Math.Abs(logarithm)));
            Assert.Equal(logarithm, NaturalLogarithm.Of(Vector256.Create(y))[i & 3]);
        }

        Assert.Equal(1, Exponential.Of(0));
        Assert.Equal(0, NaturalLogarithm.Of(1));
        Assert.Equal(Exponential.Of(700), Exponential.Of(1e9));
        Assert.Equal(Exponential.Of(-700), Exponential.Of(double.NegativeInfinity));
    }

    private static void Compare(ResidualHelmholtz residual)
    {
        TermTable table = residual.Table;
        var random = new Random(5);
        double[] four = new double[table.IsothermLength], one = new double[table.IsothermLength], powers = new double[TermTable.HighestPower + 1];
        for (int i = 0; i < Points; i++)
        {
            double tau = 0.3 + (3 * random.NextDouble()), delta = i % 2 == 0 ? 3.5 * random.NextDouble() : Math.Pow(10, -8 * random.NextDouble());
            VectorTerms.Isotherm(table, tau, Math.Log(tau), four);
            PlainTerms.Isotherm(table, tau, Math.Log(tau), one);
            Assert.Equal(one, four);
            ResidualHelmholtz.FillPowers(delta, powers);
            Assert.Equal(PlainTerms.At(table, delta, powers, one), VectorTerms.At(table, delta, powers, four));
            VectorTerms.ByDensity(table, delta, powers, four, out double d, out double dd);
            PlainTerms.ByDensity(table, delta, powers, one, out double d1, out double dd1);
            Assert.Equal((d1, dd1), (d, dd));
        }
    }
}
