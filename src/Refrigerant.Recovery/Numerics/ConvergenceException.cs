using System;

namespace Refrigerant.Recovery.Numerics;

/// <summary>
/// An iteration reached its bound without meeting its tolerance. The message says what was solved, for which input, how many
/// steps were taken and how far it got. It is never thrown for input that is outside a documented range.
/// </summary>
public sealed class ConvergenceException : Exception
{
    /// <summary>Creates the exception.</summary>
    /// <param name="message">What was solved, for which input, and how far it got.</param>
    /// <param name="iterations">The number of steps taken.</param>
    public ConvergenceException(string message, int iterations)
        : base(message) => Iterations = iterations;

    /// <summary>The number of steps taken before the iteration gave up.</summary>
    public int Iterations { get; }
}
