using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;

namespace Refrigerant.Recovery.Fluids;

/// <summary>A designation names no fluid of the catalogue.</summary>
public sealed class UnknownFluidException : ArgumentException
{
    private const int LongestShown = 60;

    internal UnknownFluidException(string designation, IReadOnlyList<string> suggestions, string parameter)
        : base(
            suggestions.Count == 0
                ? $"No refrigerant is designated \"{Shown(designation)}\"."
                : $"No refrigerant is designated \"{Shown(designation)}\". Did you mean {string.Join(" or ", suggestions)}?",
            parameter)
    {
        Designation = designation;
        Suggestions = new ReadOnlyCollection<string>([.. suggestions]);
    }

    /// <summary>The designation that was asked for.</summary>
    public string Designation { get; }

    /// <summary>Designations near the one asked for, best first.</summary>
    public IReadOnlyList<string> Suggestions { get; }

    private static string Shown(string designation) => designation.Length <= LongestShown ? designation : designation.Substring(0, LongestShown) + "…";
}
