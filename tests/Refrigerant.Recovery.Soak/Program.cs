using System;
using System.Globalization;
using Refrigerant.Recovery.Soak;

// Long runs that do not belong in `dotnet test`: each prints what it did and returns 1 on the first thing that must not happen.
string run = args.Length > 0 ? args[0] : "help";
long amount = args.Length > 1 ? long.Parse(args[1], CultureInfo.InvariantCulture) : 0;
switch (run)
{
    case "states":
        return RandomStates.Run(amount > 0 ? amount : 10_000_000);
    case "names":
        return RandomNames.Run(amount > 0 ? amount : 1_000_000);
    case "json":
        return RandomDocuments.Run(amount > 0 ? amount : 100_000);
    case "vessels":
        return VesselCourses.Run();
    case "plans":
        return RandomPlans.Run(amount > 0 ? (int)Math.Min(amount, 24 * 60) : 15, args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 0);
    case "plan":
        return RandomPlans.Show((int)Math.Max(0, Math.Min(amount, int.MaxValue)));
    case "reduced":
        return ReducedAgainstEngine.Run(amount > 0 ? (int)Math.Min(amount, 10_000) : 60);
    case "stages":
        return RandomStages.Run(amount > 0 ? (int)Math.Min(amount, 10_000_000) : 100_000);
    case "estimation":
        return EstimationTables.Run(
            amount > 0 ? (int)Math.Min(amount, 10_000) : 120,
            args.Length > 2 ? args[2] : string.Empty,
            args.Length > 3 ? int.Parse(args[3], CultureInfo.InvariantCulture) : 0);
    default:
        Console.WriteLine("states [count]   random state evaluations of every fluid: no NaN, no undocumented exception (default 10 million)");
        Console.WriteLine("names [count]    random texts as refrigerant designations (default 1 million)");
        Console.WriteLine("json [count]     random and mutated job documents: a job or DocumentException, nothing else (default 100 000)");
        Console.WriteLine("vessels          vapor drawn off vessels of all blends from 200 K to 300 K: no phases of the equations' own making");
        Console.WriteLine("estimation [jobs] [part] [seed]  simulated jobs of three kinds: how often ranges hold, how wide, medians, faults, false alarms (default 120)");
        Console.WriteLine("                 parts: first, second, third, filter, oil, charge, faults, air");
        Console.WriteLine("reduced [jobs]   durations of the reduced model against the engine's (default 60)");
        Console.WriteLine("stages [count]   random stages of every kind, three after each other: balances, limits of cylinders, no exception (default 100 000)");
        Console.WriteLine("plans [minutes [seed]] random plans in parallel, from a seed on: no growth of memory, no undocumented exception (default 15, from 0)");
        Console.WriteLine("plan <seed>      the job and the plan of one seed of them");
        return 2;
}
