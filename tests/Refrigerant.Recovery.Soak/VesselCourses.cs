using System;
using System.Collections.Concurrent;
using System.Globalization;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;

namespace Refrigerant.Recovery.Soak;

/// <summary>
/// Vapor drawn at constant temperature off vessels of every blend until they are all but empty, from 200 K to 300 K. The pressure must only fall, in
/// small steps; liquid once gone must not come back; and it must not vanish while there is much of it. Phases of the equations' own making break that.
/// </summary>
internal static class VesselCourses
{
    private const double Volume = 0.02;

    private static readonly double[] Temperatures = [200, 210, 220, 230, 240, 244, 250, 260, 270, 280, 290, 300];
    private static readonly double[] Fills = [0.05, 0.3, 0.7];

    public static int Run()
    {
        MixtureModel[] models = [.. Fluid.All.Select(fluid => fluid.Model).OfType<MixtureModel>()];
        var failures = new ConcurrentBag<string>();
        int courses = 0;
        Parallel.ForEach(models, model =>
        {
            foreach (double temperature in Temperatures.Where(t => t >= model.Range.MinimumTemperature && t <= model.Range.MaximumSaturationTemperature - 3))
            {
                foreach (double fill in Fills)
                {
                    Interlocked.Increment(ref courses);
                    if (Fault(model, temperature, fill) is { } fault)
                    {
                        failures.Add(string.Create(CultureInfo.InvariantCulture, $"{model.Designation} at {temperature} K, {fill:P0} full: {fault}"));
                    }
                }
            }
        });
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{courses} courses of {models.Length} blends; {failures.Count} failures"));
        foreach (string failure in failures.Order(StringComparer.Ordinal).Take(40))
        {
            Console.WriteLine("  " + failure);
        }

        return failures.IsEmpty ? 0 : 1;
    }

    private static string? Fault(MixtureModel model, double temperature, double fill)
    {
        const int steps = 2000;
        double total = fill * Volume * model.SaturationAtTemperature(temperature).Bubble.Density / model.MolarMass;
        double[] amounts = [.. model.Composition.Select(component => component.MoleFraction * total)];
        var vessel = new TrackedVessel(model);
        vessel.SolveAtTemperature(amounts, Volume, temperature);
        for (int step = 0; step < steps && amounts.Sum() > 1e-3 * total; step++)
        {
            double pressure = vessel.Pressure, liquid = vessel.Liquid.Amount;
            double part = Math.Min(Math.Min(0.01 * total, 0.2 * vessel.Vapor.Amount), 0.02 * amounts.Sum());
            for (int i = 0; i < amounts.Length; i++)
            {
                amounts[i] -= part * vessel.VaporFractions[i];
            }

            vessel.SolveAtTemperature(amounts, Volume, temperature);
            string? fault = vessel.Pressure > pressure * (1 + 1e-7) ? "the pressure rises"
                : vessel.Pressure < 0.85 * pressure ? "the pressure drops"
                : liquid == 0 && vessel.Liquid.Amount > 0 ? "liquid comes back"
                : vessel.Liquid.Amount == 0 && liquid > 0.03 * total ? "liquid vanishes"
                : null;
            if (fault is not null)
            {
                return string.Create(CultureInfo.InvariantCulture, $"{fault} in step {step}, from {pressure:F1} to {vessel.Pressure:F1} Pa");
            }
        }

        return null;
    }
}
