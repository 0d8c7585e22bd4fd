namespace Refrigerant.Recovery.Rules;

/// <summary>Whether a composition burns.</summary>
public enum FlammabilityVerdict
{
    /// <summary>It does not, by the published classes of its components or of the blend.</summary>
    DoesNotBurn = 0,

    /// <summary>It does: every component burns, or there is no less of those that do than in a blend that is classed so.</summary>
    Burns,

    /// <summary>The data do not allow a verdict: treat it as flammable.</summary>
    CannotTell,
}
