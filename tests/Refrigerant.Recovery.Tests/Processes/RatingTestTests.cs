using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

public class RatingTestTests
{
    private static readonly Fluid R22 = Fluid.Get("R-22");

    // Invented ratings of the size that certified lists show.
    [Fact]
    public void All_three_ratings_come_back_within_half_a_percent()
    {
        RatingFit fit = RatingTest.Fit(new MachineRatings
        {
            Fluid = R22,
            VaporRate = MassFlow.FromKilogramsPerMinute(0.25),
            FinalVacuum = Pressure.FromKilopascals(34),
            PushPullRate = MassFlow.FromKilogramsPerMinute(6.4),
        });
        Assert.True(fit.IsMet);
        Assert.Equal(RatingKind.VaporRate, fit.UsedForDisplacement);
        Assert.Equal(3, fit.Deviations.Count);
        foreach (RatingDeviation deviation in fit.Deviations)
        {
            Assert.True(deviation.IsFitted, deviation.Rating.ToString());
            Assert.True(Math.Abs(deviation.Relative.Percent) <= 0.5, $"{deviation.Rating} {deviation.Relative}");
            double published = deviation.Rating switch { RatingKind.VaporRate => 0.25 / 60, RatingKind.PushPullRate => 6.4 / 60, _ => 34e3 };
            Assert.Equal(published, deviation.Published, 1e-9 * published);
            Assert.Equal(deviation.Published * (1 + deviation.Relative.DecimalFractions), deviation.Simulated, 1e-9 * published);
        }
    }

    /// <summary>No condensation brings a machine of this vapor rate to as fast a push-pull through quarter-inch hoses.</summary>
    [Fact]
    public void A_rating_that_is_missed_by_more_than_a_tenth_is_not_met()
    {
        RatingFit fit = RatingTest.Fit(new MachineRatings
        {
            Fluid = R22,
            VaporRate = MassFlow.FromKilogramsPerMinute(0.25),
            FinalVacuum = Pressure.FromKilopascals(34),
            PushPullRate = MassFlow.FromKilogramsPerMinute(8),
        });
        Assert.False(fit.IsMet);
        RatingDeviation missed = Assert.Single(fit.Deviations, deviation => !deviation.IsFitted);
        Assert.InRange(missed.Relative.Percent, -30, -10);
    }

    [Theory]
    [InlineData(VaporRateBasis.VaporChamber, 24)]
    [InlineData(VaporRateBasis.VaporChamber, 40)]
    [InlineData(VaporRateBasis.SteadyAtSaturation, 24)]
    [InlineData(VaporRateBasis.AverageOfAppliance, 24)]
    public void Every_basis_can_be_fitted(VaporRateBasis basis, double celsius)
    {
        RatingFit fit = RatingTest.Fit(new MachineRatings
        {
            Fluid = R22,
            Temperature = Temperature.FromDegreesCelsius(celsius),
            VaporRate = MassFlow.FromKilogramsPerMinute(0.5),
            VaporBasis = basis,
            FinalVacuum = Pressure.FromKilopascals(50),
            RatingAppliance = Setups.Appliance("R-22", 10, 30, 24, 200),
            Apparatus = RatingApparatus.LargeHoses,
        });
        Assert.True(fit.IsMet, fit.Deviations[0].Relative.ToString());
    }

    /// <summary>The faster the push-pull, the less condenses: between the rates of most and least condensation each is found again, beyond them the nearer bound stands.</summary>
    [Theory]
    [InlineData(-0.3)]
    [InlineData(0.2)]
    [InlineData(0.8)]
    [InlineData(1.3)]
    public void Condensation_is_found_from_the_push_pull_rate(double share)
    {
        var ratings = new MachineRatings { Fluid = R22, VaporRate = MassFlow.FromKilogramsPerMinute(0.25) };
        RecoveryMachine machine = RatingTest.Fit(ratings).Machine;
        double slowest = new RatingBench(ratings).PushPullRate(machine with { CondensingCoefficient = 1e4 }), fastest = new RatingBench(ratings).PushPullRate(machine with { CondensingCoefficient = 1 });
        Assert.True(fastest > 1.01 * slowest);
        RatingFit fit = RatingTest.Fit(ratings with { PushPullRate = MassFlow.FromKilogramsPerSecond(slowest + (share * (fastest - slowest))) });
        RatingDeviation push = fit.Deviations[1];
        bool isBetween = share is > 0 and < 1;
        Assert.Equal((RatingKind.PushPullRate, isBetween), (push.Rating, push.IsFitted));
        double coefficient = fit.Machine.CondensingCoefficient!.Value;
        if (isBetween)
        {
            Assert.InRange(Math.Abs(push.Relative.DecimalFractions), 0, 2.1e-4);
            Assert.InRange(coefficient, 1.001, 9999);
        }
        else
        {
            Assert.Equal(share < 0 ? 1e4 : 1, coefficient);
        }
    }

    [Fact]
    public void A_push_pull_rate_alone_gives_the_displacement()
    {
        RatingFit fit = RatingTest.Fit(new MachineRatings { Fluid = R22, PushPullRate = MassFlow.FromKilogramsPerMinute(6) });
        Assert.True(fit.IsMet);
        Assert.Equal(RatingKind.PushPullRate, fit.UsedForDisplacement);
    }

    [Fact]
    public void A_known_machine_is_found_again()
    {
        RecoveryMachine known = Setups.Machine(0.3) with { ClearanceRatio = 0.03 };
        var probe = new MachineRatings { Fluid = R22, VaporRate = MassFlow.FromKilogramsPerMinute(1), FinalVacuum = Pressure.FromKilopascals(30) };
        var bench = new RatingBench(probe);
        double vacuum = bench.FinalVacuum(known);
        double rate = new RatingBench(probe with { FinalVacuum = Pressure.FromPascals(vacuum) }).VaporRate(known);
        RatingFit fit = RatingTest.Fit(probe with { VaporRate = MassFlow.FromKilogramsPerSecond(rate), FinalVacuum = Pressure.FromPascals(vacuum) });
        Assert.Equal(0.3, fit.Machine.Displacement.LitersPerSecond, 0.003);
        Assert.Equal(0.03, fit.Machine.ClearanceRatio, 0.0005);
    }

    [Fact]
    public void Ratings_that_no_machine_can_meet_are_said_to_be_so()
    {
        RatingFit fit = RatingTest.Fit(new MachineRatings { Fluid = R22, VaporRate = MassFlow.FromKilogramsPerMinute(500) });
        Assert.False(fit.IsMet);
        Assert.NotEmpty(fit.Findings);
    }

    [Fact]
    public void Ratings_that_do_not_suffice_are_refused()
    {
        Assert.Throws<ArgumentException>(() => RatingTest.Fit(new MachineRatings { Fluid = R22, FinalVacuum = Pressure.FromKilopascals(34) }));
        Assert.Throws<ArgumentException>(() => RatingTest.Fit(new MachineRatings
        {
            Fluid = R22,
            VaporRate = MassFlow.FromKilogramsPerMinute(0.5),
            VaporBasis = VaporRateBasis.AverageOfAppliance,
        }));
        Assert.Throws<ArgumentNullException>(() => RatingTest.Fit(null!));
    }
}
