using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>What the machine's past means for a job: go on, clear it, or change its oil.</summary>
internal sealed class MachineChange
{
    /// <summary>Nitrogen over oil that is drained, gauge, Pa: 10 to 15 psi, common practice, no source.</summary>
    public const double NitrogenGauge = 12.5 * 6894.757;

    /// <summary>Viscosity of a compressor's oil at room temperature, Pa·s: an ISO 32 oil has some 60 mPa·s (from memory).</summary>
    private const double Viscosity = 0.06;

    /// <summary>Density of oil, kg/m³: common practice, no source.</summary>
    private const double Density = 950;

    /// <summary>Drain hose: 1 m of 5 mm bore. Common practice, no source.</summary>
    private static readonly Hose DrainHose = new() { Length = new Length(1, LengthUnit.Meter), InnerDiameter = new Length(5, LengthUnit.Millimeter) };

    private MachineChange(RecoveryJob job) => Past = job.MachinePast;

    public MachinePast? Past { get; }

    /// <summary>What it would carry over; null where the refrigerant stays, or the past is not known.</summary>
    public RefrigerantChange? Change { get; private init; }

    /// <summary>Whether it is to be cleared into a cylinder of its last refrigerant before the job.</summary>
    public bool ClearsFirst { get; private init; }

    /// <summary>Whether its oil is to be changed before the job.</summary>
    public bool ChangesOil => DoesNotMatch || IsDue || CarriesOver;

    /// <summary>Whether its oil is not one that goes with the refrigerant.</summary>
    public bool DoesNotMatch { get; private init; }

    /// <summary>Whether its oil has run longer than its maker wants.</summary>
    public bool IsDue { get; private init; }

    /// <summary>Whether its oil holds too much of the last refrigerant.</summary>
    public bool CarriesOver { get; private init; }

    /// <summary>What it carries over as the plan treats it; null for nothing foreign.</summary>
    public CrossContamination? Carried => Change is null ? null
        : ChangesOil ? Change.AfterClearingAndOilChange
        : ClearsFirst || Past!.IsCleared ? Change.AfterClearing
        : Change.BeforeClearing;

    public static MachineChange For(PlanRun run)
    {
        RecoveryJob job = run.Job;
        if (job.MachinePast is not MachinePast past)
        {
            return new MachineChange(job);
        }

        Fluid fluid = job.Appliance.Fluid;
        bool oil = !job.Machine.IsOilless && past.CompressorOil.CubicMeters > 0;
        RefrigerantChange? change = job.ForeignInMachine is Fluid last ? Predict(job, past, last, oil) : null;
        bool cleared = past.IsCleared || change is null;
        bool clears = !cleared && !change!.BeforeClearing.IsWithinLimit;
        return new MachineChange(job)
        {
            Change = change,
            ClearsFirst = clears,
            CarriesOver = oil && change is not null && !(cleared || clears ? change.AfterClearing : change.BeforeClearing).IsWithinLimit,
            DoesNotMatch = oil && past.Oil is OilKind kind && OilMatch.Check(fluid, kind) is { Severity: > Findings.Severity.Note },
            IsDue = oil && past.OilChangeInterval is Duration due && past.RunningSinceOilChange >= due,
        };
    }

    /// <summary>Time to drain or to fill separator and compressor, s.</summary>
    public double Seconds(StageKind kind, JobTimes times)
    {
        double sum = 0;
        foreach (Volume volume in Past is null ? [] : new[] { Past.SeparatorOil, Past.CompressorOil })
        {
            if (volume.CubicMeters > 0)
            {
                sum += times.OilService.Seconds + (kind == StageKind.OilDrain ? Running(volume) : 0);
            }
        }

        return sum;
    }

    private static double Running(Volume volume)
    {
        var oil = new OilToDrain
        {
            Mass = new Mass(Math.Max(1e-3, volume.CubicMeters * Density), MassUnit.Kilogram),
            Viscosity = new DynamicViscosity(Viscosity, DynamicViscosityUnit.PascalSecond),
            Density = new Density(Density, DensityUnit.KilogramPerCubicMeter),
            Hoses = [DrainHose],
        };
        return OilPush.At(oil, new Pressure(NitrogenGauge, PressureUnit.Pascal)).Duration?.Seconds ?? 0;
    }

    private static RefrigerantChange? Predict(RecoveryJob job, MachinePast past, Fluid last, bool oil)
    {
        Mass mass = new(past.CompressorOil.CubicMeters * Density, MassUnit.Kilogram);
        try
        {
            return RefrigerantChange.Estimate(
                job.Machine,
                last,
                job.Appliance.Fluid,
                job.Appliance.Charge,
                new RefrigerantChangeOptions
                {
                    Temperature = new Temperature(job.Appliance.SurroundingsKelvin, TemperatureUnit.Kelvin),
                    Oil = oil ? new ApplianceOil { Mass = mass, Kind = past.Oil ?? OilKind.PolyolEster } : null,
                });
        }
        catch (PropertyRangeException)
        {
            return null;
        }
    }
}
