using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Reflection;
using System.Threading;
using Refrigerant.Recovery.Mutation;

// Mutation test of layers of the library: .ci/mutation runs it. The first argument `tests` is of the processes that this one starts.
switch (args)
{
    case ["tests", "names"]:
        return Names();
    case ["tests", "reach", string seconds, string name]:
        return ReachedBy(double.Parse(seconds, CultureInfo.InvariantCulture), name);
    case ["tests", "within", string seconds, .. string[] classes]:
        return Try(double.Parse(seconds, CultureInfo.InvariantCulture), classes);
    case [string repository, string sample, string seed, string least, .. string[] layers] when layers.Length > 0:
        return new Campaign(repository, Whole(sample), Whole(seed)).Run(layers, Whole(least) / 100.0) ? 0 : 1;
    default:
        Console.WriteLine("repository, mutants a layer, seed, least percentage, layers such as Flow, or Flow:3,17 for these of the choice");
        return 2;
}

static int Names()
{
    var tests = new TestClasses(Campaign.Tests);
    tests.Names.Order(StringComparer.Ordinal).ToList().ForEach(name => Console.WriteLine($"name {name}"));
    tests.Methods.ToList().ForEach(method => Console.WriteLine($"method {method.Class} {method.Name}"));
    return 0;
}

// A class, or a method of one, with its seconds and the mutants that it reaches: in a process of its own, as what is made once is made by the first that asks.
static int ReachedBy(double most, string name)
{
    using Timer watch = Watch(most);
    var tests = new TestClasses(Campaign.Tests);
    bool[] reached = (bool[])Assembly.Load("Refrigerant.Recovery").GetType("Refrigerant.Recovery.MutationSwitch", true)!.GetMethod("Reached")!.Invoke(null, null)!;
    var failed = new List<string>();
    double seconds = tests.Run(name, failed.Add);
    Console.WriteLine(failed.Count > 0
        ? $"failed {string.Join("; ", failed)}"
        : FormattableString.Invariant($"class {name} {seconds:F2} {string.Join(',', Enumerable.Range(0, reached.Length).Where(i => reached[i]))}"));
    return 0;
}

// Classes until one fails, or until they have taken the processor too long. What they leave running is ended with them.
static int Try(double most, string[] classes)
{
    using Timer watch = Watch(most);
    var tests = new TestClasses(Campaign.Tests);
    foreach (string name in classes)
    {
        tests.Run(name, test =>
        {
            Console.WriteLine($"failed {test}");
            Console.Out.Flush();
            Environment.Exit(1);
        });
    }

    return 0;
}

static Timer Watch(double most)
{
    const int EachSecond = 1000;
    return new Timer(
        _ =>
        {
            if (Environment.CpuUsage.TotalTime.TotalSeconds > most)
            {
                Environment.Exit(Shell.TooLong);
            }
        },
        null, EachSecond, EachSecond);
}

static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);
