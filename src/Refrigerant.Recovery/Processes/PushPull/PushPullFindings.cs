using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Simulation;

namespace Refrigerant.Recovery.Processes;

/// <summary>What a push-pull should make people think of.</summary>
internal static class PushPullFindings
{
    /// <summary>Below these masses of liquid push-pull is not worth it, kg: 10 to 15 lb (common practice, no source).</summary>
    private const double NotWorthIt = 10 * 0.45359237;
    private const double HardlyWorthIt = 15 * 0.45359237;

    /// <summary>Below this share of the machine's own pace the hoses are worth a word.</summary>
    private const double SlowLine = 0.8;

    public static void Add(List<Finding> findings, Appliance appliance, Stage stage, StageEnd end)
    {
        double liquid = stage.Before.Appliance.LiquidMass.Kilograms;
        if (liquid < HardlyWorthIt)
        {
            findings.Add(new Finding(
                liquid < NotWorthIt ? Severity.Caution : Severity.Note,
                FindingSubject.PushPull,
                FormattableString.Invariant($"With {liquid:F1} kg of liquid push-pull {(liquid < NotWorthIt ? "is not worth it" : "is hardly worth it")} (below 10 to 15 lb)."),
                Sources.CommonPractice));
        }

        if (stage.Figures.SuctionLineShare < SlowLine)
        {
            findings.Add(new Finding(
                Severity.Note,
                FindingSubject.HoseLimited,
                FormattableString.Invariant($"The hoses set the pace: {stage.Figures.SuctionLineShare * 100:F0} % of what the machine could move. Wider or shorter ones make it faster."),
                "Darcy–Weisbach with Churchill's friction factor"));
        }

        if (stage.Figures.DeepestFlashing > 0.02)
        {
            findings.Add(new Finding(
                stage.Figures.DeepestFlashing > 0.1 ? Severity.Caution : Severity.Note,
                FindingSubject.Flashing,
                FormattableString.Invariant($"The cylinder is up to {stage.Figures.DeepestFlashing * 100:F0} % below the saturation pressure of the appliance's liquid: it flashes on its way, and the flow is an estimate."),
                "homogeneous equilibrium flow"));
        }

        if (end == StageEnd.CylinderFull)
        {
            double recovered = stage.Figures.LiquidMoved;
            findings.Add(new Finding(
                Severity.Warning,
                FindingSubject.CylinderOverfill,
                FormattableString.Invariant($"The cylinder reaches its limit after {recovered:F1} kg of liquid. Close the liquid valve by the scale: liquid keeps siphoning when the machine stops."),
                "cylinder filling limit; siphoning: common practice, no source"));
        }
        else if (end != StageEnd.LiquidGone)
        {
            findings.Add(new Finding(
                Severity.Warning,
                FindingSubject.PushPull,
                end == StageEnd.PropertyRange
                    ? $"The liquid flashes in the cylinder to {(DryIce.CanForm(appliance.Fluid) ? "dry ice" : "below the range of the refrigerant's equation")}, and the rest is not computed: let vapor in first, until the pressures are equal."
                    : $"The push-pull ends early ({end}): the liquid is not down to its heel.",
                "hydraulics of the liquid hose"));
        }
    }
}
