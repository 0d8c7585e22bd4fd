using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

public class RandomNumbersTests
{
    /// <summary>The upper 53 bits of xorshift64* as the paper writes it, computed with whole numbers of any length in Python, after eight that are thrown away.</summary>
    [Theory]
    [InlineData(1, new[] { 2372302983863206L, 698719927175273L, 3311719825763825L, 1518950141116590L })]
    [InlineData(-7, new[] { 2597861537105256L, 1993453447669371L, 8091622538508694L })]
    public void It_is_the_generator_of_the_paper(int seed, long[] expected)
    {
        var random = new RandomNumbers(seed);
        foreach (long bits in expected)
        {
            Assert.Equal((bits + 0.5) / Math.Pow(2, 53), random.Next(), 1e-16);
        }
    }

    /// <summary>Mean 0, variance 1 and kurtosis 3 within four standard errors of 20 000 draws: 1/√n, √(2/n), √(24/n).</summary>
    [Fact]
    public void Normal_numbers_have_the_moments_of_the_distribution()
    {
        const int Draws = 20_000;
        var random = new RandomNumbers(5);
        double sum = 0;
        double squares = 0;
        double fourth = 0;
        for (int i = 0; i < Draws; i++)
        {
            double z = random.Normal();
            sum += z;
            squares += z * z;
            fourth += z * z * z * z;
        }

        Assert.Equal(0, sum / Draws, 4 / Math.Sqrt(Draws));
        Assert.Equal(1, squares / Draws, 4 * Math.Sqrt(2.0 / Draws));
        Assert.Equal(3, fourth / Draws, 4 * Math.Sqrt(96.0 / Draws));
    }

    [Fact]
    public void Whole_numbers_are_as_likely_as_each_other()
    {
        const int Draws = 14_000;
        var random = new RandomNumbers(6);
        int[] counts = new int[7];
        for (int i = 0; i < Draws; i++)
        {
            counts[random.Below(7)]++;
        }

        Assert.All(counts, count => Assert.InRange(count, 2000 - (4 * 42), 2000 + (4 * 42)));
    }
}
