using System.Linq;
using System.Runtime.Versioning;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Tests.Planning;
using Xunit;

namespace Refrigerant.Recovery.NetStandard.Tests;

public class AssetTests
{
    [Fact]
    public void The_assembly_under_test_is_the_one_for_netstandard() => Assert.Equal(
        ".NETStandard,Version=v2.0",
        typeof(Fluid).Assembly.GetCustomAttributes(typeof(TargetFrameworkAttribute), false).Cast<TargetFrameworkAttribute>().Single().FrameworkName);

    [Fact]
    public void A_job_goes_through_JSON_and_back()
    {
        RecoveryJob job = Jobs.Chiller("R-410A", 20);
        RecoveryPlan plan = RecoveryPlanner.Plan(RecoveryJobJson.Read(RecoveryJobJson.Write(job)));
        double seconds = RecoveryPlanner.Plan(job).TotalDuration.Seconds;
        Assert.Equal(seconds, plan.TotalDuration.Seconds, 1e-6 * seconds);
    }
}
