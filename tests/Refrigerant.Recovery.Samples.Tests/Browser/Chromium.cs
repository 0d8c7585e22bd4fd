using System;
using System.Collections.Generic;
using System.Collections.ObjectModel;
using System.IO;
using System.Linq;
using OpenQA.Selenium;
using OpenQA.Selenium.Chrome;
using Xunit;

namespace Refrigerant.Recovery.Samples.Tests.Browser;

/// <summary>A headless Chromium on the calculators; one for all tests, which run one after the other.</summary>
public sealed class Chromium : IDisposable
{
    /// <summary>The widths of a phone and of a laptop, in CSS pixels.</summary>
    public const int Phone = 390, Laptop = 1366;

    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    private readonly string _profile = Directory.CreateTempSubdirectory("chromium").FullName;
    private readonly Site? _site;
    private readonly ChromeDriver? _driver;

    public Chromium()
    {
        if (BrowserFactAttribute.WhyMissing is not null)
        {
            return;
        }

        _site = new Site();
        ChromeOptions options = new() { BinaryLocation = "/usr/bin/chromium" };
        options.AddArguments(
            "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
            "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage", "--hide-scrollbars", $"--user-data-dir={_profile}");
        options.SetLoggingPreference(LogType.Browser, LogLevel.Severe);
        _driver = new ChromeDriver(ChromeDriverService.CreateDefaultService("/usr/bin", "chromedriver"), options, TimeSpan.FromMinutes(2));
        Width(Laptop);
    }

    public ChromeDriver Driver => _driver ?? throw new InvalidOperationException("No browser.");

    public void Dispose()
    {
        _driver?.Quit();
        _site?.Dispose();
        Directory.Delete(_profile, recursive: true);
    }

    /// <summary>Opens a calculator by its address and waits for its answer.</summary>
    public void Open(string query)
    {
        Driver.Navigate().GoToUrl(new Uri(_site!.Root, "calculators/" + query));
        Find(".answer");
    }

    /// <summary>Sets the width of the page; phones are narrower than a window may be.</summary>
    public void Width(int width) => Driver.ExecuteCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        new Dictionary<string, object?> { ["width"] = width, ["height"] = 900, ["deviceScaleFactor"] = 1, ["mobile"] = width == Phone });

    /// <summary>An element, once it is there.</summary>
    public IWebElement Find(string selector)
    {
        IWebElement? found = null;
        Until(() => (found = All(selector).FirstOrDefault()) is not null, $"{selector} at {Driver.Url}");
        return found!;
    }

    public ReadOnlyCollection<IWebElement> All(string selector) => Driver.FindElements(By.CssSelector(selector));

    /// <summary>Types into a field, as a person does, and leaves it.</summary>
    public void Type(string id, string text)
    {
        IWebElement field = Find("#" + id);
        field.SendKeys(Keys.Control + "a");
        field.SendKeys(text + Keys.Tab);
    }

    /// <summary>Chooses in a list.</summary>
    public void Choose(string id, string value) => Find($"#{id} option[value=\"{value}\"]").Click();

    /// <summary>What an element says, once it says what is expected or the time is over.</summary>
    public void Shows(string id, string expected)
    {
        string said = string.Empty;
        bool same = Try(() => (said = Find("#" + id).Text) == expected);
        Assert.True(same, $"{id} says \"{said}\", not \"{expected}\", at {Driver.Url}");
    }

    public void Until(Func<bool> condition, string what) => Assert.True(Try(condition), "Never came: " + what);

    public object? Script(string script, params object[] arguments) => Driver.ExecuteScript(script, arguments);

    /// <summary>Keeps a picture where the environment asks for pictures.</summary>
    public void Picture(string name)
    {
        if (Environment.GetEnvironmentVariable("SCREENSHOTS") is not string folder)
        {
            return;
        }

        var page = (Dictionary<string, object>)Driver.ExecuteCdpCommand(
            "Page.captureScreenshot", new Dictionary<string, object?> { ["captureBeyondViewport"] = true })!;
        File.WriteAllBytes(Path.Combine(folder, name + ".png"), Convert.FromBase64String((string)page["data"]));
    }

    private static bool Try(Func<bool> condition)
    {
        DateTime end = DateTime.UtcNow + Longest;
        do
        {
            try
            {
                if (condition())
                {
                    return true;
                }
            }
            catch (Exception exception) when (exception is StaleElementReferenceException or NoSuchElementException)
            {
                // The page was drawn anew in between: look again.
            }

            System.Threading.Thread.Sleep(20);
        }
        while (DateTime.UtcNow < end);
        return false;
    }
}
