namespace Refrigerant.Recovery.Planning;

/// <summary>How hoses and machine are found when a stage begins.</summary>
/// <param name="Moved">What moved refrigerant last; null for nothing yet.</param>
/// <param name="Hooked">The kind of stage that the hoses are connected for; null for none yet.</param>
/// <param name="MachineFull">Whether the machine and the hose behind it hold liquid: it ran, and was not cleared.</param>
internal readonly record struct HosesNow(StageKind? Moved, StageKind? Hooked, bool MachineFull)
{
    /// <summary>Whether liquid flowed last, and goes on flowing by itself.</summary>
    public bool HasLiquid => Moved is StageKind.PushPull or StageKind.LiquidRecovery;
}
