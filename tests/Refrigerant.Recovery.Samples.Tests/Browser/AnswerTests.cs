using System;
using System.Linq;
using OpenQA.Selenium;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Residuals;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Samples.Tests.Browser;

/// <summary>Forms filled as a person fills them give the library's own numbers.</summary>
[Collection(BrowserCollection.Name)]
public class AnswerTests(Chromium browser)
{
    private static readonly Barometer Denver = Barometer.AtElevation(Length.FromFeet(5280));

    [BrowserFact]
    public void PressureAndTemperature()
    {
        browser.Open("?page=pressure&units=us");
        browser.Choose("fluid", "R-407C");
        browser.Type("elevation", "5280");
        browser.Type("temperature", "86");
        browser.Type("gauge", "150");

        var fluid = Fluid.Get("R-407C");
        SaturationState warm = fluid.SaturationAt(Temperature.FromDegreesFahrenheit(86));
        SaturationState pressed = fluid.SaturationAt(Denver.FromGauge(Pressure.FromPoundsForcePerSquareInch(150)));
        browser.Shows("bubble-gauge", Text($"{Denver.ToGauge(warm.Bubble.Pressure).PoundsForcePerSquareInch:F1} psig"));
        browser.Shows("dew-gauge", Text($"{Denver.ToGauge(warm.Dew.Pressure).PoundsForcePerSquareInch:F1} psig"));
        browser.Shows("dew-absolute", Text($"{warm.Dew.Pressure.PoundsForcePerSquareInch:F1} psia"));
        browser.Shows("bubble-temperature", Text($"{pressed.Bubble.Temperature.DegreesFahrenheit:F1} °F"));
        browser.Shows("dew-temperature", Text($"{pressed.Dew.Temperature.DegreesFahrenheit:F1} °F"));
    }

    [BrowserFact]
    public void HowMuchIntoThisCylinder()
    {
        browser.Open("?page=fill&units=us");
        browser.Choose("fluid", "R-32");
        browser.Choose("mark", "4BW400");
        browser.Type("wc", "123");
        browser.Type("tare", "55");
        browser.Type("scale", "71.5");

        FillLimit limit = CylinderFill.Limit(
            RecoveryCylinder.FromMark("4BW400", Mass.FromPounds(123), Mass.FromPounds(55)) with { Content = Mass.FromPounds(16.5), Refrigerant = "R-32" }, Fluid.Get("R-32"));
        browser.Shows("gross", Text($"{limit.MaximumGrossWeight.Pounds:F2} lb"));
        browser.Shows("fill", Text($"{limit.MaximumFill.Pounds:F2} lb"));
        browser.Shows("room", Text($"{limit.Room.Pounds:F2} lb"));
        browser.Shows("rule", limit.GoverningRule.Name);
    }

    [BrowserFact]
    public void WhatIsLeft()
    {
        browser.Open("?page=left&units=si");
        browser.Choose("fluid", "R-134a");
        browser.Type("charge", "140");
        browser.Type("volume", "320");
        browser.Type("temperature", "12");
        browser.Type("vacuum", "50");
        browser.Type("elevation", "1600");

        Pressure pressure = Barometer.AtElevation(Length.FromMeters(1600)).FromVacuum(Pressure.FromKilopascals(50));
        var left = ResidualCharge.Estimate(
            Fluid.Get("R-134a"), Volume.FromLiters(320), Temperature.FromDegreesCelsius(12), pressure, new ResidualOptions { Charge = Mass.FromKilograms(140) });
        browser.Shows("left", left.Total.Best.Kilograms < 1 ? Text($"{left.Total.Best.Grams:F1} g") : Text($"{left.Total.Best.Kilograms:F2} kg"));
        browser.Shows("share", Text($"{left.FractionOfCharge!.Value.Percent:F1} %"));
        browser.Shows("absolute", Text($"{pressure.Kilopascals:F1} kPa abs"));
    }

    [BrowserFact]
    public void RequiredLevel()
    {
        browser.Open("?page=level&units=us");
        browser.Choose("fluid", "R-134a");
        browser.Type("charge", "400");
        browser.Type("elevation", "5280");

        var level = EvacuationRequirement.For(Fluid.Get("R-134a"), Mass.FromPounds(400), new EvacuationOptions { Barometer = Denver });
        browser.Shows("gauge-reading", Text($"{Mercury.ToInches(Denver.ToVacuum(level.RequiredPressure)):F1} inHg vacuum"));
        browser.Shows("rule", $"{level.Rule.Rule}, {level.Rule.Figure}");
        browser.Choose("purpose", nameof(OpeningPurpose.OilChange));
        browser.Shows("gauge-reading", "5.0 psig");
    }

    /// <summary>The two runtimes may round a figure of a long simulation to either side: words are the same, figures to one in their last digit and a thousandth.</summary>
    private static void AssertShows(string expected, string shown)
    {
        string pattern = System.Text.RegularExpressions.Regex.Replace(System.Text.RegularExpressions.Regex.Escape(expected), @"\d+(\\?\.\d+)?", @"(\d+(?:\.\d+)?)");
        string[] figures = [.. System.Text.RegularExpressions.Regex.Matches(expected, @"\d+(\.\d+)?").Select(match => match.Value)];
        Assert.True(
            System.Text.RegularExpressions.Regex.Matches(shown, pattern).Any(match => figures.Select((figure, i) => (figure, Shown: match.Groups[i + 1].Value)).All(pair => Near(pair.figure, pair.Shown))),
            $"not shown: {expected}\nin: {shown}");
    }

    private static bool Near(string expected, string shown)
    {
        int decimals = expected.Contains('.') ? expected.Length - expected.IndexOf('.') - 1 : 0;
        double a = double.Parse(expected, System.Globalization.CultureInfo.InvariantCulture);
        double b = double.Parse(shown, System.Globalization.CultureInfo.InvariantCulture);
        return Math.Abs(a - b) <= (1.001 * Math.Pow(10, -decimals)) + (1e-3 * a);
    }

    private static string Words(string text) => System.Text.RegularExpressions.Regex.Replace(text, @"[\d.,]+", "#");

    [BrowserFact]
    public void AWholePlan()
    {
        browser.Open("?page=plan&units=si");
        browser.Choose("fluid", "R-404A");
        browser.Type("charge", "18");
        browser.Type("volume", "45");
        browser.Type("temperature", "20");
        browser.Type("bore", "8");
        browser.Type("hose", "1.5");
        browser.Type("displacement", "0.6");
        browser.Type("wc", "21.6");
        browser.Type("tare", "12.5");
        browser.Choose("count", "2");
        browser.Find("#core").Click();

        Hose hose = new() { Length = Length.FromMeters(1.5), InnerDiameter = Length.FromMillimeters(8), Fittings = [Fitting.CoreDepressor()] };
        RecoveryPlan plan = RecoveryPlanner.Plan(new RecoveryJob
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get("R-404A"),
                Charge = Mass.FromKilograms(18),
                InternalVolume = Volume.FromLiters(45),
                Temperature = Temperature.FromDegreesCelsius(20),
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.6)),
            Hoses = new HoseSet { VaporSide = [hose], Discharge = [hose] },
            Cylinders = [.. Enumerable.Range(1, 2).Select(number =>
                RecoveryCylinder.FromMark("4BA400", Mass.FromKilograms(21.6), Mass.FromKilograms(12.5)) with { Label = $"C{number}" })],
            Barometer = Barometer.AtElevation(Length.FromMeters(0)),
        });
        browser.Shows("time", TimeSpan.FromSeconds(Math.Round(plan.TotalDuration.Seconds)).ToString(@"h\:mm\:ss", null));
        browser.Shows("recovered", Text($"{plan.Ledger.InCylinders.Kilograms:F2} kg"));
        Assert.Equal(plan.Stages.Count, browser.All("#stages tbody tr").Count);

        string shown = browser.Find(".answer").Text;
        Assert.All(plan.Findings.Concat(plan.Cautions), finding => AssertShows(finding.ToText(DisplayUnits.International), shown));
        Assert.NotEmpty(browser.All("svg polyline"));

        // Each kind of stage once, with all that its hookup says.
        PlannedStage[] kinds = [.. plan.Stages.GroupBy(stage => stage.Kind).Select(group => group.First())];
        Assert.Equal(kinds.Length, browser.All("figure.hookup").Count);
        string hookups = Words(browser.Find("#hookups").Text);
        Assert.All(kinds.SelectMany(stage => stage.Hookup.Settings), setting => Assert.Contains(Words(setting.ToString()), hookups));
        Assert.All(kinds.SelectMany(stage => stage.Hookup.Lines), line => Assert.Contains(Words(line.ToString()), hookups));
    }

    [BrowserFact]
    public void WhichRefrigerantIsThis()
    {
        browser.Open("?page=which&units=us");
        browser.Type("gauge", "121");
        browser.Type("gauge-error", "2");
        browser.Type("temperature", "70");
        browser.Type("temperature-error", "1");

        var answer = RefrigerantIdentification.From(
            Barometer.AtElevation(Length.FromFeet(0)).FromGauge(Pressure.FromPoundsForcePerSquareInch(121)),
            Temperature.FromDegreesFahrenheit(70),
            Pressure.FromPoundsForcePerSquareInch(2),
            TemperatureDelta.FromDegreesFahrenheit(1),
            [Fluid.Get("R-22"), Fluid.Get("R-134a")]);
        Assert.Equal("R-22", Assert.Single(answer.Candidates).Fluid.Designation);
        browser.Until(() => browser.All("#candidates tbody tr").Any(row => row.Text.StartsWith("R-22 yes", StringComparison.Ordinal)), "R-22 that fits");
        Assert.DoesNotContain("R-134a", browser.Find("#candidates").Text);
        Assert.Contains("An identifier decides", browser.Find(".answer").Text);
    }

    [BrowserFact]
    public void TheAddressHoldsWhatWasEntered()
    {
        browser.Open("?page=fill&units=us");
        browser.Choose("fluid", "R-22");
        browser.Type("wc", "50");
        string answer = Settled("gross");
        string link = new Uri(browser.Driver.Url).Query;
        browser.Open("?page=pressure");
        browser.Open(link);
        browser.Shows("gross", answer);
        Assert.Equal("50", browser.Find("#wc").GetDomProperty("value"));
        Assert.Equal("R-22", browser.Find("#fluid").GetDomProperty("value"));
    }

    [BrowserFact]
    public void TheUnitsSwitchKeepsTheAnswer()
    {
        browser.Open("?page=fill&units=us&wc=50&tare=27.5&scale=30&fluid=R-134a");
        FillLimit limit = CylinderFill.Limit(
            RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(50), Mass.FromPounds(27.5)) with { Content = Mass.FromPounds(2.5), Refrigerant = "R-134a" }, Fluid.Get("R-134a"));
        browser.Shows("room", Text($"{limit.Room.Pounds:F2} lb"));
        browser.All(".units input")[1].Click();
        browser.Shows("room", Text($"{limit.Room.Kilograms:F2} kg"));
        Assert.Equal("22.6796", browser.Find("#wc").GetDomProperty("value"));
    }

    [BrowserFact]
    public void WhatCannotBeIsSaidAtTheField()
    {
        browser.Open("?page=fill&units=us");
        browser.Type("wc", "heavy");
        browser.Shows("wc-note", "Give a number.");
        Assert.Equal("true", browser.Find("#wc").GetDomAttribute("aria-invalid"));
        Assert.Contains("Water capacity", browser.Find(".problem").Text);

        browser.Type("wc", "-5");
        string words = Assert.ThrowsAny<ArgumentException>(() => RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(-5), Mass.FromPounds(27.5))).Message;
        browser.Until(() => browser.Find(".problem").Text.EndsWith(words, StringComparison.Ordinal), words);
        browser.Type("wc", "50");
        browser.Until(() => browser.All(".problem").Count == 0, "an answer");
    }

    [BrowserFact]
    public void NothingIsLoggedAsAnErrorAndNothingLeavesTheMachine()
    {
        browser.Open("?page=plan");
        browser.Find("nav a").Click();
        browser.Find("#bubble-gauge");
        Assert.Empty(browser.Driver.Manage().Logs.GetLog(LogType.Browser).Select(entry => entry.Message));
        var asked = (System.Collections.ObjectModel.ReadOnlyCollection<object>)browser.Script("return performance.getEntriesByType('resource').map(entry => new URL(entry.name).host)")!;
        Assert.All(asked, host => Assert.StartsWith("localhost", (string)host));
    }

    private string Settled(string id)
    {
        string before = browser.Find("#" + id).Text;
        browser.Until(() => before == (before = browser.Find("#" + id).Text), id);
        return before;
    }

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
