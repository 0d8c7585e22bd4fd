using System;
using System.Collections.Generic;
using System.Globalization;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Tests.Estimation.Truths;
using UnitsNet;

namespace Refrigerant.Recovery.Soak;

/// <summary>Durations of the reduced model against those of the engine, jobs of all sizes and metals. Returns 1 where the median is off by more than 1 %.</summary>
internal static class ReducedAgainstEngine
{
    private const double MedianAtMost = 0.01;
    private const double Level = 67_700;
    private const double Longest = 8 * 3600;

    private static readonly string[] Fluids = ["R-134a", "R-22", "R-410A", "R-404A", "R-32", "R-290", "R-1234yf", "R-407C", "R-407A", "R-448A", "R-454B"];

    public static int Run(int jobs)
    {
        List<(double Off, string What)> all = [];
        for (int seed = 0; seed < jobs; seed++)
        {
            var r = new Draws(900_000 + seed);
            string fluid = Fluids[r.Below(Fluids.Length)];
            double charge = r.LogUniform(0.5, 40);
            PropertyModel model = Fluid.Get(fluid).Model;
            double kelvins = r.Uniform(280, 308);
            SaturationPoint both = model.SaturationAtTemperature(kelvins);
            double fill = r.Uniform(0.1, 0.7);
            double volume = charge / ((fill * both.Bubble.Density) + ((1 - fill) * both.Dew.Density));
            double displacement = Math.Min(r.LogUniform(1e-4, 2e-3), charge / both.Dew.Density / 120);
            double outer = charge * r.LogUniform(1, 12);
            double inner = outer * r.LogUniform(4, 60);
            double metal = charge * r.LogUniform(500, 6000);
            double bore = Math.Sqrt(displacement / 5e-4) * r.Uniform(6, 12);
            var job = new RecoveryJob
            {
                Appliance = new Appliance
                {
                    Fluid = Fluid.Get(fluid),
                    Charge = Mass.FromKilograms(charge),
                    InternalVolume = Volume.FromCubicMeters(volume),
                    Temperature = Temperature.FromKelvins(kelvins),
                    HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / outer),
                    MetalResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / inner),
                    MetalMass = Mass.FromKilograms(metal / 480),
                },
                Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromCubicMetersPerSecond(displacement)),
                Hoses = new HoseSet { VaporSide = [new Hose { Length = Length.FromMeters(1.5), InnerDiameter = Length.FromMillimeters(bore) }] },
                Cylinders = [],
            };
            var table = new SaturationTable(model);
            ReducedParameters parameters = ReducedParameters.FromJob(job, table);
            parameters.Drift = seed % 2;
            var state = new ReducedState { Temperature = kelvins, MetalTemperature = kelvins, WetTemperature = kelvins };
            double seconds = Forecast.TimeTo(new ReducedModel(table), ref state, in parameters, kelvins, Level, Longest, out bool reached);
            StageResult engine = VaporRecovery.Simulate(
                job.Appliance,
                job.Machine with { Body = null },
                job.Hoses,
                RecoveryCylinder.FromTestPressure(Pressure.FromBars(48), Mass.FromKilograms(200), Mass.FromKilograms(60)),
                new VaporRecoveryOptions
                {
                    TargetPressure = Pressure.FromPascals(Level),
                    ReceiverPressure = Pressure.FromPascals(parameters.DischargePressure),
                    MaximumDuration = Duration.FromSeconds(Longest),
                    Composition = seed % 2 == 1 ? CompositionMode.Tracked : CompositionMode.Fixed,
                });
            if (reached && engine.End == StageEnd.TargetReached)
            {
                double off = (seconds / engine.Duration.Seconds) - 1;
                all.Add((off, string.Create(
                    CultureInfo.InvariantCulture,
                    $"{fluid}{(seed % 2 == 1 && job.Appliance.Fluid.IsBlend ? " followed" : string.Empty)} {charge:F1} kg, {1e3 * volume:F0} L, metal {metal / charge:F0} J/(K·kg), K {outer / charge:F1} and k {inner / charge:F0} W/(K·kg), {bore:F1} mm, {engine.Duration.Seconds:F0} s")));
            }
        }

        all.Sort((a, b) => Math.Abs(a.Off).CompareTo(Math.Abs(b.Off)));
        double median = Math.Abs(all[all.Count / 2].Off);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"reduced model against the engine, {all.Count} of {jobs} jobs: median {100 * median:F2} % of the duration, 90 % below {100 * Math.Abs(all[(int)(0.9 * all.Count)].Off):F2} %"));
        foreach ((double off, string what) in all.GetRange(Math.Max(0, all.Count - 5), Math.Min(5, all.Count)))
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {100 * off:F2} %: {what}"));
        }

        return median > MedianAtMost ? 1 : 0;
    }
}
