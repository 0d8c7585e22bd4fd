using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Processes;

/// <summary>Sweeping the air out of hoses and machine before refrigerant enters them.</summary>
/// <remarks>
/// Isothermal ideal gas: dp/dt = −S·η(r)·p/V. With z = r^(1/n), r = discharge pressure/p and η = η0·(1 + c − c·z) that integrates to
/// t = V·n/(S·η0·(1 + c))·ln{z2·(1 + c − c·z1)/[z1·(1 + c − c·z2)]}; for c = 0 it is t = V/(S·η0)·ln(p1/p2).
/// </remarks>
public static class HoseSweep
{
    private const int Points = 33;

    /// <summary>A target this close to the deepest vacuum, relative, is not reached in finite time.</summary>
    private const double StallMargin = 1e-6;

    /// <summary>Simulates a sweep.</summary>
    /// <param name="hoses">The hoses, all of them.</param>
    /// <param name="machine">The machine, which pumps the air out.</param>
    /// <param name="options">Where it starts and what it goes for.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static HoseSweepResult Simulate(HoseSet hoses, RecoveryMachine machine, HoseSweepOptions options)
    {
        double volume = Require.NotNull(hoses, nameof(hoses)).InternalVolume.CubicMeters
            + Require.NotNull(machine, nameof(machine)).InternalVolume.CubicMeters;
        _ = Require.NotNull(options, nameof(options));
        double start = options.StartPressure.Pascals;
        double discharge = options.DischargePressure?.Pascals ?? start;
        double deepest = machine.DeepestVacuum(new UnitsNet.Pressure(discharge, UnitsNet.Units.PressureUnit.Pascal)).Pascals;
        double target = Math.Min(start, options.TargetPressure.Pascals);
        bool reached = target > deepest * (1 + StallMargin);
        double end = reached ? target : Math.Min(start, deepest * (1 + StallMargin) * 1.05);
        var points = new TrajectoryPoint[Points];
        for (int i = 0; i < Points; i++)
        {
            double pressure = i == Points - 1 ? end : start * Math.Pow(end / start, i / (Points - 1.0));
            points[i] = new TrajectoryPoint
            {
                Seconds = Time(machine, volume, start, pressure, discharge),
                AppliancePascals = pressure,
                SuctionPascals = pressure,
                DischargePascals = discharge,
                ApplianceKelvins = options.Temperature.Kelvins,
                MetalKelvins = options.Temperature.Kelvins,
                CylinderKelvins = options.Temperature.Kelvins,
            };
        }

        double air = end * volume / (CylinderProcess.GasConstant * options.Temperature.Kelvins);
        return new HoseSweepResult(
            reached ? StageEnd.TargetReached : StageEnd.Stalled,
            points[Points - 1].Seconds,
            end,
            air,
            volume,
            new Trajectory(points),
            Findings(reached, options, deepest, air));
    }

    private static double Time(RecoveryMachine machine, double volume, double from, double to, double discharge)
    {
        double speed = machine.Displacement.CubicMetersPerSecond * machine.VolumetricEfficiency;
        double above = Math.Max(to, Math.Min(from, discharge));
        double time = from > discharge ? volume / speed * Math.Log(from / above) : 0;
        if (to >= discharge)
        {
            return time;
        }

        double c = machine.ClearanceRatio;
        double n = machine.PolytropicExponent;
        double z1 = Math.Pow(discharge / Math.Min(from, discharge), 1 / n);
        double z2 = Math.Pow(discharge / to, 1 / n);
        return time + (volume * n / (speed * (1 + c)) * Math.Log(z2 * (1 + c - (c * z1)) / (z1 * (1 + c - (c * z2)))));
    }

    private static IReadOnlyList<Finding> Findings(bool reached, HoseSweepOptions options, double deepest, double air)
    {
        var findings = new List<Finding>();
        if (!reached)
        {
            findings.Add(new Finding(
                Severity.Warning,
                FindingSubject.EvacuationLevel,
                FormattableString.Invariant($"The machine cannot sweep the hoses to {options.TargetPressure.Kilopascals:F1} kPa absolute; it stalls at {deepest / 1000:F1} kPa."),
                "re-expansion from the clearance volume"));
        }

        findings.Add(new Finding(
            Severity.Note,
            FindingSubject.NonCondensables,
            FormattableString.Invariant($"{air:G3} mol of air stay in hoses and machine and end up in the cylinder."),
            "ideal gas law"));

        return findings.AsReadOnly();
    }
}
