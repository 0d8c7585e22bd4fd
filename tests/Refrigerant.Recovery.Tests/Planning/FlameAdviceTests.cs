using System;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Nitrogen goes through what a finished recovery leaves. Through what holds liquid, or pressure, it blows refrigerant out: common practice, no source.</summary>
public class FlameAdviceTests
{
    /// <summary>Not begun, not finished, finished down to the air, finished above it.</summary>
    [Theory]
    [InlineData("no cylinder", false, null)]
    [InlineData("small cylinder", false, null)]
    [InlineData("to the air", true, "send dry nitrogen through")]
    [InlineData("oil change", true, "nitrogen goes through only then")]
    public void Nitrogen_is_advised_only_where_the_level_is_reached(string ends, bool reached, string? advice)
    {
        RecoveryJob job = Jobs.Chiller("R-32", 10, cylinders: 1);
        job = ends switch
        {
            "no cylinder" => job with { Cylinders = [] },
            "small cylinder" => job with { Cylinders = [Jobs.Cylinder(12, "C1")] },
            "oil change" => job with { Evacuation = new EvacuationOptions { Purpose = OpeningPurpose.OilChange } },
            _ => job,
        };
        RecoveryPlan plan = RecoveryPlanner.Plan(job);
        Assert.Equal(reached, plan.IsLevelReached);
        Finding? flame = plan.Findings.Said("purge-before-flame");
        Assert.Equal(advice is null, flame is null);
        Assert.Contains(advice ?? string.Empty, flame?.Message ?? string.Empty, StringComparison.Ordinal);
        Assert.Equal(ends != "to the air", plan.End.Pressure > job.Barometer.Pressure);
        Assert.Equal(ends == "to the air", flame?.Value("volume exchanges") is not null);
    }
}
