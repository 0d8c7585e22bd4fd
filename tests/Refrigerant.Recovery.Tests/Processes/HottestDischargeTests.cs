using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
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
}
