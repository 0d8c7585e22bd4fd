using System;
using System.Collections.Generic;
using FsCheck.Xunit;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Records;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>Logs as CSV and JSON: round trips, units, and errors that name line, column and reason.</summary>
public class JobLogTests
{
    private const string Csv = """
        # a comment
        time [min];suction gauge [psi];gross weight [lb];ambient [°F];pipe [K];discharge gauge [bar];machine;valve;cylinder
        0;100;30.5;68;290;11.5;off;open;C1

        0.5;-5.5;30.75;;;;on;shut;"a ""big"", one"
        """;

    private static readonly PublishedSchema Schema = new("recovery-log.schema.json");

    [Fact]
    public void Units_are_those_of_the_header()
    {
        JobLog log = JobLogCsv.Read(Csv);
        Assert.Equal(2, log.Readings.Count);
        JobReading first = log.Readings[0];

        // 1 psi = 6894.757293 Pa, 1 lb = 0.45359237 kg (NIST SP 811).
        Assert.Equal(689_475.7293, first.SuctionGaugePressure!.Value.Pascals, 1e-3);
        Assert.Equal(30.5 * 0.45359237, first.GrossWeight!.Value.Kilograms, 1e-9);
        Assert.Equal(293.15, first.Ambient!.Value.Kelvins, 1e-9);
        Assert.Equal(290, first.PipeTemperature!.Value.Kelvins, 1e-9);
        Assert.Equal(1.15e6, first.DischargeGaugePressure!.Value.Pascals, 1e-6);
        Assert.Equal((false, true, "C1"), (first.MachineRunning, first.ValveOpen, first.Cylinder));
        JobReading second = log.Readings[1];
        Assert.Equal(30, second.Time.Seconds, 1e-9);
        Assert.Null(second.Ambient);
        Assert.Equal((true, false, "a \"big\", one"), (second.MachineRunning, second.ValveOpen, second.Cylinder));
    }

    [Fact]
    public void Both_formats_give_back_what_was_written()
    {
        JobLog log = JobLogCsv.Read(Csv);
        string csv = JobLogCsv.Write(log);
        Assert.Equal(csv, JobLogCsv.Write(JobLogCsv.Read(csv)));
        string json = JobLogJson.Write(log);
        Assert.Equal(json, JobLogJson.Write(JobLogJson.Read(json)));
        Assert.Equal(csv, JobLogCsv.Write(JobLogJson.Read(json)));
        Assert.Empty(Schema.Breaches(json));
    }

    [Fact]
    public void The_schema_has_every_member_that_is_read_and_requires_the_same() => Schema.AssertMatches(
        DocumentWriter.TypeOf<LogDocument>(), new() { ["readingEntry"] = DocumentWriter.TypeOf<ReadingEntry>() });

    [Theory]
    [InlineData("time [s],gross weight [kg]\n0,12\n1,NaN", "line 3, gross weight", "\"NaN\"")]
    [InlineData("time [s],gross weight [kg]\n0,12\n1,1e999", "line 3, gross weight", "must be a number")]
    [InlineData("time [s],gross weight [kg]\n0,12\n1,∞", "line 3, gross weight", "must be a number")]
    [InlineData("time [s],gross weight [kg]\n0,12\n5,12\n3,12", "line 4, time", "runs back; the reading before was taken at 5 s")]
    [InlineData("time [s],gross weight [kg]\n0,12\n0,12", "line 3, time", "is the time of the reading before")]
    [InlineData("time [s],gross weight [kg]\n0,12\n,12", "line 3, time", "it must be given")]
    [InlineData("time [s],gross weight [kg]\n0,-1", "line 2, gross weight", "from 0 to 1000000 kg")]
    [InlineData("time [s],gross weight [kg]\n0,12,5", "line 2", "it has 3 fields; the header has 2")]
    [InlineData("time [s];gross weight [kg]\n0;12,5", "line 2, gross weight", "decimal point")]
    [InlineData("time [s],suction gauge [kPa]\n0,-300", "line 2, suction gauge", "it must be from -200000 to ")]
    [InlineData("time [s],ambient [K]\n0,20", "line 2, ambient", "from 150 to 400 K")]
    [InlineData("time [s],suction gauge\n0,100", "line 1, suction gauge", "it must have its unit: suction gauge [kPa or Pa or MPa or bar or psi]")]
    [InlineData("time [s],suction gauge [torr]\n0,100", "line 1, suction gauge", "the unit is not known")]
    [InlineData("time [s],pressure [kPa]\n0,100", "line 1", "there is no such column; known are time [s or min or h]")]
    [InlineData("time [s],time [min]\n0,100", "line 1, time", "it is given twice")]
    [InlineData("gross weight [kg]\n12", "line 1, time", "it is missing")]
    [InlineData("time [s],machine\n0,running", "line 2, machine", "it must be on or off")]
    [InlineData("time [s],cylinder\n0,\"C1", "line 2", "a quote is not closed")]
    [InlineData("time [s]\n", "line 2", "there is no reading")]
    [InlineData("", "line 1", "there is no reading")]
    public void A_text_that_is_no_log_is_refused_with_line_and_reason(string csv, string path, string reason)
    {
        DocumentException error = Assert.Throws<DocumentException>(() => JobLogCsv.Read(csv));
        Assert.Equal(path, error.Path);
        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{"format":"refrigerant-recovery-log/1","readings":[{"timeSeconds":5},{"timeSeconds":3}]}""", "$.readings[1].timeSeconds", "runs back")]
    [InlineData("""{"format":"refrigerant-recovery-log/1","readings":[{"timeSeconds":0,"grossKilograms":-2}]}""", "$.readings[0].grossKilograms", "from 0 to 1000000.")]
    [InlineData("""{"format":"refrigerant-recovery-log/1","readings":[]}""", "$.readings", "0 members")]
    [InlineData("""{"format":"refrigerant-recovery-log/2","readings":[{"timeSeconds":0}]}""", "$.format", "refrigerant-recovery-log/1")]
    [InlineData("""{"format":"refrigerant-recovery-log/1","readings":[{"timeSeconds":0,"weight":3}]}""", "$.readings[0].weight", "no such member")]
    public void A_document_that_is_no_log_is_refused_with_path_and_reason(string json, string path, string reason)
    {
        DocumentException error = Assert.Throws<DocumentException>(() => JobLogJson.Read(json));
        Assert.Equal(path, error.Path);
        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_that_cannot_be_are_named()
    {
        JobReading At(double seconds, double pascals = 0) => new() { Time = Duration.FromSeconds(seconds), SuctionGaugePressure = Pressure.FromPascals(pascals) };
        Assert.Contains("readings[1].Time", Assert.Throws<ArgumentException>(() => JobLog.FromReadings([At(1), At(1)])).Message, StringComparison.Ordinal);
        Assert.Contains("readings[0].SuctionGaugePressure", Assert.Throws<ArgumentException>(() => JobLog.FromReadings([At(0, -1e6)])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => JobLog.FromReadings([]));
    }

    /// <summary>Whatever the text, it is a log or a <see cref="DocumentException"/>.</summary>
    [Property(MaxTest = 300)]
    public void No_text_makes_another_exception(string text, byte cut)
    {
        foreach (string csv in (IEnumerable<string>)[text ?? string.Empty, Csv.Substring(0, Math.Min(cut, Csv.Length)) + text, "time [s],cylinder\n0," + text])
        {
            try
            {
                Assert.NotEmpty(JobLogCsv.Read(csv).Readings);
            }
            catch (DocumentException error)
            {
                Assert.StartsWith("line ", error.Path, StringComparison.Ordinal);
            }
        }
    }
}
