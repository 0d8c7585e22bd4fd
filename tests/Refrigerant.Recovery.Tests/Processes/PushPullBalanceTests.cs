using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>A push-pull by its accounts: what goes over as liquid less what is pushed back as vapor is what is recovered; oil and components included; and where it stops.</summary>
public class PushPullBalanceTests
{
    private static readonly Appliance Unit = Setups.Appliance("R-134a", 20, 40, 20, 50) with { LiquidReachable = true, LiquidHeel = Mass.FromKilograms(1) };

    /// <summary>Warm oil foams and gives off what it holds.</summary>
    [Theory]
    [InlineData("R-134a", CompositionMode.Fixed)]
    [InlineData("R-407C", CompositionMode.Fixed)]
    [InlineData("R-407C", CompositionMode.Tracked)]
    public void Liquid_over_less_vapor_back_is_what_is_recovered(string fluid, CompositionMode composition)
    {
        Appliance unit = Setups.Appliance(fluid, 20, 40, 20, 50) with
        {
            LiquidReachable = true,
            LiquidHeel = Mass.FromKilograms(1),
            MetalMass = Mass.FromKilograms(15),
            Oil = new ApplianceOil { Mass = Mass.FromKilograms(3), Kind = OilKind.PolyolEster, RefrigerantFraction = Ratio.FromPercent(20) },
        };
        StageResult push = PushPull.Simulate(
            unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 2), new PushPullOptions
            {
                Composition = composition,
                Start = new SimulationState(ApplianceState.FromMeasured(unit, unit.Charge, unit.Temperature, Temperature.FromDegreesCelsius(50), Mass.FromKilograms(1.5))),
                Inputs = new SimulationInputs(crankcaseHeaterPower: 2000),
            });
        Assert.Equal(StageEnd.LiquidGone, push.End);
        Assert.True(push.Closure is { Mass: < 1e-9, Energy: < 1e-9 }, push.Closure.ToString());
        Transfer liquid = push.Transfers.Single(transfer => transfer.From == "appliance, liquid"), vapor = push.Transfers.Single(transfer => transfer.To == "appliance");
        Assert.Equal(liquid.Mass.Kilograms, push.LiquidMoved.Kilograms, 1e-9);
        Assert.Equal((liquid.Mass - vapor.Mass).Kilograms, push.RecoveredMass.Kilograms, 1e-8);
        Assert.Equal(2 + push.RecoveredMass.Kilograms, push.Cylinder!.Mass.Kilograms, 1e-8);
        Assert.True(push.Appliance.DissolvedMass.Kilograms < push.Before.Appliance.DissolvedMass.Kilograms - 1e-3);
        Assert.Equal(push.RemainingMass.Kilograms, (push.Appliance.LiquidMass + push.Appliance.VaporMass + push.Appliance.DissolvedMass).Kilograms, 1e-9);
        Assert.True(vapor.Mass > Mass.Zero && push.LargestDrive > Pressure.Zero);
        if (composition == CompositionMode.Tracked)
        {
            // What oil gives off is as charged, what goes over is as the liquid is: so in all are appliance and cylinder.
            foreach ((string component, int i) in unit.Fluid.Composition.Select((component, i) => (component.Designation, i)))
            {
                double left = push.Appliance.Composition[i].MassFraction * (push.Appliance.Mass - push.Appliance.DissolvedMass).Kilograms;
                double moved = liquid.Components[i].Kilograms - vapor.Components[i].Kilograms;
                Assert.Equal(component, liquid.Components[i].Designation);
                Assert.Equal(unit.Fluid.Composition[i].MassFraction * (20 - push.Appliance.DissolvedMass.Kilograms), left + moved, 1e-6);
            }
        }
    }

    /// <summary>Nine tenths of the design pressure, gauge, is where a hand on the inlet shuts it, a twentieth below where it begins to (common practice, no source).</summary>
    [Fact]
    public void A_hand_keeps_it_at_nine_tenths_of_the_design_pressure()
    {
        Appliance unit = Unit with { DesignGaugePressure = Pressure.FromKilopascals(530) };
        StageResult push = PushPull.Simulate(unit, Setups.Machine(2), Setups.Hoses(20, 5), Setups.Cylinder(60, 2), new PushPullOptions());
        double highest = push.Trajectory.Max(point => point.AppliancePressure.Pascals) - 101_325;
        Assert.InRange(highest, 0.85 * 530e3, 0.9 * 530e3);
        double free = PushPull.Simulate(unit, Setups.Machine(2), Setups.Hoses(20, 5), Setups.Cylinder(60, 2), new PushPullOptions { KeepBelowDesignPressure = false }).Trajectory.Max(point => point.AppliancePressure.Pascals) - 101_325;
        Assert.Equal(530e3, free, 1.0);
    }

    /// <summary>With the machine off and the pressures even nothing drives the liquid; a shut liquid valve lets none through, but the machine still pushes.</summary>
    [Fact]
    public void Without_a_drive_it_stalls()
    {
        var even = new PushPullOptions
        {
            Start = new SimulationState(ApplianceState.Initial(Unit)) { Cylinder = CylinderState.Initial(Setups.Cylinder(60, 10), Unit.Fluid, Unit.Temperature) },
            MaximumDuration = Duration.FromSeconds(20),
        };
        StageResult off = PushPull.Simulate(Unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 10), even with { Inputs = new SimulationInputs(machineRunning: false) });
        Assert.Equal((StageEnd.Stalled, 0.0), (off.End, off.LiquidMoved.Kilograms));
        StageResult shut = PushPull.Simulate(Unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 10), even with { Inputs = new SimulationInputs(liquidOpening: 0) });
        Assert.Equal((StageEnd.TimeLimit, 0.0), (shut.End, shut.LiquidMoved.Kilograms));
        Assert.True(shut.RecoveredMass.Kilograms < 0);
        StageResult open = PushPull.Simulate(Unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 10), even);
        StageResult half = PushPull.Simulate(Unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 10), even with { Inputs = new SimulationInputs(liquidOpening: 0.5) });
        Assert.True(half.LiquidMoved < open.LiquidMoved && half.LiquidMoved > Mass.Zero);
        Assert.True(half.LargestDrive > open.LargestDrive);
    }

    /// <summary>Liquid of a hundredth of the charge in a part that the port does not reach is worth a word: our choice.</summary>
    [Theory]
    [InlineData(0.0098, false)]
    [InlineData(0.0102, true)]
    public void Liquid_out_of_reach_is_told_from_a_hundredth_on(double share, bool told)
    {
        SaturationOf(out double liquid, out double vapor);
        double hidden = share * 20, there = hidden + (vapor * (1e-3 - (hidden / liquid)));
        Appliance unit = Unit with
        {
            Sections =
            [
                new ApplianceSection { Name = "a", InternalVolume = Volume.FromLiters(39), Charge = Mass.FromKilograms(20 - there) },
                new ApplianceSection { Name = "b", InternalVolume = Volume.FromLiters(1), Charge = Mass.FromKilograms(there) },
            ],
        };
        StageResult drawn = LiquidRecovery.Simulate(unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 2), new LiquidRecoveryOptions { MaximumDuration = Duration.FromSeconds(1) });
        Assert.Equal(hidden, drawn.Appliance.Sections[1].LiquidMass.Kilograms, 1e-3);
        Assert.Equal(told, drawn.Findings.Any(finding => finding.Code == "hidden-section"));
    }

    private static void SaturationOf(out double liquid, out double vapor)
    {
        Refrigerant.Recovery.Fluids.SaturationPoint at = Unit.Fluid.Model.SaturationAtTemperature(Unit.Temperature.Kelvins);
        (liquid, vapor) = (at.Bubble.Density, at.Dew.Density);
    }
}
