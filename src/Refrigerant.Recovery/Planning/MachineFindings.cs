using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Findings;
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

    /// <summary>Above this no machine of the trade is meant to run, K: 200 °C (common practice, no source); one without a thermal cut-out would.</summary>
    private const double TooHot = 473.15;

    public static IEnumerable<Finding> ToDo(PlanRun run)
    {
        double hottest = run.Stages.Select(stage => stage.Result).OfType<StageResult>().Max(result => result.HottestDischarge?.Kelvins) ?? 0;
        bool tripped = run.Stages.Any(stage => stage.Result?.End == StageEnd.ThermalCutout);
        if (hottest > TooHot)
        {
            yield return new Finding(
                PlanCodes.MachineHot,
                Severity.Warning,
                Sources.CommonPractice,
                $"The machine's discharge would come to {FindingValue.Temperature("discharge", new Temperature(hottest, TemperatureUnit.Kelvin))}, which no oil and no valve stands ({FindingValue.Temperature("limit", new Temperature(HotDischarge, TemperatureUnit.Kelvin))}): cool the cylinder, rest the machine often, and have one with a thermal cut-out, or two stages.");
        }
        else if (hottest > WarmDischarge || tripped)
        {
            yield return new Finding(
                PlanCodes.MachineHot,
                hottest > HotDischarge || tripped ? Severity.Caution : Severity.Note,
                Sources.CommonPractice,
                $"The machine's discharge comes to {FindingValue.Temperature("discharge", new Temperature(hottest, TemperatureUnit.Kelvin))}; its oil stands {FindingValue.Temperature("limit", new Temperature(HotDischarge, TemperatureUnit.Kelvin))}: let it rest where it labors, or cool the cylinder.");
        }

        foreach (Finding finding in Past(run.Machine))
        {
            yield return finding;
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
            FindingValue compressor = FindingValue.Volume("compressor", past.CompressorOil);
            yield return new Finding(
                PlanCodes.ChangeMachineOil,
                Severity.Warning,
                Sources.CommonPractice,
                $"Change the machine's oil before the job: {FindingValue.Text("reason", why)}. Refill {compressor} into the compressor",
                past.SeparatorOil.CubicMeters > 0
                    ? $"and {FindingValue.Volume("separator", past.SeparatorOil)} into the separator, each by measure; drain under dry nitrogen at 10 to 15 psi."
                    : (System.FormattableString)$"by measure; drain under dry nitrogen at 10 to 15 psi.");
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
