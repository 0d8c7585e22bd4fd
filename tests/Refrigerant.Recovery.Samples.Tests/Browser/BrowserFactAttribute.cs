using System.IO;
using Xunit;

namespace Refrigerant.Recovery.Samples.Tests.Browser;

/// <summary>A test in a real browser.</summary>
internal sealed class BrowserFactAttribute : FactAttribute
{
    /// <summary>Skips where the browser, its driver or the site is missing.</summary>
    public BrowserFactAttribute() => Skip = WhyMissing;

    internal static string? WhyMissing { get; } =
        !File.Exists("/usr/bin/chromium") || !File.Exists("/usr/bin/chromedriver") ? "No Chromium here: Debian's packages chromium and chromium-driver."
        : !File.Exists(Path.Combine(Site.Folder, "calculators", "index.html")) ? "The site is not built: run docs/build."
        : null;
}
