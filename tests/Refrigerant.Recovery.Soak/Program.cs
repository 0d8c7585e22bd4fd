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
    default:
        Console.WriteLine("states [count]   random state evaluations of every fluid: no NaN, no undocumented exception (default 10 million)");
        Console.WriteLine("names [count]    random texts as refrigerant designations (default 1 million)");
        return 2;
}
