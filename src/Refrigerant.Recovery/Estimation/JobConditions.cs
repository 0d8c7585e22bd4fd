namespace Refrigerant.Recovery.Estimation;

/// <summary>The conditions there are: whoever goes through them goes from the first to the last of these.</summary>
internal static class JobConditions
{
    public const JobCondition First = JobCondition.ColdPool;

    public const JobCondition Last = JobCondition.StandingPressureInconsistent;

    public const int Count = (int)Last + 1;
}
