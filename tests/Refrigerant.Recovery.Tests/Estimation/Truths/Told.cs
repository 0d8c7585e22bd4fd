using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Tests.Estimation.Truths;

/// <summary>What the estimator is told of a truth, and how well. SI.</summary>
public sealed record Told
{
    public required string Fluid { get; init; }

    public required double Charge { get; init; }

    public required double Volume { get; init; }

    public required double Temperature { get; init; }

    public required double Outer { get; init; }

    public required double Metal { get; init; }

    /// <summary>Displacement times efficiency at pressure ratio one.</summary>
    public required double Displacement { get; init; }

    /// <summary>R of Δp = R·ṁ²/(2ρ).</summary>
    public required double HoseResistance { get; init; }

    /// <summary>kg; zero tells that there is none, a negative number nothing.</summary>
    public required double Oil { get; init; }

    public required double Level { get; init; }

    public double Atmosphere { get; init; } = 101_325;

    public double GaugeSpan { get; init; } = 1.6e6;

    public double GaugeClass { get; init; } = 1;

    /// <summary>Half-widths.</summary>
    public double ChargeTolerance { get; init; } = 0.25;

    public double VolumeTolerance { get; init; } = 0.25;

    public double HeatTolerance { get; init; } = 0.4;

    public double MetalTolerance { get; init; } = 0.5;

    public double DisplacementTolerance { get; init; } = 0.1;

    public double HoseTolerance { get; init; } = 0.5;

    public double CylinderTare { get; init; } = 12.5;

    public double CylinderContent { get; init; } = 1;

    public double CylinderWater { get; init; } = 60;

    /// <summary>The job as a plan has it.</summary>
    public RecoveryJob Job()
    {
        // A short wide hose whose one fitting has the resistance: K/A² = R.
        Length bore = Length.FromMillimeters(50);
        double area = Math.PI * 0.25 * 0.05 * 0.05;
        var hose = new Hose
        {
            Length = Length.FromMeters(0.2),
            InnerDiameter = bore,
            Fittings = [Fitting.FromLossCoefficient("what the hose resists", Math.Min(1e6, HoseResistance * area * area), bore)],
        };
        return new RecoveryJob
        {
            Appliance = new Appliance
            {
                Fluid = Refrigerant.Recovery.Fluids.Fluid.Get(Fluid),
                Charge = Mass.FromKilograms(Charge),
                InternalVolume = UnitsNet.Volume.FromCubicMeters(Volume),
                Temperature = UnitsNet.Temperature.FromKelvins(Temperature),
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / Outer),
                MetalMass = Mass.FromKilograms(Metal / 480),
                Oil = Oil > 0 ? new ApplianceOil { Mass = Mass.FromKilograms(Oil), Kind = OilKind.PolyolEster } : null,
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromCubicMetersPerSecond(Displacement)),
            Hoses = new HoseSet { VaporSide = [hose] },
            Cylinders = [RecoveryCylinder.FromTestPressure(Pressure.FromBars(48), Mass.FromKilograms(CylinderWater), Mass.FromKilograms(CylinderTare)) with { Content = Mass.FromKilograms(CylinderContent) }],
            Barometer = Barometer.Reading(Pressure.FromPascals(Atmosphere)),
        };
    }

    public Refrigerant.Recovery.Estimation.MonitorOptions Options() => new()
    {
        Tolerances = new InputTolerances
        {
            Charge = Share(ChargeTolerance),
            InternalVolume = Share(VolumeTolerance),
            HeatExchange = Share(HeatTolerance),
            Displacement = Share(DisplacementTolerance),
        },
        MetalTolerance = Share(MetalTolerance),
        HoseTolerance = Share(HoseTolerance),
        IsOilFree = Oil == 0,
        Level = Pressure.FromPascals(Level),
    };

    public Refrigerant.Recovery.Estimation.Instruments Instruments() => new()
    {
        SuctionGauge = Refrigerant.Recovery.Estimation.GaugeAccuracy.FromClass(GaugeClass, Pressure.FromPascals(0), Pressure.FromPascals(GaugeSpan)),
        Scale = Refrigerant.Recovery.Estimation.ScaleAccuracy.FromResolution(Mass.FromGrams(10)),
    };

    private static Ratio Share(double value) => Ratio.FromDecimalFractions(Math.Min(0.9, value));
}
