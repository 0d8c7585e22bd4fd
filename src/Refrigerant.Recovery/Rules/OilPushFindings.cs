using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using UnitsNet;

namespace Refrigerant.Recovery.Rules;

/// <summary>What should be known about oil that is pushed out.</summary>
internal static class OilPushFindings
{
    /// <summary>Pressures this near to a limit count as at it, Pa.</summary>
    private const double Rounding = 1;

    /// <summary>For a rise of the hose (m), the pressure that takes and the gauge pressure (Pa).</summary>
    public static IReadOnlyList<Finding> For(OilToDrain oil, double rise, double risePressure, double gauge, bool runsOut, double reynolds)
    {
        List<Finding> findings = [];
        if (oil.AllowableGaugePressure is Pressure allowable && gauge > allowable.Pascals + Rounding)
        {
            findings.Add(new Finding(
                Severity.Stop,
                FindingSubject.Oil,
                FormattableString.Invariant($"{gauge / 1000:F1} kPa gauge is more than the {allowable.Kilopascals:F1} kPa gauge that the weakest part stands."),
                "pressure marked on the part"));
        }

        if (!runsOut)
        {
            findings.Add(new Finding(
                Severity.Stop,
                FindingSubject.Oil,
                FormattableString.Invariant($"The oil does not run out at {gauge / 1000:F1} kPa gauge: the hose rises by {rise:F2} m, which takes {Math.Max(0, risePressure) / 1000:F1} kPa, or the oil is too thick for it."),
                "Hagen–Poiseuille with static head"));
        }

        if (gauge > EvacuationFigures.OilChangeGauge + Rounding)
        {
            findings.Add(new Finding(
                Severity.Warning,
                FindingSubject.Oil,
                FormattableString.Invariant($"{gauge / EvacuationFigures.PascalsPerPsi:F1} psig is above the 5 psig that an oil change allows while there is refrigerant in the appliance: recover it to the required level first."),
                EvacuationFigures.OilChange.Source));
        }

        if (gauge > Rounding)
        {
            findings.Add(new Finding(
                Severity.Caution,
                FindingSubject.Oil,
                "Push oil with dry nitrogen only, through a regulator and a relief valve: compressed air or oxygen over hot oil explodes.",
                OilServiceFigures.Nitrogen.Source));
            if (oil.AllowableGaugePressure is null)
            {
                findings.Add(new Finding(
                    Severity.Caution,
                    FindingSubject.Oil,
                    "What the weakest part stands (vessel, sight glass, hose) was not given: check it, and set the relief valve below it. When the oil is out, gas and oil spray from the hose: hold its end.",
                    Sources.CommonPractice));
            }
        }

        if (reynolds > OilServiceFigures.LaminarReynolds)
        {
            findings.Add(new Finding(
                Severity.Note,
                FindingSubject.Estimate,
                FormattableString.Invariant($"Reynolds number {reynolds:F0}: {(reynolds < OilServiceFigures.TurbulentReynolds ? "neither laminar nor fully turbulent, so the flow is uncertain by some 30 %" : "turbulent; friction by Churchill's equation")}."),
                "Churchill 1977, Chem. Eng. 84(24), 91"));
        }

        return findings.AsReadOnly();
    }
}
