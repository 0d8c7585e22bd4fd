using System;
using System.Collections.Generic;
using System.Linq;

namespace Refrigerant.Recovery.Docs.Validation;

/// <summary>What one recovery leaves in a vehicle's air conditioner, and what half an hour can recover.</summary>
internal static class VehicleRecovery
{
    /// <summary>Over 18 % left at 21 °C, nearly 30 % at 10 °C: SAE J2762 (2017), read second hand.</summary>
    public const double LeftWarm = 0.18;
    public const double LeftCold = 0.30;

    /// <summary>9 oz left of 27 oz: trade association's blog, macsmobileairclimate.org, 2022-09-27.</summary>
    public const double LeftLater = 9.0 / 27;

    /// <summary>At least 95 % of 1.4 kg within 30 min at 21 to 24 °C: SAE J2788 (2020), read second hand.</summary>
    public const double Demanded = 0.95;

    private const double Warm = 21;
    private const double Cold = 10;

    /// <summary>The systems whose metal, fitted at 21 °C, lies within its range.</summary>
    public static IReadOnlyList<VehicleSystem> Fitted { get; } = [.. VehicleSystem.Corners().Select(system => system.WithMetalFor(LeftWarm, Warm)).OfType<VehicleSystem>()];

    /// <summary>Shares left at 10 °C in the systems that leave 18 % at 21 °C.</summary>
    public static (double Least, double Most) PredictedCold() => Band(Fitted.Select(system => system.LeftAfterOnePull(Cold)));

    /// <summary>Shares left by one pull at 20 to 28 °C, over all ranges.</summary>
    public static (double Least, double Most) AnySystem() => Band(
        from system in VehicleSystem.Corners()
        from metal in new[] { VehicleSystem.LeastMetal, VehicleSystem.MostMetal }
        from celsius in new[] { 20.0, 28.0 }
        select (system with { Metal = metal }).LeftAfterOnePull(celsius));

    /// <summary>Shares recovered in half an hour at 21 °C of 1.4 kg in the fitted systems.</summary>
    public static (double Least, double Most) InHalfAnHour(bool rests, double? startsAt = null) =>
        Band(Fitted.Where(system => system.Charge == 1.4).Select(system => system.RecoveredInHalfAnHour(Warm, rests, startsAt)));

    /// <summary>What is compared: what, said, simulated, verdict.</summary>
    public static IEnumerable<(string What, string Said, (double Least, double Most) Simulated, string Verdict)> Rows()
    {
        (double Least, double Most) cold = PredictedCold();
        yield return ($"left by one pull at 10 °C, in the {Fitted.Count} systems of 32 whose metal lies within its range and leaves {Percent(LeftWarm)} at 21 °C", $"nearly {Percent(LeftCold)}", cold, Verdict(LeftCold, cold));
        (double Least, double Most) any = AnySystem();
        yield return ("left by one pull at 20 to 28 °C, all ranges", Percent(LeftLater), any, Verdict(LeftLater, any));
        (double Least, double Most) single = InHalfAnHour(rests: false);
        yield return ("out of 1.4 kg in 30 min at 21 °C by one pull", $"less than {Percent(Demanded)}", single, single.Most < Demanded ? "inside" : "outside");
        (double Least, double Most) rested = InHalfAnHour(rests: true);
        yield return ("out of 1.4 kg in 30 min with rests of 5 min", $"{Percent(Demanded)} with the engine run before", rested, $"{Percent(Demanded - rested.Most)} short without it");
        (double Least, double Most) warmed = InHalfAnHour(rests: true, startsAt: 40);
        yield return ("the same, all of it warmed to 40 °C before", $"{Percent(Demanded)} and more", warmed, warmed.Most >= Demanded ? "inside" : "outside");
    }

    /// <summary>Prints the table.</summary>
    public static void Print()
    {
        Console.WriteLine("| share of the charge | measured | simulated | verdict |");
        Console.WriteLine("|---|---|---|---|");
        foreach ((string what, string said, (double least, double most), string verdict) in Rows())
        {
            Console.WriteLine($"| {what} | {said} | {Percent(least)} to {Percent(most)} | {verdict} |");
        }
    }

    private static string Verdict(double measured, (double Least, double Most) band) =>
        measured < band.Least ? $"outside: {Percent(band.Least - measured)} above it" : measured > band.Most ? $"outside: {Percent(measured - band.Most)} below it" : "inside";

    private static string Percent(double share) => $"{100 * share:F0} %";

    private static (double Least, double Most) Band(IEnumerable<double> values)
    {
        double[] all = [.. values];
        return (all.Min(), all.Max());
    }
}
