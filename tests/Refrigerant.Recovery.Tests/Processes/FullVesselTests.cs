using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>A vessel that stands shut and full of liquid, or nearly, and a little to either side of it: 95 % is nearly full, and above the critical temperature gas of 1.5 times the critical density is as bad (our choice).</summary>
public class FullVesselTests
{
    private const double Liters = 10;

    [Theory]
    [InlineData(0.948, null)]
    [InlineData(0.952, Severity.Warning)]
    public void Nearly_full_is_said_from_ninety_five_percent(double share, Severity? severity)
    {
        Appliance unit = Setups.Appliance("R-134a", 1, Liters, 20, 50);
        SaturationState at = unit.Fluid.SaturationAt(unit.Temperature);
        double charge = Liters * 1e-3 * ((share * at.Bubble.Density.KilogramsPerCubicMeter) + ((1 - share) * at.Dew.Density.KilogramsPerCubicMeter));
        Assert.Equal(severity, Word(Stand(unit with { Charge = Mass.FromKilograms(charge) }, null))?.Severity);
    }

    /// <summary>What is full when it is shut is full from the start: stop, at once.</summary>
    [Fact]
    public void What_is_full_from_the_start_is_a_stop()
    {
        Appliance unit = Setups.Appliance("R-134a", 0.98 * Liters * 1.2253, Liters, 20, 50) with { MetalMass = Mass.FromKilograms(2) };
        StageResult heated = Hold.Simulate(unit, new HoldOptions { Duration = Duration.FromMinutes(3), Inputs = new SimulationInputs(heaterPower: 2000) });
        Finding came = Word(heated)!;
        Assert.Equal(Severity.Stop, came.Severity);
        Assert.InRange(came.Value("after")!.InternationalValue!.Value, 1, 179);
        Finding was = Word(Stand(unit, heated.After))!;
        Assert.Equal((Severity.Stop, 0.0), (was.Severity, was.Value("after")!.InternationalValue!.Value));
    }

    /// <summary>Carbon dioxide at 40 °C, critical density 467.6 kg/m³ (Span and Wagner 1996, from memory).</summary>
    [Theory]
    [InlineData(40, 1.49, false)]
    [InlineData(40, 1.51, true)]
    [InlineData(32, 1.51, true)]
    public void Gas_as_dense_as_liquid_is_a_stop(double celsius, double timesCritical, bool stops)
    {
        Appliance unit = Setups.Appliance("R-744", timesCritical * 467.6 * Liters * 1e-3, Liters, celsius, 50);
        Assert.Equal(stops, Word(Stand(unit, null))?.Severity == Severity.Stop);
    }

    private static StageResult Stand(Appliance unit, SimulationState? start) => Hold.Simulate(unit, new HoldOptions { Duration = Duration.FromSeconds(30), Start = start });

    private static Finding? Word(StageResult hold) => hold.Findings.SingleOrDefault(finding => finding.Code == "hold-liquid-full");
}
