using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Gauges;
using Refrigerant.Recovery.Rules;
using UnitsNet;

namespace Refrigerant.Recovery.Samples.Console;

/// <summary>Gauge, vacuum and altitude, and the level that the law asks for.</summary>
internal static class Gauges
{
    public static void Show()
    {
        Screen.Heading("The required level, and what the gauge must show");

        EvacuationRequirement level = EvacuationRequirement.For(Fluid.Get("R-134a"), Mass.FromPounds(308));
        Screen.Say(FormattableString.Invariant(
            $"R-134a, 308 lb (139.7 kg): down to {level.RequiredPressure.Kilopascals:F2} kPa absolute ({level.Source})."));
        foreach (double feet in new[] { 0.0, 5250.0 })
        {
            Barometer air = Barometer.AtElevation(Length.FromFeet(feet));
            string reading = level.VacuumReadingOn(air) is { } vacuum
                ? FormattableString.Invariant($"{Mercury.ToInches(vacuum):F1} inHg vacuum")
                : "no vacuum";
            Screen.Say(FormattableString.Invariant($"  at {feet:F0} ft ({feet * 0.3048:F0} m) the vacuum gauge must show {reading}"));
        }
    }
}
