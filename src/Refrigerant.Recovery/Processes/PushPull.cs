using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>
/// Push-pull: the machine draws vapor off the cylinder and pushes it, not condensed, onto the appliance's liquid, which flows through the
/// liquid hose into the cylinder.
/// </summary>
/// <remarks>A blend counts with its composition as charged. Planning figures: local codes and licensed practice govern. The liquid keeps siphoning when the machine stops: close the valve by the scale.</remarks>
public static class PushPull
{
    private const int MaximumSteps = 5000;
    private const int FewestSteps = 12;

    /// <summary>Below this share of the machine's own pace the hoses set it.</summary>
    private const double HoseLimitedBelow = 0.8;

    /// <summary>Below these masses of liquid push-pull is not worth it, kg: 10 to 15 lb (common practice, no source).</summary>
    private const double NotWorthIt = 10 * 0.45359237;
    private const double HardlyWorthIt = 15 * 0.45359237;

    /// <summary>Simulates a push-pull until the liquid is down to its heel or the cylinder at its limit.</summary>
    /// <param name="appliance">What the refrigerant is taken from; its liquid must be within reach.</param>
    /// <param name="machine">The recovery machine.</param>
    /// <param name="hoses">The hoses: a liquid side, and the others for the vapor.</param>
    /// <param name="cylinder">The receiving cylinder.</param>
    /// <param name="options">Start, limit and the share of the vapor that displaces liquid.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The liquid cannot be reached, there is no liquid hose, or a charge does not fit.</exception>
    /// <exception cref="PropertyRangeException">The starting state is outside the range of the refrigerant's equation.</exception>
    public static PushPullResult Simulate(
        Appliance appliance, RecoveryMachine machine, HoseSet hoses, RecoveryCylinder cylinder, PushPullOptions options)
    {
        PropertyModel model = Require.NotNull(appliance, nameof(appliance)).Fluid.Model;
        _ = Require.NotNull(machine, nameof(machine));
        _ = Require.NotNull(cylinder, nameof(cylinder));
        _ = Require.NotNull(options, nameof(options));
        if (Require.NotNull(hoses, nameof(hoses)).LiquidSide.Count == 0)
        {
            throw new ArgumentException("The hoses have no liquid side; push-pull needs a liquid hose.", nameof(hoses));
        }

        if (!appliance.LiquidReachable)
        {
            throw new ArgumentException("The appliance's liquid cannot be reached (LiquidReachable is false); push-pull is not possible.", nameof(appliance));
        }

        ApplianceState start = options.Start?.AsCharged() ?? ApplianceState.Initial(appliance);
        double ambient = appliance.SurroundingsKelvin;
        CylinderState receiving = options.CylinderStart
            ?? CylinderState.Initial(cylinder, appliance.Fluid, new Temperature(ambient, TemperatureUnit.Kelvin));
        double limit = (options.CylinderLimit ?? CylinderFill.Limit(receiving.Cylinder, appliance.Fluid).MaximumFill).Kilograms;

        double temperature = start.Vessel.Bulk.Temperature;
        double heel = Math.Min(appliance.LiquidHeel.Kilograms, start.Kilograms);
        var state = new double[PushPullSystem.LiquidVolume + 1];
        state[PushPullSystem.Mass] = start.Kilograms;
        state[PushPullSystem.Energy] = start.Joules;
        state[PushPullSystem.Metal] = start.MetalKelvins;
        state[PushPullSystem.Water] = start.WaterKelvins;
        state[PushPullSystem.CylinderMass] = receiving.Kilograms;
        state[PushPullSystem.CylinderEnergy] = receiving.Joules;
        state[PushPullSystem.CylinderWall] = receiving.WallKelvins;

        var recorder = new TrajectoryRecorder();
        var network = new ThermalNetwork(appliance);
        double free = options.DisplacementShare * machine.Displacement.CubicMetersPerSecond * machine.VolumetricEfficiency;
        var receiver = new CylinderProcess(model, receiving.Cylinder, ambient, receiving.GasMoles);
        var system = new PushPullSystem(
            model,
            appliance.InternalVolume.CubicMeters,
            network,
            receiver,
            new MachineProcess(model, machine, temperature, ambient),
            new SuctionLine(new Line(VaporHoses(hoses)), machine),
            new Line(hoses.LiquidSide),
            model.ViscosityAtSaturation(Math.Min(0.98 * model.Range.MaximumSaturationTemperature, temperature)),
            GasExponent.At(model, temperature),
            free,
            state,
            recorder)
        {
            Heel = heel,
            CylinderLimit = limit,
            HighPressureCutout = machine.HighPressureCutout.Pascals,
            DisplacementShare = options.DisplacementShare,
        };

        double[] before = (double[])state.Clone();
        OdeOutcome outcome = Integrate(system, state, options, start.LiquidMass.Kilograms / Density(start) / free / FewestSteps);
        StageEnd end = End(outcome);
        double share = state[PushPullSystem.FreeVolume] > 0 ? state[PushPullSystem.LiquidVolume] / state[PushPullSystem.FreeVolume] : 0;
        double recovered = state[PushPullSystem.Liquid] - state[PushPullSystem.Vapor];
        PushPullLimit pace = share < HoseLimitedBelow ? PushPullLimit.Hoses : PushPullLimit.Machine;
        return new PushPullResult(
            end,
            outcome.Time,
            recovered,
            new ApplianceState(
                appliance,
                state[PushPullSystem.Mass],
                state[PushPullSystem.Energy],
                network.MetalTemperature,
                state[PushPullSystem.Water],
                start.DissolvedKilograms),
            new CylinderState(
                receiving.Cylinder,
                model,
                state[PushPullSystem.CylinderMass],
                state[PushPullSystem.CylinderEnergy],
                state[PushPullSystem.CylinderWall],
                receiving.GasMoles),
            state[PushPullSystem.Liquid],
            pace,
            share,
            system.LargestDrive,
            recorder.ToTrajectory(),
            FindingsFor(appliance.Fluid, system, end, pace, share, start, recovered),
            Balance(before, state, network, receiver, outcome));
    }

    /// <summary>The vapor passes from the cylinder through the discharge hoses to the machine and through the vapor hoses to the appliance.</summary>
    private static List<Hose> VaporHoses(HoseSet hoses)
    {
        var all = new List<Hose>(hoses.Discharge);
        all.AddRange(hoses.VaporSide);
        return all;
    }

    private static double Density(ApplianceState start) =>
        start.HasLiquid ? start.Vessel.Liquid.Density : start.Vessel.Bulk.Density;

    private static OdeOutcome Integrate(PushPullSystem system, double[] state, PushPullOptions options, double longestStep)
    {
        var values = new double[system.EventCount];
        if (system.Events(state, values))
        {
            for (int i = 0; i < values.Length; i++)
            {
                if (!(values[i] > 0))
                {
                    system.OnStep(0, state);
                    return new OdeOutcome(OdeStopReason.Event, 0, i, 0, 0, 1);
                }
            }
        }

        double longest = longestStep > 0 ? longestStep : options.MaximumDuration.Seconds;
        return new OdeIntegrator(system).Integrate(
            state, 0, options.MaximumDuration.Seconds, new OdeOptions(options.RelativeTolerance, longest, MaximumSteps));
    }

    private static StageEnd End(in OdeOutcome outcome) => outcome.Reason != OdeStopReason.Event
        ? StageRun.End(outcome)
        : outcome.EventIndex switch
        {
            PushPullSystem.HeelEvent => StageEnd.LiquidGone,
            PushPullSystem.CylinderFullEvent => StageEnd.CylinderFull,
            PushPullSystem.CutoutEvent => StageEnd.HighPressureCutout,
            _ => StageEnd.Stalled,
        };

    private static Closure Balance(double[] before, double[] after, ThermalNetwork network, CylinderProcess cylinder, in OdeOutcome outcome)
    {
        double[] change = [.. after.Zip(before, (a, b) => a - b)];
        double moved = change[PushPullSystem.Liquid] - change[PushPullSystem.Vapor];
        double charge = before[PushPullSystem.Mass];
        double mass = Math.Max(
            Math.Abs(change[PushPullSystem.Mass] + moved) / charge,
            Math.Abs(change[PushPullSystem.CylinderMass] - moved) / Math.Max(charge, before[PushPullSystem.CylinderMass]));
        double carried = change[PushPullSystem.LiquidEnergy] - change[PushPullSystem.VaporEnergy];
        double stored = change[PushPullSystem.Energy] + (network.MetalCapacity * change[PushPullSystem.Metal])
            + (network.WaterCapacity * change[PushPullSystem.Water]);
        double received = change[PushPullSystem.CylinderEnergy] + (cylinder.WallCapacity * change[PushPullSystem.CylinderWall]);
        double energyScale = Math.Abs(before[PushPullSystem.Energy]) + (charge * RecoverySystem.EnergyScale);
        double cylinderScale = Math.Abs(before[PushPullSystem.CylinderEnergy]) + (before[PushPullSystem.CylinderMass] * RecoverySystem.EnergyScale);
        double energy = Math.Max(
            Math.Abs(stored + carried - change[PushPullSystem.Work] - change[PushPullSystem.HeatIn]) / energyScale,
            Math.Abs(received - carried - change[PushPullSystem.CylinderHeat]) / Math.Max(energyScale, cylinderScale));
        return new Closure(mass, energy, outcome.Steps, outcome.Evaluations);
    }

    private static IReadOnlyList<Finding> FindingsFor(
        Fluid fluid, PushPullSystem system, StageEnd end, PushPullLimit pace, double share, ApplianceState start, double recovered)
    {
        var findings = new List<Finding>();
        double liquid = start.LiquidMass.Kilograms;
        if (liquid < HardlyWorthIt)
        {
            findings.Add(new Finding(
                liquid < NotWorthIt ? Severity.Caution : Severity.Note,
                FindingSubject.PushPull,
                FormattableString.Invariant($"With {liquid:F1} kg of liquid push-pull {(liquid < NotWorthIt ? "is not worth it" : "is hardly worth it")} (below 10 to 15 lb)."),
                Sources.CommonPractice));
        }

        if (pace == PushPullLimit.Hoses)
        {
            findings.Add(new Finding(
                Severity.Note,
                FindingSubject.HoseLimited,
                FormattableString.Invariant($"The hoses set the pace: {share * 100:F0} % of what the machine could move. Wider or shorter ones make it faster."),
                "Darcy–Weisbach with Churchill's friction factor"));
        }

        if (system.DeepestFlashing > 0.02)
        {
            findings.Add(new Finding(
                system.DeepestFlashing > 0.1 ? Severity.Caution : Severity.Note,
                FindingSubject.Flashing,
                FormattableString.Invariant($"The cylinder is up to {system.DeepestFlashing * 100:F0} % below the saturation pressure of the appliance's liquid: it flashes on its way, and the flow is an estimate."),
                "saturation pressure along the liquid hose"));
        }

        if (end == StageEnd.CylinderFull)
        {
            findings.Add(new Finding(
                Severity.Warning,
                FindingSubject.CylinderOverfill,
                FormattableString.Invariant($"The cylinder reaches its limit after {recovered:F1} kg. Close the liquid valve by the scale: liquid keeps siphoning when the machine stops."),
                "cylinder filling limit; siphoning: common practice, no source"));
        }
        else if (end != StageEnd.LiquidGone)
        {
            findings.Add(new Finding(
                Severity.Warning,
                FindingSubject.PushPull,
                end == StageEnd.PropertyRange
                    ? $"The liquid flashes in the cylinder to {(DryIce.CanForm(fluid) ? "dry ice" : "below the range of the refrigerant's equation")}, and the rest is not computed: let vapor in first, until the pressures are equal."
                    : $"The push-pull ends early ({end}): the liquid is not down to its heel.",
                "hydraulics of the liquid hose"));
        }

        findings.Add(new Finding(
            Severity.Note,
            FindingSubject.Estimate,
            FormattableString.Invariant($"The pace rests on {system.DisplacementShare * 100:F0} % of the vapor displacing liquid, the rest condensing or flashing."),
            Sources.CommonPractice));
        findings.Sort((a, b) => b.Severity.CompareTo(a.Severity));
        return findings.AsReadOnly();
    }
}
