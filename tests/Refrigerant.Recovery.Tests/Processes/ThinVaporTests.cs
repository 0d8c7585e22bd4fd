using System;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>
/// Thin vapor on warm metal: its temperature follows the metal's within a fraction of a second, for half an hour. A method bounded by
/// stability would meet its bound on steps there.
/// </summary>
public class ThinVaporTests
{
    [Fact]
    public void The_end_of_a_deep_pull_takes_few_evaluations()
    {
        Appliance appliance = Setups.Appliance("R-22", 80, 155, 27, 340) with { MetalMass = Mass.FromKilograms(15) };
        StageResult result = VaporRecovery.Simulate(
            appliance,
            Setups.Machine(0.17),
            Setups.Hoses(3, 6),
            Setups.Cylinder(800),
            new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(35) });
        Assert.Equal(StageEnd.TargetReached, result.End);
        Assert.InRange(result.Closure.Evaluations, 100, 5000);
        Assert.Equal(300.15, result.Trajectory[^1].ApplianceTemperature.Kelvins, 0.1);
    }

    /// <summary>Throttled to nothing over water that must warm the metal first, with next to nothing in the cylinder: its vapor is the stiff part.</summary>
    [Theory]
    [InlineData(100)]
    [InlineData(250)]
    [InlineData(400)]
    public void Waiting_for_the_water_takes_few_evaluations(double waterCapacity)
    {
        Appliance appliance = Setups.Appliance("R-32", 129.29, 956.5, -18.2, 633) with
        {
            MetalMass = Mass.FromKilograms(516.6),
            Water = TubeWater.Standing(Mass.FromKilograms(129.29), Temperature.FromDegreesCelsius(24.1), Setups.Conductance(1000)),
        };
        StageResult result = VaporRecovery.Simulate(
            appliance,
            Setups.Machine(0.73),
            Setups.Hoses(),
            Setups.Cylinder(waterCapacity),
            new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(100), KeepAboveFreezing = true, MaximumDuration = Duration.FromHours(10) });
        Assert.NotEqual(StageEnd.StepLimit, result.End);
        Assert.InRange(result.Closure.Evaluations, 100, 10_000);
    }

    [Property(MaxTest = 150)]
    public Property No_job_meets_the_bound_on_steps() => Prop.ForAll(
        Gen.Elements("R-134a", "R-22", "R-717", "R-290", "R-123", "R-410A", "R-448A", "R-115").ToArbitrary(),
        Gen.Choose(0, 1000).Select(i => i / 1000.0).ArrayOf(9).ToArbitrary(),
        (designation, x) =>
        {
            static double Between(double low, double high, double share) => low * Math.Pow(high / low, share);
            PropertyModel model = Fluid.Get(designation).Model;
            double celsius = 45 * x[0];
            double liters = Between(0.5, 500, x[1]);
            double charge = Between(0.01, 0.7, x[2]) * liters * 1e-3 * model.SaturationAtTemperature(273.15 + celsius).Bubble.Density;
            Appliance appliance = Setups.Appliance(designation, charge, liters, celsius, Between(1, 500, x[3])) with
            {
                MetalMass = new Mass(x[4] < 0.5 ? 0 : Between(0.01, 5, x[5]) * charge, MassUnit.Kilogram),
            };
            StageResult result = VaporRecovery.Simulate(
                appliance,
                Setups.Machine(Between(0.05, 2, x[6])),
                Setups.Hoses(3, 6),
                Setups.Cylinder(Between(2, 1000, x[7])),
                new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(Between(5, 300, x[8])) });
            return (result.End != StageEnd.StepLimit && result.Closure.Mass <= 1e-9 && result.Closure.Energy <= 1e-9)
                .Label($"{designation} {charge:G4} kg {result.End} {result.Closure.Evaluations} {result.Closure.Mass:E1} {result.Closure.Energy:E1}");
        });
}
