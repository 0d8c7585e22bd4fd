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

    /// <summary>What passed by different ways, or between different places, is not one sum; nor are the components.</summary>
    [Fact]
    public void Each_way_has_its_own_sum()
    {
        static StageResult Part(double times)
        {
            Transfer Of(string by, string from, string to, double kilograms) =>
                new(by, from, to, times * kilograms, times * 10 * kilograms, times * 100 * kilograms, [("R-32", times * 0.25 * kilograms), ("R-125", times * 0.75 * kilograms)]);
            Transfer[] transfers = [Of("machine", "a", "c", 1), Of("machine", "a", "b", 2), Of("machine", "b", "c", 4), Of("line", "a", "c", 8)];
            return new StageResult(StageEnd.TimeLimit, 5, Whole.Before, Whole.After, transfers, new Trajectory([]), new StageFigures(), [], new Closure(times * 1e-12, times * 1e-11, 3, 7));
        }

        StageResult joined = StageResults.Join([Part(1), Part(10)], StageEnd.TargetReached);
        Assert.Equal([11, 22, 44, 88], joined.Transfers.Select(transfer => transfer.Mass.Kilograms));
        Assert.Equal([110, 220, 440, 880], joined.Transfers.Select(transfer => transfer.EnergyOut.Joules));
        Assert.Equal([1100, 2200, 4400, 8800], joined.Transfers.Select(transfer => transfer.EnergyIn.Joules));
        Assert.Equal([("R-32", 2.75), ("R-125", 8.25)], joined.Transfers[0].Components);
        Assert.Equal((10 * 1e-12, 10 * 1e-11, 6, 14), (joined.Closure.Mass, joined.Closure.Energy, joined.Closure.Steps, joined.Closure.Evaluations));
        Assert.Equal((StageEnd.TargetReached, 10.0), (joined.End, joined.Duration.Seconds));
    }

    /// <summary>Moments and extremes of parts that are set down by hand: the liquid is gone in the second, and stays gone.</summary>
    [Fact]
    public void Figures_are_of_all_parts()
    {
        StageResult Part(double seconds, StageFigures figures, SimulationState? after = null, params double[] times) =>
            new(StageEnd.TimeLimit, seconds, Whole.Before, after ?? Whole.After, [], new Trajectory([.. times.Select(time => new TrajectoryPoint { Seconds = time })]), figures, [], default);

        StageFigures first = new() { Coldest = 260, HottestDischarge = 350, LargestDrive = 100, LiquidMoved = 1, Passed = 1, FreeFlow = 4 };
        StageFigures second = new() { Coldest = 250, HottestDischarge = 340, LargestDrive = 200, LiquidMoved = 2, Passed = 2, FreeFlow = 5, LiquidGoneAt = 7 };
        StageFigures third = new() { Coldest = 270, LargestDrive = 50, LiquidMoved = 4, Passed = 3, FreeFlow = 6, LiquidGoneAt = 1, CylinderOutOfRange = true };
        StageResult joined = StageResults.Join([Part(10, first, null, 0, 10), Part(20, second, null, 0, 7, 20), Part(30, third, null, 0, 30)], StageEnd.Stalled);
        Assert.Equal([0, 10, 17, 30, 60], joined.Trajectory.Select(point => point.Seconds));
        Assert.Equal(17, joined.LiquidGoneAfter!.Value.Seconds);
        Assert.Equal((250.0, 350.0, 200.0, 7.0), (joined.ColdestSurface.Kelvins, joined.HottestDischarge!.Value.Kelvins, joined.LargestDrive.Pascals, joined.LiquidMoved.Kilograms));
        Assert.Equal(6.0 / 15, joined.SuctionLineShare.DecimalFractions, 1e-12);
        Assert.True(joined.CylinderOutOfRange);
        Assert.Null(joined.Fractionation);
        Assert.Null(StageResults.Join([Part(10, first), Part(20, first)], StageEnd.Stalled).LiquidGoneAfter);
        Assert.Null(StageResults.Join([Part(20, second), Part(10, first, Whole.Before)], StageEnd.Stalled).LiquidGoneAfter);
        Assert.Null(StageResults.Join([Part(10, third)], StageEnd.Stalled).HottestDischarge);
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
