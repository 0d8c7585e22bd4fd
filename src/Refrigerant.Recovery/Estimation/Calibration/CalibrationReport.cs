using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using MathNet.Numerics.Distributions;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>Makes the typed result of a fit: values with ranges, jobs to plan with, findings.</summary>
internal sealed class CalibrationReport
{
    /// <summary>Share of cases in which a value lies below the upper end of its range.</summary>
    private const double UpperQuantile = 0.95;

    /// <summary>
    /// Standard deviations of the logarithms that no log takes away, since the model leaves things out: gas that warms in the appliance, boiling that needs
    /// a difference of pressure, metal that cools slowly. Chosen on simulated jobs, checked on others (docs/questions/log-a-job.md).
    /// </summary>
    private const double DisplacementFloor = 0.05, HoseFloor = 0.15, ClearanceFloor = 0.2, ChargeFloor = 0.015, VolumeFloor = 0.2, HeatFloor = 0.18, MetalFloor = 0.12;

    private static readonly double Reach = Normal.InvCDF(0, 1, UpperQuantile);

    private readonly CalibrationFit _fit;
    private readonly LoggedJob[] _jobs;

    private CalibrationReport(CalibrationFit fit, LoggedJob[] jobs)
    {
        _fit = fit;
        _jobs = jobs;
    }

    /// <summary>Fits logs and reports.</summary>
    public static JobCalibration Of(LoggedJob[] jobs, CalibrationOptions options, CancellationToken cancellation)
    {
        CalibrationFit fit = CalibrationFit.Run(jobs, options, cancellation);
        return new CalibrationReport(fit, jobs).Make(options);
    }

    private JobCalibration Make(CalibrationOptions options)
    {
        RecoveryMachine machine = _jobs[0].Job.Machine;
        double efficiency = machine.VolumetricEfficiency;
        FittedValue<VolumeFlow> displacement = Fitted(
            FitIndex.Displacement, DisplacementFloor, value => new VolumeFlow(value / efficiency, VolumeFlowUnit.CubicMeterPerSecond), machine.Displacement);
        FittedValue<double> clearance = Fitted(FitIndex.Clearance, ClearanceFloor, value => Math.Min(0.5, value), machine.ClearanceRatio);
        FittedValue<double> hose = Fitted(FitIndex.Hose, HoseFloor, value => value, 1);
        FittedAppliance[] appliances = [.. _jobs.Select((job, i) => Appliance(job.Job.Appliance, FitIndex.Set(i)))];
        RecoveryJob[] fitted = [.. _jobs.Select((job, i) => Job(job.Job, i, Chosen(displacement, machine.Displacement), Chosen(clearance, machine.ClearanceRatio), Chosen(hose, 1), appliances[i]))];
        var findings = new List<Finding>();
        foreach (LoggedJob job in _jobs)
        {
            findings.AddRange(job.Log.Check(job.Job));
        }

        findings.AddRange(CalibrationFindings.Of(_fit, _jobs, options, displacement, clearance, hose, appliances));
        return new JobCalibration(
            displacement, clearance, hose, Array.AsReadOnly(appliances), Array.AsReadOnly(fitted), _fit.Misfit, [.. findings.OrderByDescending(finding => finding.Severity)]);
    }

    private FittedAppliance Appliance(Appliance told, int set)
    {
        double specific = told.MetalHeatCapacity.JoulesPerKilogramKelvin;
        double area = told.HeatArea.SquareMeters;
        return new FittedAppliance(
            Fitted(set + FitIndex.Charge, ChargeFloor, value => new Mass(value, MassUnit.Kilogram), told.Charge),
            Fitted(set + FitIndex.Volume, VolumeFloor, value => new Volume(value, VolumeUnit.CubicMeter), told.InternalVolume),
            Fitted(set + FitIndex.Outer, HeatFloor, value => new ThermalResistance(area / value, ThermalResistanceUnit.SquareMeterKelvinPerWatt), null),
            Fitted(set + FitIndex.Metal, MetalFloor, value => new Mass(value / specific, MassUnit.Kilogram), null));
    }

    /// <summary>A value with its range, that of the logarithm.</summary>
    /// <remarks>
    /// The fit weighed the log as if the model had no error: with the variances σ² before and c·σ² after it, as data of variance σ²·c/(1 − c). The error that the
    /// blocks show, b·σ², and the floor f are added to that, and what was told is weighed anew against the sum: fit and told then share the value by
    /// their variances, and what the log cannot tell stays as told, with the range it had.
    /// </remarks>
    private FittedValue<T> Fitted<T>(int index, double floor, Func<double, T> make, T? told)
        where T : struct, IFormattable
    {
        double before = _fit.Prior.Sigma[index];
        double mean = _fit.Prior.Mean[index];
        double telling = 1 - Math.Min(1, _fit.Curvature[index]);
        double share = telling > 0 ? 1 / (1 + (_fit.Blocks[index] / telling) + (telling * floor * floor / (before * before))) : 0;
        double best = mean + (share * (_fit.Values[index] - mean));
        double after = before * Math.Sqrt(1 - (telling * share));
        T one = make(Math.Exp(best - (Reach * after)));
        T other = make(Math.Exp(best + (Reach * after)));
        bool rising = Comparer<T>.Default.Compare(one, other) <= 0;
        return new FittedValue<T>(told ?? make(Math.Exp(mean)), rising ? one : other, make(Math.Exp(best)), rising ? other : one, after / before);
    }

    private RecoveryJob Job(RecoveryJob told, int log, VolumeFlow displacement, double clearance, double hose, FittedAppliance fitted) => told with
    {
        Machine = told.Machine with { Displacement = displacement, ClearanceRatio = clearance },
        Hoses = told.Hoses with { VaporSide = Narrowed(told.Hoses.VaporSide, hose, _fit.Typical[log].HoseFlow, _fit.Viscosity[log]) },
        Appliance = told.Appliance with
        {
            Charge = Chosen(fitted.Charge, told.Appliance.Charge),
            InternalVolume = Chosen(fitted.InternalVolume, told.Appliance.InternalVolume),
            HeatResistance = Chosen(fitted.HeatResistance, fitted.HeatResistance.Told),
            MetalMass = fitted.MetalMass.IsIdentified ? Chosen(fitted.MetalMass, fitted.MetalMass.Told) : told.Appliance.MetalMass,
        },
    };

    /// <summary>What is planned with: what was told stands where the log did not tell, or shows something else.</summary>
    private T Chosen<T>(FittedValue<T> fitted, T told)
        where T : struct, IFormattable => fitted.IsIdentified && _fit.Misfit <= CalibrationFindings.LargestMisfit ? fitted.Best : told;

    /// <summary>Hoses with bores scaled alike so that the line has the resistance asked for, as far as a third and three times the bore go.</summary>
    private static IReadOnlyList<Hose> Narrowed(IReadOnlyList<Hose> hoses, double factor, double flow, double viscosity)
    {
        const double Widest = 3;
        const double Tolerance = 1e-6;
        double narrowest = Math.Max(1 / Widest, 5.001e-4 / hoses.Min(hose => hose.InnerDiameter.Meters));
        double widest = Math.Min(Widest, 0.999 / hoses.Max(hose => hose.InnerDiameter.Meters));
        var excess = new Excess(hoses, factor * new Line(hoses).Resistance(flow, viscosity), flow, viscosity);
        double scale = excess.Value(widest) >= 0 ? widest
            : excess.Value(narrowest) <= 0 ? narrowest
            : BracketedRoot.Find(ref excess, narrowest, widest, Tolerance);
        return Scaled(hoses, scale);
    }

    private static Hose[] Scaled(IReadOnlyList<Hose> hoses, double scale) =>
        [.. hoses.Select(hose => hose with { InnerDiameter = new Length(hose.InnerDiameter.Meters * scale, LengthUnit.Meter) })];

    private readonly struct Excess(IReadOnlyList<Hose> hoses, double wanted, double flow, double viscosity) : IScalarFunction
    {
        public double Value(double x) => new Line(Scaled(hoses, x)).Resistance(flow, viscosity) - wanted;
    }
}
