using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Samples.Console;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Desk;

/// <summary>A plan as a Markdown page, SI beside inch-pound units.</summary>
internal static class MarkdownReport
{
    public static string Of(RecoveryPlan plan)
    {
        Appliance appliance = plan.Job.Appliance;
        var page = new StringBuilder();
        page.Append("# Recovery plan\n\n");
        page.Append(Line($"{appliance.Fluid.Designation}, {Both(appliance.Charge)}, in {appliance.InternalVolume.Liters:F0} L at {appliance.Temperature.DegreesCelsius:F0} °C ({appliance.Temperature.DegreesFahrenheit:F0} °F). Air at the place: {plan.Job.Barometer}."));
        page.Append(Line($"**{plan.Verdict}**; {plan.TotalDuration.Minutes:F0} min on site; {Both(plan.Ledger.InCylinders)} into cylinders."));
        page.Append(Line($"Required: {Pressure(plan.Requirement.RequiredPressure, plan.Job.Barometer)} ({plan.Requirement.Rule.Rule}; {plan.Requirement.Source}).").TrimEnd('\n') + "\n");

        Table(
            page,
            "Stages",
            ["stage", "cylinder", "starts", "takes", "out of the appliance", "appliance after"],
            plan.Stages.Select(stage => new[]
            {
                StageNames.Of(stage.Kind),
                stage.Cylinder ?? "–",
                Clock(stage.Start),
                Clock(stage.Duration),
                Both(stage.Moved),
                FormattableString.Invariant($"{stage.After.Temperature.DegreesCelsius:F0} °C, ") + Pressure(stage.After.Pressure, plan.Job.Barometer),
            }));
        Table(
            page,
            "Cylinders",
            ["cylinder", "receives", "on the scale after", "at most on the scale", "limited by"],
            plan.Cylinders.Select(use => new[]
            {
                use.Cylinder.Label, Both(use.Received), Both(use.GrossWeight), Both(use.Limit.MaximumGrossWeight), use.Limit.GoverningRule.ToString(),
            }));
        Table(
            page,
            "Where the charge goes",
            ["", "mass", "share"],
            new (string Name, Mass Mass)[]
            {
                ("in cylinders", plan.Ledger.InCylinders),
                ("in the appliance, vapor", plan.Ledger.VaporInAppliance),
                ("in the appliance, liquid", plan.Ledger.LiquidInAppliance),
                ("in its oil (estimate)", plan.Ledger.InOil),
                ("in hoses and machine", plan.Ledger.InHosesAndMachine),
                ("released at connections", plan.Ledger.Released),
            }.Select(row => new[] { row.Name, Both(row.Mass), FormattableString.Invariant($"{row.Mass / plan.Ledger.Charge * 100:F2} %") }));

        List(page, "To do", plan.ToDo);
        List(page, "It rests on", plan.RestsOn);
        List(page, "Cautions", plan.Cautions);

        page.Append("\n![The course of the recovery](recovery.svg)\n\n![What is connected to what](hookups.svg)\n");
        return page.ToString();
    }

    private static string Line(FormattableString text) => FormattableString.Invariant(text) + "\n\n";

    private static void Table(StringBuilder page, string title, string[] head, IEnumerable<string[]> rows)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n## {title}\n\n");
        foreach (string[] row in rows.Prepend([.. head.Select(_ => "---")]).Prepend(head))
        {
            page.Append("| ").AppendJoin(" | ", row.Select(cell => cell.Replace("|", "\\|", StringComparison.Ordinal))).Append(" |\n");
        }
    }

    private static void List(StringBuilder page, string title, IReadOnlyList<Finding> findings)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n## {title}\n\n");
        foreach (Finding finding in findings)
        {
            page.Append(CultureInfo.InvariantCulture, $"- **{finding.Severity}** ({finding.Subject}): {finding.Message} [{finding.Source}]\n");
        }
    }

    private static string Both(Mass mass) => FormattableString.Invariant($"{mass.Kilograms:F2} kg ({mass.Pounds:F2} lb)");

    private static string Pressure(Pressure absolute, Barometer air)
    {
        Pressure gauge = air.ToGauge(absolute);
        return FormattableString.Invariant($"{absolute.Kilopascals:F1} kPa absolute, ") + (gauge.Pascals < 0
            ? FormattableString.Invariant($"{-Mercury.ToInches(gauge):F1} inHg vacuum on the gauge")
            : FormattableString.Invariant($"{gauge.PoundsForcePerSquareInch:F1} psi on the gauge"));
    }

    private static string Clock(Duration duration) => TimeSpan.FromSeconds(Math.Round(duration.Seconds)).ToString(@"h\:mm\:ss", CultureInfo.InvariantCulture);
}
