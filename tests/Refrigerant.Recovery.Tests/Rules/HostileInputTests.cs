using System;
using System.Collections.Generic;
using System.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Residuals;
using Refrigerant.Recovery.Rules;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Tests.Rules;

/// <summary>Any numbers into any entry of gauges, cylinders, residuals and rules: a clear exception, or a finite result.</summary>
public sealed class HostileInputTests
{
    private static readonly double[] Nasty =
    [
        double.NaN, double.PositiveInfinity, double.NegativeInfinity, 0, -0.0, -1, 1, double.Epsilon, double.MaxValue, double.MinValue,
        1e-300, 1e300, -273.15, 1e-9, 1e9, 101_325, 273.15, 300, 328.15, 400, 1e5, 1e6, 1e7, 0.01, 10, 50,
    ];

    private static readonly string[] Fluids = ["R-134a", "R-125", "R-744", "R-14", "R-410A", "R-407C", "R-508B", "R-455A"];

    private static readonly RecoveryCylinder Cylinder = RecoveryCylinder.FromMark("4BA400", new Mass(20, MassUnit.Kilogram), new Mass(12, MassUnit.Kilogram));

    private static readonly Func<Fluid, double, double, double, IEnumerable<double>>[] Entries =
    [
        (_, a, b, _) => [Barometer.AtElevation(Meters(a)).FromGauge(Pascals(b)).Pascals],
        (_, a, b, _) => [Barometer.Reading(Pascals(a)).FromVacuum(Pascals(b)).Pascals],
        (_, a, b, c) => [Barometer.Reading(Pascals(a)).ToVacuum(Pascals(b)).Pascals, Barometer.Standard.ToGauge(Pascals(c)).Pascals],
        (_, a, b, _) => [Mercury.FromInches(a).Pascals, Mercury.ToInches(Pascals(b))],
        (fluid, a, b, c) => Numbers(CylinderFill.Limit(
            new RecoveryCylinder { WaterCapacity = Kilograms(a), TareWeight = Kilograms(b), ServicePressure = Pascals(c) }, fluid)),
        (fluid, a, b, c) => Numbers(CylinderFill.Limit(
            RecoveryCylinder.FromTestPressure(Pascals(a), Kilograms(b), Kilograms(10)), fluid, new FillOptions { OilVolume = new Volume(c, VolumeUnit.CubicMeter) })),
        (fluid, a, _, _) => [CylinderFill.RoomLeft(Cylinder, fluid, Kilograms(a)).Kilograms],
        (fluid, a, _, _) => [CylinderFill.CylindersNeeded(Cylinder, fluid, Kilograms(a)).FillLast.Kilograms],
        (fluid, a, _, _) => [CylinderFill.LiquidFullTemperature(Cylinder, fluid, Kilograms(a))?.Kelvins ?? 0],
        (fluid, a, b, _) => [CylinderFill.PressureAt(Cylinder, fluid, Kilograms(a), Kelvins(b)).Pascals],
        (fluid, a, b, _) => [CylinderFill.ReliefTemperature(Cylinder, fluid, Kilograms(a), Pascals(b))?.Kelvins ?? 0],
        (fluid, a, b, c) => CylinderFill.HeatCurve(Cylinder, fluid, Kilograms(a), Kelvins(b), Kelvins(c), 5).Points.SelectMany(
            point => new[] { point.Temperature.Kelvins, point.Pressure.Pascals, point.LiquidFill?.DecimalFractions ?? 0 }),
        (fluid, a, b, c) => [TrappedLiquid.ShutIn(fluid, Kelvins(a)).PressurePerKelvin.Pascals, TrappedLiquid.ShutIn(fluid, Kelvins(300)).PressureAt(Kelvins(b)).Pascals, TrappedLiquid.ShutIn(fluid, Kelvins(a)).TemperatureAt(Pascals(c))?.Kelvins ?? 0],
        (fluid, a, b, c) => Numbers(NonCondensableTest.Judge(fluid, Pascals(a), Kelvins(b), Pascals(c), new TemperatureDelta(1, TemperatureDeltaUnit.Kelvin))),
        (fluid, a, b, c) => Numbers(NonCondensableTest.Judge(fluid, Pascals(a), Kelvins(290), Pascals(b), new TemperatureDelta(c, TemperatureDeltaUnit.Kelvin))),
        (fluid, a, b, c) => [AirLeftInHoses.After(new Volume(a, VolumeUnit.CubicMeter), Pascals(b), Kelvins(c)).MoleFractionIn(Cylinder, fluid, Kilograms(5), Kelvins(290)).DecimalFractions],
        (fluid, a, b, c) => Numbers(ResidualCharge.Estimate(fluid, new Volume(a, VolumeUnit.CubicMeter), Kelvins(b), Pascals(c))),
        (fluid, a, b, c) => Numbers(ResidualCharge.Estimate(
            fluid, new Volume(0.05, VolumeUnit.CubicMeter), Kelvins(290), Pascals(50_000), new ResidualOptions { Liquid = Kilograms(a), LiquidUncertainty = Kilograms(b), Charge = Kilograms(c) })),
        (fluid, a, b, c) => Numbers(ResidualCharge.Estimate(
            fluid, new Volume(0.05, VolumeUnit.CubicMeter), Kelvins(290), Pascals(50_000), new ResidualOptions { RiseTest = new RiseReading { Pressure = Pascals(a), Temperature = Kelvins(b), PressureAccuracy = Pascals(c) } })),
        (fluid, a, b, c) => Numbers(ResidualCharge.Estimate(
            fluid, new Volume(0.05, VolumeUnit.CubicMeter), Kelvins(290), Pascals(c), new ResidualOptions { Oil = new ApplianceOil { Mass = Kilograms(a), Kind = OilKind.PolyolEster } with { SolubilityFactor = b } })),
        (fluid, a, b, c) => Numbers(ResidualCharge.Estimate(
            fluid, new Volume(0.05, VolumeUnit.CubicMeter), Kelvins(290), Pascals(50_000), new ResidualOptions { Spaces = [new ResidualSpace { Volume = new Volume(a, VolumeUnit.CubicMeter), Temperature = Kelvins(b), Pressure = Pascals(c) }] })),
        (fluid, a, b, c) => [EvacuationRequirement.For(fluid, Kilograms(a), new EvacuationOptions { LowestAttainable = Pascals(b) }).RequiredPressure.Pascals, EvacuationRequirement.For(fluid, Kilograms(a), new EvacuationOptions { OwnLevel = Pascals(c) }).GaugeReading.Pascals],
        (fluid, a, b, c) => Numbers(RefrigerantChange.Estimate(
            RecoveryMachine.FromDisplacement(new VolumeFlow(5e-4, VolumeFlowUnit.CubicMeterPerSecond)),
            fluid,
            Fluid.Get("R-22"),
            Kilograms(a),
            new RefrigerantChangeOptions { Temperature = Kelvins(b), SuctionPressure = Pascals(c), Oil = new ApplianceOil { Mass = Kilograms(0.3), Kind = OilKind.PolyolEster } })),
        (fluid, a, b, c) => Numbers(RefrigerantChange.Estimate(
            RecoveryMachine.FromDisplacement(new VolumeFlow(5e-4, VolumeFlowUnit.CubicMeterPerSecond)),
            fluid,
            Fluid.Get("R-22"),
            Kilograms(5),
            new RefrigerantChangeOptions { DischargePressure = Pascals(a), ClearingPressure = Pascals(b), Oil = new ApplianceOil { Mass = Kilograms(c), Kind = OilKind.PolyolEster } })),
        (fluid, a, b, c) => Numbers(DrainedOil.Estimate(fluid, new ApplianceOil { Mass = Kilograms(a), Kind = OilKind.PolyolEster }, Kelvins(b), Pascals(c))),
        (_, a, b, c) => Numbers(OilPush.At(Oil(a, b, 2, 0.01), Pascals(c))),
        (_, a, b, c) => Numbers(OilPush.At(Oil(3, 0.05, a, b), Pascals(c))),
        (_, a, b, c) => Numbers(OilPush.Within(Oil(3, 0.05, a, b), new Duration(c, DurationUnit.Second))),
        (_, a, b, c) => Numbers(OilPush.Within(Oil(a, b, 2, 0.01), new Duration(c, DurationUnit.Second))),
        (fluid, a, _, _) => [RefrigerantFacts.For(fluid).CarbonDioxideEquivalent(Kilograms(a), AssessmentReport.Fourth)?.Kilograms ?? 0],
    ];

    [Property(MaxTest = 3000)]
    public Property AnyNumbers_GiveAClearExceptionOrAFiniteResult() => Prop.ForAll(
        Gen.Choose(0, Entries.Length - 1).SelectMany(entry => Gen.Elements(Fluids).SelectMany(fluid => Gen.Elements(Nasty).Three().Select(n => (entry, fluid, n)))).ToArbitrary(),
        sample =>
        {
            try
            {
                return Entries[sample.entry](Fluid.Get(sample.fluid), sample.n.Item1, sample.n.Item2, sample.n.Item3).All(double.IsFinite);
            }
            catch (ArgumentException e)
            {
                return e.Message.Length > 20;
            }
        });

    private static OilToDrain Oil(double mass, double viscosity, double length, double diameter) => new()
    {
        Mass = Kilograms(mass),
        Viscosity = new DynamicViscosity(viscosity, DynamicViscosityUnit.PascalSecond),
        Hoses = [new Hose { Length = Meters(length), InnerDiameter = Meters(diameter) }],
    };

    private static IEnumerable<double> Numbers(RefrigerantChange change) =>
        new[] { change.BeforeClearing, change.AfterClearing, change.AfterClearingAndOilChange }.SelectMany(
            state => new[] { state.Trapped.High.Kilograms, state.MassFraction.DecimalFractions, state.HighestMassFraction.DecimalFractions, state.LeastRecovered?.Kilograms ?? 0 });

    private static IEnumerable<double> Numbers(DrainedOil drained) =>
        [drained.Dissolved.High.Kilograms, drained.MassFraction.DecimalFractions, drained.HighestMassFraction.DecimalFractions];

    private static IEnumerable<double> Numbers(OilPush push) =>
        [push.Duration?.Seconds ?? 0, push.GaugePressure.Pascals, push.InitialFlow.KilogramsPerSecond, push.ReynoldsNumber];

    private static IEnumerable<double> Numbers(FillLimit limit) =>
        limit.Rules.Select(rule => rule.Mass.Kilograms).Append(limit.MaximumGrossWeight.Kilograms).Append(limit.Room.Kilograms);

    private static double[] Numbers(NonCondensableTest test) =>
        [test.PartialPressure.Pascals, test.MoleFraction.DecimalFractions, test.LowestMoleFraction.DecimalFractions, test.HighestMoleFraction.DecimalFractions];

    private static double[] Numbers(ResidualCharge left) =>
        [left.Vapor.Kilograms, left.Total.Low.Kilograms, left.Total.Best.Kilograms, left.Total.High.Kilograms, left.FractionOfCharge?.DecimalFractions ?? 0, left.CarbonDioxideEquivalent(1).Kilograms];

    private static Length Meters(double value) => new(value, LengthUnit.Meter);

    private static Pressure Pascals(double value) => new(value, PressureUnit.Pascal);

    private static Mass Kilograms(double value) => new(value, MassUnit.Kilogram);

    private static Temperature Kelvins(double value) => new(value, TemperatureUnit.Kelvin);
}
