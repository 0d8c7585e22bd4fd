using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Roots of covariances: triangular, and of the same covariance.</summary>
public class FilterRoomTests
{
    private const int N = StateIndex.Count;
    private const int Stride = FilterWorkspace.Stride;
    private const int Wide = FilterWorkspace.WideStride;

    [Fact]
    public void Rows_add_up()
    {
        double[] a = [9, 9, 9, 9, 9, 9, 9, 9, 1, 2, 3, 4, 5, 6, 7, 8];
        double[] b = [1, -1, 2, -2, 3, -3, 4, -4];
        Assert.Equal(1 - 2 + 6 - 8 + 15 - 18 + 28 - 32, VectorRows.Dot(a, 8, b, 0, 8));
        VectorRows.Add(a, 8, 0.5, b, 0, 8);
        Assert.Equal([9, 9, 9, 9, 9, 9, 9, 9, 1.5, 1.5, 4, 3, 6.5, 4.5, 9, 6], a);
        Assert.Equal(0, VectorRows.LaneMask & 7);
        Assert.Equal(16, (16 + VectorRows.Lanes - 1) & VectorRows.LaneMask);
    }

    [Fact]
    public void A_wide_matrix_becomes_a_triangle_of_the_same_covariance()
    {
        var work = new FilterWorkspace();
        var random = new Random(3);
        var expected = new double[N, N];
        for (int i = 0; i < N; i++)
        {
            // Rows of states that the model does not move: slopes, and noise of their own.
            int columns = i < StateIndex.FirstMoving ? FilterWorkspace.Noise : FilterWorkspace.Second + StateIndex.Moving;
            for (int j = 0; j < columns; j++)
            {
                work.Wide[(i * Wide) + j] = random.NextDouble() - 0.5;
            }

            work.Wide[(i * Wide) + FilterWorkspace.Noise + i] = 0.1 + random.NextDouble();
        }

        for (int i = 0; i < N; i++)
        {
            for (int k = 0; k < N; k++)
            {
                for (int j = 0; j < Wide; j++)
                {
                    expected[i, k] += work.Wide[(i * Wide) + j] * work.Wide[(k * Wide) + j];
                }
            }
        }

        var root = new double[N * Stride];
        Array.Fill(root, 7);
        work.Triangularize(root);
        AssertCovariance(expected, root);
        for (int i = 0; i < N; i++)
        {
            for (int j = i + 1; j < Stride; j++)
            {
                Assert.Equal(0, root[(i * Stride) + j]);
            }
        }
    }

    [Fact]
    public void A_state_is_widened_by_its_variance_and_no_other()
    {
        var work = new FilterWorkspace();
        var random = new Random(4);
        var root = new double[N * Stride];
        for (int i = 0; i < N; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                // A row without spread, too: a state that is known.
                root[(i * Stride) + j] = i == 5 ? 0 : random.NextDouble() - 0.4;
            }
        }

        foreach (int index in new[] { 0, 5, StateIndex.Temperature })
        {
            var expected = new double[N, N];
            for (int i = 0; i < N; i++)
            {
                for (int k = 0; k < N; k++)
                {
                    expected[i, k] = VectorRows.Dot(root, i * Stride, root, k * Stride, Stride) + (i == index && k == index ? 0.36 : 0);
                }
            }

            work.Widen(root, index, 0.6);
            AssertCovariance(expected, root);
        }
    }

    [Fact]
    public void A_point_takes_its_states()
    {
        var bench = new Workbench();
        var states = new double[N];
        var values = new double[N];
        for (int i = 0; i < N; i++)
        {
            states[i] = 100 + i;
            values[i] = 200 + i;
        }

        states[StateIndex.Warming] = 0.3;
        states[StateIndex.Condensing] = 310;
        ReducedParameters typical = bench.Prior.Typical;
        SigmaPoint point = SigmaPoint.From(states, values, in typical, bench.Table);
        ReducedParameters p = point.Parameters;
        Assert.Equal([200, 201, 202, 203, 204, 205, 206, 207, 208, 210, 211], [p.Charge, p.Volume, p.OuterConductance, p.MetalCapacity, p.InnerConductance, p.Displacement, p.HoseResistance, p.Clearance, p.WetShare, p.OilCapacity, p.OilTime]);
        Assert.Equal(bench.Table.BubblePressure(310), p.DischargePressure);
        Assert.Equal(0.3, p.Warming);
        Assert.Equal(typical.Mixing, p.Mixing);
        Assert.Equal(113 + 114, point.GaugeError);
        Assert.Equal([216, 117, 118, 119, 120], [point.State.Dissolved, point.State.Delivered, point.State.MetalTemperature, point.State.WetTemperature, point.State.Temperature]);
        states[StateIndex.Warming] = -0.1;
        Assert.Equal(0, SigmaPoint.From(states, values, in typical, bench.Table).Parameters.Warming);
        states[StateIndex.Warming] = 1.1;
        Assert.Equal(1, SigmaPoint.From(states, values, in typical, bench.Table).Parameters.Warming);
    }

    [Fact]
    public void Quantities_that_are_above_zero_go_by_their_logarithm()
    {
        int[] plain = [StateIndex.Warming, StateIndex.Condensing, StateIndex.GaugeBias, StateIndex.GaugeDrift, StateIndex.ScaleOffset, StateIndex.Delivered, StateIndex.MetalTemperature, StateIndex.WetTemperature, StateIndex.Temperature];
        for (int i = 0; i < N; i++)
        {
            Assert.Equal(Array.IndexOf(plain, i) < 0, StateIndex.IsLogarithm(i));
        }
    }

    /// <summary>√(1 + s²) + s: one and the share for small ones, the inverse for the opposite one, and never none.</summary>
    [Theory]
    [InlineData(0.01)]
    [InlineData(0.6)]
    [InlineData(1e6)]
    public void What_is_left_is_multiplied_and_divided_alike(double share)
    {
        Assert.Equal(Math.Sqrt(1 + (share * share)) + share, VaporLeft.Factor(share), 1e-12 * share);
        Assert.Equal(1, VaporLeft.Factor(share) * VaporLeft.Factor(-share), 1e-12);
        Assert.True(VaporLeft.Factor(-share) > 0);
        Assert.Equal(1, VaporLeft.Factor(0));
        Assert.Equal(1.5, VaporLeft.Of(6, 4, 0.5));
        Assert.Equal(6e-5, VaporLeft.Of(6, 5.9, 0.2), 1e-15);
    }

    private static void AssertCovariance(double[,] expected, double[] root)
    {
        for (int i = 0; i < N; i++)
        {
            for (int k = 0; k < N; k++)
            {
                Assert.Equal(expected[i, k], VectorRows.Dot(root, i * Stride, root, k * Stride, Stride), 1e-12 * N);
            }
        }
    }
}
