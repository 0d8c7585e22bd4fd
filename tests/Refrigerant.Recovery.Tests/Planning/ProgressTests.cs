using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>A plan tells how far it is after each stage, and stops in the midst of one.</summary>
public class ProgressTests
{
    [Fact]
    public void Progress_is_told_after_each_stage_and_never_falls()
    {
        var told = new List<double>();
        RecoveryPlan plan = RecoveryPlanner.Plan(Jobs.Chiller(), StandardStrategy.Instance, CancellationToken.None, new Direct(told.Add));
        Assert.True(told.Count >= plan.Stages.Count, $"{told.Count} times in {plan.Stages.Count} stages");
        Assert.Equal(told.Order(), told);
        Assert.Equal(1, told[^1]);
        Assert.All(told, share => Assert.InRange(share, 0, 1));
    }

    /// <summary>The appliance's state is asked for by no step after the one at which it was cancelled: the stage is not simulated to its end.</summary>
    [Fact]
    public void A_stage_is_left_at_the_next_step()
    {
        using var source = new CancellationTokenSource();
        var strategy = new Cancelling(source);
        Assert.Throws<OperationCanceledException>(() => RecoveryPlanner.Plan(Jobs.Chiller(), strategy, source.Token));
        Assert.False(strategy.WasPreviewed);
    }

    /// <summary>Cancels before it has a long stage simulated.</summary>
    private sealed class Cancelling(CancellationTokenSource source) : IRecoveryStrategy
    {
        public bool WasPreviewed { get; private set; }

        public PlanStep? Next(PlanSituation situation)
        {
            source.Cancel();
            _ = situation.Preview(new PlanStep(StageKind.Hold) { Duration = Duration.FromHours(1) });
            WasPreviewed = true;
            return null;
        }
    }

    private sealed class Direct(Action<double> tell) : IProgress<double>
    {
        public void Report(double value) => tell(value);
    }
}
