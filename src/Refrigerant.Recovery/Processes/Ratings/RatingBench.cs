using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Cylinders;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Simulation;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>The rating tests of 40 CFR 82 Subpart F Appendix B3, simulated; kg/s and Pa.</summary>
internal sealed class RatingBench
{
    /// <summary>Chambers and cylinders of 6.3: m³ and kg of water.</summary>
    private const double SmallChamber = 0.09;
    private const double LargeChamber = 0.45;
    private const double SmallCylinder = 50 * 0.45359237;
    private const double LargeCylinder = 1000 * 0.45359237;

    /// <summary>Tare weight over water capacity of such cylinders: common practice, no source.</summary>
    private const double TareShare = 0.55;

    /// <summary>Boiling liquid on the chamber's wall, W/(m²·K): common practice, no source.</summary>
    private const double BoilingCoefficient = 500;

    /// <summary>Gas on the inside of the chamber's wall, W/(m²·K): common practice, no source.</summary>
    private const double GasCoefficient = 8;

    /// <summary>Share of the cylinder's limit that it holds at the start of a vapor test, as liquid at saturation: common practice, no source.</summary>
    private const double StartFill = 0.1;

    /// <summary>Share of the cylinder's capacity, by weight of water, that the liquid of the push-pull test amounts to (7.4.1.4), but no more than this share of the chamber.</summary>
    private const double LiquidShare = 0.8;

    /// <summary>Steel of the chamber over the water that it would hold: common practice, no source.</summary>
    private const double WallShare = 0.5;

    /// <summary>A shade below saturation, so that the chamber holds vapor only.</summary>
    private const double JustDry = 0.9999;

    /// <summary>Accuracy of the vacuum reading, 0.33 kPa (9.6); a machine that gains less in a minute has reached its final vacuum.</summary>
    private const double VacuumAccuracy = 330;
    private const double VacuumWait = 60;

    private const double HighestEnd = 1e5;

    /// <summary>A test that takes more steps than this is none that a machine is rated by.</summary>
    private const int MaximumSteps = 2000;

    private readonly MachineRatings _ratings;
    private readonly PropertyModel _model;
    private readonly RecoveryCylinder _cylinder;
    private readonly double _limit;
    private readonly double _chamber;
    private readonly double _saturation;
    private readonly HoseSet _hoses;

    public RatingBench(MachineRatings ratings)
    {
        _ratings = ratings;
        _model = ratings.Fluid.Model;
        bool large = ratings.Apparatus == RatingApparatus.LargeHoses;
        _chamber = large ? LargeChamber : SmallChamber;
        double water = large ? LargeCylinder : SmallCylinder;
        _cylinder = new RecoveryCylinder
        {
            Label = "receiving cylinder",
            WaterCapacity = new Mass(water, MassUnit.Kilogram),
            TareWeight = new Mass(TareShare * water, MassUnit.Kilogram),
            ServicePressure = new Pressure(400 * 6894.757, PressureUnit.Pascal),
        };
        _limit = CylinderFill.Limit(_cylinder, ratings.Fluid).MaximumFill.Kilograms;
        _saturation = _model.SaturationAtTemperature(ratings.Temperature.Kelvins).Dew.Pressure;
        _hoses = ratings.Hoses ?? TypicalHoses(large);
    }

    /// <summary>Pressure at which the vapor test ends: 10 % of the start, not below the final vacuum nor above 100 kPa (3.11).</summary>
    private double VaporEnd => Math.Min(HighestEnd, Math.Max(0.1 * _saturation, _ratings.FinalVacuum?.Pascals ?? 0));

    public double VaporRate(RecoveryMachine machine)
    {
        switch (_ratings.VaporBasis)
        {
            case VaporRateBasis.SteadyAtSaturation:
                StatePoint dew = _model.SaturationAtTemperature(_ratings.Temperature.Kelvins).Dew;
                var gas = new GasFacts(_model, dew.Temperature);
                var suction = new SuctionLine(new Line(_hoses.VaporSide), machine);
                suction.Solve(dew.Pressure, dew.Density, gas.IdealExponent, gas.Viscosity, dew.Pressure);
                return suction.MassFlow;
            case VaporRateBasis.AverageOfAppliance:
                return Average(VaporRecovery.Run(_ratings.RatingAppliance!, machine, _hoses, Receiver(1e3 * _cylinder.WaterCapacity.Kilograms), new VaporRecoveryOptions
                {
                    TargetPressure = _ratings.FinalVacuum,
                    CylinderLimit = new Mass(1e9, MassUnit.Kilogram),
                    MaximumSteps = MaximumSteps,
                }));
            default:
                return Average(VaporRecovery.Run(Chamber(JustDry), machine, _hoses, Receiver(null), new VaporRecoveryOptions
                {
                    TargetPressure = new Pressure(VaporEnd, PressureUnit.Pascal),
                    CylinderLimit = new Mass(1e9, MassUnit.Kilogram),
                    MaximumSteps = MaximumSteps,
                }));
        }
    }

    public double PushPullRate(RecoveryMachine machine)
    {
        StatePoint dew = _model.SaturationAtTemperature(_ratings.Temperature.Kelvins).Dew;
        double liquid = Math.Min(
            LiquidShare * _cylinder.WaterCapacity.Kilograms, LiquidShare * _chamber * _model.SaturationAtTemperature(dew.Temperature).Bubble.Density);
        Appliance chamber = Chamber(1) with
        {
            Charge = new Mass((_chamber * dew.Density) + liquid, MassUnit.Kilogram),
            MetalMass = new Mass(WallShare * 1000 * _chamber, MassUnit.Kilogram),
            LiquidReachable = true,
        };
        RecoveryCylinder receiving = _cylinder with
        {
            WaterCapacity = new Mass(Math.Max(1, liquid / (LiquidShare * _limit)) * _cylinder.WaterCapacity.Kilograms, MassUnit.Kilogram),
        };
        receiving = receiving with { Content = new Mass(JustDry * dew.Density * receiving.InternalVolume.CubicMeters, MassUnit.Kilogram) };
        return PushPull.Simulate(chamber, machine, _hoses, receiving, new PushPullOptions { CylinderLimit = new Mass(1e9, MassUnit.Kilogram) })
            .AverageRate.KilogramsPerSecond;
    }

    public double FinalVacuum(RecoveryMachine machine)
    {
        Appliance chamber = Chamber(JustDry);
        StageResult pull = VaporRecovery.Run(chamber, machine, _hoses, Receiver(null), new VaporRecoveryOptions
        {
            CylinderLimit = new Mass(1e9, MassUnit.Kilogram),
            MaximumSteps = MaximumSteps,
            SlowestFall = VacuumAccuracy / VacuumWait,
        });
        StageResult wait = Hold.Simulate(chamber, new HoldOptions { Start = pull.After, Duration = new Duration(VacuumWait, DurationUnit.Second) });
        return wait.Appliance.Pressure.Pascals;
    }

    private static double Average(StageResult result) =>
        result.End == StageEnd.TargetReached && result.Duration.Seconds > 0 ? result.RecoveredMass.Kilograms / result.Duration.Seconds : 0;

    /// <summary>
    /// Hoses of 6 ft a side: a quarter of an inch (bore 4.8 mm) for the small and half an inch (11.1 mm) for the large group, valve cores taken out (sizes and bores from
    /// memory; the copy of the rule that was read drops the fractions).
    /// </summary>
    private static HoseSet TypicalHoses(bool large)
    {
        var hose = new Hose
        {
            Length = new Length(1.83, LengthUnit.Meter),
            InnerDiameter = new Length(large ? 0.0111 : 0.0048, LengthUnit.Meter),
        };
        IReadOnlyList<Hose> one = [hose];
        return new HoseSet { VaporSide = one, LiquidSide = one, Discharge = one };
    }

    private Appliance Chamber(double fill)
    {
        double surface = 6 * Math.Pow(_chamber, 2.0 / 3);
        StatePoint dew = _model.SaturationAtTemperature(_ratings.Temperature.Kelvins).Dew;
        return new Appliance
        {
            Fluid = _ratings.Fluid,
            Charge = new Mass(fill * dew.Density * _chamber, MassUnit.Kilogram),
            InternalVolume = new Volume(_chamber, VolumeUnit.CubicMeter),
            Temperature = _ratings.Temperature,
            HeatResistance = new ThermalResistance(1 / GasCoefficient, ThermalResistanceUnit.SquareMeterKelvinPerWatt),
            HeatArea = new Area(surface, AreaUnit.SquareMeter),
            MetalMass = default(Mass),
            MetalResistance = new ThermalResistance(1 / BoilingCoefficient, ThermalResistanceUnit.SquareMeterKelvinPerWatt),
        };
    }

    private RecoveryCylinder Receiver(double? water)
    {
        double capacity = water ?? _cylinder.WaterCapacity.Kilograms;
        return _cylinder with
        {
            WaterCapacity = new Mass(capacity, MassUnit.Kilogram),
            TareWeight = new Mass(TareShare * capacity, MassUnit.Kilogram),
            Content = new Mass(StartFill * _limit * capacity / _cylinder.WaterCapacity.Kilograms, MassUnit.Kilogram),
        };
    }
}
