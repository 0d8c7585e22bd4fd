using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>What ends a stage, how long it may take, what its course shows, and what a warm machine does to its gas.</summary>
public class StageRuleTests
{
    private static readonly Appliance Unit = Setups.Appliance("R-134a", 10, 30, 20, 50) with { LiquidReachable = true, LiquidHeel = Mass.FromKilograms(1) };

    private static readonly Dictionary<string, (double Low, double High, Action<double> Set)> Ranges = new()
    {
        ["longest time, days"] = (1.0 / 86_400, 1000, value => _ = new VaporRecoveryOptions { MaximumDuration = Duration.FromDays(value) }),
        ["hold, days"] = (1.0 / 86_400, 1000, value => _ = new HoldOptions { Duration = Duration.FromDays(value) }),
        ["suction share, %"] = (5, 95, value => _ = new LiquidRecoveryOptions { SuctionShare = Ratio.FromPercent(value) }),
        ["condensing conductance, W/K"] = (0, 1e7, value => _ = new PushPullOptions { CondensingConductance = value }),
        ["liquid surface, m²"] = (0, 1e4, value => _ = new PushPullOptions { LiquidSurface = Area.FromSquareMeters(value) }),
        ["temperature of a sweep, K"] = (150, 400, value => _ = new HoseSweepOptions { TargetPressure = Pressure.FromKilopascals(50), Temperature = Temperature.FromKelvins(value) }),
        ["temperature of a rating, K"] = (250, 350, value => _ = new MachineRatings { Fluid = Unit.Fluid, Temperature = Temperature.FromKelvins(value) }),
        ["final vacuum, Pa"] = (10, 1e6, value => _ = new MachineRatings { Fluid = Unit.Fluid, FinalVacuum = Pressure.FromPascals(value) }),
        ["rated rate, kg/s"] = (1e-6, 1000, value => _ = new MachineRatings { Fluid = Unit.Fluid, VaporRate = MassFlow.FromKilogramsPerSecond(value) }),
        ["temperature of a machine, K"] = (150, 600, value => _ = new SimulationState(ApplianceState.Initial(Unit)) { MachineTemperature = Temperature.FromKelvins(value) }),
        ["temperature measured, K"] = (220, 700, value => _ = ApplianceState.FromMeasured(Setups.Appliance("R-744", 0.1, 20, 20, 50), Mass.FromKilograms(0.1), Temperature.FromKelvins(value))),
        ["temperature of metal measured, K"] = (50, 700, value => _ = ApplianceState.FromMeasured(Unit, Mass.FromKilograms(1), Unit.Temperature, Temperature.FromKelvins(value))),
        ["inlet"] = (0, 1, value => _ = new SimulationInputs(inletOpening: value)),
        ["liquid valve"] = (0, 1, value => _ = new SimulationInputs(liquidOpening: value)),
        ["heater, W"] = (0, 1e7, value => _ = new SimulationInputs(heaterPower: value)),
        ["crankcase heater, W"] = (0, 1e6, value => _ = new SimulationInputs(crankcaseHeaterPower: value)),
        ["fan"] = (0, 100, value => _ = new SimulationInputs(fanFactor: value)),
        ["water"] = (0, 100, value => _ = new SimulationInputs(waterFactor: value)),
        ["air, K"] = (150, 400, value => _ = new SimulationInputs(airTemperature: value)),
        ["around the cylinder, K"] = (200, 400, value => _ = new SimulationInputs(cylinderSurroundings: value)),
        ["cylinder"] = (0.01, 200, value => _ = new SimulationInputs(cylinderFactor: value)),
        ["uncertainty of temperature, K"] = (0, 50, value => _ = Readings() with { TemperatureUncertainty = TemperatureDelta.FromKelvins(value) }),
        ["uncertainty of volume, %"] = (0, 90, value => _ = Readings() with { VolumeUncertainty = Ratio.FromPercent(value) }),
    };

    public static TheoryData<string> Names => [.. Ranges.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void What_is_in_the_range_is_taken_and_what_is_outside_is_refused(string name)
    {
        (double low, double high, Action<double> set) = Ranges[name];
        set(low);
        set(high);
        Assert.ThrowsAny<ArgumentException>(() => set(high * 1.01));
        Assert.ThrowsAny<ArgumentException>(() => set(low == 0 ? -0.01 * high : 0.98 * low));
    }

    /// <summary>A week for vapor, a day for liquid, an hour until pressures are even, a quarter of an hour for a hold.</summary>
    [Fact]
    public void Stages_end_by_themselves_after_the_time_that_is_told()
    {
        Assert.Equal(7, new VaporRecoveryOptions().MaximumDuration.Days, 1e-9);
        Assert.Equal(1, new LiquidRecoveryOptions().MaximumDuration.Days, 1e-9);
        Assert.Equal(1, new PushPullOptions().MaximumDuration.Days, 1e-9);
        Assert.Equal(1, new EqualizationOptions().MaximumDuration.Hours, 1e-9);
        Assert.Equal(15, new HoldOptions().Duration.Minutes, 1e-9);
        Assert.Equal(101_325, new HoseSweepOptions { TargetPressure = Pressure.FromKilopascals(50) }.StartPressure.Pascals, 1e-6);
        Assert.Equal(20, new HoseSweepOptions { TargetPressure = Pressure.FromKilopascals(50) }.Temperature.DegreesCelsius, 1e-9);
        Assert.Equal(24, new MachineRatings { Fluid = Unit.Fluid }.Temperature.DegreesCelsius, 1e-9);
        Assert.Equal((1000.0, 1.0, 15.0), (Readings().PressureUncertainty.Pascals, Readings().TemperatureUncertainty.Kelvins, Math.Round(Readings().VolumeUncertainty.Percent, 9)));
    }

    /// <summary>Vapor first ends when the pressures differ by a fiftieth, or when 15 % of the content has gone over, into however large a cylinder.</summary>
    [Theory]
    [InlineData(15, false)]
    [InlineData(2000, true)]
    public void Vapor_first_ends_even_or_at_fifteen_percent(double water, bool isBound)
    {
        StageResult even = Equalization.Simulate(Unit, Setups.Hoses(), Setups.Cylinder(water), new EqualizationOptions());
        Assert.Equal(StageEnd.TargetReached, even.End);
        Assert.Equal(isBound, even.RecoveredMass.Kilograms > 1.499);
        if (isBound)
        {
            Assert.Equal(1.5, even.RecoveredMass.Kilograms, 1e-3);
        }
        else
        {
            Assert.Equal(0.98 * even.Appliance.Pressure.Pascals, even.Cylinder!.Pressure.Pascals, 1e-3 * even.Appliance.Pressure.Pascals);
        }
    }

    /// <summary>Liquid is drawn down to its heel, by push-pull and through the machine.</summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(2)]
    public void Liquid_ends_at_its_heel(double heel)
    {
        Appliance unit = Unit with { LiquidHeel = Mass.FromKilograms(heel) };
        StageResult drawn = LiquidRecovery.Simulate(unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60), new LiquidRecoveryOptions());
        Assert.Equal(StageEnd.LiquidGone, drawn.End);
        Assert.Equal(heel, drawn.Appliance.LiquidMass.Kilograms, 0.02 * heel);
        StageResult pushed = PushPull.Simulate(unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 2), new PushPullOptions());
        Assert.Equal(StageEnd.LiquidGone, pushed.End);
        Assert.Equal(heel, pushed.Trajectory[^1].LiquidMass.Kilograms, 0.02 * heel);
    }

    /// <summary>What no machine draws has no hoses that hold it back; a thin hose holds back more than a wide one, and a wide one nothing.</summary>
    [Fact]
    public void The_share_of_the_suction_line_is_that_of_what_the_machine_could_draw()
    {
        Assert.Equal(1, Hold.Simulate(Unit, new HoldOptions()).SuctionLineShare.DecimalFractions);
        Assert.Equal(1, Equalization.Simulate(Unit, Setups.Hoses(), Setups.Cylinder(15), new EqualizationOptions()).SuctionLineShare.DecimalFractions);
        double[] shares = [.. new[] { 3.0, 5, 8, 25 }.Select(bore => VaporRecovery.Simulate(
            Unit, Setups.Machine(0.5), Setups.Hoses(3, bore), Setups.Cylinder(60), new VaporRecoveryOptions { MaximumDuration = Duration.FromMinutes(5) }).SuctionLineShare.DecimalFractions)];
        Assert.Equal(shares.Order(), shares);
        Assert.True(shares[0] < 0.5);
        Assert.InRange(shares[3], 0.98, 1);
    }

    /// <summary>A heavy body with much surface brings discharge gas to its own temperature; one that the gas does not touch leaves it as hot as without a body.</summary>
    [Fact]
    public void The_body_of_a_machine_takes_heat_from_its_discharge_gas()
    {
        StageResult At(MachineBody? body) => VaporRecovery.Simulate(
            Unit, Setups.Machine(0.5) with { Body = body }, Setups.Hoses(0.01, 20), Setups.Cylinder(60, 20), new VaporRecoveryOptions { MaximumDuration = Duration.FromMinutes(3) });

        MachineBody Body(double conductance) => new()
        {
            HeatCapacity = Entropy.FromJoulesPerKelvin(1e5),
            AirConductance = 0.001,
            GasConductance = conductance,
            FrictionPower = Power.Zero,
        };

        StageResult without = At(null), untouched = At(Body(0)), close = At(Body(1e4)), some = At(Body(5));
        double body = close.After.MachineTemperature!.Value.Kelvins;
        Assert.Equal(body, close.Trajectory[^1].DischargeTemperature.Kelvins, 0.1);
        Assert.Equal(without.Trajectory[^1].DischargeTemperature.Kelvins, untouched.Trajectory[^1].DischargeTemperature.Kelvins, 1.0);
        Assert.InRange(some.Trajectory[^1].DischargeTemperature.Kelvins, some.After.MachineTemperature!.Value.Kelvins, untouched.Trajectory[^1].DischargeTemperature.Kelvins - 1);
        Assert.True(some.After.MachineTemperature.Value.Kelvins > untouched.After.MachineTemperature!.Value.Kelvins);
    }

    /// <summary>A course of any length has 400 points at most, evenly thinned, from the first to the very last.</summary>
    [Theory]
    [InlineData(1, 1)]
    [InlineData(400, 400)]
    [InlineData(401, 401)]
    [InlineData(5000, 401)]
    [InlineData(100_000, 401)]
    public void A_course_is_thinned_evenly_and_keeps_its_ends(int count, int most)
    {
        var recorder = new TrajectoryRecorder();
        for (int i = 0; i < count; i++)
        {
            recorder.Add(new TrajectoryPoint { Seconds = i });
        }

        double[] times = [.. recorder.ToTrajectory().Select(point => point.Time.Seconds)];
        Assert.InRange(times.Length, Math.Min(count, 200), most);
        Assert.Equal(0, times[0]);
        Assert.Equal(count - 1, times[^1]);
        double[] steps = [.. times.Skip(1).Zip(times, (later, sooner) => later - sooner)];
        Assert.All(steps, step => Assert.True(step > 0));
        Assert.True(steps.Length < 2 || steps.SkipLast(1).Distinct().Count() == 1);
        Assert.True(steps.Length < 2 || steps[^1] <= steps[0]);
    }

    /// <summary>A blend that was followed is told by mass and by mole, each adding up to one, and the two by the molar masses of its components.</summary>
    [Fact]
    public void What_is_left_of_a_blend_is_told_by_mass_and_by_mole()
    {
        Appliance unit = Setups.Appliance("R-407C", 10, 50, 24, 50);
        StageResult pull = VaporRecovery.Simulate(
            unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60), new VaporRecoveryOptions { Composition = CompositionMode.Tracked, MaximumDuration = Duration.FromMinutes(8) });
        FluidComponent[] left = [.. pull.Appliance.Composition];
        Assert.NotEqual(unit.Fluid.Composition[0].MassFraction, left[0].MassFraction, 1e-3);
        Assert.Equal(1, left.Sum(component => component.MassFraction), 1e-9);
        Assert.Equal(1, left.Sum(component => component.MoleFraction), 1e-9);
        double[] moles = [.. left.Select(component => component.MassFraction / Fluid.Get(component.Designation).MolarMass.KilogramsPerMole)];
        Assert.All(left.Zip(moles), pair => Assert.Equal(pair.Second / moles.Sum(), pair.First.MoleFraction, 1e-3));
    }

    /// <summary>Liquid under a rise test: saturated vapor of the coldest that it may be, in the least that the volume may be, is certainly there.</summary>
    [Fact]
    public void The_least_that_a_rise_test_tells_counts_on_the_worst_readings()
    {
        Fluid fluid = Fluid.Get("R-134a");
        RiseTestResult rise = RiseTest.Judge(Readings() with
        {
            SecondPressure = fluid.SaturationAt(Temperature.FromDegreesCelsius(20)).Dew.Pressure,
            TemperatureUncertainty = TemperatureDelta.FromKelvins(2),
            VolumeUncertainty = Ratio.FromPercent(10),
        });
        Assert.Equal(RiseTestVerdict.LiquidLeft, rise.Verdict);
        double least = 0.9 * 0.03 * fluid.SaturationAt(Temperature.FromDegreesCelsius(18)).Dew.Density.KilogramsPerCubicMeter;
        Assert.Equal(least, rise.Findings[0].Values.Single(value => value.Name == "at least").InternationalValue!.Value, 1e-3 * least);
        Assert.Equal(0.03 * fluid.SaturationAt(Temperature.FromDegreesCelsius(20)).Dew.Density.KilogramsPerCubicMeter, rise.VaporMass.Kilograms, 1e-6);
    }

    private static RiseTestReadings Readings() => new()
    {
        Fluid = Unit.Fluid,
        InternalVolume = Volume.FromLiters(30),
        FirstPressure = Pressure.FromKilopascals(20),
        FirstTemperature = Temperature.FromDegreesCelsius(10),
        SecondPressure = Pressure.FromKilopascals(25),
        SecondTemperature = Temperature.FromDegreesCelsius(20),
    };
}
