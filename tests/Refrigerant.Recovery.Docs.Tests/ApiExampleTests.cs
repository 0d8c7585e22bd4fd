using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Net;
using Xunit;

namespace Refrigerant.Recovery.Docs.Tests;

/// <summary>The examples in documentation comments are regions of compiled code, and print what their comments say.</summary>
[Collection("console")]
public class ApiExampleTests
{
    private static readonly string[] Compiled = File.ReadAllLines(Path.Combine(Repository.Docs, "Examples", "ApiExamples.cs"));

    [Fact]
    public void DocumentationCommentsHoldTheCompiledCode()
    {
        HashSet<string> regions = [.. Regions()];
        List<string> examples = [.. Directory
            .EnumerateFiles(Path.Combine(Repository.Root, "src", "Refrigerant.Recovery"), "*.cs", SearchOption.AllDirectories)
            .SelectMany(CodeInComments)];
        Assert.NotEmpty(examples);
        Assert.All(examples, example => Assert.Contains(example, regions));
        Assert.Equal(regions.Count, examples.Distinct().Count());
    }

    [Fact]
    public void CommentsSayWhatIsPrinted()
    {
        string[] printed = new Example(string.Empty, ApiExamples.Run).Capture().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        string[] said = [.. Compiled.Where(line => line.Contains("WriteLine", StringComparison.Ordinal)).Select(line => line[(line.LastIndexOf("// ", StringComparison.Ordinal) + 3)..])];
        Assert.Equal(said, printed);
    }

    private static IEnumerable<string> Regions()
    {
        List<string>? region = null;
        foreach (string line in Compiled.Select(line => line.Trim()))
        {
            if (line.StartsWith("#region", StringComparison.Ordinal))
            {
                region = [];
            }
            else if (line == "#endregion")
            {
                yield return string.Join('\n', region!);
                region = null;
            }
            else
            {
                region?.Add(line);
            }
        }
    }

    private static IEnumerable<string> CodeInComments(string file)
    {
        List<string>? code = null;
        foreach (string line in File.ReadLines(file).Select(line => line.Trim()).Where(line => line.StartsWith("///", StringComparison.Ordinal)))
        {
            string text = line[3..].Trim();
            if (text == "<code>")
            {
                code = [];
            }
            else if (text == "</code>")
            {
                yield return string.Join('\n', code!);
                code = null;
            }
            else
            {
                code?.Add(WebUtility.HtmlDecode(text));
            }
        }
    }
}
