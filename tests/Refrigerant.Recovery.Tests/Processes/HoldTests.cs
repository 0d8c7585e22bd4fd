using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
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
        RiseTestResult result = RiseTest.Evaluate(Readings(50, 283.15, 57.6, 295.15, 60));
        Assert.Equal(RiseTestVerdict.VaporOnly, result.Verdict);
        Assert.Equal(0.05 * density, result.VaporMass.Kilograms, 1e-9);
        Assert.InRange(result.Uncertainty!.Value / result.VaporMass, 0.15, 0.16);
        Assert.Equal(0, result.UnexplainedPressure.Kilopascals, 0.1);
    }

    [Fact]
    public void What_gas_does_not_explain_is_said()
    {
        RiseTestResult result = RiseTest.Evaluate(Readings(50, 295.15, 50, 295.15, 80));
        Assert.Equal(30, result.UnexplainedPressure.Kilopascals, 1e-9);
        Assert.Contains(result.Findings, f => f.Subject == FindingSubject.Leak);
    }

    [Fact]
    public void A_rise_to_saturation_means_liquid()
    {
        double saturation = R134a.Model.SaturationAtTemperature(283.15).Dew.Pressure / 1000;
        RiseTestResult result = RiseTest.Evaluate(Readings(50, 260, 50, 283.15, saturation));
        Assert.Equal(RiseTestVerdict.LiquidLeft, result.Verdict);
        Assert.Null(result.Uncertainty);
    }

    [Fact]
    public void A_rise_beyond_saturation_is_a_leak_or_air()
    {
        double saturation = R134a.Model.SaturationAtTemperature(283.15).Dew.Pressure / 1000;
        RiseTestResult result = RiseTest.Evaluate(Readings(50, 283.15, 50, 283.15, saturation + 60));
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
