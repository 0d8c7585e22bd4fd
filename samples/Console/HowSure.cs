using System;
using System.Linq;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Samples.Console;

/// <summary>The same plan with its inputs taken as ranges.</summary>
internal static class HowSure
{
    public static void Show(RecoveryJob job)
    {
        Screen.Heading("How sure is that?");
        PlanUncertainty range = PlanUncertainty.Run(job);
        Screen.Say(FormattableString.Invariant($"Inputs as ranges (internal volume ± 30 %, heat ± 50 %, charge ± 5 %, machine ± 10 %, ± 2 K, gauge ± 1.6 kPa), {range.Samples} plans:"));
        Screen.Say($"  time on site {range.TotalDuration}; left in the appliance {range.Remaining}; 5 to 95 % of the plans.");
        Screen.Say(FormattableString.Invariant($"  The level is reached in {range.LevelReached.Percent:F0} % of them. What matters (rank correlation, -1 to 1; + means more of it takes longer or leaves more):"));
        Screen.Table(
            ["  input", "time on site", "what is left"],
            range.Influences.Select(influence => new[]
            {
                "  " + influence.Name,
                FormattableString.Invariant($"{influence.OnDuration:+0.00;-0.00;0.00}"),
                FormattableString.Invariant($"{influence.OnRemaining:+0.00;-0.00;0.00}"),
            }));
    }
}
