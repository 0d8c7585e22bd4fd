using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

public class SetupComparisonTests
{
    [Fact]
    public void A_larger_machine_and_wider_hoses_are_faster_and_stand_first()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 30) with { Hoses = Jobs.Hoses(20, 4.7) };
        SetupComparison comparison = SetupComparison.Run(job);

        Assert.True(comparison.Outcomes.Single(outcome => outcome.Name == "half-inch hoses").Saved.Seconds > 0);
        Assert.DoesNotContain(comparison.Outcomes, outcome => outcome.Name is "quarter-inch hoses" or "valve cores removed" or "with push-pull");
        double[] times = [.. comparison.Outcomes.Where(outcome => outcome.Plan.IsLevelReached).Select(outcome => outcome.Plan.TotalDuration.Seconds)];
        Assert.Equal(times.OrderBy(time => time), times);
    }

    /// <summary>The moment to stop a pull is found to 10 s, either way.</summary>
    private const double SearchStep = 10;

    [Fact]
    public void Own_setups_are_measured_against_the_job_as_it_is()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20);
        SetupComparison comparison = SetupComparison.Run(job, [new Setup("the same", job), new Setup("longer hold", job with { Times = new JobTimes { Hold = Duration.FromMinutes(20) } })]);
        Assert.Equal(0, comparison.Outcomes.Single(outcome => outcome.Name == "the same").Saved.Seconds);
        Assert.InRange(comparison.Outcomes.Single(outcome => outcome.Name == "longer hold").Saved.Seconds, double.NegativeInfinity, -600 + SearchStep);
    }

    [Fact]
    public void Removing_cores_takes_out_the_cores_only()
    {
        RecoveryJob job = Jobs.Chiller();
        Length bore = Length.FromMillimeters(8);
        Hose withCore = Jobs.Hose() with { Fittings = [Fitting.CoreDepressor(), Fitting.BallValve(bore)] };
        Setup open = Setup.Variations(job with { Hoses = job.Hoses with { VaporSide = [withCore] } }).Single(setup => setup.Name == "valve cores removed");
        Assert.Equal("ball valve", Assert.Single(open.Job.Hoses.VaporSide[0].Fittings).Name);
    }
}
