using System;
using System.IO;
using System.Linq;
using System.Text;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Rules;
using Xunit;

namespace Refrigerant.Recovery.Tests.Rules;

/// <summary>docs/rules.md is generated from the code; this test writes it when asked and compares it otherwise.</summary>
public sealed class RuleTableTests
{
    private const string UpdateVariable = "UPDATE_RULE_TABLE";

    [Fact]
    public void TheTableInDocs_IsTheOneOfTheCode()
    {
        string file = Path.Combine(Root(), "docs", "rules.md");
        string expected = Table();
        if (Environment.GetEnvironmentVariable(UpdateVariable) == "1")
        {
            File.WriteAllText(file, expected);
        }

        Assert.True(File.Exists(file), $"{file} is missing: run the tests with {UpdateVariable}=1.");
        Assert.Equal(expected, File.ReadAllText(file).Replace("\r\n", "\n", StringComparison.Ordinal));
    }

    [Fact]
    public void EveryFigure_HasRuleFigureSourceAndEdition()
    {
        Assert.True(RuleBook.All.Count > 80);
        Assert.All(RuleBook.All, figure =>
        {
            Assert.NotEmpty(figure.Rule);
            Assert.NotEmpty(figure.Figure);
            Assert.NotEmpty(figure.Source);
            Assert.NotEmpty(figure.Edition);
        });
        Assert.Equal(RuleBook.All.Count, RuleBook.All.Select(figure => figure.Rule).Distinct().Count());
        Assert.Equal("low-pressure appliance: 25 mmHg absolute (3.333 kPa) (40 CFR 82.156(a) Table 1)", RuleBook.All.Single(f => f.Rule == "low-pressure appliance").ToString());
    }

    private static string Table()
    {
        StringBuilder text = new();
        text.Append("# Rules, figures and sources\n\n");
        text.Append("Generated from the code. Do not edit; write it anew with\n\n");
        text.Append($"    {UpdateVariable}=1 dotnet test tests/Refrigerant.Recovery.Tests --filter RuleTableTests\n\n");
        text.Append("A figure that someone relies on legally is checked against the current text. Local codes and licensed practice govern.\n\n");
        text.Append("## Figures\n\n| rule | figure | source | edition | how read |\n|---|---|---|---|---|\n");
        foreach (RuleFigure row in RuleBook.All)
        {
            text.Append($"| {row.Rule} | {row.Figure} | {row.Source} | {row.Edition} | {Words(row.Evidence)} |\n");
        }

        text.Append("\n## Refrigerants\n\n");
        text.Append("Global warming potentials over 100 years: IPCC AR4 (2007), AR5 (2013), AR6 (2021). Safety groups: ASHRAE Standard 34, from memory. ");
        text.Append("An empty cell was not found. Potentials marked * are from memory; those of blends are mass-weighted from their components.\n\n");
        text.Append("| refrigerant | name | safety group | ODP | GWP AR4 | GWP AR5 | GWP AR6 |\n|---|---|---|---|---|---|---|\n");
        foreach (RefrigerantFacts facts in Fluid.All.Select(RefrigerantFacts.For))
        {
            text.Append($"| {facts.Fluid.Designation} | {facts.ChemicalName} | {facts.SafetyGroup} | {Cell(facts.OzoneDepletionPotential)} | ");
            text.Append($"{Cell(facts.GlobalWarmingPotential(AssessmentReport.Fourth))} | {Cell(facts.GlobalWarmingPotential(AssessmentReport.Fifth))} | {Cell(facts.GlobalWarmingPotential(AssessmentReport.Sixth))} |\n");
        }

        return text.ToString();
    }

    private static string Cell(SourcedFigure? figure) => figure is null ? ""
        : figure.Evidence == Evidence.Computed && figure.Value != 0 ? Math.Round(figure.Value, figure.Value < 10 ? 3 : 0).ToString(System.Globalization.CultureInfo.InvariantCulture)
        : figure + (figure.Evidence == Evidence.FromMemory ? "*" : "");

    private static string Words(Evidence evidence) => evidence switch
    {
        Evidence.Read => "read",
        Evidence.ReadSecondHand => "read second-hand",
        Evidence.Computed => "computed",
        Evidence.FromMemory => "from memory",
        Evidence.GivenByCaller => "given by the caller",
        _ => "common practice, no source",
    };

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Refrigerant.Recovery.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("No folder above the tests holds the solution.");
    }
}
