using System;
using System.Threading;
using Refrigerant.Recovery.Docs.Questions;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Docs;

/// <summary>A run of many plans that is ended in its middle.</summary>
internal static class Cancellation
{
    public static void Run()
    {
        RecoveryJob job = ExampleJob.Create();

        #region cancel
        using var source = new CancellationTokenSource();
        try
        {
            var options = new UncertaintyOptions { Samples = 64 };
            var progress = new Halfway(source);
            Console.WriteLine(PlanUncertainty.Run(job, options, source.Token, progress));
        }
        catch (OperationCanceledException)
        {
            var fewer = new UncertaintyOptions { Samples = 16 };
            PlanUncertainty range = PlanUncertainty.Run(job, fewer);
            Console.WriteLine($"cancelled; 16 plans say {range.TotalDuration}");
        }
        #endregion
    }

    #region progress
    /// <summary>Someone who has enough after half of it.</summary>
    private sealed class Halfway(CancellationTokenSource source) : IProgress<double>
    {
        public void Report(double value)
        {
            if (value >= 0.5)
            {
                source.Cancel();
            }
        }
    }
    #endregion
}
