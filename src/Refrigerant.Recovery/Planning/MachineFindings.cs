using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>The machine: how hot it gets, what its past asks for.</summary>
internal static class MachineFindings
{
    /// <summary>Discharge above this shortens the life of oil and valves, K: 121 °C, 250 °F (common practice, no source).</summary>
    private const double WarmDischarge = 394.15;

    /// <summary>Above this it breaks down oil, K: 149 °C, 300 °F (common practice, no source).</summary>
    private const double HotDischarge = 422.15;

    /// <summary>Above this its oil turns to coke at the valves, K: 175 °C, 347 °F (common practice, no source).</summary>
    private const double CokingDischarge = 448.15;

    /// <summary>Above this no machine of the trade is meant to run, K: 220 °C (common practice, no source); one without a thermal cut-out would.</summary>
    private const double TooHot = 493.15;

    private const string Ammonia = "R-717";
    private const string CarbonDioxide = "R-744";

    public static IEnumerable<Finding> ToDo(PlanRun run)
    {
        double hottest = run.Stages.Select(stage => stage.Result).OfType<StageResult>().Max(result => result.HottestDischarge?.Kelvins) ?? 0;
        bool tripped = run.Stages.Any(stage => stage.Result?.End == StageEnd.ThermalCutout);
        if (hottest > TooHot)
        {
            yield return new Finding(
                PlanCodes.MachineHot,
                Severity.Stop,
                Sources.CommonPractice,
                $"The machine's discharge would come to {FindingValue.Temperature("discharge", new Temperature(hottest, TemperatureUnit.Kelvin))}, which no oil and no valve stands ({FindingValue.Temperature("limit", new Temperature(HotDischarge, TemperatureUnit.Kelvin))}): not with this machine as things stand. Cool the cylinder with ice and water, or bring a machine with two stages; a thermal cut-out saves the machine, not the job.");
        }
        else if (hottest > WarmDischarge || tripped)
        {
            yield return new Finding(
                PlanCodes.MachineHot,
                hottest > CokingDischarge ? Severity.Warning : hottest > HotDischarge || tripped ? Severity.Caution : Severity.Note,
                Sources.CommonPractice,
                $"The machine's discharge comes to {FindingValue.Temperature("discharge", new Temperature(hottest, TemperatureUnit.Kelvin))}; its oil stands {FindingValue.Temperature("limit", new Temperature(HotDischarge, TemperatureUnit.Kelvin))}: let it rest where it labors, or cool the cylinder.");
        }

        if (run.Job.ClearMachine && run.IsAtLimit && run.MachineHoldsLiquid)
        {
            yield return new Finding(
                PlanCodes.MachineNotCleared,
                Severity.Warning,
                "cylinder filling limit",
                $"The machine is not cleared: {FindingValue.Text("cylinder", run.Connected!.Cylinder.Label)} is at its limit, and the {FindingValue.Mass("kept", new Mass(run.InHosesAndMachine, MassUnit.Kilogram))} in machine and hoses would overfill it. Shut the cylinder, leave them in the machine, and clear it into the next cylinder before it comes off.");
        }

        foreach (Finding finding in Past(run.Machine))
        {
            yield return finding;
        }

        if (run.Job.ForeignInMachine is Fluid last)
        {
            foreach (Finding finding in Held(run, last))
            {
                yield return finding;
            }
        }
    }

    /// <summary>Cleared or not, machine and oil still hold some of the last refrigerant: what burns meets the air of the sweep, what is toxic whoever opens it.</summary>
    private static IEnumerable<Finding> Held(PlanRun run, Fluid last)
    {
        RefrigerantFacts facts = RefrigerantFacts.For(last);
        FindingValue name = FindingValue.Text("last refrigerant", last.Designation);
        if (facts.IsFlammable == true)
        {
            yield return new Finding(
                PlanCodes.MachineHeldFlammable,
                Severity.Warning,
                Sources.CommonPractice,
                $"The machine last held {name}, which burns, and what is left in it and in its oil still does, cleared as it is: before hoses are swept, or air comes into it in any other way, send dry nitrogen through it in the open, with nothing near that could light it.",
                run.Job.Machine.ListedForFlammable ? null : (System.FormattableString)$"It is not listed for flammable refrigerants and should not have held it: have it looked at before it is switched on.");
        }

        if (facts.IsToxic == true)
        {
            bool ammonia = last.Composition.Any(part => part.Designation == Ammonia);
            yield return new Finding(
                PlanCodes.MachineHeldToxic,
                Severity.Warning,
                Sources.CommonPractice,
                $"The machine last held {name}, which is of higher toxicity, and what is left in it and in its oil comes out where it is opened: ventilate, wear protection, and send dry nitrogen through it first.",
                !ammonia ? null
                    : run.Job.Appliance.Fluid.Composition.Any(part => part.Designation == CarbonDioxide)
                        ? (System.FormattableString)$"Ammonia and carbon dioxide make a salt that plugs valves: not with this machine."
                        : (System.FormattableString)$"Ammonia attacks copper and brass, which this appliance may be made of: such a machine is best kept for ammonia.");
        }
    }

    private static IEnumerable<Finding> Past(MachineChange machine)
    {
        if (machine.Past is not MachinePast past)
        {
            yield break;
        }

        if (machine.ClearsFirst)
        {
            yield return new Finding(
                PlanCodes.ClearMachineFirst,
                Severity.Warning,
                PurityFigures.Volatile.Source,
                $"Clear the machine into a separate cylinder of {FindingValue.Text("last refrigerant", past.Refrigerant!.Designation)}, none of this job's, before it is connected: uncleared it puts {FindingValue.Share("share", machine.Change!.BeforeClearing.MassFraction)} of it into this recovery.");
        }

        if (machine.ChangesOil)
        {
            string why = machine.DoesNotMatch ? "it does not go with this refrigerant"
                : machine.CarriesOver ? "it holds too much of the last refrigerant"
                : "it has run as long as its maker allows";
            FindingValue nitrogen = FindingValue.GaugePressure("nitrogen", new Pressure(MachineChange.NitrogenGauge, PressureUnit.Pascal));
            FindingValue compressor = FindingValue.Volume("compressor", past.CompressorOil);
            yield return new Finding(
                PlanCodes.ChangeMachineOil,
                Severity.Warning,
                Sources.CommonPractice,
                $"Change the machine's oil before the job: {FindingValue.Text("reason", why)}. Refill {compressor} into the compressor",
                past.SeparatorOil.CubicMeters > 0
                    ? $"and {FindingValue.Volume("separator", past.SeparatorOil)} into the separator, each by measure; drain under dry nitrogen at {nitrogen}."
                    : (System.FormattableString)$"by measure; drain under dry nitrogen at {nitrogen}.");
        }

        if (machine.Carried is CrossContamination { IsWithinLimit: false } carried)
        {
            yield return new Finding(
                PlanCodes.MachineCarriesOver,
                Severity.Warning,
                PurityFigures.Volatile.Source,
                $"The machine still carries {FindingValue.Share("share", carried.MassFraction)} of {FindingValue.Text("last refrigerant", past.Refrigerant!.Designation)} into this recovery (up to {FindingValue.Share("highest share", carried.HighestMassFraction)}; the purity standard allows 0.5 %): evacuate it, or give this recovery a cylinder of its own.");
        }
    }
}
