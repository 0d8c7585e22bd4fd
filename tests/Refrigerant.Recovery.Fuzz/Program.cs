using System;
using System.IO;
using Refrigerant.Recovery.Fuzz;
using SharpFuzz;

// Coverage-guided fuzzing of what reads text: `run` starts it. With a file as second argument that text is tried once.
if (args.Length == 2 && args[0] == "seeds")
{
    Seeds.Write(args[1]);
    return 0;
}

Action<string>? target = args.Length > 0 ? Targets.Of(args[0]) : null;
if (target is null)
{
    Console.WriteLine($"{string.Join(" | ", Targets.Names)} [file], or seeds folder");
    return 2;
}

if (args.Length > 1)
{
    target(File.ReadAllText(args[1]));
    return 0;
}

Fuzzer.OutOfProcess.Run(stream =>
{
    using var reader = new StreamReader(stream);
    target(reader.ReadToEnd());
});
return 0;
