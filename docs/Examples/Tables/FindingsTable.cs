using System;
using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Docs.Tables;

/// <summary>Every code that a finding can have, by subject.</summary>
internal static class FindingsTable
{
    public static void Print()
    {
        Console.WriteLine("| code | subject | raised when |");
        Console.WriteLine("|---|---|---|");
        foreach (FindingCode code in FindingCodes.All)
        {
            Console.WriteLine($"| `{code.Id}` | {code.Subject} | {code.Trigger} |");
        }
    }
}
