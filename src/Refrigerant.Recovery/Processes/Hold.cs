using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Oils;

namespace Refrigerant.Recovery.Processes;

/// <summary>The hold after a pull: the appliance is isolated, warms up, and what hides in it shows as pressure.</summary>
public static class Hold
{
    private const int MaximumSteps = 5000;
    private const int FewestSteps = 24;

    /// <summary>Simulates a hold of a tight appliance without air in it. Where the composition was followed before, it is here too.</summary>
    /// <param name="appliance">The appliance.</param>
    /// <param name="options">Start and length.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The charge does not fit the appliance.</exception>
    /// <exception cref="PropertyRangeException">The starting state is outside the range of the refrigerant's equation.</exception>
    public static HoldResult Simulate(Appliance appliance, HoldOptions options)
    {
        PropertyModel model = Require.NotNull(appliance, nameof(appliance)).Fluid.Model;
        ApplianceState start = Require.NotNull(options, nameof(options)).Start ?? ApplianceState.Initial(appliance);
        double temperature = start.Vessel.Bulk.Temperature;
        OilRelease? oil = appliance.Oil is ApplianceOil given ? new OilRelease(model, given, temperature) : null;
        var network = new ThermalNetwork(appliance) { IsDry = !start.HasLiquid };
        ApplianceVessel vessel = ApplianceVessel.For(appliance, start, CompositionMode.Fixed);
        double[] state = RecoverySystem.InitialState(start, vessel, null);
        var recorder = new TrajectoryRecorder();
        var system = new RecoverySystem(
            vessel, network, null, null, null, oil, viscosity: 0, exponent: 0, state, recorder)
        {
            EndPressure = options.EndPressure?.Pascals ?? 0,
        };
        double[] before = (double[])state.Clone();
        double duration = options.Duration.Seconds;
        OdeOutcome outcome = StageRun.Integrate(system, state, duration, duration / FewestSteps, options.RelativeTolerance, MaximumSteps);
        StageEnd end = outcome.Reason == OdeStopReason.EndTime ? StageEnd.TargetReached : StageRun.End(outcome);
        ApplianceState after = ApplianceState.After(appliance, state, network.MetalTemperature, recorder.Last.Content);
        return new HoldResult(
            end,
            outcome.Time,
            start,
            after,
            recorder.ToTrajectory(),
            FindingsFor(start, after, outcome.Time),
            RecoverySystem.Balance(before, state, network, cylinder: null, oil, outcome));
    }

    private static IReadOnlyList<Finding> FindingsFor(ApplianceState start, ApplianceState after, double seconds)
    {
        string rise = FormattableString.Invariant(
            $"In {seconds / 60:F0} min the pressure comes from {start.Pressure.Kilopascals:F1} to {after.Pressure.Kilopascals:F1} kPa absolute");
        if (after.HasLiquid)
        {
            return
            [
                new Finding(
                    Severity.Warning,
                    FindingSubject.LiquidLeftBehind,
                    FormattableString.Invariant($"{rise}; {after.LiquidMass.Kilograms:G3} kg of liquid are still there: pull again."),
                    "energy balance of the closed appliance"),
            ];
        }

        return
        [
            new Finding(
                Severity.Note,
                FindingSubject.EvacuationLevel,
                FormattableString.Invariant($"{rise}; no liquid is left. A gauge that rises further shows a leak, air, or refrigerant from oil."),
                "energy balance of the closed appliance"),
        ];
    }
}
