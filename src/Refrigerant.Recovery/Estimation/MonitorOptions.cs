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
    public EstimationProfile Profile { get; init; }

    /// <summary>Seed of the weighted samples; the same readings and seed give the same estimate.</summary>
    public int Seed { get; init; } = 1;
}
