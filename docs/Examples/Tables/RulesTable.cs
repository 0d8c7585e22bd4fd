using System;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Rules;

namespace Refrigerant.Recovery.Docs.Tables;

/// <summary>Every figure of law, standard and trade that results rest on.</summary>
internal static class RulesTable
{
    public static void Print()
    {
        Console.WriteLine("| rule | figure | source | edition | how read |");
        Console.WriteLine("|---|---|---|---|---|");
        foreach (RuleFigure rule in RuleBook.All)
        {
            Console.WriteLine($"| {rule.Rule} | {Cell(rule.Figure)} | {rule.Source} | {rule.Edition} | {How(rule.Evidence)} |");
        }
    }

    private static string Cell(string text) => text.Replace("<", "&lt;", StringComparison.Ordinal).Replace("|", "\\|", StringComparison.Ordinal);

    private static string How(Evidence evidence) => evidence switch
    {
        Evidence.Read => "read",
        Evidence.ReadSecondHand => "second hand",
        Evidence.Computed => "computed",
        Evidence.FromMemory => "**from memory**",
        _ => "common practice",
    };
}
