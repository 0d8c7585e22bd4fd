using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Planning;

/// <summary>Hostile numbers in a job: an exception that names the value, or a plan of finite numbers; never NaN, never a hang.</summary>
public class HostileJobTests
{
    private static readonly double[] Hostile = [0, -1, -1e300, 1e-300, 1e-12, 1e12, 1e300, double.MaxValue, double.Epsilon];

    public static TheoryData<string> Inputs => [.. Changes.Keys];

    private static IReadOnlyDictionary<string, Func<RecoveryJob, double, RecoveryJob>> Changes { get; } =
        new Dictionary<string, Func<RecoveryJob, double, RecoveryJob>>
        {
            ["charge"] = (job, x) => job with { Appliance = job.Appliance with { Charge = new Mass(x, MassUnit.Kilogram) } },
            ["volume"] = (job, x) => job with { Appliance = job.Appliance with { InternalVolume = new Volume(x, VolumeUnit.CubicMeter) } },
            ["temperature"] = (job, x) => job with { Appliance = job.Appliance with { Temperature = new Temperature(x, TemperatureUnit.Kelvin) } },
            ["surroundings"] = (job, x) => job with { Appliance = job.Appliance with { Surroundings = new Temperature(x, TemperatureUnit.Kelvin) } },
            ["heat resistance"] = (job, x) => job with { Appliance = job.Appliance with { HeatResistance = new ThermalResistance(x, ThermalResistanceUnit.SquareMeterKelvinPerWatt) } },
            ["metal"] = (job, x) => job with { Appliance = job.Appliance with { MetalMass = new Mass(x, MassUnit.Kilogram) } },
            ["heel"] = (job, x) => job with { Appliance = job.Appliance with { LiquidHeel = new Mass(x, MassUnit.Kilogram) } },
            ["displacement"] = (job, x) => job with { Machine = job.Machine with { Displacement = new VolumeFlow(x, VolumeFlowUnit.CubicMeterPerSecond) } },
            ["clearance"] = (job, x) => job with { Machine = job.Machine with { ClearanceRatio = x } },
            ["cut-out"] = (job, x) => job with { Machine = job.Machine with { HighPressureCutout = new Pressure(x, PressureUnit.Pascal) } },
            ["machine volume"] = (job, x) => job with { Machine = job.Machine with { InternalVolume = new Volume(x, VolumeUnit.CubicMeter) } },
            ["hose length"] = (job, x) => job with { Hoses = Jobs.Hoses(x) },
            ["hose bore"] = (job, x) => job with { Hoses = Jobs.Hoses(10, x) },
            ["water capacity"] = (job, x) => job with { Cylinders = [job.Cylinders[0] with { WaterCapacity = new Mass(x, MassUnit.Kilogram) }] },
            ["content"] = (job, x) => job with { Cylinders = [job.Cylinders[0] with { Content = new Mass(x, MassUnit.Kilogram) }] },
            ["sweep pressure"] = (job, x) => job with { SweepPressure = new Pressure(x, PressureUnit.Pascal) },
            ["loss"] = (job, x) => job with { LossPerConnection = new Volume(x, VolumeUnit.CubicMeter) },
            ["hold"] = (job, x) => job with { Times = job.Times with { Hold = new Duration(x, DurationUnit.Second) } },
            ["hose change"] = (job, x) => job with { Times = job.Times with { HoseChange = new Duration(x, DurationUnit.Second) } },
            ["own level"] = (job, x) => job with { Evacuation = new() { OwnLevel = new Pressure(x, PressureUnit.Pascal) } },
            ["pulls"] = (job, x) => job with { MaximumPulls = (int)Math.Max(int.MinValue, Math.Min(int.MaxValue, x)) },
        };

    [Theory]
    [MemberData(nameof(Inputs))]
    public void Hostile_input_is_refused_or_planned_with_finite_numbers(string input)
    {
        foreach (double value in Hostile)
        {
            try
            {
                RecoveryPlan plan = RecoveryPlanner.Plan(Changes[input](Jobs.Chiller(kilograms: 20), value));
                double[] numbers =
                [
                    plan.TotalDuration.Seconds, plan.Ledger.InCylinders.Kilograms, plan.Ledger.InAppliance.Kilograms, plan.Ledger.InHosesAndMachine.Kilograms,
                    plan.Ledger.Released.Kilograms, plan.End.Pressure.Pascals, plan.End.Temperature.Kelvins,
                ];
                Assert.All(numbers, number => Assert.True(double.IsFinite(number), $"{input} = {value}: {plan}"));
                Assert.DoesNotContain(plan.Findings, finding => finding.Message.Contains("NaN", StringComparison.Ordinal));
            }
            catch (ArgumentException e)
            {
                Assert.NotEmpty(e.Message);
            }
        }
    }

    [Fact]
    public void Nothing_in_place_of_something_is_refused()
    {
        RecoveryJob job = Jobs.Chiller();
        Assert.Throws<ArgumentNullException>(() => RecoveryPlanner.Plan(null!));
        Assert.Throws<ArgumentNullException>(() => job with { Appliance = null! });
        Assert.Throws<ArgumentNullException>(() => job with { Machine = null! });
        Assert.Throws<ArgumentNullException>(() => job with { Hoses = null! });
        Assert.Throws<ArgumentNullException>(() => job with { Cylinders = null! });
        Assert.Throws<ArgumentNullException>(() => job with { Cylinders = [null!] });
        Assert.Throws<ArgumentNullException>(() => job with { Barometer = null! });
        Assert.Throws<ArgumentNullException>(() => job with { Times = null! });
        Assert.Throws<ArgumentException>(() => job with { Cylinders = [.. Enumerable.Repeat(job.Cylinders[0], 1001)] });
    }
}
