using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Inputs that are uncertain: each moves what it stands for, as far as it may, and what it does to time and remainder has the sign that it must have.</summary>
public class ToleranceTests
{
    private const int Many = 400;

    private static readonly RecoveryJob Job = WithOil();

    private static readonly InputTolerances Off = new()
    {
        InternalVolume = Ratio.FromPercent(20),
        HeatExchange = Ratio.FromPercent(40),
        Charge = Ratio.FromPercent(8),
        Displacement = Ratio.FromPercent(15),
        Temperature = TemperatureDelta.FromKelvins(3),
        Gauge = Pressure.FromKilopascals(2),
        Scale = Mass.FromKilograms(0.5),
        Oil = Ratio.FromPercent(25),
        Metal = Ratio.FromPercent(35),
    };

    /// <summary>What each input is called, its half-width, and how far a sampled job is from the job as it is.</summary>
    private static readonly Dictionary<UncertainInput, (double HalfWidth, Func<RecoveryJob, double> Of)> Inputs = new()
    {
        [UncertainInput.InternalVolume] = (0.2, job => (job.Appliance.InternalVolume / Job.Appliance.InternalVolume) - 1),
        [UncertainInput.HeatExchange] = (0.4, job => (job.Appliance.OuterConductance / Job.Appliance.OuterConductance) - 1),
        [UncertainInput.Charge] = (0.08, job => (job.Appliance.Charge / Job.Appliance.Charge) - 1),
        [UncertainInput.Displacement] = (0.15, job => (job.Machine.Displacement / Job.Machine.Displacement) - 1),
        [UncertainInput.Temperature] = (3, job => job.Appliance.Temperature.Kelvins - Job.Appliance.Temperature.Kelvins),
        [UncertainInput.Gauge] = (2000, job => job.GaugeError),
        [UncertainInput.Scale] = (0.5, job => job.ScaleError),
        [UncertainInput.Oil] = (0.25, job => (job.Appliance.Oil!.Mass / Job.Appliance.Oil!.Mass) - 1),
        [UncertainInput.Metal] = (0.35, job => (job.Appliance.MetalKilograms / Job.Appliance.MetalKilograms) - 1),
    };

    public static TheoryData<UncertainInput> All => [.. Enum.GetValues<UncertainInput>()];

    /// <summary>Uniform between its bounds: it comes near to both, its mean is zero and its mean square a third of the square of the half-width.</summary>
    [Theory]
    [MemberData(nameof(All))]
    public void An_input_is_spread_evenly_over_its_tolerance(UncertainInput input)
    {
        var sampler = new JobSampler(Job, Off, 7);
        (double half, Func<RecoveryJob, double> of) = Inputs[input];
        double[] offsets = [.. Enumerable.Range(0, Many).Select(i => of(sampler.Job(i)) / half)];
        Assert.All(offsets, offset => Assert.InRange(offset, -1 - 1e-9, 1 + 1e-9));
        Assert.True(offsets.Min() < -0.97 && offsets.Max() > 0.97);

        // 400 points of a Kronecker sequence leave a mean off by some hundredths.
        Assert.Equal(0.0, offsets.Average(), 0.06);
        Assert.Equal(1.0 / 3, offsets.Average(offset => offset * offset), 0.03);
    }

    /// <summary>No two inputs move together, or their influences could not be told apart.</summary>
    [Fact]
    public void Inputs_move_independently()
    {
        var sampler = new JobSampler(Job, Off, 7);
        RecoveryJob[] jobs = [.. Enumerable.Range(0, Many).Select(sampler.Job)];
        foreach (UncertainInput one in Inputs.Keys)
        {
            foreach (UncertainInput other in Inputs.Keys.Where(key => key > one))
            {
                Assert.InRange(3 * jobs.Average(job => Inputs[one].Of(job) / Inputs[one].HalfWidth * Inputs[other].Of(job) / Inputs[other].HalfWidth), -0.15, 0.15);
            }
        }
    }

    [Fact]
    public void What_is_not_there_is_not_uncertain()
    {
        Assert.Equal(Enum.GetValues<UncertainInput>().Order(), new JobSampler(Job, Off, 1).Inputs.Order());
        Assert.DoesNotContain(UncertainInput.Oil, new JobSampler(Jobs.Chiller(), Off, 1).Inputs);
        RecoveryJob bare = Jobs.Chiller();
        Assert.DoesNotContain(UncertainInput.Metal, new JobSampler(bare with { Appliance = bare.Appliance with { MetalMass = Mass.Zero } }, Off, 1).Inputs);
        Assert.DoesNotContain(UncertainInput.Scale, new JobSampler(Job, Off with { Scale = Mass.Zero }, 1).Inputs);
        Assert.Null(new JobSampler(Jobs.Chiller(), Off, 1).Job(3).Appliance.Oil);
    }

    /// <summary>Air and appliance are as warm as each other before and after; sections go with the whole.</summary>
    [Fact]
    public void What_belongs_together_moves_together()
    {
        Appliance whole = Job.Appliance with { Surroundings = Temperature.FromDegreesCelsius(25) };
        var sampler = new JobSampler(
            Job with
            {
                Appliance = whole with
                {
                    Sections =
                    [
                        new ApplianceSection { Name = "a", InternalVolume = whole.InternalVolume * 0.6, Charge = whole.Charge * 0.6 },
                        new ApplianceSection { Name = "b", InternalVolume = whole.InternalVolume * 0.4, Charge = whole.Charge * 0.4 },
                    ],
                },
            },
            Off,
            3);
        for (int i = 0; i < 20; i++)
        {
            Appliance sampled = sampler.Job(i).Appliance;
            Assert.Equal(7, sampled.Surroundings!.Value.DegreesCelsius - sampled.Temperature.DegreesCelsius, 1e-9);
            Assert.Equal(sampled.InternalVolume.Liters, sampled.Sections.Sum(section => section.InternalVolume.Liters), 1e-9);
            Assert.Equal(sampled.Charge.Kilograms, sampled.Sections.Sum(section => section.Charge.Kilograms), 1e-9);
            Assert.Equal(0.6, sampled.Sections[0].InternalVolume / sampled.InternalVolume, 1e-9);
        }
    }

    /// <summary>
    /// A larger machine is faster, more refrigerant takes longer, a larger volume keeps more at the same pressure; where a pull ends at the level itself it is
    /// missed with every gauge that reads low: every second.
    /// </summary>
    [Fact]
    public void Influences_have_the_sign_that_they_must_have()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20) with { PushPull = PushPullUse.Never };
        job = job with { Machine = job.Machine with { TakesLiquid = false }, Times = new JobTimes { Hold = Duration.Zero } };
        PlanUncertainty ranges = PlanUncertainty.Run(job, new UncertaintyOptions { Samples = 40, Tolerances = Off with { HeatExchange = Ratio.Zero, Metal = Ratio.Zero, Temperature = TemperatureDelta.Zero, Scale = Mass.Zero } });
        Assert.Equal(40, ranges.Samples);
        Assert.Equal(0, ranges.Impossible);
        Assert.True(Of(UncertainInput.Displacement).OnDuration < -0.6);
        Assert.True(Of(UncertainInput.Charge).OnDuration > 0.2);
        Assert.True(Of(UncertainInput.InternalVolume).OnRemaining > 0.6);
        double[] sizes = [.. ranges.Influences.Select(influence => Math.Abs(influence.OnDuration))];
        Assert.Equal(sizes.OrderDescending(), sizes);
        Assert.All(ranges.Influences, influence => Assert.InRange(influence.OnDuration, -1, 1));
        Assert.True(ranges.TotalDuration.Low < ranges.TotalDuration.Median && ranges.TotalDuration.Median < ranges.TotalDuration.High);
        Assert.True(ranges.Remaining.Low < ranges.Remaining.Best && ranges.Remaining.Best < ranges.Remaining.High);
        Assert.InRange(ranges.Recovered.High.Kilograms, 20, 20 * 1.08);
        Assert.InRange(ranges.LevelReached.DecimalFractions, 0.4, 0.6);

        InputInfluence Of(UncertainInput input) => ranges.Influences.Single(influence => influence.Input == input);
    }

    /// <summary>From the 5th to the 95th of a hundred: of a spread that one input makes alone, nine tenths of its width.</summary>
    [Fact]
    public void A_range_leaves_a_twentieth_out_at_either_end()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 60, cylinders: 1) with { Cylinders = [Jobs.Cylinder(30)] };
        var charge = new InputTolerances(
            Ratio.Zero, Ratio.Zero, Ratio.FromPercent(10), Ratio.Zero, Ratio.Zero, Ratio.Zero, TemperatureDelta.Zero, Pressure.Zero, Mass.Zero);
        PlanUncertainty ranges = PlanUncertainty.Run(job, new UncertaintyOptions { Samples = 60, Tolerances = charge });

        // The small cylinder takes the same of any charge, so what stays is spread by 12 kg.
        Assert.Equal(0.9 * 12, (ranges.Remaining.High - ranges.Remaining.Low).Kilograms, 0.4);
        Assert.Equal(0.5 * (ranges.Remaining.High + ranges.Remaining.Low).Kilograms, ranges.Remaining.Best.Kilograms, 0.2);
        Assert.Equal(0, ranges.LevelReached.DecimalFractions);
        Assert.Equal(0, (ranges.Recovered.High - ranges.Recovered.Low).Kilograms, 0.2);
    }

    private static RecoveryJob WithOil()
    {
        RecoveryJob job = Jobs.Chiller(kilograms: 20);
        return job with { Appliance = job.Appliance with { Oil = new ApplianceOil { Mass = Mass.FromKilograms(4), Kind = OilKind.PolyolEster } } };
    }
}
