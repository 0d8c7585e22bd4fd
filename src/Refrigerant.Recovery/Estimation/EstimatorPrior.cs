using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What is known before the first reading: means and standard deviations of the states, how fast they wander, how far instruments err.</summary>
/// <remarks>
/// A tolerance ±w with all values between equally likely has the standard deviation w/√3 (JCGM 100:2008, 4.3.7); what the reduced model leaves
/// out is added to it, root of the squares. Figures without a source were chosen on simulated jobs of several structures (docs/questions/during-the-job.md).
/// </remarks>
internal sealed class EstimatorPrior
{
    /// <summary>Conductance to boiling liquid over that to vapor: common practice, no source.</summary>
    private const double DryFactor = 15;

    /// <summary>
    /// Wetted share a + (1 − a)·λ^n of the metal, and s in which metal evens out: between the engine's, whose share is the level λ and whose dry metal
    /// conducts nothing, and metal in one lump.
    /// </summary>
    private const double WetShare = 0.2;

    private const double WetExponent = 0.7;

    private const double MixingTime = 120;

    /// <summary>Pa: what the model leaves out of the pressure, as white noise of one-second blocks. Without it a better gauge makes the estimate worse.</summary>
    private const double GaugeFloor = 10_000;

    /// <summary>Standard deviation of ln of the conductance from metal to refrigerant, which nobody tells: where it was 0.9, a pool that boils sluggishly passed for a smaller charge.</summary>
    private const double InnerUnsure = 1.2;

    private const double TenMinutes = 600;

    private EstimatorPrior(ReducedParameters typical, double level, double atmosphere)
    {
        Typical = typical;
        Level = level;
        Atmosphere = atmosphere;
    }

    /// <summary>Means of the states.</summary>
    public double[] Mean { get; } = new double[StateIndex.Count];

    /// <summary>Standard deviations of the states.</summary>
    public double[] Sigma { get; } = new double[StateIndex.Count];

    /// <summary>Variance that each state gains in a second.</summary>
    public double[] NoiseRate { get; } = new double[StateIndex.Count];

    /// <summary>The parameters as told; those that are no states stay so, but for the liquid taken.</summary>
    public ReducedParameters Typical { get; private set; }

    /// <summary>Absolute pressure to be reached, Pa.</summary>
    public double Level { get; }

    /// <summary>Pa.</summary>
    public double Atmosphere { get; }

    /// <summary>Variance of the gauge's noise, Pa².</summary>
    public double GaugeNoise { get; private set; }

    /// <summary>Variance of what the model leaves out in a one-second block, Pa².</summary>
    public double ModelNoise { get; private set; } = GaugeFloor * GaugeFloor;

    /// <summary>Standard deviation of the slow error of the pressure that does not depend on it, Pa.</summary>
    public double SlowGauge { get; private set; } = 3000;

    /// <summary>The same as a share of the absolute pressure.</summary>
    public double SlowGaugeShare { get; private set; } = 0.01;

    /// <summary>Time constant of the slow error, s.</summary>
    public double SlowGaugeTime { get; } = 90;

    /// <summary>Variance of a reading of the scale, kg².</summary>
    public double ScaleNoise { get; private set; }

    /// <summary>Standard deviation of the scale's slow error, kg.</summary>
    public double ScaleDrift { get; private set; }

    /// <summary>Time constant of the scale's slow error, s.</summary>
    public double ScaleTime { get; } = TenMinutes;

    /// <summary>Whether the oil was told, or that there is none.</summary>
    public bool IsOilTold { get; private set; }

    /// <summary>What a job, its tolerances and the instruments tell.</summary>
    public static EstimatorPrior From(RecoveryJob job, SaturationTable table, Instruments instruments, MonitorOptions options, double level)
    {
        ReducedParameters told = ReducedParameters.FromJob(job, table);
        told.DryFactor = DryFactor;
        told.WetExponent = WetExponent;
        told.Mixing = 1 / MixingTime;
        var prior = new EstimatorPrior(told, level, job.Barometer.Pressure.Pascals);
        prior.Parameters(in told, options);
        prior.Oil(job.Appliance, in told, options);
        prior.Temperatures(job.Appliance, options);
        prior.Readings(instruments);
        prior.Wandering(instruments);
        return prior;
    }

    /// <summary>Books liquid that was taken, kg; less than none where it ran back.</summary>
    public void TakeLiquid(double mass)
    {
        if (mass != 0)
        {
            Typical = Typical with { LiquidTaken = Math.Max(0, Typical.LiquidTaken + mass) };
        }
    }

    private static double Root(double a, double b) => Math.Sqrt((a * a) + (b * b));

    private static double Rectangular(double halfWidth) => halfWidth / Math.Sqrt(3);

    private void Set(int index, double mean, double sigma)
    {
        Mean[index] = mean;
        Sigma[index] = sigma;
    }

    private void Parameters(in ReducedParameters told, MonitorOptions options)
    {
        InputTolerances known = options.Tolerances;
        Set(StateIndex.Charge, Math.Log(told.Charge), Math.Max(0.01, Rectangular(known.Charge.DecimalFractions)));
        Set(StateIndex.Volume, Math.Log(told.Volume), Root(Rectangular(known.InternalVolume.DecimalFractions), 0.05));
        Set(StateIndex.Outer, Math.Log(told.OuterConductance), Root(Rectangular(known.HeatExchange.DecimalFractions), 0.3));
        Set(StateIndex.Metal, Math.Log(told.MetalCapacity), Root(Rectangular(options.MetalTolerance.DecimalFractions), 0.3));
        Set(StateIndex.Inner, Math.Log(told.InnerConductance), InnerUnsure);
        Set(StateIndex.Displacement, Math.Log(told.Displacement), Root(Rectangular(known.Displacement.DecimalFractions), 0.08));
        Set(StateIndex.Hose, Math.Log(told.HoseResistance), Root(Rectangular(options.HoseTolerance.DecimalFractions), 0.2));
        Set(StateIndex.Clearance, Math.Log(Math.Max(0.01, told.Clearance)), 0.5);
        Set(StateIndex.WetShare, Math.Log(WetShare), 0.3);
        Set(StateIndex.Warming, 0.4, 0.3);
    }

    /// <summary>Told, the capacity is known within half of it and the oil holds a few times that; not told, some percent of the charge may hide.</summary>
    private void Oil(Appliance appliance, in ReducedParameters told, MonitorOptions options)
    {
        IsOilTold = options.IsOilFree || appliance.Oil is not null;
        double capacity = told.OilCapacity;
        if (!IsOilTold)
        {
            Set(StateIndex.OilCapacity, Math.Log(0.04 * told.Charge), 1.2);
            Set(StateIndex.Dissolved, Math.Log(0.05 * told.Charge), 1.1);
        }
        else
        {
            double least = 3e-6 * told.Charge;
            double held = options.IsOilFree ? least : Math.Max(least, capacity);
            Set(StateIndex.OilCapacity, Math.Log(held), 0.5);
            Set(StateIndex.Dissolved, Math.Log(Math.Min(0.3 * told.Charge, 5 * held)), 0.7);
        }

        Set(StateIndex.OilTime, Math.Log(told.OilTime), 0.8);
    }

    private void Temperatures(Appliance appliance, MonitorOptions options)
    {
        double sigma = Math.Max(1.5, Rectangular(options.Tolerances.Temperature.Kelvins));
        double start = appliance.Temperature.Kelvins;
        Set(StateIndex.Temperature, start, sigma);
        Set(StateIndex.MetalTemperature, start, sigma);
        Set(StateIndex.WetTemperature, start, sigma);
        Set(StateIndex.Condensing, appliance.SurroundingsKelvin + ReducedParameters.CondenserAboveAir, 6);
        Set(StateIndex.Delivered, 0, 1e-4);
    }

    private void Readings(Instruments instruments)
    {
        double limit = instruments.SuctionGauge.ErrorLimitPascals;
        double noise = 0.15 * limit;
        GaugeNoise = noise * noise;
        Set(StateIndex.GaugeBias, 0, Rectangular(limit));
        Set(StateIndex.GaugeDrift, 0, SlowGauge + (0.5e6 * SlowGaugeShare));
        double step = instruments.Scale.ResolutionKilograms;
        ScaleNoise = 4e-5 + (step * step);
        ScaleDrift = Math.Max(0.05, 2 * step);
        Set(StateIndex.ScaleOffset, 0, 0.6 * ScaleDrift);
    }

    private void Wandering(Instruments instruments)
    {
        double limit = instruments.SuctionGauge.ErrorLimitPascals;
        Wander(StateIndex.Outer, 0.15, TenMinutes);
        Wander(StateIndex.Metal, 0.10, TenMinutes);
        Wander(StateIndex.Inner, 0.15, TenMinutes);
        Wander(StateIndex.Displacement, 0.04, TenMinutes);
        Wander(StateIndex.Hose, 0.05, TenMinutes);
        Wander(StateIndex.Warming, 0.05, TenMinutes);
        Wander(StateIndex.OilCapacity, 0.05, TenMinutes);
        Wander(StateIndex.OilTime, 0.3, TenMinutes);
        Wander(StateIndex.Dissolved, 0.05, TenMinutes);
        Wander(StateIndex.Condensing, 4, TenMinutes);
        Wander(StateIndex.GaugeBias, 0.1 * limit, 3 * TenMinutes);
        Wander(StateIndex.Clearance, 1e-4, 1);
        Wander(StateIndex.WetShare, 1e-4, 1);
        Wander(StateIndex.Delivered, 1e-4, 1);
        Wander(StateIndex.Temperature, 0.03, 1);
        Wander(StateIndex.MetalTemperature, 0.02, 1);
        Wander(StateIndex.WetTemperature, 0.02, 1);
        NoiseRate[StateIndex.ScaleOffset] = 2 * ScaleDrift * ScaleDrift / ScaleTime;
    }

    /// <summary>A random walk of the given standard deviation in the given time.</summary>
    private void Wander(int index, double sigma, double seconds) => NoiseRate[index] = sigma * sigma / seconds;
}
