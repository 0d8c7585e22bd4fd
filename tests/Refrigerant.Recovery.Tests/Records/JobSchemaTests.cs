using System;
using System.IO;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Records.Jobs;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>The published schema says what is written and read, no more and no less.</summary>
public class JobSchemaTests
{
    private static readonly PublishedSchema Schema = new("recovery-job.schema.json");

    [Fact]
    public void Written_jobs_fit_the_schema()
    {
        RecoveryJob job = FullJob.Create();
        RecoveryJob other = job with
        {
            Appliance = job.Appliance with
            {
                Fluid = FullJob.Blend(),
                Water = TubeWater.Moving(MassFlow.FromKilogramsPerSecond(2), Temperature.FromDegreesCelsius(9), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.001)),
            },
            Barometer = Barometer.Reading(Pressure.FromKilopascals(97)),
        };
        Assert.Empty(Schema.Breaches(RecoveryJobJson.Write(job)));
        Assert.Empty(Schema.Breaches(RecoveryJobJson.Write(other)));
    }

    [Fact]
    public void The_example_job_fits_the_schema_and_is_read()
    {
        string json = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "job.json"));
        Assert.Empty(Schema.Breaches(json));
        Assert.Equal(2, RecoveryJobJson.Read(json).Cylinders.Count);
    }

    [Theory]
    [InlineData("\"chargeKilograms\"", "\"charge\"", "$.appliance.chargeKilograms is missing")]
    [InlineData("\"Always\"", "\"Often\"", "$.pushPull is not in the list")]
    [InlineData("\"maximumPulls\": 4", "\"maximumPulls\": \"4\"", "$.maximumPulls is no integer")]
    public void The_check_itself_finds_what_does_not_fit(string good, string bad, string breach) =>
        Assert.Contains(breach, Schema.Breaches(RecoveryJobJson.Write(FullJob.Create()).Replace(good, bad, StringComparison.Ordinal)));

    [Fact]
    public void The_schema_has_every_member_that_is_read_and_requires_the_same() => Schema.AssertMatches(DocumentWriter.TypeOf<JobDocument>(), new()
    {
        ["aids"] = DocumentWriter.TypeOf<AidsDocument>(),
        ["appliance"] = DocumentWriter.TypeOf<ApplianceDocument>(),
        ["barometer"] = DocumentWriter.TypeOf<BarometerDocument>(),
        ["blend"] = DocumentWriter.TypeOf<BlendDocument>(),
        ["body"] = DocumentWriter.TypeOf<BodyDocument>(),
        ["component"] = DocumentWriter.TypeOf<ComponentDocument>(),
        ["condenser"] = DocumentWriter.TypeOf<CondenserDocument>(),
        ["connection"] = DocumentWriter.TypeOf<ConnectionDocument>(),
        ["cylinder"] = DocumentWriter.TypeOf<CylinderDocument>(),
        ["evacuation"] = DocumentWriter.TypeOf<EvacuationDocument>(),
        ["fitting"] = DocumentWriter.TypeOf<FittingDocument>(),
        ["hose"] = DocumentWriter.TypeOf<HoseDocument>(),
        ["hoseSet"] = DocumentWriter.TypeOf<HoseSetDocument>(),
        ["machine"] = DocumentWriter.TypeOf<MachineDocument>(),
        ["machinePast"] = DocumentWriter.TypeOf<MachinePastDocument>(),
        ["oil"] = DocumentWriter.TypeOf<OilDocument>(),
        ["ownFillRules"] = DocumentWriter.TypeOf<OwnFillRulesDocument>(),
        ["ownRules"] = DocumentWriter.TypeOf<OwnRulesDocument>(),
        ["section"] = DocumentWriter.TypeOf<SectionDocument>(),
        ["times"] = DocumentWriter.TypeOf<TimesDocument>(),
        ["water"] = DocumentWriter.TypeOf<WaterDocument>(),
    });
}
