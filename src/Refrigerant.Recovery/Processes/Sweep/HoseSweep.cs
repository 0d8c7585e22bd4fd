using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Simulation;
using Refrigerant.Recovery.Simulation.Vessels;

namespace Refrigerant.Recovery.Processes;

/// <summary>Sweeping the air out of hoses and machine before refrigerant enters them.</summary>
/// <remarks>
/// Isothermal ideal gas: dp/dt = −S·η(r)·p/V, so t = V/S·∫d(ln p)/η from the lower to the higher pressure. At the deepest vacuum p0 η is zero; with p = p0 + (p1 − p0)·e^(−u)
/// the integrand (p − p0)/(p·η) over u stays finite. Without clearance and leakage t = V/(S·η0)·ln(p1/p2). The suction side
/// (all hoses but those behind the outlet, and half of the machine) comes to the target; the discharge side (the machine's condenser and the hoses behind it) stands
/// at the pressure that the air is blown out against, and its air goes to the cylinder with the first refrigerant. The half is common practice, no source.
/// </remarks>
public static class HoseSweep
{
    private const int Points = 65;

    /// <summary>Share of the machine's volume on the suction side.</summary>
    private const double SuctionShare = 0.5;

    /// <summary>A target this close to the deepest vacuum, relative, is not reached in finite time.</summary>
    private const double StallMargin = 1e-6;

    /// <summary>Simulates a sweep.</summary>
    /// <param name="hoses">The hoses, all of them.</param>
    /// <param name="machine">The machine, which pumps the air out.</param>
    /// <param name="options">Where it starts and what it goes for.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static HoseSweepResult Simulate(HoseSet hoses, RecoveryMachine machine, HoseSweepOptions options)
    {
        double inside = Require.NotNull(machine, nameof(machine)).InternalVolume.CubicMeters;
        double behind = HoseSet.VolumeOf(Require.NotNull(hoses, nameof(hoses)).Discharge) + ((1 - SuctionShare) * inside);
        double volume = hoses.InternalVolume.CubicMeters + inside - behind;
        _ = Require.NotNull(options, nameof(options));
        double start = options.StartPressure.Pascals;
        double discharge = options.DischargePressure?.Pascals ?? start;
        double deepest = machine.DeepestVacuum(new UnitsNet.Pressure(discharge, UnitsNet.Units.PressureUnit.Pascal)).Pascals;
        double target = Math.Min(start, options.TargetPressure.Pascals);
        bool reached = target > deepest * (1 + StallMargin);
        double end = reached ? target : Math.Min(start, deepest * (1 + StallMargin) * 1.05);
        var points = new TrajectoryPoint[Points];
        double seconds = 0;
        double step = end < start ? Math.Log((start - deepest) / (end - deepest)) / (Points - 1) : 0;
        double above = start - deepest;
        for (int i = 0; i < Points; i++)
        {
            double pressure = i == Points - 1 ? end : deepest + (above * Math.Exp(-step * i));
            if (i > 0)
            {
                double from = points[i - 1].AppliancePascals;
                double middle = deepest + (above * Math.Exp(-step * (i - 0.5)));
                seconds += volume / machine.Displacement.CubicMetersPerSecond * step / 6
                    * (Slowness(machine, from, deepest, discharge) + (4 * Slowness(machine, middle, deepest, discharge)) + Slowness(machine, pressure, deepest, discharge));
            }

            points[i] = new TrajectoryPoint
            {
                Seconds = seconds,
                AppliancePascals = pressure,
                SuctionPascals = pressure,
                DischargePascals = discharge,
                ApplianceKelvins = options.Temperature.Kelvins,
                MetalKelvins = options.Temperature.Kelvins,
                CylinderKelvins = options.Temperature.Kelvins,
            };
        }

        double air = ((end * volume) + (Math.Min(start, discharge) * behind)) / (EquilibriumVessel.GasConstant * options.Temperature.Kelvins);
        return new HoseSweepResult(
            reached ? StageEnd.TargetReached : StageEnd.Stalled,
            seconds,
            end,
            air,
            volume + behind,
            new Trajectory(points),
            Findings(reached, options, deepest, air));
    }

    /// <summary>(p − p0)/(p·η), the integrand over u; by Simpson's rule.</summary>
    private static double Slowness(RecoveryMachine machine, double pressure, double deepest, double discharge) =>
        (pressure - deepest) / (pressure * machine.EfficiencyAt(discharge / pressure));

    private static IReadOnlyList<Finding> Findings(bool reached, HoseSweepOptions options, double deepest, double air)
    {
        var findings = new List<Finding>();
        if (!reached)
        {
            findings.Add(new Finding(
                StageCodes.SweepStalls,
                Severity.Warning,
                "re-expansion from the clearance volume",
                $"The machine cannot sweep the hoses to {FindingValue.AbsolutePressure("target", options.TargetPressure)}; it stalls at {FindingValue.Pascals("deepest vacuum", deepest)}."));
        }

        findings.Add(new Finding(
            StageCodes.AirFromHoses,
            Severity.Note,
            "ideal gas law",
            $"{FindingValue.Number("air in mol", air)} mol of air stay in hoses and machine and end up in the cylinder."));

        return findings.AsReadOnly();
    }
}
