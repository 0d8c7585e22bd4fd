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

    public static void Add(List<Finding> findings, Appliance appliance, Stage stage, StageEnd end, ApplianceState after)
    {
        SectionFindings.Add(findings, appliance, after);
        double liquid = stage.Before.Appliance.LiquidMass.Kilograms;
        if (liquid < HardlyWorthIt)
        {
            findings.Add(new Finding(
                StageCodes.PushHardlyPays,
                liquid < NotWorthIt ? Severity.Caution : Severity.Note,
                Sources.CommonPractice,
                $"With {FindingValue.Kilograms("liquid", liquid)} of liquid push-pull {(liquid < NotWorthIt ? "is not worth it" : "is hardly worth it")} (below 5 to 7 kg, 10 to 15 lb)."));
        }

        if (stage.Figures.SuctionLineShare < SlowLine)
        {
            findings.Add(new Finding(
                PlanCodes.HosesSlow,
                Severity.Note,
                "Darcy–Weisbach with Churchill's friction factor",
                $"The hoses set the pace: {FindingValue.Fraction("share", stage.Figures.SuctionLineShare)} of what the machine could move. Wider or shorter ones make it faster."));
        }

        if (stage.Figures.DeepestFlashing > 0.02)
        {
            findings.Add(new Finding(
                StageCodes.LiquidFlashes,
                stage.Figures.DeepestFlashing > 0.1 ? Severity.Caution : Severity.Note,
                "homogeneous equilibrium flow",
                $"The cylinder is up to {FindingValue.Fraction("below", stage.Figures.DeepestFlashing)} below the saturation pressure of the appliance's liquid: it flashes on its way, and the flow is an estimate."));
        }

        if (end == StageEnd.CylinderFull)
        {
            findings.Add(new Finding(
                StageCodes.SiphonsAtLimit,
                Severity.Warning,
                "cylinder filling limit; siphoning: common practice, no source",
                $"The cylinder reaches its limit after {FindingValue.Kilograms("liquid", stage.Figures.LiquidMoved)} of liquid. Close the liquid valve by the scale: liquid keeps siphoning when the machine stops."));
        }
        else if (end == StageEnd.PropertyRange)
        {
            findings.Add(new Finding(
                StageCodes.FlashesInCylinder,
                Severity.Warning,
                "hydraulics of the liquid hose",
                $"The liquid flashes in the cylinder to {(DryIce.CanForm(appliance.Fluid) ? "dry ice" : "below the range of the refrigerant's equation")}, and the rest is not computed: let vapor in first, until the pressures are equal."));
        }
        else if (end == StageEnd.DesignPressure)
        {
            FindingValue limit = FindingValue.Pascals("limit", stage.HighestAppliancePressure ?? 0);
            findings.Add(new Finding(
                StageCodes.DesignPressure,
                Severity.Warning,
                "design pressure as given",
                $"The push-pull ends early: the appliance comes to {limit}, what it is built for or its relief device opens at. Throttle the machine's inlet, or take the rest as vapor."));
        }
        else if (end != StageEnd.LiquidGone)
        {
            findings.Add(new Finding(
                StageCodes.PushEndsEarly,
                Severity.Warning,
                "hydraulics of the liquid hose",
                $"The push-pull ends early, because {FindingValue.Text("reason", StageEnds.Why(end))}: the liquid is not down to its heel."));
        }
    }
}
