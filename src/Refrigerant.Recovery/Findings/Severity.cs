namespace Refrigerant.Recovery.Findings;

/// <summary>How much a <see cref="Finding"/> weighs, lightest first.</summary>
public enum Severity
{
    /// <summary>Good to know; nothing to do.</summary>
    Note = 0,

    /// <summary>Something to watch or to decide.</summary>
    Caution,

    /// <summary>Someone or something can be hurt, or the job does not reach its goal.</summary>
    Warning,

    /// <summary>Must not be done, or cannot be done, as asked.</summary>
    Stop,
}
