using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.Linq;
using Xunit;
using Xunit.Abstractions;

namespace Refrigerant.Recovery.Samples.Tests.Browser;

/// <summary>
/// How long a reader waits is printed: the time on the clock, and the processor time of the page's thread, which does not hang on what else the machine does.
/// What fails is an answer that does not come; docs/places.md states the times.
/// </summary>
[Collection(BrowserCollection.Name)]
public class SpeedTests : IDisposable
{
    private readonly Chromium _browser;
    private readonly ITestOutputHelper _output;

    public SpeedTests(Chromium browser, ITestOutputHelper output)
    {
        _browser = browser;
        _output = output;
        if (BrowserFactAttribute.WhyMissing is null)
        {
            Command("Performance.enable", new Dictionary<string, object?> { ["timeDomain"] = "threadTicks" });
        }
    }

    public void Dispose()
    {
        if (BrowserFactAttribute.WhyMissing is null)
        {
            Command("Performance.disable", []);
        }

        GC.SuppressFinalize(this);
    }

    [BrowserFact]
    public void FirstAnswerComesFromTheCache()
    {
        _browser.Open("?page=pressure");
        Measure("first answer", fresh: true, () =>
        {
            _browser.Open("?page=fill");
            _browser.Find("#gross");
        });
    }

    [BrowserFact]
    public void AnotherPlanComes()
    {
        _browser.Open("?page=plan");
        string before = _browser.Find("#time").Text;
        Measure("plan", fresh: false, () =>
        {
            _browser.Type("charge", "14");
            _browser.Until(() => _browser.Find("#time").Text != before, "another plan");
        });
    }

    private void Measure(string name, bool fresh, Action action)
    {
        TimeSpan before = fresh ? TimeSpan.Zero : Spent();
        var watch = Stopwatch.StartNew();
        action();
        TimeSpan clock = watch.Elapsed;
        TimeSpan spent = Spent() - before;
        _output.WriteLine(FormattableString.Invariant($"{name}: {clock.TotalSeconds:F2} s on the clock, {spent.TotalSeconds:F2} s of the page's thread"));
        Assert.True(spent > TimeSpan.Zero);
    }

    /// <summary>Processor time of the page's thread since the page was opened.</summary>
    private TimeSpan Spent()
    {
        var answer = (Dictionary<string, object>)Command("Performance.getMetrics", [])!;
        Dictionary<string, object> task = ((object[])answer["metrics"]).Cast<Dictionary<string, object>>().Single(metric => (string)metric["name"] == "TaskDuration");
        return TimeSpan.FromSeconds(Convert.ToDouble(task["value"], CultureInfo.InvariantCulture));
    }

    private object? Command(string name, Dictionary<string, object?> parameters) => _browser.Driver.ExecuteCdpCommand(name, parameters);
}
