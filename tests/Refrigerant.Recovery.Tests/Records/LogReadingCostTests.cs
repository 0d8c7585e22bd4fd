using System;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Records;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>A long log as JSON costs what its readings cost: the same each, and no texts of places that nobody is told.</summary>
public class LogReadingCostTests
{
    /// <summary>Bytes a reading of five members may cost: the nodes of its members, its entry and the reading, each some 100 bytes.</summary>
    private const long MostBytes = 2500;

    [Fact]
    public void Each_reading_takes_the_same_memory()
    {
        Read(Log(50));
        long few = Read(Log(1000)) / 1000;
        long many = Read(Log(8000)) / 8000;
        Assert.InRange(few, 1, MostBytes);
        Assert.InRange(many, few / 2, 1.2 * few);
    }

    /// <summary>Bytes that reading allocates.</summary>
    private static long Read(string json)
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        JobLogJson.Read(json);
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    private static string Log(int readings) => JobLogJson.Write(JobLog.FromReadings([.. Enumerable.Range(0, readings).Select(i => new JobReading
    {
        Time = Duration.FromSeconds(i),
        GrossWeight = Mass.FromKilograms(12 + (i * 1e-5)),
        SuctionGaugePressure = Pressure.FromKilopascals(400 - (i * 1e-4)),
        MachineRunning = false,
        Cylinder = "C1",
    })]));
}
