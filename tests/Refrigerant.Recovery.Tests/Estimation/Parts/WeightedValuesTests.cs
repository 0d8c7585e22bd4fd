using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

public class WeightedValuesTests
{
    /// <summary>1, 2, 3 of weights 1, 1, 2 stand at 0.5, 1.5 and 3 of 4.</summary>
    [Theory]
    [InlineData(0.05, 1)]
    [InlineData(0.125, 1)]
    [InlineData(0.25, 1.5)]
    [InlineData(0.375, 2)]
    [InlineData(0.5, 2 + (1 / 3.0))]
    [InlineData(0.75, 3)]
    [InlineData(0.95, 3)]
    public void Quantiles_are_those_by_hand(double share, double expected) => Assert.Equal(expected, Three().Quantile(share), 1e-12);

    [Fact]
    public void The_range_is_that_of_nine_in_ten()
    {
        var values = new WeightedValues(101);
        for (int i = 100; i >= 0; i--)
        {
            values.Add(i, 1);
        }

        // Value i stands at i + 0.5 of 101.
        EstimateRange range = values.Range();
        Assert.Equal((0.05 * 101) - 0.5, range.Low, 1e-9);
        Assert.Equal(50, range.Best, 1e-9);
        Assert.Equal((0.95 * 101) - 0.5, range.High, 1e-9);
    }

    [Fact]
    public void What_is_added_later_is_sorted_in()
    {
        WeightedValues values = Three();
        Assert.Equal(1, values.Quantile(0));
        values.Add(-5, 4);
        Assert.Equal(-5, values.Quantile(0.25), 1e-12);
        Assert.Equal(-5 + (6 * 1.0 / 2.5), values.Quantile(3.0 / 8), 1e-12);
    }

    [Fact]
    public void What_lies_above_a_value_counts_by_its_weight()
    {
        Assert.Equal(0.5, Three().ShareAbove(2));
        Assert.Equal(0.75, Three().ShareAbove(1.99));
        Assert.Equal(0, Three().ShareAbove(3));
        Assert.Equal(0, new WeightedValues(3).ShareAbove(0));
    }

    [Fact]
    public void What_is_none_and_what_has_no_room_is_left_out()
    {
        var values = new WeightedValues(2);
        Assert.Equal(double.NaN, values.Quantile(0.5));
        values.Add(double.NaN, 1);
        values.Add(double.PositiveInfinity, 1);
        values.Add(7, 0);
        values.Add(7, -1);
        values.Add(7, double.NaN);
        Assert.Equal(0, values.Count);
        values.Add(1, 1);
        values.Add(2, 1);
        values.Add(3, 1);
        Assert.Equal(2, values.Count);
        Assert.Equal(2, values.Quantile(1));
        values.Clear();
        Assert.Equal(double.NaN, values.Quantile(0.5));
        values.Add(9, 1);
        Assert.Equal(9, values.Quantile(0.5));
    }

    private static WeightedValues Three()
    {
        var values = new WeightedValues(5);
        values.Add(3, 2);
        values.Add(1, 1);
        values.Add(2, 1);
        return values;
    }
}
