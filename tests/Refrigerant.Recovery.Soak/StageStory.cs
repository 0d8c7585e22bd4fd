using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;

namespace Refrigerant.Recovery.Soak;

/// <summary>
/// Three stages after each other, of any kind in any order. Each ends and says why, balances close to 1e-9 of what vessels hold, and no cylinder goes over its limit or what it is built for; property
/// tests and soak share it.
/// </summary>
internal sealed class StageStory
{
    private const double Limit = 1e-9;

    /// <summary>An event ends a stage this near to its limit, as a share of it.</summary>
    private const double AtEvent = 1e-6;

    private readonly List<StageResult> _results = [];
    private readonly List<string> _broken = [];

    /// <summary>Runs three stages of a setup.</summary>
    public StageStory(RandomSetup setup)
    {
        Appliance appliance = setup.Appliance();
        RecoveryCylinder cylinder = setup.Cylinder(appliance.Fluid);
        RecoveryMachine machine = setup.Machine();
        HoseSet hoses = setup.Hoses();
        CompositionMode composition = setup.Of(CompositionMode.Fixed, CompositionMode.Tracked);
        double limit = CylinderFill.Limit(cylinder, appliance.Fluid).MaximumFill.Kilograms;
        Told = $"{appliance} {appliance.Sections.Count} sections, {composition}, oil {appliance.Oil}, water {appliance.Water is not null}, {cylinder}, {machine}:";
        var start = new SimulationState(ApplianceState.Initial(appliance))
        {
            Cylinder = CylinderState.Initial(cylinder, appliance.Fluid, Temperature.FromKelvins(setup.Between(278, 303))),
        };
        for (int i = 0; i < 3; i++)
        {
            string kind = setup.Of("vapor", "liquid", "push-pull", "equalize", "hold");
            var inputs = new SimulationInputs
            {
                HeaterPower = setup.Of(0, 300),
                CrankcaseHeaterPower = setup.Of(0, 80),
                FanFactor = setup.Of(1, 4),
                CylinderFactor = setup.Of(1, 50),
            };
            StageResult result;
            try
            {
                result = Run(kind, appliance, machine, hoses, cylinder, start, inputs, composition);
            }
            catch (Exception error)
            {
                Told += $" {kind} throws";
                _broken.Add($"{kind} from {start}: {error}");
                return;
            }

            Told += $" {kind}: {result.End} after {result.Duration.Seconds:G4} s;";
            _results.Add(result);
            _broken.AddRange(Broken(result, limit, kind == "hold"));
            start = result.After;
        }
    }

    /// <summary>What was set up and what happened.</summary>
    public string Told { get; }

    /// <summary>The stages.</summary>
    public IReadOnlyList<StageResult> Results => _results;

    /// <summary>What does not hold; empty where all does.</summary>
    public IReadOnlyList<string> WhatIsBroken => _broken;

    private static StageResult Run(
        string kind, Appliance appliance, RecoveryMachine machine, HoseSet hoses, RecoveryCylinder cylinder, SimulationState start, SimulationInputs inputs, CompositionMode composition)
    {
        switch (kind)
        {
            case "vapor":
                var pull = new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(60), MaximumDuration = Duration.FromHours(3) };
                return VaporRecovery.Simulate(appliance, machine, hoses, cylinder, pull with { Start = start, Inputs = inputs, Composition = composition });
            case "liquid":
                return LiquidRecovery.Simulate(appliance, machine, hoses, cylinder, new LiquidRecoveryOptions { Start = start, Inputs = inputs, Composition = composition });
            case "push-pull":
                return PushPull.Simulate(appliance, machine, hoses, cylinder, new PushPullOptions { Start = start, Inputs = inputs, Composition = composition });
            case "equalize":
                return Equalization.Simulate(appliance, hoses, cylinder, new EqualizationOptions { Start = start, Inputs = inputs, Composition = composition });
            default:
                return Hold.Simulate(appliance, new HoldOptions { Start = start, Inputs = inputs, Composition = composition });
        }
    }

    private static IEnumerable<string> Broken(StageResult result, double limit, bool stands)
    {
        CylinderState before = result.Before.Cylinder!;
        CylinderState after = result.Cylinder!;
        double held = Math.Max(result.Before.Appliance.Mass.Kilograms, Math.Max(before.Mass.Kilograms, after.Mass.Kilograms));
        if (!(result.Closure.Mass <= Limit && result.Closure.Energy <= Limit))
        {
            yield return $"closes to {result.Closure.Mass:G3} and {result.Closure.Energy:G3}";
        }

        double lost = result.Before.Appliance.Mass.Kilograms + before.Mass.Kilograms - result.Appliance.Mass.Kilograms - after.Mass.Kilograms;
        if (!(Math.Abs(lost) <= Limit * held))
        {
            yield return $"loses {lost:G3} kg";
        }

        if (!(after.Mass.Kilograms <= Math.Max(before.Mass.Kilograms, limit) * (1 + AtEvent)))
        {
            yield return $"fills the cylinder to {after.Mass.Kilograms} of {limit} kg";
        }

        double most = (1.25 * before.Cylinder.ServicePressure.Pascals) + 101_325;
        if (!(stands || after.Pressure.Pascals <= Math.Max(before.Pressure.Pascals, most) * (1 + AtEvent)))
        {
            yield return $"brings the cylinder to {after.Pressure.Pascals} of {most} Pa";
        }

        if (!(result.RemainingMass.Kilograms >= 0 && double.IsFinite(result.Appliance.Pressure.Pascals) && double.IsFinite(after.Temperature.Kelvins)))
        {
            yield return $"is in a state that cannot be: {result.After}";
        }

        double[] shares = [.. result.Appliance.Composition.Select(component => component.MassFraction)];
        if (!(Math.Abs(shares.Sum() - 1) <= Limit && shares.All(share => share is >= 0 and <= 1)))
        {
            yield return $"has shares of components {string.Join(", ", shares)}";
        }

        // What arrives, by component, is what leaves.
        foreach (Transfer transfer in result.Transfers)
        {
            if (transfer.Components.Count > 0 && !(Math.Abs(transfer.Components.Sum(part => part.Kilograms) - transfer.Mass.Kilograms) <= Limit * held))
            {
                yield return $"the components of {transfer} do not add up";
            }
        }
    }
}
