using UnitsNet;

namespace Refrigerant.Recovery.Rules;

/// <summary>One level, given by the caller.</summary>
internal sealed class CallersLevels : ILevelRules
{
    private readonly Pressure _level;
    private readonly string _source;

    public CallersLevels(Pressure level, string source)
    {
        _level = level;
        _source = source;
    }

    public EvacuationLevel Find(LevelQuestion question) => EvacuationRequirement.CallersLevel(_level, _source);
}
