using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using System.Threading.Tasks;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Records;
using Xunit;

namespace Refrigerant.Recovery.Samples.Tests.Native;

/// <summary>A C program, through the header and the shared library, gets the library's numbers, and its errors in words.</summary>
public partial class ValueTests
{
    private static readonly string Job = Repository.At("samples", "Desk", "job.json");

    [NativeFact]
    public async Task EveryNumberIsTheLibrarys()
    {
        string[] printed = [.. (await Print()).TakeWhile(line => !line.StartsWith("freed", StringComparison.Ordinal))];
        List<(string Name, object Value)> expected =
        [
            ("version", "1 " + typeof(Fluid).Assembly.GetName().Version!.ToString(3)),
            Expected.Air,
            .. Expected.Of(Fluid.Get("R-134a")),
            .. Expected.Of(Fluid.Get("R-407C")),
            Expected.Simulation(RecoveryJobJson.Read(File.ReadAllText(Job))),
            .. Expected.Estimator(RecoveryJobJson.Read(File.ReadAllText(Job))),
        ];
        Assert.Equal(expected.Count, printed.Length);
        Assert.All(expected.Zip(printed), pair =>
        {
            ((string name, object value), string line) = pair;
            string[] parts = line.Split(' ', 2);
            Assert.Equal(name, parts[0]);
            if (value is double[] numbers)
            {
                double[] found = [.. parts[1].Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture))];
                Assert.Equal(numbers.Length, found.Length);
                Assert.All(numbers.Zip(found), both => Assert.InRange(both.Second - both.First, -Tolerance(name) * Math.Abs(both.First), Tolerance(name) * Math.Abs(both.First)));
            }
            else
            {
                Assert.Equal(value, parts[1]);
            }
        });
    }

    [NativeFact]
    public async Task ErrorsSayWhatIsWrong()
    {
        string[] printed = [.. (await Print()).SkipWhile(line => !line.StartsWith("freed", StringComparison.Ordinal))];
        (string Name, int Status, string Text)[] expected =
        [
            ("freed", 2, "estimator 1"),
            ("null", 1, "fluid"),
            ("nothing", 1, "designation"),
            ("unknown", 3, "R-134a"),
            ("handle", 2, "12345"),
            ("zero", 2, "fluid 0"),
            ("range", 4, "temperature is 900 K"),
            ("nan", 4, "NaN"),
            ("negative", 1, "charge"),
        ];
        Assert.All(expected.Zip(printed), pair =>
        {
            Match line = Failure().Match(pair.Second);
            Assert.Equal(pair.First.Name, line.Groups["name"].Value);
            Assert.Equal(pair.First.Status, int.Parse(line.Groups["status"].Value, CultureInfo.InvariantCulture));
            Assert.Contains(pair.First.Text, line.Groups["text"].Value);
            Assert.Equal(System.Text.Encoding.UTF8.GetByteCount(line.Groups["text"].Value) + 1, int.Parse(line.Groups["length"].Value, CultureInfo.InvariantCulture));
        });
        Assert.Equal(expected.Length + 1, printed.Length);
        Assert.Matches("^cut .{8} 1 1$", printed[^1]);
    }

    [NativeFact]
    public void TheHeaderDeclaresWhatIsExported()
    {
        string[] declared = [.. Declaration().Matches(File.ReadAllText(Repository.At("samples", "Native", "include", "refrigerant_recovery.h"))).Select(match => match.Groups[1].Value).Order()];
        string[] exported = [.. Directory.EnumerateFiles(Repository.At("samples", "Native", "Exports"))
            .SelectMany(file => EntryPoint().Matches(File.ReadAllText(file))).Select(match => match.Groups[1].Value).Order()];
        Assert.NotEmpty(declared);
        Assert.Equal(exported, declared);
    }

    /// <summary>
    /// None, but for the estimator: it sums over vectors as wide as the code was compiled for, which differs ahead of time, and over six
    /// hundred readings the last digits grow to some 1e-12.
    /// </summary>
    private static double Tolerance(string name) => name is "remaining" or "charge" or "to-level" or "final" or "estimate" ? 1e-9 : 0;

    private static Task<string[]> Print() => Command.Run(Path.GetDirectoryName(NativeFactAttribute.Values)!, NativeFactAttribute.Values, Job);

    [GeneratedRegex(@"^(?<name>\w+) (?<status>\d+) (?<length>\d+) (?<text>.*)$")]
    private static partial Regex Failure();

    [GeneratedRegex(@"^[a-z][\w *]*?(rr_\w+)\(", RegexOptions.Multiline)]
    private static partial Regex Declaration();

    [GeneratedRegex("EntryPoint = \"(rr_\\w+)\"")]
    private static partial Regex EntryPoint();
}
