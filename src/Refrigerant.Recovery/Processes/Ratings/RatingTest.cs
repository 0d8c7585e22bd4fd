using System;
using System.Collections.Generic;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Findings;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Numerics;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Processes;

/// <summary>From published ratings to a machine that can be simulated.</summary>
/// <remarks>
/// The rating tests are simulated as 40 CFR 82 Subpart F Appendix B3 describes them. The final vacuum gives the clearance ratio, the vapor
/// rate (or, where there is none, the push-pull rate) the displacement. Where both rates are known the push-pull rate gives the conductance with which pushed vapor condenses;
/// where no conductance brings it back the deviation says by how much it is missed.
/// </remarks>
public static class RatingTest
{
    /// <summary>The rating test gives back the published figure within this share.</summary>
    private const double Required = 0.005;

    /// <summary>A fit that misses any of its ratings by more than this share is not met.</summary>
    private const double WorstMiss = 0.1;

    /// <summary>Bounds of the conductance with which pushed vapor condenses, W/(m²·K), in its search; its first bracket and how often that is halved.</summary>
    private const double LeastCondensing = 1;
    private const double MostCondensing = 1e4;
    private const int CondensingHalvings = 40;

    /// <summary>The search goes on to this share where it can.</summary>
    private const double Wanted = 2e-4;

    /// <summary>Where more displacement brings less than this, as a factor, the hoses pass no more.</summary>
    private const double Saturated = 1.001;

    private const int MaximumIterations = 40;

    /// <summary>The search ends after this many iterations that brought nothing.</summary>
    private const int MostFruitless = 6;
    private const double SmallestDisplacement = 2e-7;
    private const double LargestDisplacement = 9;
    private const double SmallestClearance = 1e-4;
    private const double LargestClearance = 0.5;

    /// <summary>Fits displacement and clearance ratio to published ratings.</summary>
    /// <param name="ratings">The ratings.</param>
    /// <exception cref="ArgumentNullException">The ratings are null.</exception>
    /// <exception cref="ArgumentException">There is no rate, or an average rate without what it was averaged over.</exception>
    /// <exception cref="PropertyRangeException">The rating temperature is outside the saturation curve of the refrigerant.</exception>
    /// <example>
    /// <code>
    /// RatingFit fit = RatingTest.Fit(new MachineRatings
    /// {
    ///     Fluid = Fluid.Get("R-22"),
    ///     VaporRate = MassFlow.FromKilogramsPerMinute(0.25),
    ///     FinalVacuum = Barometer.Standard.FromVacuum(Mercury.FromInches(15)),
    /// });
    /// Console.WriteLine($"{fit.Machine.Displacement.LitersPerSecond:F2} L/s"); // 0.38 L/s
    /// </code>
    /// </example>
    public static RatingFit Fit(MachineRatings ratings)
    {
        Require.NotNull(ratings, nameof(ratings)).Validate(nameof(ratings));
        var bench = new RatingBench(ratings);
        RatingKind used = ratings.VaporRate is not null ? RatingKind.VaporRate : RatingKind.PushPullRate;
        double published = (ratings.VaporRate ?? ratings.PushPullRate!.Value).KilogramsPerSecond;
        double Rate(RecoveryMachine m) => used == RatingKind.VaporRate ? bench.VaporRate(m) : bench.PushPullRate(m);

        double density = ratings.Fluid.Model.SaturationAtTemperature(ratings.Temperature.Kelvins).Dew.Density;
        double displacement = Clamp(published / density * (used == RatingKind.VaporRate ? 2.5 : 0.1), SmallestDisplacement, LargestDisplacement);
        RecoveryMachine best = With(ratings, displacement, null);
        double exponent = best.PolytropicExponent;
        double? clearance = ratings.FinalVacuum is Pressure goal ? FirstClearance(ratings, goal.Pascals, exponent) : null;
        double bestError = double.PositiveInfinity;
        double fastest = 0;
        int fruitless = 0;
        for (int i = 0; i < MaximumIterations && bestError > Wanted && fruitless < MostFruitless; i++)
        {
            RecoveryMachine machine = With(ratings, displacement, clearance);
            double simulated = Rate(machine);
            double error = Math.Abs((simulated / published) - 1);
            double vacuumRatio = 1;
            if (clearance is double c && ratings.FinalVacuum is Pressure vacuum)
            {
                // The deepest vacuum is that of the discharge pressure over (1 + 1/c)^n: that gives the next clearance ratio.
                vacuumRatio = bench.FinalVacuum(machine) / vacuum.Pascals;
                error = Math.Max(error, Math.Abs(vacuumRatio - 1));
                double inverse = (1 + (1 / c)) * Math.Pow(Clamp(vacuumRatio, 0.1, 10), 1 / exponent);
                clearance = Clamp(1 / Math.Max(inverse - 1, 1), SmallestClearance, LargestClearance);
            }

            fruitless = error < bestError ? 0 : fruitless + 1;
            if (error < bestError)
            {
                bestError = error;
                best = machine;
            }

            if (Math.Abs(vacuumRatio - 1) < Required && i > 0 && simulated < published && simulated < Saturated * fastest)
            {
                break;
            }

            fastest = Math.Max(fastest, simulated);
            displacement = Clamp(displacement * (simulated > 0 ? Clamp(published / simulated, 0.1, 10) : 2), SmallestDisplacement, LargestDisplacement);
        }

        bool condenses = false;
        if (used == RatingKind.VaporRate && ratings.PushPullRate is MassFlow pushPull)
        {
            best = best with { CondensingCoefficient = Condensing(bench, best, pushPull.KilogramsPerSecond, out condenses) };
        }

        IReadOnlyList<RatingDeviation> deviations = Deviations(ratings, bench, best, used, condenses);
        bool within = true;
        foreach (RatingDeviation deviation in deviations)
        {
            within &= Math.Abs(deviation.Relative.DecimalFractions) <= (deviation.IsFitted ? Required : WorstMiss);
        }

        return new RatingFit(best, used, within, deviations, FindingsFor(within, deviations));
    }

    /// <summary>The condensing conductance that brings a push-pull rate back, which falls as it rises; the nearer bound where none does.</summary>
    private static double Condensing(RatingBench bench, RecoveryMachine machine, double published, out bool found)
    {
        double Excess(double coefficient) => (bench.PushPullRate(machine with { CondensingCoefficient = coefficient }) / published) - 1;
        double low = LeastCondensing;
        double high = MostCondensing;
        found = Excess(low) >= 0 && Excess(high) <= 0;
        if (!found)
        {
            return Excess(low) < 0 ? low : high;
        }

        double middle = Math.Sqrt(low * high);
        for (int i = 0; i < CondensingHalvings; i++)
        {
            double excess = Excess(middle);
            if (Math.Abs(excess) <= Wanted)
            {
                break;
            }

            low = excess > 0 ? middle : low;
            high = excess > 0 ? high : middle;
            middle = Math.Sqrt(low * high);
        }

        return middle;
    }

    /// <summary>The clearance ratio that has the final vacuum as its deepest against saturation at the rating temperature.</summary>
    private static double FirstClearance(MachineRatings ratings, double vacuum, double exponent)
    {
        double discharge = ratings.Fluid.Model.SaturationAtTemperature(ratings.Temperature.Kelvins).Dew.Pressure;
        double inverse = Math.Pow(Math.Max(1, discharge / vacuum), 1 / exponent);
        return Clamp(1 / Math.Max(inverse - 1, 1), SmallestClearance, LargestClearance);
    }

    private static RecoveryMachine With(MachineRatings ratings, double displacement, double? clearance)
    {
        var flow = new VolumeFlow(displacement, VolumeFlowUnit.CubicMeterPerSecond);
        RecoveryMachine machine = ratings.Template is RecoveryMachine template
            ? template with { Displacement = flow }
            : RecoveryMachine.FromDisplacement(flow);
        return clearance is double given ? machine with { ClearanceRatio = given } : machine;
    }

    private static IReadOnlyList<RatingDeviation> Deviations(MachineRatings ratings, RatingBench bench, RecoveryMachine machine, RatingKind used, bool condenses)
    {
        var list = new List<RatingDeviation>();
        if (ratings.VaporRate is MassFlow vapor)
        {
            list.Add(new RatingDeviation(RatingKind.VaporRate, used == RatingKind.VaporRate, vapor.KilogramsPerSecond, bench.VaporRate(machine)));
        }

        if (ratings.PushPullRate is MassFlow pushPull)
        {
            list.Add(new RatingDeviation(RatingKind.PushPullRate, condenses || used == RatingKind.PushPullRate, pushPull.KilogramsPerSecond, bench.PushPullRate(machine)));
        }

        if (ratings.FinalVacuum is Pressure vacuum)
        {
            list.Add(new RatingDeviation(RatingKind.FinalVacuum, true, vacuum.Pascals, bench.FinalVacuum(machine)));
        }

        return list.AsReadOnly();
    }

    private static IReadOnlyList<Finding> FindingsFor(bool within, IReadOnlyList<RatingDeviation> deviations)
    {
        var findings = new List<Finding>();
        if (!within)
        {
            findings.Add(new Finding(
                StageCodes.RatingContradicts,
                Severity.Warning,
                "simulated rating test, 40 CFR 82 Subpart F Appendix B3",
                $"No displacement, clearance ratio and condensation give back the ratings, those fitted to within 0.5 % and the others within 10 %: they contradict each other, or the hoses of the rating do not pass as much."));
        }

        foreach (RatingDeviation deviation in deviations)
        {
            if (!deviation.IsFitted)
            {
                findings.Add(new Finding(
                    StageCodes.RatingDeviates,
                    Severity.Note,
                    "simulated rating test, 40 CFR 82 Subpart F Appendix B3",
                    $"{FindingValue.Text("rating", Words(deviation.Rating))}: the fitted machine comes to {FindingValue.Number("percent", 100 + deviation.Relative.Percent)} % of the published figure."));
            }
        }

        return findings.AsReadOnly();
    }

    private static string Words(RatingKind rating) => rating switch
    {
        RatingKind.VaporRate => "Vapor rate",
        RatingKind.PushPullRate => "Push-pull rate",
        _ => "Final vacuum",
    };

    private static double Clamp(double value, double low, double high) => Math.Min(high, Math.Max(low, value));
}
