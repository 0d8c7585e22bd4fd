using System;
using Refrigerant.Recovery.Flow;
using Xunit;

namespace Refrigerant.Recovery.Tests.Flow;

public class FrictionTests
{
    // Computed from the formula of Churchill 1977, Chem. Eng. 84(24), 91, by an independent evaluation; Colebrook's values
    // (White, Fluid Mechanics) at the same points are 0.03238, -, 0.02217, 0.03850, 0.01344.
    [Theory]
    [InlineData(1e4, 1e-3, 0.03269)]
    [InlineData(1e5, 0, 0.01787)]
    [InlineData(1e5, 1e-3, 0.02234)]
    [InlineData(1e5, 1e-2, 0.03873)]
    [InlineData(1e6, 1e-4, 0.01351)]
    public void Turbulent_factor(double reynolds, double roughness, double expected) =>
        Assert.Equal(expected, Friction.Factor(reynolds, roughness), 6e-6);

    [Theory]
    [InlineData(1e-3)]
    [InlineData(0.999)]
    [InlineData(1.001)]
    [InlineData(10)]
    [InlineData(1000)]
    public void Laminar_factor_is_64_over_the_Reynolds_number(double reynolds) =>
        Assert.Equal(64 / reynolds, Friction.Factor(reynolds, 0), 1e-4 * 64 / reynolds);

    [Theory]
    [InlineData(double.NaN, 0)]
    [InlineData(-1, 0)]
    [InlineData(0, 0)]
    [InlineData(double.PositiveInfinity, 0)]
    [InlineData(1e4, -0.1)]
    [InlineData(1e4, 1.1)]
    [InlineData(1e4, double.NaN)]
    public void Hostile_input_throws(double reynolds, double roughness) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Friction.Factor(reynolds, roughness));
}
