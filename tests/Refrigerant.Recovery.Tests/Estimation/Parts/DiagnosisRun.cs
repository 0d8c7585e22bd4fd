using System;
using System.Collections.Generic;
using System.Linq;
using Refrigerant.Recovery.Estimation;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>A job that goes as the reduced model has it, with the filters, and the diagnosis of it.</summary>
internal sealed class DiagnosisRun
{
    public static readonly Workbench Bench = new(Workbench.Typical with { Charge = 9, Volume = 0.03, Metal = 30_000, Outer = 80 });

    private static readonly JobCondition[] Faults =
        [JobCondition.ValveClosed, JobCondition.HoseBlocked, JobCondition.MachineUnderperforming, JobCondition.ScaleDisturbed, JobCondition.GaugeInconsistent, JobCondition.ForeignGas, JobCondition.GaugeAbsolute];

    private readonly Dictionary<JobCondition, double> _when = [];

    public DiagnosisRun()
    {
        Filter = new ChangePointFilter(Bench.Model, Bench.Prior);
        Diagnosis = new Diagnosis(Bench.Model, Bench.Prior, Filter, Bench.Told.Instruments());
    }

    /// <summary>The scale, of which events are told; weights come with the blocks.</summary>
    public ScaleTracker Scale { get; } = new(Bench.Job, Bench.Told.Instruments());

    public OwnTruth Truth { get; } = new(Bench);

    public ChangePointFilter Filter { get; }

    public Diagnosis Diagnosis { get; }

    public JobCondition[] Named => [.. _when.Keys.Order()];

    public double When(JobCondition condition) => _when[condition];

    public void Go(int seconds, Func<EstimatorBlock, EstimatorBlock>? spoil = null)
    {
        for (int i = 0; i < seconds; i++)
        {
            EstimatorBlock block = Truth.Next();
            Step(spoil is null ? block : spoil(block));
        }
    }

    public void Step(EstimatorBlock block)
    {
        Diagnosis.Before(ref block, UnusedReadings.None, Scale);
        Filter.Update(in block);
        Diagnosis.After(in block, !block.IsDrawing);
        foreach (JobCondition fault in Faults.Where(fault => Diagnosis.Stands(fault) && !_when.ContainsKey(fault)))
        {
            _when[fault] = block.Time;
        }
    }
}
