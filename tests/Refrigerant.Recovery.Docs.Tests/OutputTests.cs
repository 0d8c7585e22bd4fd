using System.IO;
using Xunit;

namespace Refrigerant.Recovery.Docs.Tests;

/// <summary>What the pages print is what their code prints now.</summary>
[Collection("console")]
public class OutputTests
{
    public static TheoryData<string> Files()
    {
        TheoryData<string> files = [];
        foreach (Example example in Catalogue.Examples)
        {
            files.Add(example.File);
        }

        return files;
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void CommittedOutputIsCurrent(string file)
    {
        Example example = Assert.Single(Catalogue.Examples, e => e.File == file);
        string committed = File.ReadAllText(example.Path);
        Assert.NotEmpty(committed);
        Assert.Equal(committed, example.Capture());
    }

    [Fact]
    public void NoOutputIsLeftOver()
    {
        foreach (string path in Directory.EnumerateFiles(Path.Combine(Repository.Docs, "output")))
        {
            Assert.Contains(Catalogue.Examples, e => e.Path == path);
        }
    }
}
