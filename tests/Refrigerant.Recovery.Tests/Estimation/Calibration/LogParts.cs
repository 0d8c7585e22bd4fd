using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Tests.Estimation.Parts;
using UnitsNet;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>Short logs of the invented job of the workbench: one cylinder of 12.5 kg with 1 kg in it, air of 100 kPa.</summary>
internal static class LogParts
{
    public static readonly RecoveryJob Job = new Workbench().Job;

    /// <summary>A reading; what is not a number was not read.</summary>
    public static JobReading At(double time, double gauge = double.NaN, double gross = double.NaN, bool isRunning = true, bool isOpen = true) => new()
    {
        Time = Duration.FromSeconds(time),
        SuctionGaugePressure = double.IsNaN(gauge) ? null : Pressure.FromPascals(gauge),
        GrossWeight = double.IsNaN(gross) ? null : Mass.FromKilograms(gross),
        MachineRunning = isRunning,
        ValveOpen = isOpen,
    };

    public static JobLog Log(IEnumerable<JobReading> readings) => JobLog.FromReadings([.. readings]);

    public static JobLog Every(double step, int count, Func<double, JobReading> at) => Log(Enumerable.Range(0, count).Select(i => at(i * step)));
}
