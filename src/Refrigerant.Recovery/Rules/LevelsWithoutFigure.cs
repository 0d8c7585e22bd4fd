using Refrigerant.Recovery.Findings;

namespace Refrigerant.Recovery.Rules;

/// <summary>A place whose rules state no pressure: the air's stands in, and the result says so.</summary>
internal sealed class LevelsWithoutFigure : ILevelRules
{
    private readonly RuleFigure _rule;

    public LevelsWithoutFigure(RuleFigure rule) => _rule = rule;

    public EvacuationLevel Find(LevelQuestion question)
    {
        double ambient = question.Options.Barometer.Pressure.Pascals;
        return new EvacuationLevel(_rule, LevelKind.NoFigure, ambient)
        {
            Findings =
            [
                new Finding(
                    RuleCodes.NoLevelFigure,
                    Severity.Warning,
                    _rule.Source,
                    $"These rules state no pressure ({_rule.Rule}). {FindingValue.Pascals("air", ambient)}, that of the air here, stands in, so that nothing blows out on opening; much vapor is left at it. Give the level that the authority, the contract or the maker asks for."),
            ],
        };
    }
}
