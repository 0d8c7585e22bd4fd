using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Tests.Native;

/// <summary>The lines that values.c prints, out of the library: a name, and either numbers or a text.</summary>
internal static class Expected
{
    private static readonly Barometer Here = Barometer.AtElevation(Length.FromMeters(1600));

    public static IEnumerable<(string Name, object Value)> Of(Fluid fluid)
    {
        PropertyModel model = fluid.Model;
        PropertyRange range = model.Range;
        yield return ("fluid", fluid.Designation + " 1");
        yield return ("facts", new[]
        {
            model.MolarMass, model.CriticalTemperature, model.CriticalPressure, model.CriticalDensity,
            range.MinimumTemperature, range.MaximumTemperature, range.MaximumPressure, range.MaximumSaturationTemperature,
        });
        for (double t = 250; t < 330; t += 20)
        {
            SaturationPoint at = model.SaturationAtTemperature(t);
            yield return State("bubble", at.Bubble);
            yield return State("dew", at.Dew);
            SaturationPoint back = model.SaturationAtPressure(at.Dew.Pressure);
            yield return State("bubble", back.Bubble);
            yield return State("dew", back.Dew);
            yield return State("state", model.StateAt(t + 5, back.Dew.Pressure));
            for (double density = 5; density < 1000; density *= 7)
            {
                VesselPoint vessel = model.VesselAtTemperature(t, density);
                yield return State("bulk", vessel.Bulk);
                yield return State("liquid", vessel.Liquid);
                yield return State("vapor", vessel.Vapor);
                yield return ("fraction", new[] { vessel.LiquidVolumeFraction });
                VesselPoint energy = model.VesselAtEnergy(density, vessel.Bulk.Enthalpy - (vessel.Bulk.Pressure / vessel.Bulk.Density));
                yield return State("bulk", energy.Bulk);
                yield return ("fraction", new[] { energy.LiquidVolumeFraction });
            }
        }

        RecoveryCylinder[] cylinders =
        [
            RecoveryCylinder.FromMark("4BA400", Mass.FromKilograms(21.6), Mass.FromKilograms(12.5)) with { Content = Mass.FromKilograms(4), Refrigerant = "R-134a" },
            RecoveryCylinder.FromTestPressure(Pressure.FromPascals(4.8e6), Mass.FromKilograms(61), Mass.FromKilograms(26)),
        ];
        foreach (RecoveryCylinder cylinder in cylinders)
        {
            FillLimit limit = CylinderFill.Limit(cylinder, fluid);
            yield return ("limit", new[] { limit.MaximumFill.Kilograms, limit.MaximumGrossWeight.Kilograms, limit.Room.Kilograms, Attention(limit.Findings).Count() });
            yield return ("text", string.Join('|', [limit.GoverningRule.Name, .. Attention(limit.Findings)]));
        }

        var level = EvacuationRequirement.For(fluid, Mass.FromKilograms(120), new EvacuationOptions { Barometer = Here });
        yield return ("level", new[] { level.RequiredPressure.Pascals, level.GaugeReading.Pascals, Attention(level.Findings).Count() });
        yield return ("text", string.Join('|', [level.Rule.Rule, .. Attention(level.Findings)]));
    }

    public static (string Name, object Value) Air => ("air", new[] { Here.Pressure.Pascals });

    /// <summary>The simulation, in the same steps.</summary>
    public static (string Name, object Value) Simulation(RecoveryJob job)
    {
        var s = RecoverySimulation.Start(new SimulationSetup { Appliance = job.Appliance, Machine = job.Machine, Hoses = job.Hoses, Cylinder = job.Cylinders[0] });
        StepOutcome outcome = StepOutcome.Done;
        for (int i = 0; i < 600; i++)
        {
            outcome = s.Step(0.5, new SimulationInputs { InletOpening = i < 300 ? 1 : 0.5, MachineRunning = i < 580 });
        }

        return ("simulated", new[]
        {
            s.Time, s.AppliancePressure, s.ApplianceTemperature, s.ApplianceMass, s.LiquidMass, s.ColdestSurface, s.SuctionPressure,
            s.CylinderPressure, s.CylinderTemperature, s.CylinderMass, s.DischargeTemperature, s.Flow, (double)outcome,
        });
    }

    /// <summary>The estimator, on the same readings.</summary>
    public static IEnumerable<(string Name, object Value)> Estimator(RecoveryJob job)
    {
        RecoveryEstimator estimator = new(job, options: new MonitorOptions { Profile = EstimationProfile.Controller });
        for (int i = 0; i < 600; i++)
        {
            estimator.Add(new RawReading(i) { SuctionGaugePressure = 4e5 - (500.0 * i), GrossWeight = 40 + (0.01 * i), IsMachineRunning = i <= 590 });
            while (estimator.Work())
            {
                // Every slice is done before the next reading.
            }
        }

        estimator.Read(out RawEstimate e);
        yield return Range("remaining", e.Remaining);
        yield return Range("charge", e.TotalCharge);
        yield return Range("to-level", e.TimeToLevel);
        yield return Range("final", e.FinalGrossWeight);
        double conditions = Enum.GetValues<JobCondition>().Where(condition => e.Has(condition)).Sum(condition => Math.Pow(2, (int)condition));
        yield return ("estimate", new[]
        {
            e.Time, e.LevelReachedProbability, e.CylinderLimitFirst, e.VaporOnly, e.HasTimeToLevel ? 1 : 0, conditions, (double)e.NotUsed,
        });
    }

    private static (string Name, object Value) Range(string name, EstimateRange range) => (name, new[] { range.Low, range.Best, range.High });

    private static (string Name, object Value) State(string name, in StatePoint s) =>
        (name, new[] { s.Temperature, s.Pressure, s.Density, s.Enthalpy, s.Entropy, s.VaporFraction, (double)s.Phase });

    private static IEnumerable<string> Attention(IEnumerable<Finding> findings) =>
        findings.Where(finding => finding.Severity >= Severity.Caution).Select(finding => finding.ToText(DisplayUnits.International));
}
