namespace Refrigerant.Recovery.Planning;

/// <summary>What the best plan is best at, among those that reach the level.</summary>
public enum PlanObjective
{
    /// <summary>The shortest time on site.</summary>
    TimeOnSite = 0,

    /// <summary>The fewest hours of people's work: handling and push-pull, where someone stays with it; a machine that pulls by itself counts a tenth (common practice, no source).</summary>
    PeopleHours,

    /// <summary>The least refrigerant left in appliance, hoses and air.</summary>
    KilogramsLeft,
}
