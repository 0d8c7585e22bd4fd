using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Tests.Estimation.Calibration;

/// <summary>An invented job: what is true of it, and what the technician believes. SI units.</summary>
internal sealed class SimulatedJob
{
    private static readonly string[] Fluids = ["R-134a", "R-22", "R-32", "R-290", "R-410A"];

    public required Fluid Fluid { get; init; }

    public required double Charge { get; init; }

    public required double Volume { get; init; }

    public required double Start { get; init; }

    public required double Air { get; init; }

    /// <summary>From the air to the metal, W/K, at a difference of 10 K.</summary>
    public required double Outer { get; init; }

    /// <summary>Of all metal, J/K.</summary>
    public required double Metal { get; init; }

    /// <summary>Share of the metal that liquid wets.</summary>
    public required double WetMetal { get; init; }

    /// <summary>From wetted metal to boiling liquid, W/K, at a difference of 5 K.</summary>
    public required double Boiling { get; init; }

    /// <summary>Oil, kg, and what it dissolves at saturation as a share of its mass.</summary>
    public required double Oil { get; init; }

    public required double Solubility { get; init; }

    /// <summary>Time constant of the oil, s.</summary>
    public required double OilTime { get; init; }

    public required SimulatedMachine Machine { get; init; }

    public required SimulatedHose Hose { get; init; }

    /// <summary>Absolute pressure at which the machine is stopped, Pa.</summary>
    public required double Level { get; init; }

    public required double Atmosphere { get; init; }

    /// <summary>Hose resistance told, over the true one.</summary>
    public required double HoseTold { get; init; }

    /// <summary>The job as the technician tells it.</summary>
    public required RecoveryJob Told { get; init; }

    /// <summary>A job drawn at random.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="machine">The machine; null for one drawn too.</param>
    public static SimulatedJob Draw(int seed, SimulatedMachine? machine = null)
    {
        var random = new Noise(seed);
        Fluid fluid = Fluid.Get(Fluids[random.Below(Fluids.Length)]);
        double air = random.Uniform(279, 307);
        double start = air + random.Gauss(1);
        double charge = random.Logarithmic(1.5, 12);
        SaturationPoint both = fluid.Model.SaturationAtTemperature(start);
        double fill = random.Uniform(0.22, 0.55);
        double volume = charge / ((fill * both.Bubble.Density) + ((1 - fill) * both.Dew.Density));
        double swept = Math.Max(charge / (both.Dew.Density * 1500), Math.Min(charge / (both.Dew.Density * 150), random.Logarithmic(2.5e-4, 1e-3)));
        machine ??= SimulatedMachine.Draw(random, swept);
        double flow = machine.Swept * both.Dew.Density;
        double bore = SimulatedHose.BoreFor(random.Logarithmic(0.03, 0.3) * both.Dew.Pressure, 0.6 * flow, both.Dew.Density);
        var hose = new SimulatedHose(random.Uniform(1.2, 3), bore, random.Uniform(1, 4), 1.2e-5);
        var toldHose = new Hose { Length = Length.FromMeters(hose.Meters), InnerDiameter = Length.FromMeters(bore * random.Uniform(0.93, 1.07)) };
        double wetMetal = random.Uniform(0.45, 0.75);
        double metal = charge * random.Logarithmic(1200, 4000);
        double outer = random.Logarithmic(0.15, 1.2) * flow * 1.8e5 / 30;
        double oil = random.Uniform(0, 1) < 0.5 ? random.Uniform(0.02, 0.08) * charge : 0;
        double level = random.Uniform(0, 1) < 0.5 ? 67_700 : 95_000;
        double atmosphere = random.Uniform(86_000, 102_500);
        double Off(double halfWidth) => 1 + random.Uniform(-halfWidth, halfWidth);
        var told = new RecoveryJob
        {
            Appliance = new Appliance
            {
                Fluid = fluid,
                Charge = Mass.FromKilograms(charge * Off(0.15)),
                InternalVolume = Volume1(volume * Off(0.35)),
                Temperature = Temperature.FromKelvins(start + random.Gauss(0.8)),
                Surroundings = Temperature.FromKelvins(air + random.Gauss(0.5)),
                HeatResistance = ThermalResistance.FromSquareMeterKelvinsPerWatt(1 / (outer * Math.Exp(random.Gauss(0.35)))),
                MetalMass = Mass.FromKilograms(wetMetal * metal * Math.Exp(random.Gauss(0.35)) / 480),
                Oil = oil > 0 ? new ApplianceOil { Mass = Mass.FromKilograms(oil), Kind = OilKind.PolyolEster } : null,
            },
            Machine = RecoveryMachine.FromDisplacement(VolumeFlow.FromCubicMetersPerSecond(machine.Told)),
            Hoses = new HoseSet { VaporSide = [toldHose] },
            Cylinders = [RecoveryCylinder.FromTestPressure(Pressure.FromBars(48), Mass.FromKilograms(40), Mass.FromKilograms(15)) with { Content = Mass.FromKilograms(2) }],
            Barometer = Barometer.Reading(Pressure.FromPascals(atmosphere)),
        };
        double reynoldsFlow = 0.3 * flow;
        return new SimulatedJob
        {
            Fluid = fluid,
            Charge = charge,
            Volume = volume,
            Start = start,
            Air = air,
            Outer = outer,
            Metal = metal,
            WetMetal = wetMetal,
            Boiling = outer * random.Logarithmic(5, 15),
            Oil = oil,
            Solubility = random.Uniform(0.15, 0.45),
            OilTime = random.Logarithmic(100, 900),
            Machine = machine,
            Hose = hose,
            Level = level,
            Atmosphere = atmosphere,
            HoseTold = new SimulatedHose(hose.Meters, toldHose.InnerDiameter.Meters, 0, 1e-5).Resistance(reynoldsFlow) / hose.Resistance(reynoldsFlow),
            Told = told,
        };
    }

    private static Volume Volume1(double cubicMeters) => UnitsNet.Volume.FromCubicMeters(cubicMeters);
}
