using System;
using System.Linq;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Findings;

/// <summary>A kind of finding: its stable code, what it is about and what triggers it. Immutable.</summary>
/// <remarks>The library's own are in <see cref="FindingCodes"/>. An application may raise findings with codes of its own.</remarks>
public sealed record FindingCode
{
    /// <summary>Creates a kind of finding.</summary>
    /// <param name="id">Its code: lower-case letters, digits and hyphens, such as "cylinder-over-limit".</param>
    /// <param name="subject">What it is about.</param>
    /// <param name="trigger">What triggers it, a sentence without full stop.</param>
    /// <exception cref="ArgumentNullException">The code or the trigger is null.</exception>
    /// <exception cref="ArgumentException">The code is empty or has other characters.</exception>
    public FindingCode(string id, FindingSubject subject, string trigger)
    {
        Id = Require.NotNull(id, nameof(id));
        if (id.Length == 0 || !id.All(c => c is (>= 'a' and <= 'z') or (>= '0' and <= '9') or '-'))
        {
            throw new ArgumentException($"{nameof(id)} is \"{id}\"; it must be lower-case letters, digits and hyphens.", nameof(id));
        }

        Subject = Require.Defined(subject, nameof(subject));
        Trigger = Require.NotNull(trigger, nameof(trigger));
    }

    /// <summary>The code: stable, for programs.</summary>
    public string Id { get; }

    /// <summary>What it is about.</summary>
    public FindingSubject Subject { get; }

    /// <summary>What triggers it.</summary>
    public string Trigger { get; }

    /// <summary>The code.</summary>
    public override string ToString() => Id;
}
