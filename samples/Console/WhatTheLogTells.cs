using System;
using System.IO;
using System.Linq;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Records;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Console;

/// <summary>A job that is done, told by its log: machine, hose and appliance for the next plan.</summary>
internal static class WhatTheLogTells
{
    public static void Show()
    {
        Screen.Heading("What does the log of the last job tell?");

        string csv = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "log.csv"));
        RecoveryJob told = RecoveryJobJson.Read(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "logged-job.json")));
        JobLog log = JobLogCsv.Read(csv);
        JobCalibration fit = JobCalibration.Fit(told, log);
        FittedAppliance cabinet = fit.Appliances[0];

        Screen.Say($"A display cabinet with {told.Appliance.Fluid.Designation}, {log}:");
        Screen.Table(
            ["  fitted", "told", "best", "low", "high", "spread left"],
            [
                Row("displacement, L/s", fit.Displacement, value => value.LitersPerSecond),
                Row("clearance", fit.ClearanceRatio, value => value),
                Row("hoses, times what they should resist", fit.HoseResistance, value => value),
                Row("charge, kg", cabinet.Charge, value => value.Kilograms),
                Row("internal volume, L", cabinet.InternalVolume, value => value.Liters),
                Row("heat resistance, K/W", cabinet.HeatResistance, value => value.SquareMeterKelvinsPerWatt),
                Row("metal, kg of steel", cabinet.MetalMass, value => value.Kilograms),
            ]);
        foreach (var finding in fit.Findings)
        {
            Screen.Wrap("  ", finding.Message);
        }

        Duration planned = RecoveryPlanner.Plan(told).TotalDuration;
        Duration next = RecoveryPlanner.Plan(fit.Jobs.Single()).TotalDuration;
        Screen.Say(FormattableString.Invariant($"  Planned as told it takes {planned.Minutes:F0} min, planned with what the log tells {next.Minutes:F0} min."));
    }

    private static string[] Row<T>(string name, FittedValue<T> fitted, Func<T, double> value)
        where T : struct, IFormattable =>
    [
        "  " + name,
        FormattableString.Invariant($"{value(fitted.Told):G3}"),
        FormattableString.Invariant($"{value(fitted.Best):G3}"),
        FormattableString.Invariant($"{value(fitted.Low):G3}"),
        FormattableString.Invariant($"{value(fitted.High):G3}"),
        FormattableString.Invariant($"{fitted.SpreadKept.Percent:F0} %"),
    ];
}
