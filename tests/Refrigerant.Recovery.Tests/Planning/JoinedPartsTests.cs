using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>A pull in parts, joined, is the pull in one go.</summary>
public class JoinedPartsTests
{
    private static readonly RecoveryJob Job = Small();

    private static readonly StageResult Whole = Pull(new SimulationState(ApplianceState.Initial(Job.Appliance)), WholeMinutes);

    private static readonly List<StageResult> Parts = Split();

    private static readonly StageResult Joined = StageResults.Join(Parts, Parts[^1].End);

    private const double WholeMinutes = 16;

    [Fact]
    public void It_ends_where_the_pull_in_one_go_ends()
    {
        Assert.Equal(Whole.Duration.Seconds, Joined.Duration.Seconds, 1e-6);
        Assert.Equal(Whole.Appliance.Pressure.Pascals, Joined.Appliance.Pressure.Pascals, 0.01 * Whole.Appliance.Pressure.Pascals);
        Assert.Equal(Whole.RecoveredMass.Kilograms, Joined.RecoveredMass.Kilograms, 1e-3 * Whole.RecoveredMass.Kilograms);
        Assert.Equal(Whole.Before, Joined.Before);
        Assert.Equal(Whole.Cylinder!.Mass.Kilograms, Joined.Cylinder!.Mass.Kilograms, 1e-3 * Whole.Cylinder.Mass.Kilograms);
        Assert.Equal(StageEnd.TimeLimit, Joined.End);
    }

    /// <summary>What passed a line is the sum of what passed it in the parts; nothing is lost between them.</summary>
    [Fact]
    public void Transfers_add_up()
    {
        Transfer whole = Assert.Single(Whole.Transfers), joined = Assert.Single(Joined.Transfers);
        Assert.Equal((whole.From, whole.To), (joined.From, joined.To));
        Assert.Equal(Joined.RecoveredMass.Kilograms, joined.Mass.Kilograms, 1e-9);
        Assert.Equal(whole.EnergyOut.Joules, joined.EnergyOut.Joules, 2e-3 * whole.EnergyOut.Joules);
        Assert.Equal(whole.EnergyIn.Joules, joined.EnergyIn.Joules, 2e-3 * whole.EnergyIn.Joules);
    }

    /// <summary>The liquid is gone when it is gone, whichever part that falls into, counted from the start of the pull.</summary>
    [Fact]
    public void Moments_count_from_the_start_of_the_pull()
    {
        double gone = Whole.LiquidGoneAfter!.Value.Seconds;
        Assert.InRange(gone, 300, 700);
        Assert.Equal(gone, Joined.LiquidGoneAfter!.Value.Seconds, 0.01 * gone);
        double[] times = [.. Joined.Trajectory.Select(point => point.Time.Seconds)];
        Assert.Equal(0, times[0]);
        Assert.Equal(Joined.Duration.Seconds, times[^1], 1e-6);
        Assert.All(times.Skip(1).Zip(times), pair => Assert.True(pair.First > pair.Second));
        foreach (TrajectoryPoint point in Joined.Trajectory)
        {
            TrajectoryPoint before = Whole.Trajectory.Last(other => other.Time.Seconds <= point.Time.Seconds + 1e-6), after = Whole.Trajectory.First(other => other.Time.Seconds >= point.Time.Seconds - 1e-6);
            Assert.InRange(point.ApplianceMass.Kilograms, after.ApplianceMass.Kilograms - 0.002, before.ApplianceMass.Kilograms + 0.002);
        }
    }

    /// <summary>Extremes are those of the worst part; the share that the lines let through is that of the whole.</summary>
    [Fact]
    public void Extremes_and_shares_are_those_of_the_whole()
    {
        Assert.Equal(Whole.ColdestSurface.Kelvins, Joined.ColdestSurface.Kelvins, 0.3);
        Assert.Equal(Whole.HottestDischarge!.Value.Kelvins, Joined.HottestDischarge!.Value.Kelvins, 1.0);
        double[] shares = [.. Parts.Select(part => part.SuctionLineShare.DecimalFractions)];
        Assert.True(shares.Max() > shares.Min() + 0.05);
        Assert.Equal(Whole.SuctionLineShare.DecimalFractions, Joined.SuctionLineShare.DecimalFractions, 2e-3);
        Assert.InRange(Joined.Closure.Mass, 0, 1e-9);
        Assert.InRange(Joined.Closure.Energy, 0, 1e-9);
    }

    private static StageResult Pull(SimulationState start, double minutes) => VaporRecovery.Simulate(
        Job.Appliance, Job.Machine, Job.Hoses, Job.Cylinders[0], new VaporRecoveryOptions { Start = start, MaximumDuration = Duration.FromMinutes(minutes) });

    private static List<StageResult> Split()
    {
        var parts = new List<StageResult>();
        foreach (double minutes in new[] { 3, 4, 1, 8 })
        {
            parts.Add(Pull(parts.Count == 0 ? new SimulationState(ApplianceState.Initial(Job.Appliance)) : parts[^1].After, minutes));
        }

        return parts;
    }

    /// <summary>0.6 kg behind a valve core.</summary>
    private static RecoveryJob Small() => new()
    {
        Appliance = new Appliance
        {
            Fluid = Fluid.Get("R-134a"),
            Charge = Mass.FromKilograms(0.6),
            InternalVolume = Volume.FromLiters(3),
            Temperature = Temperature.FromDegreesCelsius(22),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.2),
            MetalMass = Mass.FromKilograms(6),
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.1)),
        Hoses = new HoseSet { VaporSide = [Jobs.Hose(5, 3) with { Fittings = [Fitting.CoreDepressor()] }], Discharge = [Jobs.Hose(5, 4.7)] },
        Cylinders = [Jobs.Cylinder(30, "C1")],
        Evacuation = new EvacuationOptions { Appliance = ApplianceKind.Small },
    };
}
