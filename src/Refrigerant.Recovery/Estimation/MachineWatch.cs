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

    /// <summary>Standard deviation of a scale's reading, kg, of the machine's model over some minutes, and of the displacement told.</summary>
    private const double ScaleNoise = 0.01;

    private const double ModelNoise = 0.06;
    private const double Displacement = 0.13;

    /// <summary>Share of the former ratio that a weak machine has at most, and standard deviations that it lies below it.</summary>
    private const double Weak = 0.78;

    /// <summary>How long windows before count, as a number of them: what a machine does changes slowly with the pressure.</summary>
    private const double Memory = 60;

    private readonly EstimatorPrior _prior;
    private readonly ToldMachine _machine;
    private readonly float[] _drawn = new float[Kept];
    private readonly float[] _gained = new float[Kept];
    private int _count;
    private double _flow;
    private double _open;
    private double _since = double.NaN;
    private double _from;
    private double _oldRatio = 1;
    private double _oldPrecision = 1 / (Displacement * Displacement);

    public MachineWatch(ToldMachine machine, EstimatorPrior prior)
    {
        _machine = machine;
        _prior = prior;
    }

    /// <summary>Standard deviations by which the machine draws less than before, and than <see cref="Weak"/> of it; zero where it does not.</summary>
    public double Weakness { get; private set; }

    /// <summary>Begins a new window: after a rest, a step of the scale, liquid. What was learned of the machine stays.</summary>
    public void Restart()
    {
        while (_count > 0)
        {
            Learn();
        }

        _since = double.NaN;
        Weakness = 0;
    }

    /// <summary>Takes in a block as the filters have it.</summary>
    public void Update(in EstimatorBlock block, double least)
    {
        if (!block.IsDrawing || block.LiquidMoved > 0 || block.IsByItself || block.Duration > Window)
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

        _flow = isRead ? _machine.Flow(suction, block.AirTemperature) : _flow;
        _open += _flow * block.Duration;
        if (!Require.IsFinite(block.Delivered))
        {
            return;
        }

        if (double.IsNaN(_since))
        {
            _since = block.Time;
            _from = block.Delivered;
            _open = 0;
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
        _count++;
        _since = block.Time;
        _from = block.Delivered;
        _open = 0;
        Compare();
    }

    /// <summary>The oldest window becomes part of what was before.</summary>
    private void Learn()
    {
        double drawn = _drawn[0];
        double noise = (2 * ScaleNoise * ScaleNoise) + (2 * _prior.ScaleDrift * _prior.ScaleDrift * Window / _prior.ScaleTime);
        double precision = drawn * drawn / noise;
        _oldPrecision += precision;
        _oldRatio += precision / _oldPrecision * (Math.Max(0, Math.Min(2, _gained[0] / Math.Max(1e-9, drawn))) - _oldRatio);
        _oldPrecision = Math.Min(_oldPrecision, 1 / ((ModelNoise * ModelNoise) + (noise / (Memory * Math.Max(1e-9, drawn * drawn)))));
        _count--;
        Array.Copy(_drawn, 1, _drawn, 0, _count);
        Array.Copy(_gained, 1, _gained, 0, _count);
    }

    /// <summary>The change is where it shows best.</summary>
    private void Compare()
    {
        double most = 0;
        double drawn = 0;
        double gained = 0;
        for (int i = _count - 1; i >= 0; i--)
        {
            drawn += _drawn[i];
            gained += _gained[i];
            int after = _count - i;
            if (after < LeastAfter || !(drawn > 0))
            {
                continue;
            }

            // What lies between what was learned and the change counts with it.
            double before = _oldRatio * _oldPrecision;
            double precision = _oldPrecision;
            double drawnBefore = 0;
            double gainedBefore = 0;
            for (int k = 0; k < i; k++)
            {
                drawnBefore += _drawn[k];
                gainedBefore += _gained[k];
            }

            if (drawnBefore > 0)
            {
                double own = drawnBefore * drawnBefore / Variance(i);
                before += own * gainedBefore / drawnBefore;
                precision += own;
            }

            double former = before / precision;
            double ratio = gained / drawn;
            double variance = (Variance(after) / (drawn * drawn)) + (1 / precision) + (ModelNoise * ModelNoise * former * former);
            double sigmas = ratio < Weak * former ? (former - ratio) / Math.Sqrt(variance) : 0;
            most = Math.Max(most, sigmas);
        }

        Weakness = most;
    }

    /// <summary>Variance of what the scale gains in so many windows, kg².</summary>
    private double Variance(int windows) => (2 * ScaleNoise * ScaleNoise) + (2 * _prior.ScaleDrift * _prior.ScaleDrift * Math.Min(1, windows * Window / _prior.ScaleTime));
}
