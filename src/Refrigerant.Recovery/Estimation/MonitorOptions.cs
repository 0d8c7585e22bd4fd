using System;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;
using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Estimation;

/// <summary>How a job is watched. Immutable.</summary>
public sealed record MonitorOptions
{
    private const double MostRelative = 0.9;

    /// <summary>For an initializer.</summary>
    public MonitorOptions()
    {
    }

    /// <summary>The same without an initializer, for compilers that know no init-only members. What is null takes its default.</summary>
    /// <param name="tolerances">See <see cref="Tolerances"/>.</param>
    /// <param name="metalTolerance">See <see cref="MetalTolerance"/>.</param>
    /// <param name="hoseTolerance">See <see cref="HoseTolerance"/>.</param>
    /// <param name="isOilFree">See <see cref="IsOilFree"/>.</param>
    /// <param name="level">See <see cref="Level"/>.</param>
    /// <param name="profile">See <see cref="Profile"/>.</param>
    /// <param name="seed">See <see cref="Seed"/>.</param>
    /// <exception cref="ArgumentException">A value outside the range of its member.</exception>
    public MonitorOptions(
        InputTolerances? tolerances = null,
        Ratio? metalTolerance = null,
        Ratio? hoseTolerance = null,
        bool? isOilFree = null,
        Pressure? level = null,
        EstimationProfile? profile = null,
        int? seed = null)
    {
        Tolerances = tolerances ?? Tolerances;
        MetalTolerance = metalTolerance ?? MetalTolerance;
        HoseTolerance = hoseTolerance ?? HoseTolerance;
        IsOilFree = isOilFree ?? IsOilFree;
        Level = level ?? Level;
        Profile = profile ?? Profile;
        Seed = seed ?? Seed;
    }

    /// <summary>How well the inputs of the job are known; as for a plan, but the charge to 25 %: what is in an appliance is why one watches.</summary>
    /// <exception cref="ArgumentNullException">The value is null.</exception>
    public InputTolerances Tolerances { get; init => field = Require.NotNull(value, nameof(Tolerances)); } =
        new() { Charge = new Ratio(25, RatioUnit.Percent) };

    /// <summary>Tolerance of the metal's heat capacity, 0 to 90 %; 50 % by default (common practice, no source).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Ratio MetalTolerance { get; init => field = Require.InRange(value, 0, MostRelative, nameof(MetalTolerance)); } = new(50, RatioUnit.Percent);

    /// <summary>Tolerance of the hoses' resistance, 0 to 90 %; 50 % by default (common practice, no source).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Ratio HoseTolerance { get; init => field = Require.InRange(value, 0, MostRelative, nameof(HoseTolerance)); } = new(50, RatioUnit.Percent);

    /// <summary>
    /// Whether it is known that no oil is in the appliance. False by default: an appliance whose oil is not told then counts as one that may
    /// hold some, and the ranges are wider.
    /// </summary>
    public bool IsOilFree { get; init; }

    /// <summary>Absolute pressure to be reached, 100 Pa to 10 MPa; null for what the rules of the job require.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public Pressure? Level
    {
        get;
        init
        {
            if (value is Pressure given)
            {
                Require.InRange(given.Pascals, 100, 1e7, "Pa absolute", nameof(Level));
            }

            field = value;
        }
    }

    /// <summary>How much the estimate may cost; the full one by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No member of its enumeration.</exception>
    public EstimationProfile Profile { get; init => field = Require.Defined(value, nameof(Profile)); }

    /// <summary>Seed of the weighted samples; the same readings and seed give the same estimate.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Tolerances, profile and seed, culture-invariant.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Tolerances}; metal {MetalTolerance.Percent:G4} %, hoses {HoseTolerance.Percent:G4} %{(IsOilFree ? ", no oil" : string.Empty)}{(Level is Pressure level ? FormattableString.Invariant($", to {level.Kilopascals:G5} kPa absolute") : string.Empty)}; {Profile}, seed {Seed}");
}
