using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Planning;

/// <summary>One way to set up a job, with a name, for <see cref="SetupComparison"/>. Immutable.</summary>
public sealed record Setup
{
    /// <summary>Bore of a half-inch hose, m: 0.40 to 0.44 in (from memory).</summary>
    private const double HalfInchBore = 10.5e-3;

    /// <summary>Bore of a quarter-inch hose, m: 0.18 to 0.19 in (from memory).</summary>
    private const double QuarterInchBore = 4.7e-3;

    /// <summary>Water cools a condenser that many times better than air: common practice, no source.</summary>
    private const double WaterAgainstAir = 3;

    /// <summary>Cooling water is that much colder than the surroundings, K: common practice, no source.</summary>
    private const double WaterColder = 10;

    /// <summary>Warm water or air on the appliance brings that many times the heat: common practice, no source.</summary>
    private const double HeatOnAppliance = 4;

    /// <summary>Bores that differ by less than this factor count as one size.</summary>
    private const double SameBore = 1.2;

    /// <summary>Creates a setup.</summary>
    /// <param name="name">What is different about it.</param>
    /// <param name="job">The job with it.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public Setup(string name, RecoveryJob job)
    {
        Name = Require.NotEmpty(name, nameof(name));
        Job = Require.NotNull(job, nameof(job));
    }

    /// <summary>What is different about it.</summary>
    public string Name { get; }

    /// <summary>The job with it.</summary>
    public RecoveryJob Job { get; }

    /// <summary>
    /// The usual variations of a job that apply to it, one change at a time, then hoses, cooling and heat together: bore, cores, length,
    /// water on the condenser, ice on the cylinder, heat on the appliance, push-pull, size of the machine.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <exception cref="ArgumentNullException"><paramref name="job"/> is null.</exception>
    public static IReadOnlyList<Setup> Variations(RecoveryJob job)
    {
        _ = Require.NotNull(job, nameof(job));
        RecoveryJob open = WithHoses(job, WithoutCores);
        List<Setup> setups = [];
        void Add(bool applies, string name, RecoveryJob changed)
        {
            if (applies)
            {
                setups.Add(new Setup(name, changed));
            }
        }

        IEnumerable<Hose> hoses = job.Hoses.VaporSide.Concat(job.Hoses.LiquidSide);
        Add(hoses.Any(hose => hose.InnerDiameter.Meters > SameBore * QuarterInchBore), "quarter-inch hoses", WithHoses(job, hose => WithBore(hose, QuarterInchBore)));
        Add(hoses.Any(hose => hose.InnerDiameter.Meters * SameBore < HalfInchBore), "half-inch hoses", WithHoses(job, hose => WithBore(hose, HalfInchBore)));
        Add(hoses.Any(hose => hose.Fittings.Any(fitting => fitting.IsCore)), "valve cores removed", open);
        Add(true, "hoses half as long", WithHoses(job, Halved));
        Add(job.Machine.Condenser.Cooling != CondenserCooling.Water, "water-cooled condenser", Cooled(job));
        Add(!job.Aids.HasIce, "ice and water on the cylinder", job with { Aids = job.Aids with { HasIce = true } });
        Add(true, "heat on the appliance", Heated(job));
        bool liquid = job.HasLiquidHose;
        Add(liquid && job.PushPull != PushPullUse.Never, "without push-pull", job with { PushPull = PushPullUse.Never });
        Add(liquid && job.PushPull == PushPullUse.Never, "with push-pull", job with { PushPull = PushPullUse.WhereItPays });
        Add(true, "machine twice the size", job with { Machine = Doubled(job.Machine) });
        Add(true, "half-inch hoses, no cores, water, heat", Heated(Cooled(WithHoses(open, hose => WithBore(hose, HalfInchBore)))));
        return setups;
    }

    private static RecoveryJob Cooled(RecoveryJob job)
    {
        Condenser condenser = job.Machine.Condenser;
        double water = Math.Max(278.15, job.Appliance.SurroundingsKelvin - WaterColder);
        double factor = condenser.Cooling == CondenserCooling.Water ? 1 : WaterAgainstAir;
        return job with
        {
            Machine = job.Machine with
            {
                Condenser = condenser with
                {
                    Cooling = CondenserCooling.Water,
                    RatedDuty = Power.FromWatts(Math.Min(1e8, (double)condenser.RatedDuty.Watts * factor)),
                    CoolantTemperature = new Temperature(water, TemperatureUnit.Kelvin),
                },
            },
        };
    }

    private static RecoveryJob Heated(RecoveryJob job) => job with
    {
        Appliance = job.Appliance with
        {
            HeatResistance = new ThermalResistance(
                job.Appliance.HeatArea.SquareMeters / Math.Max(1e-7, job.Appliance.OuterConductance * HeatOnAppliance), ThermalResistanceUnit.SquareMeterKelvinPerWatt),
        },
    };

    private static RecoveryMachine Doubled(RecoveryMachine machine) => machine with
    {
        Displacement = new VolumeFlow(Math.Min(10, 2 * machine.Displacement.CubicMetersPerSecond), VolumeFlowUnit.CubicMeterPerSecond),
        Condenser = machine.Condenser with { RatedDuty = Power.FromWatts(Math.Min(1e8, 2 * (double)machine.Condenser.RatedDuty.Watts)) },
    };

    private static RecoveryJob WithHoses(RecoveryJob job, Func<Hose, Hose> change) => job with
    {
        Hoses = job.Hoses with
        {
            VaporSide = [.. job.Hoses.VaporSide.Select(change)],
            LiquidSide = [.. job.Hoses.LiquidSide.Select(change)],
            Discharge = [.. job.Hoses.Discharge.Select(change)],
        },
    };

    private static Hose WithBore(Hose hose, double bore) => hose with { InnerDiameter = new Length(bore, LengthUnit.Meter) };

    private static Hose Halved(Hose hose) => hose with { Length = new Length(Math.Max(1e-3, hose.Length.Meters / 2), LengthUnit.Meter) };

    private static Hose WithoutCores(Hose hose) => hose with { Fittings = [.. hose.Fittings.Where(fitting => !fitting.IsCore)] };

    /// <summary>What is different about it.</summary>
    public override string ToString() => Name;
}
