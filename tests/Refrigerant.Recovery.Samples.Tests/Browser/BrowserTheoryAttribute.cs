using Xunit;

namespace Refrigerant.Recovery.Samples.Tests.Browser;

/// <summary>A test in a real browser, for several pages.</summary>
internal sealed class BrowserTheoryAttribute : TheoryAttribute
{
    /// <summary>Skips where the browser, its driver or the site is missing.</summary>
    public BrowserTheoryAttribute() => Skip = BrowserFactAttribute.WhyMissing;
}
