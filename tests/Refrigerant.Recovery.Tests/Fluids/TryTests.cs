using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Fluids;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids;

/// <summary>The calls for control loops answer as the others do, and say no where those throw.</summary>
public class TryTests
{
    public static IEnumerable<object[]> Fluids => [["R-134a"], ["R-744"], ["R-410A"], ["R-448A"]];

    [Theory]
    [MemberData(nameof(Fluids))]
    public void They_agree_with_the_calls_that_throw(string fluid)
    {
        PropertyModel model = Fluid.Get(fluid).Model;
        PropertyRange range = model.Range;
        var random = new Random(11);
        int answered = 0, refused = 0;
        for (int i = 0; i < 300; i++)
        {
            double temperature = range.MinimumTemperature - 20 + ((range.MaximumTemperature - range.MinimumTemperature + 40) * random.NextDouble());
            double pressure = Math.Pow(10, 10 * random.NextDouble());
            double density = Math.Pow(10, (4.5 * random.NextDouble()) - 1);
            double energy = 8e5 * (random.NextDouble() - 0.3);
            Same(model.TrySaturationAtTemperature(temperature, out SaturationPoint byTemperature), byTemperature, () => model.SaturationAtTemperature(temperature));
            Same(model.TrySaturationAtPressure(pressure, out SaturationPoint byPressure), byPressure, () => model.SaturationAtPressure(pressure));
            Same(model.TryStateAt(temperature, pressure, out StatePoint state), state, () => model.StateAt(temperature, pressure));
            Same(model.TryVesselAtTemperature(temperature, density, out VesselPoint atTemperature), atTemperature, () => model.VesselAtTemperature(temperature, density));
            Same(model.TryVesselAtEnergy(density, energy, out VesselPoint atEnergy), atEnergy, () => model.VesselAtEnergy(density, energy));
        }

        Assert.True(answered > 100 && refused > 100);

        void Same<T>(bool found, T value, Func<T> call)
            where T : struct
        {
            if (found)
            {
                answered++;
                Assert.Equal(call(), value);
                return;
            }

            refused++;
            Assert.Equal(default, value);
            Assert.ThrowsAny<Exception>(() => call());
        }
    }

    [Theory]
    [MemberData(nameof(Fluids))]
    public void What_is_no_number_is_refused(string fluid)
    {
        PropertyModel model = Fluid.Get(fluid).Model;
        foreach (double bad in new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity, -1 })
        {
            Assert.False(model.TrySaturationAtTemperature(bad, out _));
            Assert.False(model.TrySaturationAtPressure(bad, out _));
            Assert.False(model.TryStateAt(bad, 1e5, out _));
            Assert.False(model.TryStateAt(290, bad, out _));
            Assert.False(model.TryVesselAtTemperature(bad, 10, out _));
            Assert.False(model.TryVesselAtTemperature(290, bad, out _));
            Assert.False(model.TryVesselAtEnergy(bad, 3e5, out _));
        }

        Assert.False(model.TryVesselAtEnergy(10, double.NaN, out _));
    }

    /// <summary>The ends of the range are those that saturation itself has.</summary>
    [Theory]
    [MemberData(nameof(Fluids))]
    public void Saturation_pressures_have_the_ends_that_the_range_tells(string fluid)
    {
        PropertyModel model = Fluid.Get(fluid).Model;
        foreach (double end in new[] { model.Range.MinimumSaturationPressure, model.Range.MaximumSaturationPressure })
        {
            Assert.True(model.TrySaturationAtPressure(end, out SaturationPoint saturation));
            Assert.Equal(end, saturation.Dew.Pressure);
        }

        Assert.False(model.TrySaturationAtPressure(model.Range.MinimumSaturationPressure * 0.999, out _));
        Assert.False(model.TrySaturationAtPressure(model.Range.MaximumSaturationPressure * 1.001, out _));
    }

    [Fact]
    public void A_refusal_allocates_nothing()
    {
        PropertyModel model = Fluid.Get("R-134a").Model;
        _ = model.TrySaturationAtTemperature(1000, out _);
        _ = model.TryVesselAtEnergy(10, 1e9, out _);
        _ = model.TryStateAt(1000, 1e5, out _);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 100; i++)
        {
            _ = model.TrySaturationAtTemperature(1000, out _);
            _ = model.TrySaturationAtPressure(1e9, out _);
            _ = model.TryStateAt(1000, 1e5, out _);
            _ = model.TryVesselAtTemperature(1000, 10, out _);
            _ = model.TryVesselAtEnergy(10, 1e9, out _);
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }
}
