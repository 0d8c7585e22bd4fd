using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Processes;

/// <summary>
/// What drawing vapor does to a blend: the vapor is richer in the volatile components, so what stays behind drifts. Follows the amounts of
/// all components along a simulated recovery, with a flash of the overall composition at each step.
/// </summary>
/// <remarks>
/// The course of mass and temperature is that of the simulation, whose composition is fixed; composition and pressure are those that the amounts left then have.
/// That the falling pressure would slow the machine down further is left out, and what oil gives off counts as drawn from the charge. Estimates for planning: local
/// codes and licensed practice govern.
/// </remarks>
public static class Fractionation
{
    /// <summary>Most of what is left that one step may draw.</summary>
    private const double LargestShare = 0.02;

    /// <summary>Bound on steps between two points of a course.</summary>
    private const int MaximumSteps = 2000;

    /// <summary>Whether a fluid is a blend whose composition can be followed: one of this package's own property models.</summary>
    /// <param name="fluid">The fluid.</param>
    /// <exception cref="ArgumentNullException">The fluid is null.</exception>
    public static bool CanFollow(Fluid fluid) => Require.NotNull(fluid, nameof(fluid)).Model is MixtureModel;

    /// <summary>Follows the composition along a vapor recovery.</summary>
    /// <param name="appliance">The appliance, with a blend of the catalogue or of <see cref="Fluid.Blend"/>, in the composition it was charged with.</param>
    /// <param name="recovery">Its vapor recovery.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The fluid is no blend of this package's own property models, or the recovery has no course.</exception>
    /// <exception cref="ConvergenceException">No equilibrium was found for the charge as it stands at the start.</exception>
    public static FractionationResult Follow(Appliance appliance, VaporRecoveryResult recovery)
    {
        Fluid fluid = Require.NotNull(appliance, nameof(appliance)).Fluid;
        Trajectory course = Require.NotNull(recovery, nameof(recovery)).Trajectory;
        if (fluid.Model is not MixtureModel model)
        {
            throw new ArgumentException(
                $"The appliance holds {fluid.Designation}; only a blend of this package's own property models can be followed.", nameof(appliance));
        }

        return course.Count == 0
            ? throw new ArgumentException("The recovery has no course: its starting state was outside the range of the equation.", nameof(recovery))
            : Follow(model, appliance.InternalVolume.CubicMeters, course);
    }

    internal static FractionationResult Follow(MixtureModel model, double volume, IReadOnlyList<TrajectoryPoint> course)
    {
        var draw = new VaporDraw(model, volume, course[0].ApplianceKilograms, course[0].ApplianceKelvins);
        var points = new List<FractionationPoint> { Point(model, draw, volume, course[0].Seconds) };
        bool isComplete = true;
        for (int k = 1; k < course.Count && isComplete; k++)
        {
            isComplete = TryMove(draw, course[k]);
            if (isComplete)
            {
                points.Add(Point(model, draw, volume, course[k].Seconds));
            }
        }

        return new FractionationResult(model, points, isComplete, draw.LargestImbalance);
    }

    private static bool TryMove(VaporDraw draw, in TrajectoryPoint target)
    {
        try
        {
            double from = draw.Temperature;
            double missing = Math.Max(0, draw.Mass - target.ApplianceKilograms);
            int steps = 1 + (int)Math.Min(MaximumSteps, Math.Ceiling(missing / (LargestShare * Math.Max(target.ApplianceKilograms, 1e-3 * draw.Mass))));
            for (int i = 1; i <= steps; i++)
            {
                draw.Draw(missing / steps, from + ((target.ApplianceKelvins - from) * i / steps));
            }

            return true;
        }
        catch (ConvergenceException)
        {
            return false;
        }
    }

    private static FractionationPoint Point(MixtureModel model, VaporDraw draw, double volume, double seconds) => new(
        seconds,
        draw.Mass,
        draw.Temperature,
        draw.Pressure,
        model.VesselAtTemperature(draw.Temperature, draw.Mass / volume).Bulk.Pressure,
        draw.HasLiquid ? Fractions(model, draw.LiquidMassFractions()) : null,
        Fractions(model, draw.VaporMassFractions()));

    private static IReadOnlyList<FluidComponent> Fractions(MixtureModel model, double[] mass)
    {
        double[] amounts = [.. mass.Select((w, i) => w / model.Engine.Equation.Components[i].Data.MolarMass)];
        double total = amounts.Sum();
        return Array.AsReadOnly(mass.Select((w, i) => new FluidComponent(model.Composition[i].Designation, w, amounts[i] / total)).ToArray());
    }
}
