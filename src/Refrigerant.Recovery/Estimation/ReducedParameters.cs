using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Oils;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What stays the same while an appliance is emptied, as the reduced model has it. SI.</summary>
internal struct ReducedParameters
{
    /// <summary>K that a condenser runs above the air: common practice, no source.</summary>
    public const double CondenserAboveAir = 8;

    /// <summary>Heat capacity that stands for none, J/K for each kilogram of charge: some thousandth of the refrigerant's own.</summary>
    private const double NoMetal = 1;

    /// <summary>Conductance to the refrigerant over that from outside where there is no metal between.</summary>
    private const double Direct = 1000;

    /// <summary>Share of the saturation pressure at which <see cref="OilCapacity"/> is taken: there x/(1 − x) is one.</summary>
    private const double Half = 0.5;

    /// <summary>Refrigerant at the start, what the oil holds included, kg.</summary>
    public double Charge;

    /// <summary>Volume that the refrigerant may fill, m³.</summary>
    public double Volume;

    /// <summary>From the surroundings to the metal, W/K.</summary>
    public double OuterConductance;

    /// <summary>From the metal to the refrigerant with all of the metal wetted, W/K.</summary>
    public double InnerConductance;

    /// <summary>J/K.</summary>
    public double MetalCapacity;

    /// <summary>Displacement times volumetric efficiency at pressure ratio one, m³/s.</summary>
    public double Displacement;

    /// <summary>Clearance ratio c over η0: η/η0 = 1 − c·(r^(1/n) − 1) − l·(r − 1).</summary>
    public double Clearance;

    /// <summary>Leakage l over η0.</summary>
    public double Leakage;

    /// <summary>1/n of the re-expansion.</summary>
    public double InverseExponent;

    /// <summary>R of the suction line at <see cref="HoseFlow"/>, 1/m⁴: p1² − p2² = R·ṁ²·p1/ρ1.</summary>
    public double HoseResistance;

    /// <summary>Mass flow at which <see cref="HoseResistance"/> holds, kg/s.</summary>
    public double HoseFlow;

    /// <summary>Share of the resistance that fittings, entrance and exit have; the rest follows Blasius, ṁ^(−1/4).</summary>
    public double FixedLoss;

    /// <summary>1/A² of the narrowest hose, 1/m⁴: the gas speeds up as it expands. Zero leaves that out.</summary>
    public double InverseArea;

    /// <summary>Absolute pressure that the machine works against, Pa.</summary>
    public double DischargePressure;

    /// <summary>Share of the metal that stays in touch with liquid until the last of it goes, 0 to 1.</summary>
    public double WetShare;

    /// <summary>Exponent n of the wetted share a + (1 − a)·λ^n, λ the share of the volume that liquid fills.</summary>
    public double WetExponent;

    /// <summary>Share of the volume that liquid fills where it wets all of the metal that counts.</summary>
    public double FullLevel;

    /// <summary>Rate at which metal conducts differences between its wetted and its dry part away, 1/s.</summary>
    public double Mixing;

    /// <summary>How far the suction gas warms towards the air before it is drawn in, 0 to 1, at <see cref="WarmingFlow"/>.</summary>
    public double Warming;

    /// <summary>Mass flow at which <see cref="Warming"/> holds, kg/s: half of what the machine sweeps of vapor at the start.</summary>
    public double WarmingFlow;

    /// <summary>Refrigerant that the oil holds at half its saturation pressure, kg.</summary>
    public double OilCapacity;

    /// <summary>b of what the oil holds at the share s of its saturation pressure, capacity·(1 + b·(s − ½))·s/(1 − s).</summary>
    public double OilBend;

    /// <summary>Time constant of the oil, s.</summary>
    public double OilTime;

    /// <summary>Conductance to boiling liquid over that to vapor.</summary>
    public double DryFactor;

    /// <summary>Liquid that was taken, of whatever composition it had, kg: what is left of a blend changes by vapor that leaves it.</summary>
    public double LiquidTaken;

    /// <summary>Temperature at the start, K.</summary>
    public double FirstTemperature;

    /// <summary>How far vapor takes its own composition with it, 1, or that of the whole, 0.</summary>
    public double Drift;

    /// <summary>The parameters that a job tells, typical ones where it tells none.</summary>
    public static ReducedParameters FromJob(RecoveryJob job, SaturationTable table)
    {
        Appliance appliance = job.Appliance;
        double charge = appliance.Charge.Kilograms;
        double air = appliance.SurroundingsKelvin;
        double metal = appliance.MetalCapacity;
        bool isDirect = metal == 0 && appliance.Water is null && appliance.MetalResistance is null;
        double outer = appliance.OuterConductance;
        RecoveryMachine machine = job.Machine;
        var made = new ReducedParameters
        {
            Charge = charge,
            Volume = appliance.InternalVolume.CubicMeters,
            OuterConductance = outer,
            InnerConductance = isDirect ? Direct * outer : appliance.InnerConductance,
            MetalCapacity = Math.Max(metal, NoMetal * charge),
            Displacement = machine.Displacement.CubicMetersPerSecond * machine.VolumetricEfficiency,
            Clearance = machine.ClearanceRatio,
            InverseExponent = 1 / machine.PolytropicExponent,
            DischargePressure = table.BubblePressure(air + CondenserAboveAir),
            WetShare = 0,
            WetExponent = 1,
            FullLevel = 1,
            OilTime = 150,
            FirstTemperature = appliance.Temperature.Kelvins,
            Drift = 1,
            DryFactor = isDirect ? 1 : appliance.DryResistanceFactor,
        };
        made.SetHose(job.Hoses, table, appliance.Temperature.Kelvins);
        if (appliance.Oil is ApplianceOil oil)
        {
            var solution = new OilSolution(appliance.Fluid.Model, oil);
            made.OilCapacity = oil.Mass.Kilograms * solution.MassRatio(Half);

            // At two thirds s/(1 − s) is two, and 1 + b·(s − ½) is 1 + b/6.
            made.OilBend = 6 * ((solution.MassRatio(2.0 / 3) / (2 * solution.MassRatio(Half))) - 1);
        }

        return made;
    }

    private void SetHose(HoseSet hoses, SaturationTable table, double temperature)
    {
        var line = new Line(hoses.VaporSide);
        table.At(temperature, out SaturationValues at);
        double full = line.MinimumArea * Math.Sqrt(at.Pressure * at.VaporDensity);
        WarmingFlow = 0.5 * Displacement * at.VaporDensity;
        HoseFlow = Math.Min(0.5 * Displacement * at.VaporDensity, 0.3 * full);
        HoseFlow = Require.IsFinite(HoseFlow) ? HoseFlow : 1e-3;
        HoseResistance = line.Resistance(HoseFlow, table.VaporViscosity);
        FixedLoss = Math.Min(1, line.Resistance(1e6 * HoseFlow, table.VaporViscosity) / HoseResistance);
        InverseArea = 1 / (line.MinimumArea * line.MinimumArea);
    }
}
