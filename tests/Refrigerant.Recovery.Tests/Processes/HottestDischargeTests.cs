using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>The hottest discharge of a pull is the hottest of all its moments, of the real gas.</summary>
public class HottestDischargeTests
{
    /// <summary>R-32 in a hot place, throttled: at first what expands in the valve cools by tens of kelvins, later hardly; what is left of the pull after five minutes is, alone, as hot as the whole, to what a new start with an open hose makes of it.</summary>
    [Fact]
    public void A_whole_pull_is_as_hot_as_its_hottest_part()
    {
        var appliance = new Appliance { Fluid = Fluid.Get("R-32"), Charge = Mass.FromKilograms(3), InternalVolume = Volume.FromLiters(10), Temperature = Temperature.FromDegreesCelsius(50) };
        RecoveryMachine machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5));
        var hoses = new HoseSet
        {
            VaporSide = [new Hose { Length = Length.FromMeters(1.5), InnerDiameter = Length.FromMillimeters(6) }],
            Discharge = [new Hose { Length = Length.FromMeters(1.5), InnerDiameter = Length.FromMillimeters(6) }],
        };
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark("4BA400", Mass.FromKilograms(21.6), Mass.FromKilograms(12.5)) with { Content = Mass.FromKilograms(12), Refrigerant = "R-32" };
        var throttled = new VaporRecoveryOptions { TargetPressure = Pressure.FromBars(1), KeepBelowCutout = true };
        StageResult whole = VaporRecovery.Simulate(appliance, machine, hoses, cylinder, throttled);
        StageResult first = VaporRecovery.Simulate(appliance, machine, hoses, cylinder, throttled with { MaximumDuration = Duration.FromMinutes(5) });
        StageResult rest = VaporRecovery.Simulate(appliance, machine, hoses, cylinder, throttled with { Start = first.After });
        Assert.Equal(System.Math.Max(first.HottestDischarge!.Value.Kelvins, rest.HottestDischarge!.Value.Kelvins), whole.HottestDischarge!.Value.Kelvins, 5.0);
        Assert.True(rest.HottestDischarge > first.HottestDischarge);
    }

    /// <summary>Its temperature is that of the real gas at its pressure and enthalpy, which constant facts of the gas miss: over a second next to nothing changes, and what came over per kilogram is the enthalpy.</summary>
    [Theory]
    [InlineData("R-22", 4, 25)]
    [InlineData("R-744", 20, 90)]
    [InlineData("R-134a", 2, 20)]
    public void It_is_the_temperature_of_the_real_gas(string fluid, double suction, double discharge)
    {
        PropertyModel model = Fluid.Get(fluid).Model;
        var appliance = new Appliance
        {
            Fluid = Fluid.Get(fluid),
            Charge = Mass.FromKilograms(10 * model.StateAt(293.15, suction * 1e5).Density),
            InternalVolume = Volume.FromCubicMeters(10),
            Temperature = Temperature.FromKelvins(293.15),
        };
        RecoveryMachine machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5), highPressureCutout: Pressure.FromBars(200)) with { Body = null };
        StageResult pull = Setups.WithoutHoses(appliance, machine, new VaporRecoveryOptions { ReceiverPressure = Pressure.FromBars(discharge), MaximumDuration = Duration.FromSeconds(1) });
        Transfer over = Assert.Single(pull.Transfers);
        double enthalpy = over.EnergyIn.Joules / over.Mass.Kilograms;
        double real = model.StateAtEnthalpy(discharge * 1e5, enthalpy).Temperature;
        Assert.Equal(real, pull.HottestDischarge!.Value.Kelvins, 0.02);
        Assert.True(System.Math.Abs(real - pull.Trajectory[0].DischargeTemperature.Kelvins) > 0.2, $"{real} {pull.Trajectory[0].DischargeTemperature.Kelvins}");

        // The work is that of an isentropic compression over its efficiency, of a machine whose gas takes no heat; constant facts of the gas miss it by some percent.
        StatePoint before = model.StateAt(293.15, suction * 1e5);
        double isentropic = model.StateAtEntropy(discharge * 1e5, before.Entropy).Enthalpy - before.Enthalpy;
        Assert.Equal(isentropic / machine.IsentropicEfficiency, enthalpy - (over.EnergyOut.Joules / over.Mass.Kilograms), 0.1 * isentropic / machine.IsentropicEfficiency);
        Assert.InRange(pull.Closure.Energy, 0, 1e-9);
        Assert.InRange(pull.Closure.Mass, 0, 1e-9);
    }
}
