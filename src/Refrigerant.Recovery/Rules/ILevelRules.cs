namespace Refrigerant.Recovery.Rules;

/// <summary>The levels that a place requires.</summary>
internal interface ILevelRules
{
    EvacuationLevel Find(LevelQuestion question);
}
