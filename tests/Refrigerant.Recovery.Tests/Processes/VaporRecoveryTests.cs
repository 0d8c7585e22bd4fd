using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

public class VaporRecoveryTests
{
    private static readonly Pressure HalfAtmosphere = Pressure.FromKilopascals(50.5);

    // 15 inHg of vacuum below the standard atmosphere. Values computed with the same equation of state by an independent integration
    // (fixed-step, written outside this project); the case has no published result.
    [Fact]
    public void Without_heat_the_gauge_reaches_its_target_over_a_cold_pool()
    {
        StageResult result = Setups.WithoutHoses(
            Setups.Appliance("R-134a", 10, 50, 24, null) with { HeatResistance = Appliance.PerfectInsulation },
            Setups.Ideal(0.5),
            new VaporRecoveryOptions { TargetPressure = HalfAtmosphere, ReceiverPressure = Pressure.FromKilopascals(700) });
        Assert.Equal(StageEnd.TargetReached, result.End);
        Assert.Equal(844, result.Duration.Seconds, 0.005 * 844);
        Assert.Equal(5.84, result.RemainingMass.Kilograms, 0.005 * 5.84);
        Assert.Equal(232.9, result.Appliance.Temperature.Kelvins, 0.005 * 232.9);
        Assert.Contains(result.Findings, f => f.Subject == FindingSubject.LiquidLeftBehind && f.Severity == Severity.Warning);
    }

    [Fact]
    public void With_heat_the_liquid_goes_and_little_is_left()
    {
        StageResult result = Setups.WithoutHoses(
            Setups.Appliance("R-134a", 10, 50, 24, 50),
            Setups.Ideal(0.5),
            new VaporRecoveryOptions { TargetPressure = HalfAtmosphere, ReceiverPressure = Pressure.FromKilopascals(700) });
        Assert.Equal(StageEnd.TargetReached, result.End);
        Assert.Equal(1422, result.Duration.Seconds, 0.005 * 1422);
        Assert.Equal(0.1056, result.RemainingMass.Kilograms, 0.005 * 0.1056);
        Assert.NotNull(result.LiquidGoneAfter);
    }
}
