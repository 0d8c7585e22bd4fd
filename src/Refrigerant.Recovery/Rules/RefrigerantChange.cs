using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Oils;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Residuals;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Rules;

/// <summary>A recovery machine goes from one refrigerant to another: what it carries over into the next cylinder, as an estimate. Immutable.</summary>
/// <remarks>
/// <para>
/// Uncleared: what <see cref="MachineClearing"/> finds before it starts (liquid in the discharge hose and in a third of the machine, vapor at
/// the cylinder's pressure in the rest), vapor at the suction pressure in the suction hoses, and what the oil holds at that pressure (Raoult's
/// rule with a factor, as in <see cref="ResidualCharge"/>). Cleared: vapor at the clearing pressure in machine and suction hoses, vapor at the
/// cylinder's pressure in the discharge hose, and the oil at the clearing pressure; as oil gives off refrigerant late, its upper bound stays
/// that of the uncleared machine. After an oil change: a share of that oil.
/// </para>
/// <para>All of it is taken to reach the next cylinder. Local codes and licensed practice govern.</para>
/// </remarks>
public sealed record RefrigerantChange
{
    private RefrigerantChange(
        Fluid previous,
        Fluid next,
        Mass recovered,
        CrossContamination before,
        CrossContamination cleared,
        CrossContamination oilChanged,
        MachineClearing clearing,
        IReadOnlyList<Finding> findings)
    {
        Previous = previous;
        Next = next;
        NextRecovered = recovered;
        BeforeClearing = before;
        AfterClearing = cleared;
        AfterClearingAndOilChange = oilChanged;
        Clearing = clearing;
        Findings = Require.Copy(findings, nameof(findings));
    }

    /// <summary>The refrigerant of the last job.</summary>
    public Fluid Previous { get; }

    /// <summary>The refrigerant of the next job.</summary>
    public Fluid Next { get; }

    /// <summary>What the next job recovers.</summary>
    public Mass NextRecovered { get; }

    /// <summary>The machine as the last job left it.</summary>
    public CrossContamination BeforeClearing { get; }

    /// <summary>The machine after it has emptied itself into the last cylinder.</summary>
    public CrossContamination AfterClearing { get; }

    /// <summary>The machine cleared and its oil changed.</summary>
    public CrossContamination AfterClearingAndOilChange { get; }

    /// <summary>The clearing: how long it takes and how far it gets.</summary>
    public MachineClearing Clearing { get; }

    /// <summary>What to know, heaviest first.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Predicts what the machine carries over. Where both refrigerants are the same it carries over nothing foreign.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="previous">The refrigerant of the last job.</param>
    /// <param name="next">The refrigerant of the next job.</param>
    /// <param name="nextRecovered">What the next job recovers, greater than zero.</param>
    /// <param name="options">Hoses, oil, temperature and pressures; null for the defaults.</param>
    /// <exception cref="ArgumentNullException">The machine or a fluid is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not greater than zero, or not finite.</exception>
    /// <exception cref="PropertyRangeException">A state is outside the range of the previous refrigerant's equation.</exception>
    /// <example>
    /// <code>
    /// RefrigerantChange change = RefrigerantChange.Estimate(
    ///     RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
    ///     Fluid.Get("R-22"),
    ///     Fluid.Get("R-134a"),
    ///     Mass.FromKilograms(4));
    /// Console.WriteLine($"{change.BeforeClearing.MassFraction.Percent:F0} %"); // 10 %
    /// Console.WriteLine($"{change.AfterClearing.MassFraction.Percent:F2} %"); // 0.05 %
    /// </code>
    /// </example>
    public static RefrigerantChange Estimate(
        RecoveryMachine machine, Fluid previous, Fluid next, Mass nextRecovered, RefrigerantChangeOptions? options = null)
    {
        Require.NotNull(machine, nameof(machine));
        PropertyModel model = Require.NotNull(previous, nameof(previous)).Model;
        Require.NotNull(next, nameof(next));
        double recovered = Require.Positive(nextRecovered.Kilograms, "kg", nameof(nextRecovered));
        options ??= new RefrigerantChangeOptions();

        double kelvins = options.Temperature.Kelvins;
        double suction = options.SuctionPressure.Pascals;
        Pressure discharge = options.DischargePressure
            ?? new Pressure(model.SaturationAtTemperature(kelvins).Bubble.Pressure, PressureUnit.Pascal);
        double hose = options.Hoses is null ? 0 : HoseSet.VolumeOf(options.Hoses.VaporSide);
        MachineClearing clearing = MachineClearing.Estimate(
            previous,
            machine,
            options.Hoses is null ? 0 : HoseSet.VolumeOf(options.Hoses.Discharge),
            options.Temperature,
            discharge,
            options.ClearingPressure);
        double end = Math.Min(suction, clearing.FinalPressure.Pascals);

        double foreign = previous.Designation == next.Designation ? 0 : 1;
        double before = foreign * (clearing.HeldBefore.Kilograms + (hose * VaporDensity.At(model, kelvins, suction, out _)));
        double after = foreign * (clearing.Trapped.Kilograms + (hose * VaporDensity.At(model, kelvins, end, out _)));
        MassRange oilBefore = default;
        MassRange oilAfter = default;
        if (options.Oil is ApplianceOil oil && foreign > 0)
        {
            oilBefore = DissolvedInOil.UpToLimit(model, kelvins, suction, oil, out _);
            MassRange settled = DissolvedInOil.UpToLimit(model, kelvins, end, oil, out _);
            oilAfter = new MassRange(settled.LowKilograms, settled.BestKilograms, oilBefore.HighKilograms, oilBefore.IsLowerBound);
        }

        double stays = options.OilThatStays.DecimalFractions;
        CrossContamination[] states =
        [
            new(before, oilBefore, recovered),
            new(after, oilAfter, recovered),
            new(after, oilAfter.Times(stays), recovered),
        ];
        return new RefrigerantChange(
            previous, next, nextRecovered, states[0], states[1], states[2], clearing, FindingsFor(previous, next, recovered, states, options));
    }

    /// <summary>The three shares, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Previous.Designation} in {Next.Designation}: {BeforeClearing.MassFraction.Percent:G3} % by mass uncleared, {AfterClearing.MassFraction.Percent:G3} % cleared, {AfterClearingAndOilChange.MassFraction.Percent:G3} % with the oil changed");

    private static IReadOnlyList<Finding> FindingsFor(
        Fluid previous, Fluid next, double recovered, CrossContamination[] states, RefrigerantChangeOptions options)
    {
        if (previous.Designation == next.Designation)
        {
            return
            [
                new Finding(
                    RuleCodes.SameRefrigerant,
                    Severity.Note,
                    Sources.CommonPractice,
                    $"The refrigerant stays {next.Designation}: nothing foreign is carried over."),
            ];
        }

        string[] names = ["Uncleared", "Cleared", "Cleared and with its oil changed"];
        string[] cures = ["clear it", "change its oil too", "evacuate it, or give this recovery a cylinder of its own"];
        List<Finding> findings = [];
        for (int i = 0; i < states.Length; i++)
        {
            if (!states[i].IsWithinLimit)
            {
                findings.Add(Exceeds(names[i], cures[i], previous, next, recovered, states[i]));
            }
        }

        OilFamilies oils = RefrigerantFacts.For(previous).Oils & RefrigerantFacts.For(next).Oils;
        if (options.Oil is null)
        {
            findings.Add(new Finding(
                RuleCodes.MachineOilNotGiven,
                Severity.Note,
                SolubilityTable.Source,
                $"No oil was given for the machine: what its oil holds, if it has any, is not counted."));
        }
        else if (oils == OilFamilies.None)
        {
            findings.Add(new Finding(
                RuleCodes.NoCommonOil,
                Severity.Caution,
                OilServiceFigures.Families.Source,
                $"{previous.Designation} and {next.Designation} have no oil in common by customary use: see the maker's data on the oil of the machine."));
        }

        findings.Add(new Finding(
            RuleCodes.ChangeEstimate,
            Severity.Note,
            Sources.CommonPractice,
            $"An estimate from above: everything in machine and hoses is taken to reach the next cylinder, and an uncleared machine to be a third full of liquid. Local codes and licensed practice govern."));
        return [.. findings.OrderByDescending(finding => finding.Severity)];
    }

    private static Finding Exceeds(string name, string cure, Fluid previous, Fluid next, double recovered, CrossContamination state)
    {
        bool surely = state.MassFraction.DecimalFractions > PurityFigures.VolatileImpurities;
        FormattableString least = state.LeastRecovered is Mass mass
            ? $"It is within the limit from {FindingValue.Mass("least", mass, RoundingMode.Up)}."
            : (FormattableString)$"The oil may hold more: its pressure is too near saturation for the estimate.";
        return new Finding(
            RuleCodes.CarriesOver,
            surely ? Severity.Warning : Severity.Caution,
            PurityFigures.Volatile.Source,
            $"{name}, the machine puts {FindingValue.Share("share", state.MassFraction)} by mass of {previous.Designation} (up to {FindingValue.Share("highest", state.HighestMassFraction)}) into {FindingValue.Kilograms("recovered", recovered)} of {next.Designation}; the purity standard allows {FindingValue.Fraction("allowed", PurityFigures.VolatileImpurities)}: {cure}.",
            least);
    }
}
