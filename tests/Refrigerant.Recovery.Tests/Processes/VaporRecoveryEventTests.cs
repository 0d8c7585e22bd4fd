using System;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>What ends a vapor recovery, what the cylinder and the water side do to it.</summary>
public class VaporRecoveryEventTests
{
    private static readonly VaporRecoveryOptions ToHalfAtmosphere = new() { TargetPressure = Pressure.FromKilopascals(50.5) };

    [Fact]
    public void The_cylinder_is_never_filled_past_its_limit()
    {
        StageResult result = Pull(Setups.Appliance("R-134a", 30, 50, 24, 200), Setups.Cylinder(10, 2));
        double limit = CylinderFill.Limit(Setups.Cylinder(10, 2), Fluid.Get("R-134a")).MaximumFill.Kilograms;
        Assert.Equal(StageEnd.CylinderFull, result.End);
        Assert.Equal(limit, result.Cylinder!.Mass.Kilograms, 1e-9 * limit);
    }

    /// <summary>49 CFR 173.301 and 173.304a (from memory): 1.25 times the marked service pressure, which is a gauge pressure: 1.25·1000 + 101.3 kPa.</summary>
    [Fact]
    public void A_hot_small_cylinder_is_not_filled_past_what_it_is_built_for()
    {
        StageResult result = VaporRecovery.Simulate(
            Setups.Appliance("R-134a", 10, 50, 24, 200) with { Surroundings = Temperature.FromDegreesCelsius(40) },
            Setups.Machine(0.5) with { Condenser = new Condenser { RatedDuty = Power.FromWatts(100) } },
            Setups.Hoses(),
            Setups.Cylinder(15, 2) with { ServicePressure = Pressure.FromKilopascals(1000) },
            ToHalfAtmosphere with { CylinderLimit = Mass.FromKilograms(12) });
        Assert.Equal(StageEnd.CylinderPressure, result.End);
        Assert.Equal(1351.3, result.Cylinder!.Pressure.Kilopascals, 0.1);
    }

    [Fact]
    public void A_hot_small_cylinder_cuts_the_machine_out()
    {
        StageResult result = VaporRecovery.Simulate(
            Setups.Appliance("R-134a", 10, 50, 24, 200) with { Surroundings = Temperature.FromDegreesCelsius(40) },
            Setups.Machine(0.5) with { HighPressureCutout = Pressure.FromKilopascals(1300), Condenser = new Condenser { RatedDuty = Power.FromWatts(100) } },
            Setups.Hoses(),
            Setups.Cylinder(15, 2),
            ToHalfAtmosphere);
        Assert.Equal(StageEnd.HighPressureCutout, result.End);
        Assert.Equal(1300, result.Cylinder!.Pressure.Kilopascals, 1e-3);
        Assert.Contains(result.Findings, f => f.Subject == FindingSubject.CylinderPressure && f.Severity == Severity.Warning);
    }

    [Fact]
    public void A_target_below_the_deepest_vacuum_stalls_there()
    {
        StageResult result = Setups.WithoutHoses(
            Setups.Appliance("R-134a", 2, 50, 24, 50),
            Setups.Machine(0.5),
            new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(5), ReceiverPressure = Pressure.FromKilopascals(800) });
        Assert.Equal(StageEnd.Stalled, result.End);
        Assert.Equal(Setups.Machine(0.5).DeepestVacuum(Pressure.FromKilopascals(800)).Kilopascals, result.Appliance.Pressure.Kilopascals, 0.05);
        Assert.Contains(result.Findings, f => f.Subject == FindingSubject.EvacuationLevel);
    }

    [Fact]
    public void The_low_pressure_switch_stops_the_machine()
    {
        StageResult result = VaporRecovery.Simulate(
            Setups.Appliance("R-134a", 2, 50, 24, 50),
            Setups.Machine(0.5) with { LowPressureSwitch = Pressure.FromKilopascals(80) },
            Setups.Hoses(),
            Setups.Cylinder(21, 2),
            ToHalfAtmosphere);
        Assert.Equal(StageEnd.LowPressureSwitch, result.End);
        Assert.Equal(80, result.Trajectory[^1].SuctionPressure.Kilopascals, 1e-4);
    }

    [Fact]
    public void A_target_already_met_takes_no_time()
    {
        StageResult result = Pull(Setups.Appliance("R-134a", 0.05, 50, 24, 50), Setups.Cylinder(21, 2));
        Assert.Equal(StageEnd.TargetReached, result.End);
        Assert.Equal(0, result.Duration.Seconds);
        Assert.Equal(0, result.RecoveredMass.Kilograms);
    }

    [Fact]
    public void Water_cooling_keeps_the_cylinder_colder_and_the_pull_shorter()
    {
        Appliance appliance = Setups.Appliance("R-22", 20, 60, 35, 300);
        RecoveryMachine air = Setups.Machine(0.5) with { Condenser = new Condenser { RatedDuty = Power.FromWatts(1500) } };
        RecoveryMachine water = air with
        {
            Condenser = new Condenser
            {
                RatedDuty = Power.FromWatts(6000),
                Cooling = CondenserCooling.Water,
                CoolantTemperature = Temperature.FromDegreesCelsius(15),
            },
        };
        StageResult hot = VaporRecovery.Simulate(appliance, air, Setups.Hoses(), Setups.Cylinder(40, 2), ToHalfAtmosphere);
        StageResult cold = VaporRecovery.Simulate(appliance, water, Setups.Hoses(), Setups.Cylinder(40, 2), ToHalfAtmosphere);
        Assert.Equal(StageEnd.TargetReached, cold.End);
        Assert.True(cold.Cylinder!.Temperature < hot.Cylinder!.Temperature);
        Assert.True(cold.Duration.Seconds < 0.9 * hot.Duration.Seconds || hot.End != StageEnd.TargetReached);
    }

    [Fact]
    public void Air_in_the_cylinder_adds_its_pressure_and_the_more_the_fuller()
    {
        RecoveryCylinder cylinder = Setups.Cylinder(21, 2);
        AmountOfSubstance air = AmountOfSubstance.FromMoles(0.5);
        Appliance appliance = Setups.Appliance("R-134a", 14, 50, 24, 200);
        var start = CylinderState.Initial(cylinder, Fluid.Get("R-134a"), Temperature.FromDegreesCelsius(24), air);
        StageResult result = VaporRecovery.Simulate(
            appliance,
            Setups.Machine(0.5),
            Setups.Hoses(),
            cylinder,
            ToHalfAtmosphere with { Start = new SimulationState(ApplianceState.Initial(appliance)) { Cylinder = start } });
        CylinderState end = result.Cylinder!;
        double gasVolume = cylinder.InternalVolume.CubicMeters * (1 - end.LiquidVolumeFraction.DecimalFractions);
        Assert.Equal(0.5 * 8.31446261815324 * end.Temperature.Kelvins / gasVolume, end.NonCondensablePressure.Pascals, 1e-6);
        Assert.True(end.NonCondensablePressure > 2 * start.NonCondensablePressure);
    }

    // R-123 saturates at 32.65 kPa at 0 °C: pulled below that, water in the tubes of a chiller freezes.
    [Fact]
    public void Standing_water_freezes_and_a_throttled_pull_keeps_clear_of_it()
    {
        Appliance chiller = Setups.Appliance("R-123", 100, 500, 15, 100) with
        {
            MetalMass = Mass.FromKilograms(100),
            MetalResistance = Setups.Conductance(2000),
            Water = TubeWater.Standing(Mass.FromKilograms(40), Temperature.FromDegreesCelsius(15), Setups.Conductance(1000)),
        };
        RecoveryMachine machine = Setups.Machine(8);
        HoseSet hoses = Setups.Hoses(3, 20);
        VaporRecoveryOptions options = new() { TargetPressure = Pressure.FromKilopascals(10), CylinderLimit = Mass.FromKilograms(500) };
        RecoveryCylinder cylinder = Setups.Cylinder(450, 5);
        StageResult fast = VaporRecovery.Simulate(chiller, machine, hoses, cylinder, options);
        StageResult safe = VaporRecovery.Simulate(chiller, machine, hoses, cylinder, options with { KeepAboveFreezing = true });
        StageResult stopped = VaporRecovery.Simulate(chiller, machine, hoses, cylinder, options with { StopAtFreezing = true });
        Assert.True(fast.ColdestSurface.DegreesCelsius < 0);
        Assert.Contains(fast.Findings, f => f.Subject == FindingSubject.Freezing && f.Severity == Severity.Warning);
        Assert.True(safe.ColdestSurface.DegreesCelsius > 0);
        Assert.DoesNotContain(safe.Findings, f => f.Subject == FindingSubject.Freezing);
        Assert.True(safe.Duration > fast.Duration);
        Assert.Equal(StageEnd.Freezing, stopped.End);
        Assert.Equal(0, stopped.ColdestSurface.DegreesCelsius, 1e-6);
    }

    [Fact]
    public void Moving_water_keeps_the_surface_warmer_than_standing_water()
    {
        Appliance Chiller(TubeWater water) => Setups.Appliance("R-134a", 60, 200, 12, 50) with
        {
            MetalMass = Mass.FromKilograms(100),
            MetalResistance = Setups.Conductance(2000),
            Water = water,
        };
        Temperature inlet = Temperature.FromDegreesCelsius(12);
        StageResult standing = Pull(Chiller(TubeWater.Standing(Mass.FromKilograms(40), inlet, Setups.Conductance(800))), Setups.Cylinder(200, 5));
        StageResult moving = Pull(
            Chiller(TubeWater.Moving(MassFlow.FromKilogramsPerSecond(2), inlet, Setups.Conductance(2000))), Setups.Cylinder(200, 5));
        Assert.True(moving.ColdestSurface > standing.ColdestSurface);
    }

    [Fact]
    public void A_charge_that_does_not_fit_is_refused_by_name()
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() => ApplianceState.Initial(Setups.Appliance("R-134a", 70, 50, 24, 50)));
        Assert.Equal("appliance", error.ParamName);
        Assert.Contains("60.", error.Message, StringComparison.Ordinal);
    }

    /// <summary>Triple point of carbon dioxide: 216.592 K, 0.51795 MPa (Span and Wagner 1996, doi:10.1063/1.555991; the figures from memory).</summary>
    [Fact]
    public void Carbon_dioxide_stops_where_dry_ice_begins()
    {
        StageResult result = VaporRecovery.Simulate(
            Setups.Appliance("R-744", 5, 40, 15, 10),
            Setups.Machine(2),
            Setups.Hoses(),
            Setups.Cylinder(300) with { ServicePressure = Pressure.FromPoundsForcePerSquareInch(4000) },
            new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(100), CylinderLimit = Mass.FromKilograms(10) });
        Assert.Equal(StageEnd.PropertyRange, result.End);
        Assert.Equal(517.95, result.Appliance.Pressure.Kilopascals, 0.05);
        Assert.Equal(216.592, result.Appliance.Temperature.Kelvins, 0.001);
        Finding finding = Assert.Single(result.Findings, finding => finding.Subject == FindingSubject.Freezing);
        Assert.Contains("518 kPa absolute and -56.6 °C", finding.ToText(DisplayUnits.International), StringComparison.Ordinal);
    }

    private static StageResult Pull(Appliance appliance, RecoveryCylinder cylinder) =>
        VaporRecovery.Simulate(appliance, Setups.Machine(0.5), Setups.Hoses(), cylinder, ToHalfAtmosphere);
}
