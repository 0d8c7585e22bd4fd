using System.IO;
using Xunit;

namespace Refrigerant.Recovery.Samples.Tests.Browser;

/// <summary>A test with axe-core in a real browser.</summary>
internal sealed class AxeTheoryAttribute : TheoryAttribute
{
    /// <summary>Skips where the browser, the site or axe-core is missing.</summary>
    public AxeTheoryAttribute() => Skip = BrowserFactAttribute.WhyMissing
        ?? (File.Exists(Axe) ? null : "axe-core is missing: npm ci --prefix tests/Refrigerant.Recovery.Samples.Tests/Browser");

    /// <summary>The checker, to be injected into a page.</summary>
    public static string Axe { get; } = Repository.At("tests", "Refrigerant.Recovery.Samples.Tests", "Browser", "node_modules", "axe-core", "axe.min.js");
}
