using Refrigerant.Recovery.Estimation;
using Xunit;
using Reference = MathNet.Numerics.Distributions.StudentT;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Against MathNet.Numerics' distribution for any number of degrees of freedom.</summary>
public class StudentTTests
{
    [Theory]
    [InlineData(-9)]
    [InlineData(-2.1)]
    [InlineData(-0.3)]
    [InlineData(0)]
    [InlineData(0.7)]
    [InlineData(3.2)]
    public void The_probability_below_is_that_of_four_degrees_of_freedom(double t) => Assert.Equal(Reference.CDF(0, 1, 4, t), StudentT.Below(t), 1e-12);

    [Theory]
    [InlineData(1e-7)]
    [InlineData(0.02)]
    [InlineData(0.4)]
    [InlineData(0.5)]
    [InlineData(0.77)]
    [InlineData(0.999)]
    public void The_quantile_is_its_inverse(double probability)
    {
        double t = StudentT.Quantile(probability);
        Assert.Equal(probability, Reference.CDF(0, 1, 4, t), 1e-9 * probability);
    }

    /// <summary>Beyond one in a billion there is nothing to tell apart: the ends are finite, and alike.</summary>
    [Fact]
    public void Its_ends_are_finite()
    {
        Assert.Equal(Reference.InvCDF(0, 1, 4, 1e-9), StudentT.Quantile(0), 1e-2);
        Assert.Equal(StudentT.Quantile(0), StudentT.Quantile(-1));
        Assert.Equal(-StudentT.Quantile(0), StudentT.Quantile(1), 1e-3);
    }
}
