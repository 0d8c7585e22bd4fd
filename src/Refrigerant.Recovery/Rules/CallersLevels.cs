using UnitsNet;
using UnitsNet.Units;

namespace Refrigerant.Recovery.Rules;

/// <summary>One level, given by the caller.</summary>
/// <param name="Pascals">Absolute pressure to reach, Pa.</param>
/// <param name="Source">Where it comes from.</param>
internal sealed record CallersLevels(double Pascals, string Source) : ILevelRules
{
    public EvacuationLevel Find(LevelQuestion question) => EvacuationRequirement.CallersLevel(new Pressure(Pascals, PressureUnit.Pascal), Source);
}
