using Xunit;

namespace Refrigerant.Recovery.CoolProp.Tests;

/// <summary>A test on the stand-in library; skipped, with the reason, where it could not be compiled.</summary>
public sealed class StandInFactAttribute : FactAttribute
{
    /// <summary>Skips where the stand-in is missing.</summary>
    public StandInFactAttribute() => Skip = StandIn.WhyMissing;
}
