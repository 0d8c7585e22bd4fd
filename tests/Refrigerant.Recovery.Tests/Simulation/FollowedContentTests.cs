using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation.Contents;
using Refrigerant.Recovery.Tests.Doubles;
using Xunit;

namespace Refrigerant.Recovery.Tests.Simulation;

/// <summary>
/// A vessel's content is found from where it stood last: the same state as the equation gives from scratch, at a fraction of the work. Followed from one state to the next it is not to be sought from scratch again.
/// </summary>
public class FollowedContentTests
{
    private const double Volume = 0.02;

    /// <summary>Along a course of small steps: within two phases, dry, above the critical temperature, and dense above it.</summary>
    [Theory]
    [InlineData("R-134a", 300, 280, 400, 100)]
    [InlineData("R-134a", 280, 300, 100, 400)]
    [InlineData("R-744", 230, 290, 400, 200)]
    [InlineData("R-134a", 300, 290, 15, 2)]
    [InlineData("R-290", 260, 300, 0.5, 4)]
    [InlineData("R-134a", 400, 420, 50, 20)]
    [InlineData("R-744", 320, 310, 600, 400)]
    public void It_is_followed_where_no_phase_comes_or_goes(string fluid, double from, double to, double first, double last)
    {
        PropertyModel engine = Fluid.Get(fluid).Model;
        var counted = new PortOnly(engine);
        var content = Content.For(counted, tracked: false);
        const int Steps = 60;
        for (int i = 0; i <= Steps; i++)
        {
            double share = (double)i / Steps;
            VesselPoint there = engine.VesselAtTemperature(from + ((to - from) * share), first + ((last - first) * share));
            Solve(content, there);
            Stands(content, there);
        }

        Assert.Equal(1, counted.FromScratch);
        Assert.InRange(counted.Saturations, 0, 5 * Steps);
    }

    /// <summary>Where the last liquid boils off, or the first forms, it is sought anew and found.</summary>
    [Theory]
    [InlineData(40, 10)]
    [InlineData(10, 40)]
    public void It_is_found_where_a_phase_comes_or_goes(double first, double last)
    {
        PropertyModel engine = Fluid.Get("R-134a").Model;
        var counted = new PortOnly(engine);
        var content = Content.For(counted, tracked: false);
        const int Steps = 60;
        for (int i = 0; i <= Steps; i++)
        {
            VesselPoint there = engine.VesselAtTemperature(295, first + ((last - first) * i / Steps));
            Solve(content, there);
            Stands(content, there);
        }

        Assert.InRange(counted.FromScratch, 2, 4);
    }

    /// <summary>The same question is answered from memory, another by another answer.</summary>
    [Fact]
    public void What_was_asked_last_is_remembered()
    {
        PropertyModel engine = Fluid.Get("R-134a").Model;
        var counted = new PortOnly(engine);
        var content = Content.For(counted, tracked: false);
        VesselPoint there = engine.VesselAtTemperature(290, 300);
        Solve(content, there);
        int asked = counted.Saturations;
        Solve(content, there);
        Assert.Equal((1, asked), (counted.FromScratch, counted.Saturations));
        double mass = 300 * Volume, energy = mass * there.Bulk.InternalEnergy;
        foreach ((double kilograms, double cubicMeters, double joules) in new[] { (mass, Volume, energy * 1.001), (mass * 0.999, Volume, energy), (mass, Volume * 1.001, energy) })
        {
            Assert.True(content.Solve([kilograms], 0, cubicMeters, joules));
            VesselPoint expected = engine.VesselAtEnergy(kilograms / cubicMeters, joules / kilograms);
            Assert.Equal(expected.Bulk.Temperature, content.Temperature, 1e-8);
            Assert.True(content.Solve([mass], 0, Volume, energy));
            Assert.Equal(there.Bulk.Temperature, content.Temperature, 1e-8);
        }
    }

    /// <summary>Nothing, less than nothing and no number are no content; what was valid before is valid again after.</summary>
    [Fact]
    public void What_cannot_be_is_none()
    {
        var content = Content.For(Fluid.Get("R-134a").Model, tracked: false);
        VesselPoint there = Fluid.Get("R-134a").Model.VesselAtTemperature(290, 300);
        double energy = 300 * Volume * there.Bulk.InternalEnergy;
        foreach ((double mass, double volume, double joules) in new[]
        {
            (0, Volume, energy), (-1, Volume, energy), (double.NaN, Volume, energy), (6, 0, energy), (6, -1, energy), (6, Volume, double.NaN), (6, Volume, double.PositiveInfinity), (6, Volume, 100 * energy), (6, Volume, -energy),
        })
        {
            Assert.False(content.Solve([mass], 0, volume, joules));
            Assert.True(content.Solve([300 * Volume], 0, Volume, energy));
        }
    }

    private static void Solve(Content content, in VesselPoint there) =>
        Assert.True(content.Solve([there.Bulk.Density * Volume], 0, Volume, there.Bulk.Density * Volume * there.Bulk.InternalEnergy));

    private static void Stands(Content content, in VesselPoint there)
    {
        StatePoint bulk = there.Bulk;
        bool isMixed = there.Liquid.Phase != Phase.Undefined && there.Vapor.Phase != Phase.Undefined;
        StatePoint vapor = isMixed ? there.Vapor : bulk, liquid = isMixed ? there.Liquid : bulk;
        Assert.Equal(bulk.Temperature, content.Temperature, 1e-7);
        Assert.Equal(bulk.Pressure, content.Pressure, 1e-6 * bulk.Pressure);
        Assert.Equal(isMixed ? bulk.VaporFraction : 1, content.VaporFraction, 1e-7);
        Assert.Equal(isMixed ? there.LiquidVolumeFraction : 0, content.LiquidVolumeFraction, 1e-7);
        Assert.Equal(vapor.Density, content.VaporDensity, 1e-6 * vapor.Density);
        Assert.Equal(vapor.Enthalpy, content.VaporEnthalpy, 1.0);
        Assert.Equal(liquid.Enthalpy, content.LiquidEnthalpy, 1.0);
        Assert.Equal(bulk.Density * Volume, content.Mass, 1e-9);
        Assert.Equal(isMixed ? content.Mass * (1 - bulk.VaporFraction) : 0, content.LiquidMass, 1e-6);
        Assert.Equal(isMixed, content.LiquidMargin > 0);
        VesselPoint point = content.ToVesselPoint();
        Assert.Equal(bulk.Density, point.Bulk.Density, 1e-6 * bulk.Density);
        Assert.Equal(bulk.Temperature, point.Bulk.Temperature, 1e-6);
    }
}
