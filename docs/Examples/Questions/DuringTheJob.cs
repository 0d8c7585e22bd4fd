#region usings
using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using UnitsNet;
#endregion

namespace Refrigerant.Recovery.Docs.Questions;

/// <summary>Jobs that are watched. They are simulated, by a simulator that shares no equation with the estimator.</summary>
internal static class DuringTheJob
{
    /// <summary>A job as most are: told 16 % too little.</summary>
    public static SimulatedJob Good { get; } = SimulatedJob.Draw("second", 1003);

    /// <summary>One of those in which the range closes late: told 19 % too much, and the truth stays at its lower edge.</summary>
    public static SimulatedJob Missed { get; } = SimulatedJob.Draw("second", 1002);

    /// <summary>One whose hose kinks after five minutes, to thirty times its resistance.</summary>
    public static SimulatedJob Kinked { get; } = SimulatedJob.Draw("second", 1002, new Fault(FaultKind.Hose, 300, 30));

    /// <summary>One that was told 23 % too little, with liquid that cools far below the air.</summary>
    public static SimulatedJob Cold { get; } = SimulatedJob.Draw("second", 1023);

    public static void Course() => Watch(Good, 120);

    public static void Fault() => Conditions(Kinked);

    /// <summary>What a technician would read of a sample.</summary>
    public static JobReading Reading(TruthSample sample) => new()
    {
        Time = Duration.FromSeconds(sample.Time),
        SuctionGaugePressure = Pressure.FromPascals(sample.Gauge),
        GrossWeight = Mass.FromKilograms(sample.Gross),
        Ambient = Temperature.FromKelvins(sample.Air),
    };

    private static void Watch(SimulatedJob simulated, int every)
    {
        Planning.RecoveryJob job = simulated.Told.Job();
        Instruments instruments = simulated.Told.Instruments();
        MonitorOptions options = simulated.Told.Options();
        IEnumerable<JobReading> readings = simulated.Log.Samples.Select(Reading);

        #region watch
        RecoveryMonitor monitor = RecoveryMonitor.Start(job, instruments, options);
        foreach (JobReading reading in readings)
        {
            JobEstimate estimate = monitor.Update(reading);
            if (Math.Round(reading.Time.Seconds) % every == 0)
            {
                Console.WriteLine($"{reading.Time.Minutes,4:F0} min  "
                    + $"left {estimate.Remaining.Best.Kilograms,5:F2} kg "
                    + $"({estimate.Remaining.Low.Kilograms:F2} to "
                    + $"{estimate.Remaining.High.Kilograms:F2}), "
                    + $"to go {estimate.TimeToLevel?.ToString() ?? "unknown"}, "
                    + $"no liquid {estimate.VaporOnly.Percent:F0} %");
            }
        }
        #endregion
    }

    private static void Conditions(SimulatedJob simulated)
    {
        RecoveryMonitor monitor = RecoveryMonitor.Start(simulated.Told.Job(), simulated.Told.Instruments(), simulated.Told.Options());
        IEnumerable<JobReading> readings = simulated.Log.Samples.Select(Reading).Where(r => r.Time.Seconds < 600);

        #region fault
        var said = new HashSet<string>();
        foreach (JobReading reading in readings)
        {
            JobEstimate estimate = monitor.Update(reading);
            foreach (Finding finding in estimate.Findings)
            {
                if (finding.Severity >= Severity.Caution && said.Add(finding.Message))
                {
                    Console.WriteLine($"{reading.Time.Seconds:F0} s: {finding.Message}");
                }
            }
        }
        #endregion
    }
}
