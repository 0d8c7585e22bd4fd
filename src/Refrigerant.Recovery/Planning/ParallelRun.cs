using System;
using System.Runtime.ExceptionServices;
using System.Threading;
using System.Threading.Tasks;

namespace Refrigerant.Recovery.Planning;

/// <summary>Many plans side by side: cancellable, with a progress that only rises, and what is thrown comes through as it is.</summary>
internal static class ParallelRun
{
    /// <summary>Runs a body for each index.</summary>
    /// <param name="count">How many.</param>
    /// <param name="threads">The most threads used; all processors where it is null.</param>
    /// <param name="body">What is done.</param>
    /// <param name="cancellation">Cancels it.</param>
    /// <param name="progress">Told the share done, rising, one call at a time; null for nobody.</param>
    public static void For(int count, int? threads, Action<int> body, CancellationToken cancellation, IProgress<double>? progress)
    {
        object gate = new();
        int done = 0;
        var options = new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = threads ?? Environment.ProcessorCount };
        try
        {
            _ = Parallel.For(0, count, options, index =>
            {
                body(index);
                if (progress is not null)
                {
                    lock (gate)
                    {
                        progress.Report((double)++done / count);
                    }
                }
            });
        }
        catch (AggregateException e)
        {
            ExceptionDispatchInfo.Capture(e.Flatten().InnerExceptions[0]).Throw();
            throw;
        }
    }
}
