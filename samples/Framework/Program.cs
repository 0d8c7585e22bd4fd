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
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Records;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Framework
{
    /// <summary>A job, its plan and both as JSON, with what C# 7.3 has: constructors instead of initializers.</summary>
    internal static class Program
    {
        private static int Main()
        {
            #region job
            var appliance = new Appliance(
                Fluid.Get("R-134a"),
                Mass.FromKilograms(22),
                Volume.FromLiters(60),
                Temperature.FromDegreesCelsius(20),
                surroundings: Temperature.FromDegreesCelsius(24),
                liquidReachable: true,
                oil: new ApplianceOil(Mass.FromKilograms(2), OilKind.PolyolEster));
            var hose = new Hose(Length.FromMeters(1.5), Length.FromMillimeters(8), fittings: new[] { Fitting.CoreDepressor() });
            var job = new RecoveryJob(
                appliance,
                RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5), highPressureCutout: Pressure.FromKilopascals(3600)),
                new HoseSet(new[] { hose }, discharge: new[] { hose }),
                new[] { RecoveryCylinder.FromMark("4BA400", Mass.FromKilograms(21.6), Mass.FromKilograms(12.5), label: "C1") },
                barometer: Barometer.AtElevation(Length.FromMeters(1600)),
                evacuation: new EvacuationOptions(purpose: OpeningPurpose.MajorRepair),
                times: new JobTimes(hold: Duration.FromMinutes(10)),
                aids: new SiteAids(hasCylinderFan: true, heater: Power.FromWatts(500)));
            #endregion

            #region plan
            RecoveryPlan plan = RecoveryPlanner.Plan(job);
            Console.WriteLine(plan);
            foreach (Finding finding in plan.Cautions.Concat(plan.Findings).OrderByDescending(finding => finding.Severity))
            {
                Console.WriteLine(finding);
            }

            RecoveryJob read;
            IReadOnlyList<DocumentError> errors;
            if (!RecoveryJobJson.TryRead(RecoveryJobJson.Write(job), out read, out errors))
            {
                Console.Error.WriteLine(string.Join(Environment.NewLine, errors));
                return 1;
            }
            #endregion

            #region more
            FillLimit limit = CylinderFill.Limit(job.Cylinders[0], appliance.Fluid, new FillOptions(rules: FillRules.UnitedNations));
            StageResult pull = VaporRecovery.Simulate(
                appliance,
                job.Machine,
                job.Hoses,
                job.Cylinders[0],
                new VaporRecoveryOptions(targetPressure: Pressure.FromKilopascals(80), inputs: new SimulationInputs(heaterPower: 500)));
            RecoveryMonitor monitor = RecoveryMonitor.Start(job, options: new MonitorOptions(profile: EstimationProfile.Controller));
            JobEstimate estimate = monitor.Update(new JobReading(
                Duration.FromSeconds(1),
                suctionGaugePressure: Pressure.FromKilopascals(420),
                grossWeight: Mass.FromKilograms(12.5)));
            PlanUncertainty range = PlanUncertainty.Run(job, new UncertaintyOptions(samples: 16));
            #endregion

            Console.WriteLine(string.Join(Environment.NewLine, limit, pull, estimate, range));
            return Math.Abs(read.Appliance.Charge.Kilograms - job.Appliance.Charge.Kilograms) < 1e-9 && read.Cylinders.Count == job.Cylinders.Count ? 0 : 1;
        }
    }
}
