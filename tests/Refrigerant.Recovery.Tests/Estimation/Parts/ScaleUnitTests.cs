using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>
/// A first weight that is 2.2 times the told one: a scale in pounds, or a cylinder with more in it. What the scale gains tells which, and until it does the cylinder counts as the heavier one.
/// </summary>
public class ScaleUnitTests
{
    private const double Pounds = 2.20462;
    private const double Flow = 0.02;
    private static readonly Workbench Bench = new();

    [Theory]
    [InlineData(Pounds, Pounds, true)]
    [InlineData(Pounds, 1, false)]
    [InlineData(1 / Pounds, 1 / Pounds, true)]
    [InlineData(1 / Pounds, 1, false)]
    public void The_gain_tells_the_unit(double first, double gains, bool isOther)
    {
        ScaleTracker scale = Begun(first);
        double delivered = double.NaN;
        for (int t = 1; t <= 40; t++)
        {
            scale.Add(Shown(first, gains, t), t, Flow, 0.05, -1, out delivered);
            if (t * Flow < 0.49)
            {
                Assert.True(scale.IsOtherUnit);
                Assert.Equal(Shown(first, gains, t), scale.Doubtful, 1e-9);
            }
        }

        Assert.Equal(isOther, scale.IsOtherUnit);
        Assert.Equal(0, scale.Doubtful);
        Assert.Equal(isOther, double.IsNaN(delivered));
        if (!isOther)
        {
            // It is the cylinder then that is not the told one, and all that came counts.
            Assert.True(scale.IsUnlikeTold);
            Assert.Equal(40 * Flow, delivered, 1e-9);
            Assert.Equal(Shown(first, gains, 40), scale.Gross, 1e-9);
        }
    }

    /// <summary>29.8 kg on the scale where 13.5 kg were told and 60 L of R-134a take more: far from its limit if it is pounds, near it if not.</summary>
    [Fact]
    public void Until_then_the_limit_is_watched_as_if_it_were_the_heavier_cylinder()
    {
        double limit = Begun(1).LimitOnScale;
        Told told = Workbench.Typical with { CylinderContent = ((limit + 0.5) / Pounds) - 12.5 };
        var estimator = new RecoveryEstimator(told.Job(), told.Instruments(), told.Options());
        double gross = (told.CylinderTare + told.CylinderContent) * Pounds;
        for (int t = 0; t <= 2; t++)
        {
            estimator.Add(new RawReading(t) { SuctionGaugePressure = 4.5e5, GrossWeight = gross, AirTemperature = 295, IsMachineRunning = true, IsValveOpen = true });
        }

        estimator.Read(out RawEstimate estimate);
        Assert.Equal(1, estimate.CylinderLimitFirst);
        Assert.True((estimate.NotUsed & UnusedReadings.WeightInconsistent) != 0);
    }

    /// <summary>Numbers beyond the job's cylinders are all the same: one that is not on the list.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(int.MaxValue)]
    public void Any_number_beyond_the_list_is_a_cylinder_that_is_not_on_it(int number)
    {
        ScaleTracker scale = Begun(1);
        for (int t = 1; t <= 20; t++)
        {
            scale.Add(Shown(1, 1, t) + (t > 10 ? 3 : 0), t, Flow, 0.05, t > 5 ? number : -1, out _);
        }

        Assert.True(scale.IsUnknown);
        Assert.Equal(double.PositiveInfinity, scale.LimitOnScale);
    }

    /// <summary>What the machine can draw at the pressure at its inlet is no jump, though nothing was expected: it runs again. Beyond it is one.</summary>
    [Theory]
    [InlineData(1.1, true)]
    [InlineData(2, false)]
    public void What_can_be_drawn_in_a_minute_is_no_jump(double gained, bool isUsed)
    {
        ScaleTracker scale = Begun(1);
        Assert.Equal(isUsed, scale.Add(13.5 + gained, 60, 0, 0.01, -1, out double delivered));
        Assert.Equal(gained, delivered, 1e-9);
    }

    private static ScaleTracker Begun(double factor)
    {
        var scale = new ScaleTracker(Bench.Job, Workbench.Typical.Instruments());
        scale.Add(13.5 * factor, 0, Flow, 0.05, -1, out _);
        return scale;
    }

    private static double Shown(double first, double gains, int t) => (13.5 * first) + (gains * Flow * t);
}
