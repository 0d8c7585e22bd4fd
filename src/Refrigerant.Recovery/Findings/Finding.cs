using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Findings;

/// <summary>Something the caller should know about a result: what must not be done, will not get there, or rests on an estimate.</summary>
public sealed class Finding
{
    /// <summary>Creates a finding.</summary>
    /// <param name="severity">How much it weighs.</param>
    /// <param name="subject">What it is about.</param>
    /// <param name="message">A sentence for people, with values and units.</param>
    /// <param name="source">The law, standard or paper behind it, or "common practice".</param>
    /// <exception cref="System.ArgumentNullException">The message or the source is null.</exception>
    public Finding(Severity severity, FindingSubject subject, string message, string source)
    {
        Severity = severity;
        Subject = subject;
        Message = Require.NotNull(message, nameof(message));
        Source = Require.NotNull(source, nameof(source));
    }

    /// <summary>How much it weighs.</summary>
    public Severity Severity { get; }

    /// <summary>What it is about.</summary>
    public FindingSubject Subject { get; }

    /// <summary>A sentence for people, with values and units.</summary>
    public string Message { get; }

    /// <summary>The law, standard or paper behind it, or "common practice".</summary>
    public string Source { get; }

    /// <summary>Severity, subject and message.</summary>
    public override string ToString() => $"{Severity} ({Subject}): {Message}";
}
