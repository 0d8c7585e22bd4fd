using System;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>What Diagnosis makes of events of the scale, of a valve that is opened, a hose that frees and a machine that two kinds of evidence speak against.</summary>
public class DiagnosisEventTests
{
    private const int At = 240;
    private static readonly Workbench Bench = DiagnosisRun.Bench;

    /// <summary>The cylinder's 13.5 kg become what it holds, more by a hand's weight, or another cylinder's: each is said for two minutes, and no other.</summary>
    [Theory]
    [InlineData(1.0, JobCondition.TareChanged)]
    [InlineData(13.9, JobCondition.ScaleDisturbed)]
    [InlineData(10.5, JobCondition.CylinderChanged)]
    public void An_event_of_the_scale_is_said_for_two_minutes(double gross, JobCondition expected)
    {
        var run = new DiagnosisRun();
        double said = double.NaN;
        for (int t = 1; t <= 140; t++)
        {
            Weigh(run, t < 10 ? 13.5 : gross);
            said = double.IsNaN(said) && run.Diagnosis.Stands(expected) ? t : said;
            bool stands = t >= 12 && t <= 132;
            foreach (JobCondition each in new[] { JobCondition.TareChanged, JobCondition.ScaleDisturbed, JobCondition.CylinderChanged })
            {
                Assert.Equal(stands && each == expected, run.Diagnosis.Stands(each));
            }
        }

        Assert.Equal(12, said);
    }

    /// <summary>While liquid moves it is said; when it ends, how cold what is left has become is known to 3 K, and the metal to 1 K.</summary>
    [Fact]
    public void Liquid_that_moves_is_said_as_long_as_it_does()
    {
        var run = new DiagnosisRun();
        bool was = false;
        int ended = 0;
        for (int t = 1; t <= 60; t++)
        {
            double before = run.Filter.Wet.Variance(StateIndex.WetTemperature);
            Weigh(run, 13.5 + (0.2 * Math.Min(20, Math.Max(0, t - 5))));
            Assert.Equal(run.Scale.IsLiquid, run.Diagnosis.Stands(JobCondition.LiquidTransfer));
            if (was && !run.Scale.IsLiquid)
            {
                ended++;
                Assert.InRange(run.Filter.Wet.Variance(StateIndex.WetTemperature) - before, 1.5, 9.5);
            }
            else
            {
                Assert.True(run.Filter.Wet.Variance(StateIndex.WetTemperature) < before + 1);
            }

            was = run.Scale.IsLiquid;
        }

        Assert.Equal(1, ended);
    }

    /// <summary>The gauge is back where it shows six tenths of what the appliance should have.</summary>
    [Theory]
    [InlineData(0.585, true)]
    [InlineData(0.615, false)]
    public void A_valve_is_open_where_the_gauge_is_back(double share, bool stands)
    {
        DiagnosisRun run = Shut(out double inside);
        run.Go(1, block => block with { Gauge = (share * inside) - 1e5 });
        Assert.Equal(stands, run.Diagnosis.Stands(JobCondition.ValveClosed));
        Assert.Equal(stands, run.Filter.IsSuspended);

        // It has just risen, and is not believed yet.
        Assert.Equal(UnusedReadings.GaugeShutOff, run.Diagnosis.NotUsed);
    }

    /// <summary>Then it is believed where it rises by no more than a hundredth from one block to the next, and after twenty seconds in any case.</summary>
    [Theory]
    [InlineData(0.0085, 1)]
    [InlineData(0.0115, 21)]
    public void Opened_the_gauge_is_believed_when_it_rises_no_more(double rises, int from)
    {
        DiagnosisRun run = Shut(out double inside);
        double shown = 0.62 * inside;
        run.Go(1, block => block with { Gauge = shown - 1e5 });
        Assert.False(run.Diagnosis.Stands(JobCondition.ValveClosed));
        for (int t = 1; t <= 24; t++)
        {
            // A share of what it shows then.
            shown /= 1 - rises;
            run.Go(1, block => block with { Gauge = shown - 1e5 });
            Assert.Equal(t < from, (run.Diagnosis.NotUsed & UnusedReadings.GaugeShutOff) != 0);
        }
    }

    /// <summary>A blocked hose is free where half of what it took of the pressure is back for five blocks.</summary>
    [Theory]
    [InlineData(0.97, false)]
    [InlineData(1.03, true)]
    public void A_hose_is_free_where_half_of_its_drop_is_back(double times, bool isFree)
    {
        var run = new DiagnosisRun();
        run.Go(At);
        run.Truth.Hose = 30;
        while (!run.Diagnosis.Stands(JobCondition.HoseBlocked))
        {
            run.Go(1);
        }

        double low = run.Truth.Output.SuctionPressure;
        double share = low / run.Diagnosis.Pressure;
        Assert.InRange(share, 0.2, 0.9);
        run.Go(10, block => block with { Gauge = low - 1e5 });
        double shown = times * 0.5 * (1 + share) * run.Diagnosis.Pressure;
        Assert.True(shown > 1.06 * low);
        for (int k = 1; k <= 8; k++)
        {
            run.Go(1, block => block with { Gauge = shown - 1e5 });
            Assert.Equal(!isFree || k < 5, run.Diagnosis.Stands(JobCondition.HoseBlocked));
        }
    }

    /// <summary>It must have risen above the lowest since by 5 %, and for five blocks in a row.</summary>
    [Fact]
    public void A_hose_frees_in_five_blocks_in_a_row()
    {
        var run = new DiagnosisRun();
        run.Go(At);
        run.Truth.Hose = 30;
        while (!run.Diagnosis.Stands(JobCondition.HoseBlocked))
        {
            run.Go(1);
        }

        double low = run.Truth.Output.SuctionPressure;
        double shown = run.Diagnosis.Pressure;
        run.Go(5, block => block with { Gauge = low - 1e5 });
        for (int k = 0; k < 12; k++)
        {
            // Four blocks up, one down; one that is not read counts for none.
            run.Go(1, block => block with { Gauge = (k % 5 == 4 ? low : shown) - 1e5 });
            Assert.True(run.Diagnosis.Stands(JobCondition.HoseBlocked));
        }

        run.Go(2, block => block with { Gauge = shown - 1e5 });
        run.Go(1, block => block with { Gauge = double.NaN });
        Assert.True(run.Diagnosis.Stands(JobCondition.HoseBlocked));
        run.Go(1, block => block with { Gauge = shown - 1e5 });
        Assert.False(run.Diagnosis.Stands(JobCondition.HoseBlocked));
        Assert.Equal(Bench.Prior.Mean[StateIndex.Hose], run.Filter.Wet.X[StateIndex.Hose], 0.3);
    }

    /// <summary>What its rise brought forth is none, nor is what was thought likely before while that was little: where liquid was left behind it, liquid is left.</summary>
    [Fact]
    public void Behind_a_hose_that_frees_liquid_is_left_where_it_was()
    {
        var run = new DiagnosisRun();
        while (run.Truth.Output.LiquidMass > 0.4 * 9)
        {
            run.Go(1);
        }

        run.Truth.Hose = 30;
        while (!run.Diagnosis.Stands(JobCondition.HoseBlocked))
        {
            run.Go(1);
        }

        double low = run.Truth.Output.SuctionPressure;
        double shown = run.Diagnosis.Pressure;
        run.Filter.EndLiquid();
        run.Go(6, block => block with { Gauge = low - 1e5 });
        Assert.InRange(run.Filter.VaporOnly, 1e-4, 0.19);
        run.Go(5, block => block with { Gauge = shown - 1e5 });
        Assert.False(run.Diagnosis.Stands(JobCondition.HoseBlocked));
        Assert.Equal(0, run.Filter.VaporOnly);
    }

    /// <summary>Readings forty seconds apart while the machine stands: three of them, two minutes and half a kilogram after something else was last found.</summary>
    [Theory]
    [InlineData(false, 3)]
    [InlineData(true, 5)]
    public void A_standing_machine_is_looked_for_anew_after_an_event(bool isDisturbed, int named)
    {
        var run = new DiagnosisRun();
        run.Go(At - 1);
        EstimatorBlock last = run.Truth.Next();
        run.Step(last);
        for (int k = 1; k <= 6; k++)
        {
            EstimatorBlock block = last with { Time = last.Time + (40 * k), Duration = 40 };
            for (int i = 0; i < (isDisturbed && k == 2 ? 20 : 0); i++)
            {
                run.Scale.Add(i < 10 ? 13.5 : 14, block.Time - 20 + i, 0, 0.01, -1, out _);
            }

            run.Step(block);
            Assert.Equal(k >= named, run.Diagnosis.Stands(JobCondition.MachineUnderperforming));
        }
    }

    /// <summary>What it draws at the pressure at its inlet confirms a weak machine from two standard deviations on, and names one alone from 2.7, or from 1.8 where that pressure has risen.</summary>
    [Theory]
    [InlineData(0.45, 0)]
    [InlineData(0.55, 0)]
    [InlineData(0.65, 0)]
    [InlineData(0.70, 0)]
    [InlineData(0.55, -0.09)]
    [InlineData(0.62, -0.09)]
    [InlineData(0.68, -0.09)]
    public void A_weak_machine_is_named_by_both_or_by_plain_evidence(double share, double level)
    {
        var run = new DiagnosisRun();
        var watch = new MachineWatch(Bench.Machine, Bench.Prior);
        double before = 0;
        double risen = 0;
        while (!run.Diagnosis.Stands(JobCondition.MachineUnderperforming) && run.Truth.Time < 500)
        {
            (before, risen) = (watch.Weakness, watch.WeaknessRisen);
            run.Truth.Machine = run.Truth.Time >= 150 ? share : 1;
            EstimatorBlock block = run.Truth.Next();
            block.Gauge *= run.Truth.Time > 150 ? 1 + level : 1;
            watch.Update(in block, 1.2 * Bench.Prior.Level);
            run.Step(block);
            Assert.False(run.Diagnosis.Stands(JobCondition.HoseBlocked));
        }

        Assert.True(run.Diagnosis.Stands(JobCondition.MachineUnderperforming));
        Assert.InRange(before, 0, 2.7);
        Assert.InRange(risen, 0, 1.8);
        Assert.True(watch.Weakness >= 2 || watch.WeaknessRisen > 1.8);
    }

    private static DiagnosisRun Shut(out double inside)
    {
        var run = new DiagnosisRun();
        run.Go(At);
        run.Truth.IsShut = true;
        run.Go(30);
        Assert.True(run.Diagnosis.Stands(JobCondition.ValveClosed));
        run.Truth.IsShut = false;
        SigmaPoint mean = run.Filter.Best.Mean();
        Bench.Model.Evaluate(in mean.State, in mean.Parameters, new ReducedInputs(295, false, AssumedPhase.LiquidPresent), out ReducedOutput output);
        inside = output.Pressure;
        return run;
    }

    private static void Weigh(DiagnosisRun run, double gross)
    {
        EstimatorBlock block = run.Truth.Next();
        run.Scale.Add(gross, block.Time, 0, 0.01, -1, out _);
        run.Step(block);
    }
}
