using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>What the scale tells of the mass that has left the appliance, jumps that no flow explains taken out.</summary>
/// <remarks>
/// A jump is a change from one weight to the next that stands out from those around it, both neighbours included: a hose that is moved, a cylinder that is changed, a
/// tare key that is pressed. Over a jump the rate before it goes on where the machine runs.
/// </remarks>
internal sealed class ScaleCourse
{
    /// <summary>kg: less than this is noise.</summary>
    private const double LeastJump = 0.12;

    /// <summary>How many times the usual rate around it a jump must be.</summary>
    private const double Outstanding = 6;

    /// <summary>Changes to either side that tell the usual rate.</summary>
    private const int Around = 6;

    /// <summary>Fewer say nothing about what is usual.</summary>
    private const int FewestRates = 5;

    /// <summary>s in which an empty cylinder fills with vapor by itself.</summary>
    private const double Blows = 60;

    private ScaleCourse(double[] delivered, IReadOnlyList<Jump> jumps)
    {
        Delivered = delivered;
        Jumps = jumps;
    }

    /// <summary>Mass gained on the scale since the first weight, one a reading; not a number where none was read. kg.</summary>
    public double[] Delivered { get; }

    /// <summary>The jumps in order of time.</summary>
    public IReadOnlyList<Jump> Jumps { get; }

    /// <summary>Reads the weights of a log.</summary>
    /// <param name="log">The log.</param>
    /// <param name="job">Its job, whose first cylinder is on the scale until the log names one.</param>
    public static ScaleCourse Of(JobLog log, RecoveryJob job)
    {
        string? firstLabel = job.Cylinders.Count > 0 ? job.Cylinders[0].Label : null;
        IReadOnlyList<JobReading> readings = log.Readings;
        var weighed = new List<int>();
        for (int i = 0; i < readings.Count; i++)
        {
            if (readings[i].GrossWeight is not null)
            {
                weighed.Add(i);
            }
        }

        var delivered = new double[readings.Count];
        for (int i = 0; i < delivered.Length; i++)
        {
            delivered[i] = double.NaN;
        }

        var jumps = new List<Jump>();
        if (weighed.Count == 0)
        {
            return new ScaleCourse(delivered, jumps);
        }

        var changes = new double[weighed.Count];
        var rates = new double[weighed.Count];
        for (int k = 1; k < weighed.Count; k++)
        {
            JobReading from = readings[weighed[k - 1]];
            JobReading to = readings[weighed[k]];
            changes[k] = to.GrossWeight!.Value.Kilograms - from.GrossWeight!.Value.Kilograms;
            rates[k] = changes[k] / (to.Time.Seconds - from.Time.Seconds);
        }

        double total = 0;
        double room = Room(job, readings[weighed[0]].Cylinder ?? firstLabel);
        double since = readings[weighed[0]].Time.Seconds;
        delivered[weighed[0]] = 0;
        for (int k = 1; k < weighed.Count; k++)
        {
            JobReading to = readings[weighed[k]];
            JobReading from = readings[weighed[k - 1]];
            double seconds = to.Time.Seconds - from.Time.Seconds;
            double usual = Usual(rates, k);
            bool swapped = Changed(readings, weighed[k - 1], weighed[k], firstLabel);
            bool blows = !swapped && changes[k] > 0 && changes[k] <= room && from.Time.Seconds - since < Blows;
            room -= changes[k];
            if (swapped)
            {
                room = Room(job, to.Cylinder);
                since = to.Time.Seconds;
            }

            if (swapped || (!blows && StandsOut(rates, k) && Math.Abs(changes[k] - (usual * seconds)) > LeastJump + (Outstanding * Math.Abs(usual) * seconds)))
            {
                jumps.Add(new Jump(to.Time.Seconds, changes[k], swapped));
                total += to.MachineRunning && to.ValveOpen ? Math.Max(0, usual) * seconds : 0;
            }
            else
            {
                total += changes[k];
            }

            delivered[weighed[k]] = total;
        }

        return new ScaleCourse(delivered, jumps);
    }

    /// <summary>Vapor that comes into a cylinder by itself, kg: what it holds at the appliance's pressure where it is told to be empty.</summary>
    public static double Room(RecoveryJob job, RecoveryCylinder? cylinder) =>
        cylinder is { Content.Kilograms: 0 } && job.Appliance.Fluid.Model.TrySaturationAtTemperature(job.Appliance.Temperature.Kelvins, out SaturationPoint at)
            ? cylinder.InternalVolume.CubicMeters * at.Dew.Density : 0;

    private static double Room(RecoveryJob job, string? label) => Room(job, job.Cylinders.FirstOrDefault(each => each.Label == label));

    /// <summary>Whether a rate is far above those before and after it: where pushed liquid ends, one of them is as high.</summary>
    private static bool StandsOut(double[] rates, int at) =>
        rates.Length > FewestRates
        && Math.Abs(rates[at]) > 2 * Math.Max(at > 1 ? Math.Abs(rates[at - 1]) : 0, at + 1 < rates.Length ? Math.Abs(rates[at + 1]) : 0);

    /// <summary>The median of the rates around one, itself left out, kg/s.</summary>
    private static double Usual(double[] rates, int at)
    {
        var around = new List<double>(2 * Around);
        for (int k = Math.Max(1, at - Around); k <= Math.Min(rates.Length - 1, at + Around); k++)
        {
            if (k != at)
            {
                around.Add(rates[k]);
            }
        }

        around.Sort();
        return around.Count == 0 ? 0 : around[around.Count / 2];
    }

    private static bool Changed(IReadOnlyList<JobReading> readings, int from, int to, string? firstLabel)
    {
        for (int i = from + 1; i <= to; i++)
        {
            if (readings[i].Cylinder is string label && (Before(readings, i) ?? firstLabel) is string before && label != before)
            {
                return true;
            }
        }

        return false;
    }

    private static string? Before(IReadOnlyList<JobReading> readings, int at)
    {
        for (int i = at - 1; i >= 0; i--)
        {
            if (readings[i].Cylinder is string label)
            {
                return label;
            }
        }

        return null;
    }

    /// <summary>A change of the weight that no flow explains.</summary>
    internal readonly struct Jump(double time, double kilograms, bool isSwap)
    {
        /// <summary>When it was read, s.</summary>
        public double Time { get; } = time;

        /// <summary>By how much, kg.</summary>
        public double Kilograms { get; } = kilograms;

        /// <summary>Whether the log names another cylinder from there on.</summary>
        public bool IsSwap { get; } = isSwap;
    }
}
