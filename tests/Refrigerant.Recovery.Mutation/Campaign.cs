using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;

namespace Refrigerant.Recovery.Mutation;

/// <summary>Samples mutants of a layer, runs the tests that reach each until one fails, and states the score.</summary>
internal sealed class Campaign
{
    /// <summary>The tests' assembly.</summary>
    public const string Tests = "Refrigerant.Recovery.Tests";

    /// <summary>What compares the code with files written from it, and what no other layer's mutant can be seen by.</summary>
    private static readonly string[] Left =
    [
        Tests + ".Fluids.", Tests + ".Rules.RuleTableTests", Tests + ".Records.SchemaTests", Tests + ".LayeringTests",
    ];

    /// <summary>Layer whose tests are run for its own mutants only: they take long, and what they notice in other layers those layers' own tests are to notice.</summary>
    private const string Apart = "Estimation";

    /// <summary>Layers and classes whose tests alone are run, for a quick look; all where none is named.</summary>
    private static readonly string[] Only = (Environment.GetEnvironmentVariable("TESTS") ?? string.Empty).Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private const string NotReached = "NOT REACHED", Survived = "SURVIVED";

    /// <summary>
    /// What survives tests of this many seconds of processor time survives: of the processor, so that a busy machine gives the score of an idle one. Measured class by class, each in a process of its own; together they take a third of it.
    /// </summary>
    private const double MostSeconds = 60;

    /// <summary>Seconds of processor time from which a class of the layer apart is taken apart into its methods, and one of these is left out: of longer ones too few would fit.</summary>
    private const double Longest = 12;

    private readonly string _repository;
    private readonly string _folder;
    private readonly int _sample;
    private readonly int _seed;

    /// <param name="repository">Its root; the tests are built in it, Release.</param>
    /// <param name="sample">Mutants of a layer; all where it has no more.</param>
    /// <param name="seed">Of the choice.</param>
    public Campaign(string repository, int sample, int seed)
    {
        (_repository, _sample, _seed) = (Path.GetFullPath(repository), sample, seed);
        _folder = Path.Combine(_repository, "tests", "Refrigerant.Recovery.Mutation", "bin", "mutants");
    }

    /// <summary>Tests layers, with one build for all.</summary>
    /// <param name="layers">Names, each followed by the numbers of some of its mutants where only they are run.</param>
    /// <param name="least">Share that the tests must notice.</param>
    /// <returns>Whether they do in each layer.</returns>
    public bool Run(IReadOnlyList<string> layers, double least)
    {
        var library = new MutatedLibrary(_repository, _folder);
        Mutant[] chosen = [.. layers.SelectMany(layer => Choose(library, layer))];
        for (int i = 0; i < chosen.Length; i++)
        {
            chosen[i].Id = i + 1;
        }

        IReadOnlyList<Mutant> mutants = library.Build(chosen);
        Prepare(library.Assembly);
        TestClass[] classes = Reached(chosen.Length, mutants.Any(m => m.Layer == Apart));
        bool isEnough = true;
        foreach (IGrouping<string, Mutant> layer in mutants.GroupBy(m => m.Layer))
        {
            int killed = layer.Count(mutant => IsNoticed(mutant, classes));
            isEnough &= killed >= least * layer.Count();
            (double low, double high) = Binomial.Range(killed, layer.Count());
            Console.WriteLine(FormattableString.Invariant(
                $"{layer.Key}: {killed} of {layer.Count()} noticed, {100.0 * killed / layer.Count():F0} % ({100 * low:F0} to {100 * high:F0} %)"));
        }

        return isEnough;
    }

    private IEnumerable<Mutant> Choose(MutatedLibrary library, string layer)
    {
        string[] parts = layer.Split(':');
        Mutant[] chosen = [.. library.Find(parts[0])];
        int all = chosen.Length;
        new Random(_seed).Shuffle(chosen);
        chosen = [.. chosen.Take(_sample)];
        for (int i = 0; i < chosen.Length; i++)
        {
            (chosen[i].Layer, chosen[i].Number) = (parts[0], i + 1);
        }

        Console.WriteLine($"{parts[0]}: {all} mutants, {chosen.Length} chosen");
        return parts.Length < 2 ? chosen : chosen.Where(m => parts[1].Split(',').Contains(m.Number.ToString(CultureInfo.InvariantCulture)));
    }

    private bool IsNoticed(Mutant mutant, TestClass[] classes)
    {
        long start = Stopwatch.GetTimestamp();
        var able = new List<TestClass>();
        foreach (TestClass each in classes.Where(c => c.Reaches.Contains(mutant.Id) && (mutant.Layer == Apart || !IsApart(c.Name))).OrderByDescending(c => c.Promise(mutant)))
        {
            if (able.Count == 0 || able.Sum(c => c.Seconds) + each.Seconds <= MostSeconds)
            {
                able.Add(each);
            }
        }

        string outcome = able.Count == 0 ? NotReached : Try(mutant, able);
        Console.WriteLine(FormattableString.Invariant($"{mutant} | {outcome} ({Stopwatch.GetElapsedTime(start).TotalSeconds:F0} s)"));
        return outcome is not (NotReached or Survived);
    }

    private string Work => Path.Combine(_folder, "work");

    /// <summary>The tests, this program and the library with mutants in one folder, without the lists of dependencies: then all files of it are found.</summary>
    private void Prepare(string library)
    {
        if (Directory.Exists(Work))
        {
            Directory.Delete(Work, recursive: true);
        }

        Copy(Path.Combine(_repository, "tests", Tests, "bin", "Release", "net10.0"));
        Copy(AppContext.BaseDirectory);
        File.Copy(library, Path.Combine(Work, Path.GetFileName(library)), overwrite: true);
        foreach (string list in Directory.EnumerateFiles(Work, "*.deps.json"))
        {
            File.Delete(list);
        }
    }

    private void Copy(string from)
    {
        foreach (string file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories).Where(file => !file.StartsWith(_folder, StringComparison.Ordinal)))
        {
            string to = Path.Combine(Work, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to, overwrite: true);
        }
    }

    private static bool IsApart(string name) => name.StartsWith($"{Tests}.{Apart}.", StringComparison.Ordinal);

    private TestClass[] Reached(int last, bool all)
    {
        (int exit, string output) = Start(["tests", "names"], "MUTANT", "0", null);
        string[] names =
        [
            .. output.Split('\n').Where(line => line.StartsWith("name ", StringComparison.Ordinal)).Select(line => line["name ".Length..])
                .Where(name => !Left.Any(part => name.StartsWith(part, StringComparison.Ordinal)) && (all || !IsApart(name)))
                .Where(name => Only.Length == 0 || Only.Any(part => name == $"{Tests}.{part}" || name.StartsWith($"{Tests}.{part}.", StringComparison.Ordinal))),
        ];
        if (exit != 0 || names.Length == 0)
        {
            throw new InvalidOperationException("The tests are not found:\n" + output);
        }

        ILookup<string, string> methods = output.Split('\n').Where(line => line.StartsWith("method ", StringComparison.Ordinal)).Select(line => line.Split(' ')).ToLookup(parts => parts[1], parts => parts[2]);
        string[] lines = [.. names.SelectMany(name => Measure(name, last) is { Length: > 0 } found ? found : methods[name].SelectMany(method => Measure(method, last)))];
        foreach (string line in lines.Where(line => !line.StartsWith("class ", StringComparison.Ordinal)))
        {
            Console.WriteLine($"without a mutant: {line}");
        }

        TestClass[] classes = [.. lines.Where(line => line.StartsWith("class ", StringComparison.Ordinal)).Select(TestClass.From)];
        Console.WriteLine(FormattableString.Invariant(
            $"{classes.Length} classes of tests, {classes.Sum(c => c.Seconds):F0} s; longest {string.Join(", ", classes.OrderByDescending(c => c.Seconds).Take(12).Select(c => FormattableString.Invariant($"{c.Name[(Tests.Length + 1)..]} {c.Seconds:F0}")))}"));
        return classes;
    }

    /// <summary>What a class, or a method of one, says of itself; nothing where it takes too long.</summary>
    private string[] Measure(string name, int last)
    {
        double most = IsApart(name) ? Longest : double.PositiveInfinity;
        (int exit, string output) = Start(["tests", "reach", most.ToString(CultureInfo.InvariantCulture), name], "MUTANTS_SEEN", last.ToString(CultureInfo.InvariantCulture), null);
        return exit == Shell.TooLong ? [] : output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }

    private string Try(Mutant mutant, IReadOnlyList<TestClass> able)
    {
        // An endless loop ends by processor time, what waits for ever by the clock.
        const double AtLeast = 20, Times = 4, Waiting = 20;
        double most = AtLeast + (Times * able.Sum(c => c.Seconds));
        (int exit, string output) = Start(
            ["tests", "within", most.ToString(CultureInfo.InvariantCulture), .. able.Select(c => c.Name)], "MUTANT", mutant.Id.ToString(CultureInfo.InvariantCulture),
            TimeSpan.FromSeconds(Waiting * most));
        if (exit == 0)
        {
            return Survived;
        }

        string test = output.Split('\n').FirstOrDefault(line => line.StartsWith("failed ", StringComparison.Ordinal))?["failed ".Length..] ?? string.Empty;
        if (able.Where(c => test.StartsWith(c.Name, StringComparison.Ordinal)).MaxBy(c => c.Name.Length) is TestClass by)
        {
            by.Noticed++;
        }

        return exit == Shell.TooLong ? "too long" : test.Length > 0 ? test.Replace(Tests + ".", string.Empty, StringComparison.Ordinal) : $"ended with {exit}";
    }

    private (int Exit, string Output) Start(IEnumerable<string> arguments, string name, string value, TimeSpan? limit) => Shell.Run(
        "dotnet",
        ["exec", "--runtimeconfig", Path.Combine(Work, Tests + ".runtimeconfig.json"), Path.Combine(Work, "Refrigerant.Recovery.Mutation.dll"), .. arguments],
        new Dictionary<string, string> { [name] = value },
        limit);
}
