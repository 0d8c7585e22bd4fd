using System;
using Microsoft.CodeAnalysis;

namespace Refrigerant.Recovery.Mutation;

/// <summary>One change of the code: what stands there, and what would.</summary>
/// <param name="Kind">Which kind of change.</param>
/// <param name="Node">What is changed.</param>
/// <param name="Change">Makes the changed node from the node, whose inner nodes may have been changed; null where the statement goes.</param>
internal sealed record Mutant(string Kind, SyntaxNode Node, Func<SyntaxNode, SyntaxNode>? Change)
{
    /// <summary>Number of the mutant among those of a run, from 1.</summary>
    public int Id { get; set; }

    /// <summary>The layer that it was chosen from, and its number there.</summary>
    public string Layer { get; set; } = string.Empty;

    public int Number { get; set; }

    /// <summary>File, relative to the library.</summary>
    public string File { get; set; } = string.Empty;

    /// <summary>Name of the file, without folder and extension.</summary>
    public string Whole => System.IO.Path.GetFileNameWithoutExtension(File);

    /// <summary>First word of it.</summary>
    public string Word
    {
        get
        {
            string name = Whole;
            int end = 1;
            while (end < name.Length && !char.IsUpper(name[end]))
            {
                end++;
            }

            return name[..end];
        }
    }

    public override string ToString() => FormattableString.Invariant(
        $"{Layer}:{Number} {File}:{Node.GetLocation().GetLineSpan().StartLinePosition.Line + 1} {Kind}: {Short(Node.ToString())}{(Change is null ? "" : " => " + Short(Change(Node).ToString()))}");

    private static string Short(string text)
    {
        const int Longest = 110;
        text = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return text.Length <= Longest ? text : text[..Longest] + "…";
    }
}
