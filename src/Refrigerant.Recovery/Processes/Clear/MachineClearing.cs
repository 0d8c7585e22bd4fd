using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>The machine empties itself and the hose behind it into the cylinder before it is disconnected. Immutable.</summary>
/// <remarks>
/// Before: liquid in the discharge hoses and in a third of the machine's volume (its condenser; common practice, no source), vapor at the
/// cylinder's pressure in the rest. The machine boils that liquid off at the cylinder's pressure and draws the vapor down, isothermally:
/// t = m_liquid/(S·η·ρ'') + (V/S)·ln(p_1/p_2)/η̄. After: vapor at the lowest pressure throughout the machine; the hose behind it holds vapor
/// at the cylinder's pressure. Where the cylinder is too cold for the refrigerant to condense in the machine's air there is vapor only. An estimate: where oil holds refrigerant back, more stays.
/// </remarks>
public sealed record MachineClearing
{
    /// <summary>Share of the machine's volume that holds liquid at the end of a recovery: common practice, no source.</summary>
    private const double LiquidShare = 1.0 / 3;

    /// <summary>Against less than this share of the pressure at which it would condense in this air, the machine holds vapor only.</summary>
    private const double Condenses = 0.9;

    /// <summary>The pull ends this much above the deepest vacuum, where the flow would be nil.</summary>
    private const double AboveDeepest = 1.25;

    /// <summary>Intervals of the integral of the efficiency over the logarithm of the pressure (Simpson's rule; even).</summary>
    private const int Intervals = 64;

    private MachineClearing(double seconds, double before, double vapor, double after, double pressure)
    {
        HeldAsVapor = new Mass(vapor, MassUnit.Kilogram);
        Duration = new Duration(seconds, DurationUnit.Second);
        HeldBefore = new Mass(before, MassUnit.Kilogram);
        Trapped = new Mass(after, MassUnit.Kilogram);
        FinalPressure = new Pressure(pressure, PressureUnit.Pascal);
    }

    /// <summary>How long it takes.</summary>
    public Duration Duration { get; }

    /// <summary>Refrigerant in the machine and the hoses behind it before.</summary>
    public Mass HeldBefore { get; }

    /// <summary>The same of a machine that holds no liquid, as after push-pull with its fan off.</summary>
    internal Mass HeldAsVapor { get; }

    /// <summary>Refrigerant that stays in the machine and the hoses behind it.</summary>
    public Mass Trapped { get; }

    /// <summary>Absolute pressure in the machine after it.</summary>
    public Pressure FinalPressure { get; }

    /// <summary>Estimates the clearing.</summary>
    /// <param name="fluid">The refrigerant.</param>
    /// <param name="machine">The machine.</param>
    /// <param name="hoses">The hoses; the discharge side counts.</param>
    /// <param name="temperature">Temperature of the surroundings, on the saturation curves or above them.</param>
    /// <param name="cylinderPressure">Absolute pressure in the cylinder, greater than zero.</param>
    /// <param name="targetPressure">Absolute pressure to pull the machine down to, greater than zero.</param>
    /// <exception cref="ArgumentNullException">Fluid, machine or hoses is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A pressure is not greater than zero, or not finite, or the machine moves nothing against that of the cylinder.</exception>
    /// <exception cref="PropertyRangeException">A state is outside the range of the refrigerant's equation.</exception>
    public static MachineClearing Estimate(
        Fluid fluid, RecoveryMachine machine, HoseSet hoses, Temperature temperature, Pressure cylinderPressure, Pressure targetPressure) => Estimate(
            Require.NotNull(fluid, nameof(fluid)),
            Require.NotNull(machine, nameof(machine)),
            HoseSet.VolumeOf(Require.NotNull(hoses, nameof(hoses)).Discharge),
            temperature,
            cylinderPressure,
            targetPressure);

    /// <summary>The same with a volume of discharge hoses, m³, which may be zero.</summary>
    internal static MachineClearing Estimate(
        Fluid fluid, RecoveryMachine machine, double hose, Temperature temperature, Pressure cylinderPressure, Pressure targetPressure)
    {
        PropertyModel model = fluid.Model;
        double discharge = Require.Positive(cylinderPressure.Pascals, "Pa", nameof(cylinderPressure));
        double target = Require.Positive(targetPressure.Pascals, "Pa", nameof(targetPressure));
        double kelvins = Require.Positive(temperature.Kelvins, "K", nameof(temperature));
        double volume = machine.InternalVolume.CubicMeters;
        double displacement = machine.Displacement.CubicMetersPerSecond;

        double start = Math.Min(discharge, HighestVaporPressure(model, kelvins));
        double vapor = model.StateAt(kelvins, start).Density;
        double liquid = discharge >= Condenses * HighestVaporPressure(model, kelvins) ? LiquidDensity(model, kelvins, vapor) : vapor;
        if (machine.EfficiencyAt(discharge / start) <= 0)
        {
            double highest = start * discharge / machine.DeepestVacuum(new Pressure(discharge, PressureUnit.Pascal)).Pascals;
            throw new ArgumentOutOfRangeException(
                nameof(cylinderPressure),
                $"{nameof(cylinderPressure)} is {Require.Text(discharge)} Pa absolute; it must be above 0 and below {Require.Text(highest)} Pa absolute, against which this machine moves nothing at {Require.Text(kelvins)} K.");
        }

        double end = Math.Min(start, Math.Max(target, AboveDeepest * machine.DeepestVacuum(new Pressure(discharge, PressureUnit.Pascal)).Pascals));
        double boiling = liquid == vapor ? 0 : LiquidShare * volume * liquid / (displacement * machine.EfficiencyAt(discharge / start) * vapor);
        double drawing = volume / displacement * TimeIntegral(machine, discharge, start, end);
        double before = (hose * liquid) + (volume * ((LiquidShare * liquid) + ((1 - LiquidShare) * vapor)));
        double after = (hose * vapor) + (volume * model.StateAt(kelvins, end).Density);
        return new MachineClearing(boiling + drawing, before, (hose + volume) * vapor, Math.Min(before, after), end);
    }

    /// <summary>Vapor cannot be denser than at saturation; just below it, so that the state is vapor.</summary>
    private static double HighestVaporPressure(PropertyModel model, double temperature) =>
        temperature <= model.Range.MaximumSaturationTemperature
            ? model.SaturationAtTemperature(temperature).Dew.Pressure * (1 - 1e-9)
            : double.PositiveInfinity;

    private static double LiquidDensity(PropertyModel model, double temperature, double vapor) =>
        temperature <= model.Range.MaximumSaturationTemperature ? model.SaturationAtTemperature(temperature).Bubble.Density : vapor;

    /// <summary>∫ d(ln p)/η from the end to the start pressure.</summary>
    private static double TimeIntegral(RecoveryMachine machine, double discharge, double start, double end)
    {
        double step = Math.Log(start / end) / Intervals;
        double sum = 0;
        for (int i = 0; i <= Intervals; i++)
        {
            double weight = i is 0 or Intervals ? 1 : (i % 2 == 1 ? 4 : 2);
            sum += weight / machine.EfficiencyAt(discharge / (end * Math.Exp(i * step)));
        }

        return step / 3 * sum;
    }

    /// <summary>Time and what stays, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant($"{Duration.Seconds:G4} s, {HeldBefore.Kilograms:G4} kg before, {Trapped.Kilograms:G4} kg stay at {FinalPressure.Kilopascals:G4} kPa absolute");
}
