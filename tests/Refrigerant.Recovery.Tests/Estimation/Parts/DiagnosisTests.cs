using System;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>Faults of a job that otherwise goes as the model has it, by ParityRelations and Diagnosis: each by its own signs, in the time that the documentation gives, and no other.</summary>
public class DiagnosisTests
{
    private const int At = 240;
    private static readonly Workbench Bench = DiagnosisRun.Bench;

    [Fact]
    public void Nothing_is_named_where_nothing_is_wrong()
    {
        var run = new DiagnosisRun();
        run.Go(500);
        Assert.Empty(run.Named);
        Assert.False(run.Diagnosis.IsChanged);
        Assert.Equal(UnusedReadings.None, run.Diagnosis.NotUsed);
        Assert.Equal(run.Truth.Output.Flow, run.Diagnosis.ExpectedFlow, 0.05 * run.Truth.Output.Flow);
        Assert.Equal(run.Truth.Output.Pressure, run.Diagnosis.Pressure, 0.03 * run.Truth.Output.Pressure);
        Assert.Equal(run.Truth.Output.SuctionPressure, run.Diagnosis.Suction, 0.03 * run.Truth.Output.SuctionPressure);
        Assert.Equal(run.Truth.State.Temperature, run.Diagnosis.Temperature, 1);
        Assert.Equal(run.Truth.Left, run.Diagnosis.Left, 0.1 * 9);
        Assert.Equal(0, run.Diagnosis.Unseen);
        Assert.False(run.Diagnosis.IsStalled);
    }

    /// <summary>A machine that draws less than three quarters, not one that draws 85 %.</summary>
    [Theory]
    [InlineData(0.5, true)]
    [InlineData(0.6, true)]
    [InlineData(0.88, false)]
    public void A_weak_machine_is_named_within_four_minutes(double share, bool isNamed)
    {
        var run = new DiagnosisRun();
        run.Go(At);
        run.Truth.Machine = share;
        run.Go(240);
        Assert.Equal(isNamed ? [JobCondition.MachineUnderperforming] : [], run.Named);
        Assert.Equal(isNamed, run.Diagnosis.IsChanged);
        if (isNamed)
        {
            Assert.InRange(run.When(JobCondition.MachineUnderperforming), At + 10, At + 100);
            run.Go(60);

            // What it draws by now is found; it is looked for anew when the machine has stood.
            Assert.Equal(share * 5e-4 * Bench.Job.Machine.VolumetricEfficiency, Math.Exp(run.Filter.Best.X[StateIndex.Displacement]), 0.08 * 5e-4);
            Assert.True(run.Diagnosis.Stands(JobCondition.MachineUnderperforming));
            run.Truth.IsDrawing = false;
            run.Go(2);
            Assert.False(run.Diagnosis.Stands(JobCondition.MachineUnderperforming));
        }
    }

    [Fact]
    public void A_shut_valve_is_named_within_twenty_seconds_and_said_no_more_when_it_is_opened()
    {
        var run = new DiagnosisRun();
        run.Go(At);
        run.Truth.IsShut = true;
        run.Go(60);
        Assert.Equal([JobCondition.ValveClosed], run.Named);
        Assert.InRange(run.When(JobCondition.ValveClosed), At + 3, At + 20);
        Assert.Equal(UnusedReadings.GaugeShutOff, run.Diagnosis.NotUsed & UnusedReadings.GaugeShutOff);
        Assert.True(run.Filter.IsSuspended);
        Assert.Equal(0, run.Filter.VaporOnly, 0.01);
        run.Truth.IsShut = false;
        run.Go(20);
        Assert.False(run.Diagnosis.Stands(JobCondition.ValveClosed));
        Assert.Equal(UnusedReadings.None, run.Diagnosis.NotUsed);
        run.Go(60);
        Assert.Equal([JobCondition.ValveClosed], run.Named);
        Assert.Equal(run.Truth.Left, run.Diagnosis.Left, 0.1 * 9);

        // A machine that is switched off behind a shut valve: nothing is known of the valve any more.
        run.Truth.IsShut = true;
        run.Go(40);
        Assert.True(run.Diagnosis.Stands(JobCondition.ValveClosed));
        run.Truth.IsDrawing = false;
        run.Go(1);
        Assert.False(run.Diagnosis.Stands(JobCondition.ValveClosed));
    }

    [Theory]
    [InlineData(30)]
    [InlineData(100)]
    public void A_kinked_hose_is_named_and_said_no_more_when_it_lets_through(double times)
    {
        var run = new DiagnosisRun();
        run.Go(At);
        run.Truth.Hose = times;
        run.Go(60);
        Assert.Equal([JobCondition.HoseBlocked], run.Named);
        Assert.InRange(run.When(JobCondition.HoseBlocked), At + 3, At + 40);
        Assert.True(run.Diagnosis.IsChanged);
        Assert.Equal(StateIndex.Hose, run.Filter.Wet.Released);

        // The hose is let go: its resistance is found.
        run.Go(30);
        Assert.Equal(Math.Log(times), run.Filter.Best.X[StateIndex.Hose] - Bench.Prior.Mean[StateIndex.Hose], 0.5);
        run.Truth.Hose = 1;
        run.Go(20);
        Assert.False(run.Diagnosis.Stands(JobCondition.HoseBlocked));
        Assert.Equal(-1, run.Filter.Wet.Released);
        run.Go(60);
        Assert.Equal([JobCondition.HoseBlocked], run.Named);
        Assert.True(run.Filter.VaporOnly < 0.5);
    }

    /// <summary>Twice its resistance takes next to nothing of the flow; thirty times do, as long as liquid is left.</summary>
    [Theory]
    [InlineData(2, 0.5, false)]
    [InlineData(30, 0.13, true)]
    public void A_hose_is_named_where_it_takes_of_the_flow_and_liquid_is_left(double times, double left, bool isNamed)
    {
        var run = new DiagnosisRun();
        while (run.Truth.Output.LiquidMass > left * 9)
        {
            run.Go(1);
        }

        run.Truth.Hose = times;
        run.Go(25);
        Assert.Equal(isNamed, run.Named.Contains(JobCondition.HoseBlocked));
    }

    /// <summary>It is held against what was told.</summary>
    [Fact]
    public void A_machine_that_is_weak_from_the_start_is_named()
    {
        var run = new DiagnosisRun();
        run.Truth.Machine = 0.5;
        run.Go(300);
        Assert.Equal([JobCondition.MachineUnderperforming], run.Named);
        Assert.InRange(run.When(JobCondition.MachineUnderperforming), 40, 200);
    }

    [Fact]
    public void In_the_first_half_minute_nothing_is_compared()
    {
        var run = new DiagnosisRun();
        run.Go(10);
        run.Truth.Pull = 0.2;
        run.Go(19);
        Assert.Empty(run.Named);
    }

    /// <summary>Where a fault was named nothing is born for a minute; then it is made up for.</summary>
    [Fact]
    public void While_a_fault_is_new_nothing_is_born()
    {
        var run = new DiagnosisRun();
        run.Go(At);
        run.Truth.Machine = 0.5;
        while (!run.Diagnosis.Stands(JobCondition.MachineUnderperforming))
        {
            run.Go(1);
        }

        double named = run.Truth.Time;
        run.Go(58);
        Assert.True(run.Filter.IsSuspended);
        run.Go(4);
        Assert.False(run.Filter.IsSuspended);
        Assert.Equal(named + 62, run.Truth.Time);
    }

    /// <summary>A hose that pulls 150 g on the scale, not one that pulls 40 g; for two minutes.</summary>
    [Theory]
    [InlineData(0.15)]
    [InlineData(0.04)]
    public void A_hose_that_pulls_on_the_scale_is_named_within_thirty_seconds(double pull)
    {
        bool isNamed = pull > 0.1;
        var run = new DiagnosisRun();
        run.Go(At);
        run.Truth.Pull = pull;
        run.Go(60);
        Assert.Equal(isNamed ? [JobCondition.ScaleDisturbed] : [], run.Named);
        if (isNamed)
        {
            double when = run.When(JobCondition.ScaleDisturbed);
            Assert.InRange(when, At + 3, At + 30);
            run.Go((int)(when + 119 - run.Truth.Time));
            Assert.True(run.Diagnosis.Stands(JobCondition.ScaleDisturbed));
            run.Go(3);
            Assert.False(run.Diagnosis.Stands(JobCondition.ScaleDisturbed));
            Assert.True(run.Filter.Best.X[StateIndex.ScaleOffset] > 0.03);
            Assert.Equal(run.Truth.State.Delivered, run.Filter.Best.X[StateIndex.Delivered], 0.12);
        }
    }

    /// <summary>A gauge that falls by a third while the scale goes on as before.</summary>
    [Fact]
    public void A_gauge_that_is_off_alone_is_named()
    {
        var run = new DiagnosisRun();
        run.Go(At);
        run.Truth.GaugeOff = -1.2e5;
        run.Go(60);
        Assert.Equal([JobCondition.GaugeInconsistent], run.Named);
        Assert.InRange(run.When(JobCondition.GaugeInconsistent), At + 5, At + 50);
        Assert.InRange(run.Filter.Best.X[StateIndex.GaugeBias] + run.Filter.Best.X[StateIndex.GaugeDrift], -1.4e5, -2e4);
    }

    /// <summary>A scale that shows the same while it flows: believed for a minute, then left out, and what was made of that minute is taken back.</summary>
    [Fact]
    public void A_scale_that_stands_is_named_and_what_was_made_of_it_taken_back()
    {
        var run = new DiagnosisRun();
        run.Go(At);
        double stands = run.Truth.State.Delivered;
        run.Go(70, block => block with { Delivered = stands });
        Assert.True(run.Diagnosis.Stands(JobCondition.ScaleDisturbed));
        Assert.Equal(UnusedReadings.WeightStuck, run.Diagnosis.NotUsed & UnusedReadings.WeightStuck);
        Assert.False(run.Diagnosis.Stands(JobCondition.MachineUnderperforming));
        Assert.Equal(run.Truth.State.Delivered, run.Filter.Wet.X[StateIndex.Delivered], 0.2);
        Assert.InRange(run.Diagnosis.Unseen, 0.3, 1);
        run.Go(20);
        Assert.False(run.Diagnosis.Stands(JobCondition.ScaleDisturbed));
        Assert.Equal(0, run.Diagnosis.Unseen);
    }

    /// <summary>Both stand: it is the machine.</summary>
    [Fact]
    public void A_machine_that_stands_is_named_and_not_the_scale()
    {
        var run = new DiagnosisRun();
        run.Go(At);
        double delivered = run.Truth.State.Delivered;
        run.Truth.IsDrawing = false;
        run.Go(200, block => block with { IsDrawing = true });
        Assert.Contains(JobCondition.MachineUnderperforming, run.Named);
        Assert.True(run.Diagnosis.Stands(JobCondition.MachineUnderperforming));
        Assert.Equal(delivered, run.Filter.Wet.X[StateIndex.Delivered], 0.3);
    }

    /// <summary>Blocks that take longer than half a minute tell nothing of what happened meanwhile.</summary>
    [Fact]
    public void Long_blocks_name_no_step()
    {
        var run = new DiagnosisRun();
        run.Go(At);
        run.Truth.Pull = 0.3;
        for (int i = 0; i < 20; i++)
        {
            run.Step(run.Truth.Next(40));
        }

        Assert.Empty(run.Named);
    }
}
