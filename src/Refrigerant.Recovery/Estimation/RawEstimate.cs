using System;

namespace Refrigerant.Recovery.Estimation;

/// <summary>What a <see cref="RecoveryEstimator"/> knows, plain SI. No figure in it is NaN or infinite.</summary>
public record struct RawEstimate
{
    private int _conditions;

    /// <summary>Time of the last reading used, s from the first.</summary>
    public double Time { get; internal set; }

    /// <summary>Refrigerant left in the appliance, kg.</summary>
    public EstimateRange Remaining { get; internal set; }

    /// <summary>Refrigerant that was in the appliance at the start, kg.</summary>
    public EstimateRange TotalCharge { get; internal set; }

    /// <summary>Whether a time to the level can be given.</summary>
    public bool HasTimeToLevel { get; internal set; }

    /// <summary>Time to the level with the machine running, s; zeros where none can be given.</summary>
    public EstimateRange TimeToLevel { get; internal set; }

    /// <summary>Probability that the level is reached within four hours of running, 0 to 1.</summary>
    public double LevelReachedProbability { get; internal set; }

    /// <summary>What the scale will read at the level, kg.</summary>
    public EstimateRange FinalGrossWeight { get; internal set; }

    /// <summary>Probability that the cylinder is at its limit before the level is reached, 0 to 1; zero where that limit is not known.</summary>
    public double CylinderLimitFirst { get; internal set; }

    /// <summary>Probability that no liquid is left, 0 to 1.</summary>
    public double VaporOnly { get; internal set; }

    /// <summary>Internal volume of the appliance, m³.</summary>
    public EstimateRange InternalVolume { get; internal set; }

    /// <summary>Conductance from the surroundings to the appliance, W/K.</summary>
    public EstimateRange HeatConductance { get; internal set; }

    /// <summary>Displacement of the machine times its efficiency at pressure ratio one, m³/s.</summary>
    public EstimateRange EffectiveDisplacement { get; internal set; }

    /// <summary>What was not used of the last readings, and why.</summary>
    public UnusedReadings NotUsed { get; internal set; }

    /// <summary>Whether the gauge fell between two readings, and none tells whether the vapor has thinned out or a valve is shut.</summary>
    internal bool IsFallOpen { get; set; }

    /// <summary>K by which the appliance must be warmer than told, or colder, for the pressure at which it stood at first.</summary>
    internal double StandsOff { get; set; }

    /// <summary>Whether a condition stands.</summary>
    /// <param name="condition">The condition.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such condition.</exception>
    public readonly bool Has(JobCondition condition) => condition is >= JobConditions.First and <= JobConditions.Last
        ? (_conditions & (1 << (int)condition)) != 0
        : throw new ArgumentOutOfRangeException(nameof(condition), condition, $"{nameof(condition)} is {(int)condition}; it must be a {nameof(JobCondition)}.");

    internal void Set(JobCondition condition, bool stands)
    {
        if (stands)
        {
            _conditions |= 1 << (int)condition;
        }
    }

    /// <summary>What is left, and when the level is reached, culture-invariant.</summary>
    public override readonly string ToString() => FormattableString.Invariant(
        $"{Time:G7} s: {Remaining} kg left of {TotalCharge} kg{(HasTimeToLevel ? $", level in {TimeToLevel} s" : string.Empty)}");
}
