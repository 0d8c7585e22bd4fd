namespace Refrigerant.Recovery.Planning;

/// <summary>Decides what is done next in a job. Implementations hold no state of a job: the same one may serve many jobs at once.</summary>
public interface IRecoveryStrategy
{
    /// <summary>The next step; null where nothing is left to do.</summary>
    /// <param name="now">Where everything stands, what was done so far, and a simulation to look ahead with.</param>
    PlanStep? Next(PlanSituation now);
}
