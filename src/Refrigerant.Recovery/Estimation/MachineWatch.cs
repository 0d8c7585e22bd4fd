using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// A machine that draws less than before: what the scale gains over what the machine as told draws at the pressure at its inlet, in windows of ten seconds, the last ones against those
/// before. Neither liquid nor hose comes into it. Fixed memory.
/// </summary>
internal sealed class MachineWatch
{
    /// <summary>s of a window, and windows of which the change may be as old as that.</summary>
    private const double Window = 10;

    private const int Kept = 24;

    /// <summary>Windows after a change at least.</summary>
    private const int LeastAfter = 5;

    /// <summary>Standard deviation of a scale's reading, kg, and of how the ratio of what is gained to what is drawn changes over some minutes.</summary>
    private const double ScaleNoise = 0.01;

    private const double ModelNoise = 0.06;

    /// <summary>The same for each share of the pressure that is lost meanwhile: vapor without liquid is warmer than it would be saturated, re-expansion takes more.</summary>
    private const double ModelNoiseFalling = 0.2;

    /// <summary>Share of the former ratio that a weak machine has at most, and standard deviations that it lies below it.</summary>
    private const double Weak = 0.78;

    /// <summary>How long windows before count, as a number of them: what a machine does changes slowly with the pressure.</summary>
    private const double Memory = 60;

    /// <summary>Standard deviations of a window's reading by which what the scale gained in it may be off before it is cut.</summary>
    private const double Outlier = 3;

    /// <summary>Share of the pressure, and standard deviations of the mean of a window's readings, by which it has risen.</summary>
    private const double LeastRise = 0.01;

    private const double RiseSigmas = 3;

    private readonly EstimatorPrior _prior;
    private readonly ToldMachine _machine;
    private readonly float[] _drawn = new float[Kept];
    private readonly float[] _gained = new float[Kept];
    private readonly float[] _pressure = new float[Kept];
    private int _count;
    private double _flow;
    private double _open;
    private double _since = double.NaN;
    private double _from;
    private double _suction;
    private int _read;
    private double _mean;
    private double _oldDrawn;
    private double _oldGained;
    private double _oldPressure;
    private double _oldTime;
    private double _oldNoise;

    public MachineWatch(ToldMachine machine, EstimatorPrior prior)
    {
        _machine = machine;
        _prior = prior;
    }

    /// <summary>Standard deviations by which the machine draws less than before, and than <see cref="Weak"/> of it; zero where it does not.</summary>
    public double Weakness { get; private set; }

    /// <summary>The same where the pressure at the inlet has risen since then, as it does where less is drawn.</summary>
    public double WeaknessRisen { get; private set; }

    /// <summary>Begins a new window: after a rest, a step of the scale, liquid. What was learned of the machine stays.</summary>
    public void Restart()
    {
        while (_count > 0)
        {
            Learn();
        }

        _since = double.NaN;
        Weakness = WeaknessRisen = 0;
    }

    /// <summary>Takes in a block as the filters have it.</summary>
    public void Update(in EstimatorBlock block, double least)
    {
        if (!block.IsDrawing || block.LiquidMoved != 0 || block.IsByItself || block.Duration > Window)
        {
            Restart();
            return;
        }

        bool isRead = Require.IsFinite(block.Gauge);
        double suction = block.Gauge + _prior.Atmosphere;
        if (isRead && suction < least)
        {
            Restart();
            return;
        }

        if (isRead)
        {
            _flow = _machine.Flow(suction, block.AirTemperature);
            _suction += suction;
            _read++;
        }

        _open += _flow * block.Duration;
        if (!Require.IsFinite(block.Delivered))
        {
            return;
        }

        if (double.IsNaN(_since))
        {
            _oldNoise += 2 * ScaleNoise * ScaleNoise;
            Begin(in block);
            return;
        }

        if (block.Time - _since < Window - 0.01)
        {
            return;
        }

        if (_count == Kept)
        {
            Learn();
        }

        _drawn[_count] = (float)_open;
        _gained[_count] = (float)(block.Delivered - _from);
        _mean = _read > 0 ? _suction / _read : _mean;
        _pressure[_count] = (float)_mean;
        _count++;
        Begin(in block);
        Compare();
    }

    private void Begin(in EstimatorBlock block)
    {
        _since = block.Time;
        _from = block.Delivered;
        _open = _suction = 0;
        _read = 0;
    }

    /// <summary>The oldest window becomes part of what was before. What a reading is off goes into one window and out of the next, so that only the first and the last of them count.</summary>
    private void Learn()
    {
        const double Kept = 1 - (1 / Memory);
        double off = Outlier * Math.Sqrt(Variance(1));
        _oldDrawn = (Kept * _oldDrawn) + _drawn[0];
        _oldGained = (Kept * _oldGained) + Math.Max(-off, Math.Min((2 * _drawn[0]) + off, _gained[0]));
        _oldPressure = (Kept * _oldPressure) + (_drawn[0] * _pressure[0]);
        _oldTime = (Kept * _oldTime) + 1;
        _oldNoise *= Kept * Kept;
        _count--;
        Array.Copy(_drawn, 1, _drawn, 0, _count);
        Array.Copy(_gained, 1, _gained, 0, _count);
        Array.Copy(_pressure, 1, _pressure, 0, _count);
    }

    /// <summary>The change is where it shows best.</summary>
    private void Compare()
    {
        Weakness = WeaknessRisen = 0;
        double drawn = 0;
        double gained = 0;
        double pressure = 0;
        for (int i = _count - 1; i >= 0; i--)
        {
            drawn += _drawn[i];
            gained += _gained[i];
            pressure += _pressure[i];
            int after = _count - i;
            if (after < LeastAfter || !(drawn > 0))
            {
                continue;
            }

            // What lies between what was learned and the change counts with it.
            double drawnBefore = _oldDrawn;
            double gainedBefore = _oldGained;
            double pressureBefore = _oldPressure;
            for (int k = 0; k < i; k++)
            {
                drawnBefore += _drawn[k];
                gainedBefore += _gained[k];
                pressureBefore += _drawn[k] * _pressure[k];
            }

            double mean = pressure / after;
            double told = Told(mean);
            double precision = 1 / told;
            double former = precision;
            if (drawnBefore > 0)
            {
                double falling = ModelNoiseFalling * Math.Max(0, 1 - (mean * drawnBefore / pressureBefore));
                double own = 1 / ((ModelNoise * ModelNoise) + (falling * falling) + ((_oldNoise + Variance(_oldTime + i)) / (drawnBefore * drawnBefore)));
                former += own * gainedBefore / drawnBefore;
                precision += own;
            }

            former /= precision;
            double ratio = gained / drawn;
            double variance = (Variance(after) / (drawn * drawn)) + (1 / precision);
            double sigmas = ratio < Weak * former ? (former - ratio) / Math.Sqrt(variance) : 0;
            Weakness = Math.Max(Weakness, sigmas);
            if (i > 0 && mean > _pressure[i - 1] + Rise(_pressure[i - 1]))
            {
                WeaknessRisen = Math.Max(WeaknessRisen, sigmas);
            }
        }
    }

    /// <summary>By how much the mean pressure of later windows must lie above that of the window before, Pa.</summary>
    private double Rise(double before) => Math.Max(LeastRise * before, RiseSigmas * Math.Sqrt(_prior.GaugeNoise / Window));

    /// <summary>Variance of what the machine draws over what it draws as told: its displacement, and how much of it re-expansion takes.</summary>
    private double Told(double suction)
    {
        ReducedParameters told = _prior.Typical;
        double efficiency = ReducedModel.Efficiency(suction, in told);
        double lost = _prior.Sigma[StateIndex.Clearance] * (1 - efficiency) / efficiency;
        return (_prior.Sigma[StateIndex.Displacement] * _prior.Sigma[StateIndex.Displacement]) + (lost * lost);
    }

    /// <summary>Variance of what the scale gains in so many windows, kg².</summary>
    private double Variance(double windows) => (2 * ScaleNoise * ScaleNoise) + (2 * _prior.ScaleDrift * _prior.ScaleDrift * Math.Min(1, windows * Window / _prior.ScaleTime));
}
