namespace Refrigerant.Recovery.Numerics;

/// <summary>What the integrator does at an event.</summary>
internal enum EventAction
{
    /// <summary>Ends the integration there.</summary>
    Stop = 0,

    /// <summary>Goes on with a new step from there, so that a jump of f or of its derivatives lies between two steps.</summary>
    Resume,
}
