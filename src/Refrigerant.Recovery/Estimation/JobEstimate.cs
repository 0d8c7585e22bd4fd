using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Residuals;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What is known of a job while it runs. Ranges hold nine times out of ten (docs/questions/during-the-job.md). Immutable.</summary>
public sealed record JobEstimate
{
    internal JobEstimate(in RawEstimate raw, IReadOnlyList<JobCondition> conditions, IReadOnlyList<Finding> findings)
    {
        Time = new Duration(raw.Time, DurationUnit.Second);
        Remaining = MassOf(raw.Remaining);
        TotalCharge = MassOf(raw.TotalCharge);
        TimeToLevel = raw.HasTimeToLevel ? new DurationRange(raw.TimeToLevel.Low, raw.TimeToLevel.Best, raw.TimeToLevel.High) : null;
        LevelReachedProbability = RatioOf(raw.LevelReachedProbability);
        FinalGrossWeight = MassOf(raw.FinalGrossWeight);
        CylinderLimitFirst = RatioOf(raw.CylinderLimitFirst);
        VaporOnly = RatioOf(raw.VaporOnly);
        InternalVolume = new QuantityRange<Volume>(
            new Volume(raw.InternalVolume.Low, VolumeUnit.CubicMeter),
            new Volume(raw.InternalVolume.Best, VolumeUnit.CubicMeter),
            new Volume(raw.InternalVolume.High, VolumeUnit.CubicMeter));
        HeatConductance = raw.HeatConductance;
        EffectiveDisplacement = new QuantityRange<VolumeFlow>(
            new VolumeFlow(raw.EffectiveDisplacement.Low, VolumeFlowUnit.CubicMeterPerSecond),
            new VolumeFlow(raw.EffectiveDisplacement.Best, VolumeFlowUnit.CubicMeterPerSecond),
            new VolumeFlow(raw.EffectiveDisplacement.High, VolumeFlowUnit.CubicMeterPerSecond));
        NotUsed = raw.NotUsed;
        Conditions = new ValueList<JobCondition>([.. conditions]);
        Findings = Require.Copy(findings, nameof(findings));
    }

    /// <summary>Time of the last reading used, from the first.</summary>
    public Duration Time { get; }

    /// <summary>Refrigerant left in the appliance, what the oil holds included: 5 %, median, 95 %.</summary>
    public MassRange Remaining { get; }

    /// <summary>Refrigerant that was in the appliance at the start: 5 %, median, 95 %.</summary>
    public MassRange TotalCharge { get; }

    /// <summary>Time to the level with the machine running; null where it is more likely than not that the level is not reached, or before anything was read.</summary>
    public DurationRange? TimeToLevel { get; }

    /// <summary>Probability that the level is reached within four hours of running.</summary>
    public Ratio LevelReachedProbability { get; }

    /// <summary>What the scale will read at the level: 5 %, median, 95 %.</summary>
    public MassRange FinalGrossWeight { get; }

    /// <summary>Probability that the cylinder is at its limit before the level is reached; zero where that limit is not known (<see cref="JobCondition.CylinderUnknown"/>).</summary>
    public Ratio CylinderLimitFirst { get; }

    /// <summary>Probability that no liquid is left.</summary>
    public Ratio VaporOnly { get; }

    /// <summary>Internal volume of the appliance.</summary>
    public QuantityRange<Volume> InternalVolume { get; }

    /// <summary>Conductance from the surroundings to the appliance, W/K.</summary>
    public EstimateRange HeatConductance { get; }

    /// <summary>Displacement of the machine times its efficiency at pressure ratio one.</summary>
    public QuantityRange<VolumeFlow> EffectiveDisplacement { get; }

    /// <summary>What of the last readings was not used, and why.</summary>
    public UnusedReadings NotUsed { get; }

    /// <summary>What is taken to be going on; empty where all is as planned.</summary>
    public IReadOnlyList<JobCondition> Conditions { get; }

    /// <summary>What the conditions mean and what was not used, in words; what the estimate rests on.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>What is left and how long still, culture-invariant.</summary>
    public override string ToString() =>
        FormattableString.Invariant($"{Time.Minutes:F0} min: {Remaining} left; {(TimeToLevel is null ? "no time to the level can be given" : $"{TimeToLevel} to the level")}")
        + (Conditions.Count == 0 ? string.Empty : "; " + string.Join(", ", Conditions));

    private static MassRange MassOf(EstimateRange range) => new(range.Low, range.Best, range.High);

    private static Ratio RatioOf(double value) => new(value, RatioUnit.DecimalFraction);
}
