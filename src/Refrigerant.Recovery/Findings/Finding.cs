using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Findings;

/// <summary>Something the caller should know about a result: what must not be done, will not get there, or rests on an estimate. Immutable.</summary>
/// <remarks>Programs act on <see cref="Code"/> and <see cref="Values"/>; people read the text, in their units.</remarks>
public sealed record Finding
{
    private readonly IReadOnlyList<FormattableString> _sentences;

    /// <summary>Creates a finding with a code.</summary>
    /// <param name="code">Its kind.</param>
    /// <param name="severity">How much it weighs.</param>
    /// <param name="source">The law, standard or paper behind it, or "common practice".</param>
    /// <param name="sentences">
    /// What it says, as interpolated strings; a <see cref="FindingValue"/> in them is written in the reader's units and is one of
    /// <see cref="Values"/>. Those that are null are left out.
    /// </param>
    /// <exception cref="ArgumentNullException">The code, the source or the list of sentences is null.</exception>
    /// <exception cref="ArgumentException">There is no sentence.</exception>
    /// <example>
    /// <code>
    /// FindingCode code = new("cart-too-weak", FindingSubject.Safety, "too heavy for it");
    /// Finding finding = new(
    ///     code,
    ///     Severity.Warning,
    ///     "common practice",
    ///     $"It will weigh {FindingValue.Mass("weight", Mass.FromKilograms(40))}.");
    /// Console.WriteLine(finding.ToText(DisplayUnits.International)); // It will weigh 40 kg.
    /// </code>
    /// </example>
    public Finding(FindingCode code, Severity severity, string source, params FormattableString?[] sentences)
    {
        Code = Require.NotNull(code, nameof(code)).Id;
        Severity = Require.Defined(severity, nameof(severity));
        Subject = code.Subject;
        Source = Require.NotNull(source, nameof(source));
        _sentences = [.. Require.NotNull(sentences, nameof(sentences)).OfType<FormattableString>()];
        Values = new ValueList<FindingValue>(_sentences.SelectMany(sentence => sentence.GetArguments()).OfType<FindingValue>().ToArray());
        if (_sentences.Count == 0)
        {
            throw new ArgumentException($"{nameof(sentences)} is empty; a finding says something.", nameof(sentences));
        }
    }

    /// <summary>Its stable code, such as "cylinder-over-limit": see <see cref="FindingCodes"/>.</summary>
    public string Code { get; }

    /// <summary>How much it weighs.</summary>
    public Severity Severity { get; }

    /// <summary>What it is about.</summary>
    public FindingSubject Subject { get; }

    /// <summary>The values in its text, in their order, typed.</summary>
    public IReadOnlyList<FindingValue> Values { get; }

    /// <summary>What it says, in US customary units.</summary>
    public string Message => field ??= ToText(DisplayUnits.UnitedStatesCustomary);

    /// <summary>The law, standard or paper behind it, or "common practice".</summary>
    public string Source { get; }

    /// <summary>Whether two findings say the same of the same values.</summary>
    /// <param name="other">The other, or null.</param>
    public bool Equals(Finding? other) => other is not null
        && Code == other.Code && Severity == other.Severity && Subject == other.Subject && Source == other.Source && Values.Equals(other.Values) && Message == other.Message;

    /// <inheritdoc/>
    public override int GetHashCode() => Code.GetHashCode() ^ Values.GetHashCode();

    /// <summary>What it says, in the reader's units; culture-invariant.</summary>
    /// <param name="units">The units.</param>
    public string ToText(DisplayUnits units) => string.Join(" ", _sentences.Select(sentence => Text(sentence, units)));

    /// <summary>The first value of that name; null where there is none.</summary>
    /// <param name="name">Such as "limit".</param>
    public FindingValue? Value(string name)
    {
        foreach (FindingValue value in Values)
        {
            if (value.Name == name)
            {
                return value;
            }
        }

        return null;
    }

    /// <summary>The same, after a sentence of its own, with another weight.</summary>
    internal Finding As(Severity severity, FormattableString lead) => new(FindingCodes.Find(Code)!, severity, Source, [lead, .. _sentences]);

    /// <summary>Severity, subject and message.</summary>
    public override string ToString() => $"{Severity} ({Subject}): {Message}";

    private static string Text(FormattableString sentence, DisplayUnits units)
    {
        object?[] arguments = sentence.GetArguments();
        object?[] texts = new object?[arguments.Length];
        for (int i = 0; i < texts.Length; i++)
        {
            texts[i] = arguments[i] is FindingValue value ? value.ToText(units) : arguments[i];
        }

        return string.Format(CultureInfo.InvariantCulture, sentence.Format, texts);
    }
}
