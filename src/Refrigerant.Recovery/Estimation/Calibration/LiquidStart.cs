using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>Where pushed liquid ends in a log: the scale gains faster than the machine can draw vapor.</summary>
internal static class LiquidStart
{
    /// <summary>Times what the machine draws of vapor at the start.</summary>
    private const double Faster = 3;

    /// <summary>s over which the gain is taken.</summary>
    private const double Window = 15;

    /// <summary>The first reading after liquid was pushed; zero where none was.</summary>
    public static int End(RecoveryJob job, in ReducedParameters typical, SaturationTable table, JobLog log, ScaleCourse scale)
    {
        table.At(job.Appliance.Temperature.Kelvins, out SaturationValues at);
        double limit = Faster * typical.Displacement * at.VaporDensity;
        int end = 0;
        int from = 0;
        for (int i = 1; i < log.Readings.Count; i++)
        {
            if (double.IsNaN(scale.Delivered[i]))
            {
                continue;
            }

            while (from < i - 1 && (double.IsNaN(scale.Delivered[from]) || log.Readings[i].Time.Seconds - log.Readings[from + 1].Time.Seconds >= Window))
            {
                from++;
            }

            double seconds = log.Readings[i].Time.Seconds - log.Readings[from].Time.Seconds;
            if (seconds >= Window && scale.Delivered[i] - scale.Delivered[from] > limit * seconds)
            {
                end = i;
            }
        }

        return end;
    }
}
