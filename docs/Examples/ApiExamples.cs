using System;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Residuals;
using Refrigerant.Recovery.Rules;
using Refrigerant.Recovery.Simulation;
using UnitsNet;

namespace Refrigerant.Recovery.Docs;

/// <summary>The examples in the documentation comments of the main entries; a comment behind a line is what that line prints.</summary>
internal static class ApiExamples
{
    public static void Run()
    {
        Quantities();
        OwnFinding();
        Get();
        Saturation();
        Elevation();
        Limit();
        Room();
        Air();
        Residual();
        Requirement();
        Place();
        Rise();
        Ratings();
        Vapor();
        Steps();
        Plan();
        Uncertainty();
        Comparison();
        Change();
        Drained();
        Push();
        Watch();
    }

    private static void Quantities()
    {
        #region QuantityText
        Mass charge = Mass.FromPounds(5.5);
        DisplayUnits customary = DisplayUnits.UnitedStatesCustomary;
        Console.WriteLine(QuantityText.Mass(charge, customary)); // 5 lb 8 oz
        Console.WriteLine(QuantityText.Mass(charge, DisplayUnits.International)); // 2.49 kg
        #endregion
    }

    private static void OwnFinding()
    {
        #region Finding
        FindingCode code = new("cart-too-weak", FindingSubject.Safety, "too heavy for it");
        Finding finding = new(
            code,
            Severity.Warning,
            "common practice",
            $"It will weigh {FindingValue.Mass("weight", Mass.FromKilograms(40))}.");
        Console.WriteLine(finding.ToText(DisplayUnits.International)); // It will weigh 40 kg.
        #endregion
    }

    private static void Get()
    {
        #region Fluid.Get
        Fluid fluid = Fluid.Get("R-410A"); // "r410a" and "410A" do as well
        Console.WriteLine(fluid.Composition.Count); // 2
        #endregion
    }

    private static void Saturation()
    {
        #region Fluid.SaturationAt
        Fluid fluid = Fluid.Get("R-407C");
        SaturationState s = fluid.SaturationAt(Temperature.FromDegreesCelsius(25));
        Console.WriteLine($"{s.Bubble.Pressure.Kilopascals:F0} kPa"); // 1190 kPa
        Console.WriteLine($"{s.Dew.Pressure.Kilopascals:F0} kPa"); // 1020 kPa
        #endregion
    }

    private static void Elevation()
    {
        #region Barometer.AtElevation
        Barometer here = Barometer.AtElevation(Length.FromMeters(1600));
        Pressure absolute = here.FromVacuum(Mercury.FromInches(15));
        Console.WriteLine($"{absolute.Kilopascals:F1} kPa"); // 32.7 kPa
        #endregion
    }

    private static void Limit()
    {
        #region CylinderFill.Limit
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark(
            "DOT-4BA400",
            waterCapacity: Mass.FromPounds(47.6),
            tareWeight: Mass.FromPounds(27.5));
        FillLimit limit = CylinderFill.Limit(cylinder, Fluid.Get("R-134a"));
        Console.WriteLine($"{limit.MaximumFill.Pounds:F1} lb"); // 46.0 lb
        Console.WriteLine($"{limit.MaximumGrossWeight.Pounds:F1} lb"); // 73.5 lb
        #endregion
    }

    private static void Room()
    {
        #region CylinderFill.RoomLeft
        RecoveryCylinder cylinder = RecoveryCylinder.FromMark(
            "DOT-4BA400",
            waterCapacity: Mass.FromPounds(47.6),
            tareWeight: Mass.FromPounds(27.5));
        Mass room = CylinderFill.RoomLeft(
            cylinder, Fluid.Get("R-134a"), scaleReading: Mass.FromPounds(60));
        Console.WriteLine($"{room.Pounds:F1} lb"); // 13.5 lb
        #endregion
    }

    private static void Air()
    {
        #region NonCondensableTest.Judge
        NonCondensableTest test = NonCondensableTest.Judge(
            Fluid.Get("R-134a"),
            pressure: Pressure.FromKilopascals(700),
            temperature: Temperature.FromDegreesCelsius(25),
            pressureAccuracy: Pressure.FromKilopascals(5),
            temperatureAccuracy: TemperatureDelta.FromDegreesCelsius(0.5));
        Console.WriteLine(test.Verdict); // AboveLimit
        #endregion
    }

    private static void Residual()
    {
        #region ResidualCharge.Estimate
        ResidualCharge left = ResidualCharge.Estimate(
            Fluid.Get("R-134a"),
            Volume.FromLiters(60),
            Temperature.FromDegreesCelsius(20),
            Barometer.Standard.FromVacuum(Mercury.FromInches(15)));
        Console.WriteLine($"{left.Vapor.Grams:F0} g"); // 128 g
        #endregion
    }

    private static void Requirement()
    {
        #region EvacuationRequirement.For
        Barometer here = Barometer.AtElevation(Length.FromMeters(1600));
        EvacuationRequirement level = EvacuationRequirement.For(
            Fluid.Get("R-134a"),
            charge: Mass.FromPounds(300),
            new EvacuationOptions { Barometer = here });
        Console.WriteLine($"{level.RequiredPressure.Kilopascals:F1} kPa"); // 50.5 kPa
        #endregion
    }

    private static void Place()
    {
        #region RuleSet
        EvacuationRequirement level = EvacuationRequirement.For(
            Fluid.Get("R-410A"),
            charge: Mass.FromKilograms(3),
            new EvacuationOptions { Rules = RuleSet.Japan });
        Console.WriteLine($"{level.RequiredPressure.Kilopascals:F0} kPa"); // 90 kPa
        #endregion
    }

    private static void Rise()
    {
        #region RiseTest.Judge
        RiseTestResult rise = RiseTest.Judge(new RiseTestReadings
        {
            Fluid = Fluid.Get("R-134a"),
            InternalVolume = Volume.FromLiters(60),
            FirstPressure = Pressure.FromKilopascals(50),
            FirstTemperature = Temperature.FromDegreesCelsius(5),
            SecondPressure = Pressure.FromKilopascals(52),
            SecondTemperature = Temperature.FromDegreesCelsius(15),
        });
        Console.WriteLine(rise.Verdict); // VaporOnly
        #endregion
    }

    private static void Ratings()
    {
        #region RatingTest.Fit
        RatingFit fit = RatingTest.Fit(new MachineRatings
        {
            Fluid = Fluid.Get("R-22"),
            VaporRate = MassFlow.FromKilogramsPerMinute(0.25),
            FinalVacuum = Barometer.Standard.FromVacuum(Mercury.FromInches(15)),
        });
        Console.WriteLine($"{fit.Machine.Displacement.LitersPerSecond:F2} L/s"); // 0.38 L/s
        #endregion
    }

    private static void Vapor()
    {
        #region VaporRecovery.Simulate
        Appliance appliance = new()
        {
            Fluid = Fluid.Get("R-134a"),
            Charge = Mass.FromKilograms(3),
            InternalVolume = Volume.FromLiters(12),
            Temperature = Temperature.FromDegreesCelsius(25),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.005),
        };
        Hose hose = new()
        {
            Length = Length.FromFeet(5),
            InnerDiameter = Length.FromMillimeters(8),
        };
        StageResult result = VaporRecovery.Simulate(
            appliance,
            RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
            new HoseSet { VaporSide = [hose] },
            RecoveryCylinder.FromMark(
                "DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)),
            new VaporRecoveryOptions { TargetPressure = Pressure.FromKilopascals(60) });
        Console.WriteLine(result.End); // TargetReached
        Console.WriteLine($"{result.Duration.Minutes:F0} min"); // 6 min
        #endregion
    }

    private static void Steps()
    {
        #region RecoverySimulation
        Hose hose = new()
        {
            Length = Length.FromFeet(5),
            InnerDiameter = Length.FromMillimeters(8),
        };
        RecoverySimulation simulation = RecoverySimulation.Start(new SimulationSetup
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get("R-134a"),
                Charge = Mass.FromKilograms(1),
                InternalVolume = Volume.FromLiters(5),
                Temperature = Temperature.FromDegreesCelsius(25),
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
            Hoses = new HoseSet { VaporSide = [hose] },
            Cylinder = RecoveryCylinder.FromMark(
                "DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)),
        });
        for (int tick = 0; tick != 600; tick++)
        {
            simulation.Step(0.1, SimulationInputs.Running);
        }

        Console.WriteLine($"{simulation.AppliancePressure / 1000:F0} kPa"); // 201 kPa
        #endregion
    }

    private static void Plan()
    {
        #region RecoveryPlanner.Plan
        Hose hose = new()
        {
            Length = Length.FromFeet(5),
            InnerDiameter = Length.FromMillimeters(8),
        };
        RecoveryPlan plan = RecoveryPlanner.Plan(new RecoveryJob
        {
            Appliance = new Appliance
            {
                Fluid = Fluid.Get("R-410A"),
                Charge = Mass.FromPounds(22),
                InternalVolume = Volume.FromLiters(24),
                Temperature = Temperature.FromDegreesFahrenheit(75),
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
            Hoses = new HoseSet { VaporSide = [hose], Discharge = [hose] },
            Cylinders =
            [
                RecoveryCylinder.FromMark(
                    "DOT-4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)),
            ],
        });
        Console.WriteLine(plan.IsLevelReached); // True
        #endregion
    }

    private static void Uncertainty()
    {
        RecoveryJob job = Questions.ExampleJob.Create();

        #region PlanUncertainty.Run
        UncertaintyOptions options = new() { Samples = 64 };
        PlanUncertainty range = PlanUncertainty.Run(job, options);
        Console.WriteLine(range.TotalDuration); // 71 min (67 to 75 min)
        #endregion
    }

    private static void Comparison()
    {
        RecoveryJob job = Questions.ExampleJob.Create();

        #region SetupComparison.Run
        SetupComparison comparison = SetupComparison.Run(job);
        Console.WriteLine(comparison.Outcomes.Count); // 9
        #endregion
    }

    private static void Change()
    {
        #region RefrigerantChange.Estimate
        RefrigerantChange change = RefrigerantChange.Estimate(
            RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.5)),
            Fluid.Get("R-22"),
            Fluid.Get("R-134a"),
            Mass.FromKilograms(4));
        Console.WriteLine($"{change.BeforeClearing.MassFraction.Percent:F0} %"); // 10 %
        Console.WriteLine($"{change.AfterClearing.MassFraction.Percent:F2} %"); // 0.05 %
        #endregion
    }

    private static void Drained()
    {
        #region DrainedOil.Estimate
        DrainedOil drained = DrainedOil.Estimate(
            Fluid.Get("R-22"),
            new ApplianceOil { Mass = Mass.FromKilograms(4), Kind = OilKind.Mineral },
            Temperature.FromDegreesCelsius(20),
            Pressure.FromKilopascals(101.325));
        Console.WriteLine($"{drained.MassFraction.Percent:F1} %"); // 4.9 %
        #endregion
    }

    private static void Push()
    {
        #region OilPush.At
        OilToDrain oil = new()
        {
            Mass = Mass.FromKilograms(4),
            Viscosity = DynamicViscosity.FromMillipascalSeconds(60),
            Hoses =
            [
                new Hose
                {
                    Length = Length.FromMeters(2),
                    InnerDiameter = Length.FromMillimeters(8),
                },
            ],
        };
        OilPush push = OilPush.At(oil, Pressure.FromKilopascals(30));
        Console.WriteLine($"{push.Duration?.Seconds:F0} s"); // 169 s
        #endregion
    }

    private static void Watch()
    {
        RecoveryJob job = Questions.ExampleJob.Create();

        #region RecoveryMonitor.Start
        RecoveryMonitor monitor = RecoveryMonitor.Start(job);
        JobEstimate estimate = monitor.Update(new JobReading
        {
            Time = Duration.Zero,
            SuctionGaugePressure = Pressure.FromPoundsForcePerSquareInch(68),
            GrossWeight = Mass.FromPounds(27.5),
        });
        Console.WriteLine(estimate.NotUsed); // None
        #endregion
    }
}
