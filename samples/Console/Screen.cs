using System;
using System.Collections.Generic;
using System.Linq;

namespace Refrigerant.Recovery.Samples.Console;

/// <summary>Headings and tables for a terminal. Colour only where the terminal has it.</summary>
internal static class Screen
{
    private static readonly bool Colour =
        !System.Console.IsOutputRedirected
        && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
        && Environment.GetEnvironmentVariable("TERM") is not (null or "" or "dumb");

    public static void Heading(string text)
    {
        System.Console.WriteLine();
        System.Console.WriteLine(Paint(text, "1"));
        System.Console.WriteLine(new string('-', text.Length));
    }

    public static void Say(string text) => System.Console.WriteLine(text);

    /// <summary>A sentence broken at blanks so that no line is longer than 110 characters.</summary>
    public static void Wrap(string first, string text, string colour = "0")
    {
        const int Width = 110;
        string indent = new(' ', first.Length);
        var line = new List<string>();
        string start = first;
        foreach (string word in text.Split(' '))
        {
            if (start.Length + line.Sum(w => w.Length + 1) + word.Length > Width && line.Count > 0)
            {
                System.Console.WriteLine(Paint(start, colour) + string.Join(' ', line));
                line.Clear();
                start = indent;
            }

            line.Add(word);
        }

        System.Console.WriteLine(Paint(start, colour) + string.Join(' ', line));
    }

    /// <summary>A table with its head; the first column is text, the others are numbers and stand to the right.</summary>
    public static void Table(string[] head, IEnumerable<string[]> rows)
    {
        string[][] all = [.. rows];
        int[] widths = [.. head.Select((h, i) => all.Select(r => r[i].Length).Append(h.Length).Max())];
        System.Console.WriteLine(Paint(Line(head, widths), "4"));
        foreach (string[] row in all)
        {
            System.Console.WriteLine(Line(row, widths));
        }
    }

    private static string Line(string[] cells, int[] widths) =>
        "  " + string.Join("  ", cells.Select((c, i) => i == 0 ? c.PadRight(widths[i]) : c.PadLeft(widths[i])));

    private static string Paint(string text, string code) => Colour && code != "0" ? $"\u001b[{code}m{text}\u001b[0m" : text;
}
