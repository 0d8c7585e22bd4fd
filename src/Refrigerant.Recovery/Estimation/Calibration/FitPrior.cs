using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Estimation.Calibration;

/// <summary>What is known before the log: mean and standard deviation of everything that is fitted.</summary>
/// <remarks>
/// A tolerance ±w with all values between equally likely has the standard deviation w/√3 (JCGM 100:2008, 4.3.7); what the reduced model leaves out
/// is added to it, root of the squares. Figures without a source were chosen on simulated jobs (docs/questions/log-a-job.md).
/// </remarks>
internal sealed class FitPrior
{
    /// <summary>K that the condensing temperature lies above the air, and how well that is known: common practice, no source.</summary>
    private const double CondenserAboveAir = 8, CondenserSigma = 6;

    /// <summary>How well the temperature is known after liquid was pushed, K: common practice, no source.</summary>
    private const double LateSigma = 4;

    /// <summary>How far gas warms towards the air in dry tubes, hoses and machine together, at half of what the machine sweeps at the start: common practice, no source.</summary>
    private const double WarmingMean = 0.6, WarmingSigma = 0.25;

    /// <summary>Time that refrigerant is on its way to the scale, s: common practice, no source.</summary>
    private const double LagMean = 5, LagSigma = 5;

    /// <summary>Conductance from metal to refrigerant over that from the surroundings where it was not told, and how well the logarithm is known: common practice, no source.</summary>
    private const double InnerOverOuter = 14, InnerSigma = 0.9;

    /// <summary>How far vapor of a blend takes its own composition with it: liquid that is not stirred is poorer in what boils off at its surface than below: common practice, no source.</summary>
    private const double DriftMean = 0.85, DriftSigma = 0.35;

    /// <summary>Gauge bias as a share of the error limit of the gauge's class.</summary>
    private const double BiasShare = 0.45;

    private FitPrior(int logs)
    {
        Mean = new double[FitIndex.Set(logs)];
        Sigma = new double[FitIndex.Set(logs)];
    }

    /// <summary>Means.</summary>
    public double[] Mean { get; }

    /// <summary>Standard deviations.</summary>
    public double[] Sigma { get; }

    /// <summary>What jobs and options tell.</summary>
    /// <param name="jobs">The jobs; the machine is that of the first.</param>
    /// <param name="typical">The parameters of the reduced model for each job as told.</param>
    /// <param name="first">The first reading taken of each log: where it is not the first one, the temperature has moved since.</param>
    /// <param name="options">Tolerances and instruments.</param>
    public static FitPrior Of(LoggedJob[] jobs, ReducedParameters[] typical, int[] first, CalibrationOptions options)
    {
        InputTolerances known = options.Tolerances;
        var prior = new FitPrior(jobs.Length);
        prior.Set(FitIndex.Displacement, Math.Log(typical[0].Displacement), Root(Rectangular(known.Displacement.DecimalFractions), 0.1));
        prior.Set(FitIndex.Hose, 0, Root(Rectangular(options.HoseTolerance.DecimalFractions), 0.3));
        prior.Set(FitIndex.Clearance, Math.Log(Math.Max(0.01, typical[0].Clearance)), 0.5);
        prior.Set(FitIndex.Warming, WarmingMean, WarmingSigma);
        prior.Set(FitIndex.Lag, LagMean, LagSigma);
        prior.Set(FitIndex.Drift, DriftMean, DriftSigma);
        for (int i = 0; i < jobs.Length; i++)
        {
            prior.AddLog(FitIndex.Set(i), jobs[i].Job, in typical[i], options, first[i] > 0 ? LateSigma : 0);
        }

        return prior;
    }

    private static double Root(double a, double b) => Math.Sqrt((a * a) + (b * b));

    private static double Rectangular(double halfWidth) => halfWidth / Math.Sqrt(3);

    private void Set(int index, double mean, double sigma)
    {
        Mean[index] = mean;
        Sigma[index] = sigma;
    }

    private void AddLog(int set, RecoveryJob job, in ReducedParameters told, CalibrationOptions options, double late)
    {
        InputTolerances known = options.Tolerances;
        Appliance appliance = job.Appliance;
        Set(set + FitIndex.Charge, Math.Log(told.Charge), Math.Max(0.01, Rectangular(known.Charge.DecimalFractions)));
        Set(set + FitIndex.Volume, Math.Log(told.Volume), Root(Rectangular(known.InternalVolume.DecimalFractions), 0.05));
        Set(set + FitIndex.Outer, Math.Log(told.OuterConductance), Root(Rectangular(known.HeatExchange.DecimalFractions), 0.3));
        Set(set + FitIndex.Metal, Math.Log(told.MetalCapacity), Root(Rectangular(options.MetalTolerance.DecimalFractions), 0.3));
        Set(set + FitIndex.Inner, Math.Log(appliance.MetalResistance is null ? InnerOverOuter * told.OuterConductance : told.InnerConductance), InnerSigma);
        Set(set + FitIndex.WetShare, 0.4, 0.25);
        Set(set + FitIndex.Temperature, appliance.Temperature.Kelvins, Root(Math.Max(1, Rectangular(known.Temperature.Kelvins)), late));
        Set(set + FitIndex.Condensing, appliance.SurroundingsKelvin + CondenserAboveAir, CondenserSigma);
        Set(set + FitIndex.GaugeBias, 0, BiasShare * options.Instruments.SuctionGauge.ErrorLimitPascals);
        Set(set + FitIndex.ScaleOffset, 0, Math.Max(0.05, 2 * options.Instruments.Scale.ResolutionKilograms));
        Set(set + FitIndex.OilTime, Math.Log(told.OilTime), 0.8);
        if (appliance.Oil is null)
        {
            // Not told: some percent of the charge may hide in oil all the same.
            Set(set + FitIndex.OilCapacity, Math.Log(0.01 * told.Charge), 1);
            Set(set + FitIndex.Dissolved, Math.Log(0.02 * told.Charge), 1);
        }
        else
        {
            double held = Math.Max(1e-5 * told.Charge, told.OilCapacity);
            Set(set + FitIndex.OilCapacity, Math.Log(held), 0.5);
            Set(set + FitIndex.Dissolved, Math.Log(Math.Min(0.25 * told.Charge, 3 * held)), 0.7);
        }
    }
}
