using System;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Equipment;

/// <summary>A recovery machine: a positive-displacement compressor with its switches and its condenser. Immutable.</summary>
/// <remarks>
/// Mass flow = S·η(r)·ρ(suction), r = discharge pressure/suction pressure, η = η0 − k·r − c·(r^(1/n) − 1), S the displacement rate, c the
/// clearance ratio, n the exponent of re-expansion, k leakage past rings and valves (the form of the GPSA Engineering Data Book, which has
/// η0 = 0.96 and k = 0.01, from memory; any refrigeration text without k). Without leakage the efficiency is zero at r = (1 + η0/c)^n: the
/// deepest vacuum against a discharge pressure.
/// </remarks>
public sealed record RecoveryMachine
{
    /// <summary>Clearance 4 to 5 % of the swept volume is typical of small reciprocating compressors (Stoecker and Jones, from memory).</summary>
    private const double TypicalClearance = 0.04;

    /// <summary>Exponent of re-expansion typical of refrigerants: common practice, no source.</summary>
    private const double TypicalExponent = 1.15;

    /// <summary>Isentropic efficiency of small compressors: common practice, no source.</summary>
    private const double TypicalIsentropicEfficiency = 0.65;

    /// <summary>High-pressure cut-out of 550 psi gauge (common practice, no source) above a standard atmosphere, Pa.</summary>
    private const double TypicalCutout = (550 * 6.894757) + 101.325;

    /// <summary>Condenser duty for each m³/s of displacement, W: 3 kW at 15 K for 0.5 L/s, what 0.014 kg/s of R-22 takes to condense; common practice, no source.</summary>
    private const double DutyPerDisplacement = 6e6;

    /// <summary>Accuracy of the inverse pressure ratio of the deepest vacuum.</summary>
    private const double InverseTolerance = 1e-14;

    private RecoveryMachine()
    {
    }

    /// <summary>Displacement rate S: swept volume times speed; from 1e-7 to 10 m³/s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public VolumeFlow Displacement
    {
        get;
        init
        {
            Require.InRange(value.CubicMetersPerSecond, 1e-7, 10, "m³/s", nameof(Displacement));
            field = Held.LitersPerSecond(value);
        }
    }

    /// <summary>Clearance volume over swept volume c, 0 to 0.5; 0.04 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public double ClearanceRatio
    {
        get;
        init
        {
            Require.InRange(value, 0, 0.5, string.Empty, nameof(ClearanceRatio));
            field = value;
        }
    }

    = TypicalClearance;

    /// <summary>Polytropic exponent of re-expansion n, 1 to 1.7; 1.15 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public double PolytropicExponent
    {
        get;
        init
        {
            Require.InRange(value, 1, 1.7, string.Empty, nameof(PolytropicExponent));
            field = value;
        }
    }

    = TypicalExponent;

    /// <summary>Volumetric efficiency at pressure ratio one, leakage not counted, η0, 0.05 to 1; 1 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public double VolumetricEfficiency
    {
        get;
        init
        {
            Require.InRange(value, 0.05, 1, string.Empty, nameof(VolumetricEfficiency));
            field = value;
        }
    }

    = 1;

    /// <summary>Loss of volumetric efficiency by leakage for each unit of pressure ratio k, 0 to 0.04; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public double LeakageTerm { get; init => field = Require.InRange(value, 0, 0.04, string.Empty, nameof(LeakageTerm)); }

    /// <summary>Isentropic efficiency of the compression, 0.1 to 1; 0.65 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public double IsentropicEfficiency
    {
        get;
        init
        {
            Require.InRange(value, 0.1, 1, string.Empty, nameof(IsentropicEfficiency));
            field = value;
        }
    }

    = TypicalIsentropicEfficiency;

    /// <summary>Absolute suction pressure at which its low-pressure switch stops it; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure? LowPressureSwitch
    {
        get;
        init
        {
            if (value is Pressure given)
            {
                Require.Positive(given.Pascals, "Pa", nameof(LowPressureSwitch));
            }

            field = Held.Kilopascals(value);
        }
    }

    /// <summary>Absolute discharge pressure at which its high-pressure cut-out stops it; 3.89 MPa (550 psi gauge) by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not greater than zero, or not finite.</exception>
    public Pressure HighPressureCutout
    {
        get;
        init
        {
            Require.Positive(value.Pascals, "Pa", nameof(HighPressureCutout));
            field = Held.Kilopascals(value);
        }
    }

    = new(TypicalCutout, PressureUnit.Kilopascal);

    /// <summary>Internal volume, where refrigerant stays trapped until it is cleared; 0 to 1 m³, 1 L by default (common practice, no source).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Volume InternalVolume
    {
        get;
        init
        {
            Require.InRange(value.CubicMeters, 0, 1, "m³", nameof(InternalVolume));
            field = Held.Liters(value);
        }
    }

    = new(1, VolumeUnit.Liter);

    /// <summary>The condenser; air-cooled and sized to the displacement by default (common practice, no source).</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public Condenser Condenser
    {
        get;
        init => field = Require.NotNull(value, nameof(Condenser));
    }

    = new() { RatedDuty = Power.Zero };

    /// <summary>
    /// The body that gas and friction warm; typical for the displacement by default. Null for none: nothing then warms the suction gas, neither in the machine nor in its
    /// hoses, and discharge gas is as hot as compression makes it.
    /// </summary>
    public MachineBody? Body { get; init; }

    /// <summary>Whether gas passes its valves by itself while the pressure behind it is below that before it; true by default.</summary>
    public bool GasPassesThrough { get; init; } = true;

    /// <summary>Temperature of the discharge gas at which a thermal cut-out stops it, 50 °C to 300 °C; none by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Temperature? ThermalCutout
    {
        get;
        init
        {
            if (value is Temperature given)
            {
                Require.InRange(given.DegreesCelsius, 50, 300, "°C", nameof(ThermalCutout));
            }

            field = Held.Celsius(value);
        }
    }

    /// <summary>Whether it may draw liquid through a throttled inlet, as its maker says; true by default (common practice, no source).</summary>
    public bool TakesLiquid { get; init; } = true;

    /// <summary>The most liquid that it moves, as rated, 1e-5 to 100 kg/s; not limited beyond its displacement where it is null.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public MassFlow? LiquidRate
    {
        get;
        init
        {
            if (value is MassFlow given)
            {
                Require.InRange(given.KilogramsPerSecond, 1e-5, 100, "kg/s", nameof(LiquidRate));
            }

            field = Held.KilogramsPerSecond(value);
        }
    }

    /// <summary>
    /// Conductance with which vapor that it pushes in a push-pull condenses on an appliance's metal, W/(m²·K) of the surface of a cube of the appliance's volume, 0.1 to 1e6: what a fit
    /// to its push-pull rating gives. Typical where it is null.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public double? CondensingCoefficient
    {
        get;
        init => field = value is double given ? Require.InRange(given, 0.1, 1e6, "W/(m²·K)", nameof(CondensingCoefficient)) : null;
    }

    /// <summary>Whether its compressor runs without oil: then it carries none over, and none is drained from it.</summary>
    public bool IsOilless { get; init; }

    /// <summary>Whether it is listed for flammable refrigerants.</summary>
    public bool ListedForFlammable { get; init; }

    /// <summary>Date of manufacture, which decides the required evacuation level (40 CFR 82.156); today's levels where it is null.</summary>
    public DateTime? ManufactureDate { get; init => field = Held.Day(value); }

    /// <summary>A machine of known displacement; every other property has a typical value that <c>with</c> replaces.</summary>
    /// <param name="displacement">Displacement rate, 1e-7 to 10 m³/s.</param>
    /// <param name="clearanceRatio">Clearance ratio c, 0 to 0.5.</param>
    /// <param name="polytropicExponent">Exponent of re-expansion n, 1 to 1.7.</param>
    /// <param name="volumetricEfficiency">Efficiency at pressure ratio one η0, 0.05 to 1.</param>
    /// <param name="isentropicEfficiency">See <see cref="IsentropicEfficiency"/>.</param>
    /// <param name="lowPressureSwitch">See <see cref="LowPressureSwitch"/>; none where null.</param>
    /// <param name="highPressureCutout">See <see cref="HighPressureCutout"/>; its default where null.</param>
    /// <param name="internalVolume">See <see cref="InternalVolume"/>; its default where null.</param>
    /// <param name="condenser">See <see cref="Condenser"/>; sized to the displacement where null.</param>
    /// <param name="listedForFlammable">See <see cref="ListedForFlammable"/>.</param>
    /// <param name="manufactureDate">See <see cref="ManufactureDate"/>.</param>
    /// <param name="leakageTerm">See <see cref="LeakageTerm"/>.</param>
    /// <param name="body">See <see cref="Body"/>; typical for the displacement where null, and <see cref="Ideal"/> has none.</param>
    /// <param name="gasPassesThrough">See <see cref="GasPassesThrough"/>.</param>
    /// <param name="thermalCutout">See <see cref="ThermalCutout"/>; none where null.</param>
    /// <param name="takesLiquid">See <see cref="TakesLiquid"/>.</param>
    /// <param name="liquidRate">See <see cref="LiquidRate"/>.</param>
    /// <param name="condensingCoefficient">See <see cref="CondensingCoefficient"/>.</param>
    /// <param name="isOilless">See <see cref="IsOilless"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static RecoveryMachine FromDisplacement(
        VolumeFlow displacement,
        double clearanceRatio = TypicalClearance,
        double polytropicExponent = TypicalExponent,
        double volumetricEfficiency = 1,
        double isentropicEfficiency = TypicalIsentropicEfficiency,
        Pressure? lowPressureSwitch = null,
        Pressure? highPressureCutout = null,
        Volume? internalVolume = null,
        Condenser? condenser = null,
        bool listedForFlammable = false,
        DateTime? manufactureDate = null,
        double leakageTerm = 0,
        MachineBody? body = null,
        bool gasPassesThrough = true,
        Temperature? thermalCutout = null,
        bool takesLiquid = true,
        MassFlow? liquidRate = null,
        double? condensingCoefficient = null,
        bool isOilless = false)
    {
        var machine = new RecoveryMachine
        {
            Displacement = displacement,
            ClearanceRatio = clearanceRatio,
            PolytropicExponent = polytropicExponent,
            VolumetricEfficiency = volumetricEfficiency,
            IsentropicEfficiency = isentropicEfficiency,
            LowPressureSwitch = lowPressureSwitch,
            Condenser = condenser ?? new Condenser { RatedDuty = Power.FromWatts(DutyPerDisplacement * displacement.CubicMetersPerSecond) },
            ListedForFlammable = listedForFlammable,
            ManufactureDate = manufactureDate,
            LeakageTerm = leakageTerm,
            Body = body ?? MachineBody.Typical(displacement),
            GasPassesThrough = gasPassesThrough,
            ThermalCutout = thermalCutout,
            TakesLiquid = takesLiquid,
            LiquidRate = liquidRate,
            CondensingCoefficient = condensingCoefficient,
            IsOilless = isOilless,
        };
        return machine with
        {
            HighPressureCutout = highPressureCutout ?? machine.HighPressureCutout,
            InternalVolume = internalVolume ?? machine.InternalVolume,
        };
    }

    /// <summary>A machine for theory: constant displacement, no clearance, no leakage, no body and no warming of the suction gas, and nothing passes it by itself.</summary>
    /// <param name="displacement">Displacement rate, 1e-7 to 10 m³/s.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public static RecoveryMachine Ideal(VolumeFlow displacement) => FromDisplacement(displacement, clearanceRatio: 0) with { Body = null, GasPassesThrough = false };

    /// <summary>
    /// Equal machines side by side on the same appliance and the same cylinder, as one: displacement, duty, internal volume, liquid rate and body add up, what one machine is set to stays. Hoses
    /// are not part of it: each machine wants a run of its own.
    /// </summary>
    /// <param name="count">How many, 1 to 8.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or what adds up is.</exception>
    public RecoveryMachine SideBySide(int count)
    {
        Require.InRange(count, 1, 8, string.Empty, nameof(count));
        return this with
        {
            Displacement = Displacement * count,
            InternalVolume = InternalVolume * count,
            Condenser = Condenser with { RatedDuty = Power.FromWatts((double)Condenser.RatedDuty.Watts * count) },
            LiquidRate = LiquidRate * count,
            Body = Body is null ? null : Body with
            {
                HeatCapacity = Body.HeatCapacity * count,
                AirConductance = Body.AirConductance * count,
                GasConductance = Body.GasConductance * count,
                FrictionPower = Power.FromWatts((double)Body.FrictionPower.Watts * count),
            },
        };
    }

    /// <summary>Volumetric efficiency η at a pressure ratio; zero where re-expansion leaves nothing to draw.</summary>
    /// <param name="pressureRatio">Discharge over suction pressure, greater than zero; below one counts as one.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is not greater than zero, or not finite.</exception>
    public double EfficiencyAt(double pressureRatio)
    {
        Require.Positive(pressureRatio, string.Empty, nameof(pressureRatio));
        double ratio = Math.Max(1, pressureRatio);
        return Math.Max(0, VolumetricEfficiency - (LeakageTerm * ratio) - (ClearanceRatio * (Math.Pow(ratio, 1 / PolytropicExponent) - 1)));
    }

    /// <summary>Lowest suction pressure that it can pull against a discharge pressure; zero where clearance and leakage are zero.</summary>
    /// <param name="dischargePressure">Absolute discharge pressure, greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is not greater than zero, or not finite.</exception>
    public Pressure DeepestVacuum(Pressure dischargePressure)
    {
        double discharge = Require.Positive(dischargePressure.Pascals, "Pa", nameof(dischargePressure));
        double inverse = ClearanceRatio == 0 ? 0 : 1 / Math.Pow(1 + (VolumetricEfficiency / ClearanceRatio), PolytropicExponent);
        if (LeakageTerm > 0)
        {
            // Over the inverse ratio: zero at η0 − k·r = 0 at the latest, where leakage alone takes everything, and no further than r = 1.
            var efficiency = new Efficiency(this);
            double least = LeakageTerm / VolumetricEfficiency;
            inverse = least >= 1 || efficiency.Value(1) <= 0 ? 1 : BracketedRoot.Find(ref efficiency, Math.Max(least, inverse), 1, InverseTolerance);
        }

        return new Pressure(discharge * inverse, PressureUnit.Pascal);
    }

    private readonly struct Efficiency(RecoveryMachine machine) : IScalarFunction
    {
        /// <summary>η before it is cut off at zero, over 1/r.</summary>
        public double Value(double x) => machine.VolumetricEfficiency - (machine.LeakageTerm / x)
            - (machine.ClearanceRatio * (Math.Pow(x, -1 / machine.PolytropicExponent) - 1));
    }

    /// <summary>Displacement, clearance and cut-out.</summary>
    public override string ToString() => $"{Require.Text(Displacement.CubicMetersPerSecond * 1e3)} L/s, clearance {Require.Text(ClearanceRatio)}, stops at {Require.Text(HighPressureCutout.Kilopascals)} kPa absolute";
}
