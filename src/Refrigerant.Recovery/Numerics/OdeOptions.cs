using System.Threading;

namespace Refrigerant.Recovery.Numerics;

/// <summary>Tolerance and bounds of an integration.</summary>
internal readonly struct OdeOptions
{
    public OdeOptions(double relativeTolerance, double maximumStep, int maximumSteps, double firstStep = 0, CancellationToken cancellation = default)
    {
        FirstStep = firstStep;
        Cancellation = cancellation;
        RelativeTolerance = relativeTolerance;
        MaximumStep = maximumStep;
        MaximumSteps = maximumSteps;
    }

    /// <summary>Local error allowed in a step, relative to the size of a component.</summary>
    public double RelativeTolerance { get; }

    /// <summary>Longest step, s, until a tenth of the time that has passed is longer.</summary>
    public double MaximumStep { get; }

    /// <summary>Bound on attempted steps, accepted or not.</summary>
    public int MaximumSteps { get; }

    /// <summary>Looked at before each step.</summary>
    public CancellationToken Cancellation { get; }

    /// <summary>Step to begin with, s; estimated where it is zero.</summary>
    public double FirstStep { get; }
}
