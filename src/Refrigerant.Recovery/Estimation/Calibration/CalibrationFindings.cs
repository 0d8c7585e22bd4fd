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
            yield return Warning("The fit did not come to rest: take its values as a first guess.");
        }

        if (fit.Misfit > LargestMisfit)
        {
            yield return Warning(FormattableString.Invariant($"The fitted model misses the readings by {fit.Misfit:F1} times what they are trusted to: the log shows something else than the job told, such as another refrigerant, a hose that was changed or a second vessel. What was told stands."));
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
                yield return new Finding(Severity.Note, FindingSubject.Readings, FormattableString.Invariant($"Liquid was pushed until {jobs[i].Log.Readings[fit.First[i]].Time.Seconds:F0} s{which}; the fit begins there."), Source);
            }

            double bias = (fit.Values[FitIndex.Set(i) + FitIndex.GaugeBias] - fit.Prior.Mean[FitIndex.Set(i) + FitIndex.GaugeBias]) / fit.Prior.Sigma[FitIndex.Set(i) + FitIndex.GaugeBias];
            if (Math.Abs(bias) > Stranger)
            {
                double kilopascals = fit.Values[FitIndex.Set(i) + FitIndex.GaugeBias] / 1e3;
                yield return Warning(FormattableString.Invariant($"The suction gauge{which} reads {Math.Abs(kilopascals):F0} kPa too {(kilopascals > 0 ? "high" : "low")} by the fit, where its class allows {options.Instruments.SuctionGauge.ErrorLimit.Kilopascals:F0} kPa: check its zero, and whether it shows absolute pressure."));
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
        new(Severity.Caution, FindingSubject.Estimate, $"The log could not tell {what}: what was told stands. {how}", Source);

    private static Finding Warning(string message) => new(Severity.Warning, FindingSubject.Readings, message, Source);
}
