using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Rules;
using UnitsNet;

namespace Refrigerant.Recovery.Planning;

/// <summary>What is said before anything is connected: nothing is to be recovered, the appliance is above the machine's cut-out, the machine is not for what burns.</summary>
internal static class StartFindings
{
    public static IEnumerable<Finding> ToDo(PlanRun run)
    {
        if (run.NeedsNothing)
        {
            yield return Nothing(run);
            yield break;
        }

        if (run.StartsAboveCutout)
        {
            Barometer here = run.Job.Barometer;
            FindingValue stands = FindingValue.GaugePressure("appliance", here.ToGauge(run.PressureInThisAir), RoundingMode.Up);
            bool already = run.State.Appliance.HighestPressure > run.Job.Machine.HighPressureCutout;
            FindingValue cutout = FindingValue.GaugePressure("cut-out", here.ToGauge(run.Job.Machine.HighPressureCutout), RoundingMode.Down);
            yield return new Finding(
                PlanCodes.ApplianceAboveCutout,
                Severity.Stop,
                Sources.CommonPractice,
                already
                    ? $"The appliance stands at {stands}, above the machine's high-pressure cut-out of {cutout}: do not connect the machine. Bring one that is built for it, or let the appliance cool first."
                    : (FormattableString)$"As warm as this air the appliance comes to {stands}, above the machine's high-pressure cut-out of {cutout}: do not connect the machine, nor hoses and a cylinder that are not made for it. Bring what is built for it.");
        }

        if (!run.Job.Machine.ListedForFlammable && Burning(run.Job.Appliance.Fluid) is FormattableString burns)
        {
            yield return new Finding(
                PlanCodes.MachineNotListed,
                Severity.Stop,
                run.Requirement.Rules == RuleSet.UnitedStates ? "40 CFR 82 Subpart F Appendix B4" : Sources.CommonPractice,
                burns);
        }
    }

    private static Finding Nothing(PlanRun run)
    {
        Pressure stands = run.Job.Barometer.ToGauge(run.State.Appliance.Pressure);
        return new Finding(
            PlanCodes.NothingToRecover,
            run.State.Appliance.HasLiquid ? Severity.Warning : Severity.Note,
            run.Requirement.Source,
            $"Nothing is to be recovered: the appliance stands at {FindingValue.GaugePressure("appliance", stands, RoundingMode.Up)}, and the level before this opening is {FindingValue.GaugePressure("level", run.Job.Barometer.ToGauge(run.Goal), RoundingMode.Down)}.",
            run.State.Appliance.HasLiquid ? (FormattableString)$"{FindingValue.Mass("liquid", run.State.Appliance.LiquidMass)} of liquid stay inside, and it stands so low only while it is as cold as now: shut off the part that is opened, or recover. A gauge stays on it while it is open." : null,
            stands.Pascals < 0 ? (FormattableString)$"It is below the air: bring it up to the air's pressure, no higher than the level, before it is opened, or it draws air in." : null);
    }

    /// <summary>Why a refrigerant counts as one that burns; null where it does not, or where no component is known to.</summary>
    private static FormattableString? Burning(Fluid fluid)
    {
        FindingValue name = FindingValue.Text("refrigerant", fluid.Designation);
        if (RefrigerantFacts.For(fluid).IsFlammable is bool known)
        {
            return known ? (FormattableString)$"{name} burns and the machine is not listed for flammable refrigerants: do not use it for this job." : null;
        }

        FluidComponent[] burning = [.. fluid.Composition.Where(part => PureFacts.Find(part.Designation)?.Group is SourcedText group && group.Value[1] != '1')];
        return burning.Length == 0
            ? null
            : (FormattableString)$"{name} counts as one that burns: {FindingValue.Fraction("share that burns", burning.Sum(part => part.MassFraction))} of it by mass is {FindingValue.Text("components", string.Join(", ", burning.Select(part => part.Designation)))}, and no safety group tells that the blend does not. The machine is not listed for flammable refrigerants: do not use it for this job.";
    }
}
