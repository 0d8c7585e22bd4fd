using System;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Tests.Planning;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>A log that is too short is told by the name that its caller gave it.</summary>
public class FitArgumentTests
{
    private static readonly JobLog Short = JobLog.FromReadings([.. Enumerable.Range(0, 3).Select(i => new JobReading { Time = Duration.FromSeconds(i) })]);

    [Fact]
    public void One_log_is_the_parameter_and_one_of_several_a_member()
    {
        ArgumentException one = Assert.Throws<ArgumentException>(() => JobCalibration.Fit(Jobs.Chiller(), Short));
        Assert.Equal("log", one.ParamName);
        Assert.StartsWith("log has 0 readings", one.Message, StringComparison.Ordinal);
        ArgumentException several = Assert.Throws<ArgumentException>(() => JobCalibration.Fit([new LoggedJob(Jobs.Chiller(), Short)], null));
        Assert.Equal("jobs", several.ParamName);
        Assert.StartsWith("jobs[0].Log has 0 readings", several.Message, StringComparison.Ordinal);
    }
}
