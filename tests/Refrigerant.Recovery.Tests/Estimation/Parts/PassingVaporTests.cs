using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>A cylinder of 60 L; 295 K; R-134a, whose vapor is saturated there at 29 kg/m³.</summary>
public class PassingVaporTests
{
    private const double Limit = 5e3;
    private static readonly Workbench Bench = new();

    /// <summary>Of vapor alone the pressure is that of the equation of state, to what a straight line leaves of the compressibility; none where liquid may be in it.</summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(0.88)]
    public void A_cylinder_of_vapor_has_the_pressure_of_its_density(double share)
    {
        PropertyModel model = Fluid.Get("R-134a").Model;
        double saturated = model.SaturationAtTemperature(295).Dew.Density;
        double volume = Bench.Job.Cylinders[0].InternalVolume.CubicMeters;
        double expected = model.VesselAtTemperature(295, share * saturated).Vapor.Pressure;
        Assert.Equal(expected, Passing().CylinderPressure(0, share * saturated * volume, 295), 0.01 * expected);
        Assert.Equal(double.NaN, Passing().CylinderPressure(0, 0.92 * saturated * volume, 295));
        Assert.Equal(double.NaN, Passing().CylinderPressure(1, 0.1, 295));
        Assert.Equal(double.NaN, Passing().CylinderPressure(0, double.NaN, 295));
        Assert.Equal(0, Passing().CylinderPressure(0, -0.1, 295));
    }

    [Fact]
    public void A_gauge_that_shows_the_discharge_or_more_tells()
    {
        PassingVapor passing = Passing();
        Assert.True(passing.Check(true, 3e5 - Limit + 1, 3e5, 0, 20, 295, double.NaN));
        Assert.False(passing.Check(true, 3e5 - Limit - 1, 3e5, 0, 20, 295, double.NaN));
        Assert.False(passing.Check(false, 4e5, 3e5, 0, 20, 295, double.NaN));
        Assert.False(passing.Check(true, double.NaN, 3e5, 0, 20, 295, double.NaN));
    }

    /// <summary>Without a discharge gauge: within a tenth of the cylinder's pressure, 30 g of content and the gauge's limit.</summary>
    [Theory]
    [InlineData(0.98, true)]
    [InlineData(1.02, false)]
    public void A_gauge_that_shows_the_cylinder_tells(double share, bool passes)
    {
        const double Content = 0.4;
        double pressure = Passing().CylinderPressure(0, Content, 295);
        double off = (0.1 * pressure) + (0.03 * pressure / Content) + Limit;
        Assert.Equal(passes, Passing().Check(true, pressure + (share * off) - 1e5, double.NaN, 0, Content, 295, double.NaN));
        Assert.Equal(passes, Passing().Check(true, pressure - (share * off) - 1e5, double.NaN, 0, Content, 295, double.NaN));
    }

    /// <summary>Where the machine alone would pull to about as much, the gauge need not show the cylinder.</summary>
    [Fact]
    public void What_the_machine_pulls_to_is_not_taken_for_the_cylinder()
    {
        double pressure = Passing().CylinderPressure(0, 0.4, 295);
        Assert.True(Passing().Check(true, pressure - 1e5, double.NaN, 0, 0.4, 295, pressure / 0.92));
        Assert.False(Passing().Check(true, pressure - 1e5, double.NaN, 0, 0.4, 295, pressure / 0.94));
    }

    [Fact]
    public void After_three_blocks_that_do_not_agree_it_is_over_until_the_machine_starts_again_or_another_cylinder_stands_there()
    {
        PassingVapor passing = Passing();
        double pressure = passing.CylinderPressure(0, 0.4, 295);
        bool Like(bool agrees, int cylinder = 0, bool isDrawing = true) => passing.Check(isDrawing, (agrees ? pressure : 2 * pressure) - 1e5, double.NaN, cylinder, 0.4, 295, double.NaN);
        Assert.False(Like(false));
        Assert.False(Like(false));
        Assert.True(Like(true));
        Assert.False(Like(false));
        Assert.False(Like(false));
        Assert.False(Like(false));
        Assert.False(Like(true));
        Assert.False(Like(true, isDrawing: false));
        Assert.True(Like(true));
        Assert.False(Like(false));
        Assert.False(Like(false));
        Assert.False(Like(false));
        Assert.False(Like(true, 1));
        Assert.True(Like(true));
    }

    [Fact]
    public void Through_a_machine_that_lets_nothing_pass_only_the_discharge_tells()
    {
        RecoveryJob job = Bench.Job with { Machine = Bench.Job.Machine with { GasPassesThrough = false } };
        var passing = new PassingVapor(job, Bench.Table, Limit);
        double pressure = passing.CylinderPressure(0, 0.4, 295);
        Assert.False(passing.Check(true, pressure - 1e5, double.NaN, 0, 0.4, 295, double.NaN));
        Assert.True(passing.Check(true, pressure - 1e5, pressure - 1e5, 0, 0.4, 295, double.NaN));
    }

    private static PassingVapor Passing() => new(Bench.Job, Bench.Table, Limit);
}
