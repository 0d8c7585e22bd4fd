using System.Collections.Generic;
using Refrigerant.Recovery.Findings;
using UnitsNet;

namespace Refrigerant.Recovery.Rules;

/// <summary>By internal volume: EN 378-4, or Spain's law that follows it and is stricter before service.</summary>
internal sealed class EuropeanLevels : ILevelRules
{
    private readonly bool _spain;

    public EuropeanLevels(bool spain) => _spain = spain;

    public EvacuationLevel Find(LevelQuestion question)
    {
        Volume? volume = question.Options.InternalVolume;
        bool large = volume is not Volume given || given.CubicMeters > PlaceFigures.EuropeanVolume;
        bool service = _spain && question.Options.Purpose != OpeningPurpose.Disposal;
        RuleFigure rule = service ? PlaceFigures.SpainService
            : _spain ? (large ? PlaceFigures.SpainLarge : PlaceFigures.SpainSmall)
            : large ? PlaceFigures.EuropeanLargeVolume : PlaceFigures.EuropeanSmallVolume;
        RuleFigure hold = _spain ? PlaceFigures.SpainHold : PlaceFigures.EuropeanHold;
        List<Finding> findings = [];
        if (volume is null && !service)
        {
            findings.Add(new Finding(
                RuleCodes.VolumeUnknown,
                Severity.Caution,
                rule.Source,
                $"The internal volume was not given; up to 0.2 m³ the level would be {FindingValue.Pascals("level up to 0.2 m³", PlaceFigures.EuropeanSmall)}. The stricter one is used."));
        }

        findings.Add(new Finding(
            RuleCodes.LevelCondition,
            Severity.Note,
            hold.Source,
            $"The level holds with the appliance at {FindingValue.Kelvins("temperature", PlaceFigures.EuropeanTemperature)}; colder vapor must come lower, in proportion to its absolute temperature. By its words the pressure must not rise with the machine stopped, for which no time and no figure is named: a plan takes it as held where it stays at the level or below throughout the hold. Then break the vacuum with dry nitrogen."));
        return new EvacuationLevel(rule, LevelKind.AbsolutePressure, service || large ? PlaceFigures.EuropeanLarge : PlaceFigures.EuropeanSmall)
        {
            ReferenceKelvins = PlaceFigures.EuropeanTemperature,
            Hold = new HoldRule(hold) { WantsNoRise = true },
            Findings = findings,
        };
    }
}
