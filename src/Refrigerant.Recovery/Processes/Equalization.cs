using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Flow;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Processes;

/// <summary>
/// Vapor first: before liquid enters an evacuated cylinder, vapor of the appliance flows into it until the pressures are equal, so that no
/// liquid flashes at a vacuum and freezes what it touches (common practice, no source).
/// </summary>
/// <remarks>
/// Mass Δm carries the enthalpy of the appliance's vapor; both vessels are adiabatic for these seconds:
/// m_a = m_a0 − Δm, U_a = U_a0 − Δm·h, m_c = m_c0 + Δm, U_c = U_c0 + Δm·h, p_a(Δm) = p_c(Δm). The time is that of compressible flow through
/// the vapor hoses, the cylinder's pressure rising in proportion to the mass. A blend counts with its composition as charged.
/// </remarks>
public static class Equalization
{
    /// <summary>No more than this share of the appliance's content flows over: it would chill what stays by some 25 K.</summary>
    private const double MostShare = 0.15;

    /// <summary>Pressures that differ by less than this share are equal.</summary>
    private const double AlreadyEqual = 0.02;

    /// <summary>Relative accuracy of the mass that flows over.</summary>
    private const double Tolerance = 1e-9;

    /// <summary>Intervals of the time integral (midpoint rule, which does not touch the end where the flow is nil).</summary>
    private const int Intervals = 12;

    /// <summary>Simulates it.</summary>
    /// <param name="appliance">The appliance.</param>
    /// <param name="hoses">The hoses; vapor and discharge side count.</param>
    /// <param name="start">The appliance at the start.</param>
    /// <param name="cylinder">The cylinder at the start.</param>
    /// <returns>
    /// Both at equal pressure, or as near to it as 15 % of the appliance's content brings them; nothing moves where the cylinder's pressure is
    /// not the lower one.
    /// </returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="PropertyRangeException">A state is outside the range of the refrigerant's equation.</exception>
    public static EqualizationResult Simulate(Appliance appliance, HoseSet hoses, ApplianceState start, CylinderState cylinder)
    {
        PropertyModel model = Require.NotNull(appliance, nameof(appliance)).Fluid.Model;
        var line = new Line([.. Require.NotNull(hoses, nameof(hoses)).Discharge, .. hoses.VaporSide]);
        start = Require.NotNull(start, nameof(start)).AsCharged();
        _ = Require.NotNull(cylinder, nameof(cylinder));
        double from = start.Vessel.Bulk.Pressure;
        double to = cylinder.Pressure.Pascals;
        if (to > from * (1 - AlreadyEqual))
        {
            return new EqualizationResult(0, 0, start, cylinder);
        }

        StatePoint vapor = start.HasLiquid ? start.Vessel.Vapor : start.Vessel.Bulk;
        var balance = new Balance(model, appliance.InternalVolume.CubicMeters, start, cylinder, vapor.Enthalpy);
        double high = FirstAbove(balance, vapor.Density * cylinder.Cylinder.InternalVolume.CubicMeters, MostShare * start.Kilograms);
        double moved = balance.Value(high) > 0 ? BracketedRoot.Find(ref balance, 0, high, Tolerance * high) : high;
        var after = new ApplianceState(
            appliance, start.Kilograms - moved, start.Joules - (moved * vapor.Enthalpy), start.MetalKelvins, start.WaterKelvins, start.DissolvedKilograms);
        var filled = new CylinderState(
            cylinder.Cylinder, model, cylinder.Kilograms + moved, cylinder.Joules + (moved * vapor.Enthalpy), cylinder.WallKelvins, cylinder.GasMoles);
        return new EqualizationResult(Time(line, model, vapor, to, moved), moved, after, filled);
    }

    /// <summary>A mass at which the cylinder's pressure is above the appliance's, or the most that may flow over.</summary>
    private static double FirstAbove(Balance balance, double guess, double most)
    {
        double mass = Math.Min(guess, most);
        while (mass < most && balance.Value(mass) < 0)
        {
            mass = Math.Min(most, 1.5 * mass);
        }

        return mass;
    }

    private static double Time(Line line, PropertyModel model, in StatePoint vapor, double startPressure, double moved)
    {
        double viscosity = VaporRecovery.VaporViscosity(model, vapor.Temperature);
        double exponent = GasExponent.At(model, vapor.Temperature);
        var passage = new VaporLine(line);
        double sum = 0;
        for (int i = 0; i < Intervals; i++)
        {
            double pressure = startPressure + ((vapor.Pressure - startPressure) * (i + 0.5) / Intervals);
            sum += 1 / passage.MassFlow(vapor.Pressure, vapor.Density, exponent, viscosity, pressure, out _);
        }

        return moved * sum / Intervals;
    }

    /// <summary>Cylinder's pressure less the appliance's after a mass has flown over, Pa.</summary>
    private readonly struct Balance(PropertyModel model, double volume, ApplianceState start, CylinderState cylinder, double enthalpy) : IScalarFunction
    {
        public double Value(double x)
        {
            double left = start.Kilograms - x;
            double received = cylinder.Kilograms + x;
            VesselPoint appliance = model.VesselAtEnergy(left / volume, (start.Joules - (x * enthalpy)) / left);
            VesselPoint filled = model.VesselAtEnergy(
                received / cylinder.Cylinder.InternalVolume.CubicMeters, (cylinder.Joules + (x * enthalpy)) / received);
            return filled.Bulk.Pressure + cylinder.GasPascals - appliance.Bulk.Pressure;
        }
    }
}
