using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Samples.Controller;

// A control loop at 10 Hz against a simulated machine with imperfect sensors: it decides, and says what is left, how long still, and what is wrong.
foreach (Scenario scenario in Scenario.All())
{
    var loop = new ControlLoop(scenario);
    loop.Run();

    double told = scenario.Told.Appliance.Charge.Kilograms;
    Console.WriteLine(FormattableString.Invariant($"{scenario.Told.Appliance.Fluid.Designation}, {told:F1} kg ({told / 0.45359237:F1} lb) told: {scenario.Name}"));
    foreach (LogEntry entry in loop.Log)
    {
        Readings now = entry.Readings;
        RawEstimate estimate = entry.Estimate;
        string still = estimate.HasTimeToLevel ? FormattableString.Invariant($"{estimate.TimeToLevel.Low / 60,4:F0} to {estimate.TimeToLevel.High / 60,3:F0} min") : "not known";
        Console.WriteLine(FormattableString.Invariant(
            $"  {now.Seconds / 60,5:F1} min  suction {Words.Pressure(now.SuctionPascals)}  scale {now.CylinderKilograms,6:F2} kg  left {estimate.Remaining.Low,5:F2} to {estimate.Remaining.High,5:F2} kg (in truth {entry.Left,5:F2})  level in {still,-13}  {Words.Of(estimate)}").TrimEnd());
    }

    Console.WriteLine(FormattableString.Invariant(
        $"  ended: {loop.End} after {loop.Ticks} ticks of 100 ms; {loop.Allocated} bytes allocated; deciding and estimating took {loop.Mean.TotalMicroseconds:F0} µs a tick, {loop.Longest.TotalMicroseconds:F0} µs at most"));
    Console.WriteLine();
}

/// <summary>The conditions that hold, in words.</summary>
internal static class Words
{
    private static readonly (JobCondition Condition, string Text)[] All =
    [
        (JobCondition.ColdPool, "cold liquid boils off slowly"),
        (JobCondition.MachineUnderperforming, "the machine draws less than it should"),
        (JobCondition.HoseBlocked, "the suction line is blocked or kinked"),
        (JobCondition.ValveClosed, "a valve is shut"),
        (JobCondition.ScaleDisturbed, "something pulls on the scale"),
        (JobCondition.GaugeInconsistent, "the gauge does not fit the rest"),
        (JobCondition.ForeignGas, "air leaks in"),
        (JobCondition.LevelOutOfReach, "the level is out of reach"),
        (JobCondition.RestSuggested, "a rest would tell more"),
        (JobCondition.ChargeInconsistent, "the charge told does not fit"),
        (JobCondition.GaugeAbsolute, "the gauge seems to show absolute pressure"),
        (JobCondition.WeightNet, "the scale shows the content alone"),
        (JobCondition.CylinderInconsistent, "the cylinder did not weigh what was told"),
        (JobCondition.CylinderUnknown, "the cylinder is not one of the job's"),
        (JobCondition.CylinderLosesWeight, "the cylinder loses weight"),
        (JobCondition.StandingPressureInconsistent, "the pressure at the start is not this refrigerant's"),
    ];

    public static string Pressure(double pascals) => double.IsNaN(pascals)
        ? "shows nothing           "
        : FormattableString.Invariant($"{pascals / 1e3,7:F1} kPa ({pascals / 6894.757,6:F1} psia)");

    public static string Of(in RawEstimate estimate)
    {
        List<string> words = [];
        foreach ((JobCondition condition, string text) in All)
        {
            if (estimate.Has(condition))
            {
                words.Add(text);
            }
        }

        if (estimate.CylinderLimitFirst > 0.5)
        {
            words.Add("the cylinder is full before the level");
        }

        return string.Join("; ", words);
    }
}
