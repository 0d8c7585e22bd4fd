using System;
using Refrigerant.Recovery.Equipment;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Equipment;

public class HoseTests
{
    [Theory]
    [InlineData(0, 10, "Length")]
    [InlineData(-1, 10, "Length")]
    [InlineData(1e9, 10, "Length")]
    [InlineData(3, 0, "InnerDiameter")]
    [InlineData(3, -5, "InnerDiameter")]
    public void A_hose_without_length_or_bore_is_refused(double meters, double millimeters, string parameter)
    {
        ArgumentException error = Assert.ThrowsAny<ArgumentException>(
            () => new Hose { Length = Length.FromMeters(meters), InnerDiameter = Length.FromMillimeters(millimeters) });
        Assert.Equal(parameter, error.ParamName);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Numbers_that_are_none_are_refused(double value)
    {
        Assert.ThrowsAny<ArgumentException>(() => new Hose { Length = Length.FromMeters(value), InnerDiameter = Length.FromMillimeters(10) });
        Assert.ThrowsAny<ArgumentException>(() => new Hose { Length = Length.FromMeters(1), InnerDiameter = Length.FromMillimeters(value) });
    }

    [Fact]
    public void A_set_keeps_its_own_copy_of_the_lists()
    {
        Hose[] hoses = [new Hose { Length = Length.FromMeters(2), InnerDiameter = Length.FromMillimeters(10) }];
        var set = new HoseSet { VaporSide = hoses };
        hoses[0] = null!;
        Assert.NotNull(set.VaporSide[0]);
        Assert.Equal(2 * Math.PI * 0.005 * 0.005, set.InternalVolume.CubicMeters, 1e-12);
    }

    [Fact]
    public void An_empty_vapor_side_and_missing_hoses_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new HoseSet { VaporSide = [] });
        Assert.Throws<ArgumentNullException>(() => new HoseSet { VaporSide = null! });
        Assert.Throws<ArgumentNullException>(() => new HoseSet { VaporSide = [null!] });
    }
}
