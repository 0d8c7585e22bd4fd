using System;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>What stages say and do at the edges of their hookups; setups invented.</summary>
public class StageCornerTests
{
    private static readonly Appliance Parts = Setups.Appliance("R-134a", 20, 30, 22, 20) with
    {
        LiquidReachable = true,
        Sections =
        [
            new ApplianceSection { Name = "a", InternalVolume = Volume.FromLiters(20), Charge = Mass.FromKilograms(15) },
            new ApplianceSection { Name = "b", InternalVolume = Volume.FromLiters(10), Charge = Mass.FromKilograms(5) },
        ],
        VaporPort = "a",
    };

    [Fact]
    public void A_liquid_port_says_what_it_does_not_reach()
    {
        StageResult push = PushPull.Simulate(Parts, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 5), new PushPullOptions());
        StageResult drawn = LiquidRecovery.Simulate(Parts, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(60, 5), new LiquidRecoveryOptions());
        Assert.All(new[] { push, drawn }, stage => Assert.Contains(stage.Findings, finding => finding.Code == "hidden-section" && finding.Message.Contains("\"b\"", StringComparison.Ordinal)));
    }

    /// <summary>Liquid behind a closed check valve is not at the temperature of the port, and does not come back by waiting.</summary>
    [Fact]
    public void Cold_liquid_is_only_what_the_port_sees()
    {
        Appliance behind = Parts with { Connections = [new SectionConnection { From = "a", To = "b", FlowCoefficient = 0.05, IsCheckValve = true }] };
        StageResult pull = VaporRecovery.Simulate(behind, Setups.Machine(3), Setups.Hoses(2, 20), Setups.Cylinder(60, 1), new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(60) });
        Finding cold = pull.Findings.FirstOrDefault(finding => finding.Code == "stage-over-cold-liquid")!;
        double open = pull.Appliance.Sections.Where(section => section.Name == "a").Sum(section => section.LiquidMass.Kilograms);
        Assert.Equal(open > 0, cold is not null);
        Assert.Contains(pull.Findings, finding => finding.Code == "hidden-section" && finding.Message.Contains("\"b\"", StringComparison.Ordinal));
    }

    /// <summary>T = T_air + (T − T_air)·e^(−t·UA/C): Newton's cooling of a body that stands.</summary>
    [Fact]
    public void A_machine_that_stands_by_cools()
    {
        Appliance unit = Setups.Appliance("R-22", 4, 12, 35, 20);
        RecoveryMachine machine = Setups.Machine(0.5);
        StageResult pull = VaporRecovery.Simulate(unit, machine, Setups.Hoses(), Setups.Cylinder(), new VaporRecoveryOptions { MaximumDuration = Duration.FromMinutes(5) });
        double warm = pull.After.MachineTemperature!.Value.Kelvins;
        double air = unit.Temperature.Kelvins;
        Assert.True(warm > air + 1);
        StageResult hold = Hold.Simulate(unit, new HoldOptions { Start = pull.After, Duration = Duration.FromMinutes(10), Machine = machine });
        double expected = air + ((warm - air) * Math.Exp(-600 * machine.Body!.AirConductance / machine.Body.HeatCapacity.JoulesPerKelvin));
        Assert.Equal(expected, hold.After.MachineTemperature!.Value.Kelvins, 1e-6);
        StageResult untold = Hold.Simulate(unit, new HoldOptions { Start = pull.After, Duration = Duration.FromMinutes(10) });
        Assert.Equal(warm, untold.After.MachineTemperature!.Value.Kelvins, 1e-9);
    }

    /// <summary>A crankcase heater of an appliance without oil warms its metal as any other heater does.</summary>
    [Fact]
    public void A_crankcase_heater_without_oil_warms_the_metal()
    {
        Appliance unit = Setups.Appliance("R-134a", 3, 12, 25, 20) with { MetalMass = Mass.FromKilograms(10) };
        StageResult crankcase = Hold.Simulate(unit, new HoldOptions { Duration = Duration.FromMinutes(30), Inputs = new SimulationInputs(crankcaseHeaterPower: 500) });
        StageResult heater = Hold.Simulate(unit, new HoldOptions { Duration = Duration.FromMinutes(30), Inputs = new SimulationInputs(heaterPower: 500) });
        Assert.Equal(heater.Appliance.Temperature.Kelvins, crankcase.Appliance.Temperature.Kelvins, 1e-6);
        Assert.True(crankcase.Appliance.Temperature.Kelvins > unit.Temperature.Kelvins + 5);
    }

    /// <summary>Liquid into an all but evacuated cylinder flashes out of the equation there: the cylinder is named, and vapor first.</summary>
    [Fact]
    public void Liquid_that_flashes_in_the_cylinder_is_said_of_the_cylinder()
    {
        Appliance unit = Setups.Appliance("R-717", 5, 20, 22, 20) with { LiquidReachable = true };
        StageResult drawn = LiquidRecovery.Simulate(unit, Setups.Machine(0.5), Setups.Hoses(), Setups.Cylinder(), new LiquidRecoveryOptions());
        Assert.Equal(StageEnd.PropertyRange, drawn.End);
        Assert.Contains(drawn.Findings, finding => finding.Code == "cylinder-out-of-range" && finding.Message.Contains("Let vapor in", StringComparison.Ordinal));
    }

    /// <summary>Two lines side by side let through more than one, in the stepped simulation as in the stage.</summary>
    [Fact]
    public void A_second_vapor_side_counts_in_the_stepped_simulation()
    {
        double Left(HoseSet hoses)
        {
            var simulation = RecoverySimulation.Start(new SimulationSetup
            {
                Appliance = Setups.Appliance("R-134a", 5, 20, 22, 20),
                Machine = Setups.Machine(1),
                Hoses = hoses,
                Cylinder = Setups.Cylinder(),
            });
            simulation.Step(60, SimulationInputs.Running);
            return simulation.ApplianceMass;
        }

        HoseSet one = Setups.Hoses(3, 4);
        Assert.True(Left(one with { SecondVaporSide = [Setups.Hose(3, 4)] }) < Left(one) - 0.02);
    }
}
