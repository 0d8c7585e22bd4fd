using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;

namespace Refrigerant.Recovery.CoolProp.Tests.Conformance;

/// <summary>The table of worst deviations, as Markdown.</summary>
internal static class ConformanceReport
{
    public const string PathVariable = "COOLPROP_CONFORMANCE_REPORT";

    private static readonly string[] Columns =
    [
        "saturation pressure", "saturated liquid density", "saturated vapor density", "saturated enthalpy", "saturated entropy", "density",
        "enthalpy", "entropy", "cp", "speed of sound",
    ];

    public static string Path =>
        Environment.GetEnvironmentVariable(PathVariable) is { Length: > 0 } path ? path
        : System.IO.Path.Combine(AppContext.BaseDirectory, "coolprop-conformance.md");

    public static string Write(CoolPropLibrary library, IReadOnlyList<Comparison> compared, IReadOnlyList<string> unknown)
    {
        var text = new StringBuilder();
        text.AppendLine($"# The embedded engine against CoolProp {library.Version}").AppendLine();
        text.AppendLine(FormattableString.Invariant(
            $"{compared.Count} fluids, {compared.Sum(fluid => fluid.States)} states, of which CoolProp failed at {compared.Sum(fluid => fluid.Refused.Count)}."));
        text.AppendLine("Worst relative deviation; enthalpy relative to 100 kJ/kg, entropy relative to 500 J/(kg·K).").AppendLine();
        text.AppendLine($"| fluid | states | CoolProp failed | {string.Join(" | ", Columns)} |");
        text.AppendLine($"|---|---:|---:|{string.Concat(Columns.Select(_ => "---:|"))}");
        foreach (Comparison fluid in compared)
        {
            IEnumerable<string> cells = Columns.Select(column => fluid.Worsts.TryGetValue(column, out Comparison.Worst worst)
                ? FormattableString.Invariant($"{worst.Deviation:E1} ({worst.Temperature:F1} K)")
                : "–");
            text.AppendLine(FormattableString.Invariant(
                $"| {fluid.Designation} | {fluid.States} | {fluid.Refused.Count} | {string.Join(" | ", cells)} |"));
        }

        Section(text, "Not known to CoolProp", unknown);
        Section(text, "Where CoolProp failed (up to three states a fluid)", [.. compared.SelectMany(
            fluid => fluid.Refused.Take(3).Select(state => $"{fluid.Designation}, {state}"))]);
        string table = text.ToString();
        File.WriteAllText(Path, table);
        return table;
    }

    private static void Section(StringBuilder text, string title, IReadOnlyList<string> lines)
    {
        if (lines.Count == 0)
        {
            return;
        }

        text.AppendLine().AppendLine($"## {title}");
        foreach (string line in lines)
        {
            text.AppendLine($"- {line}");
        }
    }
}
