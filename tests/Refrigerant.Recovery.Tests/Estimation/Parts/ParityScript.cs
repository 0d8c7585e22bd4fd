using System;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Tests.Estimation.Truths;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>
/// Readings set down beside what ParityRelations foresees. The pool keeps its temperature and neither hose nor clearance takes anything, so that foreseen are one pressure, p″(T), and one flow, S·ρ″(T), for ever. The first
/// prediction begins at 30 s; from 46 s on the one that is compared is 15 to 30 s old.
/// </summary>
internal sealed class ParityScript
{
    /// <summary>Time of the first block that is looked at, s.</summary>
    public const int First = 30;

    private readonly ReducedOutput _foreseen;

    public ParityScript(Told? told = null)
    {
        Bench = new Workbench(told);
        Filter = new ChangePointFilter(Bench.Model, Bench.Prior);
        double[] x = Filter.Wet.X;
        x[StateIndex.Inner] = Math.Log(1e7);
        x[StateIndex.Metal] = Math.Log(1e9);
        x[StateIndex.Hose] = Math.Log(1);
        x[StateIndex.Clearance] = Math.Log(1e-9);
        x[StateIndex.Warming] = 0;
        SigmaPoint mean = Filter.Best.Mean();
        Bench.Model.Evaluate(in mean.State, in mean.Parameters, new ReducedInputs(Bench.Told.Temperature, true, AssumedPhase.LiquidPresent), out _foreseen);
        Relations = new ParityRelations(Bench.Model, Bench.Prior, Filter);
        Rate = Flow;
    }

    public Workbench Bench { get; }

    public ChangePointFilter Filter { get; }

    public ParityRelations Relations { get; }

    public double Flow => _foreseen.Flow;

    /// <summary>The same in the appliance and at the machine's inlet.</summary>
    public double Pressure => _foreseen.Pressure;

    /// <summary>Standard deviation of the gauge's level, as documented: two and a half of noise and what the model leaves out, as a share of the pressure, and 2 %.</summary>
    public double LevelSigma => (2.5 * Math.Sqrt(Bench.Prior.GaugeNoise + Bench.Prior.ModelNoise) / Pressure) + 0.02;

    public double Time { get; private set; }

    /// <summary>What the gauge shows, as a share of the pressure that is foreseen, and how that changes in a second.</summary>
    public double Shown { get; set; } = 1;

    public double Slope { get; set; }

    /// <summary>What the scale gains in a second, kg, and how that changes in a second.</summary>
    public double Rate { get; set; }

    public double RateSlope { get; set; }

    public double Delivered { get; set; }

    /// <summary>kg that a new prediction takes the scale to show beyond what it does.</summary>
    public double Beyond { get; set; }

    /// <summary>A block; what it says.</summary>
    public ParityVerdict Next(double duration = 1, Func<EstimatorBlock, EstimatorBlock>? spoil = null)
    {
        Time += duration;
        Rate += RateSlope * duration;
        Delivered += Rate * duration;
        Shown += Slope * duration;
        Filter.Wet.X[StateIndex.Delivered] = Delivered;
        Filter.Wet.X[StateIndex.ScaleOffset] = Beyond;
        EstimatorBlock block = Workbench.Block(Time, duration, gauge: (Shown * Pressure) - Bench.Prior.Atmosphere, delivered: Delivered, air: Bench.Told.Temperature);
        block = spoil is null ? block : spoil(block);
        return Relations.Update(in block);
    }

    /// <summary>Blocks until one says something, or to a time; agrees where none does.</summary>
    public ParityVerdict Until(double time)
    {
        ParityVerdict verdict = ParityVerdict.Agrees;
        while (verdict == ParityVerdict.Agrees && Time < time)
        {
            verdict = Next();
        }

        return verdict;
    }
}
