using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using Refrigerant.Recovery.CoolProp;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;

namespace Refrigerant.Recovery.Benchmarks;

/// <summary>
/// Times of the property calls over that of a fixed loop, and of CoolProp's over ours where its library is at hand, against a stored baseline. Call and yardstick
/// take turns in one process and the best of many rounds counts, so that neither the machine nor its load matters much; times themselves are not compared.
/// </summary>
internal static class RatioGate
{
    private const int Rounds = 150;

    /// <summary>How much longer than in the baseline a call may take, over the loop.</summary>
    private const double Allowed = 1.4;

    private const double LeastNanoseconds = 100_000;

    private const int WarmUp = 250;

    /// <summary>Runs it.</summary>
    /// <param name="args">"gate", the baseline's path, and "write" to store a new one.</param>
    /// <returns>0 where no call has become slower.</returns>
    public static int Run(string[] args)
    {
        Dictionary<string, double> measured = Cases().ToDictionary(item => item.Name, item => Ratio(item.Call, Loop));
        foreach ((string name, Func<double> ours, Func<double> theirs) in CoolPropCases())
        {
            measured[name] = Ratio(ours, theirs);
        }

        if (args.Contains("write"))
        {
            File.WriteAllLines(args[1], measured.OrderBy(item => item.Key, StringComparer.Ordinal).Select(item => FormattableString.Invariant($"{item.Key}: {item.Value:G3}")));
        }

        int slower = 0;
        foreach (string line in File.ReadAllLines(args[1]))
        {
            string[] parts = line.Split(": ");
            if (!measured.TryGetValue(parts[0], out double ratio))
            {
                Console.WriteLine($"{parts[0]}: not measured here");
                continue;
            }

            double baseline = double.Parse(parts[1], CultureInfo.InvariantCulture);
            bool isSlower = ratio > Allowed * baseline;
            slower += isSlower ? 1 : 0;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{parts[0]}: {ratio:G3}, baseline {baseline:G3}{(isSlower ? "  SLOWER" : string.Empty)}"));
        }

        return slower;
    }

    private static IEnumerable<(string Name, Func<double> Call)> Cases()
    {
        foreach (string designation in new[] { "R-134a", "R-744", "R-410A", "R-448A" })
        {
            PropertyModel model = Fluid.Get(designation).Model;
            double pressure = model.SaturationAtTemperature(285).Dew.Pressure;
            double density = 0.3 * model.SaturationAtTemperature(285).Bubble.Density;
            double energy = model.VesselAtTemperature(285, density).Bulk.InternalEnergy;
            yield return ($"{designation} saturation at T", () => model.SaturationAtTemperature(287.3).Dew.Density);
            yield return ($"{designation} saturation at p", () => model.SaturationAtPressure(pressure).Dew.Density);
            yield return ($"{designation} vapor at T, p", () => model.StateAt(287.3, 0.7 * pressure).Density);
            yield return ($"{designation} liquid at T, p", () => model.StateAt(280, 2 * pressure).Density);
            yield return ($"{designation} vessel at density and energy", () => model.VesselAtEnergy(density, energy).Bulk.Temperature);
            if (model is MixtureModel blend)
            {
                yield return ($"{designation} tracked vessel, small steps", Tracked(blend));
            }
        }
    }

    private static Func<double> Tracked(MixtureModel model)
    {
        const double volume = 0.02, step = 1e-3;
        const int turn = 40;
        var vessel = new TrackedVessel(model);
        double[] start = [.. model.Composition.Select(component => component.MoleFraction * 50)];
        double[] amounts = new double[start.Length];
        vessel.SolveAtTemperature(start, volume, 297);
        double[] vapor = vessel.VaporFractions.ToArray();
        double energy = vessel.Energy, enthalpy = vessel.Vapor.Enthalpy * vessel.Vapor.Mass / vessel.Vapor.Amount;
        int calls = 0;
        return () =>
        {
            int place = calls++ % turn;
            double drawn = (place < turn / 2 ? place : turn - place) * step * 50;
            for (int i = 0; i < amounts.Length; i++)
            {
                amounts[i] = start[i] - (drawn * vapor[i]);
            }

            vessel.SolveAtEnergy(amounts, volume, energy - (drawn * enthalpy));
            return vessel.Pressure;
        };
    }

    private static IEnumerable<(string Name, Func<double> Ours, Func<double> Theirs)> CoolPropCases()
    {
        if (string.IsNullOrEmpty(Environment.GetEnvironmentVariable(CoolPropLibrary.PathVariable)))
        {
            yield break;
        }

        foreach (string designation in new[] { "R-134a", "R-410A" })
        {
            Fluid fluid = Fluid.Get(designation);
            PropertyModel ours = fluid.Model, theirs = CoolPropFluid.LoadEquivalent(fluid).Model;
            yield return ($"{designation} saturation at T over CoolProp", () => ours.SaturationAtTemperature(287.3).Dew.Density, () => theirs.SaturationAtTemperature(287.3).Dew.Density);
            yield return ($"{designation} state at T, p over CoolProp", () => ours.StateAt(287.3, 3.1e5).Density, () => theirs.StateAt(287.3, 3.1e5).Density);
        }
    }

    /// <summary>The yardstick: exponentials and additions, each of which waits for the one before.</summary>
    private static double Loop()
    {
        double x = 1;
        for (int i = 0; i < 20; i++)
        {
            x = Math.Exp(-x) + (0.5 * x);
        }

        return x;
    }

    private static double Ratio(Func<double> call, Func<double> yardstick)
    {
        // Twice, with time between for the compiler to take notice of what is hot.
        _ = Repeats(call) + Repeats(yardstick);
        Thread.Sleep(WarmUp);
        int calls = Repeats(call), turns = Repeats(yardstick);
        double best = double.PositiveInfinity, bestYardstick = double.PositiveInfinity;
        for (int round = 0; round < Rounds; round++)
        {
            best = Math.Min(best, Time(call, calls));
            bestYardstick = Math.Min(bestYardstick, Time(yardstick, turns));
        }

        return best / bestYardstick;
    }

    /// <summary>How often a call is repeated for a time that a clock can tell; compiles it too.</summary>
    private static int Repeats(Func<double> call)
    {
        int repeats = 64;
        while (repeats < 1 << 20 && Time(call, repeats) * repeats < LeastNanoseconds)
        {
            repeats *= 2;
        }

        return repeats;
    }

    private static double Time(Func<double> call, int repeats)
    {
        long start = Stopwatch.GetTimestamp();
        double sum = 0;
        for (int i = 0; i < repeats; i++)
        {
            sum += call();
        }

        // The sum is looked at, so that the calls are made.
        return double.IsNaN(sum) ? double.NaN : Stopwatch.GetElapsedTime(start).TotalNanoseconds / repeats;
    }
}
