using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Helmholtz;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Tests.Fluids.Mixtures;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids;

/// <summary>Iterations and layouts that cannot give what is asked say so.</summary>
public class OutcomeTests
{
    [Theory]
    [InlineData(1.5, 0)]
    [InlineData(-1, 0)]
    [InlineData(32, 0)]
    [InlineData(1, 2.5)]
    [InlineData(double.NaN, 0)]
    public void Exponents_of_the_density_that_are_not_whole_are_refused(double d, double l) =>
        Assert.Throws<ArgumentException>(() => new ResidualHelmholtz(new ResidualTerms { Power = new double[,] { { 1, d, 1, l } } }));

    /// <summary>An engine that tells a range which nothing lies in, or no range, is told so when it is made.</summary>
    [Theory]
    [InlineData(double.NaN, 400, 1e7, 350, 1e4, 4e6)]
    [InlineData(200, 199, 1e7, 350, 1e4, 4e6)]
    [InlineData(200, double.PositiveInfinity, 1e7, 350, 1e4, 4e6)]
    [InlineData(200, 400, 0, 350, 1e4, 4e6)]
    [InlineData(200, 400, 1e7, 199, 1e4, 4e6)]
    [InlineData(200, 400, 1e7, 350, -1, 4e6)]
    [InlineData(200, 400, 1e7, 350, 1e4, 9e3)]
    public void A_range_is_a_range(double coldest, double hottest, double highest, double curves, double low, double high) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new PropertyRange(coldest, hottest, highest, curves, low, high));

    /// <summary>Infinity is greater than 0: the message says what else is wrong with it.</summary>
    [Fact]
    public void What_is_not_finite_is_told_so() =>
        Assert.Contains("it must be finite and greater than 0", Assert.Throws<ArgumentOutOfRangeException>(() => new PropertyRange(200, 400, double.PositiveInfinity, 350)).Message, StringComparison.Ordinal);

    [Fact]
    public void An_equation_without_a_critical_point_has_none()
    {
        // p = ρRT(1 + δ): no isotherm has a flat place.
        var residual = new ResidualHelmholtz(new ResidualTerms { Power = new double[,] { { 1, 1, 0, 0 } } });
        Assert.False(CriticalPoint.TryFind(residual, 1, 1, out _, out _));
    }

    [Fact]
    public void The_critical_point_of_van_der_Waals_is_found()
    {
        // α_r = −ln(1 − δ/3) − 9/8·τδ after van der Waals, as the first 30 powers of its series: critical at τ = δ = 1.
        double[,] rows = new double[31, 4];
        for (int k = 1; k <= 30; k++)
        {
            (rows[k - 1, 0], rows[k - 1, 1]) = (1 / (k * Math.Pow(3, k)), k);
        }

        (rows[30, 0], rows[30, 1], rows[30, 2]) = (-9.0 / 8, 1, 1);
        Assert.True(CriticalPoint.TryFind(new ResidualHelmholtz(new ResidualTerms { Power = rows }), 1.003, 1.01, out double tau, out double delta));
        Assert.Equal(1, tau, 1e-10);
        Assert.Equal(1, delta, 1e-5);
    }

    [Fact]
    public void A_vapor_branch_that_does_not_reach_a_pressure_has_no_root_there()
    {
        MixturePhase phase = Phase("R-410A", 270, out MixtureModel model);
        double pressure = model.SaturationAtTemperature(270).Dew.Pressure;
        Assert.True(DensityRoot.TryVapor(phase, 0.9 * pressure, out double vapor));
        Assert.Equal(0.9 * pressure, phase.PressureAt(vapor, out _), 1e-6 * pressure);
        Assert.False(DensityRoot.TryVapor(phase, 10 * pressure, out _));
        Assert.True(DensityRoot.TryLiquid(phase, 10 * pressure, out double liquid));
        Assert.Equal(10 * pressure, phase.PressureAt(liquid, out _), 1e-5 * pressure);
        Assert.False(DensityRoot.TryLiquid(phase, -100 * pressure, out _));
    }

    [Fact]
    public void A_root_between_bounds_is_found_from_either_of_them()
    {
        MixturePhase phase = Phase("R-448A", 280, out MixtureModel model);
        double dew = model.SaturationAtTemperature(280).Dew.Density / model.MolarMass;
        double pressure = phase.PressureAt(0.7 * dew, out _);
        Assert.Equal(0.7 * dew, DensityRoot.Between(phase, pressure, 0, dew, 0), 1e-10 * dew);
        Assert.Equal(0.7 * dew, DensityRoot.Between(phase, pressure, 0, dew, dew), 1e-10 * dew);
        Assert.Throws<ConvergenceException>(() => DensityRoot.Between(phase, double.NaN, double.NaN, double.NaN, double.NaN));
    }

    [Fact]
    public void Vapor_fractions_of_K_factors()
    {
        // Two components, z = ½ and K = 2, ½: ½/(1 + β) = ¼/(1 − β/2), so β = ½.
        Assert.Equal(0.5, RachfordRice.VaporFraction([0.5, 0.5], [Math.Log(2), -Math.Log(2)]), 1e-12);
        Assert.Equal(1, RachfordRice.VaporFraction([0.5, 0.5], [1, 2]), 1e-12);
        Assert.Equal(0, RachfordRice.VaporFraction([0.5, 0.5], [-1, -2]), 1e-12);
        Assert.Throws<ConvergenceException>(() => RachfordRice.VaporFraction([0.5, 0.5], [double.NaN, 1]));
    }

    [Fact]
    public void A_pressure_that_is_no_number_has_no_temperature() =>
        Assert.Throws<ConvergenceException>(() => BlendCases.Model("R-407C").Engine.Curves.Bubble.TemperatureOf(double.NaN));

    private static MixturePhase Phase(string blend, double temperature, out MixtureModel model)
    {
        model = BlendCases.Model(blend);
        var phase = new MixturePhase(model.Engine.Equation);
        phase.SetComposition(model.Engine.Composition);
        phase.SetTemperature(temperature);
        return phase;
    }
}
