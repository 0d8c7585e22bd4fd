using Refrigerant.Recovery.Numerics;
using UnitsNet;

namespace Refrigerant.Recovery.Rules;

/// <summary>One level, given by the caller.</summary>
/// <param name="Level">Absolute pressure to reach.</param>
/// <param name="Source">Where it comes from.</param>
internal sealed record CallersLevels(Pressure Level, string Source) : ILevelRules
{
    /// <summary>The highest level that is taken, Pa: our choice, to catch slips of the unit; far above what any refrigerant is left at.</summary>
    private const double Highest = 1e7;

    /// <summary>A level that a caller may give: above zero, at most 10 MPa.</summary>
    public static Pressure Checked(Pressure level, string parameter)
    {
        Require.Positive(level.Pascals, "Pa absolute", parameter);
        Require.InRange(level.Pascals, 0, Highest, "Pa absolute", parameter);
        return level;
    }

    public EvacuationLevel Find(LevelQuestion question) => EvacuationRequirement.CallersLevel(Level, Source);
}
