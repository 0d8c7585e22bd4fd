using System;
using System.Diagnostics;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace Refrigerant.Recovery.Tests.Processes;

/// <summary>Hostile numbers at every entry: a clear exception or a valid result, never NaN, never a hang.</summary>
public class HostileInputTests
{
    private const double LongestSeconds = 20;

    private static readonly double[] Hostile = [-1, 0, double.NaN, double.PositiveInfinity, double.NegativeInfinity, 1e-300, 1e300, -1e300, double.MaxValue];

    private static readonly Gen<Func<double, double>> Spoiled = Gen.Frequency(
        (20, Gen.Constant<Func<double, double>>(x => x)),
        (1, Gen.Elements(Hostile).Select<double, Func<double, double>>(h => _ => h)),
        (3, Gen.Choose(-40, 40).Select<int, Func<double, double>>(i => x => x * Math.Pow(10, i / 10.0))));

    private static readonly Gen<Func<double, double>[]> Many = Spoiled.ArrayOf(20);

    private static readonly string[] Designations = ["R-134a", "R-22", "R-744", "R-717", "R-123", "R-407C"];

    [Property(MaxTest = 120)]
    public Property Vapor_recovery() => Survives((d, f) => Check(VaporRecovery.Simulate(
        Appliance(d, f), Machine(f), Hoses(f), Cylinder(f), new VaporRecoveryOptions { TargetPressure = new Pressure(f[16](50e3), PressureUnit.Pascal) })));

    [Property(MaxTest = 250)]
    public Property Push_pull() => Survives((d, f) => Check(PushPull.Simulate(
        Appliance(d, f) with { LiquidReachable = true, LiquidHeel = new Mass(f[16](0.1), MassUnit.Kilogram) },
        Machine(f),
        Hoses(f),
        Cylinder(f),
        new PushPullOptions { CondensingConductance = f[17](100) })));

    [Property(MaxTest = 100)]
    public Property Holds() => Survives((d, f) => Check(Hold.Simulate(
        Appliance(d, f), new HoldOptions { Duration = new Duration(f[16](900), DurationUnit.Second) })));

    [Property(MaxTest = 300)]
    public Property Sweep() => Survives((_, f) =>
    {
        HoseSweepResult sweep = HoseSweep.Simulate(Hoses(f), Machine(f), new HoseSweepOptions
        {
            StartPressure = new Pressure(f[16](1e5), PressureUnit.Pascal),
            TargetPressure = new Pressure(f[17](5e4), PressureUnit.Pascal),
            Temperature = new Temperature(f[18](293), TemperatureUnit.Kelvin),
        });
        Assert.True(sweep.Duration.Seconds >= 0 && sweep.AirLeft.Moles >= 0 && sweep.Pressure.Pascals > 0, sweep.Duration.ToString());
    });

    [Property(MaxTest = 300)]
    public Property Rise_test() => Survives((d, f) =>
    {
        RiseTestResult result = RiseTest.Judge(new RiseTestReadings
        {
            Fluid = Fluid.Get(d),
            InternalVolume = new Volume(f[0](0.05), VolumeUnit.CubicMeter),
            FirstPressure = new Pressure(f[1](5e4), PressureUnit.Pascal),
            FirstTemperature = new Temperature(f[2](283), TemperatureUnit.Kelvin),
            SecondPressure = new Pressure(f[3](6e4), PressureUnit.Pascal),
            SecondTemperature = new Temperature(f[4](290), TemperatureUnit.Kelvin),
        });
        Assert.True(result.VaporMass.Kilograms >= 0 && double.IsFinite(result.VaporMass.Kilograms));
    });

    [Property(MaxTest = 5)]
    public Property Ratings() => Survives((d, f) =>
    {
        RatingFit fit = RatingTest.Fit(new MachineRatings
        {
            Fluid = Fluid.Get(d),
            VaporRate = new MassFlow(f[0](0.004), MassFlowUnit.KilogramPerSecond),
            FinalVacuum = new Pressure(f[1](4e4), PressureUnit.Pascal),
            PushPullRate = new MassFlow(f[2](0.1), MassFlowUnit.KilogramPerSecond),
        });
        Assert.All(fit.Deviations, deviation => Assert.True(double.IsFinite(deviation.Simulated)));
    });

    private static Property Survives(Action<string, Func<double, double>[]> run) => Prop.ForAll(
        Gen.Elements(Designations).Zip(Many).ToArbitrary(),
        input =>
        {
            var watch = Stopwatch.StartNew();
            try
            {
                run(input.Item1, input.Item2);
            }
            catch (ArgumentException error)
            {
                Assert.False(string.IsNullOrWhiteSpace(error.Message));
            }
            catch (Exception error)
            {
                Assert.Fail($"{Describe(input)}: {error.GetType().Name} {error.Message} {error.StackTrace}");
            }

            Assert.True(watch.Elapsed.TotalSeconds < LongestSeconds, $"{watch.Elapsed.TotalSeconds:F1} s with {Describe(input)}");
        });

    private static string Describe((string Designation, Func<double, double>[] Spoiled) input) =>
        input.Designation + ": " + string.Join(" ", input.Spoiled.Select((f, i) => f(1) == 1 ? string.Empty : $"{i}:{f(1):G4}").Where(t => t.Length > 0));

    private static void Check(StageResult result)
    {
        Assert.True(double.IsFinite(result.Duration.Seconds) && result.Duration.Seconds >= 0, result.Duration.ToString());
        Assert.True(double.IsFinite(result.RecoveredMass.Kilograms), result.RecoveredMass.ToString());
        Assert.True(double.IsFinite(result.RemainingMass.Kilograms) && result.RemainingMass.Kilograms >= 0, result.RemainingMass.ToString());
        Assert.True(result.Closure.Mass <= 1e-9 && result.Closure.Energy <= 1e-9, $"{result.Closure.Mass} {result.Closure.Energy}");
        foreach (TrajectoryPoint point in result.Trajectory)
        {
            Assert.True(point.AppliancePressure.Pascals > 0, point.AppliancePressure.ToString());
            Assert.True(double.IsFinite(point.DischargePressure.Pascals) && double.IsFinite(point.Flow.KilogramsPerSecond));
            Assert.True(double.IsFinite(point.ApplianceTemperature.Kelvins) && double.IsFinite(point.MetalTemperature.Kelvins));
        }
    }

    private static Appliance Appliance(string designation, Func<double, double>[] f) => new()
    {
        Fluid = Fluid.Get(designation),
        Charge = new Mass(f[0](10), MassUnit.Kilogram),
        InternalVolume = new Volume(f[1](0.05), VolumeUnit.CubicMeter),
        Temperature = new Temperature(f[2](297), TemperatureUnit.Kelvin),
        HeatResistance = new ThermalResistance(f[3](0.02), ThermalResistanceUnit.SquareMeterKelvinPerWatt),
        MetalMass = new Mass(f[4](30), MassUnit.Kilogram),
        MetalResistance = new ThermalResistance(f[5](0.002), ThermalResistanceUnit.SquareMeterKelvinPerWatt),
        Oil = new ApplianceOil { Mass = new Mass(f[6](1), MassUnit.Kilogram), Kind = OilKind.PolyolEster },
    };

    private static RecoveryMachine Machine(Func<double, double>[] f) => RecoveryMachine.FromDisplacement(
        new VolumeFlow(f[7](0.5e-3), VolumeFlowUnit.CubicMeterPerSecond), f[8](0.04), f[9](1.15), f[10](0.95));

    private static HoseSet Hoses(Func<double, double>[] f)
    {
        var hose = new Hose { Length = new Length(f[11](3), LengthUnit.Meter), InnerDiameter = new Length(f[12](0.01), LengthUnit.Meter) };
        return new HoseSet { VaporSide = [hose], LiquidSide = [hose], Discharge = [hose] };
    }

    private static RecoveryCylinder Cylinder(Func<double, double>[] f) => new()
    {
        WaterCapacity = new Mass(f[13](25), MassUnit.Kilogram),
        TareWeight = new Mass(f[14](15), MassUnit.Kilogram),
        ServicePressure = new Pressure(2.76e6, PressureUnit.Pascal),
        Content = new Mass(f[15](2), MassUnit.Kilogram),
    };
}
