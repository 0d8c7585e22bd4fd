using System;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

public class ToldMachineTests
{
    private static readonly Workbench Bench = new(Workbench.Typical with { Displacement = 4e-4 });

    /// <summary>
    /// Above the discharge pressure every sweep is full: displacement times the density of saturated vapor that warms by 40 % of the way to the air. The displacement told is that at pressure ratio one.
    /// </summary>
    [Fact]
    public void Without_a_pressure_ratio_it_sweeps_its_displacement()
    {
        const double Pressure = 1.5e6;
        double discharge = Bench.Prior.Typical.DischargePressure;
        Assert.True(discharge < Pressure);
        PropertyModel model = Fluid.Get("R-134a").Model;
        SaturationPoint at = model.SaturationAtPressure(Pressure);
        double dew = at.Dew.Temperature;
        double warmed = at.Dew.Density * dew / (dew + (0.4 * 20));
        Assert.Equal(warmed * Bench.Prior.Typical.Displacement, Bench.Machine.Flow(Pressure, dew + 20), 2e-3 * warmed * Bench.Prior.Typical.Displacement);

        // Colder air cools nothing.
        Assert.Equal(at.Dew.Density * Bench.Prior.Typical.Displacement, Bench.Machine.Flow(Pressure, dew - 20), 2e-3 * at.Dew.Density * Bench.Prior.Typical.Displacement);
    }

    /// <summary>η = 1 − c·(r^(1/n) − 1) for clearance alone.</summary>
    [Fact]
    public void Clearance_takes_its_share()
    {
        const double Pressure = 4e5;
        ReducedParameters told = Bench.Prior.Typical;
        SaturationPoint at = Fluid.Get("R-134a").Model.SaturationAtPressure(Pressure);
        double efficiency = 1 - (told.Clearance * (Math.Pow(told.DischargePressure / Pressure, told.InverseExponent) - 1));
        double flow = efficiency * told.Displacement * at.Dew.Density;
        Assert.InRange(efficiency, 0.5, 0.97);
        Assert.Equal(flow, Bench.Machine.Flow(Pressure, at.Dew.Temperature), 2e-3 * flow);
    }

    [Fact]
    public void Below_a_kilopascal_nothing_is_told_apart()
    {
        Assert.Equal(Bench.Machine.Flow(1000, 295), Bench.Machine.Flow(-5000, 295));
        Assert.True(Bench.Machine.Flow(1000, 295) >= 0);
        Assert.True(Bench.Machine.Flow(1090, 295) > Bench.Machine.Flow(1000, 295));
    }
}
