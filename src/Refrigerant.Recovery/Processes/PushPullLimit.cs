namespace Refrigerant.Recovery.Processes;

/// <summary>What sets the pace of a push-pull.</summary>
public enum PushPullLimit
{
    /// <summary>The machine: wider hoses would gain little.</summary>
    Machine = 0,

    /// <summary>The liquid hose: the machine could push more through a wider or shorter one.</summary>
    Hoses,
}
