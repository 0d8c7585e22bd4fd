using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>What a type takes at the very bound of its range is written, fits the schema and is read back the same, whatever the conversion of units adds in the last digits.</summary>
public class BoundOfDocumentTests
{
    private static readonly PublishedSchema Jobs = new("recovery-job.schema.json");

    [Theory]
    [InlineData(150)]
    [InlineData(400)]
    public void Temperatures_around_the_appliance(double kelvins)
    {
        var bound = Temperature.FromKelvins(kelvins);
        RecoveryJob job = FullJob.Create();
        Same(job with { Appliance = job.Appliance with { Surroundings = bound }, Cylinders = [.. job.Cylinders.Select(cylinder => cylinder with { Temperature = bound })] });
    }

    [Theory]
    [InlineData(200)]
    [InlineData(400)]
    public void Temperature_of_the_coolant(double kelvins)
    {
        RecoveryJob job = FullJob.Create();
        Same(job with { Machine = job.Machine with { Condenser = job.Machine.Condenser with { CoolantTemperature = Temperature.FromKelvins(kelvins) } } });
    }

    [Theory]
    [InlineData(50)]
    [InlineData(700)]
    public void Temperature_of_the_appliance(double kelvins)
    {
        RecoveryJob job = FullJob.Create();
        Same(job with { Appliance = job.Appliance with { Temperature = Temperature.FromKelvins(kelvins) } });
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(1e6, 1e9)]
    public void Times_of_the_oil(double foaming, double diffusion)
    {
        RecoveryJob job = FullJob.Create();
        ApplianceOil oil = job.Appliance.Oil! with { FoamingTime = Duration.FromSeconds(foaming), DiffusionTime = Duration.FromSeconds(diffusion) };
        Same(job with { Appliance = job.Appliance with { Oil = oil } });
    }

    [Theory]
    [InlineData(150)]
    [InlineData(400)]
    public void Temperatures_of_a_log(double kelvins)
    {
        var bound = Temperature.FromKelvins(kelvins);
        JobLog log = JobLog.FromReadings([new JobReading { Time = Duration.Zero, Ambient = bound, PipeTemperature = bound }]);
        Assert.Equal(log, JobLogJson.Read(JobLogJson.Write(log)));
        Assert.Equal(log, JobLogCsv.Read(JobLogCsv.Write(log)));
        Assert.Empty(new PublishedSchema("recovery-log.schema.json").Breaches(JobLogJson.Write(log)));
    }

    private static void Same(RecoveryJob job)
    {
        string json = RecoveryJobJson.Write(job);
        Assert.Empty(Jobs.Breaches(json));
        Assert.Equal(job, RecoveryJobJson.Read(json));
    }
}
