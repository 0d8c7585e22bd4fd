using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

public class HoldTests
{
    private static readonly Fluid R134a = Fluid.Get("R-134a");

    [Fact]
    public void Over_a_cold_pool_the_pressure_comes_back_to_saturation_at_the_surroundings()
    {
        Appliance appliance = Setups.Appliance("R-134a", 5.8, 50, -40, 50) with { Surroundings = Temperature.FromDegreesCelsius(24) };
        StageResult hold = Hold.Simulate(appliance, new HoldOptions { Duration = Duration.FromHours(24) });
        Assert.Equal(R134a.SaturationAt(Temperature.FromDegreesCelsius(24)).Bubble.Pressure.Pascals, hold.Appliance.Pressure.Pascals, 50.0);
        Assert.Equal(0, hold.RecoveredMass.Kilograms);
        Assert.Contains(hold.Findings, f => f.Subject == FindingSubject.LiquidLeftBehind);
    }

    [Fact]
    public void Dry_gas_warms_at_constant_density()
    {
        Appliance appliance = Setups.Appliance("R-134a", 0.1, 50, -10, 50) with { Surroundings = Temperature.FromDegreesCelsius(24) };
        StageResult hold = Hold.Simulate(appliance, new HoldOptions { Duration = Duration.FromHours(2) });
        double expected = R134a.Model.VesselAtTemperature(297.15, 2).Bulk.Pressure;
        Assert.Equal(expected, hold.Appliance.Pressure.Pascals, 1e-5 * expected);
        Assert.DoesNotContain(hold.Findings, f => f.Subject == FindingSubject.LiquidLeftBehind);
    }

    [Fact]
    public void It_ends_early_at_the_pressure_asked_for()
    {
        Appliance appliance = Setups.Appliance("R-134a", 5.8, 50, -40, 50) with { Surroundings = Temperature.FromDegreesCelsius(24) };
        StageResult hold = Hold.Simulate(appliance, new HoldOptions { EndPressure = Pressure.FromKilopascals(60), Duration = Duration.FromHours(5) });
        Assert.Equal(60, hold.Appliance.Pressure.Kilopascals, 1e-4);
        Assert.InRange(hold.Duration.Seconds, 1, 5 * 3600 - 1);
    }

    [Fact]
    public void Refrigerant_comes_out_of_the_oil_late()
    {
        Appliance appliance = Setups.Appliance("R-134a", 0.6, 50, 20, 50) with
        {
            Oil = new ApplianceOil { Mass = Mass.FromKilograms(2), Kind = OilKind.PolyolEster },
        };
        StageResult pull = VaporRecovery.Simulate(
            appliance, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(21, 2), new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(50) });
        StageResult hold = Hold.Simulate(appliance, new HoldOptions { Start = pull.After, Duration = Duration.FromHours(3) });
        Assert.True(hold.Appliance.Pressure.Kilopascals - pull.Appliance.Pressure.Kilopascals > 5, hold.ToString());
        Assert.True(hold.Appliance.DissolvedMass < pull.Appliance.DissolvedMass);
    }

    [Fact]
    public void A_rise_test_of_dry_gas_gives_its_mass()
    {
        double density = R134a.Model.StateAt(295.15, 60e3).Density;
        RiseTestResult result = RiseTest.Judge(Readings(50, 283.15, 57.6, 295.15, 60));
        Assert.Equal(RiseTestVerdict.VaporOnly, result.Verdict);
        Assert.Equal(0.05 * density, result.VaporMass.Kilograms, 1e-9);
        Assert.InRange(result.Uncertainty!.Value / result.VaporMass, 0.15, 0.16);
        Assert.Equal(0, result.UnexplainedPressure.Kilopascals, 0.1);
    }

    [Fact]
    public void What_gas_does_not_explain_is_said()
    {
        RiseTestResult result = RiseTest.Judge(Readings(50, 295.15, 50, 295.15, 80));
        Assert.Equal(30, result.UnexplainedPressure.Kilopascals, 1e-9);
        Assert.Contains(result.Findings, f => f.Subject == FindingSubject.Leak);
    }

    [Fact]
    public void A_pressure_that_falls_proves_nothing()
    {
        RiseTestResult result = RiseTest.Judge(Readings(60, 283.15, 67, 283.15, 50));
        Assert.Contains(result.Findings, f => f is { Code: "rise-falls", Severity: Severity.Warning });
        Assert.DoesNotContain(RiseTest.Judge(Readings(60, 283.15, 67, 283.15, 66.9)).Findings, f => f.Code == "rise-falls");
    }

    /// <summary>Air does not leak in against more than its own pressure.</summary>
    [Theory]
    [InlineData(90, true)]
    [InlineData(180, false)]
    public void Air_is_suspected_only_where_it_can_get_in(double kilopascals, bool air)
    {
        RiseTestResult result = RiseTest.Judge(Readings(50, 295.15, 40, 295.15, kilopascals));
        Assert.Equal(air, result.Findings.Single(f => f.Code == "rise-unexplained").Message.Contains("air", StringComparison.Ordinal));
    }

    // The same mass in the same volume, warmer: by the ideal gas law each rises by 8 to 35 kPa more than it does, or less.
    [Theory]
    [InlineData("R-410A", 714.8, 273, 303)]
    [InlineData("R-744", 1568, 253, 293)]
    [InlineData("R-32", 700, 273, 303)]
    [InlineData("R-134a", 250, 273, 303)]
    [InlineData("R-455A", 350, 273, 303)]
    public void Dry_vapor_that_warms_or_cools_is_explained_and_what_leaks_in_is_not(string designation, double kilopascals, double cold, double warm)
    {
        Fluid fluid = Fluid.Get(designation);
        double density = fluid.Model.StateAt(cold, 1000 * kilopascals).Density;
        double warmed = fluid.Model.VesselAtTemperature(warm, density).Bulk.Pressure / 1000;
        RiseTestReadings heated = Readings(20, cold, kilopascals, warm, warmed) with { Fluid = fluid };
        RiseTestReadings cooled = Readings(20, warm, warmed, cold, kilopascals) with { Fluid = fluid };
        foreach (RiseTestReadings readings in new[] { heated, cooled })
        {
            RiseTestResult tight = RiseTest.Judge(readings);
            Assert.Equal(0, tight.UnexplainedPressure.Pascals, 0.1);
            Assert.DoesNotContain(tight.Findings, f => f.Code == "rise-unexplained");
            RiseTestReadings sharp = readings with { PressureUncertainty = Pressure.FromPascals(10), TemperatureUncertainty = TemperatureDelta.FromKelvins(0.01) };
            RiseTestResult leaking = RiseTest.Judge(sharp with { SecondPressure = readings.SecondPressure + Pressure.FromKilopascals(5) });
            Assert.Equal(5, leaking.UnexplainedPressure.Kilopascals, 1e-4);
            Assert.Contains(leaking.Findings, f => f.Code == "rise-unexplained");
        }
    }

    // Thin gas: p2 = p1·T2/T1 = 10.424 kPa, each reading's error in its share of it, by hand: √(200² + 208.5² + 18.4² + 17.7²) = 290 Pa, and √(10² + 10.4² + 73.6² + 70.6²) = 103 Pa.
    [Theory]
    [InlineData(200, 0.5, 290)]
    [InlineData(10, 2, 103)]
    public void A_rise_counts_where_it_is_more_than_the_readings_may_be_off(double pascals, double kelvins, double error)
    {
        bool IsSaid(double excess) => RiseTest.Judge(Readings(20, 283.15, 10, 295.15, 10.424 + (excess / 1000)) with
        {
            PressureUncertainty = Pressure.FromPascals(pascals),
            TemperatureUncertainty = TemperatureDelta.FromKelvins(kelvins),
        }).Findings.Any(f => f.Code == "rise-unexplained");
        Assert.False(IsSaid(0.94 * error));
        Assert.True(IsSaid(1.06 * error));
    }

    [Fact]
    public void Published_pressures_of_a_constant_density_are_explained()
    {
        RiseTestResult result = RiseTest.Judge(Readings(20, 273, 714.8, 303, 827.9) with { Fluid = Fluid.Get("R-410A") });
        Assert.InRange(result.UnexplainedPressure.Kilopascals, 0, 0.1);
        Assert.DoesNotContain(result.Findings, f => f.Subject == FindingSubject.Leak);
    }

    // 0.95 full at 290 K it is liquid-full some 15 K warmer; 400 W bring it there within the hour, and past any vessel's strength.
    [Fact]
    public void A_hold_that_fills_an_appliance_with_liquid_stops_people()
    {
        SaturationPoint cold = R134a.Model.SaturationAtTemperature(290);
        Appliance appliance = Setups.Appliance("R-134a", 0.95 * cold.Bubble.Density * 0.01, 10, 290 - 273.15, null);
        StageResult hold = Hold.Simulate(appliance, new HoldOptions
        {
            Duration = Duration.FromHours(2),
            Inputs = new SimulationInputs { HeaterPower = 400 },
        });
        Assert.Equal(StageEnd.TimeOver, hold.End);
        Finding full = Assert.Single(hold.Findings, f => f.Code == "hold-liquid-full");
        Assert.Equal(Severity.Stop, full.Severity);
        Assert.Equal(hold.Appliance.Pressure.Pascals, full.Value("pressure")!.InternationalValue!.Value, 1.0);
        double after = full.Value("after")!.InternationalValue!.Value;
        TrajectoryPoint before = hold.Trajectory.Last(p => p.Time.Seconds < after);
        TrajectoryPoint then = hold.Trajectory.First(p => p.Time.Seconds > after);
        double limit = LiquidFullTemperature(0.95 * cold.Bubble.Density);
        Assert.InRange(limit, before.ApplianceTemperature.Kelvins, then.ApplianceTemperature.Kelvins);

        StageResult later = Hold.Simulate(appliance, new HoldOptions { Start = hold.After, Duration = Duration.FromMinutes(1) });
        Assert.Equal(0, Assert.Single(later.Findings, f => f.Code == "hold-liquid-full").Value("after")!.InternationalValue!.Value);
        Assert.DoesNotContain(later.Findings, f => f.Message.Contains("No liquid is left", StringComparison.Ordinal));
        StageResult nearly = Hold.Simulate(appliance, new HoldOptions { Duration = Duration.FromSeconds(60), Inputs = new SimulationInputs { HeaterPower = 400 } });
        Assert.Equal(Severity.Warning, Assert.Single(nearly.Findings, f => f.Code == "hold-liquid-full").Severity);
        StageResult half = Hold.Simulate(appliance with { Charge = Mass.FromKilograms(6) }, new HoldOptions { Duration = Duration.FromMinutes(10) });
        Assert.DoesNotContain(half.Findings, f => f.Code == "hold-liquid-full");
    }

    [Fact]
    public void A_connected_cylinder_that_fills_with_liquid_in_a_hold_is_named()
    {
        RecoveryCylinder cylinder = Setups.Cylinder();
        double density = R134a.Model.SaturationAtTemperature(300).Bubble.Density;
        CylinderState full = CylinderState.Initial(cylinder with { Content = Mass.FromKilograms(0.999 * density * cylinder.InternalVolume.CubicMeters) }, R134a, Temperature.FromKelvins(299));
        Appliance appliance = Setups.Appliance("R-134a", 0.1, 10, 30, 10) with { Surroundings = Temperature.FromKelvins(308) };
        SimulationState start = new SimulationState(ApplianceState.Initial(appliance)) with { Cylinder = full };
        StageResult hold = Hold.Simulate(appliance, new HoldOptions { Start = start, Duration = Duration.FromHours(3) });
        Finding finding = Assert.Single(hold.Findings, f => f.Code == "hold-liquid-full");
        Assert.Equal(Severity.Stop, finding.Severity);
        Assert.Equal("The cylinder is full of liquid", finding.Message.Substring(0, 30));
        Assert.True(finding.Value("after")!.InternationalValue!.Value > 0);
    }

    private static double LiquidFullTemperature(double density)
    {
        double low = 290;
        double high = 340;
        while (high - low > 1e-9)
        {
            double middle = 0.5 * (low + high);
            (low, high) = R134a.Model.SaturationAtTemperature(middle).Bubble.Density > density ? (middle, high) : (low, middle);
        }

        return low;
    }

    [Fact]
    public void A_rise_to_saturation_means_liquid()
    {
        double saturation = R134a.Model.SaturationAtTemperature(283.15).Dew.Pressure / 1000;
        RiseTestResult result = RiseTest.Judge(Readings(50, 260, 50, 283.15, saturation));
        Assert.Equal(RiseTestVerdict.LiquidLeft, result.Verdict);
        Assert.Null(result.Uncertainty);
    }

    [Fact]
    public void A_rise_beyond_saturation_is_a_leak_or_air()
    {
        double saturation = R134a.Model.SaturationAtTemperature(283.15).Dew.Pressure / 1000;
        RiseTestResult result = RiseTest.Judge(Readings(50, 283.15, 50, 283.15, saturation + 60));
        Assert.Equal(RiseTestVerdict.ForeignGas, result.Verdict);
        Assert.Equal(60, result.UnexplainedPressure.Kilopascals, 1e-6);
        Assert.Contains(result.Findings, f => f.Severity == Severity.Warning && f.Subject == FindingSubject.NonCondensables);
    }

    private static RiseTestReadings Readings(double liters, double firstKelvins, double firstKilopascals, double secondKelvins, double secondKilopascals) => new()
    {
        Fluid = R134a,
        InternalVolume = Volume.FromLiters(liters),
        FirstTemperature = Temperature.FromKelvins(firstKelvins),
        FirstPressure = Pressure.FromKilopascals(firstKilopascals),
        SecondTemperature = Temperature.FromKelvins(secondKelvins),
        SecondPressure = Pressure.FromKilopascals(secondKilopascals),
    };
}
