using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using UnitsNet;

namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>What a fit could not tell, and what a log would need to tell it.</summary>
internal static class CalibrationFindings
{
    /// <summary>Above this misfit the log shows something else than the job told.</summary>
    public const double LargestMisfit = 1;

    /// <summary>Prior standard deviations beyond which a value is a stranger to what was told.</summary>
    private const double Stranger = 2.5;

    private const string Source = "fit of the reduced model; common practice";

    /// <summary>The findings of a fit.</summary>
    public static IEnumerable<Finding> Of(
        CalibrationFit fit,
        LoggedJob[] jobs,
        CalibrationOptions options,
        FittedValue<VolumeFlow> displacement,
        FittedValue<double> clearance,
        FittedValue<double> hose,
        FittedAppliance[] appliances)
    {
        if (!fit.Converged)
        {
            yield return Warning(ReadingCodes.FitUnsettled, $"The fit did not come to rest: take its values as a first guess.");
        }

        if (fit.Misfit > LargestMisfit)
        {
            yield return Warning(ReadingCodes.FitMisses, $"The fitted model misses the readings by {FindingValue.Number("misfit", fit.Misfit, 2)} times what they are trusted to: the log shows something else than the job told, such as another refrigerant, a hose that was changed or a second vessel. What was told stands.");
        }

        if (!hose.IsIdentified)
        {
            yield return Untold("the hoses' resistance", "Two rests of a minute with the valves open, one early and one late, would: the gauge then shows the appliance itself.");
        }

        if (!displacement.IsIdentified)
        {
            yield return Untold("the displacement", "A weight every few seconds in the first minutes would, on a scale that no hose pulls on.");
        }

        if (!clearance.IsIdentified)
        {
            yield return Untold("the clearance", "A deep pull with the discharge pressure read would: clearance shows where the pressure ratio is high.");
        }

        for (int i = 0; i < jobs.Length; i++)
        {
            string which = jobs.Length == 1 ? string.Empty : FormattableString.Invariant($" of log {i + 1}");
            FittedAppliance appliance = appliances[i];
            if (fit.First[i] > 0)
            {
                FindingValue time = FindingValue.Number("time in s", Math.Round(jobs[i].Log.Readings[fit.First[i]].Time.Seconds), 9);
                yield return new Finding(ReadingCodes.FitBeginsLater, Severity.Note, Source, $"Liquid was pushed until {time} s{which}; the fit begins there.");
            }

            double bias = (fit.Values[FitIndex.Set(i) + FitIndex.GaugeBias] - fit.Prior.Mean[FitIndex.Set(i) + FitIndex.GaugeBias]) / fit.Prior.Sigma[FitIndex.Set(i) + FitIndex.GaugeBias];
            if (Math.Abs(bias) > Stranger)
            {
                double off = fit.Values[FitIndex.Set(i) + FitIndex.GaugeBias];
                FindingValue by = FindingValue.PressureDifference("off by", Pressure.FromPascals(Math.Abs(off)));
                FindingValue allowed = FindingValue.PressureDifference("allowed", options.Instruments.SuctionGauge.ErrorLimit);
                yield return Warning(ReadingCodes.FitGaugeOff, $"The suction gauge{which} reads {by} too {(off > 0 ? "high" : "low")} by the fit, where its class allows {allowed}: check its zero, and whether it shows absolute pressure.");
            }

            foreach (Finding finding in Untold(appliance, which))
            {
                yield return finding;
            }
        }
    }

    private static IEnumerable<Finding> Untold(FittedAppliance appliance, string which)
    {
        if (!appliance.Charge.IsIdentified)
        {
            yield return Untold("the charge" + which, "A log until the level is reached would: what was left is then little.");
        }

        if (!appliance.InternalVolume.IsIdentified)
        {
            yield return Untold("the internal volume" + which, "Readings from the moment when the last liquid is gone down to the level, a few seconds apart, would.");
        }

        if (!appliance.HeatResistance.IsIdentified)
        {
            yield return Untold("the heat exchange" + which, "A rest of ten minutes while liquid is left would, with the temperature of the air.");
        }

        if (!appliance.MetalMass.IsIdentified)
        {
            yield return Untold("the metal" + which, "Readings every second in the first minutes would, and a rest of a minute.");
        }
    }

    private static Finding Untold(string what, string how) =>
        new(ReadingCodes.FitUntold, Severity.Caution, Source, $"The log could not tell {FindingValue.Text("what", what)}: what was told stands. {FindingValue.Text("how", how)}");

    private static Finding Warning(FindingCode code, FormattableString message) => new(code, Severity.Warning, Source, message);
}
