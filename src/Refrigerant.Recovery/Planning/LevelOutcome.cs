namespace Refrigerant.Recovery.Planning;

/// <summary>What a plan comes to against the level.</summary>
public enum LevelOutcome
{
    /// <summary>The level is not reached.</summary>
    NotReached = 0,

    /// <summary>The level is reached, and the pressure stays at it or below over the hold asked for.</summary>
    ReachedAndHeld,

    /// <summary>The level is reached; no hold was asked for.</summary>
    Reached,

    /// <summary>The level is reached, but the pressure comes back above it, or the hold asked for was not made.</summary>
    ReachedNotHeld,

    /// <summary>The gauge shows the level, but over cold liquid: it is not done.</summary>
    ReachedOverLiquid,

    /// <summary>The share of the charge that the rule asks for instead of a pressure is recovered.</summary>
    ShareRecovered,

    /// <summary>The appliance stands at the level of an oil change before anything is done, and nothing is to be recovered.</summary>
    NothingToRecover,
}
