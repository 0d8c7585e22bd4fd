using System;

namespace Refrigerant.Recovery.Planning;

/// <summary>A job that cannot be: its parts contradict each other. What cannot be done, though it can be, is a plan that says so.</summary>
public sealed class ImpossibleJobException : ArgumentException
{
    /// <summary>Creates the exception.</summary>
    /// <param name="message">What contradicts what, with values and units.</param>
    /// <param name="parameter">The property of the job that is to blame.</param>
    /// <param name="inner">What was thrown where it was found; null for nothing.</param>
    public ImpossibleJobException(string message, string parameter, Exception? inner = null)
        : base(message, parameter, inner)
    {
    }
}
