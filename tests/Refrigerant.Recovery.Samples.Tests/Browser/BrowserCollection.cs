using Xunit;

namespace Refrigerant.Recovery.Samples.Tests.Browser;

/// <summary>All tests in the browser share one.</summary>
[CollectionDefinition(Name)]
public class BrowserCollection : ICollectionFixture<Chromium>
{
    public const string Name = "browser";
}
