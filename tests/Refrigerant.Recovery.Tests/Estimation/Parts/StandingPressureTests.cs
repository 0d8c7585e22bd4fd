using System;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>R-134a told at 295 K, known to 1.5 K (one standard deviation), a gauge with a standard error of 16 kPa/√3.</summary>
public class StandingPressureTests
{
    private static readonly Workbench Bench = new();
    private static readonly PropertyModel Engine = Fluid.Get("R-134a").Model;
    private static readonly double Error = 2 * 16e3 / Math.Sqrt(3);

    /// <summary>6 K and twice 1.5 K may it stand off, and the gauge be off by twice its standard error.</summary>
    [Theory]
    [InlineData(8.8, 0)]
    [InlineData(9.2, 1)]
    [InlineData(-8.8, 0)]
    [InlineData(-9.2, -1)]
    [InlineData(19, 1)]
    public void Nine_kelvins_are_said(double kelvins, int sign)
    {
        var standing = new StandingPressure(Bench.Table, Bench.Prior);
        double pressure = Engine.SaturationAtTemperature(295 + kelvins).Dew.Pressure + (Math.Sign(kelvins) * Error);
        Add(standing, pressure, 0, 4);
        Assert.Equal(sign, Math.Sign(standing.Off));
        Assert.Equal(sign == 0 ? 0 : kelvins, standing.Off, 0.05);
    }

    /// <summary>R-410A in what was told to be R-22, at 28 °C: 1798 kPa where it would be 1131, which R-22 has at 47 °C.</summary>
    [Fact]
    public void Another_refrigerant_shows()
    {
        var bench = new Workbench(Workbench.Typical with { Fluid = "R-22", Temperature = 301.15, GaugeSpan = 2.5e6 });
        var standing = new StandingPressure(bench.Table, bench.Prior);
        Add(standing, Fluid.Get("R-410A").Model.SaturationAtTemperature(301.15).Dew.Pressure, 0, 4);
        Assert.InRange(standing.Off, 15, 20);
    }

    /// <summary>One reading says nothing, nor do two within three seconds; what is drawn changes the pressure, so that nothing is said after.</summary>
    [Fact]
    public void It_is_a_matter_of_the_first_rest()
    {
        var standing = new StandingPressure(Bench.Table, Bench.Prior);
        Add(standing, 1e6, 0, 2);
        Assert.Equal(0, standing.Off);
        Add(standing, 1e6, 3, 3);
        Assert.True(standing.Off > 0);

        standing = new StandingPressure(Bench.Table, Bench.Prior);
        EstimatorBlock drawn = Workbench.Block(1, 1, 5e5);
        standing.Update(in drawn);
        Add(standing, 1e6, 2, 20);
        Assert.Equal(0, standing.Off);
    }

    private static void Add(StandingPressure standing, double absolute, int from, int to)
    {
        for (int t = from; t <= to; t++)
        {
            EstimatorBlock block = Workbench.Block(t, 1, absolute - Bench.Prior.Atmosphere, isDrawing: false);
            standing.Update(in block);
        }
    }
}
