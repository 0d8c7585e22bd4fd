using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Rules;
using UnitsNet;

namespace Refrigerant.Recovery.Tests.Records;

/// <summary>An invented job in which every input differs from its default.</summary>
internal static class FullJob
{
    public static RecoveryJob Create() => new()
    {
        Appliance = new Appliance
        {
            Fluid = Fluid.Get("R-134a"),
            Charge = Mass.FromKilograms(21.5),
            InternalVolume = Volume.FromLiters(61.3),
            Temperature = Temperature.FromDegreesCelsius(18.7),
            Surroundings = Temperature.FromDegreesCelsius(24.1),
            HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.013),
            HeatArea = Area.FromSquareMeters(1.7),
            MetalMass = Mass.FromKilograms(212),
            MetalHeatCapacity = SpecificEntropy.FromJoulesPerKilogramKelvin(490),
            MetalResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(0.0021),
            DryResistanceFactor = 12,
            LiquidReachable = true,
            LiquidHeel = Mass.FromKilograms(0.9),
            Water = TubeWater.Standing(Mass.FromKilograms(33), Temperature.FromDegreesCelsius(17), ThermalResistance.FromSquareMeterKelvinsPerWatt(0.0008)),
            Oil = new ApplianceOil
            {
                Mass = Mass.FromKilograms(2.2),
                Kind = OilKind.PolyolEster,
                MolarMass = MolarMass.FromGramsPerMole(575),
                RefrigerantFraction = Ratio.FromDecimalFractions(0.17),
                SolubilityFactor = 1.3,
                FoamingTime = Duration.FromMinutes(2.5),
                DiffusionTime = Duration.FromMinutes(4100),
            },
            DesignGaugePressure = Pressure.FromKilopascals(1850),
            Sections =
            [
                new ApplianceSection { Name = "evaporator", InternalVolume = Volume.FromLiters(41.3), Charge = Mass.FromKilograms(6.5) },
                new ApplianceSection { Name = "receiver", InternalVolume = Volume.FromLiters(20), Charge = Mass.FromKilograms(15) },
            ],
            Connections = [new SectionConnection { From = "receiver", To = "evaporator", FlowCoefficient = 0.013, IsCheckValve = true }],
            VaporPort = "evaporator",
            LiquidPort = "receiver",
        },
        Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromLitersPerSecond(0.55), 0.045, 1.12, 0.93) with
        {
            LeakageTerm = 0.006,
            IsentropicEfficiency = 0.61,
            LowPressureSwitch = Pressure.FromKilopascals(12.5),
            HighPressureCutout = Pressure.FromKilopascals(3600),
            InternalVolume = Volume.FromLiters(0.8),
            Condenser = new Condenser
            {
                RatedDuty = Power.FromWatts(950),
                RatedDifference = TemperatureDelta.FromKelvins(14),
                Cooling = CondenserCooling.Water,
                CoolantTemperature = Temperature.FromDegreesCelsius(15.5),
                Subcooling = TemperatureDelta.FromKelvins(4),
            },
            Body = new MachineBody
            {
                HeatCapacity = Entropy.FromJoulesPerKelvin(5200),
                AirConductance = 7.3,
                GasConductance = 1.4,
                FrictionPower = Power.FromWatts(130),
            },
            GasPassesThrough = false,
            ThermalCutout = Temperature.FromDegreesCelsius(135),
            TakesLiquid = false,
            LiquidRate = MassFlow.FromKilogramsPerSecond(0.04),
            CondensingCoefficient = 310,
            IsOilless = true,
            ListedForFlammable = true,
            ManufactureDate = new DateTime(2019, 5, 6),
        },
        Hoses = new HoseSet
        {
            VaporSide = [Hose(1.4, 7.1, Fitting.CoreDepressor(), Fitting.FromFlowCoefficient("access valve", 1.3) with { PressureDifferentialRatioFactor = 0.61, LiquidPressureRecoveryFactor = 0.84 })],
            SecondVaporSide = [Hose(1.6, 7.3)],
            LiquidSide = [Hose(3, 10.5, Fitting.BallValve(Length.FromMillimeters(9)), Fitting.FromLossCoefficient("long bend", 0.4, Length.FromMillimeters(10)))],
            Discharge = [Hose(1.2, 6.3), Hose(0.7, 6.3)],
        },
        Cylinders =
        [
            RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5)) with
            {
                Label = "C1", Content = Mass.FromKilograms(1.25), Temperature = Temperature.FromDegreesCelsius(41.3), Refrigerant = "R-134a", RequalificationDue = new DateTime(2028, 6, 1),
            },
            RecoveryCylinder.FromTestPressure(Pressure.FromBars(42), Mass.FromKilograms(26.2), Mass.FromKilograms(14.3)) with { Label = "C2" },
            new RecoveryCylinder
            {
                Label = "C3 \"spare\" Ø",
                WaterCapacity = Mass.FromKilograms(27),
                TareWeight = Mass.FromKilograms(13),
                ServicePressure = Pressure.FromKilopascals(2750),
            },
        ],
        Barometer = Barometer.AtElevation(Length.FromMeters(1600)),
        Evacuation = new EvacuationOptions
        {
            Appliance = ApplianceKind.General,
            Purpose = OpeningPurpose.Disposal,
            MachineManufactured = new DateTime(2001, 2, 3),
            IsMachineSystemDependent = true,
            CompressorRuns = false,
            LowestAttainable = Pressure.FromKilopascals(55),
            Class = PressureClass.High,
            OwnLevel = Pressure.FromKilopascals(48),
            OwnLevelSource = "contract",
            Rules = RuleSet.Spain,
            InternalVolume = Volume.FromLiters(31),
            NormalTemperature = Temperature.FromDegreesCelsius(21),
        },
        PushPull = PushPullUse.Always,
        KeepAboveFreezing = false,
        FollowComposition = true,
        ClearMachine = false,
        SweepPressure = Pressure.FromKilopascals(40),
        LossPerConnection = Volume.FromMilliliters(3.5),
        Times = new JobTimes
        {
            SetUp = Duration.FromMinutes(8),
            HoseChange = Duration.FromMinutes(6),
            CylinderChange = Duration.FromMinutes(3),
            Close = Duration.FromMinutes(7),
            Hold = Duration.FromMinutes(11),
            OilService = Duration.FromMinutes(4),
            Patience = Duration.FromMinutes(90),
        },
        Aids = new SiteAids
        {
            HasIce = true,
            WaterBath = Temperature.FromDegreesCelsius(16),
            HasCylinderFan = true,
            Heater = Power.FromWatts(450),
            CrankcaseHeater = Power.FromWatts(70),
            ApplianceFans = 4,
        },
        MachinePast = new MachinePast
        {
            Refrigerant = Fluid.Get("R-410A"),
            IsCleared = false,
            Oil = OilKind.PolyolEster,
            CompressorOil = Volume.FromMilliliters(170),
            SeparatorOil = Volume.FromMilliliters(25),
            RunningSinceOilChange = Duration.FromHours(41),
            OilChangeInterval = Duration.FromHours(60),
        },
        MaximumPulls = 4,
        Day = new DateTime(2026, 11, 25),
    };

    public static Fluid Blend() => Fluid.Blend(
        new Dictionary<string, double> { ["R-32"] = 0.3, ["R-134a"] = 0.7 }, "blend of the house");

    private static Hose Hose(double meters, double millimeters, params Fitting[] fittings) => new()
    {
        Length = Length.FromMeters(meters),
        InnerDiameter = Length.FromMillimeters(millimeters),
        Roughness = Length.FromMillimeters(0.02),
        Rise = Length.FromMeters(0.6),
        Fittings = fittings,
    };
}
