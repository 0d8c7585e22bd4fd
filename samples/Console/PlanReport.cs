using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Console;

/// <summary>A plan as tables that a technician can read: SI beside inch-pound units, findings last.</summary>
internal static class PlanReport
{
    public static void Show(string title, RecoveryPlan plan)
    {
        Screen.Heading(title);
        Appliance appliance = plan.Job.Appliance;
        Barometer air = plan.Job.Barometer;
        Screen.Say(FormattableString.Invariant(
            $"{appliance.Fluid.Designation}, {appliance.Charge.Kilograms:F1} kg ({appliance.Charge.Pounds:F1} lb) in {appliance.InternalVolume.Liters:F0} L at {appliance.Temperature.DegreesCelsius:F0} °C ({appliance.Temperature.DegreesFahrenheit:F0} °F); {air}."));
        SaturationState saturation = appliance.Fluid.SaturationAt(Pressure.FromKilopascals(101.325));
        if (appliance.Fluid.IsBlend)
        {
            string parts = string.Join(", ", appliance.Fluid.Composition.Select(c => FormattableString.Invariant($"{c.Designation} {c.MassFraction * 100:F1} %")));
            Screen.Say(FormattableString.Invariant($"A blend ({parts} by mass) with a glide of {saturation.Glide.Kelvins:F1} K at one atmosphere."));
        }

        Screen.Say(FormattableString.Invariant(
            $"Required: {plan.Requirement.RequiredPressure.Kilopascals:F2} kPa absolute, {OnGauge(plan.Requirement.RequiredPressure, air)} on the gauge here ({plan.Requirement.Source})."));
        System.Console.WriteLine();
        Stages(plan);
        System.Console.WriteLine();
        Cylinders(plan);
        System.Console.WriteLine();
        Ledger(plan);
        Drift(plan);
        System.Console.WriteLine();
        Screen.Say(plan.Verdict.ToString());
        List("To do", plan.ToDo);
        System.Console.WriteLine();
        List("It rests on", plan.RestsOn);
        System.Console.WriteLine();
        List("Cautions", plan.Cautions);
    }

    private static void List(string title, IReadOnlyList<Finding> findings)
    {
        Screen.Say(title);
        foreach (Finding finding in findings)
        {
            Screen.Wrap($"  {finding.Severity.ToString().ToLowerInvariant(),-8} ", $"{finding.Message} [{finding.Source}]", Colour(finding.Severity));
        }
    }

    private static void Stages(RecoveryPlan plan)
    {
        Screen.Table(
            ["stage", "cylinder", "from", "takes", "out of the appliance", "", "appliance after", "", "gauge here"],
            plan.Stages.Select(stage => new[]
            {
                StageNames.Of(stage.Kind),
                stage.Cylinder ?? "-",
                Clock(stage.Start),
                Clock(stage.Duration),
                FormattableString.Invariant($"{stage.Moved.Kilograms:F2} kg"),
                FormattableString.Invariant($"{stage.Moved.Pounds:F1} lb"),
                FormattableString.Invariant($"{stage.After.Temperature.DegreesCelsius:F1} °C"),
                FormattableString.Invariant($"{stage.After.Pressure.Kilopascals:F1} kPa abs"),
                OnGauge(stage.After.Pressure, plan.Job.Barometer),
            }));
        Screen.Say($"  time on site {Clock(plan.TotalDuration)} (h:mm:ss)");
    }

    private static void Cylinders(RecoveryPlan plan) => Screen.Table(
        ["cylinder", "before", "in", "", "scale shows", "", "of its limit", "pressure at the end", "governed by"],
        plan.Cylinders.Select(use => new[]
        {
            use.Cylinder.Label,
            FormattableString.Invariant($"{use.Cylinder.Content.Kilograms:F1} kg"),
            FormattableString.Invariant($"{use.Received.Kilograms:F2} kg"),
            FormattableString.Invariant($"{use.Received.Pounds:F1} lb"),
            FormattableString.Invariant($"{use.GrossWeight.Kilograms:F1} kg"),
            FormattableString.Invariant($"{use.GrossWeight.Pounds:F1} lb"),
            FormattableString.Invariant($"{use.ShareOfLimit.Percent:F0} %"),
            use.PressureAtEnd is { } pressure ? OnGauge(pressure, plan.Job.Barometer) : "not used",
            use.Limit.GoverningRule.Name,
        }));

    private static void Ledger(RecoveryPlan plan)
    {
        MassLedger ledger = plan.Ledger;
        Screen.Table(
            ["where the charge goes", "kg", "lb", "share"],
            new (string Name, Mass Mass)[]
            {
                ("in cylinders", ledger.InCylinders),
                ("in the appliance, vapor", ledger.VaporInAppliance),
                ("in the appliance, liquid", ledger.LiquidInAppliance),
                ("in its oil (estimate)", ledger.InOil),
                ("in hoses and machine", ledger.InHosesAndMachine),
                ("released at connections", ledger.Released),
                ("charge", ledger.Charge),
            }.Select(row => new[]
            {
                row.Name,
                FormattableString.Invariant($"{row.Mass.Kilograms:F3}"),
                FormattableString.Invariant($"{row.Mass.Pounds:F2}"),
                FormattableString.Invariant($"{row.Mass / ledger.Charge * 100:F2} %"),
            }));
    }

    private static void Drift(RecoveryPlan plan)
    {
        if (plan.Fractionation?.LastLiquid is { } last)
        {
            string liquid = string.Join(", ", last.Liquid!.Select(c => FormattableString.Invariant($"{c.Designation} {c.MassFraction * 100:F1} %")));
            System.Console.WriteLine();
            Screen.Say(FormattableString.Invariant(
                $"Vapor leaves richer in the volatile components: the last liquid is {liquid}, and boils under {last.Pressure.Kilopascals:F0} kPa where the blend as charged would under {last.FixedCompositionPressure.Kilopascals:F0} kPa absolute."));
        }
    }

    private static string Clock(Duration duration) => TimeSpan.FromSeconds(Math.Round(duration.Seconds)).ToString(@"h\:mm\:ss", CultureInfo.InvariantCulture);

    private static string OnGauge(Pressure absolute, Barometer air)
    {
        Pressure gauge = air.ToGauge(absolute);
        return gauge.Pascals < 0
            ? FormattableString.Invariant($"{Mercury.ToInches(air.ToVacuum(absolute)):F1} inHg vac")
            : FormattableString.Invariant($"{gauge.PoundsForcePerSquareInch:F1} psig");
    }

    private static string Colour(Severity severity) => severity switch
    {
        Severity.Stop => "31;1",
        Severity.Warning => "33;1",
        Severity.Caution => "33",
        _ => "0",
    };
}
