using System;
using System.IO;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
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
    public void The_schema_has_every_member_that_is_read_and_requires_the_same() => Schema.AssertMatches(DocumentWriter.Context.JobDocument, new()
    {
        ["aids"] = DocumentWriter.Context.AidsDocument,
        ["appliance"] = DocumentWriter.Context.ApplianceDocument,
        ["barometer"] = DocumentWriter.Context.BarometerDocument,
        ["blend"] = DocumentWriter.Context.BlendDocument,
        ["body"] = DocumentWriter.Context.BodyDocument,
        ["component"] = DocumentWriter.Context.ComponentDocument,
        ["condenser"] = DocumentWriter.Context.CondenserDocument,
        ["connection"] = DocumentWriter.Context.ConnectionDocument,
        ["cylinder"] = DocumentWriter.Context.CylinderDocument,
        ["evacuation"] = DocumentWriter.Context.EvacuationDocument,
        ["fitting"] = DocumentWriter.Context.FittingDocument,
        ["hose"] = DocumentWriter.Context.HoseDocument,
        ["hoseSet"] = DocumentWriter.Context.HoseSetDocument,
        ["machine"] = DocumentWriter.Context.MachineDocument,
        ["machinePast"] = DocumentWriter.Context.MachinePastDocument,
        ["oil"] = DocumentWriter.Context.OilDocument,
        ["ownFillRules"] = DocumentWriter.Context.OwnFillRulesDocument,
        ["ownRules"] = DocumentWriter.Context.OwnRulesDocument,
        ["section"] = DocumentWriter.Context.SectionDocument,
        ["times"] = DocumentWriter.Context.TimesDocument,
        ["water"] = DocumentWriter.Context.WaterDocument,
    });
}
