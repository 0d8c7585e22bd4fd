using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Records;
using Xunit;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>A blank label in a log is an error of the document, with its place.</summary>
public class BlankLabelTests
{
    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData("\u2003")]
    public void In_JSON_it_is_told_by_its_path(string label)
    {
        string json = $$"""{"format":"refrigerant-recovery-log/1","readings":[{"timeSeconds":0},{"timeSeconds":1,"cylinder":"{{label}}"},{"timeSeconds":1}]}""";
        Assert.False(JobLogJson.TryRead(json, out _, out IReadOnlyList<DocumentError> errors));
        Assert.Equal("$.readings[1].cylinder", errors[0].Path);
        Assert.Contains("must be a text that is not blank", errors[0].Message, StringComparison.Ordinal);
        Assert.Equal("$.readings[1].cylinder", Assert.Throws<DocumentException>(() => JobLogJson.Read(json)).Path);
    }

    [Fact]
    public void In_CSV_it_is_told_by_line_and_column_beside_other_errors()
    {
        const string Csv = "time [s],gross weight [kg],cylinder\n0,12,\n1,12,\" \"\n2,-1,C2\n3,12,\"\t\"";
        Assert.False(JobLogCsv.TryRead(Csv, out _, out IReadOnlyList<DocumentError> errors));
        Assert.Equal(["line 3, cylinder", "line 4, gross weight", "line 5, cylinder"], System.Linq.Enumerable.Select(errors, error => error.Path));
        Assert.Contains("is \" \": it must be a text that is not blank", errors[0].Message, StringComparison.Ordinal);
        Assert.Equal("line 3, cylinder", Assert.Throws<DocumentException>(() => JobLogCsv.Read(Csv)).Path);
    }
}
