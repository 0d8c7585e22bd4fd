using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Processes;
using Refrigerant.Recovery.Simulation;
using UnitsNet;

namespace Refrigerant.Recovery.Docs.Validation;

/// <summary>What nobody reported of the vehicle systems whose residual was measured, within reasoned ranges.</summary>
/// <param name="Charge">Charge, kg: 1.0 to 1.4.</param>
/// <param name="Volume">Internal volume, L: 3 to 5.</param>
/// <param name="Oil">Polyalkylene glycol, kg: 0.2 to 0.3.</param>
/// <param name="Rate">Vapor that the machine moves at 24 °C, kg/min: 0.1 to 0.25.</param>
/// <param name="Conductance">Heat from still air, W/K: 0.5 to 3.</param>
/// <param name="Metal">Heat capacity of the metal in contact, kJ/K for each kg of charge: 1.5 to 3.</param>
internal sealed record VehicleSystem(double Charge, double Volume, double Oil, double Rate, double Conductance, double Metal)
{
    public const double LeastMetal = 1.5;
    public const double MostMetal = 3;

    /// <summary>4 inHg of vacuum: where equipment to SAE J2210 stops, Pa absolute.</summary>
    private const double StopPressure = 88e3;

    private const double SteelHeatCapacity = 480;
    private const int Halvings = 30;
    private const double Rest = 300;

    private static readonly Fluid R134a = Fluid.Get("R-134a");
    private static readonly double VaporDensity = R134a.Model.SaturationAtTemperature(297.15).Dew.Density;
    private static readonly Hose Hose = new() { Length = Length.FromMeters(2), InnerDiameter = Length.FromMillimeters(4.7) };
    private static readonly RecoveryCylinder Cylinder = RecoveryCylinder.FromMark("4BA400", Mass.FromPounds(47.6), Mass.FromPounds(27.5));

    /// <summary>All corners of the ranges but the metal's.</summary>
    public static IEnumerable<VehicleSystem> Corners() =>
        from charge in new[] { 1.0, 1.4 }
        from volume in new[] { 3.0, 5.0 }
        from oil in new[] { 0.2, 0.3 }
        from rate in new[] { 0.1, 0.25 }
        from conductance in new[] { 0.5, 3.0 }
        select new VehicleSystem(charge, volume, oil, rate, conductance, LeastMetal);

    /// <summary>Share of the charge left after one cold pull to 4 inHg, as equipment to SAE J2210 makes it.</summary>
    public double LeftAfterOnePull(double celsius) => Pull(Appliance(celsius), Duration.FromHours(10), null).RemainingMass.Kilograms / Charge;

    /// <summary>Share recovered within half an hour, by one pull or by pulls with rests of five minutes between them, all of it at the air's temperature or warmed before.</summary>
    public double RecoveredInHalfAnHour(double celsius, bool rests, double? startsAt = null)
    {
        double left = 1800;
        Appliance warm = Appliance(celsius) with { Temperature = Temperature.FromDegreesCelsius(startsAt ?? celsius) };
        StageResult last = Pull(warm, Duration.FromSeconds(left), null);
        left -= last.Duration.Seconds;
        while (rests && left > Rest)
        {
            last = Hold.Simulate(warm, new HoldOptions { Duration = Duration.FromSeconds(Rest), Start = last.After });
            left -= Rest;
            last = Pull(warm, Duration.FromSeconds(left), last.After);
            left -= last.Duration.Seconds;
        }

        return 1 - (last.RemainingMass.Kilograms / Charge);
    }

    /// <summary>The same with the metal with which a share is left after one pull; null where none within its range does that.</summary>
    public VehicleSystem? WithMetalFor(double share, double celsius)
    {
        double low = LeastMetal;
        double high = MostMetal;
        if ((this with { Metal = low }).LeftAfterOnePull(celsius) < share || (this with { Metal = high }).LeftAfterOnePull(celsius) > share)
        {
            return null;
        }

        for (int i = 0; i < Halvings; i++)
        {
            double middle = 0.5 * (low + high);
            if ((this with { Metal = middle }).LeftAfterOnePull(celsius) > share)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return this with { Metal = high };
    }

    private StageResult Pull(Appliance appliance, Duration longest, SimulationState? from) => VaporRecovery.Simulate(
        appliance,
        RecoveryMachine.FromDisplacement(VolumeFlow.FromCubicMetersPerSecond(Rate / 60 / VaporDensity)),
        new HoseSet { VaporSide = [Hose], Discharge = [Hose] },
        Cylinder,
        new VaporRecoveryOptions { TargetPressure = Pressure.FromPascals(StopPressure), MaximumDuration = longest, Start = from });

    private Appliance Appliance(double celsius) => new()
    {
        Fluid = R134a,
        Charge = Mass.FromKilograms(Charge),
        InternalVolume = UnitsNet.Volume.FromLiters(Volume),
        Temperature = Temperature.FromDegreesCelsius(celsius),
        Surroundings = Temperature.FromDegreesCelsius(celsius),
        HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / Conductance),
        MetalMass = Mass.FromKilograms(1000 * Metal * Charge / SteelHeatCapacity),
        Oil = new ApplianceOil { Mass = Mass.FromKilograms(Oil), Kind = OilKind.PolyalkyleneGlycol },
    };
}
