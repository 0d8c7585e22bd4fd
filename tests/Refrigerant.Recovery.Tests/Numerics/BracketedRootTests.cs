using System;
using Refrigerant.Recovery.Numerics;
using Xunit;

namespace Refrigerant.Recovery.Tests.Numerics;

public class BracketedRootTests
{
    [Theory]
    [InlineData(2.0)]
    [InlineData(1e-6)]
    [InlineData(4e4)]
    public void The_square_root_is_found_from_a_wide_bracket(double x)
    {
        var function = new Parabola(x);
        double root = BracketedRoot.Find(ref function, 0, 1e6, 1e-12 * Math.Sqrt(x));
        Assert.Equal(Math.Sqrt(x), root, 1e-11 * Math.Sqrt(x));
        Assert.True(function.Calls < 70, $"{function.Calls} calls");
    }

    [Fact]
    public void Ends_without_a_sign_change_are_an_error()
    {
        var function = new Parabola(-1);
        Assert.Throws<ConvergenceException>(() =>
        {
            Parabola f = function;
            return BracketedRoot.Find(ref f, 0, 1, 1e-9);
        });
    }

    private struct Parabola(double level) : IScalarFunction
    {
        public int Calls { get; private set; }

        public double Value(double x)
        {
            Calls++;
            return (x * x) - level;
        }
    }
}
