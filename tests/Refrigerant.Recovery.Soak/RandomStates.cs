using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Soak;

/// <summary>
/// Random states of every fluid through every entry of the port, in and around its range. Allowed outcomes: finite numbers, or
/// <see cref="PropertyRangeException"/>. A <see cref="ConvergenceException"/> is documented, but counted and listed.
/// </summary>
internal static class RandomStates
{
    private const int Batch = 1000;

    public static int Run(long count)
    {
        Fluid[] fluids = [.. Fluid.All];
        long done = 0;
        long ranged = 0;
        var failures = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var stalls = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var watch = Stopwatch.StartNew();
        Parallel.For(0, (count + Batch - 1) / Batch, batch =>
        {
            var random = new Random((int)(batch * 7919 % int.MaxValue));
            Fluid fluid = fluids[batch % fluids.Length];
            long outside = 0;
            for (int i = 0; i < Batch; i++)
            {
                (string what, Func<bool> evaluate) = Pick(fluid.Model, random);
                try
                {
                    if (!evaluate())
                    {
                        failures.AddOrUpdate($"{what}: not finite", 1, (_, n) => n + 1);
                    }
                }
                catch (PropertyRangeException)
                {
                    outside++;
                }
                catch (ConvergenceException e)
                {
                    stalls.AddOrUpdate($"{what}: {e.Message}", 1, (_, n) => n + 1);
                }
#pragma warning disable CA1031 // Every other exception is what this run looks for.
                catch (Exception e)
#pragma warning restore CA1031
                {
                    failures.AddOrUpdate($"{what}: {e.GetType().Name} {e.Message}", 1, (_, n) => n + 1);
                }
            }

            Interlocked.Add(ref done, Batch);
            Interlocked.Add(ref ranged, outside);
        });
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{done:N0} evaluations of {fluids.Length} fluids in {watch.Elapsed.TotalSeconds:F0} s; {ranged:N0} outside the range and said so; {stalls.Values.Sum()} did not converge; {failures.Values.Sum()} failures"));
        List(stalls);
        List(failures);
        return failures.IsEmpty && stalls.IsEmpty ? 0 : 1;
    }

    private static void List(IEnumerable<KeyValuePair<string, int>> entries)
    {
        foreach (KeyValuePair<string, int> entry in entries.OrderByDescending(e => e.Value).Take(40))
        {
            Console.WriteLine($"  {entry.Value} x {entry.Key}");
        }
    }

    private static (string What, Func<bool> Evaluate) Pick(PropertyModel model, Random random)
    {
        PropertyRange range = model.Range;
        double t = range.MinimumTemperature + ((range.MaximumTemperature - range.MinimumTemperature) * ((random.NextDouble() * 1.02) - 0.01));
        double near = range.MinimumTemperature + ((range.MaximumSaturationTemperature - range.MinimumTemperature) * ((random.NextDouble() * 1.02) - 0.01));
        double p = Math.Exp((random.NextDouble() * Math.Log(range.MaximumPressure * 1.1 / 10)) + Math.Log(10));
        double rho = model.CriticalDensity * Math.Exp((random.NextDouble() * 12) - 10.7);
        double u = (random.NextDouble() * 8e5) - 1e5;
        double s = (random.NextDouble() * 3000) + 200;
        string at = string.Create(CultureInfo.InvariantCulture, $"{model.Designation} T={t:R} Ts={near:R} p={p:R} rho={rho:R} u={u:R} s={s:R}");
        return random.Next(9) switch
        {
            0 => ($"SaturationAtTemperature {at}", () => Finite(model.SaturationAtTemperature(near))),
            1 => ($"SaturationAtPressure {at}", () => Finite(model.SaturationAtPressure(p))),
            2 => ($"StateAt {at}", () => Finite(model.StateAt(t, p))),
            3 => ($"StateAt below critical {at}", () => Finite(model.StateAt(near, p))),
            4 => ($"VesselAtTemperature {at}", () => Finite(model.VesselAtTemperature(t, rho).Bulk)),
            5 => ($"VesselAtEnergy {at}", () => Finite(model.VesselAtEnergy(rho, u).Bulk)),
            6 => ($"StateAtEnthalpy {at}", () => Finite(model.StateAtEnthalpy(p, u))),
            7 => ($"StateAtEntropy {at}", () => Finite(model.StateAtEntropy(p, s))),
            _ => ($"ViscosityAtSaturation {at}", () => Finite(model.ViscosityAtSaturation(near))),
        };
    }

    private static bool Finite(in SaturationPoint point) => Finite(point.Bubble) && Finite(point.Dew);

    private static bool Finite(in StatePoint s) =>
        double.IsFinite(s.Temperature) && double.IsFinite(s.Pressure) && double.IsFinite(s.Density) && s.Density > 0 && double.IsFinite(s.Enthalpy)
        && double.IsFinite(s.Entropy) && s.VaporFraction is >= 0 and <= 1 && s.Phase != Phase.Undefined;

    private static bool Finite(in SaturationViscosity v) => double.IsFinite(v.Liquid) && v.Liquid > 0 && double.IsFinite(v.Vapor) && v.Vapor > 0;
}
