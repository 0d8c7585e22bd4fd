using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
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
                RuleCodes.PushAbovePart,
                Severity.Stop,
                "pressure marked on the part",
                $"{FindingValue.GaugePascals("pressure", gauge)} is more than the {FindingValue.GaugePressure("allowed", allowable, RoundingMode.Down)} that the weakest part stands."));
        }

        if (!runsOut)
        {
            findings.Add(new Finding(
                RuleCodes.PushDoesNotRun,
                Severity.Stop,
                "Hagen–Poiseuille with static head",
                $"The oil does not run out at {FindingValue.GaugePascals("pressure", gauge)}: the hose rises by {FindingValue.Length("rise", Length.FromMeters(rise))}, which takes {FindingValue.PressureDifference("head", Pressure.FromPascals(Math.Max(0, risePressure)))}, or the oil is too thick for it."));
        }

        if (gauge > EvacuationFigures.OilChangeGauge + Rounding)
        {
            findings.Add(new Finding(
                RuleCodes.PushAboveOilChange,
                Severity.Warning,
                EvacuationFigures.OilChange.Source,
                $"{FindingValue.GaugePascals("pressure", gauge)} is above the {FindingValue.GaugePascals("allowed", EvacuationFigures.OilChangeGauge)} that an oil change allows while there is refrigerant in the appliance: recover it to the required level first."));
        }

        if (gauge > Rounding)
        {
            findings.Add(new Finding(
                RuleCodes.PushWithNitrogen,
                Severity.Caution,
                OilServiceFigures.Nitrogen.Source,
                $"Push oil with dry nitrogen only, through a regulator and a relief valve: compressed air or oxygen over hot oil explodes."));
            if (oil.AllowableGaugePressure is null)
            {
                findings.Add(new Finding(
                    RuleCodes.PushPartUnknown,
                    Severity.Caution,
                    Sources.CommonPractice,
                    $"What the weakest part stands (vessel, sight glass, hose) was not given: check it, and set the relief valve below it. When the oil is out, gas and oil spray from the hose: hold its end."));
            }
        }

        if (reynolds > OilServiceFigures.LaminarReynolds)
        {
            findings.Add(new Finding(
                RuleCodes.PushFlow,
                Severity.Note,
                "Churchill 1977, Chem. Eng. 84(24), 91",
                $"Reynolds number {FindingValue.Number("Reynolds number", reynolds)}: {(reynolds < OilServiceFigures.TurbulentReynolds ? "neither laminar nor fully turbulent, so the flow is uncertain by some 30 %" : "turbulent; friction by Churchill's equation")}."));
        }

        return findings.AsReadOnly();
    }
}
