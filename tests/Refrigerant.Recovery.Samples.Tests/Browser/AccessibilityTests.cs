using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.IO;
using System.Linq;
using OpenQA.Selenium;
using Xunit;

namespace Refrigerant.Recovery.Samples.Tests.Browser;

/// <summary>Every calculator, on a phone and on a laptop: what axe-core finds, what the keyboard reaches, what runs over the edge.</summary>
[Collection(BrowserCollection.Name)]
public class AccessibilityTests(Chromium browser)
{
    public static TheoryData<string, int> Pages()
    {
        TheoryData<string, int> pages = [];
        foreach (string page in new[] { "pressure", "fill", "left", "level", "plan", "which" })
        {
            pages.Add(page, Chromium.Phone);
            pages.Add(page, Chromium.Laptop);
        }

        return pages;
    }

    [AxeTheory]
    [MemberData(nameof(Pages))]
    public void IsForEveryone(string page, int width)
    {
        browser.Width(width);
        browser.Open($"?page={page}");
        browser.Picture($"{page}-{width}");

        browser.Script(File.ReadAllText(AxeTheoryAttribute.Axe));
        var violations = (ReadOnlyCollection<object>)browser.Driver.ExecuteAsyncScript(
            "const done = arguments[0]; axe.run().then(r => done(r.violations.map(v => v.id + ': ' + v.help + ' ' + v.nodes.map(n => n.target).join(' '))));")!;
        Assert.Empty(violations);

        long over = (long)browser.Script("return document.documentElement.scrollWidth - window.innerWidth")!;
        Assert.True(over <= 0, $"{over} pixels run over the edge.");
        browser.Width(Chromium.Laptop);
    }

    [BrowserTheory]
    [InlineData("fill")]
    [InlineData("plan")]
    public void TheKeyboardReachesEverythingInOrder(string page)
    {
        browser.Open($"?page={page}");
        List<string> reached = [];
        IWebElement start = browser.Find("h1");
        browser.Script("arguments[0].focus()", start);
        string[] expected = [.. browser.All("form input, form select").Select(field => field.GetDomAttribute("id")!)];
        for (int i = 0; i < expected.Length + 5 && reached.LastOrDefault() != expected[^1]; i++)
        {
            browser.Driver.SwitchTo().ActiveElement().SendKeys(Keys.Tab);
            IWebElement now = browser.Driver.SwitchTo().ActiveElement();
            if (now.GetDomAttribute("id") is { Length: > 0 } id)
            {
                reached.Add(id);
                Assert.NotEqual("none", now.GetCssValue("outline-style"));
            }
        }

        Assert.Equal(expected, reached);
    }
}
